import { describe, expect, it } from 'vitest';
import { expectMean, expectShare, total } from './agreement.ts';
import { cross, document, future, generation, kind, measured, neverProven, plans, shown, stock, tree, type Document } from './programmes.ts';

const RUNS = 300;
const one = (crossing: Partial<Parameters<typeof cross>[0]>, changes: Partial<Document> = {}, rescue = {}): Document =>
  document({
    kinds: [kind({ plantOutAge: 1 })],
    traits: [shown(2)],
    crosses: [cross(crossing)],
    stocks: [stock()],
    goal: neverProven(),
    lastYear: 2007,
    plans: plans([generation('g', 100, rescue)]),
    ...changes,
  });
const grafted = (month: number) => ({ rescue: { who: 'every', month, stock: 'stock' } as const });

describe('copies of the seed parent among the seedlings', () => {
  it('are like her: of a mother with two copies and a father without, their share shows; the breeder judges all alike', () => {
    const columns = future(one({ motherClones: 0.7 }, { lastYear: 2006 }), RUNS);
    expectShare(total(columns.generation(0, 'showing')), RUNS * 100, 0.7);
    expect([...new Set(columns.generation(0, 'fruiting'))]).toEqual([100]);
    expect([...new Set(columns.run('judgings'))]).toEqual([100]);
  });

  it('are no weak hybrids, and of her kind: they fruit when her kind does', () => {
    const input = one(
      { gives: 'hybrid', motherClones: 0.25, weakness: { share: 1, onset: 0, course: { halfLife: 0.05 }, rootBorne: { chance: 0 } } },
      { kinds: [kind(), kind({ id: 'hybrid', name: 'hybrid', firstFruit: { years: 20 } })] },
    );
    const columns = future(input, RUNS);
    expectShare(total(columns.generation(0, 'fruiting')), RUNS * 100, 0.25);
    expect([...new Set(columns.generation(0, 'firstFruit'))]).toEqual([6]);
  });

  it('share what travels with her wood and differ in what their site does', () => {
    // All that lasts travels, all that does not is the year’s: copies of one tree read alike, above the mean or below.
    const wood = (travels: number) =>
      future(
        one(
          { motherClones: 1 },
          {
            traits: [shown(2), measured({ heritability: 0, repeatability: 0.5, travels, yearShare: 1 })],
            plans: plans([generation('g', 20, { keep: { howMany: 20, conditions: [{ type: 'measured', trait: 'size', atLeast: 0 }] } })]),
          },
        ),
        200,
      ).generation(0, 'kept');
    const alike = wood(1);
    expect(new Set(alike)).toEqual(new Set([0, 20]));
    expectShare(total(alike) / 20, 200, 0.5);
    expect(new Set(wood(0)).size).toBeGreaterThan(5);
  });

  it('a copy of a pick is that pick: what the pick shows every copy shows', () => {
    const input = one({ motherClones: 1 }, { lastYear: 2020 });
    input.trees = [tree('a', { genes: { r: { copies: 1 } } }), tree('b', { genes: { r: { copies: 1 } } })];
    input.crosses = [cross({ motherClones: 0 }), cross({ id: 'copied', name: 'copied', motherClones: 1 })];
    input.plans = plans([generation('f1', 1), generation('copies', 8, { seedParents: [{ picksOf: 'f1' }], cross: 'copied', pollen: [{ tree: 'b' }] })]);
    const columns = future(input, 600);
    const shows = columns.generation(0, 'showing');
    expect(Array.from(columns.generation(1, 'showing'))).toEqual(Array.from(shows, (n) => 8 * n));
    expectShare(total(shows), 600, 0.25);
  });
});

describe('seedlings that no rootstock saves', () => {
  it('die at their age on any roots; a graft before it is made in vain', () => {
    const early = future(one({ necrosis: { share: 0.3, months: 8 } }, {}, grafted(3)), RUNS);
    expect([...new Set(early.run('grafts'))]).toEqual([100]);
    expectShare(total(early.generation(0, 'fruiting')), RUNS * 100, 0.7);
    const late = future(one({ necrosis: { share: 0.3, months: 8 } }, {}, grafted(10)), RUNS);
    expect(total(late.run('grafts'))).toBe(total(late.generation(0, 'fruiting')));
    expectShare(total(late.run('grafts')), RUNS * 100, 0.7);
  });

  it('stand till then: planted, and in a leaf test, they take room and hours', () => {
    const tested = (months: number) => future(one({ necrosis: { share: 0.3, months } }, {}, { test: { gene: 'r', copies: 1, cull: false } }), RUNS);
    expect([...new Set(tested(30).run('planted'))]).toEqual([100]);
    expect([...new Set(tested(30).run('tests'))]).toEqual([100]);
    expectShare(total(tested(30).generation(0, 'fruiting')), RUNS * 100, 0.7);
    expectShare(total(tested(6).run('planted')), RUNS * 100, 0.7);
  });

  it('late ones are judged first, and are lost as picks with their backups', () => {
    const input = one({ necrosis: { share: 1, months: 80 } }, { lastYear: 2020 }, { keep: { howMany: 1 }, backup: { copies: 2, stock: 'stock' } });
    input.plans[0]!.generations.push(generation('next', 10, { seedParents: [{ picksOf: 'g' }], springs: 20, after: 'g' }));
    const columns = future(input, 20);
    // Fruit in season 6 after pollination, kept then; dead at 80 months, in the seventh year: one spring as a parent.
    expect([...new Set(columns.generation(0, 'kept'))]).toEqual([1]);
    expect([...new Set(columns.generation(1, 'flowers'))]).toEqual([10]);
  });

  it('weakness that a graft cures and this are apart: of 40 % weak and 25 % doomed a sure graft of all leaves three in four', () => {
    const weakness = { share: 0.4, onset: 0, course: { halfLife: 6 }, rootBorne: { chance: 1 } };
    const columns = future(one({ weakness, necrosis: { share: 0.25, months: 9 } }, {}, grafted(0.5)), RUNS);
    const weakLost = 1 - 2 ** (-0.5 / 6);
    expectShare(total(columns.generation(0, 'fruiting')), RUNS * 100, 0.75 * (1 - 0.4 * weakLost));
  });
});

describe('a parent with an odd number of sets', () => {
  const triploid = kind({ id: 'triploid', name: 'triploid', ploidy: 3 });
  const trees = [tree('a', { kind: 'triploid', genes: { r: { copies: 2 } } }), tree('b'), tree('c', { genes: { r: { copies: 2 } } })];
  const entry = (usable?: number) =>
    cross({ id: 'odd', name: 'triploid × pear', seed: 'triploid', ...(usable === undefined ? {} : { usableSeedlings: usable }) });

  it('gives the stated share of seedlings that are any use; all that come up are work', () => {
    const columns = future(one({}, { kinds: [kind(), triploid], trees, crosses: [cross(), entry(0.15)] }), RUNS);
    expect([...new Set(columns.generation(0, 'seedlings'))]).toEqual([100]);
    expectShare(total(columns.generation(0, 'fruiting')), RUNS * 100, 0.15);
  });

  it('is left out where nothing is stated, and its flowers go to the others', () => {
    const input = one({}, { kinds: [kind(), triploid], trees, crosses: [cross(), entry()] });
    input.plans = plans([generation('g', 100, { seedParents: [{ tree: 'a' }, { tree: 'c' }] })]);
    const columns = future(input, 20);
    expectMean(columns.generation(0, 'fruits'), 100);
    expect([...new Set(columns.generation(0, 'fruiting'))]).toEqual([100]);
  });
});
