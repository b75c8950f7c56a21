import { describe, expect, it } from 'vitest';
import type { Columns } from '../../src/results/columns.ts';
import { FAILURES, type Failure } from '../../src/results/outlook.ts';
import { expectMean } from './agreement.ts';
import {
  cross,
  document,
  future,
  futures,
  generation,
  kind,
  neverProven,
  picksOf,
  plans,
  stock,
  tree,
  type Document,
  type GenerationDocument,
} from './programmes.ts';

/** The one value a column has in every run; fails if runs differ. */
function only(column: ArrayLike<number>): number {
  const values = [...new Set(Array.from(column))];
  expect(values).toHaveLength(1);
  return values[0]!;
}
const RUNS = 10;
const goal = neverProven();
const chain = (first: Partial<GenerationDocument>, second: Partial<GenerationDocument> = {}, changes: Partial<Document> = {}): Columns =>
  future(
    document({ goal, plans: plans([generation('f1', 4, first), generation('f2', 4, { seedParents: picksOf('f1'), judge: 0, ...second })]), ...changes }),
    RUNS,
  );
const startsIn = (columns: Columns, g = 1) => only(columns.generation(g, 'firstPollination'));

describe('when things happen (docs/model.md §5)', () => {
  it('judged in s crops, known after the s-th: a pick pollinates the spring after its last judged crop', () => {
    expect(startsIn(chain({ judge: 0 }))).toBe(6);
    expect(startsIn(chain({ judge: 1 }))).toBe(7);
    expect(startsIn(chain({ judge: 3 }))).toBe(9);
    expect(only(chain({ judge: 3 }).generation(0, 'firstPick'))).toBe(8);
    expect(only(chain({ judge: 0 }).generation(0, 'firstPick'))).toBe(6);
  });

  it('seed that lies over adds its years', () => {
    expect(startsIn(chain({ judge: 0 }, {}, { crosses: [cross({ dormancy: 2 })] }))).toBe(8);
  });

  it('a tree that bears only from a year on pollinates, and is pollinated, from then', () => {
    const columns = chain({ judge: 0 }, {}, { trees: [tree('a', { bearsFrom: 2003 }), tree('b')] });
    expect(startsIn(columns, 0)).toBe(3);
    expect(startsIn(columns)).toBe(9);
    expect(startsIn(chain({ judge: 0 }, {}, { trees: [tree('a'), tree('b', { bearsFrom: 2002 })] }), 0)).toBe(2);
  });

  it('goes on with the first pick, with enough picks, or when all are judged', () => {
    // Four springs of one flower: first fruit in years 6, 7, 8 and 9.
    const slow = { flowers: 1, springs: 4, judge: 0, keep: { howMany: 4 } };
    expect(startsIn(chain({ ...slow, goOn: { when: 'firstPick' } }))).toBe(6);
    expect(startsIn(chain({ ...slow, goOn: { when: 'enough', count: 3 } }))).toBe(8);
    expect(startsIn(chain({ ...slow, judge: 1, goOn: { when: 'allJudged' } }))).toBe(10);
  });

  it('and at the latest so many years after its first pollination', () => {
    const slow = { flowers: 1, springs: 4, judge: 0, keep: { howMany: 4 } };
    expect(startsIn(chain({ ...slow, goOn: { when: 'enough', count: 4, atLatest: 8 } }))).toBe(8);
    expect(startsIn(chain({ ...slow, goOn: { when: 'allJudged', atLatest: 7 } }))).toBe(7);
    // Nothing kept by then: it waits for a pick.
    expect(startsIn(chain({ ...slow, goOn: { when: 'enough', count: 4, atLatest: 2 } }))).toBe(6);
  });

  it('later picks still join as parents', () => {
    // Two picks come a year apart; crossing them waits for the second. One pick alone pollinates nothing.
    const slow = { flowers: 1, springs: 2, seedlings: 2, judge: 0, keep: { howMany: 2 }, goOn: { when: 'firstPick' as const } };
    expect(startsIn(chain(slow, { pollen: picksOf('f1') }))).toBe(7);
    const selfed = chain(slow, { pollen: picksOf('f1'), selfs: true }, { kinds: [kind({ selfCompatible: true })] });
    expect(startsIn(selfed)).toBe(6);
  });

  it('springs count only when something was pollinated', () => {
    const slow = { flowers: 1, springs: 2, seedlings: 2, judge: 0, keep: { howMany: 2 }, goOn: { when: 'firstPick' as const } };
    const columns = chain(slow, { pollen: picksOf('f1'), flowers: 10, seedlings: 1000, springs: 2 });
    expect(only(columns.generation(1, 'flowers'))).toBe(20);
  });

  it('a generation starts after the one it names', () => {
    const list = [
      generation('f1', 4, { judge: 0 }),
      generation('f2', 4, { seedParents: picksOf('f1'), judge: 3 }),
      generation('f3', 4, { seedParents: picksOf('f1'), judge: 0, after: 'f1' }),
      generation('f4', 4, { seedParents: picksOf('f1'), judge: 0 }),
    ];
    const columns = future(document({ goal, plans: plans(list) }), RUNS);
    expect([0, 1, 2, 3].map((g) => startsIn(columns, g))).toEqual([0, 6, 6, 12]);
  });

  it('repeats in rounds, each after the one before; later generations mean the last round', () => {
    const list = [
      generation('f1', 4, { judge: 0 }),
      generation('bc', 4, { seedParents: picksOf('f1'), repeat: 3, judge: 0 }),
      generation('end', 4, { seedParents: picksOf('bc'), judge: 0 }),
    ];
    const columns = future(document({ goal, plans: plans(list) }), RUNS);
    expect(columns.shape.generations).toBe(5);
    expect([0, 1, 2, 3, 4].map((g) => startsIn(columns, g))).toEqual([0, 6, 12, 18, 24]);
  });

  it('the horizon is the last year that counts', () => {
    const last = (lastYear: number) =>
      only(
        future(document({ lastYear, trees: ['a', 'b'].map((id) => tree(id, { genes: { r: { copies: 2 } } })), plans: plans([generation('g', 4)]) }), RUNS).run(
          'yearProven',
        ),
      );
    expect([last(2005), last(2006)]).toEqual([-1, 6]);
  });
});

