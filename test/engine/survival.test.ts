import { describe, expect, it } from 'vitest';
import { PlanCheck } from '../reference/plan-checks/plan-checks.ts';
import { count, expectMean, expectRatio, expectShare, expectVariance } from './agreement.ts';
import { cross, document, future, generation, kind, neverProven, plans, stock, type Document, type GenerationDocument } from './programmes.ts';

const SEEDLINGS = 500;
const goal = neverProven();

/** 500 seedlings of one cross, followed to first fruit. */
const raised = (changes: Partial<Document>, g: Partial<GenerationDocument> = {}): Document =>
  document({ goal, lastYear: 2008, plans: plans([generation('g', SEEDLINGS, { judge: 0, keep: { howMany: 1 }, ...g })]), ...changes });

const shares = (column: Int32Array, of = SEEDLINGS) => Array.from(column, (n) => n / of);

describe('ordinary losses', () => {
  const pc5 = new PlanCheck('PC5');
  it(pc5.name, () => {
    const kinds = [kind({ firstFruit: { years: pc5.setup('firstFruit') }, firstYearLoss: pc5.setup('firstYearLoss'), yearlyLoss: pc5.setup('yearlyLoss') })];
    const columns = future(raised({ kinds, lastYear: 2009 }), 1000);
    expectMean(shares(columns.run('fruiting')), pc5.expected('alive'));
    // Deaths are independent of each other: binomial variance.
    expectVariance(columns.run('fruiting'), SEEDLINGS * pc5.expected('alive') * (1 - pc5.expected('alive')));
  });

  it('of seedlings that are planted out at two: two winters in the nursery come before the place', () => {
    const kinds = [kind({ firstYearLoss: 0.2, yearlyLoss: 0.1, plantOutAge: 2 })];
    expectMean(shares(future(raised({ kinds }), 1000).run('planted')), 0.8 * 0.9);
  });

  it('a share never fruits, on own roots and grafted', () => {
    const kinds = [kind({ neverFruits: 0.3 })];
    expectMean(shares(future(raised({ kinds }), 1000).run('fruiting')), 0.7, 'own roots');
    const grafted = raised({ kinds, stocks: [stock()] }, { rescue: { who: 'every', month: 3, stock: 'stock' } });
    expectMean(shares(future(grafted, 1000).run('fruiting')), 0.7, 'grafted');
  });

  it('judging needs a crop: regularity × (1 − the share taken by frost)', () => {
    const kinds = [kind({ regularity: 0.7, frostShare: 0.5 })];
    const weather = { frostChance: 1, frostTakes: 0.4, springLuckSet: 0, springLuckGermination: 0 };
    // Age 5 in year 6 is the only season within the years.
    const columns = future(raised({ kinds, weather, lastYear: 2006 }, { judge: 1, seedlings: SEEDLINGS, flowers: 5 * SEEDLINGS }), 500);
    expectMean(shares(columns.run('judgings')), 0.7 * (1 - 0.4 * 0.5));
  });
});

/** Pears weak from the start of `onset`, half dead in `halfLife` months after that, grafted at `month` (0: never). */
interface Weak {
  readonly halfLife: number;
  readonly onset: number;
  readonly month: number;
  readonly tender: number;
  readonly ripe: number;
  readonly ripeMonths?: number;
  readonly stockLoss?: number;
  readonly rootBorne: number;
  readonly firstFruit?: number;
}

const weak = (w: Weak): Document =>
  raised(
    {
      kinds: [kind({ firstFruit: { years: w.firstFruit ?? 6 } })],
      crosses: [cross({ weakness: { share: 1, onset: w.onset, course: { halfLife: w.halfLife }, rootBorne: { chance: w.rootBorne } } })],
      stocks: [stock({ takeTender: w.tender, takeRipe: w.ripe, ripeMonths: w.ripeMonths ?? 12, yearlyLoss: w.stockLoss ?? 0 })],
    },
    w.month > 0 ? { rescue: { who: 'weak', month: w.month, stock: 'stock' } } : {},
  );

