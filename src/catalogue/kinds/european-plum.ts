import { entryFrom, type PairFigures } from '../build.ts';
import { chip, stocksOf, tBud, tongue } from '../grafting.ts';
import { EMPTY, FAMILIES, FROST_MIDDLE, NURSERY_LOSS, ONE_SEED, ROUGH_REGULARITY, SOME_FLOWERS, STRAY_PLUM, TREE_LOSS } from '../ordinary.ts';
import { guess, published, remembered } from '../sources.ts';

export const europeanPlum = entryFrom({
  id: 'european-plum',
  name: 'European plum',
  botanical: 'Prunus domestica',
  figures: {
    firstFruit: {
      earliest: remembered([3, 3.5, 5], 'middling', 'Hartmann & Neumüller 2009; Topp and others 2012: 3–6 years. Titles seen, values from memory.'),
      half: remembered([4, 5, 6.5], 'middling', 'Hartmann & Neumüller 2009; Topp and others 2012: 3–6 years, some 7 and more. From memory.'),
      ninety: remembered([6, 7.5, 11], 'low', 'Hartmann & Neumüller 2009: “some 7 and more”, from memory; the end is drawn on.'),
    },
    familySpread: FAMILIES,
    regularity: ROUGH_REGULARITY,
    firstYearLoss: NURSERY_LOSS,
    yearlyLoss: TREE_LOSS,
    frostShare: FROST_MIDDLE,
    flowers: SOME_FLOWERS,
    yearsToFullBloom: 4,
    seedsPerFruit: ONE_SEED,
    seedsAtMost: 1,
    selfCompatible: false,
    ploidy: 6,
    note: 'Some cultivars set with their own pollen and some do not: change the mark if yours does.',
  },
  chilling: remembered(
    [90, 120, 150],
    'middling',
    'Hartmann & Kester; USDA Handbook 727: 90–150 days moist cold. Hildebrandt counted more than 20 weeks for damson.',
  ),
  stocks: [
    ...stocksOf({ id: 'plum-myrobalan', name: 'myrobalan for plum', methods: [chip, tBud, tongue] }),
    ...stocksOf({ id: 'plum-st-julien', name: 'St Julien for plum', methods: [chip, tBud], place: 0.7 }),
  ],
  notes: [
    'It has six sets of chromosomes. They are taken to pair two by two, so a gene has two copies (from memory); a trait that rests on three like genes then shows in 63 of 64 selfed seedlings.',
    'Plum pox is regulated: report suspect trees, and take no wood out of a closed zone. Your plant-health office decides.',
    'Kernels contain cyanide: do not taste raw ones.',
  ],
});

export const europeanPlumWithin: PairFigures = {
  seed: 'european-plum',
  pollen: 'european-plum',
  set: published(
    [0, 0.17, 0.33],
    'high',
    'Koskela, Kemp & van Dieren 2010: 0–28 % after the June drop, 11 genotypes. Fotirić Akšić and others 2022: 33 % one day after opening, 31 at three, 8.5 at five, 1.2 at nine.',
  ),
  straySet: STRAY_PLUM,
  emptyFruit: EMPTY,
  germination: guess([0.15, 0.5, 0.85], 'No count for European plum was found; a Japanese plum programme had 0–40, later 30–90 %.'),
};
