import type { WhatIf } from '../engine/what-if.ts';
import type { Programme } from '../model/programme.ts';
import { Columns } from '../results/columns.ts';
import type { Futures } from './futures.ts';

/** One way of doing it: a programme, and the plan in it (position). */
export interface Variant {
  readonly programme: Programme;
  readonly plan: number;
  /** What happens for sure. */
  readonly whatIf?: WhatIf;
}

/** Futures after which an answer is given anew: a quick look, a sharper one, all. */
export function stepsTo(runs: number): readonly number[] {
  return [200, 1000].filter((step) => step < runs).concat(runs);
}

/**
 * Runs variants over the same futures, in steps: all variants to the first step, then all to the next.
 * @param steps rising numbers of futures
 * @param report given the columns of all variants after each step, in their order
 * @returns the columns after the last step
 */
export async function runInSteps(
  futures: Futures,
  variants: readonly Variant[],
  steps: readonly number[],
  report: (columns: readonly Columns[], last: boolean) => void,
): Promise<readonly Columns[]> {
  let columns: readonly Columns[] = [];
  for (const [i, upTo] of steps.entries()) {
    const before = columns;
    const from = steps[i - 1] ?? 0;
    columns = await Promise.all(variants.map(async (variant, v) => extended(before[v], await runOne(futures, variant, from, upTo - from))));
    report(columns, upTo === steps.at(-1));
  }
  return columns;
}

/** Futures from … from + runs − 1 of one variant. */
export async function runOne(futures: Futures, { programme, plan, whatIf }: Variant, from: number, runs: number): Promise<Columns> {
  const [columns] = await futures.run(programme, [plan], from, runs, whatIf);
  if (!columns) throw new RangeError('No plan was run.');
  return columns;
}

/** Earlier futures and the ones that follow them as one. */
export function extended(before: Columns | undefined, next: Columns): Columns {
  if (!before) return next;
  const whole = new Columns(next.shape, before.runs + next.runs);
  whole.place(before, 0);
  whole.place(next, before.runs);
  return whole;
}
