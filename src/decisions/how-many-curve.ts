import type { Columns } from '../results/columns.ts';
import { FAILURES, type Failure, type Interval } from '../results/outlook.ts';
import { wilson } from '../statistics/interval.ts';
import { firstReaching, isotonic, type Reached } from '../statistics/isotonic.ts';
import { differenceOf, outcomeOf, type Difference, type Outcome } from './outcome.ts';

const NEVER = -1;

/** The plan with one number tried. */
export interface Point {
  readonly value: number;
  readonly asItStands: boolean;
  readonly outcome: Outcome;
  /** Of a proven tree by each of the years asked about, in their order. */
  readonly chances: readonly Interval[];
  /** Share of the futures that go over the hours limit in some year; null when no limit is stated. */
  readonly overHours: Interval | null;
  /** Of the futures that come to the generation, those in which all seedlings wanted come up; null where none comes to it. */
  readonly allRaised: Interval | null;
  /** This number minus the present one; null for that itself. */
  readonly minusPresent: Difference | null;
  /** The commonest reason of the futures without a proven tree; null when there are none. */
  readonly heldBack: HeldBack | null;
}

export interface HeldBack {
  readonly failure: Failure;
  /** Of all futures. */
  readonly share: Interval;
  /** Name of the generation that most of them ended in. */
  readonly generation: string;
}

/** A number read off a curve. */
export interface ReadOff extends Reached {
  readonly year: number;
  readonly chance: number;
  /** From the curves through the ends of the pointwise intervals; null: not reached at any number tried. */
  readonly low: number | null;
  readonly high: number | null;
}

export interface PointOf {
  readonly startYear: number;
  readonly hoursLimit: number | null;
  /** Name of each generation among the columns. */
  readonly names: readonly string[];
  readonly column: number;
}

export function pointOf(
  of: PointOf,
  years: readonly number[],
  mine: Columns,
  tried: { value: number; asItStands: boolean; seedlings: number },
  present: Columns,
): Point {
  const { runs } = mine;
  const { value, asItStands, seedlings } = tried;
  const proven = mine.run('yearProven');
  const first = mine.generation(of.column, 'firstPollination');
  const reached = count(first, (year) => year !== NEVER);
  const limit = of.hoursLimit;
  return {
    value,
    asItStands,
    outcome: outcomeOf(mine, of.startYear),
    chances: years.map((year) =>
      wilson(
        count(proven, (at) => at !== NEVER && of.startYear + at <= year),
        runs,
      ),
    ),
    overHours:
      limit === null
        ? null
        : wilson(
            count(mine.amount('busiestHours'), (hours) => hours > limit),
            runs,
          ),
    allRaised:
      reached > 0
        ? wilson(
            count(mine.generation(of.column, 'seedlings'), (n) => n >= seedlings),
            reached,
          )
        : null,
    minusPresent: asItStands ? null : differenceOf(mine, present),
    heldBack: heldBackIn(mine, of.names),
  };
}

function count(values: Int32Array | Float64Array, test: (value: number) => boolean): number {
  let n = 0;
  for (const value of values) if (test(value)) n += 1;
  return n;
}

/** The commonest reason, and the generation (the last begun) in which most futures with that reason ended. */
function heldBackIn(columns: Columns, names: readonly string[]): HeldBack | null {
  const reasons = columns.run('failure');
  const counts = FAILURES.map((_, reason) => count(reasons, (code) => code === reason));
  const most = Math.max(...counts);
  const reason = counts.indexOf(most);
  const failure = FAILURES[reason];
  if (most === 0 || failure === undefined) return null;
  const begun = names.map((_, g) => columns.generation(g, 'firstPollination'));
  const ended = names.map(() => 0);
  reasons.forEach((code, run) => {
    if (code !== reason) return;
    const last = Math.max(
      0,
      begun.findLastIndex((column) => column[run] !== NEVER),
    );
    ended[last] = (ended[last] ?? 0) + 1;
  });
  return { failure, share: wilson(most, columns.runs), generation: names[ended.indexOf(Math.max(...ended))] ?? '' };
}

/** Shares of the last year's chance that the two earlier years are chosen by. */
const EARLIER = [0.5, 0.25] as const;

/**
 * Three calendar years, rising: those by which a quarter and half of the chance at the last judging year are there, or the years before
 * where they fall together; and that last year. Fewer where nothing is proven any earlier, for such a year tells nothing.
 */
export function tellingYears(columns: Columns, startYear: number): readonly number[] {
  const last = startYear + columns.shape.years - 1;
  const proven = Array.from(columns.run('yearProven').filter((year) => year !== NEVER)).sort((a, b) => a - b);
  const first = proven[0];
  const years = [last];
  for (const share of EARLIER) {
    const at = proven[Math.max(1, Math.ceil(share * proven.length)) - 1];
    const year = Math.min(startYear + (at ?? 0), (years[0] ?? last) - 1);
    if (first !== undefined && year >= startYear + first) years.unshift(year);
  }
  return years;
}

/**
 * Reads the numbers off at which each chance is reached by each year.
 * @param rises whether the chance cannot fall with the number: the curve through the points is made to rise first
 */
export function readOffs(points: readonly Point[], years: readonly number[], chances: readonly number[], rises: boolean): readonly ReadOff[] {
  return years.flatMap((year, y) => chances.map((chance) => ({ year, chance, ...readOff(points, y, chance, rises) })));
}

export function readOff(points: readonly Point[], y: number, chance: number, rises: boolean): Omit<ReadOff, 'year' | 'chance'> {
  const places = points.map(({ value }) => value);
  const reached = (end: keyof Interval) => firstReaching(places, curve(points, y, end, rises), chance);
  return { ...reached('value'), low: reached('high').at, high: reached('low').at };
}

/** Heights of the curve of a year at the numbers tried. */
export function curve(points: readonly Point[], y: number, end: keyof Interval, rises: boolean): readonly number[] {
  const heights = points.map(({ chances }) => chances[y]?.[end] ?? 0);
  return rises ? isotonic(heights) : heights;
}
