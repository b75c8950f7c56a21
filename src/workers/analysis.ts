import type { Programme } from '../model/programme.ts';
import { Columns } from '../results/columns.ts';
import type { FactSets } from '../statistics/outlook.ts';
import { GivenUp, type Runner } from './runner.ts';

/** Second pass: sets of facts × futures for each. **Source:** docs/model.md §2. */
export const FACT_SETS = 100;
export const FUTURES_A_SET = 100;
/** The first picture is drawn from so few futures. */
export const FIRST_LOOK = 200;

export interface Analysis {
  /** Columns of all futures, in the order of `plans`. */
  readonly columns: readonly Columns[];
  readonly factSets: readonly (FactSets | null)[];
}

/** Futures finished without a gap from the first, for every plan asked; their columns are copied out only when asked for. */
export interface Progress {
  readonly runs: number;
  readonly columns: () => readonly Columns[];
}

/**
 * Runs plans (positions) of a programme and reports as results stream in: first a quick look, then sharper, last the second
 * pass over sets of facts. Resolves with everything; rejects with GivenUp when the runner is given a newer programme.
 * @param runs futures for each plan
 * @param chunk futures in one task; small enough that a thread is free again soon
 */
export async function analyse(
  runner: Runner,
  programme: Programme,
  plans: readonly number[],
  {
    runs,
    chunk = 500,
    secondPass = true,
    setsInTask = 2,
  }: { readonly runs: number; readonly chunk?: number; readonly secondPass?: boolean; readonly setsInTask?: number },
  report: (progress: Progress) => void,
): Promise<Analysis> {
  runner.load(programme);
  const mine = runner.version;
  const none = plans.map(() => null);
  const whole: Columns[] = [];
  const finished = new Set<number>();
  let done = 0;
  const cuts = cutsOf(runs, chunk, runner.threads);
  const lengths = new Map(cuts.map(({ from, length }) => [from, length]));
  await Promise.all(
    cuts.map(async ({ from, length }) => {
      const part = await runner.runs(plans, from, length);
      if (whole.length === 0) whole.push(...part.map(({ shape }) => new Columns(shape, runs)));
      part.forEach((columns, p) => whole[p]?.place(columns, from));
      finished.add(from);
      const before = done;
      while (finished.has(done)) done += lengths.get(done) ?? 0;
      const ready = done;
      if (ready > before) report({ runs: ready, columns: () => whole.map((columns) => columns.first(ready)) });
    }),
  );
  if (!secondPass) return { columns: whole, factSets: none };
  // The last report may have led to a newer programme.
  if (runner.version !== mine) throw new GivenUp('A newer programme came.');
  const years = programme.lastYear - programme.startYear + 1;
  const provenBy = plans.map(() => new Int32Array(FACT_SETS * years));
  await Promise.all(
    Array.from({ length: Math.ceil(FACT_SETS / setsInTask) }, async (_, task) => {
      const from = task * setsInTask;
      const sets = Math.min(setsInTask, FACT_SETS - from);
      const part = await runner.factSets(plans, from, sets, FUTURES_A_SET);
      provenBy.forEach((all, p) => all.set(part.subarray(p * sets * years, (p + 1) * sets * years), from * years));
    }),
  );
  return { columns: whole, factSets: provenBy.map((all) => ({ provenBy: all, sets: FACT_SETS, futures: FUTURES_A_SET })) };
}

/** Tasks: a quick first look shared by the threads, then chunks. Cuts never change results, only when they arrive. */
function cutsOf(runs: number, chunk: number, threads: number): { from: number; length: number }[] {
  const cuts: { from: number; length: number }[] = [];
  const look = Math.max(1, Math.ceil(Math.min(FIRST_LOOK, runs) / threads));
  let from = 0;
  while (from < runs) {
    const length = Math.min(cuts.length < threads ? look : chunk, runs - from);
    cuts.push({ from, length });
    from += length;
  }
  return cuts;
}
