import { describe, expect, it } from 'vitest';
import { differenceOf, meanDifference, outcomeOf } from '../../src/decisions/outcome.ts';
import {
  onlyPlan,
  withCross,
  withFact,
  withFactChance,
  withHalfDeadBy,
  withRescue,
  withRescueMonth,
  withRootChance,
  withStock,
  withTree,
} from '../../src/decisions/variants.ts';
import { FactReader } from '../../src/engine/fact-reader.ts';
import { frameOf } from '../../src/engine/frame.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import { parseProgramme } from '../../src/model/read.ts';
import type { Programme } from '../../src/model/programme.ts';
import { planOutlook } from '../../src/statistics/outlook.ts';
import { bytesOf } from '../contract/bytes.ts';
import { redPear } from './samples.ts';

const PLAN = 'wide-rescue';
const run = (programme: Programme, runs = 400) => new Simulator(onlyPlan(programme, PLAN)).runs([0], 0, runs)[0]!;
const stands = run(redPear);
const rescue = redPear.plans[3]!.generations[0]!.rescue!;

describe('variants of a programme', () => {
  const variants: Readonly<Record<string, Programme>> = {
    'without rescue': withRescue(redPear, PLAN, ['d1'], null),
    'every seedling': withRescue(redPear, PLAN, ['d1', 'd2'], { ...rescue, who: 'every' }),
    'grafted later': withRescueMonth(redPear, PLAN, ['d1'], 9),
    'weak in the roots': withFact(redPear, 'roots', true),
    'weak in the roots of one cross': withRootChance(redPear, 'wide', 0.3),
    'dying slowly': withHalfDeadBy(redPear, 'wide', 40),
    'with two copies': withTree(redPear, 'old-hedgerow', (tree) => ({ ...tree, copies: 2 })),
    'with better take': withStock(redPear, 'field-pear', (stock) => ({ ...stock, takeTender: 0.8 })),
    'with less set': withCross(redPear, 'wide', (cross) => ({ ...cross, set: 0.2 })),
  };

  it.each(Object.entries(variants))('%s: a programme that can be read, another one, and the old left alone', (_, variant) => {
    expect(parseProgramme(variant).ok).toBe(true);
    expect(variant).not.toEqual(redPear);
    expect(bytesOf([run(variant)])).not.toEqual(bytesOf([stands]));
    expect(bytesOf([run(redPear)])).toEqual(bytesOf([stands]));
  });

  it('share everything that they do not change', () => {
    const variant = withRescueMonth(redPear, PLAN, ['d1'], 9);
    expect(variant.crosses).toBe(redPear.crosses);
    expect(variant.plans[0]).toBe(redPear.plans[0]);
    expect(withRescueMonth(redPear, 'no such plan', ['d1'], 9).plans).toBe(redPear.plans);
    expect(withHalfDeadBy(redPear, 'pear', 9).crosses).toBe(redPear.crosses);
  });

  it('that end where they began give the same bytes', () => {
    const there = withRescue(redPear, PLAN, ['d1'], null);
    expect(bytesOf([run(withRescue(there, PLAN, ['d1'], rescue))])).toEqual(bytesOf([stands]));
    expect(bytesOf([run(onlyPlan(redPear, PLAN))])).toEqual(bytesOf(new Simulator(redPear).runs([3], 0, 400)));
  });

  it('live through the same luck up to the graft (docs/decisions/0002, 0005)', () => {
    const own = run(variants['without rescue']!);
    for (const stage of ['flowers', 'fruits', 'seeds', 'seedlings'] as const) expect(own.generation(0, stage)).toEqual(stands.generation(0, stage));
  });

  it('of a yes/no fact leave those futures alone in which it came out that way anyhow', () => {
    const holds = stands.fact(0);
    for (const [answer, variant] of [
      [1, withFact(redPear, 'roots', true)],
      [0, withFact(redPear, 'roots', false)],
    ] as const) {
      const fixed = run(variant);
      expect(new Set(fixed.fact(0))).toEqual(new Set([answer]));
      const same = Array.from(holds.keys()).filter((i) => holds[i] === answer);
      expect(same.length).toBeGreaterThan(50);
      for (const name of ['yearProven', 'seedlings', 'weakSaved', 'fruiting'] as const)
        expect(same.map((i) => fixed.run(name)[i])).toEqual(same.map((i) => stands.run(name)[i]));
    }
  });
});

describe('outcomes and differences', () => {
  const half = run(withFactChance(redPear, 'roots', 0));

  it('say the same as the outlook of the page', () => {
    const outlook = planOutlook(frameOf(onlyPlan(redPear, PLAN)), 0, stands, null);
    const outcome = outcomeOf(stands, redPear.startYear);
    expect(outcome).toMatchObject({ chance: outlook.chance, trulyGood: outlook.trulyGood, yearProven: outlook.yearProven });
    expect(outcome).toMatchObject({ seedlings: outlook.seedlings, totalHours: outlook.totalHours, treeYears: outlook.treeYears, grafts: outlook.grafts });
  });

  it('between two variants that are alike are nothing, and not clear', () => {
    const none = differenceOf(stands, run(redPear));
    expect(none.chance.value).toBe(0);
    expect(none.clear).toBe(false);
    expect(none.sooner.value + none.later.value).toBe(0);
    expect(none.totalHours).toEqual({ value: 0, low: 0, high: 0 });
  });

  it('turn their sign when turned round', () => {
    const there = differenceOf(stands, half);
    const back = differenceOf(half, stands);
    expect(there.clear).toBe(true);
    expect(back.chance.value).toBe(-there.chance.value);
    expect(back.sooner).toEqual(there.later);
    expect(back.totalHours.low).toBeCloseTo(-there.totalHours.high, 10);
  });

  it('of means: the paired interval, by hand (differences 1, 3, 2: mean 2, SD 1)', () => {
    const { value, low, high } = meanDifference([4, 5, 6], [3, 2, 4]);
    expect([value, low, high]).toEqual([2, expect.closeTo(2 - 1.959963984540054 / Math.sqrt(3), 12), expect.closeTo(2 + 1.959963984540054 / Math.sqrt(3), 12)]);
    expect(meanDifference([4], [3])).toEqual({ value: 1, low: 0, high: 2 });
    expect(() => meanDifference([1, 2], [1])).toThrow(RangeError);
  });
});

describe('facts read without running a plan', () => {
  it('are the very ones of the futures: yes/no facts, and guesses as they stand', () => {
    const reader = new FactReader(redPear);
    for (let future = 0; future < 60; future += 1) {
      reader.goTo(future);
      expect(reader.weak('wide').inRoots).toBe(stands.fact(0)[future] === 1);
    }
    const known = new FactReader({ ...redPear, guessesAsTheyStand: true });
    known.goTo(5);
    // PERT means (low + 4 likely + high)/6 of 3, 5, 9 months and of 0.85, 0.95, 0.99.
    expect(known.weak('wide').halfLife).toBeCloseTo(32 / 6, 12);
    expect(known.weak('wide').share).toBeCloseTo(5.64 / 6, 12);
    expect(known.stock('field-pear')).toMatchObject({ takeTender: 0.4, takeRipe: 0.85, ripeMonths: 12, yearlyLoss: 0.02 });
    expect(() => known.weak('pear')).toThrow(RangeError);
    expect(() => known.stock('none')).toThrow(RangeError);
  });
});
