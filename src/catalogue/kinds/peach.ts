import { entryFrom, type PairFigures } from '../build.ts';
import { chip, stocksOf, taking, tBud } from '../grafting.ts';
import { FAMILIES, FROST_FULL, NURSERY_LOSS, ONE_SEED, PEACH_LOSS, ROUGH_REGULARITY, SOME_FLOWERS, STRAY_PLUM } from '../ordinary.ts';
import { guess, published } from '../sources.ts';
import { peachTraits } from './peach-traits.ts';

const budded = taking(
  tBud,
  published(
    [0.6, 0.85, 0.895],
    'high',
    'Indian J. Hortic. 2018: 84.6–89.5 % of T-buds took. A thesis (VCSG University, India): 62.5 % of nectarine buds on peach set on 20 August. Eiseman & Thomas: early dates best, the last failed wholly.',
  ),
);

export const peach = entryFrom({
  id: 'peach',
  name: 'peach',
  botanical: 'Prunus persica, nectarine with it',
  figures: {
    firstFruit: {
      earliest: published(
        [1.5, 2.5, 3],
        'high',
        'Fruit Var. Hort. Dig. 10:55 (1956), Prosser, Washington: third season. From memory: 15–24 months in warm nurseries (Sherman and others 1973).',
      ),
      half: published(
        [2, 3, 3.5],
        'high',
        'Fruit Var. Hort. Dig. 10:55 (1956): third season. From memory: 2–3 years in temperate places (Scorza & Sherman 1996).',
      ),
      ninety: guess([3, 4, 6], 'Drawn on from the third season at Prosser (1956); no count of late ones was found.'),
    },
    familySpread: FAMILIES,
    regularity: ROUGH_REGULARITY,
    firstYearLoss: NURSERY_LOSS,
    yearlyLoss: PEACH_LOSS,
    frostShare: FROST_FULL,
    flowers: SOME_FLOWERS,
    yearsToFullBloom: 2,
    seedsPerFruit: ONE_SEED,
    seedsAtMost: 1,
    selfCompatible: true,
    note: 'Sets with its own pollen, so flowers that are not emasculated mostly self.',
  },
  chilling: published(
    [60, 90, 112],
    'high',
    'Guerriero & Scalabrelli 1985: 60–74 days to most germination. J. Am. Soc. Hort. Sci.: 12 weeks in the stone, 2 for the naked embryo. Hildebrandt: 14–16 weeks.',
  ),
  stocks: [
    ...stocksOf({ id: 'peach-seedling', name: 'seedling peach', methods: [chip, budded], yearlyLoss: PEACH_LOSS }),
    ...stocksOf({
      id: 'peach-citation',
      name: 'plum-peach dwarfing stock for peach',
      methods: [chip],
      yearlyLoss: published(
        [0.054, 0.1, 0.1],
        'high',
        'Peach trial begun 1984, 16 sites: 52 % lost in 7 years on the worst such stock, 32 % on a plum stock; so 10 and 5.4 % a year.',
      ),
      place: 0.6,
    }),
  ],
  traits: peachTraits,
  notes: [
    'Seed of very early parents hardly comes up without embryo culture.',
    'Kernels contain cyanide: do not taste raw ones.',
    'Plum pox is regulated: report suspect trees. Your plant-health office decides.',
  ],
});

export const peachWithin: PairFigures = {
  seed: 'peach',
  pollen: 'peach',
  set: published(
    [0.15, 0.3, 0.4],
    'middling',
    'Crop Breed. Appl. Biotechnol. (year not noted), eight late hybrids in Serbia: 73.9 % at first, 32.2 % in the end, openly pollinated. From memory: 15–40 % for emasculated hand crosses.',
  ),
  straySet: STRAY_PLUM,
  emptyFruit: guess([0, 0.05, 0.3], 'Early ripening seed parents have hollow or unripe seed; not counted for others.'),
  germination: guess(
    [0.2, 0.6, 0.9],
    'No count for ordinary late peaches was found. Near nothing for very early seed parents (USDA 2006, Acta Hortic. 713:89).',
  ),
  routes: [
    {
      id: 'peach-embryo-culture',
      name: 'embryo culture',
      germination: published(
        [0.28, 0.6, 0.92],
        'high',
        'Abstract of 2005, low-chill peach and nectarine: 57 % (ripe fruit) and 68 % (unripe) alive two months after transplanting, 28–92 % by genotype.',
      ),
      hoursPerSeed: 0.25,
      moneyPerSeed: 0,
    },
  ],
};