describe('weak hybrids', () => {
  const pc7 = new PlanCheck('PC7');
  const base = {
    halfLife: pc7.setup('halfLife'),
    onset: pc7.setup('onset'),
    month: pc7.setup('month'),
    tender: pc7.setup('take'),
    ripe: pc7.setup('take'),
    stockLoss: pc7.setup('stockLoss'),
    firstFruit: pc7.setup('firstFruit'),
  };

  it(pc7.name, () => {
    const rootBorne = future(weak({ ...base, rootBorne: 1 }), 2000);
    expectMean(shares(rootBorne.generation(0, 'aliveAtGraft')), pc7.expected('aliveAtGraft'), 'alive at the graft');
    expectMean(shares(rootBorne.run('weakSaved')), pc7.expected('aliveAtGraft') * pc7.setup('take'), 'taken');
    expectMean(shares(rootBorne.run('fruiting')), pc7.expected('rootBorne'), 'root-borne');
    expect(rootBorne.run('grafts')).toEqual(rootBorne.generation(0, 'aliveAtGraft'));
    const topBorne = future(weak({ ...base, rootBorne: 0 }), 4000).run('fruiting');
    expectShare(
      topBorne.reduce((a, b) => a + b, 0),
      4000 * SEEDLINGS,
      pc7.expected('topBorne'),
      'top-borne',
    );
    const left = future(weak({ ...base, month: 0, rootBorne: 1 }), 4000).run('fruiting');
    expectShare(
      left.reduce((a, b) => a + b, 0),
      4000 * SEEDLINGS,
      pc7.expected('notGrafted'),
      'not grafted',
    );
  });

  it('whether it sits in the roots is one draw a run: runs are a mixture, each all or next to nothing', () => {
    const runs = 6000;
    const columns = future(weak({ ...base, rootBorne: 0.6 }), runs);
    const fruiting = columns.run('fruiting');
    const holds = columns.fact(0);
    expectShare(
      count(holds, (fact) => fact === 1),
      runs,
      0.6,
      'in the roots',
    );
    const where = (fact: number) => Array.from(fruiting).filter((_, run) => holds[run] === fact);
    expectMean(shares(Int32Array.from(where(1))), pc7.expected('rootBorne'), 'in the roots');
    expect(Math.max(...where(0))).toBeLessThan(5);
    expect(Math.min(...where(1))).toBeGreaterThan(100);
    expectMean(shares(fruiting), 0.6 * pc7.expected('rootBorne') + 0.4 * pc7.expected('topBorne'), 'over all runs');
  });

  // Alive 2^(−m/H) from the start × take, which rises evenly from month 1 to ripe wood (docs/model.md §7; own derivation). H 5, take 0.3 to 0.85.
  for (const month of [0.5, 1, 2.2134752, 6, 11.99, 12, 18, 24])
    it(`alive × take for a graft at ${String(month)} months`, () => {
      const take = 0.3 + 0.55 * Math.min(1, Math.max(0, (month - 1) / 11));
      const columns = future(weak({ halfLife: 5, onset: 0, month, tender: 0.3, ripe: 0.85, rootBorne: 1 }), 400);
      expectMean(shares(columns.run('weakSaved')), 2 ** (-month / 5) * take, 'saved');
      expectMean(shares(columns.run('fruiting')), 2 ** (-month / 5) * take, 'bearing');
    });

  it('take of n scions is 1 − (1 − take)ⁿ, and every scion is a graft made', () => {
    const programme = weak({ halfLife: 5, onset: 2, month: 2, tender: 0.3, ripe: 0.3, rootBorne: 1 });
    programme.plans[0]!.generations[0]!.rescue = { who: 'weak', month: 2, stock: 'stock', scions: 3 };
    const columns = future(programme, 400);
    expectMean(shares(columns.run('weakSaved')), 1 - 0.7 ** 3);
    expect(new Set(columns.run('grafts'))).toEqual(new Set([3 * SEEDLINGS]));
  });

  it('a graft that does not take costs the seedling, or with keepOwnRoots leaves it as it was', () => {
    const every = (keepOwnRoots: boolean) =>
      raised({ stocks: [stock({ takeTender: 0.4, takeRipe: 0.4 })] }, { rescue: { who: 'every', month: 3, stock: 'stock', keepOwnRoots } });
    expectMean(shares(future(every(false), 400).run('fruiting')), 0.4, 'lost');
    expect(new Set(future(every(true), 20).run('fruiting'))).toEqual(new Set([SEEDLINGS]));
  });

  it('“weak ones” leaves the sound on their own roots; “every seedling” risks them too', () => {
    const half = { share: 0.5, onset: 1, course: { halfLife: 1 }, rootBorne: { chance: 1 } };
    const by = (who: 'weak' | 'every') =>
      raised({ crosses: [cross({ weakness: half })], stocks: [stock({ takeTender: 0.6, takeRipe: 0.6 })] }, { rescue: { who, month: 1, stock: 'stock' } });
    expectMean(shares(future(by('weak'), 1000).run('fruiting')), 0.5 + 0.5 * 0.6, 'weak ones');
    expectMean(shares(future(by('every'), 1000).run('fruiting')), 0.6, 'every seedling');
    expectMean(shares(future(by('every'), 1000).run('weakSaved')), 0.5 * 0.6, 'weak saved of every');
  });

  it('the first winter of a grafted seedling is at the stock’s loss, of an own-rooted one at the first-year loss', () => {
    const kinds = [kind({ firstYearLoss: 0.4, yearlyLoss: 0.2 })];
    const stocks = [stock({ yearlyLoss: 0.1 })];
    const grafted = (month: number) => raised({ kinds, stocks }, { rescue: { who: 'every', month, stock: 'stock' } });
    expectMean(shares(future(grafted(3), 1000).run('fruiting')), 0.9 ** 5, 'grafted at 3 months');
    expectMean(shares(future(grafted(12), 1000).run('fruiting')), 0.6 * 0.9 ** 4, 'at exactly 12 months: after the first winter');
    expectMean(shares(future(grafted(13), 1000).run('fruiting')), 0.6 * 0.9 ** 4, 'at 13 months');
    expectMean(shares(future(grafted(24), 1000).run('fruiting')), 0.6 * 0.8 * 0.9 ** 3, 'at exactly 24 months');
  });
});

