import type { Programme, Cross, Kind } from '../model/programme.ts';
import { meanOf } from '../model/mean.ts';
import { aliveAt } from '../statistics/graft.ts';
import { amountAxis, learnGrid, shareAxis } from '../statistics/learn-grid.ts';
import type { Belief } from '../statistics/weighed.ts';
import { wintersBy } from './counts.ts';
import { shareDensity, timeDensity } from './priors.ts';
import type { Stretch } from './stretch.ts';

/** Months by which half of the weak can be dead, at the earliest and the latest looked at. */
const EARLIEST_HALF = 0.1;
const LATEST_HALF = 600;

/** Weak ones of those that came up, of one batch. */
export interface WeakCount {
  readonly weak: number;
  readonly of: number;
}

/** Share of ordinary seedlings alive at an age in years. */
function ordinary({ firstYearLoss, yearlyLoss }: Kind, age: number): number {
  const winters = wintersBy(age);
  return winters === 0 ? 1 : (1 - meanOf(firstYearLoss)) * (1 - meanOf(yearlyLoss)) ** (winters - 1);
}

/**
 * Returns belief about the share of weak seedlings and the months by which half of them are dead, from dated counts of the living of batches
 * on their own roots: alive = S(age)·((1 − w) + w·2^(−(months − onset)/H)). Onset and ordinary losses stand at their means.
 * @param weakCounts weak ones counted beside; they speak to the share
 *
 * **Source:** docs/model.md §7.
 */
export function learnWeakness(
  cross: Cross,
  kind: Kind,
  stretches: readonly Stretch[],
  weakCounts: readonly WeakCount[],
): { readonly share: Belief; readonly half: Belief } | undefined {
  const { weakness } = cross;
  if (!weakness || stretches.length === 0) return undefined;
  const onset = meanOf(weakness.onset);
  // A count of survivors states no months: then any time is as good as its tenth or tenfold.
  const half = 'halfLife' in weakness.course ? timeDensity(weakness.course.halfLife) : (months: number) => 1 / months;
  const alive = (age: number, weak: number, months: number): number => ordinary(kind, age) * (1 - weak + weak * aliveAt(12 * age, onset, months));
  const [share, time] = learnGrid([shareAxis(shareDensity(weakness.share)), amountAxis(half, EARLIEST_HALF, LATEST_HALF)], ([weak = 0, months = 1]) => {
    const counted = weakCounts.reduce((sum, { weak: hits, of }) => sum + hits * Math.log(weak) + (of - hits) * Math.log1p(-weak), 0);
    return stretches.reduce((sum, stretch) => {
      const left = Math.min(1 - 1e-12, Math.max(1e-12, alive(stretch.until, weak, months) / alive(stretch.age, weak, months)));
      return sum + stretch.alive * Math.log(left) + (stretch.atRisk - stretch.alive) * Math.log1p(-left);
    }, counted);
  });
  return share && time && { share, half: time };
}

/** Where the months stand in the document. */
export const coursePath = (programme: Programme, cross: Cross): (string | number)[] => ['crosses', programme.crosses.indexOf(cross), 'weakness', 'course'];
