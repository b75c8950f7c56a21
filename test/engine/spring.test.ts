import { describe, expect, it } from 'vitest';
import { count, expectMean, expectShare, expectVariance, mean } from './agreement.ts';
import { cross, document, future, futures, generation, kind, neverProven, picksOf, plans, shown, tree, type Document } from './programmes.ts';

const each = (columns: Int32Array) => [...new Set(columns)];

describe('flowers of a spring', () => {
  it('are shared evenly over the pairs, capped by what each seed parent offers, and not passed on', () => {
    const trees = [tree('a', { flowers: 10 }), tree('b', { flowers: 1000 }), tree('c')];
    const g = generation('g', 1000, { seedParents: [{ tree: 'a' }, { tree: 'b' }], pollen: [{ tree: 'c' }], flowers: 100 });
    expect(each(future(document({ trees, plans: plans([g]) }), 50).run('flowers'))).toEqual([60]);
  });

  it('are pollinated both ways round if asked, each tree within its own offer', () => {
    const trees = [tree('a', { flowers: 30 }), tree('b', { flowers: 1000 })];
    const there = generation('g', 1000, { flowers: 100 });
    expect(futures(document({ trees, plans: plans([there], [{ ...there, reciprocal: true }]) }), 20).map((columns) => each(columns.run('flowers')))).toEqual([
      [30],
      [80],
    ]);
  });

  it('are limited by hands: bloom days × hours a day × flowers an hour', () => {
    const limits = { places: 1000, bloomDays: 2, hoursADay: 3, flowersAnHour: 7 };
    const columns = future(document({ limits, plans: plans([generation('g', 1000, { flowers: 100 })]) }), 20);
    expect(each(columns.run('flowers'))).toEqual([42]);
  });

  it('of generations that pollinate together are cut in proportion; open pollination needs no hands', () => {
    const limits = { places: 1e6, bloomDays: 1, hoursADay: 1, flowersAnHour: 40 };
    const first = generation('f1', 10_000, { flowers: 120, springs: 12, judge: 0, keep: { howMany: 2 }, goOn: { when: 'enough', count: 2 } });
    const second = generation('f2', 10_000, { seedParents: [{ tree: 'a' }], pollen: [{ tree: 'b' }], flowers: 40, springs: 3, judge: 0 });
    const columns = future(document({ limits, goal: neverProven(), lastYear: 2020, plans: plans([first, second]) }), 20);
    // Springs 0–5 alone: 40 each. Springs 6–8 with the second: 40 · 120/160 = 30 and 10. Springs 9–11 alone again.
    expect(each(columns.generation(0, 'flowers'))).toEqual([6 * 40 + 3 * 30 + 3 * 40]);
    expect(each(columns.generation(1, 'flowers'))).toEqual([30]);
    const open = generation('g', 500, { pollen: 'open', flowers: 0 });
    const air = [{ id: 'air', name: 'air', trees: [{ tree: 'b', weight: 1 }] }];
    expect(each(future(document({ limits, pools: air, defaultPool: 'air', plans: plans([open]) }), 20).generation(0, 'seedlings'))).toEqual([500]);
  });

  it('of a young pick grow evenly to full bloom: a quarter, half, three quarters, all in four seasons', () => {
    const first = generation('f1', 1, { judge: 0, keep: { howMany: 1 } });
    const second = generation('f2', 100_000, { seedParents: picksOf('f1'), pollen: [{ tree: 'b' }], flowers: 1000, springs: 6, judge: 0 });
    const kinds = [kind({ flowers: 100, yearsToFullBloom: 4 })];
    const columns = future(document({ kinds, goal: neverProven(), lastYear: 2011, plans: plans([first, second]) }), 20);
    expect(each(columns.generation(1, 'flowers'))).toEqual([25 + 50 + 75 + 100 + 100 + 100]);
    expect(each(columns.generation(1, 'firstPollination'))).toEqual([6]);
  });

  it('wanted each spring are given each spring until the seedlings are there', () => {
    const g = generation('g', 100, { flowers: 60, springs: 5 });
    const columns = future(document({ plans: plans([g]) }), 20);
    expect([each(columns.run('flowers')), each(columns.generation(0, 'seedlings')), each(columns.run('fruits'))]).toEqual([[120], [100], [120]]);
  });
});

