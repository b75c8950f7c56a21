import type { PlanOutlook } from '../../results/outlook.ts';
import { leadChange } from '../../statistics/lead.ts';

/** Year in which a look at all plans tells most: the widest gap between them before the lead changes; else where the best is half way. */
export function tellingYear(plans: readonly PlanOutlook[]): number | null {
  const crossing = leadChange(plans);
  const best = [...plans].sort((a, b) => b.chance.value - a.chance.value)[0];
  if (!best || best.chance.value === 0) return null;
  if (!crossing) return best.chanceByYear.find(({ value }) => value >= best.chance.value / 2)?.year ?? null;
  const early = plans.find(({ id }) => id === crossing.early);
  const gaps = (early?.chanceByYear ?? [])
    .filter(({ year }) => year < crossing.year)
    .map(({ year, value }, index) => ({ year, gap: value - (best.chanceByYear[index]?.value ?? 0) }));
  return gaps.sort((a, b) => b.gap - a.gap)[0]?.year ?? null;
}

/** First year in which any plan has a proven tree in any future; null for never. */
export function firstProven(plans: readonly PlanOutlook[]): number | null {
  const years = plans.flatMap(({ chanceByYear }) => chanceByYear.find(({ value }) => value > 0)?.year ?? []);
  return years.length === 0 ? null : Math.min(...years);
}
