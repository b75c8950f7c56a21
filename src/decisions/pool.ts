import type { FactMix } from '../engine/fact-mix.ts';
import { Columns } from '../results/columns.ts';
import type { Runner } from '../workers/runner.ts';
import type { Futures } from './futures.ts';

/**
 * Futures of one plan in one task. The page's own analysis waits for at most one such task on each thread, so it is short (some 20 ms);
 * compiling and sending a programme anew for each costs under half a millisecond.
 */
export const FUTURES_A_TASK = 100;

/**
 * Runs futures on the threads of a runner, behind whatever its loaded programme still needs.
 * @param ended aborted by whoever no longer wants the answer: what waits is dropped at once, what runs is ignored
 */
export function poolFutures(runner: Runner, ended?: AbortSignal): Futures {
  return {
    threads: runner.threads,
    async run(programme, plans, from, runs, whatIf) {
      if (runs <= FUTURES_A_TASK) return runner.variant(programme, plans, from, runs, ended, whatIf);
      const cuts = Array.from({ length: Math.ceil(runs / FUTURES_A_TASK) }, (_, i) => i * FUTURES_A_TASK);
      const parts = await Promise.all(
        cuts.map((at) => runner.variant(programme, plans, from + at, Math.min(FUTURES_A_TASK, runs - at), ended, whatIf).then((columns) => ({ at, columns }))),
      );
      return plans.map((_, p) => joined(parts, p, runs));
    },
    async mixed(programme, plans, mix) {
      const rows = mix.lucks.length;
      const years = new Int32Array(plans.length * rows);
      const cuts = Array.from({ length: Math.ceil(rows / FUTURES_A_TASK) }, (_, i) => i * FUTURES_A_TASK);
      await Promise.all(
        cuts.map(async (at) => {
          const part = rowsOf(mix, at, Math.min(rows, at + FUTURES_A_TASK));
          const found = await runner.mixed(programme, plans, part, ended);
          const length = part.lucks.length;
          plans.forEach((_, p) => years.set(found.subarray(p * length, (p + 1) * length), p * rows + at));
        }),
      );
      return years;
    },
  };
}

/** Rows from … to − 1, copied: a part of a list would be sent to a thread with all of it. */
function rowsOf({ groups, sets, lucks }: FactMix, from: number, to: number): FactMix {
  const width = groups.length + 1;
  return { groups, sets: sets.slice(from * width, to * width), lucks: lucks.slice(from, to) };
}

function joined(parts: readonly { readonly at: number; readonly columns: readonly Columns[] }[], p: number, runs: number): Columns {
  let whole: Columns | undefined;
  for (const { at, columns } of parts) {
    const part = columns[p];
    if (!part) throw new RangeError('A thread left out a plan.');
    whole ??= new Columns(part.shape, runs);
    whole.place(part, at);
  }
  if (!whole) throw new RangeError('No futures were asked for.');
  return whole;
}
