import { quantileSorted } from './order.ts';

export interface ChanceGivenFacts {
  readonly mean: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Returns how far the chance depends on what the breeder does not know: the range of the chance given the facts, with the noise of a
 * limited number of futures taken out.
 *
 * Each set of facts has p̂ = hits/R. Between-set variance V = max(0, var(p̂) − mean(p̂(1 − p̂)/(R − 1))), with var(p̂) the unbiased sample
 * variance; each p̂ is shrunk towards their mean by √(V/var(p̂)).
 * @param hits futures that succeed, one number for each set of facts (at least one set)
 * @param R futures in each set, at least 2
 * @param low lower quantile reported, in [0, 1]
 * @param high upper quantile reported, in [0, 1]
 * @throws RangeError when there is no set or R is below 2
 *
 * **Source:** docs/model.md §2 "Chance and ignorance apart"; moment estimate of a between-group variance.
 */
export function chanceGivenFacts(hits: ArrayLike<number>, R: number, low = 0.1, high = 0.9): ChanceGivenFacts {
  const chances = Float64Array.from(hits, (count) => count / R).sort();
  const sets = chances.length;
  if (sets === 0 || !(R >= 2)) throw new RangeError('The range of the chance needs at least one set of facts and two futures in each.');
  const mean = chances.reduce((sum, p) => sum + p, 0) / sets;
  if (sets === 1) return { mean, low: mean, high: mean };
  const variance = chances.reduce((sum, p) => sum + (p - mean) * (p - mean), 0) / (sets - 1);
  const noise = chances.reduce((sum, p) => sum + (p * (1 - p)) / (R - 1), 0) / sets;
  const between = Math.max(0, variance - noise);
  const factor = variance > 0 ? Math.sqrt(between / variance) : 0;
  const shrunk = (q: number): number => mean + (quantileSorted(chances, q) - mean) * factor;
  return { mean, low: shrunk(low), high: shrunk(high) };
}
