import { describe, expect, it } from 'vitest';
import { howMany } from '../../src/decisions/how-many.ts';
import { exactAnswer, flowerOf, raised, type ExactAnswer } from '../../src/decisions/how-many-exact.ts';
import { atLeast } from '../../src/statistics/binomial.ts';
import { Inputs, published } from '../reference/published.ts';
import { cross, document, generation, kind, plans, read, shown, stock, tree, type Document } from '../engine/programmes.ts';
import { redPear, told } from './samples.ts';

const PLAN = { plan: 'plan-0' };

/** Two trees of whose seedlings 2^−halvings have all the right copies: 1 in 4 for each gene that both carry once, 1 in 2 where one carries it twice. */
function sharing(halvings: number): Partial<Document> {
  const genes = Array.from({ length: Math.ceil(halvings / 2) }, (_, g) => `g${String(g)}`);
  const copies = (g: number) => (halvings % 2 === 1 && g === 0 ? 2 : 1);
  return {
    genes: genes.map((id) => ({ id, name: id })),
    traits: [shown(2, { rules: [{ name: 'all', weight: 1, needs: { needs: 'all', of: genes.map((gene) => ({ gene, copies: 2 as const })) } }] })],
    trees: [
      tree('a', { genes: Object.fromEntries(genes.map((id, g) => [id, { copies: copies(g) }])) }),
      tree('b', { genes: Object.fromEntries(genes.map((id) => [id, { copies: 1 }])) }),
    ],
  };
}

function exactOf(changes: Partial<Document>, chance: number): ExactAnswer {
  const programme = read(document({ plans: plans([generation('g', 1000)]), ...changes }));
  const [plan] = programme.plans;
  return exactAnswer(programme, plan!, plan!.generations[0]!, chance, { lever: 'flowers', values: [] })!;
}

describe('numbers that are known before any future is run', () => {
  const table = published.filter(({ id }) => id.startsWith('sedcole-'));

  it('there is a published table to hold them against', () => {
    expect(table.length).toBeGreaterThan(15);
  });

  for (const entry of table) {
    it(`${entry.id}: ${entry.title}. ${entry.source} (${entry.mark})`, () => {
      const inputs = new Inputs(entry);
      const [q, r, P] = [inputs.number('q'), inputs.number('r'), inputs.number('P')];
      const exact = exactOf(
        { ...sharing(Math.round(-Math.log2(q))), goal: { conditions: [{ type: 'shown', trait: 'red', atLeast: 1 }], crops: 1, trees: r } },
        P,
      );
      expect(exact.seedlings).toEqual({ at: entry.expected[0], low: entry.expected[0], high: entry.expected[0] });
      // Where every flower gives one seedling, flowers are seedlings.
      expect(exact.flowers.at).toBe(entry.expected[0]);
    });
  }

  it.each([1, 3])('are the binomial tail of the product of the rates, for %d trees', (trees) => {
    const exact = exactOf(
      {
        ...sharing(2),
        goal: { conditions: [{ type: 'shown', trait: 'red', atLeast: 1 }], crops: 1, trees },
        crosses: [cross({ set: 0.2, germination: 0.5, emptyFruit: 0.25 })],
        kinds: [kind({ firstYearLoss: 0.1, yearlyLoss: 0.03, neverFruits: 0.2 })],
      },
      0.8,
    );
    // Fruit in season 5: one winter of the first year and four more.
    const lasts = 0.8 * 0.9 * 0.97 ** 4;
    const aFlower = 0.2 * 0.75 * 0.5 * lasts * 0.25;
    const { at } = exact.flowers;
    expect(atLeast(trees, at!, aFlower)).toBeGreaterThanOrEqual(0.8);
    expect(atLeast(trees, at! - 1, aFlower)).toBeLessThan(0.8);
    if (trees === 1) expect(at).toBe(Math.ceil(Math.log(0.2) / Math.log(1 - aFlower)));
    expect(atLeast(trees, exact.seedlings.at!, lasts * 0.25)).toBeGreaterThanOrEqual(0.8);
    expect(atLeast(trees, exact.seedlings.at! - 1, lasts * 0.25)).toBeLessThan(0.8);
    expect(exact.leavesOut).toEqual(['wanted', 'hands']);
  });

  it('say that no number does where a parent may lack the allele, and what is the most there is', () => {
    // Frequency ½: b has no copy in 1 of 4, and then no seedling of a (one copy) shows what needs two.
    const exact = exactOf({ trees: [tree('a', { genes: { r: { copies: 2 } } }), tree('b', { genes: { r: { frequency: 0.5 } } })] }, 0.8);
    expect(exact.flowers).toEqual({ at: null, low: null, high: null });
    expect(exact.atMost).toBeCloseTo(0.75, 9);
  });

  it('name what the programme has and they leave out', async () => {
    const { answer } = await told(howMany, redPear, { plan: 'wide-rescue', runs: 20 });
    expect(answer.exact!.trait).toBeNull();
    expect(answer.exact!.leavesOut).toEqual(expect.arrayContaining(['measured', 'springLuck', 'frost', 'treeLoss', 'stray']));
  });

  it('are not given where parents are picks, for several pairs, or for open pollination', async () => {
    const second = { seedParents: [{ picksOf: 'g' }], pollen: [{ picksOf: 'g' }] };
    const both = read(document({ plans: plans([generation('g', 10), generation('h', 10, second)]) }));
    expect((await told(howMany, both, { ...PLAN, generation: 'h', runs: 20 })).answer.exact).toBeNull();
    expect((await told(howMany, both, { ...PLAN, generation: 'g', runs: 20 })).answer.exact).not.toBeNull();
    const pairs = read(document({ plans: plans([generation('g', 10, { seedParents: [{ tree: 'a' }, { tree: 'b' }] })]) }));
    expect((await told(howMany, pairs, { ...PLAN, runs: 20 })).answer.exact).toBeNull();
  });
});

