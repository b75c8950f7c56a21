import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../src/statistics/normal.ts';
import { atLeast, binomialCdf } from '../../src/statistics/binomial.ts';
import { clopperPearson, effectiveCount, jeffreys, perFlower, wilson } from '../../src/statistics/interval.ts';
import { quantileSorted, spread, yearSpread } from '../../src/statistics/order.ts';

const count = fc.integer({ min: 1, max: 3000 }).chain((of) => fc.tuple(fc.integer({ min: 0, max: of }), fc.constant(of)));

describe('intervals of a share', () => {
  it('hold the share and lie in 0 … 1, mirrored for misses', () => {
    fc.assert(
      fc.property(count, ([hits, of]) => {
        for (const interval of [wilson, clopperPearson]) {
          const { value, low, high } = interval(hits, of);
          expect(value).toBe(hits / of);
          expect(low).toBeGreaterThanOrEqual(0);
          expect(low).toBeLessThanOrEqual(value);
          expect(high).toBeGreaterThanOrEqual(value);
          expect(high).toBeLessThanOrEqual(1);
          const misses = interval(of - hits, of);
          expect(misses.low).toBeCloseTo(1 - high, 10);
        }
      }),
    );
  });

  it('Wilson’s bounds are where the score test gives up: |p̂ − p| = z √(p(1 − p)/n) (Wilson 1927)', () => {
    fc.assert(
      fc.property(count, ([hits, of]) => {
        const z = -normalQuantile(0.025);
        const { value, low, high } = wilson(hits, of);
        for (const bound of [low, high]) if (bound > 0 && bound < 1) expect(Math.abs(value - bound)).toBeCloseTo(z * Math.sqrt((bound * (1 - bound)) / of), 11);
      }),
    );
  });

  it('Clopper and Pearson’s bounds leave half of 5 % beyond (Clopper & Pearson 1934)', () => {
    fc.assert(
      fc.property(count, ([hits, of]) => {
        const { low, high } = clopperPearson(hits, of, 0.95);
        if (hits > 0) expect(atLeast(hits, of, low)).toBeCloseTo(0.025, 9);
        if (hits < of) expect(binomialCdf(hits, of, high)).toBeCloseTo(0.025, 9);
      }),
    );
  });

  it('know nothing without trials', () => {
    expect(wilson(0, 0)).toEqual({ value: 0, low: 0, high: 1 });
    expect(clopperPearson(0, 0)).toEqual({ value: 0, low: 0, high: 1 });
  });
});

describe('counts', () => {
  it('18 of 240 in one spring weighs like about ten flowers (docs/model.md §2)', () => {
    const { hits, of } = effectiveCount(18, 240, 1, 0.1);
    expect(of).toBeCloseTo(240 / 24.9, 12);
    expect(hits / of).toBeCloseTo(18 / 240, 12);
  });

  it('weigh more in more lots, and never more than they are', () => {
    expect(effectiveCount(18, 240, 4, 0.1).of).toBeCloseTo(240 / 6.9, 12);
    expect(effectiveCount(18, 240, 240, 0.1)).toEqual({ hits: 18, of: 240 });
    expect(effectiveCount(18, 240, 1000, 0.1)).toEqual({ hits: 18, of: 240 });
    expect(effectiveCount(18, 240, 1, 0)).toEqual({ hits: 18, of: 240 });
  });

  it('leave Jeffreys’ posterior proper with no hits', () => expect(jeffreys(0, 9.5)).toEqual({ alpha: 0.5, beta: 10 }));

  it('are converted per flower and back', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.999, noNaN: true }), fc.integer({ min: 1, max: 50 }), (p, n) => {
        expect(1 - (1 - perFlower(p, n)) ** n).toBeCloseTo(p, 12);
      }),
    );
    expect([perFlower(1, 5), perFlower(0, 5)]).toEqual([1, 0]);
    expect(perFlower(0.3, 1)).toBeCloseTo(0.3, 15);
  });
});

describe('quantiles', () => {
  it('lie on lines between the values (Hyndman & Fan 1996, definition 7)', () => {
    expect([0, 0.25, 0.5, 0.9, 1].map((q) => quantileSorted([10, 20, 30, 40, 50], q))).toEqual([10, 20, 30, 46, 50]);
    expect(quantileSorted([7], 0.9)).toBe(7);
    expect(quantileSorted([], 0.5)).toBeNaN();
  });

  it('summarise values in any order without changing them', () => {
    const values = [9, 1, 5, 3, 7, 10, 2, 8, 4, 6, 0];
    expect(spread(values)).toEqual({ mean: 5, p10: 1, p50: 5, p90: 9 });
    expect(values[0]).toBe(9);
    expect(spread(Uint16Array.of(3, 1, 2)).p50).toBe(2);
    expect(spread([])).toEqual({ mean: 0, p10: 0, p50: 0, p90: 0 });
  });

  it('rise from 10 to 90 % within the values, whatever they are', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1 }), (values) => {
        const { p10, p50, p90 } = spread(values);
        expect(p10).toBeGreaterThanOrEqual(Math.min(...values));
        expect(p50).toBeGreaterThanOrEqual(p10);
        expect(p90).toBeGreaterThanOrEqual(p50);
        expect(p90).toBeLessThanOrEqual(Math.max(...values));
      }),
    );
  });
});

describe('years reached', () => {
  it('are the first years by which 10, 50 and 90 % have come', () => {
    // 30 futures: 10 % is three of them, met by the third year and not the fourth.
    const years = Array.from({ length: 30 }, (_, i) => 2030 + i);
    expect(yearSpread(years, 0, 30)).toEqual({ p10: 2032, p50: 2044, p90: 2056 });
  });

  it('are null for shares never reached', () => {
    const years = [2040, 0, 2035, 0, 0, 2050, 0, 0, 0, 0];
    expect(yearSpread(years, 0, 10)).toEqual({ p10: 2035, p50: null, p90: null });
    expect(yearSpread([2035, 2040, 2050], 0, 3)).toEqual({ p10: 2035, p50: 2040, p90: 2050 });
    expect(yearSpread([0, 0], 0, 2)).toEqual({ p10: null, p50: null, p90: null });
    expect(yearSpread([], 0, 0)).toEqual({ p10: null, p50: null, p90: null });
    expect(yearSpread(Int16Array.of(-1, 4, -1, 2), -1, 4)).toEqual({ p10: 2, p50: 4, p90: null });
  });

  it('hold their definition', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 12 }), { minLength: 1, maxLength: 60 }), fc.nat(20), (years, more) => {
        const of = years.length + more;
        const by = (year: number): number => years.filter((one) => one !== 0 && one <= year).length;
        const { p10, p50, p90 } = yearSpread(years, 0, of);
        for (const [percent, year] of [
          [10, p10],
          [50, p50],
          [90, p90],
        ] as const) {
          if (year === null) expect(by(99) * 100).toBeLessThan(percent * of);
          else {
            expect(by(year) * 100).toBeGreaterThanOrEqual(percent * of);
            expect(by(year - 1) * 100).toBeLessThan(percent * of);
          }
        }
      }),
    );
  });
});
