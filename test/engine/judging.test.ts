import { describe, expect, it } from 'vitest';
import { atLeast } from '../../src/statistics/binomial.ts';
import { count, expectMean, expectRatio, expectShare } from './agreement.ts';
import {
  document,
  future,
  generation,
  kind,
  measured,
  neverProven,
  picksOf,
  plans,
  shown,
  tree,
  type Document,
  type GenerationDocument,
  type ShownDocument,
} from './programmes.ts';

const N = 100;
const shares = (column: Int32Array, of = N) => Array.from(column, (n) => n / of);
const seen = (atLeastCrops: number) => ({ type: 'shown' as const, trait: 'red', atLeast: atLeastCrops });

/** Every seedling qualifies: both parents have two copies. */
const allGood = (trait: Partial<ShownDocument>, g: Partial<GenerationDocument>, changes: Partial<Document> = {}): Document =>
  document({
    traits: [shown(2, trait)],
    trees: [tree('a', { genes: { r: { copies: 2 } } }), tree('b', { genes: { r: { copies: 2 } } })],
    goal: neverProven(),
    lastYear: 2006 + (g.judge ?? 1),
    plans: plans([generation('g', N, g)]),
    ...changes,
  });

describe('shown or not', () => {
  it('able trees are so for life, and show season by season: k of n', () => {
    for (const k of [1, 2, 3]) {
      const columns = future(allGood({ canShow: 0.7, seasonsShown: 0.6 }, { judge: 3, keep: { howMany: 100, conditions: [seen(k)] } }), 800);
      expectMean(shares(columns.generation(0, 'kept')), 0.7 * atLeast(k, 3, 0.6), `at least ${String(k)}`);
    }
    const never = future(
      allGood(
        { canShow: 0.7, seasonsShown: 0.6, falseShow: 0.1 },
        { judge: 3, keep: { howMany: 100, conditions: [{ type: 'shown', trait: 'red', atMost: 0 }] } },
      ),
      800,
    );
    expectMean(shares(never.generation(0, 'kept')), 0.7 * 0.4 ** 3 + 0.3 * 0.9 ** 3, 'must not show');
  });

  it('in full, in part or not at all: f fruits cut, each from a Beta share of the stated mean and SD; a false show looks full', () => {
    // Mean 0.8, SD 0.2: α + β = 0.16/0.04 − 1 = 3, so Beta(2.4, 0.6). Five fruits: beta-binomial (Skellam 1948), by its product form.
    const [alpha, beta, f] = [2.4, 0.6, 5];
    const rising = (x: number, k: number) => Array.from({ length: k }, (_, i) => x + i).reduce((p, q) => p * q, 1);
    const full = rising(alpha, f) / rising(alpha + beta, f);
    const none = rising(beta, f) / rising(alpha + beta, f);
    const grade = { mean: 0.8, sd: 0.2, fruitsCut: f };
    const by = (condition: Partial<ReturnType<typeof seen>> & { grade?: 'full' | 'part'; atMost?: number }, trait: Partial<ShownDocument> = {}) =>
      shares(
        future(
          allGood({ grade, seasonsShown: 0.9, ...trait }, { judge: 2, keep: { howMany: 100, conditions: [{ type: 'shown', trait: 'red', ...condition }] } }),
          800,
        ).generation(0, 'kept'),
      );
    expectMean(by({ grade: 'full', atLeast: 2 }), (0.9 * full) ** 2, 'full in both');
    expectMean(by({ grade: 'part', atLeast: 1 }), 1 - (1 - 0.9 * (1 - full - none)) ** 2, 'part in one');
    expectMean(by({ grade: 'part', atMost: 0 }), (1 - 0.9 * (1 - full - none)) ** 2, 'part in none');
    expectMean(by({ atLeast: 2 }), (0.9 * (1 - none)) ** 2, 'at all in both');
    expectMean(by({ grade: 'full', atLeast: 1 }, { canShow: 0, falseShow: 0.2 }), 1 - 0.8 ** 2, 'false show looks full');
    expectMean(by({ grade: 'part', atLeast: 1 }, { canShow: 0, falseShow: 0.2 }), 0, 'never in part');
  });

  it('good and bad seasons are common to all trees: the share seen varies between runs by P(both of two trees show) − p²', () => {
    // Two trees in one season: correlated normal deviates, ρ = ½, at p = ½ both show with chance ¼ + asin(½)/2π = ⅓ (Sheppard 1898).
    const kept = shares(
      future(allGood({ seasonsShown: 0.5, sharedSeason: 0.5 }, { keep: { howMany: 100, conditions: [seen(1)] } }), 6000).generation(0, 'kept'),
    );
    expectMean(kept, 0.5);
    expectMean(
      kept.map((share) => (share * (N * share - 1)) / (N - 1)),
      1 / 3,
      'both of two trees',
    );
  });

  it('within one tree seasons are independent once it is able, however much of them is common', () => {
    const one = (n: number, k: number) =>
      future(
        allGood({ seasonsShown: 0.5, sharedSeason: 0.9 }, { seedlings: 1, flowers: 1, judge: n, keep: { howMany: 1, conditions: [seen(k)] } }),
        8000,
      ).generation(0, 'kept');
    expectMean(one(3, 3), 1 / 8);
    expectMean(one(3, 2), 1 / 2);
  });
});

