import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betaQuantile } from '../../src/statistics/beta.ts';
import { expm1, log1p } from '../../src/statistics/near-zero.ts';
import { pertMean, pertShape, pertVariance } from '../../src/statistics/pert.ts';
import { seedsPerFruitTable } from '../../src/statistics/truncated-poisson.ts';
import { firstFruitShape, weibullCdf, weibullQuantile } from '../../src/statistics/weibull.ts';

const positive = fc.double({ min: 0.05, max: 20, noNaN: true });

describe('PERT', () => {
  it('has the mean and variance of its beta', () => {
    fc.assert(
      fc.property(fc.double({ min: -50, max: 50, noNaN: true }), positive, fc.double({ min: 0, max: 1, noNaN: true }), (low, width, place) => {
        const likely = low + place * width;
        const high = low + width;
        const { alpha, beta } = pertShape(low, likely, high);
        const size = alpha + beta;
        expect(size).toBeCloseTo(6, 9);
        expect(pertMean(low, likely, high)).toBeCloseTo(low + (width * alpha) / size, 9);
        expect(pertVariance(low, likely, high) / width ** 2).toBeCloseTo((alpha * beta) / (size ** 2 * (size + 1)), 9);
      }),
    );
  });

  it('has its peak at the likely value', () => {
    const { alpha, beta } = pertShape(10, 14, 30);
    expect(10 + (20 * (alpha - 1)) / (alpha + beta - 2)).toBeCloseTo(14, 12);
    expect(betaQuantile(0.5, alpha, beta)).toBeGreaterThan(0.2);
  });

  it('still has a mean and no variance for a range of no width', () => {
    expect(pertMean(3, 3, 3)).toBe(3);
    expect(pertVariance(3, 3, 3)).toBe(0);
  });
});

describe('Weibull', () => {
  it('undoes itself and rises', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }), positive, positive, (u, shape, scale) => {
        expect(weibullCdf(weibullQuantile(u, { shape, scale }), { shape, scale })).toBeCloseTo(u, 12);
        expect(weibullQuantile(u / 2, { shape, scale })).toBeLessThan(weibullQuantile(u, { shape, scale }));
      }),
    );
  });

  it('is the exponential at shape 1, with 63.2 % below its scale at any shape', () => {
    expect(weibullQuantile(0.5, { shape: 1, scale: 3 })).toBeCloseTo(3 * Math.LN2, 13);
    for (const shape of [0.5, 1, 2.5, 7]) expect(weibullCdf(4, { shape, scale: 4 })).toBeCloseTo(1 - Math.exp(-1), 13);
    expect([
      weibullCdf(0, { shape: 2, scale: 1 }),
      weibullCdf(-3, { shape: 2, scale: 1 }),
      weibullQuantile(1, { shape: 2, scale: 1 }),
      weibullQuantile(0, { shape: 2, scale: 1 }),
    ]).toEqual([0, 0, Infinity, 0]);
  });

  it('puts half and nine in ten where a grower said', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 10, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        (earliest, more, still) => {
          const half = earliest + more;
          const ninety = half + still;
          const curve = firstFruitShape(earliest, half, ninety);
          expect(weibullCdf(half - earliest + 1, curve)).toBeCloseTo(0.5, 10);
          expect(weibullCdf(ninety - earliest + 1, curve)).toBeCloseTo(0.9, 10);
        },
      ),
    );
  });

  it('refuses seasons out of order', () => {
    expect(() => firstFruitShape(5, 4, 9)).toThrow(RangeError);
    expect(() => firstFruitShape(4, 7, 7)).toThrow(RangeError);
    expect(() => firstFruitShape(4, NaN, 7)).toThrow(RangeError);
  });
});

describe('seeds per fruit', () => {
  const meanOf = (table: Float64Array): number => table.reduce((total, p, i) => total + p * (i + 1), 0);

  it('meets the stated mean with chances that sum to 1, in the ratios of a Poisson', () => {
    fc.assert(
      fc.property(fc.integer({ min: 2, max: 100 }), fc.double({ min: 0.0001, max: 0.9999, noNaN: true }), (atMost, place) => {
        const mean = 1 + place * (atMost - 1);
        const table = seedsPerFruitTable(mean, atMost);
        expect(table).toHaveLength(atMost);
        expect(table.reduce((total, p) => total + p, 0)).toBeCloseTo(1, 12);
        expect(Math.abs(meanOf(table) / mean - 1)).toBeLessThan(1e-11);
        // p(k+1)/p(k) = λ/(k+1): the same λ wherever both chances are more than rounding.
        const rates = Array.from(table.slice(1), (p, i) => (table[i]! > 1e-200 && p > 1e-200 ? (p / table[i]!) * (i + 2) : NaN)).filter(
          (rate) => !Number.isNaN(rate),
        );
        for (const rate of rates) expect(rate / rates[0]!).toBeCloseTo(1, 8);
      }),
    );
  });

  it('is the zero-truncated Poisson when nothing is cut off above: λ/(1 − e^−λ) (Johnson, Kemp & Kotz, Univariate Discrete Distributions)', () => {
    const rate = 1.7;
    const table = seedsPerFruitTable(rate / -Math.expm1(-rate), 100);
    expect(table[0]).toBeCloseTo((rate * Math.exp(-rate)) / -Math.expm1(-rate), 12);
    expect(table[2]).toBeCloseTo((rate ** 3 / 6) * (Math.exp(-rate) / -Math.expm1(-rate)), 12);
  });

  it('gives one seed in every fruit for a mean of 1, even where a fruit holds no more', () => {
    expect([...seedsPerFruitTable(1, 1)]).toEqual([1]);
    expect([...seedsPerFruitTable(1, 3)]).toEqual([1, 0, 0]);
  });

  it('refuses means that no such fruit can have', () => {
    expect(() => seedsPerFruitTable(0.9, 10)).toThrow(RangeError);
    expect(() => seedsPerFruitTable(10, 10)).toThrow(RangeError);
    expect(() => seedsPerFruitTable(2, 1)).toThrow(RangeError);
    expect(() => seedsPerFruitTable(2, 2.5)).toThrow(RangeError);
    expect(() => seedsPerFruitTable(NaN, 10)).toThrow(RangeError);
  });
});

describe('arithmetic near zero', () => {
  it('agrees with the language’s own to 1 part in 1e14', () => {
    fc.assert(
      fc.property(fc.double({ min: -30, max: 1, noNaN: true }), fc.boolean(), (size, negative) => {
        const x = (negative ? -0.9 : 1) * 10 ** size;
        if (x > -1) expect(Math.abs(log1p(x) - Math.log1p(x))).toBeLessThanOrEqual(1e-14 * Math.abs(Math.log1p(x)));
        expect(Math.abs(expm1(x) - Math.expm1(x))).toBeLessThanOrEqual(1e-14 * Math.abs(Math.expm1(x)));
      }),
    );
    expect([log1p(0), expm1(0), log1p(-1), expm1(-Infinity), expm1(800)]).toEqual([0, 0, -Infinity, -1, Infinity]);
  });
});