describe('room (docs/model.md §6)', () => {
  const raising = (changes: Partial<Document>, g: Partial<GenerationDocument> = {}) =>
    document({ goal, lastYear: 2006, plans: plans([generation('g', 20, g)]), ...changes });

  it('tree-years: nursery shares until planting out, full places after, counted each spring after germination', () => {
    const kinds = [kind({ nurseryShare: 0.1, plantOutAge: 2 })];
    const columns = future(raising({ kinds }), RUNS);
    // Years 1 and 2 in the nursery at 2 places, years 3 … 6 planted at 20.
    expect(only(columns.amount('treeYears'))).toBeCloseTo(2 * 2 + 4 * 20, 9);
    expect(only(columns.amount('mostPlaces'))).toBe(20);
    expect(only(columns.run('planted'))).toBe(20);
  });

  it('a grafted tree takes the share of its stock', () => {
    const columns = future(raising({ stocks: [stock({ place: 0.5 })] }, { rescue: { who: 'every', month: 3, stock: 'stock' } }), RUNS);
    expect(only(columns.amount('mostPlaces'))).toBe(10);
    expect(only(columns.amount('treeYears'))).toBeCloseTo(5 * 10, 9);
  });

  it('is hard: what finds none waits in the nursery, then is counted as no room, never dropped', () => {
    for (const waitYears of [0, 1, 3]) {
      const columns = future(
        raising({ limits: { places: 8, bloomDays: 366, hoursADay: 24, flowersAnHour: 1e4 }, kinds: [kind({ nurseryShare: 0.05, waitYears })] }),
        40,
      );
      const planted = columns.run('planted');
      // Who is given up leaves the nursery, so that the last of the eight places is filled too.
      expect(only(planted)).toBe(8);
      expect(only(columns.run('noRoom'))).toBe(12);
      expect(Math.max(...columns.amount('mostPlaces'))).toBeLessThanOrEqual(8);
    }
  });

  it('the nursery itself can be full: what comes up then is raised and counted as no room at once', () => {
    const columns = future(
      raising({ limits: { places: 1, bloomDays: 366, hoursADay: 24, flowersAnHour: 1e4 }, kinds: [kind({ nurseryShare: 0.1, waitYears: 0 })] }),
      RUNS,
    );
    // Ten nursery shares; nine of those seedlings have to go before the tenth gets the place.
    expect(only(columns.run('seedlings'))).toBe(20);
    expect(only(columns.run('planted'))).toBe(1);
    expect(only(columns.run('noRoom'))).toBe(19);
  });

  it('culled trees leave the next winter and free their places; without clearing they stand', () => {
    const nothing = { howMany: 1, conditions: [{ type: 'shown' as const, trait: 'red', atLeast: 1 }] };
    const trees = [tree('a'), tree('b')];
    const by = (clearDiscards: boolean) => {
      const [plan] = plans([generation('g', 20, { keep: nothing })]);
      return only(future(document({ goal, trees, lastYear: 2010, plans: [{ ...plan!, clearDiscards }] }), RUNS).amount('treeYears'));
    };
    // Years 1 in the nursery (no share here), 2 … 6 planted.
    expect(by(true)).toBeCloseTo(5 * 20, 9);
    expect(by(false)).toBeCloseTo(9 * 20, 9);
  });

  it('backups come before seedlings', () => {
    const limits = { places: 10, bloomDays: 366, hoursADay: 24, flowersAnHour: 1e4 };
    const first = generation('f1', 1, { judge: 0, keep: { howMany: 1 }, backup: { copies: 4, stock: 'stock' } });
    const second = generation('f2', 20, { seedParents: picksOf('f1'), judge: 0 });
    const columns = future(document({ goal, limits, lastYear: 2012, stocks: [stock()], kinds: [kind({ waitYears: 0 })], plans: plans([first, second]) }), RUNS);
    // One pick and four copies leave five places; the first seedling took one of its own.
    expect(only(columns.run('planted'))).toBe(1 + 5);
    expect(only(columns.run('grafts'))).toBe(4);
  });
});

