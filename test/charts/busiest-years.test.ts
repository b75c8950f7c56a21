import { describe, expect, it } from 'vitest';
import { busyLayout } from '../../src/charts/busiest-years/layout.ts';
import { BUSY_LINE, BUSY_SIZE, type BusyLoad, type PlanYears } from '../../src/charts/busiest-years/load.ts';
import { linesOf, statements } from '../../src/charts/busiest-years/reading.ts';
import { chanceLayout } from '../../src/charts/chance-by-year/layout.ts';
import { roughMeasure } from '../../src/charts/measure.ts';
import { busyYears } from '../../src/statistics/busy.ts';
import { busyText, loadAmount, loadNumber, LOADS } from '../../src/text/charts-years.ts';
import { FIXTURE_COLUMNS } from './fixture-columns.ts';
import { FIXTURE } from './fixture.ts';

const HOURS: BusyLoad = { load: 'hours', limit: 150, hard: false };
const plansOf = (load: BusyLoad): PlanYears[] =>
  FIXTURE.plans.map(({ id, mark, name }, index) => ({
    plan: id,
    mark,
    name,
    years: busyYears(FIXTURE_COLUMNS[index]!, load.load, FIXTURE.startYear, { ...load, each: load.load === 'flowers' ? 160 : 1 }),
  }));
const options = { ...HOURS, startYear: FIXTURE.startYear, lastYear: FIXTURE.lastYear, width: 1144, measure: roughMeasure };
const plans = plansOf(HOURS);

describe('the strips', () => {
  const layout = busyLayout(plans, options);

  it('share one scale of amounts and the calendar of the other pictures', () => {
    const others = chanceLayout(FIXTURE, { width: 1144, measure: roughMeasure, words: {} });
    expect(layout.calendar.ticks).toEqual(others.calendar.ticks);
    const heights = layout.strips.map(({ bottom, limitY }) => bottom - limitY!);
    for (const height of heights) expect(height).toBeCloseTo(heights[0]!, 9);
    for (const [index, { line, bottom }] of layout.strips.entries())
      for (const { x, y } of line) {
        const { p50 } = plans[index]!.years.find(({ year }) => Math.abs(layout.calendar.x(year) - x) < 0.01)!;
        expect((bottom - y) / heights[0]!).toBeCloseTo(p50 / 150, 9);
      }
  });

  it('hold band and limit inside their own space, one under the other, words and bars too', () => {
    for (const width of [288, 358, 700, 1144]) {
      const { strips, height, wordsRoom } = busyLayout(plans, { ...options, width });
      for (const [index, strip] of strips.entries()) {
        for (const { low, high } of strip.band) {
          expect(high).toBeGreaterThanOrEqual(strip.top);
          expect(low).toBe(strip.bottom);
        }
        expect(strip.limitY).toBeGreaterThan(strip.top);
        const next = strips[index + 1]?.from ?? height;
        expect(strip.barRule?.bottom ?? strip.bottom).toBeLessThan(next);
        for (const year of [null, ...plans[index]!.years.map((at) => at.year)]) {
          const lines = linesOf(plans[index]!, HOURS, year, wordsRoom, roughMeasure);
          expect(strip.words.y + (lines.length - 1) * BUSY_LINE).toBeLessThan(width < 640 ? strip.top : next);
          for (const { text, first } of lines) expect(strip.words.x + roughMeasure(text, BUSY_SIZE, first)).toBeLessThanOrEqual(width);
        }
      }
    }
  });

  it('draw bars as tall as the share of futures over the limit, only where there are any', () => {
    expect(layout.barShare).toBe(0.2);
    const [open, sister] = layout.strips;
    expect(open!.bars).toEqual([]);
    expect(open!.barRule).toBeNull();
    const { years } = plans[1]!;
    for (const { x, width, height } of sister!.bars) {
      const { over } = years.find(({ year }) => Math.abs(layout.calendar.x(year) - (x + width / 2)) < 0.01)!;
      const full = sister!.barRule!.bottom - sister!.barRule!.top;
      expect(height).toBeCloseTo(Math.max(1, (full * over) / 0.2), 9);
    }
    expect(sister!.bars).toHaveLength(years.filter(({ over }) => over > 0).length);
  });

  it('write no number of the scale onto the limit', () => {
    for (const limit of [40, 55, 100, 160, 300])
      for (const { axis } of busyLayout(plans, { ...options, limit }).strips) {
        const ys = axis.map(({ y }) => y).sort((a, b) => a - b);
        for (let index = 1; index < ys.length; index++) expect(ys[index]! - ys[index - 1]!).toBeGreaterThanOrEqual(16);
      }
  });

  it('say a limit that lies far above instead of drawing it, and draw without one', () => {
    const far = busyLayout(plans, { ...options, limit: 5000 });
    expect(far.far).toBe(true);
    expect(far.strips[0]!.limitY).toBeNull();
    const none = busyLayout(plansOf({ ...HOURS, limit: null }), { ...options, limit: null });
    expect([none.far, none.barShare, none.strips[0]!.limitY]).toEqual([false, null, null]);
  });

  it('are empty where nothing is asked', () => {
    const flowers = plansOf({ load: 'flowers', limit: 8, hard: true });
    const [open] = busyLayout(flowers, { ...options, load: 'flowers', limit: 8, hard: true }).strips;
    expect([open!.line, open!.band]).toEqual([[], []]);
    expect(busyLayout([], options).strips).toEqual([]);
  });
});

