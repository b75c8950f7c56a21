import type { PlanOutlook } from '../../results/outlook.ts';

export interface ReadingLine {
  readonly plan: PlanOutlook;
  readonly value: number;
}

/** Chance of every plan by the end of a year, highest first; equal ones in the plans' own order. */
export function readingAt(plans: readonly PlanOutlook[], year: number): ReadingLine[] {
  return plans.map((plan) => ({ plan, value: plan.chanceByYear.find((point) => point.year === year)?.value ?? 0 })).sort((a, b) => b.value - a.value);
}

/** A key as pressed on the picture. */
export interface Press {
  readonly key: string;
  readonly shiftKey: boolean;
}

/**
 * The year after a key: an arrow goes a year, with Shift five, Home and End to the ends, Escape to none.
 * @returns undefined for keys that mean nothing here
 */
export function yearAfter({ key, shiftKey }: Press, year: number | null, first: number, last: number): number | null | undefined {
  const step = shiftKey ? 5 : 1;
  const from = year ?? first;
  const to = (wanted: number) => Math.min(last, Math.max(first, wanted));
  switch (key) {
    case 'ArrowRight':
    case 'ArrowUp':
      return year === null ? first : to(from + step);
    case 'ArrowLeft':
    case 'ArrowDown':
      return year === null ? last : to(from - step);
    case 'PageUp':
      return to(from + 5);
    case 'PageDown':
      return to(from - 5);
    case 'Home':
      return first;
    case 'End':
      return last;
    case 'Escape':
      return null;
    default:
      return undefined;
  }
}