describe('hours and money', () => {
  it('flowers and fruit in their spring, seedlings at germination, grafts when made, judging in season, upkeep a place and year', () => {
    const hours = { perFlower: 0.03, perFruit: 0.02, perSeedling: 0.5, perGraft: 0.25, perTest: 0.1, perLook: 0.07, perPlaceYear: 1, perJudging: 0.4 };
    const money = { perFlower: 1, perFruit: 2, perSeedling: 3, perGraft: 4, perTest: 5, perLook: 6, perPlaceYear: 7, perJudging: 8 };
    const g = generation('g', 20, {
      flowers: 30,
      judge: 2,
      rescue: { who: 'every', month: 3, stock: 'stock', scions: 2 },
      test: { gene: 'r', copies: 1 },
      look: { trait: 'red' },
    });
    const trees = ['a', 'b'].map((id) => tree(id, { genes: { r: { copies: 2 } } }));
    const columns = future(document({ goal, hours, money, trees, stocks: [stock()], lastYear: 2007, plans: plans([g]) }), RUNS);
    const places = 20 * 6;
    const bill = (rate: typeof hours) =>
      30 * rate.perFlower +
      30 * rate.perFruit +
      20 * rate.perSeedling +
      40 * rate.perGraft +
      20 * rate.perTest +
      20 * rate.perLook +
      places * rate.perPlaceYear +
      40 * rate.perJudging;
    expect(only(columns.amount('totalHours'))).toBeCloseTo(bill(hours), 9);
    expect(only(columns.amount('totalMoney'))).toBeCloseTo(bill(money), 9);
    // Busiest: in hours a season of judging, 20 places and 20 crops; in money the year of planting out, 20 tests, looks and places.
    expect(only(columns.amount('busiestHours'))).toBeCloseTo(20 + 8, 9);
    expect(only(columns.amount('busiestMoney'))).toBeCloseTo(100 + 120 + 140, 9);
  });

  it('a route has its own hours and money a seed', () => {
    const routes = [{ id: 'out', name: 'taken out', germination: 1, hoursPerSeed: 0.2, moneyPerSeed: 3 }];
    const columns = future(
      document({ goal, lastYear: 2001, crosses: [cross({ routes })], money: {}, plans: plans([generation('g', 10, { route: 'out', flowers: 10 })]) }),
      RUNS,
    );
    expect(only(columns.amount('totalHours'))).toBeCloseTo(2, 9);
    expect(only(columns.amount('totalMoney'))).toBeCloseTo(30, 9);
  });

  it('open fruit costs no flowers', () => {
    const air = [{ id: 'air', name: 'air', trees: [{ tree: 'b', weight: 1 }] }];
    const columns = future(
      document({
        goal,
        lastYear: 2001,
        pools: air,
        defaultPool: 'air',
        hours: { perFlower: 1, perFruit: 0.1 },
        plans: plans([generation('g', 10, { pollen: 'open', flowers: 0 })]),
      }),
      RUNS,
    );
    expect(only(columns.amount('totalHours'))).toBeCloseTo(1, 9);
    expect(only(columns.run('flowers'))).toBe(0);
  });

  it('work is counted to the end of the year in which the goal is proven', () => {
    const trees = ['a', 'b'].map((id) => tree(id, { genes: { r: { copies: 2 } } }));
    const both = futures(document({ trees, hours: { perPlaceYear: 1 }, plans: plans([generation('g', 10)], [generation('h', 10, { judge: 3 })]) }), RUNS);
    expect(both.map((columns) => only(columns.amount('totalHours')))).toEqual([50, 50]);
  });
});

