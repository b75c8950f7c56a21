import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frameOf } from '../../src/engine/frame.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import { Columns } from '../../src/results/columns.ts';
import { busiest, busyYears, highest, peakOf, type BusyYear } from '../../src/statistics/busy.ts';
import { planOutlook } from '../../src/statistics/outlook.ts';
import { load } from '../engine/example-futures.ts';

/** Columns of as many futures as the first year has values; hours by year. */
function hours(...years: readonly (readonly number[])[]): Columns {
  const columns = new Columns({ generations: 0, rules: 0, facts: 0, measured: 0, years: years.length }, years[0]?.length ?? 0);
  years.forEach((values, year) => columns.year('hours', year).set(values));
  return columns;
}
const soft = (limit: number | null) => ({ limit, hard: false, each: 1 });
const year = (at: number, p50: number, p90: number, over = 0): BusyYear => ({ year: at, p50, p90, over });

describe('what a year asks for', () => {
  it('has its middle and 90 % between the futures, linearly (Hyndman & Fan 1996, definition 7: of 0 … 10 they are 5 and 9)', () => {
    const [first, second] = busyYears(hours([10, 0, 9, 1, 8, 2, 7, 3, 6, 4, 5], Array(11).fill(3)), 'hours', 2027, soft(7));
    expect(first).toEqual({ year: 2027, p50: 5, p90: 9, over: 3 / 11 });
    expect(second).toEqual({ year: 2028, p50: 3, p90: 3, over: 0 });
  });

  it('is over a limit only above it, and never without one', () => {
    const columns = hours([159, 160, 161, 320]);
    expect(busyYears(columns, 'hours', 2027, soft(160))[0]!.over).toBe(0.5);
    expect(busyYears(columns, 'hours', 2027, soft(null))[0]!.over).toBe(0);
    expect(busyYears(columns, 'hours', 2027, soft(0))[0]!.over).toBe(1);
  });

  it('counts a limit that cannot be passed as taken when less than one of it is left', () => {
    const columns = hours([8, 9, 9.5, 10]);
    expect(busyYears(columns, 'hours', 2027, { limit: 10, hard: true, each: 1 })[0]!.over).toBe(0.5);
    // Of half a place nothing can be left but all of it.
    expect(busyYears(hours([0, 0, 0.25, 0.5]), 'hours', 2027, { limit: 0.5, hard: true, each: 1 })[0]!.over).toBe(0.5);
  });

  it('tells flowers in bloom days', () => {
    expect(busyYears(hours([40, 40, 40]), 'hours', 2027, { limit: 6, hard: true, each: 160 })[0]).toEqual({ year: 2027, p50: 0.25, p90: 0.25, over: 0 });
    expect(busyYears(hours([0, 0, 0]), 'hours', 2027, { limit: 6, hard: true, each: 0 })[0]).toEqual({ year: 2027, p50: 0, p90: 0, over: 0 });
  });

  it('counts the same futures one by one', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 1, maxLength: 40 }), fc.integer({ min: 0, max: 50 }), (values, limit) => {
        const [at] = busyYears(hours(values), 'hours', 2027, soft(limit));
        expect(at!.over).toBe(values.filter((value) => value > limit).length / values.length);
        expect(at!.p90).toBeGreaterThanOrEqual(at!.p50);
      }),
    );
  });

  it('agrees with the engine: no year has more futures over the hours than any year together, none passes its places or its hands', () => {
    const programme = load('peach-quick');
    const { limits } = programme;
    const frame = frameOf(programme);
    const all = new Simulator(programme).runs([0, 1, 2, 3], 0, 300);
    const shares = all.map((columns, p) => {
      const { overHours } = planOutlook(frame, p, columns, null);
      const years = busyYears(columns, 'hours', frame.startYear, soft(limits.hoursPerYear ?? null));
      const byYear = years.map(({ over }) => over);
      expect(years).toHaveLength(frame.years);
      expect(Math.max(...byYear)).toBeLessThanOrEqual(overHours!.value);
      expect(byYear.reduce((a, b) => a + b)).toBeGreaterThanOrEqual(overHours!.value - 1e-12);
      for (let y = 0; y < frame.years; y++) {
        expect(Math.max(...columns.year('places', y))).toBeLessThanOrEqual(limits.places);
        expect(Math.max(...columns.year('flowers', y))).toBeLessThanOrEqual(limits.bloomDays * limits.hoursADay * limits.flowersAnHour);
      }
      return overHours!.value;
    });
    // The example has plans that do go over: else nothing was checked.
    expect(Math.max(...shares)).toBeGreaterThan(0);
  });
});

describe('the busiest year', () => {
  it('is the first of equal ones, and none where nothing is asked', () => {
    expect(peakOf([year(2027, 1, 2), year(2028, 5, 6), year(2029, 5, 9)], 'p50')?.year).toBe(2028);
    expect(peakOf([year(2027, 1, 2), year(2028, 5, 6), year(2029, 5, 9)], 'p90')?.year).toBe(2029);
    expect(peakOf([year(2027, 0, 2)], 'p50')).toBeNull();
    expect(peakOf([], 'p50')).toBeNull();
  });

  it('goes by the middle of all plans, and by one future in ten only where half are never asked', () => {
    const plans = [[year(2027, 4, 90)], [year(2027, 3, 5), year(2028, 6, 7)]];
    expect(busiest(plans)).toMatchObject({ plan: 1, at: { year: 2028 }, figure: 'p50' });
    expect(busiest([[year(2027, 0, 3)], [year(2028, 0, 5)]])).toMatchObject({ plan: 1, at: { year: 2028 }, figure: 'p90' });
    expect(busiest([[year(2027, 0, 0)]])).toBeNull();
    expect(highest([[year(2027, 1, 1, 0.2)], [year(2028, 1, 1, 0.3)]], 'over')).toMatchObject({ plan: 1 });
  });
});
