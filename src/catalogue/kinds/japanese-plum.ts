import { entryFrom, type PairFigures } from '../build.ts';
import { chip, stocksOf, tBud } from '../grafting.ts';
import { EMPTY, FAMILIES, FROST_FULL, NURSERY_LOSS, ONE_SEED, ROUGH_REGULARITY, SOME_FLOWERS, STRAY_PLUM, TREE_LOSS } from '../ordinary.ts';
import { published, remembered } from '../sources.ts';

export const japanesePlum = entryFrom({
  id: 'japanese-plum',
  name: 'Japanese plum',
  botanical: 'Prunus salicina and its hybrids',
  figures: {
    firstFruit: {
      earliest: remembered([2, 2.5, 3], 'middling', 'Okie & Weinberger, in Fruit Breeding I, 1996: 2–4 years. From memory.'),
      half: remembered([2.5, 3, 4], 'middling', 'Okie & Weinberger, in Fruit Breeding I, 1996: 2–4 years. From memory.'),
      ninety: remembered([4, 5, 7], 'low', 'Drawn on from 2–4 years in Okie & Weinberger 1996; from memory.'),
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
    note: 'Mostly barren with its own pollen (from memory).',
  },
  chilling: remembered([60, 90, 150], 'low', 'Hartmann & Kester give 90–150 days for plums; low-chill Japanese plums need less. From memory.'),
  stocks: [
    ...stocksOf({ id: 'japanese-plum-myrobalan', name: 'myrobalan for Japanese plum', methods: [chip, tBud] }),
    ...stocksOf({ id: 'japanese-plum-peach', name: 'seedling peach for Japanese plum', methods: [chip, tBud] }),
  ],
  notes: ['Kernels contain cyanide: do not taste raw ones.', 'Plum pox is regulated: report suspect trees. Your plant-health office decides.'],
});

export const japanesePlumWithin: PairFigures = {
  seed: 'japanese-plum',
  pollen: 'japanese-plum',
  set: published([0.1, 0.22, 0.4], 'high', 'Topp 1982, Queensland, caged and emasculated: 10–25 %, with better technique 10–40 %.'),
  straySet: STRAY_PLUM,
  emptyFruit: EMPTY,
  germination: published([0, 0.5, 0.9], 'high', 'Topp 1982, Queensland: 0–40 %, with better handling 30–90 %.'),
};
