import { expect } from 'vitest';
import { parseProgramme } from '../../../src/model/read.ts';
import { betaBinomialPmf, plantsNeeded } from '../../../src/statistics/binomial.ts';
import { perFlower } from '../../../src/statistics/interval.ts';
import { count as hits, expectMean, expectRatio, expectShare } from '../../engine/agreement.ts';
import { cross, document, future, futures, generation, kind, neverProven, plans, tree, type Document } from '../../engine/programmes.ts';
import { entered } from '../case.ts';
import { count, expectInterval, known, middle, percent, wide } from '../programmes.ts';

const RUNS = 10_000;

const PEAR = 'Japanese pear';
const pearByApple = () =>
  wide({
    seed: PEAR,
    pollen: 'apple',
    flowers: 1306,
    cross: { set: count(221, 1306), emptyFruit: count(4, 221), seedsPerFruit: known(1172 / 217), seedsAtMost: 10, germination: 0 },
  });

const bothWays = (): Document =>
  document({
    goal: neverProven(),
    kinds: [kind({ id: 'pear', name: PEAR }), kind({ id: 'apple', name: 'apple' }), kind({ id: 'hybrid', name: 'hybrid' })],
    trees: [tree('p'), tree('m', { kind: 'apple' })],
    crosses: [
      cross({ id: 'on-pear', name: 'on pear', pollen: 'apple', gives: 'hybrid', set: count(221, 1306), germination: 0 }),
      cross({ id: 'on-apple', name: 'on apple', seed: 'apple', gives: 'hybrid', set: count(118, 1152), germination: 0 }),
    ],
    plans: plans(
      [generation('on-pear', 100_000, { seedParents: [{ tree: 'p' }], pollen: [{ tree: 'm' }], flowers: 1306 })],
      [generation('on-apple', 100_000, { seedParents: [{ tree: 'm' }], pollen: [{ tree: 'p' }], flowers: 1152 })],
    ),
  });

const FLOWERS_FOR_ONE = plantsNeeded(7 / 3000, 1, 0.95);
const dwarfCherry = () =>
  wide({
    seed: 'ground cherry',
    pollen: 'mahaleb cherry',
    flowers: FLOWERS_FOR_ONE,
    cross: { set: known(20 / 3000), germination: known(7 / 20) },
    hybrid: { name: 'triploid', fertilityAsSeedParent: { low: 0, likely: 0.02, high: 0.1, source: { kind: 'guess', note: 'Triploids set little.' } } },
  });

const CLUSTER = { name: 'cluster', flowers: 3 };
const gardenTable = (succeeded: number, clusters: number) => () =>
  wide({ seed: 'apple, any of the table', pollen: 'apple', flowers: 3, cross: { set: count(succeeded, clusters, CLUSTER), germination: 0 } });

/** Wanted set that, with the background of the unpollinated control, gives what was counted: w + 0.012 (1 − w). */
const STRAY = 0.012;
const wanted = (counted: number) => (counted - STRAY) / (1 - STRAY);
const stray = (counted: number, cover = 1): Document =>
  wide({
    seed: 'myrobalan',
    pollen: 'apricot',
    flowers: 2000,
    cross: { set: wanted(counted), straySet: known(STRAY) },
    generation: { cover, pool: 'air' },
    rest: {
      kinds: [kind({ id: 'seed', name: 'myrobalan', neverFruits: 1 }), kind({ id: 'pollen', name: 'apricot' }), kind({ id: 'hybrid', name: 'plum × apricot' })],
      trees: [
        tree('a', { kind: 'seed', name: 'Myrobalan' }),
        tree('b', { kind: 'pollen', name: 'Moniquí Borde' }),
        tree('c', { kind: 'seed', name: 'another' }),
      ],
      pools: [{ id: 'air', name: 'air', trees: [{ tree: 'c', weight: 1 }] }],
      crosses: [
        cross({ id: 'wide', name: 'plum × apricot', seed: 'seed', pollen: 'pollen', gives: 'hybrid', set: wanted(counted), straySet: known(STRAY) }),
        cross({ id: 'stray', name: 'plum × plum', seed: 'seed', pollen: 'seed', gives: 'seed' }),
      ],
    },
  });

