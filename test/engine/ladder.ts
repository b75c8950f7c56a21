import { document, futures, plans, type Document, type GenerationDocument } from './programmes.ts';

/**
 * What was seen of the trees of a plan's last generation, read off through keep rules alone: the same futures are run with a ladder
 * of minimum means, and each step keeps the trees that reach it. All steps share their luck (docs/model.md §2), so run by run the
 * counts are one histogram.
 */
export interface Ladder {
  readonly trait: string;
  /** Lowest step, below everything that occurs. */
  readonly from: number;
  readonly step: number;
  readonly steps: number;
}

/** Trees kept at step s in run i: ladder[s][i]. At most 100 trees a run can be kept. */
export function climb(
  { trait, from, step, steps }: Ladder,
  generations: readonly GenerationDocument[],
  changes: Partial<Document>,
  runs: number,
): Int32Array[] {
  const last = generations.at(-1)!;
  const conditions = Array.from({ length: steps }, (_, s) => [{ type: 'measured' as const, trait, atLeast: from + s * step }]);
  const lists = conditions.map((list) => [...generations.slice(0, -1), { ...last, keep: { howMany: 100, conditions: list } }]);
  const kept: Int32Array[] = [];
  for (let at = 0; at < lists.length; at += 8)
    for (const columns of futures(document({ ...changes, plans: plans(...lists.slice(at, at + 8)) }), runs))
      kept.push(columns.generation(generations.length - 1, 'kept').slice());
  return kept;
}

export interface Seen {
  readonly trees: number;
  readonly mean: number;
  /** Sample variance within the run; NaN for fewer than two trees. */
  readonly variance: number;
}

/**
 * Mean and variance of each run. Values lie on a lattice of `step` that starts at `from`; of values that vary smoothly a tree counts
 * as the middle of its step, which leaves the mean as it is and adds step²/12 to the variance within a run (Sheppard 1898), taken off again.
 */
export function momentsOf({ from, step }: Ladder, kept: readonly Int32Array[], smooth: boolean): Seen[] {
  const offset = smooth ? step / 2 : 0;
  return Array.from(kept[0]!, (trees, run) => {
    let [sum, squares] = [0, 0];
    kept.forEach((counts, s) => {
      const here = counts[run]! - (kept[s + 1]?.[run] ?? 0);
      const value = from + s * step + offset;
      sum += here * value;
      squares += here * value * value;
    });
    const mean = sum / trees;
    return { trees, mean, variance: trees > 1 ? (squares - trees * mean * mean) / (trees - 1) - (smooth ? (step * step) / 12 : 0) : NaN };
  });
}
