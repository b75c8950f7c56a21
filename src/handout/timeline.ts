import { bough, type Bough } from '../charts/boughs/bough.ts';
import { chanceMark, type ChanceMark } from '../charts/boughs/chance-mark.ts';
import { calendar, type Calendar } from '../charts/calendar.ts';
import { clip } from '../charts/measure.ts';
import type { GenerationOutlook, PlanOutlook } from '../results/outlook.ts';
import { inTen, laneText, percent, percentRange, plusMinus } from '../text/charts.ts';
import { timelineText } from '../text/handout.ts';
import { sansMeasure, serifMeasure } from './widths.ts';

/** Sizes of a timeline, px. */
export interface Scheme {
  readonly width: number;
  /** Words above the boughs instead of beside them. */
  readonly narrow: boolean;
  readonly left: number;
  readonly right: number;
  readonly axis: number;
  readonly head: number;
  readonly row: number;
  readonly full: number;
  readonly foot: number;
  readonly text: number;
  readonly name: number;
  /** Most rows of one plan; those between the first and the last are left out. */
  readonly most: number;
}

export interface TimelineRow {
  readonly y: number;
  readonly label: string;
  readonly labelY: number;
  readonly bough: Bough | null;
  readonly ring: number | null;
}

export interface TimelineLane {
  readonly mark: string;
  readonly name: string;
  readonly top: number;
  readonly height: number;
  readonly rows: readonly TimelineRow[];
  readonly lines: readonly { readonly x1: number; readonly y1: number; readonly x2: number; readonly y2: number; readonly width: number }[];
  readonly dot: { readonly x: number; readonly y: number; readonly from: number; readonly to: number; readonly year: string; readonly yearX: number } | null;
  readonly numeral: string;
  readonly words: string;
  readonly percent: string;
  readonly error: string;
  readonly guesses: string;
  readonly chance: ChanceMark;
}

export interface Timeline {
  readonly scheme: Scheme;
  readonly calendar: Calendar;
  readonly height: number;
  readonly lanes: readonly TimelineLane[];
  readonly summary: string;
}

export interface TimelineOf {
  readonly startYear: number;
  readonly lastYear: number;
  readonly plans: readonly PlanOutlook[];
}

/** Sizes for a sheet of paper; `row` shrinks where there are many. */
export const sheetScheme = (width: number, row: number, most: number): Scheme => ({
  width,
  narrow: false,
  left: 146,
  right: 160,
  axis: 33,
  head: row >= 15 ? 21 : 17,
  row,
  full: Math.min(15, row - 7),
  foot: row >= 20 ? 5 : row >= 15 ? 3 : 2,
  text: 12,
  name: 15,
  most,
});

/**
 * Sizes for a phone: texts have 16 px where the picture has this much room, and more where it has more.
 * @param guesses whether a line says what the guesses allow
 */
export const phoneScheme = (width: number, guesses: boolean): Scheme => ({
  width,
  narrow: true,
  left: 0,
  right: 6,
  axis: 44,
  head: guesses ? 74 : 52,
  row: 45,
  full: 17,
  foot: 10,
  text: 16,
  name: 18,
  most: 8,
});

/** Height of a picture of so many rows of each plan. */
export function timelineHeight(plans: readonly PlanOutlook[], { axis, head, row, foot, most }: Scheme): number {
  return axis + plans.reduce((sum, plan) => sum + head + foot + row * shownRows(plan.generations, most).length, 0);
}

/** Places of the generations that are drawn: all, or the first and the last ones. */
function shownRows(generations: readonly GenerationOutlook[], most: number): number[] {
  const all = generations.map((_, at) => at);
  if (all.length <= most) return all;
  return most <= 1 ? all.slice(-1) : [...all.slice(0, most - 1), ...all.slice(-1)];
}

function labelOf(generations: readonly GenerationOutlook[], at: number, skipped: number): string {
  const generation = generations[at];
  if (!generation) return '';
  const rounds = generations.filter(({ id }) => id === generation.id).length;
  const name = laneText.round(generation.name, generation.round, rounds);
  return skipped > 0 ? `${timelineText.more(skipped)}: ${name}` : name;
}

const WIDEST = 4;
const NARROWEST = 1.4;
/** Room of a bold year, times the size of its letters. */
const YEAR_WIDTH = 2.2;

