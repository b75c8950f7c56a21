import { guess } from './sources.ts';
import type { Figure } from './types.ts';

/** How near two kinds stand: nothing but this is known of a pair nobody counted. */
export type Kinship = 'near' | 'genus' | 'family' | 'far';

interface Place {
  readonly family: 'rose-pome' | 'rose-stone' | 'walnut' | 'chestnut' | 'persimmon' | 'citrus';
  readonly genus: string;
  /** Near kin within a genus: plums and apricot, peach and almond, the cherries. */
  readonly near: string;
}

const place = (family: Place['family'], genus: string, near = genus): Place => ({ family, genus, near });
const PLACES: Readonly<Record<string, Place>> = {
  apple: place('rose-pome', 'malus'),
  pear: place('rose-pome', 'pyrus'),
  quince: place('rose-pome', 'cydonia'),
  'european-plum': place('rose-stone', 'prunus', 'six-set plum'),
  'japanese-plum': place('rose-stone', 'prunus', 'plum'),
  apricot: place('rose-stone', 'prunus', 'plum'),
  peach: place('rose-stone', 'prunus', 'peach'),
  almond: place('rose-stone', 'prunus', 'peach'),
  'sweet-cherry': place('rose-stone', 'cherry', 'cherry'),
  'sour-cherry': place('rose-stone', 'cherry', 'cherry'),
  walnut: place('walnut', 'juglans'),
  chestnut: place('chestnut', 'castanea'),
  persimmon: place('persimmon', 'diospyros'),
  citrus: place('citrus', 'citrus'),
};

/** Kinship of two kinds by their ids; kinds without a place are far. */
export function kinship(a: string, b: string): Kinship {
  const [first, second] = [PLACES[a], PLACES[b]];
  if (!first || !second || first.family !== second.family) return 'far';
  if (first.genus !== second.genus) return 'family';
  return first.near === second.near ? 'near' : 'genus';
}

interface Guesses {
  readonly set: Figure;
  readonly germination: Figure;
  readonly weak: Figure;
  readonly fertility: Figure;
}

const uncounted = 'Nobody counted this pair as far as known.';
/** Wide on purpose: a breeder's first own count should overrule them. */
export const GUESSES: Readonly<Record<Kinship, Guesses>> = {
  near: {
    set: guess([0.01, 0.1, 0.4], `${uncounted} Near kin: counted pairs of this sort set from under 1 to about 40 %.`),
    germination: guess([0.1, 0.4, 0.8], `${uncounted} Near kin: sound seed often comes up, but many seeds are empty.`),
    weak: guess([0.02, 0.2, 0.6], `${uncounted} Near kin: some weak seedlings are to be expected.`),
    fertility: guess([0.1, 0.5, 1], `${uncounted} Hybrids of near kin are often fertile, sometimes barely.`),
  },
  genus: {
    set: guess([0, 0.01, 0.08], `${uncounted} Same genus, far apart in it: a fruit is rare.`),
    germination: guess([0.02, 0.2, 0.6], `${uncounted} Same genus, far apart in it.`),
    weak: guess([0.1, 0.5, 0.95], `${uncounted} Same genus, far apart in it: many weak seedlings are to be expected.`),
    fertility: guess([0, 0.1, 0.5], `${uncounted} Most such hybrids are barren or nearly so.`),
  },
  family: {
    set: guess([0, 0.02, 0.2], `${uncounted} Other genus, same family: counted pairs set from almost nothing to 38 %.`),
    germination: guess([0.02, 0.2, 0.6], `${uncounted} Other genus, same family.`),
    weak: guess([0.5, 0.9, 1], `${uncounted} Nearly all counted seedlings of such crosses died young.`),
    fertility: guess([0, 0.1, 0.5], `${uncounted} Most such hybrids are barren or nearly so.`),
  },
  far: {
    set: guess([0, 0, 0.001], 'Far-off kin: no fruit of such a cross is known. What sets is almost surely a stray.'),
    germination: guess([0, 0.05, 0.3], 'Far-off kin: no seed of such a cross is known.'),
    weak: guess([0.9, 1, 1], 'Far-off kin: no seedling of such a cross is known to have lived.'),
    fertility: guess([0, 0.01, 0.1], 'Far-off kin: no such hybrid is known.'),
  },
};
