import { exp, log } from '../random/elementary.ts';
import { deviance, logGamma, stirlingError } from './gamma.ts';
import { normalQuantile } from './normal.ts';
import { log1p } from './near-zero.ts';

/** From here on Stirling's series takes the two large gammas apart, whose plain difference would lose digits. */
const LARGE = 15;

/**
 * Returns log B(a, b).
 * @param a positive
 * @param b positive
 * @returns error about 1e-14 of the largest term that does not cancel
 *
 * **Source:** Abramowitz & Stegun (1964) 6.2.2, with 6.1.41 for the larger argument.
 */
export function logBeta(a: number, b: number): number {
  const small = Math.min(a, b);
  const large = Math.max(a, b);
  if (large < LARGE) return logGamma(a) + logGamma(b) - logGamma(a + b);
  const sum = a + b;
  return logGamma(small) - (large - 0.5) * log1p(small / large) - small * (log(sum) - 1) + stirlingError(large) - stirlingError(sum);
}

/**
 * Returns x^a · y^b / B(a, b) for y = 1 − x in (0, 1): the density on the logit scale.
 * Taken apart as Loader's saddle point, because a difference of three large log Γ would lose digits.
 */
function logitDensity(x: number, y: number, a: number, b: number): number {
  const n = a + b;
  const exponent = stirlingError(n) - stirlingError(a) - stirlingError(b) - deviance(a, n * x) - deviance(b, n * y);
  return exp(exponent) * Math.sqrt((a * b) / (2 * Math.PI * n));
}

/** Continued fraction of I_x(a, b) by the modified Lentz method; converges fast for x < (a + 1)/(a + b + 2). */
function fraction(x: number, a: number, b: number): number {
  const tiny = 1e-300;
  let c = 1;
  let d = 1 - ((a + b) * x) / (a + 1);
  d = 1 / (Math.abs(d) < tiny ? tiny : d);
  let result = d;
  for (let m = 1; m < 100_000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 + even * d;
    d = 1 / (Math.abs(d) < tiny ? tiny : d);
    c = 1 + even / c;
    if (Math.abs(c) < tiny) c = tiny;
    result *= d * c;
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 + odd * d;
    d = 1 / (Math.abs(d) < tiny ? tiny : d);
    c = 1 + odd / c;
    if (Math.abs(c) < tiny) c = tiny;
    const change = d * c;
    result *= change;
    if (Math.abs(change - 1) < 2e-16) break;
  }
  return result;
}

/** P(X ≤ x) for y = 1 − x, with `density` the logit density there; no cancellation in the tail that is small. */
function lowerTail(x: number, y: number, a: number, b: number, density: number): number {
  return x * (a + b + 2) < a + 1 ? (density / a) * fraction(x, a, b) : 1 - (density / b) * fraction(y, b, a);
}

/**
 * Returns the density of Beta(a, b) at x.
 * @param x any number; 0 outside [0, 1]
 * @param a positive
 * @param b positive
 *
 * **Source:** Abramowitz & Stegun (1964) 26.1.33; evaluated as in Loader (2000).
 */
export function betaPdf(x: number, a: number, b: number): number {
  if (x < 0 || x > 1) return 0;
  if (x === 0) return a < 1 ? Infinity : a === 1 ? b : 0;
  if (x === 1) return b < 1 ? Infinity : b === 1 ? a : 0;
  return logitDensity(x, 1 - x, a, b) / (x * (1 - x));
}

/**
 * Returns P(X ≤ x) for X ~ Beta(a, b), the regularized incomplete beta function.
 * @param x any number; 0 below 0 and 1 above 1
 * @param a positive
 * @param b positive
 * @returns relative error about 1e-13 in the lower tail
 *
 * **Source:** continued fraction Abramowitz & Stegun (1964) 26.5.8, symmetry 26.5.2.
 */
export function betaCdf(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  return lowerTail(x, 1 - x, a, b, logitDensity(x, 1 - x, a, b));
}

/** Farthest logit looked at: beyond it a share is 0 or 1 to double precision for every use here. */
const FARTHEST = 700;

/** First guess of the logit: the power law of the near tail where a shape is below 1, else a normal with about its mean and spread. */
function firstLogit(u: number, a: number, b: number): number {
  if (a >= 1 && b >= 1) {
    const spread = Math.sqrt(1 / (a - 0.5) + 1 / (b - 0.5));
    return log((a - 0.5) / (b - 0.5)) + spread * normalQuantile(u);
  }
  const scale = logBeta(a, b);
  const lower = (log(u) + log(a) + scale) / a;
  const upper = (log1p(-u) + log(b) + scale) / b;
  const guess = u * (a + b) < b ? lower : -upper;
  return Math.max(-FARTHEST, Math.min(FARTHEST, guess));
}

/**
 * Returns the x with P(X ≤ x) = u for X ~ Beta(a, b).
 *
 * Newton's method on the logarithm of the smaller tail over the logit of x. A beta variable's logit has a log-concave density, so both
 * log tails are concave and the method closes in from one side; a bracket guards the first steps.
 * @param u in [0, 1]
 * @param a positive
 * @param b positive
 * @returns relative error at most 1e-10; 0 or 1 where the answer is nearer to them than e^−700
 *
 * **Source:** own derivation; log-concavity as in Bagnoli & Bergstrom (2005) Economic Theory 26:445–469.
 */
export function betaQuantile(u: number, a: number, b: number): number {
  if (u <= 0) return 0;
  if (u >= 1) return 1;
  const upper = u > 0.5;
  const target = log(upper ? 1 - u : u);
  let low = -FARTHEST;
  let high = FARTHEST;
  let logit = firstLogit(u, a, b);
  for (let round = 0; round < 200; round++) {
    const x = 1 / (1 + exp(-logit));
    const y = 1 / (1 + exp(logit));
    const density = logitDensity(x, y, a, b);
    const tail = upper ? lowerTail(y, x, b, a, density) : lowerTail(x, y, a, b, density);
    const excess = log(tail) - target;
    if (excess > 0 === upper) low = logit;
    else high = logit;
    const slack = tail / density;
    const step = upper ? excess * slack : -excess * slack;
    const next = logit + step;
    if (Math.abs(step) <= 1e-12 * Math.max(1, slack)) {
      logit = next;
      break;
    }
    logit = next > low && next < high ? next : (low + high) / 2;
  }
  if (logit <= 1 - FARTHEST) return 0;
  return 1 / (1 + exp(-logit));
}
