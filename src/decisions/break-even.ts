import { rootOf, Stream } from '../random/stream.ts';
import { quantileSorted } from '../statistics/order.ts';

/** Resamples behind the interval of a line: its 2.5 and 97.5 % points then rest on five resamples each. */
const RESAMPLES = 200;

/** Take of the graft, 0 … 1, above which grafting wins; with its 95 % interval. 0: it wins at any take; 1: at none. */
export interface BreakEven {
  readonly take: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Returns the values closest to these (least squares) that nowhere fall.
 *
 * **Source:** pool adjacent violators, Ayer, Brunk, Ewing, Reid & Silverman (1955) Ann. Math. Stat. 26:641–647 (from memory).
 */
export function neverFalling(values: ArrayLike<number>): Float64Array {
  const sums: number[] = [];
  const counts: number[] = [];
  for (let i = 0; i < values.length; i += 1) {
    let sum = values[i] ?? 0;
    let count = 1;
    for (let top = sums.at(-1); top !== undefined && top / (counts.at(-1) ?? 1) >= sum / count; top = sums.at(-1)) {
      sum += top;
      count += counts.at(-1) ?? 0;
      sums.pop();
      counts.pop();
    }
    sums.push(sum);
    counts.push(count);
  }
  return Float64Array.from(sums.flatMap((sum, i) => Array.from({ length: counts[i] ?? 0 }, () => sum / (counts[i] ?? 1))));
}

/**
 * Returns where a gain that grows with the take turns positive, linear between the takes looked at.
 * @param takes rising
 * @param gains one for each take, in any unit; made to grow first (see `neverFalling`)
 */
export function crossing(takes: readonly number[], gains: ArrayLike<number>): number {
  const grown = neverFalling(gains);
  const above = grown.findIndex((gain) => gain > 0);
  if (above === 0) return 0;
  const [low, high, from, to] = [grown[above - 1], grown[above], takes[above - 1], takes[above]];
  if (low === undefined || high === undefined || from === undefined || to === undefined) return 1;
  return from + ((to - from) * -low) / (high - low);
}

/**
 * Returns the break-even take of each column of a map with its 95 % interval, by resampling the futures: all cells of a map live through
 * the same ones, so a future is drawn for all of them at once.
 * @param takes rising
 * @param columns for each column, for each take, what grafting gains in each future: −1, 0 or 1
 * @param word shuffle word: the same word gives the same interval
 *
 * **Source:** percentile bootstrap, Efron, B. & Tibshirani, R. J. (1993) An Introduction to the Bootstrap, ch. 13 (from memory).
 */
export function breakEvens(takes: readonly number[], columns: readonly (readonly Int8Array[])[], word: string): readonly BreakEven[] {
  const futures = columns[0]?.[0]?.length ?? 0;
  const unequal = columns.map((column) => column.map(unequalFutures));
  const once = new Float64Array(futures).fill(1);
  const point = unequal.map((column) =>
    crossing(
      takes,
      column.map((cell) => weighed(cell, once)),
    ),
  );
  const resampled = columns.map(() => new Float64Array(RESAMPLES));
  const stream = new Stream(rootOf(`${word} / resampled futures`));
  const weights = new Float64Array(futures);
  for (let b = 0; b < RESAMPLES; b += 1) {
    stream.future(1, b).key(1);
    weights.fill(0);
    for (let i = 0; i < futures; i += 1) {
      const at = Math.floor(stream.uniform() * futures);
      weights[at] = (weights[at] ?? 0) + 1;
    }
    unequal.forEach((column, c) => {
      const lines = resampled[c];
      if (lines)
        lines[b] = crossing(
          takes,
          column.map((cell) => weighed(cell, weights)),
        );
    });
  }
  return point.map((take, c) => {
    const sorted = (resampled[c] ?? new Float64Array([take])).sort();
    return { take, low: Math.min(take, quantileSorted(sorted, 0.025)), high: Math.max(take, quantileSorted(sorted, 0.975)) };
  });
}

/** Most futures end alike either way; only the others are summed again and again. */
interface Unequal {
  readonly at: Int32Array;
  readonly gain: Int8Array;
}

function unequalFutures(gains: Int8Array): Unequal {
  const at = Int32Array.from(gains.keys()).filter((i) => gains[i] !== 0);
  return { at, gain: Int8Array.from(at, (i) => gains[i] ?? 0) };
}

function weighed({ at, gain }: Unequal, weights: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < at.length; i += 1) sum += (gain[i] ?? 0) * (weights[at[i] ?? 0] ?? 0);
  return sum;
}
