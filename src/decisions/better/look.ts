import type { Programme } from '../../model/programme.ts';
import type { Columns } from '../../results/columns.ts';
import type { Point } from '../../statistics/fronts.ts';
import { wilson } from '../../statistics/interval.ts';
import type { Candidate } from './candidate.ts';

/** A plan is within the limits when no more than this share of its futures has a year above the hours or the money there is. */
export const OVER_AT_MOST = 0.5;

const NEVER = -1;

/** What was seen of a candidate so far, over the first so many futures. */
export interface Look {
  readonly candidate: Candidate;
  readonly futures: number;
  /** Means after each step of futures, the last for all of them. */
  readonly points: readonly Point[];
  /** Sums over the futures, and futures over the limits. */
  readonly years: number;
  readonly trees: number;
  readonly over: number;
}

export const unseen = (one: Candidate): Look => ({ candidate: one, futures: 0, points: [], years: 0, trees: 0, over: 0 });

/** Calendar year of the proven tree in each future; a future without one counts as the year after the last judging year. */
export function yearsOf({ startYear, lastYear }: Programme, columns: Columns): Float64Array {
  return Float64Array.from(columns.run('yearProven'), (year) => (year === NEVER ? lastYear + 1 : startYear + year));
}

/** Futures in which some year asks for more hours or money than there is. */
export function overLimits({ limits }: Programme, columns: Columns): number {
  const hours = columns.amount('busiestHours');
  const money = columns.amount('busiestMoney');
  return hours.reduce((over, value, i) => over + (value > (limits.hoursPerYear ?? Infinity) || (money[i] ?? 0) > (limits.moneyPerYear ?? Infinity) ? 1 : 0), 0);
}

const sum = (values: Int32Array | Float64Array) => {
  let total = 0;
  for (const value of values) total += value;
  return total;
};

/** Adds the futures that follow. */
export function seenMore(look: Look, columns: Columns): Look {
  const futures = look.futures + columns.runs;
  const years = look.years + sum(yearsOf(look.candidate.programme, columns));
  const trees = look.trees + sum(columns.run('seedlings'));
  const over = look.over + overLimits(look.candidate.programme, columns);
  return { candidate: look.candidate, futures, years, trees, over, points: [...look.points, { years: years / futures, trees: trees / futures }] };
}

/** Whether it keeps the limits, as far as was seen. */
export const allowed = ({ over, futures }: Pick<Look, 'over' | 'futures'>): boolean => over <= OVER_AT_MOST * futures;

/** Whether it surely does not. */
export const surelyOver = ({ over, futures }: Look): boolean => wilson(over, futures).low > OVER_AT_MOST;
