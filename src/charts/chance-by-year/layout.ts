import type { Outlook, PlanOutlook } from '../../results/outlook.ts';
import { leadChange } from '../../statistics/lead.ts';
import { chanceText, percentNumber } from '../../text/charts.ts';
import { calendar, roomFor, type Calendar } from '../calendar.ts';
import { capOf, dashOf, shortName, type WordsByPlan } from '../marks.ts';
import { wrap, type Measure } from '../measure.ts';
import { shareAxis, type ShareTick } from '../shares.ts';
import { spread } from '../spread.ts';
import { firstProven } from './crossing.ts';

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface EndLabel {
  readonly plan: string;
  readonly mark: string;
  /** Centre of the letter, px, and where the line ends. */
  readonly x: number;
  readonly y: number;
  readonly r: number;
  readonly lineY: number;
  readonly textX: number;
  /** First line's baseline. */
  readonly textY: number;
  readonly name: readonly string[];
  readonly value: string;
}

export interface PlanLine {
  readonly plan: string;
  readonly mark: string;
  readonly dash: string | null;
  readonly cap: 'round' | 'butt';
  readonly points: readonly Point[];
  readonly band: readonly { readonly x: number; readonly low: number; readonly high: number }[];
}

export interface ChanceLayout {
  readonly width: number;
  readonly height: number;
  readonly calendar: Calendar;
  /** First year a reading can stand at; the axis begins here. */
  readonly firstYear: number;
  readonly lastYear: number;
  /** True when the empty years before `firstYear` are dropped. */
  readonly dropped: boolean;
  readonly plot: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  readonly shares: readonly ShareTick[];
  readonly lines: readonly PlanLine[];
  readonly labels: readonly EndLabel[];
  readonly crossing: {
    readonly x: number;
    readonly y: number;
    readonly text: string;
    readonly textX: number;
    readonly textY: number;
    readonly anchor: 'start' | 'end';
  } | null;
  /** Words in the empty years; none where they have no room: then they belong under the picture. */
  readonly note: { readonly x: number; readonly y: number; readonly lines: readonly string[] } | null;
  readonly noteText: string;
  /** Where the reading box stands inside the picture; null where it must stand under it. */
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly nameRoom: number } | null;
  readonly x: (year: number) => number;
  readonly y: (share: number) => number;
}

export interface ChanceOptions {
  readonly width: number;
  readonly measure: Measure;
  readonly words: WordsByPlan;
}

const TOP = 40;
const HEIGHT = { phone: 300, middle: 360, wide: 380 } as const;
const LABEL = { name: 17, value: 16.5, line: 20, gap: 6 } as const;
const LEAST_LABEL = 40;
const NOTE = { size: 16.5, line: 22, inset: 34 } as const;
/** Reading box: its greatest and least width, what stands beside the names, its head, a row, and its distance from the axis. */
const BOX = { width: 318, least: 250, beside: 130, head: 74, row: 31, inset: 34 } as const;

/** Highest share that the picture must hold. */
const mostOf = (plans: readonly PlanOutlook[]): number =>
  Math.max(0, ...plans.map(({ chance, guessesByYear }) => Math.max(chance.value, ...(guessesByYear ?? []).map(({ high }) => high))));

/** Lays out the chance of every plan by year. */
export function chanceLayout(outlook: Outlook, { width, measure, words }: ChanceOptions): ChanceLayout {
  const { plans, startYear, lastYear } = outlook;
  const room = roomFor(width);
  const phone = room === 'phone';
  const begins = firstProven(plans);
  const from = phone && begins !== null ? Math.max(startYear, Math.min(begins - 1, lastYear - 8)) : startYear;
  const years = calendar({ startYear, lastYear, width, from, ...(phone ? { right: 62 } : {}) });
  const plot = { left: years.left, right: years.horizon, top: TOP, bottom: TOP + HEIGHT[room] };
  const { y, ticks } = shareAxis(mostOf(plans), plot, phone);
  const lines = plans.map((plan) => planLine(plan, years, y, from));
  const noteText = begins === null ? chanceText.never : chanceText.noneBefore(begins, outlook.runs);
  const names = plans.map((plan) => measure(shortName(plan, words), LABEL.name));
  const box = boxRoom(lines, plot, Math.min(BOX.width, Math.max(BOX.least, Math.max(0, ...names) + BOX.beside)), plans.length, years.room);
  return {
    width,
    height: plot.bottom + 14,
    calendar: years,
    firstYear: from,
    lastYear,
    dropped: from > startYear,
    plot,
    shares: ticks,
    lines,
    labels: endLabels(plans, { plot, y, width, phone, measure, words }),
    crossing: crossingLabel(plans, years, y, measure),
    note: noteRoom(noteText, begins, years, plot, box && box.y + BOX.head + plans.length * BOX.row, measure),
    noteText,
    box,
    x: (year) => years.x(year + 0.5),
    y,
  };
}

