import { scaleLinear, ticks as roundTicks } from 'd3';
import { highest, peakOf, type BusyYear } from '../../statistics/busy.ts';
import { busyText, type Load } from '../../text/charts-years.ts';
import { calendar, roomFor, type Calendar } from '../calendar.ts';
import type { Letter } from '../letter.ts';
import { capOf, dashOf } from '../marks.ts';
import { clip, type Measure } from '../measure.ts';
import { BUSY_LINE, type BusyLoad, type PlanYears } from './load.ts';
import { linesOf } from './reading.ts';

export interface AxisText {
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly kind: 'tick' | 'limit';
}

/** One plan on the shared calendar; all in px. */
export interface Strip {
  readonly plan: string;
  readonly mark: string;
  readonly dash: string | null;
  readonly cap: 'round' | 'butt';
  readonly letter: Letter;
  readonly name: { readonly x: number; readonly y: number; readonly text: string };
  /** Where all that belongs to it begins; where its own drawing space begins and ends. */
  readonly from: number;
  readonly top: number;
  readonly bottom: number;
  readonly line: readonly { readonly x: number; readonly y: number }[];
  readonly band: readonly { readonly x: number; readonly low: number; readonly high: number }[];
  readonly hairs: readonly number[];
  readonly limitY: number | null;
  /** Share of futures over the limit, a bar a year, between a hairline and the line they stand on. */
  readonly bars: readonly { readonly x: number; readonly y: number; readonly width: number; readonly height: number }[];
  readonly barRule: { readonly top: number; readonly bottom: number } | null;
  readonly axis: readonly AxisText[];
  /** First baseline of the words beside it; on a phone, over it. */
  readonly words: { readonly x: number; readonly y: number };
}

