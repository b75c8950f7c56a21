import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { calendar } from '../../src/charts/calendar.ts';

describe('the calendar', () => {
  it('keeps its gutters: 176 px left and 250 px right in the wide room', () => {
    const years = calendar({ startYear: 2027, lastYear: 2057, width: 1144 });
    expect(years.room).toBe('wide');
    expect(years.left).toBe(176);
    expect(years.right).toBe(1144 - 250);
    expect(years.x(2027)).toBeGreaterThan(years.left);
    expect(years.horizon).toBeLessThan(years.right);
  });

  it('puts the horizon at the end of the last year, half a year after its middle', () => {
    const years = calendar({ startYear: 2027, lastYear: 2057, width: 1144 });
    const year = years.x(2040) - years.x(2039);
    expect(years.horizon - years.x(2057)).toBeCloseTo(year / 2, 9);
    expect(years.yearAt(years.x(2043.25))).toBeCloseTo(2043.25, 9);
  });

  it('writes years that never touch each other or the last year, at any width and length', () => {
    fc.assert(
      fc.property(fc.integer({ min: 288, max: 1600 }), fc.integer({ min: 1900, max: 2200 }), fc.integer({ min: 6, max: 150 }), (width, startYear, length) => {
        const { ticks, horizon } = calendar({ startYear, lastYear: startYear + length, width });
        // Four tabular figures at 17 px are 4 × 0.5 em = 34 px wide in the page's font.
        for (const [index, tick] of ticks.entries()) {
          const next = ticks[index + 1];
          if (next) expect(next.x - tick.x).toBeGreaterThanOrEqual(40);
          expect(tick.x + 17).toBeLessThan(horizon - 38);
          expect(tick.x - 17).toBeGreaterThanOrEqual(0);
        }
      }),
    );
  });

  it('begins later where the empty years are dropped', () => {
    const years = calendar({ startYear: 2027, lastYear: 2057, width: 358, from: 2040, right: 62 });
    expect(years.room).toBe('phone');
    expect(years.firstYear).toBe(2040);
    expect(years.x(2040)).toBeGreaterThanOrEqual(0);
    expect(years.x(2039)).toBeLessThan(0);
  });
});
