import type { Columns } from '../results/columns.ts';
import type { Interval, Spread, YearSpread } from '../results/outlook.ts';
import { clearlyDifferent, comparePaired } from '../statistics/compare.ts';
import { wilson, Z95 } from '../statistics/interval.ts';
import { spread, yearSpread } from '../statistics/order.ts';

const NEVER = -1;

/** What a variant of a plan comes to. */
export interface Outcome {
  readonly futures: number;
  /** Of a proven tree by the last judging year. */
  readonly chance: Interval;
  /** Of the trees proven, the share that truly is what was seen; null when none was proven. */
  readonly trulyGood: Interval | null;
  /** Calendar years by which 1, 5 and 9 of ten futures have a proven tree. */
  readonly yearProven: YearSpread;
  readonly seedlings: Spread;
  readonly fruiting: Spread;
  readonly grafts: Spread;
  readonly treeYears: Spread;
  readonly totalHours: Spread;
  readonly busiestHours: Spread;
}

/** One variant minus another, future by future. */
export interface Difference {
  /** Of the chances. */
  readonly chance: Interval;
  /** Whether the chances differ by more than the futures made leave open; false: no clear difference. */
  readonly clear: boolean;
  /** Shares of the futures in which this one, or the other, has its proven tree in an earlier year. */
  readonly sooner: Interval;
  readonly later: Interval;
  /** Of the means. */
  readonly seedlings: Interval;
  readonly grafts: Interval;
  readonly treeYears: Interval;
  readonly totalHours: Interval;
}

/** @param startYear calendar year of the programme's first spring */
export function outcomeOf(columns: Columns, startYear: number): Outcome {
  const { runs } = columns;
  const years = columns.run('yearProven');
  const proven = total(columns.run('proven'));
  const by = yearSpread(years, NEVER, runs);
  const calendar = (year: number | null) => (year === null ? null : startYear + year);
  return {
    futures: runs,
    chance: wilson(years.filter((year) => year !== NEVER).length, runs),
    trulyGood: proven > 0 ? wilson(total(columns.run('trulyGood')), proven) : null,
    yearProven: { p10: calendar(by.p10), p50: calendar(by.p50), p90: calendar(by.p90) },
    seedlings: spread(columns.run('seedlings')),
    fruiting: spread(columns.run('fruiting')),
    grafts: spread(columns.run('grafts')),
    treeYears: spread(columns.amount('treeYears')),
    totalHours: spread(columns.amount('totalHours')),
    busiestHours: spread(columns.amount('busiestHours')),
  };
}

/**
 * Compares two variants on the same futures, a − b.
 * @throws RangeError when they were not run over equally many futures
 */
export function differenceOf(a: Columns, b: Columns): Difference {
  const fromOne = (columns: Columns) => columns.run('yearProven').map((year) => year + 1);
  const { aSooner, bSooner, chanceDifference } = comparePaired(fromOne(a), fromOne(b));
  return {
    chance: chanceDifference,
    clear: clearlyDifferent(chanceDifference),
    sooner: aSooner,
    later: bSooner,
    seedlings: meanDifference(a.run('seedlings'), b.run('seedlings')),
    grafts: meanDifference(a.run('grafts'), b.run('grafts')),
    treeYears: meanDifference(a.amount('treeYears'), b.amount('treeYears')),
    totalHours: meanDifference(a.amount('totalHours'), b.amount('totalHours')),
  };
}

/**
 * Returns the mean of a − b over paired values with its 95 % interval, mean ± 1.96·SD/√n (central limit theorem).
 * @throws RangeError when the lists differ in length
 */
export function meanDifference(a: ArrayLike<number>, b: ArrayLike<number>): Interval {
  const n = a.length;
  if (b.length !== n) throw new RangeError('Two variants can only be compared on the same futures.');
  let mean = 0;
  let squares = 0;
  for (let i = 0; i < n; i += 1) {
    const difference = (a[i] ?? 0) - (b[i] ?? 0);
    const step = difference - mean;
    mean += step / (i + 1);
    squares += step * (difference - mean);
  }
  // One pair says nothing of its error.
  const half = n > 1 ? Z95 * Math.sqrt(squares / (n - 1) / n) : Math.abs(mean);
  return { value: mean, low: mean - half, high: mean + half };
}

function total(values: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) sum += values[i] ?? 0;
  return sum;
}
