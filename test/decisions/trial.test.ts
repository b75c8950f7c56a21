import { describe, expect, it } from 'vitest';
import { inlineFutures } from '../../src/decisions/inline.ts';
import { trial, type TrialAnswer } from '../../src/decisions/trial.ts';
import type { Programme } from '../../src/model/programme.ts';
import { binomialPmf, atLeast } from '../../src/statistics/binomial.ts';
import { aliveAt } from '../../src/statistics/graft.ts';
import { expectShare } from '../engine/agreement.ts';
import { cross, generation, plans, stock, type Document } from '../engine/programmes.ts';
import { oneWeak, redPear, told } from './samples.ts';

/**
 * One weak seedling, half dead 46 months after month 2, grafted at 3 months with take ½, first fruit in season 6 (72 months). Roots or top is
 * one draw, ½. All else is known, so that a trial can only tell whether the graft cures.
 */
const HALF = 46;
const TAKE = 0.5;
const slow = (changes: Partial<Document> = {}): Programme =>
  oneWeak(
    0.5,
    {
      crosses: [cross({ weakness: { share: 1, onset: 2, course: { halfLife: HALF }, rootBorne: { chance: 0.5 } } })],
      stocks: [stock({ takeTender: TAKE, takeRipe: TAKE })],
      ...changes,
    },
    { who: 'weak', month: 3, stock: 'stock' },
  );
const alive = (month: number) => aliveAt(month, 2, HALF);
const exact = {
  own: alive(72),
  ifRoots: alive(3) * TAKE,
  ifTop: alive(72) * TAKE,
  /** Grafted seedlings alive so many summers on. */
  counted: (summers: number) => ({ ifRoots: TAKE, ifTop: (TAKE * alive(3 + 12 * summers)) / alive(3) }),
};
/** Worth of seeing how many of n grafts are alive: two states, Bayes by hand. */
const worthOf = (n: number, summers: number): number => {
  const { ifRoots, ifTop } = exact.counted(summers);
  const after = Array.from({ length: n + 1 }, (_, t) => {
    const [roots, top] = [0.5 * binomialPmf(t, n, ifRoots), 0.5 * binomialPmf(t, n, ifTop)];
    return Math.max((roots + top) * exact.own, roots * exact.ifRoots + top * exact.ifTop);
  });
  return after.reduce((sum, part) => sum + part, 0) - Math.max(exact.own, (exact.ifRoots + exact.ifTop) / 2);
};

const fourErrors = ({ low, high }: { low: number; high: number }) => (4 / 1.96) * ((high - low) / 2);
const ask = async (programme: Programme, runs: number): Promise<TrialAnswer> => (await told(trial, programme, { plan: 'plan-0', runs })).answer;

describe('grafting some and leaving some, against exact answers', () => {
  const asked = ask(slow({ runs: 6000 }), 6000);

  it('the decision hangs on where the weakness sits', () => {
    expect(exact.ifRoots).toBeGreaterThan(exact.own);
    expect(exact.ifTop).toBeLessThan(exact.own);
    expect(worthOf(20, 2)).toBeGreaterThan(0.02);
  });

  it('worth of every number of trees, after one summer and two, and of knowing', async () => {
    const { watched, best } = await asked;
    expect(best).toBe('none');
    expect(watched.map(({ summers, points }) => [summers, points[0]!.n, points.at(-1)!.n, points.length])).toEqual([
      [1, 2, 20, 19],
      [2, 2, 20, 19],
    ]);
    for (const { summers, points, perfect } of watched) {
      for (const { n, worth, measurable } of points) {
        expect(Math.abs(worth.value - worthOf(n, summers)), `${String(n)} after ${String(summers)}`).toBeLessThan(fourErrors(worth));
        expect(measurable).toBe(worth.low > 0);
      }
      const known = 0.5 * (exact.ifRoots - exact.own);
      expect(Math.abs(perfect.value - known)).toBeLessThan(fourErrors(perfect));
    }
    expect(watched[1]!.points.at(-1)!.measurable).toBe(true);
  });

  it('the result that changes what is done: many grafts alive, as often as the exact tail says', async () => {
    const { changes } = (await asked).watched[1]!.points.at(-1)!;
    expect(changes).toMatchObject({ of: 'grafted', atLeast: true, then: 'weak' });
    const { count, happens } = changes!;
    const { ifRoots, ifTop } = exact.counted(2);
    const [roots, top] = [0.5 * atLeast(count, 20, ifRoots), 0.5 * atLeast(count, 20, ifTop)];
    expect(roots * exact.ifRoots + top * exact.ifTop).toBeGreaterThan((roots + top) * exact.own);
    // The states are one draw a future, so the share is as sure as the share of the futures in which the roots are weak.
    expect(Math.abs(happens - roots - top)).toBeLessThan(4 * Math.sqrt(0.25 / 6000) * Math.abs(atLeast(count, 20, ifRoots) - atLeast(count, 20, ifTop)));
  });

  it('shares alive at the count, and what it takes in trees', async () => {
    const { watched, batch, month } = await asked;
    expect([batch, month]).toEqual(['weak', 3]);
    watched.forEach(({ alive: count, summers, points }) => {
      const { ifRoots, ifTop } = exact.counted(summers);
      expectShare(Math.round((6000 * (count.grafted - ifTop)) / (ifRoots - ifTop)), 6000, 0.5);
      expect(count.left).toBeCloseTo(alive(3 + 12 * summers) / alive(3), 10);
      const raised = Math.ceil(20 / alive(3));
      expect(points.find(({ n }) => n === 10)!.cost).toEqual({ trees: 20, raised, grafts: 10, flowers: raised, hours: 0 });
    });
  });

  it('waiting costs nothing where there is time enough', async () => {
    for (const { waiting } of (await asked).watched) expect(Math.abs(waiting.value)).toBeLessThan(fourErrors(waiting));
  });
});

