import { atLeast, binomialPmf } from '../../statistics/binomial.ts';

/** A share that is not known for sure: one share of the seedlings for each way the parents may be. Weights sum to 1. */
export type Mixture = readonly { readonly weight: number; readonly share: number }[];

/** Beyond so many shares, neighbours are taken together. */
const MOST_SHARES = 1500;
/** How far apart they may be, as a ratio. A chance is then off by about r·10⁻⁷, for it bends little over so short a stretch. */
const NEIGHBOURS = 1.001;

/** Adds up equal shares and puts them in order; if there are very many, near ones count as their mean. */
export function gather(mixture: Mixture): Mixture {
  const weights = new Map<number, number>();
  for (const { weight, share } of mixture) weights.set(share, (weights.get(share) ?? 0) + weight);
  const sorted = [...weights].map(([share, weight]) => ({ weight, share })).sort((a, b) => a.share - b.share);
  if (sorted.length <= MOST_SHARES) return sorted;
  const merged: { weight: number; share: number; from: number }[] = [];
  for (const { weight, share } of sorted) {
    const last = merged.at(-1);
    if (!last || share > last.from * NEIGHBOURS) merged.push({ weight, share, from: share });
    else {
      last.share = (last.share * last.weight + share * weight) / (last.weight + weight);
      last.weight += weight;
    }
  }
  return merged;
}

/**
 * Returns the chance that n seedlings of one pair hold at least r of a kind: Σ weight · P(Bin(n, share) ≥ r). The seedlings share their
 * parents, so that an unlucky pair is unlucky for all of them.
 * @param n whole, at least 0
 * @param r whole, at least 1
 */
export function chanceOfAtLeast(r: number, n: number, mixture: Mixture): number {
  return mixture.reduce((sum, { weight, share }) => sum + (share > 0 ? weight * atLeast(r, n, share) : 0), 0);
}

/** Returns the chance that the pair can give the kind at all: what `chanceOfAtLeast` comes to with ever more seedlings. */
export function chanceAtAll(mixture: Mixture): number {
  return mixture.reduce((sum, { weight, share }) => sum + (share > 0 ? weight : 0), 0);
}

/** No breeder raises more of one pair; the search ends here. */
export const MOST_SEEDLINGS = 1_000_000;
/** A chance reached exactly must count as reached although sums of weights are rounded. */
const ROUNDING = 1e-12;

/**
 * Returns the least number of seedlings that hold at least r of a kind with chance P or more.
 * @param P in (0, 1)
 * @returns Infinity where no number up to a million is enough; none ever is if P is `chanceAtAll` or more (unless all seedlings are of the kind)
 *
 * **Source:** definition as in Sedcole, J. R. (1977) Crop Science 17:667–668, summed over what the parents may be.
 */
export function seedlingsNeeded(mixture: Mixture, r: number, P: number): number {
  const enough = (n: number) => chanceOfAtLeast(r, n, mixture) >= P - ROUNDING;
  // What is only approached is never reached, however near rounding brings it; seedlings that are all of the kind reach it at once.
  if (chanceAtAll(mixture) < P + ROUNDING) return enough(r) ? r : Infinity;
  let short = r - 1;
  let plenty = r;
  while (!enough(plenty)) {
    if (plenty >= MOST_SEEDLINGS) return Infinity;
    short = plenty;
    plenty = Math.min(MOST_SEEDLINGS, 2 * plenty);
  }
  while (plenty - short > 1) {
    const middle = Math.floor((short + plenty) / 2);
    if (enough(middle)) plenty = middle;
    else short = middle;
  }
  return plenty;
}

/**
 * Returns between which counts 8 in 10 batches of n seedlings lie: the least counts with P(X ≤ low) ≥ 0.1 and P(X ≤ high) ≥ 0.9.
 */
export function eightInTen(mixture: Mixture, n: number): readonly [low: number, high: number] {
  let below = 0;
  let low = -1;
  for (let k = 0; k < n; k += 1) {
    below += mixture.reduce((sum, { weight, share }) => sum + weight * binomialPmf(k, n, share), 0);
    if (low < 0 && below >= 0.1 - ROUNDING) low = k;
    if (below >= 0.9 - ROUNDING) return [low, k];
  }
  return [low < 0 ? n : low, n];
}