describe('leaf test and seedling look, before planting out', () => {
  const half = { trees: [tree('a', { genes: { r: { copies: 1 } } }), tree('b')], traits: [shown(1)] };
  it('a test reads “at least c copies” with its errors, and those that fail never need a place', () => {
    const test = { gene: 'r', copies: 1, falsePositive: 0.1, falseNegative: 0.2 };
    const columns = future(document({ ...half, goal: neverProven(), lastYear: 2006, plans: plans([generation('g', N, { test })]) }), 800);
    expectMean(shares(columns.run('planted')), 0.5 * 0.8 + 0.5 * 0.1, 'planted');
    expectMean(shares(columns.run('tests')), 1, 'tests');
    expectRatio(columns.generation(0, 'showing'), columns.run('planted'), 0.4 / 0.45, 'good among the planted');
    const kept = future(
      document({
        ...half,
        goal: neverProven(),
        lastYear: 2006,
        plans: plans([generation('g', N, { test: { ...test, cull: false }, keep: { howMany: 100, conditions: [{ type: 'test', gene: 'r' }] } })]),
      }),
      800,
    );
    expect(new Set(kept.run('planted'))).toEqual(new Set([N]));
    expectMean(shares(kept.generation(0, 'kept')), 0.45, 'kept on the test alone');
  });

  it('only seedlings that reach planting out are tested', () => {
    const test = { gene: 'r', copies: 1 };
    const kinds = [kind({ firstYearLoss: 0.3, plantOutAge: 1 })];
    const columns = future(document({ ...half, kinds, goal: neverProven(), lastYear: 2006, plans: plans([generation('g', N, { test })]) }), 800);
    expectMean(shares(columns.run('tests')), 0.7, 'tests');
    expectMean(shares(columns.run('planted')), 0.35, 'planted');
  });

  it('a look reads whether the seedling is able, with its errors', () => {
    const look = { trait: 'red', falsePositive: 0.15, falseNegative: 0.25 };
    const able = 0.5 * 0.6;
    const traits = [shown(1, { canShow: 0.6 })];
    const keepers = future(document({ ...half, traits, goal: neverProven(), lastYear: 2006, plans: plans([generation('g', N, { look })]) }), 800);
    expectMean(shares(keepers.run('planted')), able * 0.75 + (1 - able) * 0.15, 'keep those that show');
    expectRatio(keepers.generation(0, 'showing'), keepers.run('planted'), (able * 0.75) / (able * 0.75 + (1 - able) * 0.15), 'able ones show later too');
    const others = future(
      document({ ...half, traits, goal: neverProven(), lastYear: 2006, plans: plans([generation('g', N, { look: { ...look, keepIfShown: false } })]) }),
      800,
    );
    expectMean(shares(others.run('planted')), able * 0.25 + (1 - able) * 0.85, 'discard those that show');
  });
});

