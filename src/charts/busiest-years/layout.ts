import { scaleLinear, ticks as roundTicks } from 'd3';
import { highest, type BusyYear } from '../../statistics/busy.ts';
import { busyText, type Load } from '../../text/charts-years.ts';
import { calendar, roomFor, type Calendar } from '../calendar.ts';
import type { Letter } from '../letter.ts';
import { capOf, dashOf } from '../marks.ts';
import { clip, type Measure } from '../measure.ts';
import { linesOf } from './reading.ts';

/** A plan, and what each year asks of it. */
export interface PlanYears {
  readonly plan: string;
  readonly mark: string;
  readonly name: string;
  readonly years: readonly BusyYear[];
}

/** What is drawn: one kind of load against its limit. */
export interface BusyLoad {
  readonly load: Load;
  readonly limit: number | null;
  readonly hard: boolean;
}

/** One plan on the shared calendar. px. */
export interface Strip {
  readonly plan: string;
  readonly mark: string;
  readonly dash: string | null;
  readonly cap: 'round' | 'butt';
  readonly letter: Letter;
  readonly name: { readonly x: number; readonly y: number; readonly text: string };
  /** First px of everything that belongs to it, and its own drawing space. */
  readonly from: number;
  readonly top: number;
  readonly bottom: number;
  readonly line: readonly { readonly x: number; readonly y: number }[];
  readonly band: readonly { readonly x: number; readonly low: number; readonly high: number }[];
  readonly limitY: number | null;
  /** Share of futures over the limit, a bar a year. */
  readonly bars: readonly { readonly x: number; readonly y: number; readonly width: number; readonly height: number }[];
  readonly axis: readonly AxisText[];
  readonly words: { readonly x: number; readonly y: number };
}

export interface AxisText {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly kind: 'tick' | 'limit';
}

export interface BusyLayout {
  readonly width: number;
  readonly height: number;
  readonly calendar: Calendar;
  readonly plot: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  readonly strips: readonly Strip[];
  /** Hairlines of the strips' own scale. */
  readonly hairs: readonly number[];
  /** Room for the words beside (on a phone, over) each strip, px. */
  readonly wordsRoom: number;
  /** Share at the hairline over the small bars; null where no future is ever over the limit. */
  readonly barShare: number | null;
  /** The limit lies so far above all futures that it is said, not drawn. */
  readonly far: boolean;
  /** px of an amount in a strip. */
  readonly y: (strip: number, amount: number) => number;
}

export interface BusyOptions extends BusyLoad {
  readonly startYear: number;
  readonly lastYear: number;
  readonly width: number;
  readonly measure: Measure;
}

export const BUSY_SIZE = 16;
export const BUSY_LINE = 20;
const TOP = 40;
const HEAD = 34;
const HEIGHT = { phone: 84, middle: 92, wide: 92 } as const;
const BAR = { space: 9, height: 22, label: 20 } as const;
const GAP = 26;
/** A limit beyond so many times what the futures need would press them to the floor. */
const FAR = 6;
/** Least distance between two texts of an axis, px. */
const APART = 18;