describe('why a run failed (docs/model.md §11)', () => {
  const why = (changes: Partial<Document>, list: GenerationDocument[]): Failure =>
    FAILURES[only(future(document({ lastYear: 2030, plans: plans(list), ...changes }), RUNS).run('failure'))]!;
  const bad = [tree('a'), tree('b')];
  const keepsNone = { howMany: 1, conditions: [{ type: 'shown' as const, trait: 'red', atLeast: 1 }] };
  const one = generation('g', 10, { keep: keepsNone });
  it.each<[Failure, Partial<Document>, GenerationDocument[]]>([
    ['onlyTreeLost', { trees: [tree('a', { yearlyLoss: 1, bearsFrom: 2003 }), tree('b', { yearlyLoss: 1 })] }, [generation('g', 10)]],
    ['stillWaiting', { trees: [tree('a', { bearsFrom: 2100 }), tree('b')] }, [one]],
    ['stillWaiting', { lastYear: 2000 }, [one]],
    ['stillWaiting', { lastYear: 2005 }, [one]],
    ['noFruit', { crosses: [cross({ set: 0 })] }, [one]],
    ['noSeedling', { crosses: [cross({ germination: 0 })] }, [one]],
    ['noSeedling', { crosses: [cross({ emptyFruit: 1 })] }, [one]],
    ['noRoom', { limits: { places: 0, bloomDays: 366, hoursADay: 24, flowersAnHour: 1e4 }, kinds: [kind({ nurseryShare: 0.05 })] }, [one]],
    ['seedlingsDied', { kinds: [kind({ firstYearLoss: 1 })] }, [one]],
    ['noneGoodEnough', { trees: bad }, [one]],
    ['noneGoodEnough', { trees: bad }, [generation('f1', 4, { judge: 0 }), { ...one, seedParents: picksOf('f1') }]],
  ])('%s', (reason, changes, list) => {
    expect(why(changes, list)).toBe(reason);
  });

  it('is given when, and only when, nothing was proven', () => {
    const columns = future(
      document({
        plans: plans([
          generation('f1', 2, { judge: 0, keep: { howMany: 2 }, goOn: { when: 'enough', count: 2 } }),
          generation('f2', 3, { seedParents: picksOf('f1'), pollen: picksOf('f1') }),
        ]),
      }),
      500,
    );
    columns.run('failure').forEach((code, run) => expect(code === -1).toBe(columns.run('yearProven')[run]! >= 0));
    expectMean(
      Array.from(columns.run('failure'), (code) => (code === -1 ? 1 : 0)),
      1 - 0.75 ** 3,
    );
  });
});
