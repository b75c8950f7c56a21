import { entryFrom, type PairFigures } from '../build.ts';
import { chip, stocksOf, tongue } from '../grafting.ts';
import { FAMILIES, FROST_LATE, NURSERY_LOSS, ROUGH_REGULARITY, TREE_LOSS } from '../ordinary.ts';
import { guess, remembered } from '../sources.ts';

export const quince = entryFrom({
  id: 'quince',
  name: 'quince',
  botanical: 'Cydonia oblonga',
  figures: {
    firstFruit: {
      earliest: remembered([3, 4, 5], 'low', 'Seedlings 4–6 years, as generally told; nursery pages say 4–6 for grafted trees.'),
      half: remembered([4, 5, 6.5], 'low', 'Seedlings 4–6 years, as generally told. No count was found.'),
      ninety: guess([6, 8, 11], 'No count was found; drawn on from “4–6 years”.'),
    },
    familySpread: FAMILIES,
    regularity: ROUGH_REGULARITY,
    firstYearLoss: NURSERY_LOSS,
    yearlyLoss: TREE_LOSS,
    frostShare: FROST_LATE,
    flowers: guess([50, 150, 400], 'Flowers stand single at the ends of shoots, so a tree has fewer than a pear; not counted.'),
    yearsToFullBloom: 3,
    seedsPerFruit: remembered([5, 25, 45], 'low', 'Five chambers with many ovules each; no count was found.'),
    seedsAtMost: 80,
    selfCompatible: true,
    note: 'Held to be largely fertile with its own pollen (from memory).',
  },
  chilling: remembered([45, 80, 110], 'low', 'Usual advice is a winter’s cold, like apple and pear; no table was looked up.'),
  stocks: [
    ...stocksOf({ id: 'quince-quince', name: 'quince', methods: [chip, tongue] }),
    ...stocksOf({
      id: 'quince-pear',
      name: 'seedling pear for quince',
      methods: [tongue],
      yearlyLoss: guess([0.1, 0.3, 0.5], 'Growers report that quince on pear fails in 2–3 years; not counted.'),
    }),
  ],
});

export const quinceWithin: PairFigures = {
  seed: 'quince',
  pollen: 'quince',
  set: guess([0.1, 0.3, 0.6], 'No count was found for quince.'),
  germination: guess([0.4, 0.7, 0.9], 'No count was found for quince; guessed like pear.'),
};
