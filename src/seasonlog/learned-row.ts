import type { Source } from '../model/estimate.ts';
import type { Path } from '../model/problem.ts';
import type { Lot } from '../statistics/between-springs.ts';
import { rangeLike } from '../statistics/range-like.ts';
import type { Belief } from '../statistics/weighed.ts';
import { curvesOf, type Density } from './learned-curves.ts';
import type { CountsNote, Learnable, Learned } from './learned-types.ts';
import type { Stated } from './priors.ts';

interface Parts {
  readonly what: Learnable;
  readonly path: Path;
  readonly of: Learned['of'];
  readonly scale: Learned['scale'];
  readonly before: Stated | null;
  /** Belief before counting. */
  readonly prior: Density | null;
  readonly belief: Belief;
  readonly counts: Omit<Learned['counts'], 'from' | 'to' | 'batches'>;
  readonly seen: readonly { readonly year: number; readonly batch: string }[];
  readonly bounds?: { readonly min: number; readonly max: number };
}

/** One learned estimate, with the range to put there. */
export function row(parts: Parts, note: CountsNote): Learned {
  const { what, path, of, scale, before, prior, belief, seen, bounds = { min: 0, max: 1 } } = parts;
  const years = seen.map(({ year }) => year);
  const counts = { ...parts.counts, from: Math.min(...years), to: Math.max(...years), batches: [...new Set(seen.map(({ batch }) => batch))] };
  const { mean, sd, low, high } = belief;
  const source: Source = { kind: 'counted', note: note(counts.from, counts.to) };
  const tidy = (value: number): number => Math.min(bounds.max, Math.max(bounds.min, Number(value.toPrecision(4))));
  const range = rangeLike(belief, bounds);
  const estimate = { low: tidy(range.low), likely: tidy(range.likely), high: tidy(range.high), source };
  return {
    id: path.join('/'),
    path,
    used: false,
    newer: false,
    what,
    of,
    scale,
    before,
    after: { mean, sd, low, high, nine: { low: belief.quantile(0.05), high: belief.quantile(0.95) } },
    curves: curvesOf(belief, prior, before, scale),
    counts,
    estimate,
    puts: [{ path, value: estimate }],
  };
}

export const groupBy = <T>(list: readonly T[], key: (one: T) => string): T[][] => {
  const groups = new Map<string, T[]>();
  for (const one of list) groups.set(key(one), [...(groups.get(key(one)) ?? []), one]);
  return [...groups.values()];
};

/** Counts of lots put together, in flowers where they were counted by the cluster. */
export const totals = (lots: readonly Lot[]) => ({
  hits: lots.reduce((sum, { hits }) => sum + hits, 0),
  of: lots.reduce((sum, { of, flowers = 1 }) => sum + of * flowers, 0),
  springs: lots.length,
});
