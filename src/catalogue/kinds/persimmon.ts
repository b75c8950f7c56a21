import { entryFrom, type PairFigures } from '../build.ts';
import { chip, stocksOf, taking, tongue } from '../grafting.ts';
import { rule, shownBy } from '../inheritance.ts';
import { FAMILIES, FROST_LATE, NURSERY_LOSS, ROUGH_REGULARITY, TREE_LOSS } from '../ordinary.ts';
import { guess, published, remembered } from '../sources.ts';

export const persimmon = entryFrom({
  id: 'persimmon',
  name: 'persimmon',
  botanical: 'Diospyros kaki',
  figures: {
    firstFruit: {
      earliest: remembered([3.5, 4.5, 5.5], 'low', 'Japanese practice: seedlings 5–7 years, 3–4 when top-grafted on a grown tree. From memory.'),
      half: remembered([5, 6, 7], 'low', 'Japanese practice: seedlings 5–7 years. From memory. American persimmon bears from 10 (Silvics, from memory).'),
      ninety: guess([7, 8.5, 11], 'Drawn on from 5–7 years; no count was found.'),
    },
    familySpread: FAMILIES,
    regularity: ROUGH_REGULARITY,
    firstYearLoss: NURSERY_LOSS,
    yearlyLoss: TREE_LOSS,
    frostShare: FROST_LATE,
    flowers: guess([50, 150, 400], 'Female flowers in reach on one tree; not counted.'),
    yearsToFullBloom: 4,
    seedsPerFruit: remembered([1, 3, 5], 'low', 'Up to eight seeds a fruit; no count was looked up.'),
    seedsAtMost: 8,
    selfCompatible: false,
    ploidy: 6,
    inheritance: 'polysomic',
    note: 'Most named trees are female and need a male parent; many fruits swell without any seed. Part of the seedlings can be male and are then never judged: state their share.',
  },
  chilling: remembered([0, 30, 60], 'middling', 'USDA Handbook 727: none to 60 days; growers raise kaki warm. American persimmon 60–90.'),
  stocks: [
    ...stocksOf({
      id: 'persimmon-lotus',
      name: 'date-plum for persimmon',
      methods: [
        taking(
          chip,
          published(
            [0.8, 0.95, 0.983],
            'high',
            'Yordanov and others 2013: 93.3–98.3 % finished trees from chip buds in March on Diospyros lotus. Some non-astringent kinds fail on it later.',
          ),
        ),
        tongue,
      ],
      note: 'Non-astringent kinds often fail on date-plum after some years.',
    }),
    ...stocksOf({ id: 'persimmon-seedling', name: 'seedling persimmon', methods: [chip, tongue] }),
  ],
  traits: [
    shownBy(
      {
        id: 'persimmon-non-astringent',
        name: 'non-astringent (PCNA)',
        summary:
          'Recessive in all six chromosome sets: every copy must be the non-astringent form, so non-astringent × non-astringent breeds true and little else does.',
        source: {
          kind: 'published',
          confidence: 'high',
          note: 'Japanese national programme: about 1/5 from two cultivars × non-astringent. Ikeda and others 1985: about 15 % in backcrosses.',
        },
        note: 'Two foreign copies give 1 in 5 with a non-astringent tree, three 1 in 20; a tree with four or more gives none.',
      },
      [{ id: 'persimmon-ast', name: 'non-astringent' }],
      [rule('all six copies', 1, { needs: 'all', of: [{ gene: 'persimmon-ast', copies: 6 }] })],
    ),
  ],
  notes: [
    'Kaki has six sets of chromosomes, any of which pairs with any: a gene has up to six copies. Crossed with another kind, its sets are taken two by two.',
  ],
});

export const persimmonWithin: PairFigures = {
  seed: 'persimmon',
  pollen: 'persimmon',
  set: guess([0.2, 0.5, 0.85], 'No count was found.'),
  emptyFruit: guess([0.05, 0.3, 0.6], 'Persimmons swell without seed; how often after hand pollination was not counted.'),
  germination: guess([0.4, 0.7, 0.9], 'No count was found.'),
};
