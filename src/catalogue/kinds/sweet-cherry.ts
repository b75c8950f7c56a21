import { entryFrom, type PairFigures } from '../build.ts';
import { chip, stocksOf, tBud, tongue } from '../grafting.ts';
import { oneCopy, twoCopies } from '../inheritance.ts';
import { EMPTY, FAMILIES, FROST_FULL, NURSERY_LOSS, ONE_SEED, ROUGH_REGULARITY, SOME_FLOWERS, STRAY, TREE_LOSS } from '../ordinary.ts';
import { guess, published } from '../sources.ts';

export const sweetCherry = entryFrom({
  id: 'sweet-cherry',
  name: 'sweet cherry',
  botanical: 'Prunus avium',
  figures: {
    firstFruit: {
      earliest: published([4, 5, 5], 'high', 'Fruit Var. Hort. Dig. 10:55 (1956), Prosser, Washington: fifth season or later.'),
      half: guess(
        [5, 6.5, 9],
        'Drawn on from “fifth season or later” at Prosser (1956); Schmidt 1976 found sweet and sour cherry the slowest of all cherries.',
      ),
      ninety: guess([7, 9.5, 13], 'Drawn on from “fifth season or later” at Prosser (1956); no count of late ones was found.'),
    },
    familySpread: FAMILIES,
    regularity: ROUGH_REGULARITY,
    firstYearLoss: NURSERY_LOSS,
    yearlyLoss: TREE_LOSS,
    frostShare: FROST_FULL,
    flowers: SOME_FLOWERS,
    yearsToFullBloom: 4,
    seedsPerFruit: ONE_SEED,
    seedsAtMost: 1,
    selfCompatible: false,
    pollenRejection: 'gametophytic',
    note: 'Two trees of the same incompatibility group set nothing. Trees with the S4′ form set with their own pollen.',
  },
  chilling: published(
    [90, 115, 126],
    'high',
    'Hildebrandt, Gartenbauwiss. 25:162 (year not noted): 16–18 weeks for sweet cherry cultivars, 15–16 for wild ones. From memory: 90–125 days for mazzard (Hartmann & Kester).',
  ),
  stocks: [
    ...stocksOf({
      id: 'cherry-mazzard',
      name: 'mazzard for cherry',
      methods: [chip, tBud, tongue],
      yearlyLoss: published(
        [0.02, 0.038, 0.05],
        'middling',
        'Czynczyk and others (year not noted), sour cherry on Prunus avium: 11.1 % died in the first 3 years, 3.8 % a year.',
      ),
    }),
    ...stocksOf({
      id: 'cherry-dwarf',
      name: 'dwarfing cherry stock',
      methods: [chip, tongue],
      precocity: guess([0.6, 0.8, 1], 'Grown-up wood fruits in its third leaf on Gisela stocks (western trials); how much a seedling gains was not counted.'),
      place: 0.4,
    }),
  ],
  traits: [
    oneCopy({
      id: 'cherry-dark-skin',
      name: 'dark red skin',
      gene: { id: 'cherry-a', name: 'A' },
      summary: 'One dominant gene: two copies of its other form make a blushed yellow cherry.',
      source: { kind: 'published', confidence: 'high', note: 'Schmidt 1998, Acta Hortic. 468: 3 : 1 from red × red, 1 : 1 from red × blushed, or none.' },
    }),
    twoCopies({
      id: 'cherry-blushed',
      name: 'blushed yellow skin',
      gene: { id: 'cherry-a-pale', name: 'a' },
      summary: 'The other side of dark skin: two recessive copies.',
      source: { kind: 'published', confidence: 'high', note: 'Schmidt 1998, Acta Hortic. 468: 3 : 1 from red × red, 1 : 1 from red × blushed, or none.' },
    }),
    oneCopy({
      id: 'cherry-self-fertile',
      name: 'sets with its own pollen',
      gene: { id: 'cherry-s4', name: 'S4′' },
      summary: 'One form of the S gene, carried by the pollen: a single copy is enough.',
      source: {
        kind: 'published',
        confidence: 'high',
        note: 'Schmidt & Schulze 1998, Acta Hortic. 468:83: of 12 progenies 5 gave 1 : 1 and 7 gave only self-fertile seedlings.',
      },
      note: 'Where the seed parent shares the pollen parent’s other S form, all seedlings are self-fertile; the futures reckon with one half.',
    }),
  ],
  notes: ['Kernels contain cyanide: do not taste raw ones.', 'Cherry viruses go by graft, pollen and seed: use tested mother trees.'],
});

export const sweetCherryWithin: PairFigures = {
  seed: 'sweet-cherry',
  pollen: 'sweet-cherry',
  set: published(
    [0.1, 0.3, 0.9],
    'high',
    'Głowacka & Rozpara 2014: over 20 % gives a good crop. A trade journal, openly pollinated in one year: under 22 % on one cultivar and stock to 90 % on another.',
  ),
  straySet: STRAY,
  emptyFruit: EMPTY,
  germination: published(
    [0, 0.4, 0.61],
    'high',
    'J. Hort. Sci. Biotech. (year not noted), one cultivar with the stone removed: 0 % untreated, 26.5 washed, 47.1 with gibberellin, 61.2 with six weeks of cold as well.',
  ),
};