/** A line begins at the last year of nothing, so that it leaves the axis where it truly does. */
function planLine({ id, mark, chanceByYear, guessesByYear }: PlanOutlook, years: Calendar, y: (share: number) => number, from: number): PlanLine {
  const shown = <T extends { year: number }>(points: readonly T[], high: (point: T) => number) => {
    const first = points.findIndex((point) => high(point) > 0);
    return first < 0 ? [] : points.slice(Math.max(0, first - 1)).filter(({ year }) => year >= from);
  };
  const at = (year: number) => years.x(year + 0.5);
  return {
    plan: id,
    mark,
    dash: dashOf(mark),
    cap: capOf(mark),
    points: shown(chanceByYear, ({ value }) => value).map(({ year, value }) => ({ x: at(year), y: y(value) })),
    band: shown(guessesByYear ?? [], ({ high }) => high).map(({ year, low, high }) => ({ x: at(year), low: y(low), high: y(high) })),
  };
}

interface LabelRoom {
  readonly plot: ChanceLayout['plot'];
  readonly y: (share: number) => number;
  readonly width: number;
  readonly phone: boolean;
  readonly measure: Measure;
  readonly words: WordsByPlan;
}

function endLabels(plans: readonly PlanOutlook[], { plot, y, width, phone, measure, words }: LabelRoom): EndLabel[] {
  const r = phone ? 12 : 13;
  const x = plot.right + (phone ? 16 : 31);
  const textX = x + (phone ? 16 : 20);
  const names = plans.map((plan) => (phone ? [] : wrap(shortName(plan, words), width - textX, LABEL.name, measure, true)));
  const heights = names.map((lines) => (phone ? 27 : Math.max(LEAST_LABEL, (lines.length + 1) * LABEL.line) + LABEL.gap));
  const middles = spread(
    plans.map(({ chance }, index) => ({ at: y(chance.value), height: heights[index] ?? LEAST_LABEL })),
    plot.top - 14,
    plot.bottom + 14,
  );
  return plans.map((plan, index) => {
    const { chance, id, mark } = plan;
    const name = names[index] ?? [];
    const middle = middles[index] ?? 0;
    const value = phone ? percentNumber(chance.value) : chanceText.value(chance.value, chance.low, chance.high);
    return {
      plan: id,
      mark,
      x,
      y: middle,
      r,
      lineY: y(chance.value),
      textX,
      textY: phone ? middle + 6 : middle - ((name.length + 1) * LABEL.line) / 2 + 15,
      name,
      value,
    };
  });
}

function crossingLabel(plans: readonly PlanOutlook[], years: Calendar, y: (share: number) => number, measure: Measure): ChanceLayout['crossing'] {
  const crossing = leadChange(plans);
  if (!crossing) return null;
  const [px, py] = [years.x(crossing.at), y(crossing.share)];
  const text = chanceText.level(crossing.year);
  const fits = px - 18 - measure(text, 17, true) > years.left + 4;
  return { x: px, y: py, text, textX: px + (fits ? -18 : 18), textY: py - 36, anchor: fits ? 'end' : 'start' };
}

/** The first px at which any line or band stands higher than a y. */
function reaches(lines: readonly PlanLine[], y: number): number {
  const xs = lines.flatMap(({ points, band }) => [
    ...points.filter((point) => point.y < y).map(({ x }) => x),
    ...band.filter(({ high }) => high < y).map(({ x }) => x),
  ]);
  return Math.min(Infinity, ...xs);
}

function boxRoom(lines: readonly PlanLine[], plot: ChanceLayout['plot'], width: number, count: number, room: Calendar['room']): ChanceLayout['box'] {
  if (room === 'phone') return null;
  const box = { x: plot.left + BOX.inset - 8, y: plot.top + 12, width, nameRoom: width - BOX.beside + 4 };
  const bottom = box.y + BOX.head + count * BOX.row;
  const free = bottom < plot.bottom && box.x + box.width + 14 < reaches(lines, bottom + 10);
  return free ? box : null;
}

function noteRoom(
  text: string,
  begins: number | null,
  years: Calendar,
  plot: ChanceLayout['plot'],
  boxBottom: number | null,
  measure: Measure,
): ChanceLayout['note'] {
  const end = begins === null ? plot.right : years.x(begins);
  const x = plot.left + NOTE.inset;
  if (end - x < 200) return null;
  const lines = wrap(text, Math.min(300, end - x - 10), NOTE.size, measure);
  const y = plot.bottom - 24 - (lines.length - 1) * NOTE.line;
  return boxBottom !== null && y - NOTE.line < boxBottom ? null : { x, y, lines };
}
