import type { Interval, PlanOutlook } from '../../results/outlook.ts';
import { wilson } from '../../statistics/interval.ts';

/** The year by which half are there, and the years between which the futures made leave it; null where not reached. */
export interface MedianYear {
  readonly year: number | null;
  readonly from: number | null;
  readonly to: number | null;
}

type Point = { readonly year: number } & Interval;

/**
 * Reads the middle year off a rising curve of shares. Its interval is all years that the share's own interval cannot tell from a half:
 * from the first year whose upper bound reaches ½ to the first whose lower bound does.
 *
 * **Source:** test inversion, as for survival medians: Brookmeyer, R. & Crowley, J. (1982) Biometrics 38:29–41 (from memory).
 */
export function medianYear(points: readonly Point[]): MedianYear {
  const firstWith = (reaches: (point: Point) => boolean) => points.find(reaches)?.year ?? null;
  return { year: firstWith(({ value }) => value >= 0.5), from: firstWith(({ high }) => high >= 0.5), to: firstWith(({ low }) => low >= 0.5) };
}

/** The middle year over all futures of a plan. */
export const halfOfAll = ({ chanceByYear }: PlanOutlook): MedianYear => medianYear(chanceByYear);

/** The middle year among the futures that succeed. */
export function halfOfSuccesses({ chanceByYear, chance, runs }: PlanOutlook): MedianYear {
  const successes = Math.round(chance.value * runs);
  if (successes === 0) return { year: null, from: null, to: null };
  return medianYear(chanceByYear.map(({ year, value }) => ({ year, ...wilson(Math.min(successes, Math.round(value * runs)), successes) })));
}