/** Flowers of one cluster, so that apples a cluster can be entered as apples a flower. Invented: the report counts clusters. */
const FLOWERS_A_CLUSTER = 5;
/** Apples by hand, clusters by hand, apples excluded, clusters excluded, full seeds an apple, apples without a seed, apples cut. */
const NORWAY = {
  Aroma: [370, 510, 65, 457, 6.1, 16, 318],
  'Discovery ': [257, 397, 19, 328, 8, 0, 210],
  Summerred: [412, 619, 33, 417, 4.5, 14, 359],
} as const;
const bags = (name: keyof typeof NORWAY): Document => {
  const [byHand, clustersByHand, leaked, excluded, seeds, empty, cut] = NORWAY[name];
  return wide({
    seed: name,
    pollen: 'another apple',
    flowers: 100 * FLOWERS_A_CLUSTER,
    cross: {
      set: known(byHand / clustersByHand / FLOWERS_A_CLUSTER),
      straySet: known(leaked / excluded / FLOWERS_A_CLUSTER),
      emptyFruit: known(empty / cut),
      seedsPerFruit: known((seeds * cut) / (cut - empty)),
      seedsAtMost: 18,
      germination: 0,
    },
    generation: { cover: 0 },
  });
};
/** An excluded bag: no pollen is brought, and what leaks in is let through. */
const excluded = (name: keyof typeof NORWAY): Document => {
  const input = bags(name);
  Object.assign(input.crosses![0]!, { set: 0 });
  Object.assign(input.plans[0]!.generations[0]!, { cover: 1, pool: 'air' });
  return Object.assign(input, {
    pools: [{ id: 'air', name: 'air', trees: [{ tree: 'b', weight: 1 }] }],
  });
};

