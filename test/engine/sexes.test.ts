import { describe, expect, it } from 'vitest';
import { expectMean, expectShare, total } from './agreement.ts';
import { document, future, generation, kind, measured, neverProven, picksOf, plans, shown, tree, type Document } from './programmes.ts';

/** Half of the seedlings are male; the others bear fruit and give no pollen. */
const apart = kind({ maleShare: 0.5 });
const founders: Document['trees'] = [tree('a', { sex: 'female' }), tree('b', { sex: 'male' })];
const orchard = (changes: Partial<Document> & Pick<Document, 'plans'>): Document =>
  document({ kinds: [apart], traits: [shown(1)], trees: founders, goal: neverProven(), lastYear: 2020, ...changes });

describe('separate sexes', () => {
  it('males flower and are not judged: half of the seedlings fruit, each judged once', () => {
    const columns = future(orchard({ lastYear: 2006, plans: plans([generation('g', 100)]) }), 300);
    expectShare(total(columns.generation(0, 'fruiting')), 300 * 100, 0.5);
    expect(total(columns.run('judgings'))).toBe(total(columns.generation(0, 'fruiting')));
    expect(total(columns.generation(0, 'kept'))).toBe(total(columns.generation(0, 'fruiting')));
  });

  it('picks are pollinated by the males kept, and no female gives pollen', () => {
    const kept = future(
      orchard({
        plans: plans([
          generation('f1', 40, { keep: { howMany: 3, males: 2 } }),
          generation('f2', 60, { seedParents: picksOf('f1'), pollen: [...picksOf('f1'), { tree: 'a' }], reciprocal: true }),
        ]),
      }),
      60,
    );
    expect([...new Set(kept.generation(1, 'seedlings'))]).toEqual([60]);
    // Three picks by two males: six pairs of ten flowers; no male is a seed parent, no female gives pollen.
    expect([...new Set(kept.generation(1, 'flowers'))]).toEqual([60]);
  });

  it('a gene of the kept males comes in with their pollen: half of their seedlings carry it', () => {
    // Every male of f1 has one copy from b, and so has every female; of f2 three in four carry one.
    const input = orchard({
      trees: [tree('a', { sex: 'female' }), tree('b', { sex: 'male', genes: { r: { copies: 2 } } })],
      plans: plans([generation('f1', 40, { keep: { howMany: 1, males: 1 } }), generation('f2', 60, { seedParents: picksOf('f1'), pollen: picksOf('f1') })]),
    });
    const columns = future(input, 300);
    expectMean(
      Array.from(columns.generation(1, 'showing'), (showing, i) => showing - 0.75 * columns.generation(1, 'fruiting')[i]!),
      0,
    );
  });

  it('a male founding tree is no seed parent, and a female one has no pollen in the air', () => {
    const trees: Document['trees'] = [
      tree('a', { sex: 'female' }),
      tree('b', { sex: 'male' }),
      tree('c', { sex: 'male', genes: { r: { copies: 2 } } }),
      tree('d', { sex: 'female', genes: { r: { copies: 2 } } }),
    ];
    const air = [
      { tree: 'b', weight: 1 },
      { tree: 'd', weight: 9 },
    ];
    const open = orchard({
      trees,
      pools: [{ id: 'air', name: 'air', trees: air }],
      defaultPool: 'air',
      plans: plans([generation('g', 50, { seedParents: [{ tree: 'a' }, { tree: 'c' }], pollen: 'open', flowers: 0 })]),
    });
    const columns = future(open, 20);
    expect([...new Set(columns.generation(0, 'seedlings'))]).toEqual([50]);
    expect(total(columns.generation(0, 'showing'))).toBe(0);
  });
});

describe('fathers judged by their daughters', () => {
  const trees: Document['trees'] = [
    tree('a', { sex: 'female', values: { size: 0 } }),
    tree('low', { sex: 'male', values: { size: -2 } }),
    tree('high', { sex: 'male', values: { size: 2 }, genes: { r: { copies: 2 } } }),
    tree('middle', { sex: 'male', values: { size: 0 } }),
  ];
  const pollen = [{ tree: 'low' }, { tree: 'high' }, { tree: 'middle' }];
  const progeny = (best: number, weights: Record<string, number>, changes: Partial<Document> = {}): Document =>
    orchard({
      traits: [shown(1), measured()],
      trees,
      lastYear: 2030,
      plans: plans([
        generation('test', 240, { pollen, keep: { howMany: 5, weights, rank: 'index' }, goOn: { when: 'allJudged' } }),
        generation('next', 100, { pollen: [{ sires: 'test', best }] }),
      ]),
      ...changes,
    });

  it('the best of three is the one of which the daughters are best: forty each, family means a standard deviation apart', () => {
    const columns = future(progeny(1, { size: 1 }), 100);
    expect(columns.generation(1, 'showing')).toEqual(columns.generation(1, 'fruiting'));
    expect([...new Set(columns.generation(1, 'flowers'))]).toEqual([100]);
    const worst = future(progeny(1, { size: -1 }), 100);
    expect(total(worst.generation(1, 'showing'))).toBe(0);
  });

  it('the best two share the flowers', () => {
    const columns = future(progeny(2, { size: 1 }), 100);
    expectShare(total(columns.generation(1, 'showing')), total(columns.generation(1, 'fruiting')), 0.5);
  });

  it('where nothing has a weight, by the share that meets the keep rule', () => {
    const input = progeny(1, {});
    input.plans[0]!.generations[0]!.keep = { howMany: 5, conditions: [{ type: 'shown', trait: 'red', atLeast: 1 }] };
    const columns = future(input, 60);
    expect(columns.generation(1, 'showing')).toEqual(columns.generation(1, 'fruiting'));
  });

  it('a dead father is passed over', () => {
    // ‘high’ is gone before any daughter is judged; the next best follows.
    const lost = progeny(1, { size: 1 }, { trees: trees.map((one) => (one.id === 'high' ? { ...one, yearlyLoss: 1 } : one)) });
    const columns = future(lost, 60);
    expect([...new Set(columns.generation(1, 'flowers'))]).toEqual([100]);
    expect(total(columns.generation(1, 'showing'))).toBe(0);
  });
});