function laneOf(plan: PlanOutlook, top: number, startYear: number, scheme: Scheme, years: Calendar): TimelineLane {
  const { narrow, head, row, full, text, name, foot } = scheme;
  const { generations, whenItWorks } = plan;
  const shown = shownRows(generations, scheme.most);
  const yOf = (place: number) => top + head + place * row + (narrow ? row - full / 2 - 4 : row / 2);
  const labelRoom = narrow ? scheme.width - 8 : years.left - 27;
  const used = new Set(generations.flatMap(({ grownFrom }) => (grownFrom === null ? [] : [grownFrom])));
  const rows = shown.map((at, place): TimelineRow => {
    const generation = generations[at];
    const y = yOf(place);
    const skipped = place > 0 ? at - (shown[place - 1] ?? 0) - 1 : at;
    const pick = generation?.firstPick.p50 ?? null;
    return {
      y,
      label: clip(labelOf(generations, at, skipped), labelRoom, text, sansMeasure),
      labelY: narrow ? y - full / 2 - 6 : y + text * 0.34,
      bough: generation ? bough(generation, startYear, years, full) : null,
      ring: used.has(at) && pick !== null ? years.x(pick) : null,
    };
  });
  const lines = shown.flatMap((at, place) => {
    const child = generations[at];
    const from = child?.grownFrom ?? null;
    const parent = from === null ? undefined : rows[shown.indexOf(from)];
    const into = rows[place]?.bough;
    if (!child || !parent || parent.ring === null || !into) return [];
    const middle = child.firstPollination.p50 === null ? into.from : years.x(child.firstPollination.p50);
    const x2 = Math.min(Math.max(middle + 7, parent.ring + 18), into.to);
    return [{ x1: parent.ring, y1: parent.y, x2, y2: yOf(place), width: Math.max(NARROWEST, WIDEST * child.reached) }];
  });
  const dotY = yOf(shown.length - 1);
  const { numeral, words } = inTen(plan.chance.value);
  return {
    mark: plan.mark,
    name: clip(plan.name, (narrow ? scheme.width - 8 : years.horizon) - 34, name, serifMeasure, true),
    top,
    height: head + foot + row * shown.length,
    rows,
    lines,
    dot: dotOf(whenItWorks, dotY, text, years),
    numeral,
    words,
    percent: percent(plan.chance.value),
    error: plusMinus(plan.chance.low, plan.chance.high),
    guesses: plan.guesses ? timelineText.guesses(percentRange(plan.guesses.low, plan.guesses.high)) : '',
    chance: chanceMark(plan, narrow ? 120 : scheme.right - 20),
  };
}

function dotOf({ p10, p50, p90 }: PlanOutlook['whenItWorks'], y: number, text: number, years: Calendar): TimelineLane['dot'] {
  if (p50 === null) return null;
  const from = years.x(p10 ?? p50);
  const to = Math.min(years.x(p90 ?? years.lastYear), years.horizon);
  const wide = YEAR_WIDTH * text;
  const yearX = to + 7 + wide <= years.horizon - 3 ? to + 7 : from - 7 - wide;
  return { x: years.x(p50), y, from, to, year: String(p50), yearX };
}

function summaryOf(plans: readonly PlanOutlook[], last: number): string {
  const said = plans.map(({ name, chance, whenItWorks: { p10, p50, p90 } }) => {
    const { numeral, words } = inTen(chance.value);
    const when = p50 === null ? '' : timelineText.half(p50, `${String(p10 ?? p50)}–${String(p90 ?? last)}`);
    return timelineText.plan(name, `${numeral} ${words}`, when);
  });
  return `${said.join('. ')}.`;
}

/** Lays the plans out on one calendar: numbers and words in px, nothing drawn. */
export function timelineOf({ startYear, lastYear, plans }: TimelineOf, scheme: Scheme): Timeline {
  const years = calendar({ startYear, lastYear, width: scheme.width, left: scheme.left, right: scheme.right });
  let top = scheme.axis;
  const lanes = plans.map((plan) => {
    const lane = laneOf(plan, top, startYear, scheme, years);
    top += lane.height;
    return lane;
  });
  return { scheme, calendar: years, height: top, lanes, summary: summaryOf(plans, lastYear) };
}
