import { entryFrom, type PairFigures } from '../build.ts';
import { chip, stocksOf, taking, tBud } from '../grafting.ts';
import { FAMILIES, NURSERY_LOSS, ROUGH_REGULARITY, SOME_FLOWERS, TREE_LOSS } from '../ordinary.ts';
import { guess, practice, published, remembered } from '../sources.ts';

const TAKE = guess([0.6, 0.85, 0.95], 'No count for citrus was found; budding is the nursery way and seldom fails.');

export const citrus = entryFrom({
  id: 'citrus',
  name: 'citrus',
  botanical: 'Citrus: mandarin, orange, grapefruit and their hybrids',
  figures: {
    firstFruit: {
      earliest: published(
        [2.5, 4.5, 7],
        'high',
        'Snowball and others 1994: first flowers at 30 months in the fastest of 13 families, single stems under glass. Florida, own roots: mandarin 5–7, sweet orange 6–7, grapefruit 7–8 years.',
      ),
      half: published(
        [4, 6.5, 8],
        'middling',
        'Florida, own roots (old USDA experience, second-hand, year not noted): 5–8 years by kind. Snowball and others 1994: some of every family flowered by 48 months.',
      ),
      ninety: published(
        [6, 9, 16],
        'low',
        'Florida, own roots (old USDA experience, second-hand, year not noted): tangelos 5–8 years, one 22. The end is drawn on.',
      ),
    },
    familySpread: FAMILIES,
    regularity: ROUGH_REGULARITY,
    firstYearLoss: NURSERY_LOSS,
    yearlyLoss: TREE_LOSS,
    frostShare: practice([0.5, 1, 1], 'low', 'Frost kills flowers and wood alike; winter cold is the greater danger.'),
    flowers: SOME_FLOWERS,
    yearsToFullBloom: 4,
    seedsPerFruit: remembered([2, 10, 20], 'low', 'None to over thirty by kind; no count was looked up.'),
    seedsAtMost: 40,
    selfCompatible: true,
    note: 'It varies by kind: change the mark if yours does not set with its own pollen.',
  },
  chilling: practice([0, 0, 0], 'high', 'None: sown fresh and warm.'),
  stocks: [
    ...stocksOf({ id: 'citrus-trifoliate', name: 'trifoliate orange for citrus', methods: [taking(tBud, TAKE), taking(chip, TAKE)], place: 0.7 }),
    ...stocksOf({ id: 'citrus-seedling', name: 'seedling citrus', methods: [taking(tBud, TAKE)] }),
  ],
  notes: [
    'Many citrus seed parents bear copies of themselves: seedlings from the mother’s own tissue, not from the pollen. The share stands with the cross and differs from none (clementine, pummelo) to nearly all (from memory): count yours by the leaf.',
    'Citrus greening and canker are regulated: ask your plant-health office before moving any wood or seed.',
  ],
});

export const citrusWithin: PairFigures = {
  seed: 'citrus',
  pollen: 'citrus',
  set: guess([0.02, 0.15, 0.5], 'No count was found; trees shed most of their fruitlets.'),
  motherClones: guess(
    [0, 0.5, 0.98],
    'From no copies to nearly all by seed parent; no count was looked up. A hobby grower expected about half of some 40 seedlings of one rootstock seed parent to be from the pollen.',
  ),
  germination: published(
    [0.3, 0.6, 0.75],
    'middling',
    'Crosses of two- and four-set mandarins (year not noted): 75 % at best. Ordinary crosses were not counted.',
  ),
};