/** Lays out one strip per plan, all on one scale of amounts. */
export function busyLayout(plans: readonly PlanYears[], { startYear, lastYear, width, measure, load, limit, hard }: BusyOptions): BusyLayout {
  const room = roomFor(width);
  const phone = room === 'phone';
  const years = calendar({ startYear, lastYear, width });
  const all = plans.map((plan) => plan.years);
  const most = Math.max(highest(all, 'p90')?.at.p90 ?? 0, highest(all, 'p50')?.at.p50 ?? 0);
  const far = limit !== null && most > 0 && limit > FAR * most;
  const top = Math.max(most * 1.1, limit === null || far ? 0 : limit * 1.15) || 1;
  const height = HEIGHT[room];
  const scale = scaleLinear([0, top], [0, height]);
  const worst = highest(all, 'over')?.at.over ?? 0;
  const barShare = worst < 0.005 ? null : ([0.2, 0.5].find((share) => share >= worst) ?? 1);
  const wordsRoom = phone ? width : width - years.horizon - 18;
  const lines = Math.max(0, ...plans.flatMap((plan) => [null, ...plan.years.map(({ year }) => year)].map((year) => linesOf(plan, { load, limit, hard }, year, wordsRoom, measure).length)));
  const over = phone ? lines * BUSY_LINE + 10 : 0;
  const tall = barShare === null ? 0 : BAR.space + BAR.height + (phone ? BAR.label : 0);
  const each = HEAD + over + Math.max(height, phone ? 0 : lines * BUSY_LINE) + tall + GAP;
  const values = roundTicks(0, top, phone ? 2 : 3);
  const strips = plans.map((plan, index) => {
    const from = TOP + index * each;
    const bottom = from + HEAD + over + height;
    const y = (amount: number) => bottom - scale(amount);
    const limitY = limit === null || far ? null : y(limit);
    const barTop = bottom + BAR.space + (phone ? BAR.label : 0);
    return {
      plan: plan.plan,
      mark: plan.mark,
      dash: dashOf(plan.mark),
      cap: capOf(plan.mark),
      letter: { plan: plan.plan, mark: plan.mark, x: phone ? 12 : 13, y: from + 15, r: phone ? 12 : 13 },
      name: { x: 34, y: from + 21, text: clip(plan.name, (phone ? width : years.horizon) - 40, 17, measure, true) },
      from,
      top: bottom - height,
      bottom,
      ...shapes(plan.years, years, y),
      limitY,
      bars: barShare === null ? [] : barsOf(plan.years, years, barTop, barShare),
      axis: axisOf({ values, y, limitY, phone, left: years.left, barTop: barShare === null ? null : { y: barTop, share: barShare }, load, limit: limit ?? 0 }),
      words: phone ? { x: 0, y: from + HEAD + 16 } : { x: years.horizon + 16, y: bottom - height + 16 },
    };
  });
  return {
    width,
    height: TOP + plans.length * each - GAP + 8,
    calendar: years,
    plot: { left: years.left, right: years.horizon, top: TOP, bottom: TOP + plans.length * each - GAP },
    strips,
    hairs: values.slice(1),
    wordsRoom,
    barShare,
    far,
    y: (strip, amount) => (strips[strip]?.bottom ?? 0) - scale(amount),
  };
}

/** Line and band, over the years in which a tenth of the futures or more are asked for anything. */
function shapes(all: readonly BusyYear[], years: Calendar, y: (amount: number) => number): Pick<Strip, 'line' | 'band'> {
  const asked = all.map(({ p90 }, index) => (p90 > 0 ? index : -1)).filter((index) => index >= 0);
  const shown = all.slice(Math.max(0, (asked[0] ?? 0) - 1), (asked.at(-1) ?? -2) + 2);
  return {
    line: shown.map(({ year, p50 }) => ({ x: years.x(year), y: y(p50) })),
    band: shown.map(({ year, p90 }) => ({ x: years.x(year), low: y(0), high: y(p90) })),
  };
}

function barsOf(all: readonly BusyYear[], years: Calendar, top: number, full: number): Strip['bars'] {
  const half = (years.x(1) - years.x(0)) / 2 - 0.75;
  return all
    .filter(({ over }) => over > 0)
    .map(({ year, over }) => {
      const height = Math.max(1, (BAR.height * over) / full);
      return { x: years.x(year) - half, y: top + BAR.height - height, width: 2 * half, height };
    });
}

interface AxisRoom {
  readonly values: readonly number[];
  readonly y: (amount: number) => number;
  readonly limitY: number | null;
  readonly phone: boolean;
  readonly left: number;
  readonly barTop: { readonly y: number; readonly share: number } | null;
  readonly load: Load;
  readonly limit: number;
}

/** Numbers of the scale, the limit in place of any that stands too near to it, and the share at the hairline over the bars. */
function axisOf({ values, y, limitY, phone, left, barTop, load, limit }: AxisRoom): AxisText[] {
  const x = phone ? 0 : left - 12;
  const down = phone ? -5 : 5.5;
  const numbers = values.filter((n) => (n > 0 || !phone) && (limitY === null || Math.abs(y(n) - limitY) >= APART));
  return [
    ...numbers.map((n) => ({ x, y: y(n) + down, text: busyText.tick(load, n), kind: 'tick' as const })),
    ...(limitY === null ? [] : [{ x, y: limitY + down, text: busyText.limit(load, limit), kind: 'limit' as const }]),
    ...(barTop === null ? [] : [{ x, y: phone ? barTop.y - 4 : barTop.y + BAR.height / 2 + 5.5, text: busyText.ofHundred(barTop.share), kind: 'tick' as const }]),
  ];
}

/** The hairline over the small bars of a strip, and the line they stand on, px. */
export const barLines = (layout: BusyLayout): { readonly top: number; readonly bottom: number }[] =>
  layout.barShare === null
    ? []
    : layout.strips.map(({ bottom }) => {
        const top = bottom + BAR.space + (layout.calendar.room === 'phone' ? BAR.label : 0);
        return { top, bottom: top + BAR.height };
      });