describe('counts of survivors', () => {
  it('an age in years and the share alive then give the course: alive = S·((1 − w) + w·2^(−(12a − onset)/H))', () => {
    // 10 years: S = 0.9 · 0.97⁹ = 0.6842; weak share 0.6, 40 % alive at 10 years.
    const weakness = { share: 0.6, onset: 2, course: { alive: 0.4, atYears: 10 }, rootBorne: { chance: 1 } };
    const programme = (years: number) =>
      raised({ lastYear: 2012, kinds: [kind({ firstFruit: { years }, firstYearLoss: 0.1, yearlyLoss: 0.03 })], crosses: [cross({ weakness })] });
    expectMean(shares(future(programme(10), 1000).run('fruiting')), 0.4, 'at the count');
    const ordinary = 0.9 * 0.97 ** 9;
    const halfLife = -118 / Math.log2((0.4 / ordinary - 0.4) / 0.6);
    expectMean(shares(future(programme(4), 1000).run('fruiting')), 0.9 * 0.97 ** 3 * (0.4 + 0.6 * 2 ** (-46 / halfLife)), 'before the count');
  });

  it('of a share drawn once a run stays a share of that run', () => {
    const weakness = {
      share: {
        oneOf: [
          { value: 0, weight: 1 },
          { value: 1, weight: 1 },
        ],
      },
      onset: 0.5,
      course: { halfLife: 0.1 },
      rootBorne: { chance: 1 },
    };
    const fruiting = future(raised({ crosses: [cross({ weakness })] }), 1000).run('fruiting');
    expect(new Set(fruiting)).toEqual(new Set([0, SEEDLINGS]));
    expectRatio(fruiting, new Int32Array(1000).fill(SEEDLINGS), 0.5);
  });
});
