import type { Spread, YearSpread } from '../results/outlook.ts';

/**
 * Returns the q-quantile of sorted values, linear between order statistics.
 * @param sorted ascending; NaN for none
 * @param q in [0, 1]
 *
 * **Source:** Hyndman, R. J. & Fan, Y. (1996) Am. Stat. 50:361–365, definition 7.
 */
export function quantileSorted(sorted: ArrayLike<number>, q: number): number {
  const last = sorted.length - 1;
  const place = Math.min(last, Math.max(0, q * last));
  const below = Math.floor(place);
  const low = sorted[below];
  const high = sorted[Math.min(last, below + 1)];
  if (low === undefined || high === undefined) return NaN;
  return low + (high - low) * (place - below);
}

/**
 * Returns mean and 10, 50 and 90 % of counts or amounts; all 0 when there are none.
 * @param values in any order; not changed
 *
 * **Source:** quantiles as in `quantileSorted`.
 */
export function spread(values: ArrayLike<number>): Spread {
  const sorted = Float64Array.from(values).sort();
  if (sorted.length === 0) return { mean: 0, p10: 0, p50: 0, p90: 0 };
  const total = sorted.reduce((sum, value) => sum + value, 0);
  return { mean: total / sorted.length, p10: quantileSorted(sorted, 0.1), p50: quantileSorted(sorted, 0.5), p90: quantileSorted(sorted, 0.9) };
}

/**
 * Returns the years by which 10, 50 and 90 % of the futures have reached something: the smallest year with at least that share at or before
 * it, null where that share is never reached.
 * @param years whole years, one a future, in any order
 * @param none the value that stands for "never"; such futures count in `of` only
 * @param of how many futures the shares are of; at least the number of years that are not `none`
 *
 * **Source:** inverse of the empirical distribution, Hyndman & Fan (1996) definition 1.
 */
export function yearSpread(years: ArrayLike<number>, none: number, of: number): YearSpread {
  const reached = Float64Array.from(years)
    .filter((year) => year !== none)
    .sort();
  const by = (percent: number): number | null => reached[Math.max(1, Math.ceil((of * percent) / 100)) - 1] ?? null;
  return { p10: by(10), p50: by(50), p90: by(90) };
}
