import { entryFrom, type PairFigures } from '../build.ts';
import { chip, stocksOf, taking, tBud, tongue } from '../grafting.ts';
import { oneCopy, rule, shownBy } from '../inheritance.ts';
import { EMPTY, FAMILIES, FROST_FULL, NURSERY_LOSS, ONE_SEED, ROUGH_REGULARITY, SOME_FLOWERS, STRAY_PLUM, TREE_LOSS } from '../ordinary.ts';
import { guess, published, remembered } from '../sources.ts';

const dormant = taking(
  tongue,
  remembered(
    [0.2, 0.4, 0.85],
    'low',
    'Amateurs report 20–60 % with dormant apricot and peach wood; one grower none in a bad spring. Trials under plastic had 79–87 % with stone fruit.',
  ),
);
const each = (...genes: readonly string[]) => ({ needs: 'all' as const, of: genes.map((gene) => ({ gene, copies: 1 })) });

export const apricot = entryFrom({
  id: 'apricot',
  name: 'apricot',
  botanical: 'Prunus armeniaca',
  figures: {
    firstFruit: {
      earliest: published([2.5, 3, 3], 'high', 'Fruit Var. Hort. Dig. 10:55 (1956), Prosser, Washington: first fruit in the third season.'),
      half: guess([3, 3.5, 5], 'Drawn on from the third season at Prosser (1956), where growth was strong; no median was printed.'),
      ninety: guess([4, 5.5, 8], 'Drawn on from the third season at Prosser (1956); no count of late ones was found.'),
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
    note: 'Some cultivars set with their own pollen and some do not. On marginal sites 30–60 % of years have little or no crop, mostly by frost (from memory): enter your own frosts.',
  },
  chilling: remembered([60, 65, 70], 'middling', 'Hartmann & Kester; USDA Handbook 727: 60–70 days moist cold.'),
  stocks: [
    ...stocksOf({ id: 'apricot-myrobalan', name: 'myrobalan for apricot', methods: [chip, tBud, dormant] }),
    ...stocksOf({ id: 'apricot-peach', name: 'seedling peach for apricot', methods: [chip, tBud] }),
  ],
  traits: [
    oneCopy({
      id: 'apricot-sweet-kernel',
      name: 'sweet kernel',
      gene: { id: 'apricot-sk', name: 'sweet' },
      summary: 'Sweet is dominant in most reports; two bitter copies make a bitter kernel. Minor genes shift it.',
      source: { kind: 'remembered', confidence: 'middling', note: 'Gómez and others 1998: 3 sweet : 1 bitter. From memory.' },
      note: 'Do not taste raw kernels to find out: they contain cyanide.',
    }),
    shownBy(
      {
        id: 'apricot-pox-resistance',
        name: 'plum pox resistance',
        summary: 'Contested: one, two or three dominant genes are reported, all needed together; each future follows one of them.',
        falseShow: guess([0, 0.1, 0.25], 'One report fits a single gene with a quarter of the seedlings scored wrongly.'),
        source: {
          kind: 'published',
          confidence: 'high',
          note: 'Krška and others 2021; Salava and others 2008: 27 : 37 from resistant × resistant and 1 : 3 to 1 : 7 from resistant × susceptible; others find one locus on group 1.',
        },
      },
      [
        { id: 'apricot-pox-1', name: 'pox 1' },
        { id: 'apricot-pox-2', name: 'pox 2' },
        { id: 'apricot-pox-3', name: 'pox 3' },
      ],
      [
        rule('one dominant gene', 1, each('apricot-pox-1')),
        rule('two genes, one copy of each', 1, each('apricot-pox-1', 'apricot-pox-2')),
        rule('three genes, one copy of each', 1, each('apricot-pox-1', 'apricot-pox-2', 'apricot-pox-3')),
      ],
    ),
  ],
  notes: [
    'Raw kernels are poisonous: about three small ones are the limit for an adult and one is too many for a small child (EFSA 2016). Lock up seed and ask your food-safety office.',
    'Plum pox is regulated: report suspect trees. Your plant-health office decides.',
  ],
});

export const apricotWithin: PairFigures = {
  seed: 'apricot',
  pollen: 'apricot',
  set: remembered([0.1, 0.22, 0.4], 'middling', 'Textbook figure: 10–40 % in compatible hand crosses, very much up to the weather.'),
  straySet: STRAY_PLUM,
  emptyFruit: EMPTY,
  germination: guess([0.3, 0.65, 0.9], 'No count for apricot was found.'),
};