describe('the words on busy years', () => {
  it('give where the middle and one in ten are highest, or one year', () => {
    const years = [
      { year: 2040, p50: 92, p90: 100, over: 0.002 },
      { year: 2041, p50: 93.4, p90: 99, over: 0.024 },
    ];
    expect(statements({ years }, { ...HOURS, limit: 98 }, null)).toEqual([
      'most in 2041: 93\u00a0hours',
      '1 in\u00a010 above 100, in\u00a02040',
      'over 98 in 2 of\u00a0100, in\u00a02041',
    ]);
    expect(statements({ years }, { ...HOURS, limit: 98 }, 2040)).toEqual([
      'in 2040: 92\u00a0hours',
      '1 in\u00a010 above 100',
      'over 98 in under 1 of\u00a0100',
    ]);
    expect(statements({ years: [] }, { load: 'places', limit: 120, hard: true }, null)).toEqual([
      'half need no places',
      '9 in\u00a010 need none',
      'never all taken',
    ]);
    expect(statements({ years: [] }, { ...HOURS, limit: null }, null)[2]).toBe('no limit stated');
  });

  it('sum up in one sentence', () => {
    const peak = { mark: 'B', year: 2037, n: 93.4, figure: 'p50' } as const;
    expect(busyText.summary('hours', 160, peak, null)).toBe('B is busiest in 2037: about 93\u00a0hours, within your 160.');
    expect(busyText.summary('hours', 160, peak, { mark: 'D', year: 2031, share: 0.16 })).toBe(
      'B is busiest in 2037: about 93\u00a0hours, within your 160. D in 2031: over 160 in 16 of\u00a0100 futures.',
    );
    expect(busyText.summary('hours', 80, peak, { mark: 'B', year: 2037, share: 0.6 })).toBe(
      'B is busiest in 2037: about 93\u00a0hours, above your 80; over 80 in 60 of\u00a0100 futures.',
    );
    expect(busyText.summary('flowers', 6, { mark: 'A', year: 2036, n: 0.5, figure: 'p90' }, null)).toBe(
      'A is busiest in 2036: in 1 of\u00a010 futures over 0.5\u00a0bloom days, within your 6.',
    );
    expect(busyText.summary('flowers', 6, null, null)).toBe('No plan pollinates by hand.');
  });

  it('never call something nothing', () => {
    expect([busyText.cell('hours', 93.4, 100, 0.001), busyText.cell('hours', 93.4, 100, 0), busyText.cell('hours', 0.2, 100, null)]).toEqual([
      '93 (100); under 1',
      '93 (100); 0',
      'under 1 (100)',
    ]);
    for (const load of LOADS) {
      expect(loadNumber(load, 0)).toBe('0');
      expect(loadNumber(load, 1e-6)).toMatch(/^under /u);
    }
    expect([loadAmount('hours', 1.2), loadAmount('hours', 0.2), loadAmount('flowers', 0.75), loadAmount('places', 1200)]).toEqual([
      '1\u00a0hour',
      'under 1\u00a0hour',
      '0.8\u00a0bloom days',
      '1,200\u00a0places',
    ]);
  });
});
