import { entryFrom, type PairFigures } from '../build.ts';
import { chip, cleft, stocksOf, TENDER_GUESS, tongue } from '../grafting.ts';
import { oneCopy, twoCopies } from '../inheritance.ts';
import { FAMILIES, FROST_MIDDLE, NURSERY_LOSS, ROUGH_REGULARITY, SOME_FLOWERS, STRAY, TREE_LOSS } from '../ordinary.ts';
import { guess, published, remembered } from '../sources.ts';

export const pear = entryFrom({
  id: 'pear',
  name: 'pear',
  botanical: 'Pyrus communis',
  figures: {
    firstFruit: {
      earliest: published(
        [3.5, 5, 7],
        'high',
        'Visser & de Vries 1970: 7–12 years over 87 seedlings. A Belgian programme: 5–7. White & Brewer 2002: a generation in 5 years at best.',
      ),
      half: published(
        [5, 6.5, 9],
        'high',
        'Visser, Verhaegh & de Vries 1976: mean 6.0 years in good culture, about 9 in the 1950s. Visser & de Vries 1970: 7–12. They disagree; the range spans both.',
      ),
      ninety: published(
        [6, 10, 14],
        'middling',
        'White & Brewer 2002: over 80 % fruited by year 5 in selected lines of mixed species. Visser & de Vries 1970: the last of 87 at 12; one progeny in Israel up to 14.',
      ),
    },
    familySpread: FAMILIES,
    regularity: ROUGH_REGULARITY,
    firstYearLoss: NURSERY_LOSS,
    yearlyLoss: TREE_LOSS,
    frostShare: FROST_MIDDLE,
    flowers: SOME_FLOWERS,
    yearsToFullBloom: 4,
    seedsPerFruit: remembered([3, 5, 8], 'middling', 'Textbook figure: 3–8 seeds a fruit, at most 10.'),
    seedsAtMost: 10,
    selfCompatible: false,
    pollenRejection: 'gametophytic',
    note: 'Almost barren with its own pollen: 1.2 % of 42,616 isolated flowers gave a fruit with a sound seed (59 cultivars, Hungary 2000).',
  },
  chilling: remembered([60, 75, 90], 'high', 'Hartmann & Kester, Plant Propagation: 60–90 days moist at 1–5 °C.'),
  stocks: [
    ...stocksOf({ id: 'pear-seedling', name: 'seedling pear', methods: [chip, tongue, cleft], tender: TENDER_GUESS }),
    ...stocksOf({
      id: 'pear-quince',
      name: 'quince stock for pear',
      methods: [chip, tongue],
      yearlyLoss: guess([0.01, 0.03, 0.1], 'Not counted by year. In a ten-year trial in Israel one cultivar stayed sound and the others declined, some badly.'),
      precocity: guess(
        [0.6, 0.8, 1],
        'Friend and others 2020: grown-up wood on quince or weak pear stock flowered after 2 years. How much a young seedling gains was not counted.',
      ),
      place: 0.4,
      note: 'Not every pear lasts on quince; lists of the good and the bad contradict each other, and failure may come after 8–10 years.',
    }),
  ],
  traits: [
    oneCopy({
      id: 'pear-scab-resistance',
      name: 'resistance to Asian pear scab',
      gene: { id: 'pear-vn', name: 'Vn' },
      summary: 'One dominant gene, from Asian pears.',
      source: { kind: 'published', confidence: 'high', note: 'Abe & Kotobuki 1998: 1 : 1 from susceptible × resistant, 3 : 1 from resistant × resistant.' },
    }),
    twoCopies({
      id: 'pear-black-spot-resistance',
      name: 'black spot resistance',
      gene: { id: 'pear-black-spot-a', name: 'a' },
      summary: 'One recessive gene: two copies of the resistant form are needed, one susceptible copy makes the tree fall ill.',
      source: {
        kind: 'published',
        confidence: 'high',
        note: 'Sanada and others 1993, Japanese pear: susceptibility dominant, 1 : 1 and 3 : 1; susceptible cultivars mostly carry one resistant copy.',
      },
    }),
  ],
  notes: ['Counts with apple and quince were made on Japanese pear; they are borrowed here for the European pear.'],
});

export const pearWithin: PairFigures = {
  seed: 'pear',
  pollen: 'pear',
  set: remembered([0.1, 0.2, 0.4], 'middling', 'Textbook figure: 10–40 % in compatible hand crosses.'),
  straySet: STRAY,
  emptyFruit: published(
    [0.06, 0.15, 0.41],
    'high',
    'J. Am. Soc. Hort. Sci. 103:496–500 (1978): 6, 36 and 41 % of openly pollinated fruits were seedless in three orchards, one cultivar.',
  ),
  germination: guess([0.4, 0.7, 0.87], 'No count for pear was found; careful garden growers had 54–87 % with apple.'),
};