export interface BusyLayout {
  readonly width: number;
  readonly height: number;
  readonly calendar: Calendar;
  readonly plot: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  readonly strips: readonly Strip[];
  /** Width for the words of a strip, px. */
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

const TOP = 40;
const HEAD = 34;
const HEIGHT = { phone: 84, middle: 92, wide: 92 } as const;
const BAR = { space: 9, height: 22, label: 20 } as const;
const GAP = 26;
/** A limit beyond so many times what the futures need would press them to the floor. */
const FAR = 6;
/** Least distance between two texts of an axis, px. */
const APART = 18;
/** Below this share the bars would show nothing. */
const LEAST_SHARE = 0.005;

/** Lays out one strip per plan, all on one scale of amounts. */
export function busyLayout(plans: readonly PlanYears[], options: BusyOptions): BusyLayout {
  const { startYear, lastYear, width, measure, load, limit } = options;
  const room = roomFor(width);
  const phone = room === 'phone';
  const years = calendar({ startYear, lastYear, width });
  const all = plans.map((plan) => plan.years);
  const most = Math.max(highest(all, 'p90')?.at.p90 ?? 0, highest(all, 'p50')?.at.p50 ?? 0);
  const far = limit !== null && most > 0 && limit > FAR * most;
  const top = Math.max(most * 1.1, limit === null || far ? 0 : limit * 1.15) || 1;
  const worst = highest(all, 'over')?.at.over ?? 0;
  const barShare = worst < LEAST_SHARE ? null : ([0.2, 0.5].find((share) => share >= worst) ?? 1);
  const wordsRoom = phone ? width : width - years.horizon - 18;
  const lines = mostLines(plans, options, wordsRoom);
  const height = HEIGHT[room];
  const scale = scaleLinear([0, top], [0, height]);
  const before = HEAD + (phone ? lines * BUSY_LINE + 10 : 0);
  const barHead = BAR.space + (phone ? BAR.label : 0);
  const values = roundTicks(0, top, phone ? 2 : 3);
  let end = TOP - GAP;
  const strips = plans.map(({ plan, mark, name, years: asked }): Strip => {
    const from = end + GAP;
    const bottom = from + before + height;
    const y = (amount: number) => bottom - scale(amount);
    const limitY = limit === null || far ? null : y(limit);
    const over = (peakOf(asked, 'over')?.over ?? 0) >= LEAST_SHARE;
    const barRule = over ? { top: bottom + barHead, bottom: bottom + barHead + BAR.height } : null;
    const axis = { values, y, limitY, phone, left: years.left, load, limit };
    end = Math.max(barRule?.bottom ?? bottom, phone ? 0 : from + HEAD + lines * BUSY_LINE);
    return {
      plan,
      mark,
      dash: dashOf(mark),
      cap: capOf(mark),
      letter: { plan, mark, x: phone ? 12 : 13, y: from + 15, r: phone ? 12 : 13 },
      name: { x: 34, y: from + 21, text: clip(name, (phone ? width : years.horizon) - 40, 17, measure, true) },
      from,
      top: bottom - height,
      bottom,
      ...shapes(asked, years, y),
      hairs: values.slice(1).map(y),
      limitY,
      bars: barRule && barShare !== null ? barsOf(asked, years, barRule, barShare) : [],
      barRule,
      axis: [...axisOf(axis), ...(barRule && barShare !== null ? [barWord(barRule.top, barShare, axis)] : [])],
      words: phone ? { x: 0, y: from + HEAD + 16 } : { x: years.horizon + 16, y: bottom - height + 14 },
    };
  });
  return {
    width,
    height: end + 8,
    calendar: years,
    plot: { left: years.left, right: years.horizon, top: TOP, bottom: Math.max(TOP, end) },
    strips,
    wordsRoom,
    barShare,
    far,
    y: (strip, amount) => (strips[strip]?.bottom ?? 0) - scale(amount),
  };
}

/** Lines that the words of any plan take at any year: their room stays the same while a year is read. */
function mostLines(plans: readonly PlanYears[], { measure, ...load }: BusyOptions, room: number): number {
  const counts = plans.flatMap((plan) => [null, ...plan.years.map(({ year }) => year)].map((year) => linesOf(plan, load, year, room, measure).length));
  return Math.max(0, ...counts);
}

/** Line and band over the years in which a tenth of the futures or more are asked for anything, and a year to each side. */
function shapes(all: readonly BusyYear[], years: Calendar, y: (amount: number) => number): Pick<Strip, 'line' | 'band'> {
  const first = all.findIndex(({ p90 }) => p90 > 0);
  const last = all.findLastIndex(({ p90 }) => p90 > 0);
  const shown = first < 0 ? [] : all.slice(Math.max(0, first - 1), last + 2);
  return {
    line: shown.map(({ year, p50 }) => ({ x: years.x(year), y: y(p50) })),
    band: shown.map(({ year, p90 }) => ({ x: years.x(year), low: y(0), high: y(p90) })),
  };
}

function barsOf(all: readonly BusyYear[], years: Calendar, { bottom }: { readonly bottom: number }, full: number): Strip['bars'] {
  const half = Math.max(0.5, (years.x(1) - years.x(0)) / 2 - 0.75);
  return all
    .filter(({ over }) => over > 0)
    .map(({ year, over }) => {
      const height = Math.max(1, (BAR.height * over) / full);
      return { x: years.x(year) - half, y: bottom - height, width: 2 * half, height };
    });
}

interface AxisRoom {
  readonly values: readonly number[];
  readonly y: (amount: number) => number;
  readonly limitY: number | null;
  readonly phone: boolean;
  readonly left: number;
  readonly load: Load;
  readonly limit: number | null;
}

/** Numbers of the scale, and the limit in place of any that stands too near to it. On a phone they stand on their hairlines. */
function axisOf({ values, y, limitY, phone, left, load, limit }: AxisRoom): AxisText[] {
  const at = { x: phone ? 0 : left - 12 };
  const down = phone ? -5 : 5.5;
  const numbers = values.filter((n) => (n > 0 || !phone) && (limitY === null || Math.abs(y(n) - limitY) >= APART));
  return [
    ...numbers.map((n) => ({ ...at, y: y(n) + down, text: busyText.tick(load, n), kind: 'tick' as const })),
    ...(limitY === null || limit === null ? [] : [{ ...at, y: limitY + down, text: busyText.limit(load, limit), kind: 'limit' as const }]),
  ];
}

const barWord = (top: number, share: number, { phone, left }: AxisRoom): AxisText => ({
  x: phone ? 0 : left - 12,
  y: phone ? top - 4 : top + BAR.height / 2 + 5.5,
  text: busyText.ofHundred(share),
  kind: 'tick',
});