describe('what the trial costs', () => {
  it('everything, when the seedling fruits in the last year and the plan waits', async () => {
    const { watched, decisions } = await ask(slow({ lastYear: 2007 }), 1000);
    const now = Math.max(...decisions.map(({ outcome }) => outcome.chance.value));
    expect(now).toBeGreaterThan(0.2);
    for (const { waiting, points } of watched) {
      expect(waiting.value).toBeCloseTo(-now, 12);
      for (const { ifWaiting } of points) expect(ifWaiting.high).toBeLessThan(0);
    }
  });

  it('hours of pollinating, raising, grafting and room', async () => {
    const hours = { perFlower: 0.1, perFruit: 0.2, perSeedling: 0.5, perGraft: 0.25, perPlaceYear: 1 };
    const crosses = [cross({ set: 0.5, germination: 0.8, weakness: { share: 0.5, onset: 2, course: { halfLife: 1200 }, rootBorne: { chance: 1 } } })];
    const { watched } = await ask(slow({ hours, crosses }), 100);
    const { cost } = watched[1]!.points.find(({ n }) => n === 5)!;
    // Ten weak ones of twice as many seedlings, and a hair more for those that are dead by month 3; 0.4 seedlings a flower.
    expect(cost).toMatchObject({ trees: 10, raised: 21, grafts: 5, flowers: 53 });
    expect(cost.hours).toBeCloseTo(53 * 0.1 + 53 * 0.5 * 0.2 + 21 * 0.5 + 5 * 0.25, 10);
  });
});

describe('where nothing would change', () => {
  it('no worth that can be measured, and no result that would change what is done', async () => {
    const sure = oneWeak(1);
    const { clear, watched } = await ask(sure, 1000);
    expect(clear).toBe(false);
    for (const { points, perfect } of watched) {
      expect(perfect.low).toBeLessThanOrEqual(0);
      for (const { measurable, changes } of points) expect([measurable, changes]).toEqual([false, null]);
    }
  });

  it('beside the plan, a trial serves a later generation that can be weak; before the weakness shows it takes any seedlings', async () => {
    const { answer } = await told(trial, redPear, { plan: 'wide-rescue', runs: 200 });
    expect(answer.later).toMatchObject({ generation: 'd2' });
    expect(answer.watched[0]!.points[0]!.beside).not.toBeNull();
    const early = oneWeak(
      1,
      { crosses: [cross({ weakness: { share: 0.5, onset: 6, course: { halfLife: 5 }, rootBorne: { chance: 1 } } })] },
      { who: 'every', month: 3, stock: 'stock' },
    );
    const any = await ask(early, 200);
    expect([any.batch, any.later]).toEqual(['any', null]);
    // Weak ones halve every 5 months after month 6; the other half lives.
    expect(any.watched[0]!.alive.left).toBeCloseTo(0.5 + 0.5 * aliveAt(15, 6, 5), 10);
  });

  it('or no answer', async () => {
    const none = (programme: Programme, plan: string) => trial.ask(programme, { plan }, inlineFutures(), () => undefined);
    expect(await none(redPear, 'brother-sister')).toMatchObject({ cannotSay: 'nothingWeak' });
    expect(await none(redPear, 'nobody')).toMatchObject({ cannotSay: 'noPlan' });
    expect(await none({ ...oneWeak(1, {}, null), stocks: [] }, 'plan-0')).toMatchObject({ cannotSay: 'noStock' });
  });

  it('with the programme’s own generation asked for', async () => {
    const two = oneWeak(1, { plans: plans([generation('g', 1), generation('h', 1, { seedParents: [{ picksOf: 'g' }] })]) });
    const { answer } = await told(trial, two, { plan: 'plan-0', runs: 100, generation: 'h' });
    expect(answer.generation).toBe('h');
  });
});
