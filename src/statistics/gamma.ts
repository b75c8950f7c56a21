import { log } from '../random/elementary.ts';

const HALF_LOG_TWO_PI = 0.9189385332046727;

/** Below this the argument is raised by recurrence, so that the asymptotic series is exact to double precision. */
const SERIES_FROM = 15;

/** Tail of Stirling's series, log Γ(x) − [(x − ½) log x − x + ½ log 2π], for x ≥ 15 (next term below 1e-17). */
function stirlingTail(x: number): number {
  const s = 1 / (x * x);
  return (1 / 12 - s * (1 / 360 - s * (1 / 1260 - s * (1 / 1680 - s * (1 / 1188 - s * (691 / 360360 - s / 156)))))) / x;
}

/**
 * Returns log Γ(x).
 * @param x positive and finite
 * @returns absolute error about 1e-15 for small x, relative error about 1e-15 for large x; NaN for x ≤ 0
 *
 * **Source:** Stirling's series with its Bernoulli coefficients, Abramowitz & Stegun (1964) 6.1.41, and the recurrence 6.1.15.
 */
export function logGamma(x: number): number {
  if (!(x > 0)) return NaN;
  if (x === 1 || x === 2) return 0;
  let raised = x;
  let product = 1;
  while (raised < SERIES_FROM) {
    product *= raised;
    raised += 1;
  }
  return (raised - 0.5) * log(raised) - raised + HALF_LOG_TWO_PI + stirlingTail(raised) - log(product);
}

/**
 * Returns the error of Stirling's formula, log Γ(x + 1) − [(x + ½) log x − x + ½ log 2π].
 * @param x positive
 *
 * **Source:** Loader, C. (2000) Fast and accurate computation of binomial probabilities, his δ(n).
 */
export function stirlingError(x: number): number {
  return x >= SERIES_FROM ? stirlingTail(x) : logGamma(x + 1) - (x + 0.5) * log(x) + x - HALF_LOG_TWO_PI;
}

/**
 * Returns the deviance x log(x/m) + m − x without cancellation when x is near m.
 * @param x positive
 * @param m positive
 *
 * **Source:** Loader (2000), his D₀; series of log((1 + v)/(1 − v)) with v = (x − m)/(x + m).
 */
export function deviance(x: number, m: number): number {
  const difference = x - m;
  if (Math.abs(difference) >= 0.1 * (x + m)) return x * log(x / m) - difference;
  const v = difference / (x + m);
  const square = v * v;
  let total = difference * v;
  let term = 2 * x * v;
  for (let odd = 3; odd < 1000; odd += 2) {
    term *= square;
    const next = total + term / odd;
    if (next === total) break;
    total = next;
  }
  return total;
}
