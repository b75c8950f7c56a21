import { describe, expect, it } from 'vitest';
import { strayShareOfFruit } from '../../src/genetics/population.ts';
import { binomialPmf } from '../../src/statistics/binomial.ts';
import { PlanCheck } from '../reference/plan-checks/plan-checks.ts';
import { count, expectMean, expectRatio, expectShare } from './agreement.ts';
import { cross, document, future, generation, kind, neverProven, plans, shown, tree, type Document } from './programmes.ts';

const RUNS = 10_000;

/** Chance that at least one of n open seedlings shows, over the draw of N neighbours: 1 − E[(1 − X/2N)ⁿ], X ~ Binomial(2N, q). Own derivation. */
function chanceOpen(neighbours: number, q: number, n: number): number {
  let none = 0;
  for (let x = 0; x <= 2 * neighbours; x += 1) none += binomialPmf(x, 2 * neighbours, q) * (1 - x / (2 * neighbours)) ** n;
  return 1 - none;
}

const open = (neighbours: number, frequency: number, seedlings: number): Document =>
  document({
    pools: [{ id: 'air', name: 'air', background: { trees: neighbours, weight: 1, kind: 'pear', genes: { r: frequency } } }],
    defaultPool: 'air',
    plans: plans([generation('g', seedlings, { pollen: 'open', flowers: 0 })]),
  });

describe('open pollination of a tree with two copies', () => {
  const pc4 = new PlanCheck('PC4');
  it(`${pc4.name} Here 2000 neighbours are drawn, and the chance is taken over their draw.`, () => {
    const [q, n] = [pc4.setup('frequency'), pc4.setup('seedlings')];
    const columns = future(open(2000, q, n), 2000);
    expectMean(
      Array.from(columns.generation(0, 'showing'), (k) => k / n),
      pc4.expected('shareShowing'),
      'share',
    );
    const hits = count(columns.run('yearProven'), (year) => year === 6);
    const chance = chanceOpen(2000, q, n);
    expect(Math.abs(chance - pc4.expected('chance'))).toBeLessThan(0.002);
    expectShare(hits, 2000, chance, 'chance of one');
  });

  const pc4b = new PlanCheck('PC4b');
  it(pc4b.name, () => {
    const columns = future(open(pc4b.setup('neighbours'), pc4b.setup('frequency'), pc4b.setup('seedlings')), RUNS);
    expectShare(
      count(columns.run('yearProven'), (year) => year >= 0),
      RUNS,
      pc4b.expected('chance'),
    );
  });

  it('the same neighbours pollinate in every spring: two springs of 15 seeds are as one of 30', () => {
    const q = 0.15;
    const short = document({
      pools: [{ id: 'air', name: 'air', background: { trees: 4, weight: 1, kind: 'pear', genes: { r: q } } }],
      defaultPool: 'air',
      trees: [tree('a', { flowers: 15, genes: { r: { copies: 2 } } }), tree('b')],
      goal: neverProven(),
      plans: plans([generation('g', 30, { pollen: 'open', flowers: 0, springs: 2 })]),
    });
    const columns = future(short, 4000);
    expect(new Set(columns.generation(0, 'seedlings'))).toEqual(new Set([30]));
    expectShare(
      count(columns.generation(0, 'showing'), (k) => k > 0),
      4000,
      chanceOpen(4, q, 30),
    );
  });

  it('fathers are drawn by weight; the background has one weight as a whole, and a tree never pollinates itself unless its kind can', () => {
    const trees = [tree('a', { genes: { r: { copies: 2 } } }), tree('b'), tree('c', { genes: { r: { copies: 2 } } })];
    const pools = [
      {
        id: 'air',
        name: 'air',
        trees: [
          { tree: 'a', weight: 1 },
          { tree: 'b', weight: 1 },
          { tree: 'c', weight: 2 },
        ],
        background: { trees: 50, weight: 1, kind: 'pear', genes: { r: 0 } },
      },
    ];
    const g = generation('g', 60, { pollen: 'open', flowers: 0 });
    const base = { trees, pools, defaultPool: 'air', goal: neverProven(), plans: plans([g]) };
    expectMean(future(document(base), 2000).generation(0, 'showing'), 60 * (2 / 4), 'not its own: c of b, c and the neighbours');
    const selfing = future(document({ ...base, kinds: [kind({ selfCompatible: true })] }), 2000);
    expectMean(selfing.generation(0, 'showing'), 60 * (3 / 5), 'its own too');
  });

  it('hidden allele frequencies of neighbours, with a mean value of their own, shift what is seen of their offspring', () => {
    // a carries no favourable copies (value −4), neighbours average +2: seedlings average −1 (half of each parent's value).
    const size = { type: 'measured' as const, id: 'size', name: 'size', unit: 'cm', mean: 0, sd: 1, heritability: 1, repeatability: 1 };
    const base = (atLeast: number) =>
      document({
        traits: [shown(2), size],
        trees: [tree('a', { values: { size: -4 } }), tree('b')],
        pools: [{ id: 'air', name: 'air', background: { trees: 20, weight: 1, kind: 'pear', values: { size: 2 } } }],
        defaultPool: 'air',
        goal: neverProven(),
        plans: plans([
          generation('g', 100, { pollen: 'open', flowers: 0, keep: { howMany: 100, conditions: [{ type: 'measured', trait: 'size', atLeast }] } }),
        ]),
      });
    // Scale: 64 copies, a = √(1/16) = ¼; −4 is 16 copies of 64, +2 is 40. a's gamete: hypergeometric(64, 16, 32); neighbours': copies at random at 40/64.
    const mother = hypergeometric(64, 16, 32);
    const father = Array.from({ length: 33 }, (_, k) => binomialPmf(k, 32, 40 / 64));
    for (const copies of [24, 28, 32]) {
      const chance = mother.reduce((sum, p, i) => sum + p * father.reduce((inner, q, j) => inner + (i + j >= copies ? q : 0), 0), 0);
      const kept = future(base(-8 + copies / 4 - 1e-9), 1000).generation(0, 'kept');
      expectMean(
        Array.from(kept, (n) => n / 100),
        chance,
        `${String(copies)} copies or more`,
      );
    }
  });
});

