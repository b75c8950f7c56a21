import { offspringShares } from './family.ts';

/**
 * Returns the shares of trees with 0, 1 and 2 copies of an allele in a randomly mating population.
 * @param frequency of the counted allele, in [0, 1]
 *
 * **Source:** Hardy, G. H. (1908) Science 28:49–50.
 */
export function hardyWeinberg(frequency: number): readonly [number, number, number] {
  return offspringShares(frequency, frequency);
}

/**
 * Returns the chance that a tree which does not show a recessive trait carries one copy of its allele.
 * @param frequency of the allele among randomly mated trees, in [0, 1]
 * @param shows share of the trees with two copies that would have shown it, in [0, 1]
 * @returns NaN where every tree shows it
 *
 * **Source:** Bayes' rule on Hardy (1908); 2q/(1 + q) where all show (Li, C. C. 1955, Population Genetics).
 */
export function carrierIfNotShown(frequency: number, shows = 1): number {
  const [, one, two] = hardyWeinberg(frequency);
  return one / (1 - two * shows);
}

/**
 * Returns the shares of open-pollinated seedlings with 0, 1 and 2 copies of an allele.
 * @param motherCopies 0, 1 or 2
 * @param pollenFrequency frequency of the allele in the pollen that reaches her, in [0, 1]
 *
 * **Source:** own derivation, docs/model.md §4: the father is drawn per seed.
 */
export function openPollinated(motherCopies: number, pollenFrequency: number): readonly [number, number, number] {
  return offspringShares(motherCopies / 2, pollenFrequency);
}

/** Ways of mating within a line, generation after generation. */
export const MATINGS = ['selfing', 'fullSibs', 'halfSibs', 'backcross'] as const;
export type Mating = (typeof MATINGS)[number];

/** F of a generation from F of the one before and of the one before that. */
const NEXT: Record<Mating, (last: number, before: number) => number> = {
  selfing: (last) => (1 + last) / 2,
  fullSibs: (last, before) => (1 + 2 * last + before) / 4,
  halfSibs: (last, before) => (1 + 6 * last + before) / 8,
  backcross: (last) => (1 + 2 * last) / 4,
};

/**
 * Returns the inbreeding coefficient F after generations of one way of mating, from trees that are not inbred and not related.
 * @param mating half sibs: one male with females that are half sisters; backcross: always to one tree that is not inbred itself
 * @param generations whole, at least 0; generation 1 is the first inbred one
 *
 * **Source:** recursions in Falconer & Mackay (1996) Introduction to Quantitative Genetics, ch. 5.
 */
export function inbreeding(mating: Mating, generations: number): number {
  let last = 0;
  let before = 0;
  for (let t = 0; t < generations; t++) [last, before] = [NEXT[mating](last, before), last];
  return last;
}

/**
 * Returns the share of fruits fathered by stray pollen: the wanted pollen sets a flower first, stray pollen sets what it left.
 * @param wantedSet chance per flower, in [0, 1]
 * @param straySet chance per flower left, in [0, 1]; not both 0
 *
 * **Source:** docs/model.md §6, own derivation.
 */
export function strayShareOfFruit(wantedSet: number, straySet: number): number {
  const stray = straySet * (1 - wantedSet);
  return stray / (wantedSet + stray);
}
