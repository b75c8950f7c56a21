import type { Comparison, Interval } from '../results/outlook.ts';
import { wilson, Z95 } from './interval.ts';

/** A comparison without the names of the plans. */
export type PairedComparison = Omit<Comparison, 'a' | 'b'>;

/**
 * Returns a paired difference of two shares, a − b, with its 95 % interval.
 *
 * The value is the plain difference. The interval is the adjusted Wald interval for paired shares (one of each discordant pair added),
 * which keeps its level where few pairs disagree, when a normal interval on the per-future differences shrinks to nothing.
 * @param onlyA futures in which only a succeeds
 * @param onlyB futures in which only b succeeds
 * @param of all futures; 0 gives 0 with the interval −1 … 1
 *
 * **Source:** Bonett, D. G. & Price, R. M. (2012) J. Educ. Behav. Stat. 37:479–488 (from memory).
 */
export function pairedDifference(onlyA: number, onlyB: number, of: number): Interval {
  if (!(of > 0)) return { value: 0, low: -1, high: 1 };
  const a = (onlyA + 1) / (of + 2);
  const b = (onlyB + 1) / (of + 2);
  const half = Z95 * Math.sqrt((a + b - (a - b) * (a - b)) / (of + 2));
  return { value: (onlyA - onlyB) / of, low: Math.max(-1, a - b - half), high: Math.min(1, a - b + half) };
}

/**
 * Compares two plans on the same futures.
 * @param a year proven in each future, 0 for never
 * @param b the same of the other plan, as long as `a`
 * @returns share of the futures in which each is proven sooner (a proven tree is sooner than none), or in which they tie, each with its
 *   Wilson interval; and the difference of the chances (see `pairedDifference`)
 * @throws RangeError when the columns differ in length
 *
 * **Source:** Wilson (1927); Bonett & Price (2012).
 */
export function comparePaired(a: ArrayLike<number>, b: ArrayLike<number>): PairedComparison {
  const of = a.length;
  if (b.length !== of) throw new RangeError('Two plans can only be compared on the same futures.');
  let aSooner = 0;
  let bSooner = 0;
  let onlyA = 0;
  let onlyB = 0;
  for (let i = 0; i < of; i++) {
    const yearA = a[i] ?? 0;
    const yearB = b[i] ?? 0;
    if (yearA === yearB) continue;
    if (yearB === 0 || (yearA !== 0 && yearA < yearB)) aSooner++;
    else bSooner++;
    if (yearB === 0) onlyA++;
    if (yearA === 0) onlyB++;
  }
  return {
    aSooner: wilson(aSooner, of),
    bSooner: wilson(bSooner, of),
    tied: wilson(of - aSooner - bSooner, of),
    chanceDifference: pairedDifference(onlyA, onlyB, of),
  };
}

/** Tells whether an interval of a difference leaves out 0. */
export function clearlyDifferent({ low, high }: Interval): boolean {
  return low > 0 || high < 0;
}
