import type { Interval } from '../results/outlook.ts';
import { betaQuantile } from './beta.ts';
import { expm1, log1p } from './near-zero.ts';

/** 97.5 % point of the standard normal: two-sided 95 %. */
export const Z95 = 1.959963984540054;

/**
 * Returns a share with its Wilson score interval (no continuity correction).
 * @param hits 0 … of
 * @param of trials; 0 gives the value 0 with the interval 0 … 1
 * @param z normal deviate of the confidence wanted
 *
 * **Source:** Wilson, E. B. (1927) J. Am. Stat. Assoc. 22:209–212.
 */
export function wilson(hits: number, of: number, z = Z95): Interval {
  if (!(of > 0)) return { value: 0, low: 0, high: 1 };
  const value = hits / of;
  const square = (z * z) / of;
  const centre = (value + square / 2) / (1 + square);
  const half = (z * Math.sqrt((value * (1 - value)) / of + square / of / 4)) / (1 + square);
  // At 0 and at all the bound is exact by algebra; rounding must not put the share outside its own interval.
  return { value, low: hits <= 0 ? 0 : Math.max(0, centre - half), high: hits >= of ? 1 : Math.min(1, centre + half) };
}

/**
 * Returns a share with its exact binomial interval.
 * @param hits 0 … of
 * @param of trials; 0 gives the value 0 with the interval 0 … 1
 * @param level confidence, in (0, 1)
 *
 * **Source:** Clopper, C. J. & Pearson, E. S. (1934) Biometrika 26:404–413.
 */
export function clopperPearson(hits: number, of: number, level = 0.95): Interval {
  if (!(of > 0)) return { value: 0, low: 0, high: 1 };
  const tail = (1 - level) / 2;
  return {
    value: hits / of,
    low: hits <= 0 ? 0 : betaQuantile(tail, hits, of - hits + 1),
    high: hits >= of ? 1 : betaQuantile(1 - tail, hits + 1, of - hits),
  };
}

/**
 * Returns the Beta posterior of a share after a count, from Jeffreys' prior Beta(½, ½).
 * @param hits 0 … of, not necessarily whole (see `effectiveCount`)
 * @param of trials
 *
 * **Source:** Jeffreys, H. (1946) Proc. R. Soc. A 186:453–461.
 */
export function jeffreys(hits: number, of: number): { alpha: number; beta: number } {
  return { alpha: hits + 0.5, beta: of - hits + 0.5 };
}

/**
 * Returns what a count is worth when the trials of one lot are alike: both numbers divided by the design effect.
 * @param hits 0 … of
 * @param of trials, in the unit they were made in
 * @param lots spring × pair lots that the count was made in, at least 1
 * @param rho intraclass correlation of one lot, in [0, 1]
 *
 * **Source:** docs/model.md §2; design effect of Kish, L. (1965) Survey Sampling, 1 + (m − 1)ρ.
 */
export function effectiveCount(hits: number, of: number, lots: number, rho: number): { hits: number; of: number } {
  const effect = Math.max(1, 1 + (of / lots - 1) * rho);
  return { hits: hits / effect, of: of / effect };
}

/**
 * Returns the chance per flower when a unit of several flowers succeeds if any of them does.
 * @param p chance per unit, in [0, 1]
 * @param flowersPerUnit at least 1
 *
 * **Source:** docs/model.md §6: p = 1 − (1 − flower)^n.
 */
export function perFlower(p: number, flowersPerUnit: number): number {
  return -expm1(log1p(-p) / flowersPerUnit);
}
