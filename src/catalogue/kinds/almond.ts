import { entryFrom, type PairFigures } from '../build.ts';
import { chip, stocksOf, tBud } from '../grafting.ts';
import { oneCopy } from '../inheritance.ts';
import { EMPTY, FAMILIES, FROST_FULL, NURSERY_LOSS, ONE_SEED, ROUGH_REGULARITY, SOME_FLOWERS, STRAY_PLUM, TREE_LOSS } from '../ordinary.ts';
import { guess, published, remembered } from '../sources.ts';

const tender = published(
  [0.2, 0.8, 1],
  'middling',
  'Horticulturae 2022, 8:576: micrografts on two-week almond seedlings took 100 % (one scion), in glass; a garden bench does worse.',
);

export const almond = entryFrom({
  id: 'almond',
  name: 'almond',
  botanical: 'Prunus dulcis',
  figures: {
    firstFruit: {
      earliest: published(
        [3, 3.5, 4],
        'high',
        'Vargas and others 1998: flowering and nuts of 3,912 seedlings recorded in the third and fourth year from planting.',
      ),
      half: published(
        [3.5, 4, 5],
        'high',
        'Vargas and others 1998: flowering and nuts of 3,912 seedlings recorded in the third and fourth year from planting.',
      ),
      ninety: guess([4.5, 6, 8], 'Drawn on from Vargas and others 1998; no count of late ones was found.'),
    },
    familySpread: FAMILIES,
    regularity: ROUGH_REGULARITY,
    firstYearLoss: NURSERY_LOSS,
    yearlyLoss: TREE_LOSS,
    frostShare: FROST_FULL,
    flowers: SOME_FLOWERS,
    yearsToFullBloom: 3,
    seedsPerFruit: ONE_SEED,
    seedsAtMost: 1,
    selfCompatible: false,
    pollenRejection: 'gametophytic',
    note: 'Mostly barren with its own pollen; trees with the Sf form set with it. Flowers are best pollinated 1–2 days after opening.',
  },
  chilling: remembered([21, 25, 30], 'middling', 'Hartmann & Kester; USDA Handbook 727: 21–30 days moist cold.'),
  stocks: [
    ...stocksOf({ id: 'almond-seedling', name: 'seedling almond', methods: [chip, tBud], tender }),
    ...stocksOf({ id: 'almond-peach', name: 'seedling peach for almond', methods: [chip, tBud], tender }),
  ],
  traits: [
    oneCopy({
      id: 'almond-sweet-kernel',
      name: 'sweet kernel',
      gene: { id: 'almond-sk', name: 'Sk' },
      summary: 'One dominant gene: two bitter copies make a bitter kernel.',
      source: {
        kind: 'published',
        confidence: 'high',
        note: 'Vargas and others 2001: 4,919 seedlings; in 19 segregating families 79.2 % sweet of 713, a few more than three quarters. Dicenta and others 2007: one bitter copy can taste slightly bitter.',
      },
      note: 'Bitter kernels are poisonous: no tasting without a safe way of doing it; ask your food-safety office.',
    }),
    oneCopy({
      id: 'almond-late-bloom',
      name: 'very late bloom',
      gene: { id: 'almond-lb', name: 'Lb' },
      summary: 'One dominant gene with modifiers: half the seedlings of a late tree with one copy are late, with overlap.',
      canShow: guess([0.7, 0.9, 1], 'Modifiers blur it; how often was not printed.'),
      falseShow: guess([0, 0.05, 0.15], 'Modifiers blur it; how often was not printed.'),
      source: { kind: 'published', confidence: 'high', note: 'Socias i Company and others 1998, 1999: 1 : 1 with overlap, from one very late sport.' },
    }),
    oneCopy({
      id: 'almond-self-fertile',
      name: 'sets with its own pollen',
      gene: { id: 'almond-sf', name: 'Sf' },
      summary: 'One form of the S gene, carried by the pollen: a single copy is enough.',
      source: {
        kind: 'published',
        confidence: 'high',
        note: 'Ortega & Dicenta (year not noted): 1 : 1 or all self-fertile, by match of the S forms; 241 selfs: 129 with two copies, 112 with one.',
      },
      note: 'Where the parents share an S form, all seedlings can be self-fertile; the futures reckon with one half.',
    }),
  ],
  notes: ['Bitter kernels are poisonous. Label and lock up seed.'],
});

export const almondWithin: PairFigures = {
  seed: 'almond',
  pollen: 'almond',
  set: published(
    [0.05, 0.26, 0.5],
    'high',
    'Socias i Company & Felipe: 25.7 % by hand, 18.3 selfed, 14.1 and 21.3 open, one selection. Sci. Hortic. 2013: 34–50 % two days after emasculation. Morocco, 26 seedlings, open: 5.3–25.7 %.',
  ),
  straySet: STRAY_PLUM,
  emptyFruit: EMPTY,
  germination: guess([0.4, 0.75, 0.95], 'No count was found; almond seed is held to come up easily after a short cold.'),
};