describe('trees from one flower and from many', () => {
  it('as every fate counted through: up to three seeds a fruit, three flowers', () => {
    const [fruit, seeds, good] = [0.4, [0.5, 0.3, 0.2], 0.35];
    const one = [0, 1, 2, 3].map((trees) =>
      [0, 1, 2, 3].reduce((sum, n) => {
        const chance = n === 0 ? 1 - fruit : fruit * seeds[n - 1]!;
        const ways = [[1], [1, 1], [1, 2, 1], [1, 3, 3, 1]][n]![trees] ?? 0;
        return sum + chance * ways * good ** trees * (1 - good) ** (n - trees);
      }, 0),
    );
    flowerOf({ fruit }, seeds, good, 4).forEach((chance, trees) => expect(chance).toBeCloseTo(one[trees]!, 12));
    const three = [0, 1, 2, 3].map((trees) => {
      let sum = 0;
      for (let a = 0; a <= trees; a += 1) for (let b = 0; a + b <= trees; b += 1) sum += one[a]! * one[b]! * one[trees - a - b]!;
      return sum;
    });
    raised(one, 3).forEach((chance, trees) => expect(chance).toBeCloseTo(three[trees]!, 12));
    expect(raised([0.5], 10)).toEqual([0.5 ** 10]);
    expect(raised(one, 0)).toEqual([1, 0, 0, 0]);
  });
});

describe('a whole plan of one gene without weather', () => {
  const programme = (guess: number | { low: number; likely: number; high: number }) =>
    read(
      document({
        ...sharing(2),
        traits: [
          shown(2, {
            rules: [{ name: 'all', weight: 1, needs: { needs: 'all', of: [{ gene: 'g0', copies: 2 }] } }],
            canShow: 0.8,
            seasonsShown: 0.6,
            falseShow: 0.01,
          }),
        ],
        goal: { conditions: [{ type: 'shown', trait: 'red', atLeast: 1 }], crops: 2 },
        kinds: [kind({ firstFruit: { earliest: 4, half: 6, ninety: 9 }, firstYearLoss: 0.1, yearlyLoss: 0.04, neverFruits: 0.1 })],
        crosses: [
          cross({
            set: guess,
            germination: 0.5,
            emptyFruit: 0.2,
            seedsPerFruit: 2.5,
            seedsAtMost: 6,
            weakness: { share: 0.4, onset: 2, course: { halfLife: 9 }, rootBorne: { chance: 1 } },
          }),
        ],
        stocks: [stock({ takeTender: 0.6, takeRipe: 0.6, yearlyLoss: 0.03, precocity: 0.7 })],
        plans: plans([generation('g', 100_000, { flowers: 40, judge: 2, rescue: { who: 'weak', month: 3, stock: 'stock' } })]),
      }),
    );

  it.each([
    ['rates that are known', 0.1],
    ['rates that are guessed', { low: 0.02, likely: 0.1, high: 0.3 }],
  ])('comes out as reckoned at every number of flowers: %s (4 standard errors)', async (_, guess) => {
    const { answer } = await told(howMany, programme(guess), { ...PLAN, runs: 2500 });
    const { exact, points } = answer;
    expect(exact!.leavesOut).toEqual(['wanted', 'hands']);
    expect(points.length).toBeGreaterThan(6);
    points.forEach(({ value, outcome }, i) => {
      const reckoned = exact!.curve[i]!;
      expect(reckoned.tried).toBe(value);
      const counted = Math.sqrt((reckoned.value * (1 - reckoned.value)) / 2500);
      const looked = (reckoned.high - reckoned.low) / (2 * 1.96);
      expect(Math.abs(outcome.chance.value - reckoned.value), `${String(value)} flowers`).toBeLessThan(4 * Math.hypot(counted, looked));
    });
    // The curve is no line along the bottom or the top, on which anything would agree.
    expect(exact!.curve[0]!.value).toBeLessThan(0.3);
    expect(exact!.curve.at(-1)!.value).toBeGreaterThan(0.8);
    const read80 = answer.backwards!.needed;
    expect(exact!.flowers.at!).toBeGreaterThan(0.8 * read80.low!);
    expect(exact!.flowers.at!).toBeLessThan(1.25 * read80.high!);
  });
});
