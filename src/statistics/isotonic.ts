import { log, power } from '../random/elementary.ts';

/**
 * Returns the values closest to these (weighted least squares) that nowhere fall.
 * @param values in the order of what they should rise with
 * @param weights not negative, as many as values; all 1 if left out
 *
 * **Source:** pool adjacent violators: Ayer, Brunk, Ewing, Reid & Silverman (1955) Ann. Math. Stat. 26:641–647; Barlow, Bartholomew, Bremner
 * & Brunk (1972) Statistical Inference under Order Restrictions, ch. 1 (both from memory).
 */
export function isotonic(values: readonly number[], weights?: readonly number[]): readonly number[] {
  const pools: { mean: number; weight: number; length: number }[] = [];
  values.forEach((value, i) => {
    let pool = { mean: value, weight: weights?.[i] ?? 1, length: 1 };
    for (let last = pools.at(-1); last !== undefined && last.mean >= pool.mean; last = pools.at(-1)) {
      const weight = last.weight + pool.weight;
      const mean = weight > 0 ? (last.mean * last.weight + pool.mean * pool.weight) / weight : pool.mean;
      pool = { mean, weight, length: last.length + pool.length };
      pools.pop();
    }
    pools.push(pool);
  });
  return pools.flatMap(({ mean, length }) => Array.from({ length }, () => mean));
}

/** Where a curve that was looked at in some places reaches a level. */
export interface Reached {
  /** Null where it does not in any place looked at. */
  readonly at: number | null;
  /** It is there already in the first place looked at, so that less may do. */
  readonly already: boolean;
}

/**
 * Returns where a curve first reaches a level, linear between the places looked at: on the logarithm of the place where all are positive,
 * on the place itself where they are not.
 * @param places rising
 * @param heights one for each place
 */
export function firstReaching(places: readonly number[], heights: readonly number[], level: number): Reached {
  const after = heights.findIndex((height) => height >= level);
  const [first] = places;
  if (after < 0 || first === undefined) return { at: null, already: false };
  if (after === 0) return { at: first, already: true };
  const [from, to, low, high] = [places[after - 1] ?? first, places[after] ?? first, heights[after - 1] ?? level, heights[after] ?? level];
  const share = high > low ? (level - low) / (high - low) : 1;
  return { at: first > 0 ? from * power(to / from, share) : from + (to - from) * share, already: false };
}

/** Returns the height of a curve at a place, by the same interpolation; beyond the ends, the height there. */
export function heightAt(places: readonly number[], heights: readonly number[], place: number): number {
  const after = places.findIndex((x) => x >= place);
  const [to, high, from, low] = [places[after], heights[after], places[after - 1], heights[after - 1]];
  if (to === undefined || high === undefined) return heights.at(-1) ?? NaN;
  if (from === undefined || low === undefined) return high;
  const share = (places[0] ?? 0) > 0 ? log(place / from) / log(to / from) : (place - from) / (to - from);
  return low + (high - low) * share;
}