/** P(k marked among `draws` of `all` of which `marked` are marked). */
function hypergeometric(all: number, marked: number, draws: number): number[] {
  const choose = (n: number, k: number) => (k < 0 || k > n ? 0 : Array.from({ length: k }, (_, i) => (n - i) / (i + 1)).reduce((a, b) => a * b, 1));
  return Array.from({ length: draws + 1 }, (_, k) => (choose(marked, k) * choose(all - marked, draws - k)) / choose(all, draws));
}

/** a × b without the allele; it comes in with stray pollen alone. */
const strayCross = (set: number, changes: Partial<Document> = {}, cover = 1): Document =>
  document({
    traits: [shown(1)],
    trees: [tree('a'), tree('b'), tree('c', { genes: { r: { copies: 2 } } })],
    pools: [{ id: 'air', name: 'air', trees: [{ tree: 'c', weight: 1 }] }],
    defaultPool: 'air',
    crosses: [cross({ set, straySet: 0.012 })],
    goal: neverProven(),
    plans: plans([generation('g', 100_000, { flowers: 1000, cover })]),
    lastYear: 2007,
    ...changes,
  });

describe('stray pollen (12 of 1000 flowers that the wanted pollen left)', () => {
  for (const set of [0.018, 0.02, 0.08, 0.2, 0.4])
    it(`set ${String(set)}: stray share of fruit s(1 − p)/(p + s(1 − p)), figures PC11 of the published list (own derivation)`, () => {
      const columns = future(strayCross(set), 400);
      expectRatio(columns.generation(0, 'showing'), columns.generation(0, 'fruits'), strayShareOfFruit(set, 0.012));
      expectMean(columns.run('fruits'), 1000 * (set + (1 - set) * 0.012), 'fruits');
    });

  it('a cover lowers it in proportion, and a frost takes those flowers first', () => {
    const half = future(strayCross(0.2, {}, 0.5), 600);
    expectRatio(half.generation(0, 'showing'), half.generation(0, 'fruits'), strayShareOfFruit(0.2, 0.006));
    // Frost every spring leaves two crops in five: thirty seasons are enough for every tree to be judged once.
    const frosted = future(strayCross(0.2, { lastYear: 2035, weather: { frostChance: 1, frostTakes: 0.6, springLuckSet: 0, springLuckGermination: 0 } }), 600);
    expectMean(frosted.run('fruits'), 400 * (0.2 + 0.8 * 0.012), 'fruits after frost');
    expectRatio(frosted.generation(0, 'showing'), frosted.generation(0, 'fruits'), strayShareOfFruit(0.2, 0.012), 'stray after frost');
  });

  it('is a self in a kind that can self', () => {
    const selfing = strayCross(0.1, {
      traits: [shown(2)],
      kinds: [kind({ selfCompatible: true })],
      trees: [tree('a', { genes: { r: { copies: 1 } } }), tree('b')],
      pools: [],
    });
    delete selfing.defaultPool;
    const columns = future(selfing, 600);
    expectRatio(columns.generation(0, 'showing'), columns.generation(0, 'fruits'), strayShareOfFruit(0.1, 0.012) / 4);
  });

  it('without a pool is fruit without seed', () => {
    const none = strayCross(0.1, { pools: [] });
    delete none.defaultPool;
    const columns = future(none, 400);
    expectMean(columns.run('fruits'), 1000 * (0.1 + 0.9 * 0.012), 'fruits');
    expectMean(columns.generation(0, 'seeds'), 100, 'seeds');
  });
});
