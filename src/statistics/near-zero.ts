import { exp, log } from '../random/elementary.ts';

/**
 * Returns log(1 + x) without losing digits near 0, the same bytes everywhere.
 * @param x above −1
 *
 * **Source:** Kahan's correction of log(1 + x) by the rounding of 1 + x, as in Goldberg, D. (1991) ACM Comput. Surv. 23:5–48, theorem 4.
 */
export function log1p(x: number): number {
  const sum = 1 + x;
  return sum === 1 ? x : (log(sum) * x) / (sum - 1);
}

/**
 * Returns e^x − 1 without losing digits near 0, the same bytes everywhere.
 *
 * **Source:** the inverse of the correction in `log1p`, Higham, N. J. (2002) Accuracy and Stability of Numerical Algorithms, §1.14.1.
 */
export function expm1(x: number): number {
  const power = exp(x);
  if (power === 1) return x;
  const less = power - 1;
  return less === -1 || power === Infinity ? less : (less * x) / log(power);
}