describe('goal', () => {
  it('that must breed true wants every copy of the rule’s genes, known by a test of each', () => {
    const hybrid = [tree('a', { genes: { r: { copies: 1 } } }), tree('b', { genes: { r: { copies: 1 } } })];
    const input = document({
      trees: hybrid,
      traits: [shown(1)],
      goal: { conditions: [seen(1)], crops: 1, breedsTrue: true },
      plans: plans([generation('g', 20)]),
    });
    const columns = future(input, 4000);
    expectMean(columns.run('proven'), 5);
    expectShare(
      count(columns.run('yearProven'), (year) => year === 6),
      4000,
      1 - 0.75 ** 20,
    );
  });

  it('wants its own crops: a plan that judges one goes on judging its picks to three', () => {
    const goal = { conditions: [seen(2)], crops: 3 };
    const input = allGood({ seasonsShown: 0.6 }, { keep: { howMany: 100, conditions: [] } }, { goal, lastYear: 2030 });
    const columns = future(input, 800);
    expect(new Set(columns.run('yearProven'))).toEqual(new Set([8]));
    expectMean(shares(columns.run('proven')), atLeast(2, 3, 0.6));
  });

  it('is looked at once, on a tree’s first crops', () => {
    // Judged for three crops, goal of one: proven in the first season or never.
    const goal = { conditions: [seen(1)], crops: 1 };
    const columns = future(allGood({ seasonsShown: 0.1, sharedSeason: 0 }, { seedlings: 1, flowers: 1, judge: 3 }, { goal, lastYear: 2030 }), 4000);
    expectShare(
      count(columns.run('yearProven'), (year) => year === 6),
      4000,
      0.1,
    );
    expect(new Set(columns.run('yearProven'))).toEqual(new Set([-1, 6]));
  });

  it('trees of a generation that judges none never meet it', () => {
    const columns = future(allGood({}, { judge: 0 }, { goal: { conditions: [seen(1)], crops: 1 }, lastYear: 2012 }), 50);
    expect(new Set(columns.run('yearProven'))).toEqual(new Set([-1]));
    expect(new Set(columns.run('judgings'))).toEqual(new Set([0]));
  });

  it('a tree that the rank dropped but that meets it in that year counts', () => {
    const goal = { conditions: [seen(1)], crops: 1, trees: 50 };
    const columns = future(allGood({}, { keep: { howMany: 2 } }, { goal, lastYear: 2012 }), 20);
    expect(new Set(columns.run('proven'))).toEqual(new Set([N]));
    expect(new Set(columns.generation(0, 'kept'))).toEqual(new Set([2]));
  });

  it('so many trees wanted: proven in the year the last of them is', () => {
    // Ten trees in each of two springs: fifteen are there in the second.
    const goal = { conditions: [seen(1)], crops: 1, trees: 15 };
    const trees = [tree('a', { flowers: 10, genes: { r: { copies: 2 } } }), tree('b', { genes: { r: { copies: 2 } } })];
    const columns = future(allGood({}, { seedlings: 20, flowers: 20, springs: 2 }, { goal, trees, lastYear: 2012 }), 20);
    expect(new Set(columns.run('yearProven'))).toEqual(new Set([7]));
    expect(new Set(columns.run('proven'))).toEqual(new Set([20]));
  });

  it('truly good: a false show is proven but not good; “must not show” is good when not able', () => {
    const wrong = allGood({ canShow: 0.5, falseShow: 0.3 }, {}, { goal: { conditions: [seen(1)], crops: 1, trees: 50 }, lastYear: 2006 });
    const columns = future(wrong, 800);
    expectRatio(columns.run('trulyGood'), columns.run('proven'), 0.5 / (0.5 + 0.5 * 0.3));
    const clean = allGood(
      { canShow: 0.5, seasonsShown: 0.8 },
      {},
      { goal: { conditions: [{ type: 'shown', trait: 'red', atMost: 0 }], crops: 1, trees: 50 }, lastYear: 2006 },
    );
    const without = future(clean, 800);
    expectMean(shares(without.run('proven')), 0.5 + 0.5 * 0.2);
    expectRatio(without.run('trulyGood'), without.run('proven'), 0.5 / 0.6);
  });
});

