import { exp, log, power, wholePower } from './elementary.ts';
import type { Stream } from './stream.ts';

/**
 * Smallest k with F(k) ≥ u for Binomial(n, p): one uniform, so that the count moves with n and p.
 * n whole ≥ 0, p clipped to 0…1. Exact summation from the nearer end; long tables are cut into equal parts whose
 * uniforms are split from u, so that nothing underflows.
 */
export function binomialInverse(u: number, n: number, p: number): number {
  if (n <= 0 || p <= 0) return 0;
  if (p >= 1) return n;
  return p > 0.5 ? n - fromBelow(1 - u, n, 1 - p) : fromBelow(u, n, p);
}

/** p ≤ ½. Sums the probabilities upwards from 0. */
function fromBelow(u: number, n: number, p: number): number {
  const q = 1 - p;
  const first = wholePower(q, n);
  if (first < 1e-280) return fromMode(u, n, p);
  const odds = p / q;
  let k = 0;
  let probability = first;
  let left = u - probability;
  while (left > 0 && k < n) {
    k += 1;
    probability *= (odds * (n - k + 1)) / k;
    left -= probability;
    if (probability < 1e-17 && k > n * p) break;
  }
  return k;
}

/** Large n·p: works outwards from the mode, adding probabilities alternately up and down in a fixed order of values. */
function fromMode(u: number, n: number, p: number): number {
  const q = 1 - p;
  const mode = Math.floor((n + 1) * p);
  const sd = Math.sqrt(n * p * q);
  const low = Math.max(0, Math.floor(mode - 9 * sd));
  // Probability relative to the mode at the lower end, then summed upwards; the total normalises it.
  const odds = p / q;
  let relative = 1;
  for (let k = mode; k > low; k -= 1) relative *= k / (odds * (n - k + 1));
  let total = 0;
  let r = relative;
  const high = Math.min(n, Math.ceil(mode + 9 * sd));
  for (let k = low; k <= high; k += 1) {
    total += r;
    r *= (odds * (n - k)) / (k + 1);
  }
  let left = u * total;
  r = relative;
  for (let k = low; k < high; k += 1) {
    left -= r;
    if (left <= 0) return k;
    r *= (odds * (n - k)) / (k + 1);
  }
  return high;
}

/** Number of marked items among `draws` taken without putting back from `marked` + `others`, by inversion of one uniform. */
export function hypergeometricInverse(u: number, marked: number, others: number, draws: number): number {
  const low = Math.max(0, draws - others);
  const high = Math.min(draws, marked);
  if (low >= high) return low;
  // Unnormalised weights from the mode outwards keep every term within range.
  const mode = Math.min(high, Math.max(low, Math.floor(((draws + 1) * (marked + 1)) / (marked + others + 2))));
  const up = (k: number) => ((marked - k) * (draws - k)) / ((k + 1) * (others - draws + k + 1));
  let bottom = 1;
  for (let k = mode - 1; k >= low; k -= 1) bottom /= up(k);
  let total = 0;
  for (let k = low, w = bottom; k <= high; w *= up(k), k += 1) total += w;
  let left = u * total;
  for (let k = low, w = bottom; k < high; w *= up(k), k += 1) {
    left -= w;
    if (left <= 0) return k;
  }
  return high;
}

/**
 * Standard normal from one uniform: inverse of the distribution function.
 * **Source:** Wichura 1988, Applied Statistics 37:477–484, algorithm AS 241 (PPND7: about 1 part in 10⁷, ample for a draw).
 */
export function normalFrom(u: number): number {
  const q = u - 0.5;
  if (q <= 0.425 && q >= -0.425) {
    const r = 0.180625 - q * q;
    return (q * (((59.10937472 * r + 159.29113202) * r + 50.434271938) * r + 3.3871327179)) / (((67.1875636 * r + 78.757757664) * r + 17.895169469) * r + 1);
  }
  let r = Math.sqrt(-log(q < 0 ? u : 1 - u));
  let value: number;
  if (r <= 5) {
    r -= 1.6;
    value = (((0.17023821103 * r + 1.3067284816) * r + 2.75681539) * r + 1.4234372777) / ((0.12021132975 * r + 0.7370016425) * r + 1);
  } else {
    r -= 5;
    value = (((0.017337203997 * r + 0.42868294337) * r + 3.081226386) * r + 6.657905115) / ((0.012258202635 * r + 0.24197894225) * r + 1);
  }
  return q < 0 ? -value : value;
}

/** Gamma(shape, 1), shape > 0. **Source:** Marsaglia & Tsang 2000, ACM Trans. Math. Software 26:363–372. */
function gammaFrom(stream: Stream, shape: number): number {
  if (shape < 1) return gammaFrom(stream, shape + 1) * power(stream.uniform(), 1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const z = normalFrom(stream.uniform());
    const t = 1 + c * z;
    if (t <= 0) continue;
    const v = t * t * t;
    const u = stream.uniform();
    if (u < 1 - 0.0331 * z * z * z * z || log(u) < 0.5 * z * z + d * (1 - v + log(v))) return d * v;
  }
}

/** Beta(alpha, beta), both > 0, as a ratio of gammas. Tiny shapes that underflow give the nearer end. */
export function betaFrom(stream: Stream, alpha: number, beta: number): number {
  const x = gammaFrom(stream, alpha);
  const y = gammaFrom(stream, beta);
  const sum = x + y;
  return sum > 0 ? x / sum : stream.uniform() < alpha / (alpha + beta) ? 1 : 0;
}

/** Beta with a stated mean and intraclass correlation ρ (0: the mean itself): one spring's rate around the long-run rate. */
export function springRate(stream: Stream, mean: number, rho: number): number {
  if (rho <= 0 || mean <= 0 || mean >= 1) return Math.min(1, Math.max(0, mean));
  const size = (1 - rho) / rho;
  return betaFrom(stream, mean * size, (1 - mean) * size);
}

/** Lognormal of median 1 with the stated coefficient of variation. */
export function lognormalFrom(u: number, cv: number): number {
  return cv > 0 ? exp(Math.sqrt(log(1 + cv * cv)) * normalFrom(u)) : 1;
}

/** Standard normal distribution function to about 1e-7. **Source:** Abramowitz & Stegun 1964, 26.2.17 (from memory). */
export function normalCdfFast(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail = 0.3989422804014327 * exp(-0.5 * z * z) * t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z > 0 ? 1 - tail : tail;
}