/** Fruits of 200 flowers of one pair in one spring. */
const fruitsOf = (changes: Partial<Document>, springs = 1): Document =>
  document({ goal: neverProven(), lastYear: 2004, plans: plans([generation('g', 100_000, { flowers: 200, springs })]), ...changes });

describe('fruit set', () => {
  it('multiplies the fertility of both parents, at most 1', () => {
    const kinds = [kind({ fertilityAsSeedParent: 0.5, fertilityAsPollenParent: 0.8 })];
    expectMean(future(fruitsOf({ kinds, crosses: [cross({ set: 0.5 })] }), 2000).run('fruits'), 200 * 0.5 * 0.5 * 0.8);
    expect(each(future(fruitsOf({ kinds: [kind({ fertilityAsSeedParent: 2 })], crosses: [cross({ set: 0.6 })] }), 10).run('fruits'))).toEqual([200]);
  });

  it('varies between springs with intraclass correlation ρ: variance n·p(1 − p)(1 + (n − 1)ρ) (Skellam 1948; Williams 1975, Biometrics 31:949–952)', () => {
    const weather = { frostChance: 0, springLuckSet: 0.1, springLuckGermination: 0 };
    const fruits = future(fruitsOf({ weather, crosses: [cross({ set: 0.3 })] }), 20_000).run('fruits');
    expectMean(fruits, 60);
    expectVariance(fruits, 200 * 0.3 * 0.7 * (1 + 199 * 0.1));
  });

  it('each spring and pair has luck of its own: two springs double the variance, two pairs halve it', () => {
    const weather = { frostChance: 0, springLuckSet: 0.1, springLuckGermination: 0 };
    const one = 0.3 * 0.7 * 0.1;
    const spring = (n: number) => n * 0.3 * 0.7 * 0.9 + n * n * one;
    const twoSprings = future(fruitsOf({ weather, crosses: [cross({ set: 0.3 })] }, 2), 20_000).run('fruits');
    expectVariance(twoSprings, 2 * spring(200), 'two springs');
    const reciprocal = future(
      fruitsOf({ weather, crosses: [cross({ set: 0.3 })], plans: plans([generation('g', 100_000, { flowers: 200, reciprocal: true })]) }),
      20_000,
    ).run('fruits');
    expectVariance(reciprocal, 2 * spring(100), 'two pairs');
  });

  it('is the same luck for every plan, by pair of founding trees and spring', () => {
    const weather = { frostChance: 0, springLuckSet: 0.3, springLuckGermination: 0 };
    const few = generation('few', 100_000, { flowers: 100_000 });
    const columns = futures(fruitsOf({ weather, crosses: [cross({ set: 0.3 })], plans: plans([few], [{ ...few, id: 'other', judge: 2 }]) }), 300);
    const [a, b] = columns.map((plan) => Array.from(plan.run('fruits'), (n) => n / 100_000));
    // With so many flowers the shares themselves are seen: their spread is that of the common luck, and the plans agree to √(p(1 − p)/10⁵) = 0.0014.
    expect(Math.max(...a!.map((share, run) => Math.abs(share - b![run]!)))).toBeLessThan(6 * Math.SQRT2 * 0.0014);
    expectVariance(a!, 0.3 * 0.7 * 0.3);
  });

  it('a frost takes its share of flowers, times the share of the kind', () => {
    const weather = { frostChance: 0.3, frostTakes: 0.5, springLuckSet: 0, springLuckGermination: 0 };
    const fruits = future(fruitsOf({ weather, kinds: [kind({ frostShare: 0.4 })], crosses: [cross({ set: 1 })] }), 4000).run('fruits');
    expectShare(
      count(fruits, (n) => n < 200),
      4000,
      0.3,
      'springs with a frost',
    );
    expectMean(
      Array.from(fruits).filter((n) => n < 200),
      200 * (1 - 0.5 * 0.4),
      'after a frost',
    );
  });
});

