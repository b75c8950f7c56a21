import { describe, expect, it } from 'vitest';
import { firstUnnoted } from '../../src/seasonlog/as-of.ts';
import { standsToday } from '../../src/seasonlog/today.ts';
import { document, generation, picksOf, plans, read, START, tree, type Document } from '../engine/programmes.ts';

type BatchDocument = NonNullable<NonNullable<Document['log']>['batches']>[number];

const batch = (changes: Partial<BatchDocument>): BatchDocument => ({
  id: 'b',
  name: 'batch',
  year: START,
  seed: { tree: 'a' },
  pollen: { tree: 'b' },
  ...changes,
});
const input = (...batches: BatchDocument[]): Document =>
  document({
    trees: [tree('a'), tree('b'), tree('c')],
    plans: plans([
      generation('first', 20, { judge: 0, keep: { howMany: 2 } }),
      generation('again', 20, { seedParents: picksOf('first'), pollen: picksOf('first'), repeat: 2 }),
    ]),
    log: { batches },
  });
const stands = (year: number, ...batches: BatchDocument[]) => standsToday(read(input(...batches)), year).plans[0]!;

describe('what stands today', () => {
  it('finds the generation by the parents where none is named, and the round by what the parents are', () => {
    const parents = (id: string, of: string, ...tags: string[]): BatchDocument =>
      batch({ id, year: START + 8, seed: { tag: of }, pollen: { tag: of }, trees: tags.map((tag) => ({ tag, firstFruit: START + 14 })) });
    const plan = stands(START + 20, batch({ trees: [{ tag: 'p', firstFruit: START + 6 }] }), parents('second', 'p', 'q'), {
      ...parents('third', 'q', 'r'),
      year: START + 15,
      generation: 'again',
      trees: [{ tag: 'r' }],
    });
    expect(plan.trees.map(({ tag, generation: g, picked }) => [tag, g, picked])).toEqual([
      ['p', 0, true],
      ['q', 1, true],
    ]);
    expect(plan.seedlings).toMatchObject([{ batch: 'third', generation: 2, n: 1, seed: { logged: 1 } }]);
    expect(plan.generations.map(({ goneOn, springs }) => [goneOn, springs])).toEqual([
      [true, 1],
      [true, 1],
      [false, 1],
    ]);
  });

  it('leaves out what is dated later, and says of whom nothing can be placed', () => {
    const trees: BatchDocument['trees'] = [
      { tag: '1', firstFruit: START + 6, seasons: [{ year: START + 6 }, { year: START + 9 }] },
      { tag: '2', status: 'dead', statusSince: START + 9 },
      { tag: '3', status: 'dead', statusSince: START + 4 },
    ];
    const plan = stands(
      START + 8,
      batch({ trees }),
      batch({ id: 'other', name: 'other', seed: { tree: 'c' }, counts: [{ stage: 'alive', count: 7 }] }),
      batch({ id: 'lost', name: 'lost', pollen: { tag: 'nobody' }, generation: 'again', counts: [{ stage: 'alive', count: 3 }] }),
      batch({ id: 'late', year: START + 8 }),
    );
    expect(plan.trees.map(({ tag, seasons }) => [tag, seasons.length])).toEqual([['1', 1]]);
    expect(plan.seedlings.map(({ n }) => n)).toEqual([1]);
    expect(plan.notPlaced.map(({ name, why, about, n }) => [name, why, about, n])).toEqual([
      ['other', 'noGeneration', '', 7],
      ['lost', 'noPollen', 'nobody', 3],
    ]);
  });

  it('tells grafted, weak and sound ones of a batch by its counts, and seed that is not due', () => {
    const weakness = { share: 0.5, onset: 1, course: { halfLife: 2 }, rootBorne: { chance: 1 } };
    const document_ = input(
      batch({
        grafting: { who: 'weak', month: 3, stock: 's' },
        counts: [
          { stage: 'cameUp', count: 20, when: '2001' },
          { stage: 'weak', count: 12, when: '2001' },
          { stage: 'grafted', count: 9, when: '2001' },
          { stage: 'took', count: 5, when: '2001' },
        ],
      }),
      batch({ id: 'next', year: START + 1, counts: [{ stage: 'seeds', count: 30 }] }),
      batch({ id: 'gone', name: 'gone', year: START, counts: [{ stage: 'sown', count: 8 }] }),
    );
    const programme = read({
      ...document_,
      stocks: [{ id: 's', name: 's', takeTender: 1, takeRipe: 1 }],
      crosses: [{ id: 'within', name: 'within', seed: 'pear', pollen: 'pear', gives: 'pear', set: 1, germination: 1, weakness }],
    });
    const plan = standsToday(programme, START + 2).plans[0]!;
    expect(plan.seedlings.map(({ n, weak, grafted }) => [n, weak, grafted])).toEqual([
      [5, 'yes', true],
      [3, 'yes', false],
      [8, 'no', false],
    ]);
    expect(plan.inGround).toMatchObject([{ batch: 'next', stage: 'seeds', n: 30, born: START + 2 }]);
    expect(plan.notPlaced.map(({ name, why, n }) => [name, why, n])).toEqual([
      ['batch', 'graftsNotMade', 5],
      ['gone', 'neverCameUp', 8],
    ]);
  });

  it('proposes the first spring of which nothing is noted', () => {
    expect(firstUnnoted(read(input()).log.batches)).toBeNull();
    expect(firstUnnoted(read(input(batch({ counts: [{ stage: 'alive', count: 1, when: '2004-05' }] }))).log.batches)).toBe(2005);
  });
});
