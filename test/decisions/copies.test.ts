import { describe, expect, it } from 'vitest';
import { copies } from '../../src/decisions/copies.ts';
import { inlineFutures } from '../../src/decisions/inline.ts';
import { expectShare } from '../engine/agreement.ts';
import { document, generation, neverProven, plans, read, START, tree, type Document } from '../engine/programmes.ts';
import { redPear, told } from './samples.ts';

const PLAN = { plan: 'plan-0' };
const programme = (changes: Partial<Document> = {}) =>
  read(
    document({
      lastYear: START + 8,
      trees: [tree('a', { yearlyLoss: 0.04, genes: { r: { copies: 2 } } }), tree('b')],
      goal: neverProven(),
      plans: plans([generation('g', 1)]),
      ...changes,
    }),
  );

describe('copies of the tree that everything hangs on', () => {
  it('lost by year as check PC8 says (0.96 through eight winters), and as counted', async () => {
    const { answer } = await told(copies, programme(), { ...PLAN, runs: 50 });
    const [one] = answer.ways;
    expect(one).toMatchObject({ copies: 1, asItStands: true, minusAsItStands: null });
    expect(1 - one!.lostBy[8]!).toBeCloseTo(0.7213895789838334, 12);
    expect(one!.lostBy[0]).toBe(0);
    expect(answer.ways.map(({ copies: number, gardens }) => [number, gardens])).toEqual([1, 2, 3, 4].map((number) => [number, 1]));
    for (const way of answer.ways) expectShare(Math.round(400 * way.lostCounted.value), 400, way.lostBy[8]!);
  });

  it('in a second garden like the first where there is none; dealt in turn', async () => {
    const gardens = [{ id: 'home', name: 'home', yearlyLoss: 0.05 }];
    const { answer } = await told(copies, programme({ gardens }), { ...PLAN, runs: 50 });
    expect(answer.ways.map(({ copies: number, gardens: places }) => [number, places])).toEqual([
      ...[1, 2, 3, 4].map((n) => [n, 1]),
      ...[2, 3, 4].map((n) => [n, 2]),
    ]);
    for (const way of answer.ways) expectShare(Math.round(400 * way.lostCounted.value), 400, way.lostBy[8]!, `${String(way.copies)} in ${String(way.gardens)}`);
    const [single, apart] = [
      answer.ways.find((way) => way.copies === 2 && way.gardens === 1)!,
      answer.ways.find((way) => way.copies === 2 && way.gardens === 2)!,
    ];
    // One garden: lost with it or both on their own; two: each with its garden or on its own.
    const [alone, garden] = [0.96 ** 8, 0.95 ** 8];
    expect(single.lostBy[8]).toBeCloseTo(1 - garden * (1 - (1 - alone) ** 2), 12);
    expect(apart.lostBy[8]).toBeCloseTo((1 - garden * alone) ** 2, 12);
  });

  it('make no clear difference to a plan that needs the tree in the first spring only; a clear one to the example’s', async () => {
    const first = programme({ goal: { conditions: [{ type: 'shown', trait: 'red', atLeast: 1 }], crops: 1 }, traits: redOne });
    const { answer } = await told(copies, first, { ...PLAN, runs: 200 });
    expect(answer.clear).toBe(false);
    for (const way of answer.ways.slice(1)) expect(way.minusAsItStands).toMatchObject({ clear: false, chance: { value: 0 } });
    const pear = await told(copies, redPear, { plan: 'wide-rescue', runs: 1000 });
    expect(pear.answer).toMatchObject({ tree: 'old-hedgerow', clear: true });
    expect(pear.answer.ways.find((way) => way.copies === 2)!.minusAsItStands!.chance.low).toBeGreaterThan(0);
  });

  it('are asked of another tree of the plan, or of none', async () => {
    expect((await told(copies, redPear, { plan: 'wide-rescue', tree: 'mill-quince', runs: 100 })).answer).toMatchObject({ tree: 'mill-quince' });
    expect(await copies.ask(redPear, { plan: 'nobody' }, inlineFutures(), () => undefined)).toMatchObject({ cannotSay: 'noPlan', done: true });
  });
});

const redOne: Document['traits'] = [
  { type: 'shown', id: 'red', name: 'red', rules: [{ name: 'one', weight: 1, needs: { needs: 'all', of: [{ gene: 'r', copies: 1 }] } }], sharedSeason: 0 },
];
