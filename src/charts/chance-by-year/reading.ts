import type { PlanOutlook } from '../../results/outlook.ts';

export interface ReadingLine {
  readonly plan: PlanOutlook;
  readonly value: number;
}

/** Chance of every plan by the end of a year, highest first; equal ones in the plans' own order. */
export function readingAt(plans: readonly PlanOutlook[], year: number): ReadingLine[] {
  return plans.map((plan) => ({ plan, value: plan.chanceByYear.find((point) => point.year === year)?.value ?? 0 })).sort((a, b) => b.value - a.value);
}
