import type { PlanOutlook } from '../results/outlook.ts';

export interface Crossing {
  /** Calendar year within which the lines meet. */
  readonly year: number;
  /** The same with its fraction, on a scale where y + ½ is the end of year y. */
  readonly at: number;
  readonly share: number;
  /** Id of the plan that led before, and of the one that leads from then on. */
  readonly early: string;
  readonly late: string;
}

/** A lead that was never larger than this share of all futures changes no plan. */
const LEAST_LEAD = 0.1;

/** A meeting below this share is a tangle near the axis, not a change of places. */
const LEAST_SHARE = 0.05;

/**
 * Finds where the plan that ends highest overtakes the plan that led before it.
 *
 * Counts only when the futures can tell both ways: somewhere before, the earlier plan's interval lies above the other's, by enough to
 * matter, and at the last year below. The one place that decides this: sentences, pictures and tables must name the same year.
 * @returns null where no lead clearly changes
 */
export function leadChange(plans: readonly PlanOutlook[]): Crossing | null {
  const late = [...plans].sort((a, b) => b.chance.value - a.chance.value)[0];
  if (!late) return null;
  const meetings = plans.filter(({ id }) => id !== late.id).flatMap((early) => meeting(early, late));
  return meetings.sort((a, b) => b.at - a.at)[0] ?? null;
}

function meeting(early: PlanOutlook, late: PlanOutlook): Crossing[] {
  const end = { early: early.chanceByYear.at(-1), late: late.chanceByYear.at(-1) };
  if (!end.early || !end.late || end.late.low <= end.early.high) return [];
  const clearlyBefore = early.chanceByYear.some((point, index) => {
    const other = late.chanceByYear[index];
    return other !== undefined && point.low > other.high && point.value - other.value >= LEAST_LEAD;
  });
  if (!clearlyBefore) return [];
  for (let index = early.chanceByYear.length - 1; index > 0; index--) {
    const [e0, l0] = [early.chanceByYear[index - 1], late.chanceByYear[index - 1]];
    const [e1, l1] = [early.chanceByYear[index], late.chanceByYear[index]];
    if (!e0 || !l0 || !e1 || !l1) continue;
    const [before, after] = [e0.value - l0.value, e1.value - l1.value];
    if (before <= 0 || after > 0) continue;
    const part = before / (before - after);
    const share = e0.value + part * (e1.value - e0.value);
    if (share < LEAST_SHARE) return [];
    return [{ year: e1.year, at: e0.year + 0.5 + part, share, early: early.id, late: late.id }];
  }
  return [];
}
