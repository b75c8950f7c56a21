import { log, power } from '../random/elementary.ts';
import { expm1, log1p } from './near-zero.ts';

/** ln(ln 10/ln 2), of the two quantiles that a grower states. */
const LN_OF_RATIO = log(Math.LN10 / Math.LN2);

/** Shape (a number) and scale (in the unit of the variable) of a Weibull distribution. */
export interface WeibullShape {
  readonly shape: number;
  readonly scale: number;
}

/**
 * Returns the Weibull curve of the years to first fruit that a grower states in three seasons. With W of that curve, x = (earliest − 1) + W
 * and a seedling first fruits in season ⌈x⌉: none before `earliest`, half by `half`, nine in ten by `ninety`.
 * @param earliest first season in which any fruits, at least 1
 * @param half season by which half have fruited, at least `earliest`
 * @param ninety season by which nine in ten have fruited, above `half`
 * @throws RangeError when the seasons are not in that order
 *
 * **Source:** docs/model.md §8; Weibull quantiles, Weibull, W. (1951) J. Appl. Mech. 18:293–297.
 */
export function firstFruitShape(earliest: number, half: number, ninety: number): WeibullShape {
  if (!(earliest <= half && half < ninety)) throw new RangeError('First fruit needs earliest ≤ half < nine in ten.');
  const middle = half - earliest + 1;
  const shape = LN_OF_RATIO / log((ninety - earliest + 1) / middle);
  return { shape, scale: middle / power(Math.LN2, 1 / shape) };
}

/**
 * Returns P(W ≤ x), 1 − exp(−(x/scale)^shape); 0 for x ≤ 0.
 *
 * **Source:** Weibull (1951).
 */
export function weibullCdf(x: number, { shape, scale }: WeibullShape): number {
  return x <= 0 ? 0 : -expm1(-power(x / scale, shape));
}

/**
 * Returns the w with P(W ≤ w) = u.
 * @param u in [0, 1]; 1 gives Infinity
 *
 * **Source:** Weibull (1951).
 */
export function weibullQuantile(u: number, { shape, scale }: WeibullShape): number {
  return scale * power(-log1p(-u), 1 / shape);
}
