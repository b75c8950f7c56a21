/** What is known of a measured trait, in its unit; shares 0–1. */
export interface TraitSpread {
  /** Mean of a reference tree. */
  readonly mean: number;
  /** Spread between trees in one season (SD), above 0. */
  readonly sd: number;
  /** Of one season. */
  readonly heritability: number;
  /** Between seasons; taken as at least the heritability. */
  readonly repeatability: number;
}

/** A true value as far as tasting tells it. */
export interface TrueValue {
  readonly value: number;
  /** Standard error of the value. */
  readonly error: number;
  /** Share of the tasted distance from the mean that is kept, 0–1. */
  readonly kept: number;
}

/**
 * Returns what a tree tasted for n seasons is by its genes: best linear prediction of mean + G from the mean of n seasons.
 *
 * With V the variance between trees in one season, h² the heritability and t = max(h², repeatability), a mean of n seasons has the variance
 * V·(t + (1 − t)/n) and the covariance h²·V with G. So the share kept is b = n·h²/(1 + (n − 1)·t), the value is mean + b·(tasted − mean),
 * and what stays unknown of G has the variance h²·V·(1 − b). The trait's own numbers are taken as they stand.
 * @param tasted mean of the seasons, in the trait's unit
 * @param seasons how many of them, at least 1
 * @throws RangeError for less than one season
 *
 * **Source:** Falconer & Mackay (1996) Introduction to Quantitative Genetics, 4th ed., ch. 8 (heritability of a mean of n measurements; from
 * memory); regression of a normal on a normal; docs/model.md, section 9, for what a season is made of.
 */
export function trueValue(tasted: number, seasons: number, { mean, sd, heritability, repeatability }: TraitSpread): TrueValue {
  if (!(seasons >= 1)) throw new RangeError(`A tasted mean needs a season: ${String(seasons)}`);
  const alike = Math.max(heritability, repeatability);
  const kept = (seasons * heritability) / (1 + (seasons - 1) * alike);
  const unknown = heritability * sd ** 2 * (1 - kept);
  return { value: mean + kept * (tasted - mean), error: Math.sqrt(Math.max(0, unknown)), kept };
}

/**
 * Returns low, likely, high of the PERT range that has a given mean and standard deviation and is even on both sides.
 * Its variance is (mean − low)·(high − mean)/7, so each end lies √7 standard deviations off.
 *
 * **Source:** own derivation from `pertVariance`.
 */
export function evenRange(mean: number, deviation: number): { low: number; likely: number; high: number } {
  const reach = Math.sqrt(7) * deviation;
  return { low: mean - reach, likely: mean, high: mean + reach };
}
