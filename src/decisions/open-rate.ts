import type { Columns } from '../results/columns.ts';
import type { Interval } from '../results/outlook.ts';
import { clearlyDifferent } from '../statistics/compare.ts';
import { Z95 } from '../statistics/interval.ts';
import { meanDifference } from './outcome.ts';

/** Whether the years that one way gains over another are worth its hours. */
export type Verdict =
  /** The years do not clearly differ. */
  | 'unclear'
  /** Gains years, and takes more hours; or loses years, and saves hours. */
  | 'costs'
  | 'saves'
  /** Gains years and takes no more hours; or loses years and saves none. */
  | 'better'
  | 'worse';

export interface YearsForHours {
  /** Years by which the proven tree comes sooner on average, counting up to the last judging year. */
  readonly yearsGained: Interval;
  readonly moreHours: Interval;
  readonly verdict: Verdict;
  /** Hours for each year gained, by whichever of the two gains years; null unless it takes more hours for them. */
  readonly hoursPerYear: Interval | null;
}

/** Years from the first spring to the proven tree in each future, and where there is none, to the end of the last judging year. */
export const yearsWaited = (columns: Columns): Int32Array => columns.run('yearProven').map((year) => (year < 0 ? columns.shape.years : year));

/**
 * Compares one way with another on the same futures.
 *
 * **Source:** restricted mean time to an event, Royston, P. & Parmar, M. K. B. (2013) BMC Med. Res. Methodol. 13:152 (from memory).
 */
export function yearsForHours(way: Columns, other: Columns): YearsForHours {
  const [waited, otherWaited] = [yearsWaited(way), yearsWaited(other)];
  const [hours, otherHours] = [way.amount('totalHours'), other.amount('totalHours')];
  const yearsGained = meanDifference(otherWaited, waited);
  const moreHours = meanDifference(hours, otherHours);
  const verdict = verdictOf(yearsGained, moreHours);
  const ratio =
    verdict === 'costs' || verdict === 'saves'
      ? ratioOfMeans(
          hours.map((value, r) => value - (otherHours[r] ?? 0)),
          Float64Array.from(waited, (value, r) => (otherWaited[r] ?? 0) - value),
        )
      : null;
  return { yearsGained, moreHours, verdict, hoursPerYear: ratio };
}

function verdictOf(years: Interval, hours: Interval): Verdict {
  if (!clearlyDifferent(years)) return 'unclear';
  if (years.value > 0) return hours.value > 0 ? 'costs' : 'better';
  return hours.value < 0 ? 'saves' : 'worse';
}

/**
 * Returns mean(a) / mean(b) of paired values with its 95 % interval: all ratios ρ for which a − ρ·b could have mean 0.
 * @returns null where the mean of b is not clearly other than 0: then the interval would have no end
 *
 * **Source:** Fieller, E. C. (1954) J. R. Stat. Soc. B 16:175–185.
 */
export function ratioOfMeans(a: ArrayLike<number>, b: ArrayLike<number>): Interval | null {
  const n = a.length;
  const [meanA, meanB] = [meanOver(a), meanOver(b)];
  let [aa, ab, bb] = [0, 0, 0];
  for (let r = 0; r < n; r += 1) {
    const [x, y] = [(a[r] ?? 0) - meanA, (b[r] ?? 0) - meanB];
    aa += x * x;
    ab += x * y;
    bb += y * y;
  }
  const scale = (Z95 * Z95) / (n - 1) / n;
  // Solves (meanA − ρ meanB)² = z² (s²a − 2ρ s²ab + ρ² s²b)/n.
  const square = meanB * meanB - scale * bb;
  const middle = meanA * meanB - scale * ab;
  const constant = meanA * meanA - scale * aa;
  if (!(n > 1 && square > 0)) return null;
  const root = Math.sqrt(Math.max(0, middle * middle - square * constant));
  return { value: meanA / meanB, low: (middle - root) / square, high: (middle + root) / square };
}

function meanOver(values: ArrayLike<number>): number {
  let sum = 0;
  for (let r = 0; r < values.length; r += 1) sum += values[r] ?? 0;
  return sum / values.length;
}
