/**
 * Returns the shape of the PERT beta on [low, high] with its peak at `likely` (weight 4).
 * @param low lowest value
 * @param likely peak, low ≤ likely ≤ high
 * @param high highest value, above low: a range of no width has no shape, and the caller takes `low` itself
 * @returns alpha and beta, each in [1, 5], of (x − low)/(high − low)
 *
 * **Source:** Malcolm, Roseboom, Clark & Fazar (1959) Operations Research 7:646–669; as a beta with weight 4 (Vose 2008).
 */
export function pertShape(low: number, likely: number, high: number): { alpha: number; beta: number } {
  const width = high - low;
  return { alpha: 1 + (4 * (likely - low)) / width, beta: 1 + (4 * (high - likely)) / width };
}

/**
 * Returns the mean of the PERT beta, (low + 4 likely + high)/6; right for low = high too.
 *
 * **Source:** Malcolm et al. (1959).
 */
export function pertMean(low: number, likely: number, high: number): number {
  return (low + 4 * likely + high) / 6;
}

/**
 * Returns the variance of the PERT beta, (mean − low)(high − mean)/7; 0 for low = high.
 *
 * **Source:** variance of a beta with alpha + beta = 6; Abramowitz & Stegun (1964) 26.1.33.
 */
export function pertVariance(low: number, likely: number, high: number): number {
  const mean = pertMean(low, likely, high);
  return ((mean - low) * (high - mean)) / 7;
}
