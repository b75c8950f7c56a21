import { exp } from '../random/elementary.ts';

/** n choose k as a running product: exact well beyond any number of back-crosses. */
export function* binomialRow(n: number): Generator<readonly [k: number, ways: number]> {
  let ways = 1;
  for (let k = 0; k <= n; k += 1) {
    yield [k, ways];
    ways = (ways * (n - k)) / (k + 1);
  }
}

/**
 * Returns the share of the genome that is the recurrent parent's, on average, after t back-crosses without selection.
 * @param t whole, at least 0; 0 is the F1
 *
 * **Source:** Allard, R. W. (1960) Principles of Plant Breeding (from memory): 1 − (½)^(t + 1).
 */
export const recurrentShare = (t: number): number => 1 - 0.5 ** (t + 1);

/**
 * Returns the variance, over seedlings, of the donor's share of one chromosome after t back-crosses without selection.
 * @param t whole, at least 1
 * @param cM length of the chromosome, above 0
 *
 * **Source:** Frisch & Melchinger (2007) Genetics 176:477–488; Hill (1993) J. Hered. 84:212–213: crossovers without interference.
 */
export function donorShareVariance(t: number, cM: number): number {
  const morgans = cM / 100;
  let sum = 0;
  for (const [n, ways] of binomialRow(t)) if (n > 0) sum += (ways * (2 * n * morgans - 1 + exp(-2 * n * morgans))) / (2 * n * n);
  return sum / (4 ** (t + 1) * morgans * morgans);
}

/**
 * Returns the variance, over seedlings, of the recurrent parent's share of the whole genome after t back-crosses without selection:
 * chromosomes are independent and weigh by their length.
 * @param cM length of each chromosome, above 0
 *
 * **Source:** as `donorShareVariance`.
 */
export function recurrentShareVariance(t: number, cM: readonly number[]): number {
  const whole = cM.reduce((sum, one) => sum + one, 0);
  return cM.reduce((sum, one) => sum + (one / whole) ** 2 * donorShareVariance(t, one), 0);
}
