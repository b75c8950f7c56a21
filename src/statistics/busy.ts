import type { Columns, YearColumn } from '../results/columns.ts';
import { quantileSorted } from './order.ts';

/** What one calendar year asks of the breeder, over all futures; a future that has ended asks for nothing. */
export interface BusyYear {
  readonly year: number;
  /** Middle future, and what 9 of 10 futures stay at or under, in the unit of the limit. */
  readonly p50: number;
  readonly p90: number;
  /** Share of futures over the limit; of a limit that none can pass, the share that takes the last of it. 0 where there is no limit. */
  readonly over: number;
}

/** A breeder’s limit of a year. */
export interface YearLimit {
  /** In hours, places or bloom days; null where none is stated. */
  readonly limit: number | null;
  /** A hard limit stops the work, so that no future can pass it: room, and days in bloom (docs/model.md §11). Hours can be passed. */
  readonly hard: boolean;
  /** How much of the column makes one of the limit’s unit: the flowers of a bloom day; 1 for hours and places. */
  readonly each: number;
}

/** A year of a plan. */
export interface Peak {
  readonly plan: number;
  readonly at: BusyYear;
}

/**
 * Summarises hours, places or flowers by year.
 * @param columns of one plan; not changed
 * @param startYear calendar year of the first year in them
 * @returns one entry a year, in order. A hard limit counts as taken when less than one whole unit of it is left.
 *
 * **Source:** own derivation; quantiles as in `quantileSorted`.
 */
export function busyYears(columns: Columns, name: YearColumn, startYear: number, { limit, hard, each }: YearLimit): BusyYear[] {
  const above = limit === null ? Infinity : hard ? Math.max(0, limit - 1) : limit;
  return Array.from({ length: columns.shape.years }, (_, index) => {
    const values = Float64Array.from(columns.year(name, index), (value) => (each > 0 ? value / each : 0)).sort();
    if (values.length === 0) return { year: startYear + index, p50: 0, p90: 0, over: 0 };
    const over = values.length - firstAbove(values, above);
    return { year: startYear + index, p50: quantileSorted(values, 0.5), p90: quantileSorted(values, 0.9), over: over / values.length };
  });
}

/** Index of the first of sorted values that lies above a bound; their number where none does. */
function firstAbove(sorted: Float64Array, bound: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((sorted[middle] ?? Infinity) > bound) high = middle;
    else low = middle + 1;
  }
  return low;
}

/**
 * Finds the year of a plan in which one of the figures is highest, the first of equal ones.
 * @returns null where it is 0 in all years
 */
export function peakOf(years: readonly BusyYear[], figure: 'p50' | 'p90' | 'over'): BusyYear | null {
  const peak = years.reduce<BusyYear | null>((best, year) => (best === null || year[figure] > best[figure] ? year : best), null);
  return peak !== null && peak[figure] > 0 ? peak : null;
}

/**
 * Finds the plan and year that ask most: by the middle future; where less than half of the futures are ever asked, by the 90 % value.
 * @param plans years of each plan
 * @returns null where nothing is ever asked
 */
export function busiest(plans: readonly (readonly BusyYear[])[]): (Peak & { readonly figure: 'p50' | 'p90' }) | null {
  for (const figure of ['p50', 'p90'] as const) {
    const peak = highest(plans, figure);
    if (peak) return { ...peak, figure };
  }
  return null;
}

/** Finds the plan and year in which a figure is highest; null where it is 0 throughout. */
export function highest(plans: readonly (readonly BusyYear[])[], figure: 'p50' | 'p90' | 'over'): Peak | null {
  const peaks = plans.flatMap((years, plan) => {
    const at = peakOf(years, figure);
    return at ? [{ plan, at }] : [];
  });
  return peaks.reduce<Peak | null>((best, peak) => (best === null || peak.at[figure] > best.at[figure] ? peak : best), null);
}
