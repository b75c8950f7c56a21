import { expect } from 'vitest';
import { betaBinomialPmf } from '../../../src/statistics/binomial.ts';
import { aliveAt } from '../../../src/statistics/graft.ts';
import { count as hits, expectMean, expectShare, total } from '../../engine/agreement.ts';
import { cross, document, future, futures, generation, kind, neverProven, plans, START, stock, tree, type Document } from '../../engine/programmes.ts';
import { entered } from '../case.ts';
import { count, expectInterval, known, middle, nursery, percent, wide } from '../programmes.ts';

const RUNS = 10_000;

const ONSET_DAYS = 18;
const MONTH_DAYS = 30.4375;
const ONSET = ONSET_DAYS / MONTH_DAYS;
/** Seeds of C01. The take is invented, so that about one graft in all of them lives. */
const SEEDS = 1172;
const lateDeath = (seeds: number, rescued: boolean): Document =>
  wide({
    seed: 'Japanese pear',
    pollen: 'apple',
    flowers: seeds,
    cross: { weakness: { share: 1, onset: ONSET, course: { halfLife: 0.25 }, rootBorne: { chance: 1 } } },
    generation: rescued ? { rescue: { who: 'weak', month: ONSET, stock: 'stock' } } : {},
    rest: { stocks: [stock({ takeTender: { value: 1 / SEEDS, source: { kind: 'invented', note: '' } } })] },
  });

/** ~200 seeds, ~140 at the first birthday, ~90 alive some six years on. */
const LATER_WINTERS = 5;
const homePlot = (): Document =>
  nursery(
    200,
    { firstFruit: { years: 1 + LATER_WINTERS }, firstYearLoss: count(60, 200), yearlyLoss: known(1 - (90 / 140) ** (1 / LATER_WINTERS)) },
    {},
    { lastYear: START + 8 },
  );

/** Everything but a diploid is taken as weak: 465 of 690. */
const triploidMother = (): Document =>
  wide({
    seed: 'Jonagold',
    pollen: 'diploid apple',
    flowers: 690,
    cross: { weakness: { share: count(690 - 225, 690), onset: 2, course: { halfLife: 0.25 }, rootBorne: { chance: 0 } } },
  });

/** Raised as ever, or with the stones opened early and a winter under glass: another way of raising seed, and another kind of tree. */
const earlyCherry = (): Document =>
  document({
    goal: neverProven(),
    lastYear: START + 12,
    kinds: [
      kind({ firstFruit: { earliest: 6, half: 8, ninety: 10 } }),
      kind({ id: 'forced', name: 'sour cherry under glass', firstFruit: { earliest: 2, half: 2, ninety: 3 } }),
    ],
    crosses: [
      cross({ id: 'plain', name: 'sown as ever', germination: 0.3 }),
      cross({
        id: 'early',
        name: 'raised early',
        gives: 'forced',
        germination: 0.3,
        routes: [{ id: 'opened', name: 'stones opened', germination: known(0.7) }],
      }),
    ],
    plans: plans([generation('plain', 200, { cross: 'plain' })], [generation('early', 200, { cross: 'early', route: 'opened' })]),
  });

/** A place is 12 square feet here; a tree on dwarf stock takes 12 in × 6 ft, half of that. */
const PLACE_FEET = 12;
const TREE_FEET = 6;
const homeApples = (): Document =>
  nursery(
    125,
    { plantOutAge: 3 },
    { rescue: { who: 'every', month: 24, stock: 'stock' } },
    { stocks: [stock({ name: 'dwarf stock', place: TREE_FEET / PLACE_FEET })], lastYear: START + 8 },
  );

/** Wood of three months counts as the wood that was counted: one share for all eight, not one between two. */
const chips = (keepOwnRoots: boolean): Document =>
  nursery(
    8,
    { firstFruit: { years: 3 } },
    { rescue: { who: 'every', month: 3, stock: 'stock', keepOwnRoots } },
    { stocks: [stock({ takeTender: count(1, 8), takeRipe: count(1, 8), ripeMonths: 3 })], lastYear: START + 6 },
  );

/** In vivo → embryo culture, percent, of five seed parents. */
const CULTURE = [
  [0, 15],
  [7, 24],
  [11, 23],
  [12, 34],
  [16, 24],
] as const;
const embryos = (route: boolean): Document =>
  document({
    goal: neverProven(),
    lastYear: START + 6,
    crosses: CULTURE.map(([plain, culture], i) =>
      cross({
        id: `g${String(i)}`,
        name: `seed parent ${String(i + 1)}`,
        germination: known(plain / 100),
        routes: [{ id: 'culture', name: 'embryo culture', germination: known(culture / 100) }],
      }),
    ),
    trees: [tree('a'), tree('b')],
    plans: plans(...CULTURE.map((_, i) => [generation(`p${String(i)}`, 100, { cross: `g${String(i)}`, ...(route ? { route: 'culture' } : {}) })])),
  });

