import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pertMean, pertVariance } from '../../src/statistics/pert.ts';
import { evenRange, trueValue } from '../../src/statistics/tasted.ts';

const SWEET = { mean: 13, sd: 1.5, heritability: 0.4, repeatability: 0.6 };

/** Solves A·x = b by elimination with pivots: another road to the regression than the closed form. */
function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i] ?? 0]);
  const n = rows.length;
  for (let k = 0; k < n; k++) {
    const pivot = rows.findIndex((row, i) => i >= k && Math.abs(row[k]!) === Math.max(...rows.slice(k).map((each) => Math.abs(each[k]!))));
    [rows[k], rows[pivot]] = [rows[pivot]!, rows[k]!];
    for (let i = 0; i < n; i++) {
      if (i === k) continue;
      const factor = rows[i]![k]! / rows[k]![k]!;
      rows[i] = rows[i]!.map((value, j) => value - factor * rows[k]![j]!);
    }
  }
  return rows.map((row, i) => row[n]! / row[i]!);
}

describe('a true value from a tasted mean', () => {
  // By hand, Falconer & Mackay (1996) ch. 8: three seasons at h² = 0.4, t = 0.6 have the heritability 3·0.4/(1 + 2·0.6) = 6/11.
  it('is the worked example', () => {
    const { value, error, kept } = trueValue(15, 3, SWEET);
    expect(kept).toBeCloseTo(6 / 11, 12);
    expect(value).toBeCloseTo(13 + (2 * 6) / 11, 12);
    expect(error ** 2).toBeCloseTo((0.4 * 2.25 * 5) / 11, 12);
  });

  it('keeps the heritability of one season, and h²/t of endlessly many', () => {
    expect(trueValue(15, 1, SWEET).kept).toBe(0.4);
    expect(trueValue(15, 1e9, SWEET).kept).toBeCloseTo(0.4 / 0.6, 8);
  });

  it('is the regression on each season by itself: selection index with the whole matrix of variances', () => {
    const share = fc.integer({ min: 1, max: 99 }).map((n) => n / 100);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 8 }), share, share, fc.integer({ min: 1, max: 40 }), fc.integer({ min: -50, max: 50 }), (n, a, b, sd, off) => {
        const [heritability, repeatability] = [Math.min(a, b), Math.max(a, b)];
        const variance = sd ** 2;
        const seasons = Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_2, j) => (i === j ? 1 : repeatability) * variance));
        const withG = Array.from({ length: n }, () => heritability * variance);
        const weights = solve(seasons, withG);
        const index = weights.reduce((sum, weight) => sum + weight * off, 0);
        const left = heritability * variance - weights.reduce((sum, weight, i) => sum + weight * withG[i]!, 0);
        const found = trueValue(100 + off, n, { mean: 100, sd, heritability, repeatability });
        expect(found.value - 100).toBeCloseTo(index, 8);
        expect(found.error ** 2).toBeCloseTo(left, 6);
      }),
    );
  });

  it('takes a repeatability below the heritability as equal to it', () =>
    expect(trueValue(15, 3, { ...SWEET, repeatability: 0.1 })).toEqual(trueValue(15, 3, { ...SWEET, repeatability: 0.4 })));

  it('keeps all of what is all inherited, and nothing of what is not', () => {
    expect(trueValue(15, 1, { ...SWEET, heritability: 1 })).toEqual({ value: 15, error: 0, kept: 1 });
    expect(trueValue(15, 4, { ...SWEET, heritability: 0 })).toMatchObject({ value: 13, error: 0 });
  });

  it('needs a season', () => expect(() => trueValue(15, 0, SWEET)).toThrow(RangeError));
});

it('an even range has the mean and the spread it was made from', () => {
  const { low, likely, high } = evenRange(14.09, 0.64);
  expect(pertMean(low, likely, high)).toBeCloseTo(14.09, 12);
  expect(Math.sqrt(pertVariance(low, likely, high))).toBeCloseTo(0.64, 12);
});
