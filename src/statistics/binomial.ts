import { exp, log } from '../random/elementary.ts';
import { betaCdf, logBeta } from './beta.ts';
import { deviance, logGamma, stirlingError } from './gamma.ts';
import { log1p } from './near-zero.ts';

/**
 * Returns P(X = k) for X ~ Binomial(n, p).
 * @param k whole number; 0 outside 0 … n
 * @param n whole number of trials, at least 0
 * @param p chance of each, in [0, 1]
 * @returns relative error about 1e-14
 *
 * **Source:** Loader, C. (2000) Fast and accurate computation of binomial probabilities.
 */
export function binomialPmf(k: number, n: number, p: number): number {
  if (k < 0 || k > n || !Number.isInteger(k)) return 0;
  if (p <= 0) return k === 0 ? 1 : 0;
  if (p >= 1) return k === n ? 1 : 0;
  if (k === 0) return exp(n * log1p(-p));
  if (k === n) return exp(n * log(p));
  const rest = n - k;
  const exponent = stirlingError(n) - stirlingError(k) - stirlingError(rest) - deviance(k, n * p) - deviance(rest, n * (1 - p));
  return exp(exponent) * Math.sqrt(n / (2 * Math.PI * k * rest));
}

/**
 * Returns P(X ≤ k) for X ~ Binomial(n, p).
 * @param k any number (rounded down)
 * @param n whole number of trials, at least 0
 * @param p chance of each, in [0, 1]
 *
 * **Source:** Abramowitz & Stegun (1964) 26.5.24.
 */
export function binomialCdf(k: number, n: number, p: number): number {
  const most = Math.floor(k);
  if (most < 0) return 0;
  if (most >= n) return 1;
  return betaCdf(1 - p, n - most, most + 1);
}

/**
 * Returns P(X ≥ r) for X ~ Binomial(n, p): the chance of at least r of a kind among n seedlings.
 * @param r any number (rounded up)
 * @param n whole number of trials, at least 0
 * @param p chance of each, in [0, 1]
 *
 * **Source:** Abramowitz & Stegun (1964) 26.5.24.
 */
export function atLeast(r: number, n: number, p: number): number {
  const least = Math.ceil(r);
  if (least <= 0) return 1;
  if (least > n) return 0;
  return betaCdf(p, least, n - least + 1);
}

/**
 * Returns P(X = k) where X counts successes of n trials that share one chance drawn from Beta(a, b).
 * @param k whole number; 0 outside 0 … n
 * @param n whole number of trials, at least 0
 * @param a positive
 * @param b positive
 *
 * **Source:** Skellam, J. G. (1948) J. R. Stat. Soc. B 10:257–261.
 */
export function betaBinomialPmf(k: number, n: number, a: number, b: number): number {
  if (k < 0 || k > n || !Number.isInteger(k)) return 0;
  const choices = logGamma(n + 1) - logGamma(k + 1) - logGamma(n - k + 1);
  return exp(choices + logBeta(k + a, n - k + b) - logBeta(a, b));
}

/** A chance reached exactly must count as reached although 1 − P and powers of it are rounded. */
const ROUNDING = 1e-12;

/**
 * Returns the smallest number of plants that holds at least r of a kind with chance P or more.
 * @param q share of the kind, in [0, 1]
 * @param r how many are wanted, whole and at least 1
 * @param P chance wanted, in [0, 1]
 * @returns a whole number; Infinity where no number is enough (q = 0, or P = 1 with q < 1). P(miss) is compared to 1 part in 1e12.
 * @throws RangeError when an argument is out of bounds
 *
 * **Source:** definition as in Sedcole, J. R. (1977) Crop Science 17:667–668, solved exactly on the binomial.
 */
export function plantsNeeded(q: number, r: number, P: number): number {
  if (!(q >= 0 && q <= 1)) throw new RangeError('The share of the wanted kind must lie between 0 and 1.');
  if (!(P >= 0 && P <= 1)) throw new RangeError('The chance wanted must lie between 0 and 1.');
  if (!Number.isInteger(r) || r < 1) throw new RangeError('The number wanted must be a whole number of at least 1.');
  if (P === 0) return 0;
  if (q === 1) return r;
  if (q === 0 || P === 1) return Infinity;
  const allowed = (1 - P) * (1 + ROUNDING);
  const enough = (n: number): boolean => binomialCdf(r - 1, n, q) <= allowed;
  let short = r - 1;
  let plenty = r;
  while (!enough(plenty)) {
    short = plenty;
    plenty *= 2;
    if (plenty > 1e15) return Infinity;
  }
  while (plenty - short > 1) {
    const middle = Math.floor((short + plenty) / 2);
    if (enough(middle)) plenty = middle;
    else short = middle;
  }
  return plenty;
}