describe('keep rules', () => {
  it('“best by index, all judged” keeps the best of all; “first come” the first', () => {
    const traits = [shown(2), measured()];
    const goal = { conditions: [{ type: 'measured' as const, trait: 'size', atLeast: -100 }], crops: 1, trees: 50 };
    const trees = [tree('a'), tree('b')];
    const rule = (rank: 'first' | 'index') =>
      document({
        traits,
        trees,
        goal,
        plans: plans([
          generation('g', 10, { keep: { howMany: 1, rank, weights: { size: 1 }, conditions: [] }, goOn: { when: 'allJudged' } }),
          generation('end', 1, { seedParents: picksOf('g') }),
        ]),
      });
    for (const rank of ['first', 'index'] as const) expect(new Set(future(rule(rank), 20).run('yearProven')).size).toBe(1);
  });

  it('a dead pick frees its slot for a later finisher', () => {
    // One seedling a year for three years; each pick dies within a year or so: all three are kept in turn.
    const kinds = [kind({ yearlyLoss: 0 })];
    const trees = [tree('a', { flowers: 1, genes: { r: { copies: 2 } } }), tree('b')];
    const g = generation('g', 3, { flowers: 1, springs: 3, judge: 0, keep: { howMany: 1 } });
    const columns = future(document({ kinds, trees, goal: neverProven(), plans: plans([g]) }), 20);
    expect(new Set(columns.generation(0, 'kept'))).toEqual(new Set([1]));
    const mortal = future(
      document({ kinds: [kind({ yearlyLoss: 0.5 })], trees, goal: neverProven(), lastYear: 2020, plans: plans([{ ...g, seedlings: 1000, springs: 10 }]) }),
      4000,
    );
    // A seedling reaches first fruit with ½⁴. One bears each spring with that chance; it is kept unless the pick still lives.
    let [free, kept] = [1, 0];
    for (let spring = 0; spring < 10; spring += 1) {
      const bears = 0.5 ** 4;
      kept += free * bears;
      free = 1 - (1 - free + free * bears) * 0.5;
    }
    expectMean(mortal.generation(0, 'kept'), kept);
  });

  it('“if none is good enough, go on with the best” waits for the go-on', () => {
    const impossible = { howMany: 2, conditions: [seen(1)], bestLeft: true, rank: 'index' as const, weights: { size: 1 } };
    const first = generation('g', 6, { keep: impossible, goOn: { when: 'allJudged' } });
    const rest = (keep: GenerationDocument['keep']) =>
      document({
        traits: [shown(2), measured()],
        trees: [tree('a'), tree('b')],
        goal: neverProven(),
        plans: plans([{ ...first, keep }, generation('end', 5, { seedParents: picksOf('g'), judge: 0 })]),
      });
    expect(new Set(future(rest(impossible), 20).generation(1, 'firstPollination'))).toEqual(new Set([7]));
    expect(new Set(future(rest(impossible), 20).generation(0, 'kept'))).toEqual(new Set([2]));
    expect(new Set(future(rest({ ...impossible, bestLeft: false }), 20).generation(1, 'firstPollination'))).toEqual(new Set([-1]));
  });
});
