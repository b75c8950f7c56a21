import { betaQuantile } from '../../src/statistics/beta.ts';
import type { Stretch } from './speed.ts';

/** How many times as much, with the interval that holds it 95 times in 100. */
export interface Ratio {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Returns the two-sided 95 % point of Student's t.
 * @param freedom degrees of freedom, at least 1
 *
 * **Source:** ν/(ν + T²) ~ Beta(ν/2, ½), Abramowitz & Stegun (1964) 26.7.1 with 26.5.
 */
export function studentPoint(freedom: number): number {
  return Math.sqrt(freedom * (1 / betaQuantile(0.05, freedom / 2, 0.5) - 1));
}

/**
 * Compares paired measurements by their ratios: the geometric mean of first/second with its t interval.
 * @param pairs positive numbers, measured one right after the other; at least 2 pairs
 */
export function ratioOf(pairs: readonly (readonly [number, number])[]): Ratio {
  const logs = pairs.map(([first, second]) => Math.log(first / second));
  const mean = logs.reduce((a, b) => a + b, 0) / logs.length;
  const variance = logs.reduce((sum, log) => sum + (log - mean) ** 2, 0) / (logs.length - 1);
  const half = studentPoint(logs.length - 1) * Math.sqrt(variance / logs.length);
  return { value: Math.exp(mean), low: Math.exp(mean - half), high: Math.exp(mean + half) };
}

export interface Comparison {
  readonly pairs: number;
  /** Runs per second now, as a multiple of those then: above 1 is faster now. */
  readonly runsPerSecond: Ratio;
  readonly seedlingsPerSecond: Ratio;
}

/** @param pairs stretches of the same futures, now and then */
export function compareSpeeds(pairs: readonly { readonly now: Stretch; readonly then: Stretch }[]): Comparison {
  const by = (read: (stretch: Stretch) => number) =>
    ratioOf(pairs.map(({ now, then }) => [read(now) / now.nanoseconds, read(then) / then.nanoseconds] as const));
  return { pairs: pairs.length, runsPerSecond: by(({ runs }) => runs), seedlingsPerSecond: by(({ seedlings }) => seedlings) };
}
