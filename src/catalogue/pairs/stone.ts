import type { PairFigures } from '../build.ts';
import { guessedPair } from '../hybrid.ts';
import { STRAY_PLUM } from '../ordinary.ts';
import { guess, published, remembered } from '../sources.ts';

const ONE_STONE = { seedsPerFruit: guess(1, 'One seed a stone, as in both parents.'), seedsAtMost: 1, straySet: STRAY_PLUM };

/** Six sets of chromosomes with two: of such hybrids hardly any are fertile. */
const rarelyFertile = published(
  [0, 0.02, 0.1],
  'middling',
  'USDA-ARS, questions and answers (year not noted): fertile hybrids of European plum and kinds with two sets of chromosomes are very rare, even with effort; no count.',
);
const plumHybrid = { fertilityAsSeedParent: rarelyFertile, fertilityAsPollenParent: rarelyFertile };

const almondPeach = {
  fertilityAsSeedParent: guess([0.5, 1, 1], 'Vigorous hybrids that bear; not counted as seed parents.'),
  fertilityAsPollenParent: published([0.7, 1, 1], 'middling', 'Terraciano & Cialzeta (year not noted): fertile pollen, normal meiosis; no share was noted.'),
  selfCompatible: false,
  note: 'Vigorous, with fertile pollen, but barren with its own (Terraciano & Cialzeta).',
};
const nearlyWithin = remembered([0.1, 0.25, 0.4], 'middling', 'Held to set nearly as well as a cross within the kind.');

/** Stone fruits with one another. */
export const stonePairs: readonly PairFigures[] = [
  {
    ...guessedPair('japanese-plum', 'apricot'),
    ...ONE_STONE,
    set: published(
      [0.002, 0.1, 0.4],
      'middling',
      'They disagree. Yoshida and others 1975, Jpn. J. Breed. 25:17–23: as high as within the kind (there 10–40 %). Myrobalan as seed parent: 0.2 % in Poland and 0.9–18.7 in Spain (Szymajda and others 2015); 1.8–8.0 (Arbeloa and others 2006).',
    ),
    emptyFruit: guess([0.1, 0.4, 0.9], 'Many fruits hold an undeveloped seed (Szymajda and others 2015); how many hangs on the pair.'),
    note: 'A cross that sets little is mostly strays: with myrobalan, 205 of 278 seedlings were no hybrids (Arbeloa and others 2006). Test before counting on one. The seed parent matters more than the pollen.',
  },
  {
    ...guessedPair('japanese-plum', 'peach'),
    ...ONE_STONE,
    set: published([0, 0.005, 0.03], 'low', 'Yoshida and others 1975, Jpn. J. Breed. 25:17–23: a slight set; the figure was not noted.'),
    note: 'A cross that sets so little is mostly strays: test before counting on a seedling.',
  },
  { ...without(guessedPair('peach', 'almond')), ...ONE_STONE, set: nearlyWithin, hybrid: almondPeach },
  { ...without(guessedPair('almond', 'peach')), ...ONE_STONE, set: nearlyWithin, hybrid: almondPeach },
  { ...guessedPair('european-plum', 'japanese-plum'), hybrid: plumHybrid },
  { ...guessedPair('european-plum', 'apricot'), hybrid: plumHybrid },
  { ...guessedPair('european-plum', 'peach'), hybrid: plumHybrid },
  {
    ...guessedPair('sweet-cherry', 'sour-cherry'),
    note: 'The cross works: seven families of 13 to 40 seedlings were raised (Hauck and others 2006, Genetics 172:1191–1198). Its set was not counted; every figure is a guess. Expect three sets of chromosomes and little fertility.',
    hybrid: {
      fertilityAsSeedParent: guess([0, 0.05, 0.3], 'Three sets of chromosomes are expected, and little fertility; not counted.'),
      fertilityAsPollenParent: guess([0, 0.05, 0.3], 'Three sets of chromosomes are expected, and little fertility; not counted.'),
    },
  },
];

/** A guessed pair whose hybrids are known to be vigorous. */
function without({ weakness: _weakness, note: _note, ...figures }: PairFigures): PairFigures {
  return figures;
}