export const raising = [
  entered('C03', 'Intergeneric seedlings: over 80 % look sound at 18 days, all are dead within five months; one shoot in all was saved', {
    programme: () => lateDeath(SEEDS, false),
    holds: () => {
      // A steady rate through 80 % at 18 days would leave more than one in ten alive at five months: the wave has to come late.
      expect(0.8 ** (5 / ONSET)).toBeGreaterThan(0.1);
      expect(aliveAt(ONSET, ONSET, 0.25)).toBe(1);
      expect(SEEDS * aliveAt(5, ONSET, 0.25)).toBeLessThan(0.01);
      // More seedlings are no cure.
      for (const seeds of [SEEDS, 10 * SEEDS]) expect(total(future(lateDeath(seeds, false), 500).run('fruiting'))).toBe(0);
      expectMean(future(lateDeath(SEEDS, true), RUNS).run('fruiting'), 1, 'saved by a graft');
    },
    beyond: 'Irradiated shoots are not a step of a plan.',
  }),
  entered('C06', 'Open-pollinated seedlings at home: 200 seeds, 140 at one year, 90 some years on, 10 of them in fruit', {
    programme: homePlot,
    holds: () => {
      expectInterval(140, 200, 63, 76);
      expectInterval(90, 140, 56, 72);
      expectInterval(10, 90, 6, 19);
      expectMean(future(homePlot(), RUNS).run('fruiting'), 200 * middle(140, 200) * (90 / 140), 'alive in the sixth year');
      // 140 × 100 square feet at 20 × 30 feet a tree: room for 23 in the end, “cull 5 of 6” of 140.
      expect(Math.floor((140 * 100) / (20 * 30))).toBe(23);
      const room = homePlot();
      room.limits.places = 23;
      const columns = future(room, 200);
      expect(new Set(columns.amount('mostPlaces'))).toEqual(new Set([23]));
    },
    beyond: 'Eighty trees not yet in fruit teach about first fruit only in the season log.',
  }),
  entered('C08', 'Jonagold as seed parent: of 690 seedlings 225 diploid, 452 aneuploid', {
    programme: triploidMother,
    holds: () => {
      expectInterval(225, 690, 29, 36);
      expect([percent(452 / 690, 1), percent(225 / 690, 1)]).toEqual([65.5, 32.6]);
      expectMean(future(triploidMother(), RUNS).run('fruiting'), 690 * middle(225, 690), 'sound seedlings');
      // “Multiply seeds needed × 3.”
      expect(Math.round(690 / 225)).toBe(3);
    },
    beyond: 'Sets of chromosomes and alleles of self-incompatibility are not in the model: what is not diploid is entered as weak.',
  }),
  entered('C25', 'Sour cherry raised early: over 70 % come up, 40–90 % flower three years after crossing', {
    programme: earlyCherry,
    holds: () => {
      // Crossed in the first spring, up in the second: three years after crossing is season two.
      const [plain, early] = futures({ ...earlyCherry(), lastYear: START + 3 }, RUNS);
      expectMean(early!.generation(0, 'seedlings'), 200 * 0.7, 'seedlings of opened stones');
      expectMean(plain!.generation(0, 'seedlings'), 200 * 0.3, 'seedlings of stones sown as ever');
      const share = total(early!.run('fruiting')) / total(early!.generation(0, 'seedlings'));
      expect(share).toBeGreaterThan(0.4);
      expect(share).toBeLessThan(0.9);
      expectShare(total(early!.run('fruiting')), total(early!.generation(0, 'seedlings')), 0.5, 'half by season two');
      expect(total(plain!.run('fruiting'))).toBe(0);
    },
    beyond: 'A way of raising seed changes no ages by itself: the early trees are a kind of their own.',
  }),
  entered('C27', '125 seedlings of one year, grafted onto dwarf stock at 12 in × 6 ft', {
    programme: homeApples,
    holds: () => {
      expect(125 * TREE_FEET).toBe(750);
      // 1 ft = 0.3048 m exactly.
      expect(10 * Math.round((750 * 0.3048 ** 2) / 10)).toBe(70);
      const columns = future(homeApples(), 200);
      // One tree each: a graft takes the seedling's place and is not a second one.
      expect(new Set(columns.run('fruiting'))).toEqual(new Set([125]));
      expect(new Set(columns.amount('mostPlaces'))).toEqual(new Set([(125 * TREE_FEET) / PLACE_FEET]));
    },
    beyond: 'Trees in fruit and trees lost, of a number not known, belong to the season log.',
  }),
  entered('C29', 'Eight chips of baby seedlings: two grew, one lived', {
    programme: () => chips(true),
    holds: () => {
      expectInterval(1, 8, 1, 45);
      const alone = future(chips(false), RUNS).run('fruiting');
      expectMean(alone, 8 * middle(1, 8), 'of eight, alive as grafts');
      expectShare(
        hits(alone, (n) => n === 0),
        RUNS,
        betaBinomialPmf(0, 8, 1.5, 7.5),
        'none lives',
      );
      // The donors are counted apart: where they stay, no seedling is lost for a chip that dies.
      expect(new Set(future(chips(true), 500).run('fruiting'))).toEqual(new Set([8]));
    },
    beyond: 'Take is one number: “grew” and “lived” are not told apart, and a hand that learns enters another count.',
  }),
  entered('C44', 'Five early grapes as seed parents: 0–16 % come up, 15–34 % by embryo culture', {
    programme: () => embryos(true),
    holds: () => {
      const [plain, culture] = [futures(embryos(false), RUNS), futures(embryos(true), RUNS)];
      CULTURE.forEach(([before, after], i) => {
        expectMean(culture[i]!.generation(0, 'seedlings'), after, `seed parent ${String(i + 1)}, culture`);
        // From nothing there is no “so many times better”.
        if (before === 0) expect(total(plain[i]!.generation(0, 'seedlings'))).toBe(0);
        else expectMean(plain[i]!.generation(0, 'seedlings'), before, `seed parent ${String(i + 1)}, sown`);
      });
    },
    beyond: 'Printed without numbers of seeds, so each is taken as known.',
  }),
];
