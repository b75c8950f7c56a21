import type { Columns } from '../../results/columns.ts';
import type { Interval } from '../../results/outlook.ts';
import { clearlyDifferent, comparePaired } from '../../statistics/compare.ts';
import { wilson } from '../../statistics/interval.ts';
import { differenceOf, outcomeOf, type Difference, type Outcome } from '../outcome.ts';
import type { Variant } from '../steps.ts';
import type { Growing } from './growing.ts';
import type { Hands, IfForm, IfId, LeafTest, Way } from './way.ts';

/** The chance when it happens in that year, and its difference from the plan as it stands on the same futures. */
export interface IfPoint {
  readonly year: number;
  /** As sharp as the plan as it stands lets it be (see `pointOf`). */
  readonly chance: Interval;
  readonly minusAsItStands: Interval;
  readonly clear: boolean;
  /** Of the trees proven in the futures of this point, the share that truly is what was seen; null when none was. */
  readonly trulyGood: Interval | null;
}

/** What one thing that can happen comes to. */
export interface IfLine {
  readonly if: IfId;
  readonly form: IfForm;
  readonly garden: string | null;
  /** Calendar year in which it happens. */
  readonly year: number;
  readonly outcome: Outcome;
  readonly minusAsItStands: Difference;
  /** Of the shares of futures in which a tree is proven that truly is what was seen. */
  readonly trulyGoodMinus: { readonly chance: Interval; readonly clear: boolean };
  /** land: chance of a tree proven before; all there is for whoever finds no other ground. */
  readonly before: Interval | null;
  /** Null for what has none; empty until it has been run. Each point rests on `curveFutures` at least. */
  readonly curve: readonly IfPoint[] | null;
  readonly curveFutures: number;
  readonly leafTest: LeafTest | null;
  readonly hands: Hands | null;
}

/**
 * Each of the first years is run, for there the curves bend: a frost takes the first cross and not the second, a test comes in time for its
 * seedlings or does not. Later they are smooth, and so many years over the whole are enough.
 */
const FIRST_YEARS = 5;
const SPREAD_YEARS = 9;

/** A line while it is being worked out: what to run for it, and what has been found. */
export class LineRun {
  readonly main: Variant;
  readonly year: number;
  private readonly points: readonly { readonly year: number; readonly variant: Variant }[];

  /** @param stands the plan as it stands */
  constructor(
    private readonly way: Way,
    private readonly stands: Variant,
    startYear: number,
    asked: number | undefined,
  ) {
    this.year = asked ?? way.year;
    this.main = way.variant(this.year);
    const { whole } = way;
    this.points = whole
      ? way.years.map((year) => ({ year, variant: whole.variant }))
      : spreadOut(way.years, this.year).map((year) => ({ year, variant: year === this.year ? this.main : way.variant(year) }));
    this.startYear = startYear;
  }
  private readonly startYear: number;

  get curveVariants(): readonly Variant[] {
    return this.points.map(({ variant }) => variant);
  }

  /** @returns undefined until both the plan as it stands and this have been run */
  line(growing: Growing): IfLine | undefined {
    const { way, year, startYear } = this;
    const stands = growing.of(this.stands);
    const mine = growing.of(this.main);
    if (!stands || !mine) return undefined;
    const curve = way.years.length === 0 ? null : this.curve(growing, stands);
    return {
      if: way.if,
      form: way.form,
      garden: way.garden,
      year,
      outcome: outcomeOf(mine, startYear),
      minusAsItStands: differenceOf(mine, stands),
      trulyGoodMinus: trulyGoodMinus(mine, stands),
      before: way.if === 'land' ? chanceOf(provenBy(stands, year - 1 - startYear)) : null,
      curve: curve?.points ?? null,
      curveFutures: curve?.futures ?? 0,
      leafTest: way.leafTest ?? null,
      hands: way.hands ?? null,
    };
  }

