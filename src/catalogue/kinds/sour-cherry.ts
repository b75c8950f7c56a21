import { entryFrom, type PairFigures } from '../build.ts';
import { chip, stocksOf, taking } from '../grafting.ts';
import { EMPTY, FAMILIES, FROST_MIDDLE, NURSERY_LOSS, ONE_SEED, ROUGH_REGULARITY, SOME_FLOWERS, STRAY, TREE_LOSS } from '../ordinary.ts';
import { published, remembered } from '../sources.ts';

const MAIDENS = 'Czynczyk and others (year not noted), finished maiden trees';
const DIED = 'Czynczyk and others (year not noted), first three orchard years';

export const sourCherry = entryFrom({
  id: 'sour-cherry',
  name: 'sour cherry',
  botanical: 'Prunus cerasus',
  figures: {
    firstFruit: {
      earliest: published(
        [2.5, 3, 4],
        'middling',
        'A Danish programme (year not noted): first flowers 3 years after crossing, first fruit at 40 months. From memory: 3–5 years (Iezzoni and others 1996).',
      ),
      half: published(
        [3, 4.5, 11],
        'middling',
        'Danish programme (year not noted): 40–90 % flowering 3 years after crossing. In another printed population 35 % first fruited after year 12. They disagree fourfold; the range spans both.',
      ),
      ninety: published(
        [4, 8, 18],
        'low',
        'Danish programme (year not noted): 40–90 % flowering at 3 years; another population had 35 % still to fruit after year 12. The end is drawn on.',
      ),
    },
    familySpread: FAMILIES,
    regularity: ROUGH_REGULARITY,
    firstYearLoss: NURSERY_LOSS,
    yearlyLoss: TREE_LOSS,
    frostShare: FROST_MIDDLE,
    flowers: SOME_FLOWERS,
    yearsToFullBloom: 3,
    seedsPerFruit: ONE_SEED,
    seedsAtMost: 1,
    selfCompatible: true,
    ploidy: 4,
    pollenRejection: 'gametophytic',
    note: 'Mixed: some cultivars set with their own pollen and some do not; change the mark if yours does not. Tart cherry in Michigan lost nearly the whole crop in 2 of 11 springs.',
  },
  chilling: remembered(
    [40, 100, 126],
    'low',
    'As sweet cherry, 90–125 days (Hartmann & Kester). A Danish programme had over 70 % up within 40 days at 4 °C with the stone removed.',
  ),
  stocks: [
    ...stocksOf({
      id: 'sour-cherry-mahaleb',
      name: 'mahaleb for sour cherry',
      methods: [
        taking(
          chip,
          published(
            [0.46, 0.6, 0.95],
            'middling',
            `${MAIDENS} on mahaleb: 46 %; chip buds on stone fruit under plastic took 87–96 % (Indian J. Hortic. 2018).`,
          ),
        ),
      ],
      yearlyLoss: published([0.02, 0.028, 0.04], 'high', `${DIED}, on mahaleb: 8.3 % died, 2.8 % a year. New York 1998–2007: 25 % lost, also 2.8 % a year.`),
    }),
    ...stocksOf({
      id: 'sour-cherry-mazzard',
      name: 'mazzard for sour cherry',
      methods: [
        taking(chip, published([0.87, 0.94, 0.96], 'middling', `${MAIDENS} on Prunus avium: 94 %; chip buds under plastic 87–96 % (Indian J. Hortic. 2018).`)),
      ],
      yearlyLoss: published([0.02, 0.038, 0.05], 'middling', `${DIED}, on Prunus avium: 11.1 % died, 3.8 % a year.`),
    }),
    ...stocksOf({
      id: 'sour-cherry-own',
      name: 'seedling sour cherry',
      methods: [taking(chip, published([0.34, 0.4, 0.46], 'middling', `${MAIDENS} on sour cherry seedlings: 34–46 %.`))],
      yearlyLoss: published([0.1, 0.145, 0.2], 'middling', `${DIED}, on its own seedlings: 37.5 % died, 14.5 % a year.`),
    }),
  ],
  notes: [
    'It has four sets of chromosomes. They are taken to pair two by two, so a gene has two copies; some pair with any other (Hauck and others 2006, from memory). To state four S alleles of a tree, say that any pairs with any.',
    'Kernels contain cyanide: do not taste raw ones.',
  ],
});

export const sourCherryWithin: PairFigures = {
  seed: 'sour-cherry',
  pollen: 'sour-cherry',
  set: remembered([0.15, 0.25, 0.35], 'middling', 'Textbook figure: 15–35 % open set of self-fertile cultivars.'),
  straySet: STRAY,
  emptyFruit: EMPTY,
  germination: published(
    [0.2, 0.6, 0.9],
    'middling',
    'A Danish programme (year not noted): over 70 % within 40 days with the stone removed at 4 °C. Whole stones do worse; not counted.',
  ),
};
