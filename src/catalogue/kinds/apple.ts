import { entryFrom, type PairFigures } from '../build.ts';
import { chip, cleft, stocksOf, taking, TENDER, tongue } from '../grafting.ts';
import { oneCopy, shownBy, rule, twoCopies } from '../inheritance.ts';
import { FAMILIES, NURSERY_LOSS, SOME_FLOWERS, STRAY, TREE_LOSS } from '../ordinary.ts';
import { guess, published, remembered } from '../sources.ts';

const practised = taking(
  tongue,
  published(
    [0.79, 0.9, 0.98],
    'high',
    'Indian J. Hortic. 2018: 79.4–86.6 % of tongue grafts took. From memory: 90–98 % for a practised whip-and-tongue on apple.',
  ),
);

export const apple = entryFrom({
  id: 'apple',
  name: 'apple',
  botanical: 'Malus domestica',
  figures: {
    firstFruit: {
      earliest: published([2.5, 3.5, 4], 'high', 'Visser & de Vries 1970: 4–10 years over 80 seedlings. Garden groups on own roots: rarely before 3.'),
      half: published(
        [4.2, 5.5, 8],
        'high',
        'Visser, Verhaegh & de Vries 1976: mean 4.2 years over several thousand well-grown seedlings. Garden groups on own roots: often 8 and more. They disagree; the range spans both.',
      ),
      ninety: published(
        [7, 10, 15],
        'middling',
        'Visser & de Vries 1970: the last of 80 seedlings at 10 years. Magness 1937: 10–15 years to bearing and a sure judgement.',
      ),
    },
    familySpread: FAMILIES,
    regularity: guess([0.5, 0.8, 1], 'Some trees crop every second year; how many seedlings do was not found counted.'),
    firstYearLoss: NURSERY_LOSS,
    yearlyLoss: TREE_LOSS,
    frostShare: published(
      [0.25, 0.8, 1],
      'middling',
      'Fruit growers’ page, Ontario 2021: about 80 % of the apple crop lost in the frost of 2012, about 25 % in 2015.',
    ),
    flowers: SOME_FLOWERS,
    yearsToFullBloom: 4,
    seedsPerFruit: published(
      [4.5, 7, 8.6],
      'high',
      'Crandall 1918: 7.1 in large and 5.6 in small fruit of 545. J. Am. Pomol. Soc. 72(4) 2018: 5.3–8.6 in hand crosses. Norway, by hand: 4.5–8.0 by cultivar.',
    ),
    seedsAtMost: 10,
    selfCompatible: false,
    pollenRejection: 'gametophytic',
    note: 'Next to nothing with its own pollen: 0–4.5 % in one cultivar over four seasons. Triploid seed parents have 3–4 seeds, and most of their seedlings are weak.',
  },
  chilling: remembered([60, 75, 90], 'high', 'Hartmann & Kester, Plant Propagation: 60–90 days moist at 1–5 °C.'),
  stocks: [
    ...stocksOf({ id: 'apple-seedling', name: 'seedling apple', methods: [chip, practised, cleft], tender: TENDER }),
    ...stocksOf({
      id: 'apple-dwarf',
      name: 'dwarfing apple',
      methods: [chip, practised],
      tender: TENDER,
      precocity: remembered(
        [0.6, 0.8, 1],
        'low',
        'Tydeman & Alston 1965: about 1–3 years sooner on dwarfing stock. Others find a gain only for wood past the juvenile stage.',
      ),
      place: 0.3,
    }),
  ],
  traits: [
    oneCopy({
      id: 'apple-scab-resistance',
      name: 'scab resistance Rvi6',
      gene: { id: 'apple-rvi6', name: 'Rvi6' },
      summary: 'One dominant gene: a seedling with one copy resists the common races of scab.',
      canShow: published({ hits: 34, of: 35 }, 'high', 'Shupert and others: fruit scab on 1 of 35 trees with one copy, on none with two.'),
      falseShow: published({ hits: 4, of: 26 }, 'high', 'Shupert and others: 4 of 26 trees without the gene stayed clean.'),
      source: {
        kind: 'published',
        confidence: 'high',
        note: 'Shupert and others: 1 : 2 : 1 in two families, 1.5 : 1 : 1.5 in a third. Other families gave 36–73 % resistant seedlings (Plant Prot. Sci.).',
      },
      note: 'Races of scab that overcome it exist.',
    }),
    oneCopy({
      id: 'apple-red-flesh',
      name: 'red flesh and leaf',
      gene: { id: 'apple-red', name: 'R6' },
      summary: 'One dominant gene: half the seedlings of a red-fleshed tree with one copy have red flesh and red leaves.',
      source: { kind: 'published', confidence: 'high', note: 'Morimoto and others 2013: 1 : 1 from one copy × none (MdMYB10, type 1).' },
    }),
    shownBy(
      {
        id: 'apple-columnar',
        name: 'columnar growth',
        summary: 'One dominant gene; fewer columnar seedlings than half are often seen, so a second gene may be needed too.',
        source: {
          kind: 'published',
          confidence: 'high',
          note: 'Otto and others 2014; Front. Plant Sci. 2020, 11:692: half expected, about 40 % often seen, and recessive genes that hide it were found in 275 seedlings.',
        },
      },
      [
        { id: 'apple-co', name: 'Co' },
        { id: 'apple-unhidden', name: 'not hidden', note: 'The common form of a gene whose other form, in two copies, hides columnar growth.' },
      ],
      [
        rule('one copy is enough', 2, { needs: 'all', of: [{ gene: 'apple-co', copies: 1 }] }),
        rule('a second gene can hide it', 1, {
          needs: 'all',
          of: [
            { gene: 'apple-co', copies: 1 },
            { gene: 'apple-unhidden', copies: 1 },
          ],
        }),
      ],
    ),
    twoCopies({
      id: 'apple-low-acid',
      name: 'low acid',
      gene: { id: 'apple-ma', name: 'ma' },
      summary: 'One recessive gene: two copies make a sweet, flat apple.',
      source: { kind: 'published', confidence: 'high', note: 'Horticulture Research 2020, review: Ma on linkage group 16, 3 acid : 1 low acid.' },
    }),
  ],
  notes: [
    'Ornamental crab pollen sets far less on some seed parents: 7–17 % on one cultivar, 27 and 57 % on two others.',
    'After a year of heavy crop some trees hardly flower.',
  ],
});

export const appleWithin: PairFigures = {
  seed: 'apple',
  pollen: 'apple',
  set: published(
    [0.165, 0.6, 0.83],
    'high',
    'J. Am. Pomol. Soc. 72(4) 2018: 58–83 % in hand crosses of compatible pairs. A British garden group 2010–2013: 63 of 127 clusters of three flowers had an apple with a seed, 17–20 % a flower.',
  ),
  straySet: STRAY,
  emptyFruit: published(
    [0, 0.03, 0.05],
    'middling',
    'Norwegian trial files, pollinated by hand, apples without a seed: 0 of 210, 14 of 359, 16 of 318, by cultivar (year not noted).',
  ),
  germination: published(
    [0.07, 0.8, 0.87],
    'high',
    'A garden group, fridge and pots, 2017–2020: 81, 80, 87 and 54 %. HortScience 47:328 (2012): 7 % of 100,000 seeds. Season and handling decide.',
  ),
};
