import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frameOf } from '../../src/engine/frame.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import { wilson } from '../../src/statistics/interval.ts';
import { laterBegin } from '../../src/statistics/last-spring.ts';
import { planOutlook } from '../../src/statistics/outlook.ts';
import { load } from '../engine/example-futures.ts';

/** Futures with a proven tree by each year from 2030 on, of 1,000. */
const plan = (...hits: readonly number[]) => ({ runs: 1000, chanceByYear: hits.map((n, index) => ({ year: 2030 + index, ...wilson(n, 1000) })) });

describe('beginning later', () => {
  it('leaves the futures that end well as many years before the last', () => {
    const { chances } = laterBegin(plan(0, 0, 100, 300, 400));
    expect(chances.map(({ year, value }) => [year, value])).toEqual([
      [2030, 0.4],
      [2031, 0.3],
      [2032, 0.1],
      [2033, 0],
      [2034, 0],
    ]);
    expect(chances[1]).toEqual({ year: 2031, ...wilson(300, 1000) });
  });

  it('names the last spring with half of the chance, exactly half too, and the last with any', () => {
    expect(laterBegin(plan(0, 0, 100, 300, 400))).toMatchObject({ half: 2031, any: 2032 });
    expect(laterBegin(plan(0, 0, 200, 300, 400))).toMatchObject({ half: 2032, any: 2032 });
    expect(laterBegin(plan(0, 0, 0, 0, 1))).toMatchObject({ half: 2030, any: 2030 });
    expect(laterBegin(plan(0, 0, 0))).toMatchObject({ half: null, any: null, skipped: wilson(0, 1000) });
  });

  it('costs the futures that end well in the very last year', () => {
    expect(laterBegin(plan(0, 100, 400)).skipped).toEqual(wilson(300, 1000));
    expect(laterBegin(plan(0, 400, 400)).skipped).toEqual(wilson(0, 1000));
    expect(laterBegin(plan(70)).skipped).toEqual(wilson(70, 1000));
  });

  it('never raises the chance, and keeps more than nothing to the named spring only', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 20 }), (steps) => {
        let sum = 0;
        const later = laterBegin(plan(...steps.map((step) => (sum += step))));
        later.chances.slice(1).forEach(({ value }, index) => expect(value).toBeLessThanOrEqual(later.chances[index]!.value));
        for (const { year, value } of later.chances) {
          expect(value > 0).toBe(later.any !== null && year <= later.any);
          expect(value > 0 && value * 1000 >= sum / 2 - 1e-6).toBe(later.half !== null && year <= later.half);
        }
      }),
    );
  });

  it('is what the engine says of the same futures with so many years fewer', () => {
    // Every draw is keyed by its year (docs/model.md §13): a nearer last judging year only cuts the futures off. The last year of a shorter
    // programme is the same year of the longer one, so that the shares agree exactly, not within an error.
    const programme = load('peach-quick');
    const chances = (lastYear: number) => {
      const shorter = { ...programme, lastYear };
      return new Simulator(shorter).runs([0, 1], 0, 200).map((columns, p) => planOutlook(frameOf(shorter), p, columns, null));
    };
    const whole = chances(programme.lastYear).map(laterBegin);
    expect(whole.some(({ chances: all }) => all[0]!.value - all[10]!.value > 0.1)).toBe(true);
    for (const later of [1, 7, 10])
      chances(programme.lastYear - later).forEach(({ chance }, p) => {
        expect(whole[p]!.chances[later]).toEqual({ year: programme.startYear + later, ...chance });
      });
  });
});