export const crossing = [
  entered('C01', 'Japanese pear × apple: 1,306 flowers, 221 fruits of which 4 without seed, 1,172 seeds', {
    programme: pearByApple,
    holds: () => {
      expectInterval(221, 1306, 15, 19, 1);
      expect(percent(221 / 1306, 1)).toBe(16.9);
      const columns = future(pearByApple(), RUNS);
      const [fruits, seeds] = [columns.generation(0, 'fruits'), columns.generation(0, 'seeds')];
      expectMean(fruits, 1306 * middle(221, 1306), 'fruits');
      // Seeds per fruit that has any leave the seedless out: 5.40, not 1172/221 = 5.30.
      expect(Number((1172 / 217).toFixed(2))).toBe(5.4);
      expectRatio(seeds, fruits, (1172 / 217) * (1 - middle(4, 221)), 'seeds a fruit');
    },
  }),
  entered('C02', 'Apple × Japanese pear, the same pair the other way: 1,152 flowers, 118 fruits', {
    programme: bothWays,
    holds: () => {
      expectInterval(118, 1152, 8.6, 12.1, 1);
      const [onPear, onApple] = futures(bothWays(), RUNS);
      expectMean(onPear!.generation(0, 'fruits'), 1306 * middle(221, 1306), 'on pear');
      expectMean(onApple!.generation(0, 'fruits'), 1152 * middle(118, 1152), 'on apple');
      // The entry of one direction does not stand in for the other.
      const input = bothWays();
      input.crosses = input.crosses!.slice(0, 1);
      const reading = parseProgramme(input);
      expect(!reading.ok && reading.problems.map(({ message }) => message)).toEqual([
        'crosses apple × Japanese pear, and there is no cross entry for that pair',
      ]);
    },
  }),
  entered('C04', 'Dwarf rootstock cherry: 3,000 flowers, 20 fruits, 7 seedlings', {
    programme: dwarfCherry,
    holds: () => {
      expectInterval(7, 3000, 0.1, 0.46, 2);
      // Printed “≈ 1,285” and “≈ 6,100”, to the nearest five and hundred.
      expect(5 * Math.round(FLOWERS_FOR_ONE / 5)).toBe(1285);
      expect(100 * Math.round(plantsNeeded(7 / 3000, 10, 0.9) / 100)).toBe(6100);
      const seedlings = future(dwarfCherry(), RUNS).generation(0, 'seedlings');
      expectShare(
        hits(seedlings, (n) => n > 0),
        RUNS,
        1 - (1 - 7 / 3000) ** FLOWERS_FOR_ONE,
        'at least one seedling',
      );
    },
    beyond: 'Sets of chromosomes are not counted: 4x × 2x → 3x is entered as a kind of its own with little fertility.',
  }),
  entered('C05', 'A garden table in clusters of three flowers: 63 of 127 clusters, and one parent with 0 of 5', {
    programme: gardenTable(63, 127),
    holds: () => {
      expectInterval(63, 127, 41, 58);
      expect(percent(perFlower(63 / 127, 3), 1)).toBe(20.4);
      expect(percent(63 / 381, 1)).toBe(16.5);
      const one = (succeeded: number, clusters: number) => hits(future(gardenTable(succeeded, clusters)(), RUNS).generation(0, 'fruits'), (n) => n > 0);
      // Three flowers of a future make a cluster: it succeeds as often as clusters were counted to.
      expectShare(one(63, 127), RUNS, middle(63, 127), 'clusters with fruit');
      // 0 of 5 is “0–38 %”, not “never”; 1 of 1 is not “always”.
      expectInterval(0, 5, 0, 38);
      expectShare(one(0, 5), RUNS, middle(0, 5), 'clusters with fruit after 0 of 5');
      expectShare(one(1, 1), RUNS, middle(1, 1), 'clusters with fruit after 1 of 1');
    },
    beyond: 'Reading the table, and saying that the parts of a row do not add up, belong to the season log.',
  }),
  entered('C18', 'Plum × apricot, emasculated and unbagged: set 1.8–8.0 %, unpollinated control 1.2 %', {
    programme: () => stray(0.018),
    holds: () => {
      expect([0.018, 0.08].map((counted) => percent(STRAY / counted))).toEqual([67, 15]);
      for (const counted of [0.018, 0.08]) {
        const columns = future(stray(counted), RUNS);
        const [fruits, bearing, seedlings] = [columns.generation(0, 'fruits'), columns.run('fruiting'), columns.generation(0, 'seedlings')];
        expectMean(fruits, 2000 * counted, 'fruits');
        // Plums by stray pollen are of a kind that never fruits here: what bears is hybrid.
        expectRatio(bearing, seedlings, wanted(counted) / counted, 'true hybrids');
        expect(1 - wanted(counted) / counted).toBeLessThanOrEqual(STRAY / counted);
      }
      const bagged = future(stray(0.018, 0), RUNS);
      expectMean(bagged.generation(0, 'fruits'), 2000 * wanted(0.018), 'fruits in bags');
    },
    beyond: 'That a seedling is a hybrid is known to the engine, not tested for.',
  }),
  entered('C40', 'Apples by hand and in excluded bags, three cultivars', {
    programme: () => bags('Discovery '),
    holds: () => {
      const names = Object.keys(NORWAY) as (keyof typeof NORWAY)[];
      const leaks = names.map((name) => {
        const [byHand, clusters, leaked, closed, seeds] = NORWAY[name];
        const hand = future(bags(name), 2000);
        expectMean(hand.generation(0, 'fruits'), (100 * byHand) / clusters, `${name}, by hand`);
        expectRatio(hand.generation(0, 'seeds'), hand.generation(0, 'fruits'), seeds, `${name}, full seeds an apple`);
        expectMean(future(excluded(name), 2000).generation(0, 'fruits'), (100 * leaked) / closed, `${name}, excluded`);
        return (100 * leaked) / closed;
      });
      // “Still yields 6–14 per 100 clusters”: the control is not zero.
      expect([Math.round(Math.min(...leaks)), Math.round(Math.max(...leaks))]).toEqual([6, 14]);
      // A space after the name does not make another cultivar.
      const reading = parseProgramme(bags('Discovery '));
      expect(reading.ok && reading.programme.trees[0]!.name).toBe('Discovery');
    },
    beyond: 'Remarks of single bags belong to the season log.',
  }),
  entered('C43', 'Peach × apricot in a mother that sets none of her own pollen: 7 stones, 7 seedlings', {
    programme: () => wide({ seed: 'peach', pollen: 'apricot', flowers: 7, cross: { germination: count(7, 7) } }),
    holds: () => {
      const seedlings = future(wide({ seed: 'peach', pollen: 'apricot', flowers: 7, cross: { germination: count(7, 7) } }), RUNS).generation(0, 'seedlings');
      expectMean(seedlings, 7 * middle(7, 7), 'seedlings of seven stones');
      // Seven of seven is not “always”: in one future in so many, the next seven do not all come up.
      expectShare(
        hits(seedlings, (n) => n === 7),
        RUNS,
        betaBinomialPmf(7, 7, 7.5, 0.5),
        'all seven come up',
      );
    },
    beyond: 'Whether each of the seven is a hybrid stays open; seedlings whose parentage is doubted belong to the season log.',
  }),
];
