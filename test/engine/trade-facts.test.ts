import { describe, expect, it } from 'vitest';
import { expectMean } from './agreement.ts';
import { climb, momentsOf } from './ladder.ts';
import { cross, document, future, generation, kind, measured, neverProven, picksOf, plans, shown, stock, tree, type Document } from './programmes.ts';

/** Common practice, no source: what every grower takes for granted, and a model that says otherwise is wrong. */
describe('facts of the trade (common practice, no source)', () => {
  const goal = neverProven();

  it('a graft reproduces its tree exactly: grafted seedlings segregate, and breed, like their own-rooted sisters', () => {
    const hybrids = [tree('a', { genes: { r: { copies: 1 } } }), tree('b', { genes: { r: { copies: 1 } } })];
    const rescue = { who: 'every' as const, month: 6, stock: 'stock' };
    const showing = (grafted: boolean) => {
      const input = document({ goal, trees: hybrids, stocks: [stock()], lastYear: 2006, plans: plans([generation('g', 40, grafted ? { rescue } : {})]) });
      return future(input, 500).generation(0, 'showing');
    };
    // Not merely alike: the same seedlings, run by run.
    expect(showing(true)).toEqual(showing(false));
    expectMean(showing(true), 10);
  });

  it('a pick that lives on only as its backups is the same parent', () => {
    // One pick with two copies among ten seedlings, kept on its fruit; crossed to a tree without, then back: all its seedlings carry one copy.
    const first = generation('f1', 10, {
      keep: { howMany: 1, conditions: [{ type: 'shown', trait: 'red', atLeast: 1 }] },
      goOn: { when: 'enough', count: 2, atLatest: 12 },
      backup: { copies: 3, stock: 'stock' },
    });
    const second = generation('f2', 20, { seedParents: picksOf('f1'), pollen: [{ tree: 'c' }] });
    const trees = [tree('a', { genes: { r: { copies: 1 } } }), tree('b', { genes: { r: { copies: 1 } } }), tree('c', { genes: { r: { copies: 2 } } })];
    // Seedlings mostly come through five winters; a pick of year 6 then has six of them to die in, and copies that do not.
    const input = document({ goal, trees, kinds: [kind({ yearlyLoss: 0.3 })], stocks: [stock()], lastYear: 2030, plans: plans([first, second]) });
    const columns = future(input, 1500);
    const started = Array.from(columns.generation(1, 'firstPollination'))
      .map((year, run) => ({ year, run }))
      .filter(({ year }) => year === 12);
    expect(started.length).toBeGreaterThan(200);
    for (const { run } of started) expect(columns.generation(1, 'showing')[run]).toBe(columns.generation(1, 'fruiting')[run]);
    // The own tree has lived on in about 0.7⁶ = 12 % of them: most parents are backups.
    expect(columns.generation(1, 'fruiting').some((n, run) => n > 0 && columns.generation(1, 'firstPollination')[run] === 12)).toBe(true);
  });

  it('what is measured of a grafted tree has the same genetic value', () => {
    const ladder = { trait: 'size', from: -10, step: 1, steps: 21 };
    const trait = measured({ sd: Math.SQRT2, heritability: 0.5, repeatability: 0.5, yearShare: 0 });
    const means = (grafted: boolean) => {
      const changes: Partial<Document> = {
        goal,
        traits: [shown(2), trait],
        trees: [tree('a', { values: { size: 2 } }), tree('b', { values: { size: 1 } })],
        stocks: [stock()],
        lastYear: 2006,
      };
      const g = generation('g', 40, grafted ? { rescue: { who: 'every', month: 3, stock: 'stock' } } : {});
      return momentsOf(ladder, climb(ladder, [g], changes, 300), true).map((run) => run.mean);
    };
    expectMean(means(true), 1.5, 'grafted');
    expectMean(means(false), 1.5, 'own roots');
  });

  it('slow kinds bear 10–12 years from seed: the goal of a cross made this spring is not seen before', () => {
    const slow = [kind({ firstFruit: { earliest: 10, half: 11, ninety: 12 } })];
    const trees = ['a', 'b'].map((id) => tree(id, { genes: { r: { copies: 2 } } }));
    const columns = future(
      document({
        kinds: slow,
        trees,
        goal: { conditions: [{ type: 'shown', trait: 'red', atLeast: 1 }], crops: 1 },
        lastYear: 2040,
        plans: plans([generation('g', 20)]),
      }),
      400,
    );
    const years = Array.from(columns.run('yearProven'));
    expect(Math.min(...years)).toBeGreaterThanOrEqual(11);
    expect(Math.max(...years)).toBeLessThanOrEqual(13);
    expect(new Set(columns.generation(0, 'firstFruit'))).toEqual(new Set(years));
  });

  it('hybrids with weak roots die ungrafted, and live on a stock', () => {
    const weakness = { share: 1, onset: 1, course: { halfLife: 6 }, rootBorne: { chance: 1 } };
    const by = (who: 'none' | 'weak') => {
      const g = generation('g', 40, { rescue: { who, month: 1, stock: 'stock' }, judge: 0 });
      return future(document({ goal, crosses: [cross({ weakness })], stocks: [stock()], lastYear: 2006, plans: plans([g]) }), 1000).run('fruiting');
    };
    expectMean(by('none'), 40 * 2 ** (-59 / 6));
    expect(new Set(by('weak'))).toEqual(new Set([40]));
  });
});
