import { describe, expect, it } from 'vitest';
import { expectMean, expectRatio } from './agreement.ts';
import { cross, document, future, generation, kind, neverProven, plans, tree, type Document } from './programmes.ts';

/**
 * Japanese pear × quince: 60 flowers, 23 fruits, 97 seeds, 47 seedlings, 7 of them alive after ten years.
 * **Source:** J. Japan. Soc. Hort. Sci. 52:243–249 (1983).
 */
const FLOWERS = 60;
const FRUITS = 23;
const SEEDS = 97;
const SEEDLINGS = 47;
const ALIVE = 7;
const YEARS = 10;

/** The chain as rates taken as known, or as the counts they are. Ordinary losses none: all deaths are of the weak. */
const chain = (known: boolean, changes: Partial<Document> = {}): Document =>
  document({
    goal: neverProven(),
    lastYear: 2000 + 1 + YEARS,
    kinds: [kind({ firstFruit: { years: YEARS } }), kind({ id: 'quince', name: 'quince' })],
    trees: [tree('a'), tree('b', { kind: 'quince' })],
    crosses: [
      cross({
        pollen: 'quince',
        set: known ? FRUITS / FLOWERS : { hits: FRUITS, of: FLOWERS },
        seedsPerFruit: SEEDS / FRUITS,
        seedsAtMost: 10,
        germination: known ? SEEDLINGS / SEEDS : { hits: SEEDLINGS, of: SEEDS },
        weakness: {
          share: 1,
          onset: 2,
          course: { alive: known ? ALIVE / SEEDLINGS : { hits: ALIVE, of: SEEDLINGS }, atYears: YEARS },
          rootBorne: { chance: 0 },
        },
      }),
    ],
    plans: plans([generation('wide', 100_000, { flowers: FLOWERS, judge: 0, keep: { howMany: 1 } })]),
    ...changes,
  });

const RUNS = 20_000;

describe('a published chain: 60 flowers → 23 fruits → 97 seeds → 47 seedlings → 7 alive at ten years (J. Japan. Soc. Hort. Sci. 52:243–249, 1983)', () => {
  it('every link comes back when its rate is taken as known', () => {
    const columns = future(chain(true), RUNS);
    const of = (name: 'fruits' | 'seeds' | 'seedlings') => columns.generation(0, name);
    expect(new Set(columns.generation(0, 'flowers'))).toEqual(new Set([FLOWERS]));
    expectMean(of('fruits'), FRUITS, 'fruits');
    expectMean(of('seeds'), SEEDS, 'seeds');
    expectMean(of('seedlings'), SEEDLINGS, 'seedlings');
    expectMean(columns.run('fruiting'), ALIVE, 'alive at ten years');
    expectRatio(of('seeds'), of('fruits'), SEEDS / FRUITS, 'seeds a fruit');
    expectRatio(of('seedlings'), of('seeds'), SEEDLINGS / SEEDS, 'germination');
    expectRatio(columns.run('fruiting'), of('seedlings'), ALIVE / SEEDLINGS, 'survival');
  });

  it('and, written as counts, each at its Jeffreys mean: (hits + ½)/(of + 1)', () => {
    const columns = future(chain(false), RUNS);
    const mean = (hits: number, of: number) => (hits + 0.5) / (of + 1);
    const fruits = FLOWERS * mean(FRUITS, FLOWERS);
    const seeds = fruits * (SEEDS / FRUITS);
    const seedlings = seeds * mean(SEEDLINGS, SEEDS);
    expectMean(columns.generation(0, 'fruits'), fruits, 'fruits');
    expectMean(columns.generation(0, 'seeds'), seeds, 'seeds');
    expectMean(columns.generation(0, 'seedlings'), seedlings, 'seedlings');
    expectMean(columns.run('fruiting'), seedlings * mean(ALIVE, SEEDLINGS), 'alive at ten years');
  });

  it('most of the weak die young: half are dead in half-life months after the onset', () => {
    // From 7 of 47 at 120 months: 2^(−118/H) = 7/47, H = 43 months; at three years 2^(−34/H) of 47.
    const halfLife = 118 / Math.log2(SEEDLINGS / ALIVE);
    const early = future(chain(true, { kinds: [kind({ firstFruit: { years: 3 } }), kind({ id: 'quince', name: 'quince' })] }), RUNS);
    expectMean(early.run('fruiting'), SEEDLINGS * 2 ** (-34 / halfLife));
  });

  it('ordinary losses are part of the count, not on top of it', () => {
    const lossy = [kind({ firstFruit: { years: YEARS }, firstYearLoss: 0.1, yearlyLoss: 0.03 }), kind({ id: 'quince', name: 'quince' })];
    expectMean(future(chain(true, { kinds: lossy }), RUNS).run('fruiting'), ALIVE);
  });
});