  private curve(growing: Growing, stands: Columns): { readonly points: readonly IfPoint[]; readonly futures: number } {
    const found = this.points.map(({ year, variant }) => ({ year, columns: growing.of(variant) }));
    const futures = Math.min(stands.runs, ...found.map(({ columns }) => columns?.runs ?? 0));
    if (futures === 0) return { points: [], futures };
    const standing = provenBy(stands, Infinity);
    const until = (year: number) => (this.way.whole ? this.way.whole.until(year) - this.startYear : Infinity);
    const points = found.flatMap(({ year, columns }) =>
      columns ? [{ ...pointOf(year, provenBy(columns, until(year)), standing), trulyGood: trulyGoodBy(columns, until(year)) }] : [],
    );
    return { points, futures };
  }
}

/** By future: year proven from 1 on, 0 where none was by the year given (index). */
function provenBy(columns: Columns, last: number): Int32Array {
  return columns.run('yearProven').map((year) => (year >= 0 && year <= last ? year + 1 : 0));
}

/** Of the trees proven by the year given (index), the share that truly is what was seen. */
function trulyGoodBy(columns: Columns, last: number): Interval | null {
  const inTime = columns.run('yearProven').map((year) => (year >= 0 && year <= last ? 1 : 0));
  const total = (values: Int32Array) => values.reduce((sum, value, i) => sum + (inTime[i] === 1 ? value : 0), 0);
  const proven = total(columns.run('proven'));
  return proven > 0 ? wilson(total(columns.run('trulyGood')), proven) : null;
}

function trulyGoodMinus(mine: Columns, stands: Columns): IfLine['trulyGoodMinus'] {
  const { chanceDifference: chance } = comparePaired(mine.run('trulyGood').map(Math.sign), stands.run('trulyGood').map(Math.sign));
  return { chance, clear: clearlyDifferent(chance) };
}

const chanceOf = (years: Int32Array): Interval => wilson(years.filter((year) => year > 0).length, years.length);

/**
 * The plan as it stands has been run for more futures than the points of a curve, so it serves as a control variate: what it did better or
 * worse in the point's futures than in all of its own is taken off, as far as the two go together. A point that changes nothing then lies on
 * the plan's own chance. Its interval is the narrower of that of its own share and that of the difference.
 *
 * **Source:** Law & Kelton, Simulation Modeling and Analysis, ch. 11 (from memory): mean(Y) − β·(mean(X) − known mean), β = cov(X, Y)/var(X).
 */
function pointOf(year: number, mine: Int32Array, allStands: Int32Array): Omit<IfPoint, 'trulyGood'> {
  const runs = Math.min(mine.length, allStands.length);
  const [own, stands] = [mine.slice(0, runs), allStands.slice(0, runs)];
  const { chanceDifference: minus } = comparePaired(own, stands);
  const own95 = chanceOf(own);
  const [y, x, all] = [own95.value, chanceOf(stands).value, chanceOf(allStands).value];
  const both = own.filter((proven, i) => proven > 0 && (stands[i] ?? 0) > 0).length / runs;
  const beta = x > 0 && x < 1 ? (both - x * y) / (x * (1 - x)) : 0;
  const value = Math.min(1, Math.max(0, y - beta * (x - all)));
  const around = own95.high - own95.low < minus.high - minus.low ? own95 : minus;
  const chance = { value, low: Math.max(0, value + around.low - around.value), high: Math.min(1, value + around.high - around.value) };
  return { year, chance, minusAsItStands: minus, clear: clearlyDifferent(minus) };
}

/** The first years, others that span the whole up to the last, and the one of the line among them. */
export function spreadOut(years: readonly number[], also: number): readonly number[] {
  const step = Math.max(1, (years.length - 1) / (SPREAD_YEARS - 1));
  const picked = Array.from({ length: Math.min(years.length, SPREAD_YEARS) }, (_, i) => years[Math.round(i * step)]);
  const within = years.includes(also) ? [also] : [];
  return [...new Set([...years.slice(0, FIRST_YEARS), ...picked.flatMap((year) => year ?? []), ...within])].sort((a, b) => a - b);
}
