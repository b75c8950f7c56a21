import { peakOf } from '../../statistics/busy.ts';
import { busyText } from '../../text/charts-years.ts';
import { wrap, type Measure } from '../measure.ts';
import { BUSY_SIZE, type BusyLoad, type PlanYears } from './load.ts';

/** A line of words beside a strip; the first says the middle value. */
export interface BusyLine {
  readonly text: string;
  readonly first: boolean;
}

/** Three statements on a plan: the middle, one in ten, and the limit; at a year, or where each is highest. */
export function statements({ years }: Pick<PlanYears, 'years'>, { load, limit }: BusyLoad, year: number | null): string[] {
  const at = years.find((other) => other.year === year);
  if (at) return [busyText.at(load, at.year, at.p50), busyText.oneInTen(load, at.p90, null), busyText.over(load, limit, at.over, null)];
  const middle = peakOf(years, 'p50');
  const high = peakOf(years, 'p90');
  const over = peakOf(years, 'over');
  return [
    busyText.most(load, middle && { year: middle.year, n: middle.p50 }),
    busyText.oneInTen(load, high?.p90 ?? 0, high === null || high.year === middle?.year ? null : high.year),
    busyText.over(load, limit, over?.over ?? 0, over?.year ?? null),
  ];
}

/** The statements, broken to a width. */
export function linesOf(plan: Pick<PlanYears, 'years'>, load: BusyLoad, year: number | null, room: number, measure: Measure): BusyLine[] {
  return statements(plan, load, year).flatMap((text, index) =>
    wrap(text, room, BUSY_SIZE, measure, index === 0).map((line) => ({ text: line, first: index === 0 })),
  );
}
