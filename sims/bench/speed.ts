import { quantileSorted } from '../../src/statistics/order.ts';
import type { Runner } from '../../src/workers/runner.ts';
import type { Work } from './kernel.ts';

/** A stretch of work: futures of all plans together, the seedlings they raised, and the time it took. */
export interface Stretch {
  readonly runs: number;
  readonly seedlings: number;
  readonly nanoseconds: number;
}

/** Middle and range over the stretches of one measurement. */
export interface Range {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

export interface Speed {
  readonly threads: number;
  readonly stretches: number;
  /** Futures of single plans. */
  readonly runsPerSecond: Range;
  readonly seedlingsPerSecond: Range;
  /** By the clock, whatever the number of threads. */
  readonly nanosecondsPerSeedling: Range;
}

const SECOND = 1e9;
const MILLISECOND = 1e6;

function range(values: readonly number[]): Range {
  const sorted = [...values].sort((a, b) => a - b);
  return { low: sorted[0] ?? NaN, middle: quantileSorted(sorted, 0.5), high: sorted.at(-1) ?? NaN };
}

export function speedOf(threads: number, stretches: readonly Stretch[]): Speed {
  return {
    threads,
    stretches: stretches.length,
    runsPerSecond: range(stretches.map(({ runs, nanoseconds }) => (runs / nanoseconds) * SECOND)),
    seedlingsPerSecond: range(stretches.map(({ seedlings, nanoseconds }) => (seedlings / nanoseconds) * SECOND)),
    nanosecondsPerSeedling: range(stretches.map(({ seedlings, nanoseconds }) => nanoseconds / seedlings)),
  };
}

/** Times one stretch on the calling thread. */
export function timed(work: Work, plans: number, from: number, futures: number): Stretch {
  const start = performance.now();
  const seedlings = work(from, futures);
  return { runs: futures * plans, seedlings, nanoseconds: (performance.now() - start) * MILLISECOND };
}

/** Times the same futures on all threads of a runner, cut as the page and the headless runner cut them. */
export async function timedOn(runner: Runner, plans: number, from: number, futures: number, chunk = 500): Promise<Stretch> {
  const all = Array.from({ length: plans }, (_, p) => p);
  const start = performance.now();
  const parts = await Promise.all(
    Array.from({ length: Math.ceil(futures / chunk) }, (_, c) => runner.runs(all, from + c * chunk, Math.min(chunk, futures - c * chunk))),
  );
  const nanoseconds = (performance.now() - start) * MILLISECOND;
  const seedlings = parts.flat().reduce((sum, columns) => sum + columns.run('seedlings').reduce((a, b) => a + b, 0), 0);
  return { runs: futures * plans, seedlings, nanoseconds };
}
