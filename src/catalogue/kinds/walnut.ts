import { entryFrom, type PairFigures } from '../build.ts';
import { chip, cleft, stocksOf, taking } from '../grafting.ts';
import { oneCopy } from '../inheritance.ts';
import { NURSERY_LOSS, ROUGH_REGULARITY, TREE_LOSS } from '../ordinary.ts';
import { guess, practice, published, remembered } from '../sources.ts';

const TAKE = published(
  [0.25, 0.78, 0.9],
  'high',
  'Indian J. Hortic. 2018, under plastic: 83.1 % low, 77.8 % higher on the stock. Northern Nut Growers 1914, outdoors: over 90 % in a good case, 25 % that season.',
);

export const walnut = entryFrom({
  id: 'walnut',
  name: 'walnut',
  botanical: 'Juglans regia',
  figures: {
    firstFruit: {
      earliest: remembered(
        [3, 5, 8],
        'middling',
        'Tulecke & McGranahan 1994: 3–5 years in early, side-bearing families, 8–10 and more in the others. From memory.',
      ),
      half: remembered([4, 8, 11], 'middling', 'Tulecke & McGranahan 1994: 3–5 or 8–10 years, by family. From memory. USDA Handbook 727: 8 at the least.'),
      ninety: guess([6, 12, 18], 'Drawn on from 8–10 years and more; no count was found.'),
    },
    familySpread: guess([0.15, 0.3, 0.45], 'Side-bearing families fruit twice as soon as the others; not counted as a spread.'),
    regularity: ROUGH_REGULARITY,
    firstYearLoss: NURSERY_LOSS,
    yearlyLoss: TREE_LOSS,
    frostShare: practice([0.2, 0.6, 1], 'middling', 'Leafs out late as a rule; early kinds are caught by frost.'),
    flowers: guess([20, 60, 200], 'Female flowers in reach on one tree, bagged in time; not counted.'),
    yearsToFullBloom: 6,
    seedsPerFruit: practice(1, 'high', 'One nut a fruit.'),
    seedsAtMost: 1,
    selfCompatible: true,
    note: 'Takes its own pollen, but male and female flowers of one tree seldom open together.',
  },
  chilling: remembered([30, 90, 156], 'low', 'USDA Handbook 727: 30–156 days moist cold. From memory.'),
  stocks: [
    ...stocksOf({ id: 'walnut-seedling', name: 'seedling walnut', methods: [taking(chip, TAKE), taking(cleft, TAKE)] }),
    ...stocksOf({ id: 'walnut-black', name: 'black walnut for walnut', methods: [taking(chip, TAKE)] }),
  ],
  traits: [
    oneCopy({
      id: 'walnut-side-bearing',
      name: 'bears on side shoots',
      gene: { id: 'walnut-lateral', name: 'side-bearing' },
      summary: 'Roughly one dominant gene; such trees bear early.',
      canShow: guess([0.5, 0.8, 1], 'More or less dominant; how much was not printed.'),
      source: { kind: 'remembered', confidence: 'middling', note: 'University of California programme: dominant or nearly. From memory.' },
    }),
    oneCopy({
      id: 'walnut-leafroll-hypersensitive',
      name: 'wards off cherry leafroll virus',
      gene: { id: 'walnut-clrv', name: 'hypersensitive' },
      summary: 'One dominant gene, from black walnut.',
      source: { kind: 'remembered', confidence: 'middling', note: 'University of California programme: single dominant gene. From memory.' },
    }),
  ],
});

export const walnutWithin: PairFigures = {
  seed: 'walnut',
  pollen: 'walnut',
  set: remembered([0.2, 0.35, 0.5], 'low', 'Bagged walnut gives 0.2–0.5 nuts a female flower, as generally told.'),
  germination: remembered([0.5, 0.75, 0.85], 'low', 'USDA Handbook 727: germination about 80 % for Persian walnut, 50–65 for its relatives. From memory.'),
};