/** Chance of 1 … most in a Poisson conditioned on that range whose mean is `wanted`; the parameter by halving. Own derivation (docs/model.md §6). */
function seedChances(wanted: number, most: number): number[] {
  const chances = (rate: number) => {
    const weights = Array.from({ length: most }, (_, i) =>
      Math.exp((i + 1) * Math.log(rate) - Array.from({ length: i + 1 }, (_unused, k) => Math.log(k + 1)).reduce((a, b) => a + b, 0)),
    );
    const all = weights.reduce((a, b) => a + b, 0);
    return weights.map((weight) => weight / all);
  };
  let [low, high] = [1e-9, 1e4];
  for (let i = 0; i < 200; i += 1) {
    const middle = Math.sqrt(low * high);
    const average = chances(middle).reduce((sum, p, k) => sum + p * (k + 1), 0);
    if (average < wanted) low = middle;
    else high = middle;
  }
  return chances(low);
}

describe('seeds', () => {
  for (const [wanted, most] of [
    [1.2, 10],
    [97 / 23, 10],
    [5, 10],
    [9, 10],
  ] as const)
    it(`of a fruit with any: Poisson between 1 and ${String(most)} with mean ${wanted.toFixed(2)}`, () => {
      const one = fruitsOf({ kinds: [kind({ seedsPerFruit: wanted, seedsAtMost: most })], plans: plans([generation('g', 100_000, { flowers: 1 })]) });
      const seeds = future(one, 20_000).generation(0, 'seeds');
      expectMean(seeds, wanted, 'mean');
      seedChances(wanted, most).forEach((p, i) =>
        expectShare(
          count(seeds, (n) => n === i + 1),
          20_000,
          p,
          `${String(i + 1)} seeds`,
        ),
      );
    });

  it('fail in empty fruit, and in a seed parent that shows a trait that costs seed: 1 − (1 − a)(1 − b)', () => {
    const costly = (copies: 0 | 2) =>
      fruitsOf({
        traits: [shown(2, { emptyIfShown: 0.3 })],
        trees: [tree('a', { genes: { r: { copies } } }), tree('b', { genes: { r: { copies: 2 } } })],
        crosses: [cross({ emptyFruit: 0.2 })],
      });
    expectMean(future(costly(2), 2000).generation(0, 'seeds'), 200 * 0.8 * 0.7);
    expectMean(future(costly(0), 2000).generation(0, 'seeds'), 200 * 0.8);
  });

  it('are sown until enough have come up', () => {
    const wanted = fruitsOf({ crosses: [cross({ germination: 0.5 })], plans: plans([generation('g', 90, { flowers: 200 })]) });
    const seedlings = future(wanted, 4000).generation(0, 'seedlings');
    expect(Math.max(...seedlings)).toBe(90);
    // P(Binomial(200, ½) < 90) = 0.0687 (normal approximation with continuity: (89.5 − 100)/7.071 = −1.485).
    expect(mean(seedlings)).toBeGreaterThan(89);
    const all = future(fruitsOf({ crosses: [cross({ germination: 0.5 })] }), 4000).generation(0, 'seedlings');
    expectMean(all, 100);
    expectVariance(all, 50);
    expect(Array.from(seedlings)).toEqual(Array.from(all, (n) => Math.min(90, n)));
  });

  it('come up with luck of the spring, and through the route the generation chose', () => {
    const weather = { frostChance: 0, springLuckSet: 0, springLuckGermination: 0.05 };
    const routes = [{ id: 'out', name: 'kernels taken out', germination: 0.8 }];
    const by = (route?: string) =>
      fruitsOf({
        weather,
        crosses: [cross({ germination: 0.4, routes })],
        plans: plans([generation('g', 100_000, { flowers: 200, ...(route === undefined ? {} : { route }) })]),
      });
    const without = future(by(), 20_000).generation(0, 'seedlings');
    expectMean(without, 80);
    expectVariance(without, 200 * 0.4 * 0.6 * (1 + 199 * 0.05));
    const out = future(by('out'), 20_000).generation(0, 'seedlings');
    expectMean(out, 160);
    expectVariance(out, 200 * 0.8 * 0.2 * (1 + 199 * 0.05));
  });

  it('lie over for the extra years that the cross says', () => {
    const columns = future(fruitsOf({ crosses: [cross({ dormancy: 2 })] }), 10);
    expect(each(columns.generation(0, 'firstSeedling'))).toEqual([3]);
  });
});
