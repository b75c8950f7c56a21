import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { atLeast, betaBinomialPmf, binomialCdf, binomialPmf, plantsNeeded } from '../../src/statistics/binomial.ts';

const chance = fc.double({ min: 0.001, max: 0.999, noNaN: true });

/** P(X ≤ k) of n fair trials, by whole numbers. */
function fairCdf(k: number, n: number): number {
  let choices = 1n;
  let total = 0n;
  for (let i = 0; i <= k; i++) {
    total += choices;
    choices = (choices * BigInt(n - i)) / BigInt(i + 1);
  }
  return Number((total * 10n ** 18n) / 2n ** BigInt(n)) / 1e18;
}

describe('binomial', () => {
  it('counts fair trials exactly (whole-number arithmetic)', () => {
    for (const n of [1, 2, 10, 40, 100]) for (let k = 0; k < n; k++) expect(binomialCdf(k, n, 0.5)).toBeCloseTo(fairCdf(k, n), 13);
  });

  it('has chances that add up to its cumulative chance', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 300 }), fc.nat(), chance, (n, pick, p) => {
        const k = pick % (n + 1);
        let total = 0;
        for (let i = 0; i <= k; i++) total += binomialPmf(i, n, p);
        expect(binomialCdf(k, n, p)).toBeCloseTo(total, 12);
        expect(atLeast(k + 1, n, p) + binomialCdf(k, n, p)).toBeCloseTo(1, 12);
      }),
    );
  });

  it('is certain at p = 0 and 1, and nothing outside 0 … n', () => {
    expect([
      binomialPmf(0, 5, 0),
      binomialPmf(1, 5, 0),
      binomialPmf(5, 5, 1),
      binomialPmf(-1, 5, 0.5),
      binomialPmf(6, 5, 0.5),
      binomialPmf(1.5, 5, 0.5),
    ]).toEqual([1, 0, 1, 0, 0, 0]);
    expect([
      binomialPmf(0, 0, 0.3),
      binomialCdf(-1, 5, 0.5),
      binomialCdf(5, 5, 0.5),
      atLeast(0, 5, 0),
      atLeast(6, 5, 1),
      atLeast(2, 5, 0),
      atLeast(5, 5, 1),
    ]).toEqual([1, 0, 1, 1, 0, 0, 1]);
    expect(binomialCdf(2.9, 5, 0.5)).toBe(binomialCdf(2, 5, 0.5));
  });
});

describe('beta-binomial', () => {
  it('sums to 1 with mean n a/(a + b) (Skellam 1948)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 200 }),
        fc.double({ min: 0.05, max: 50, noNaN: true }),
        fc.double({ min: 0.05, max: 50, noNaN: true }),
        (n, a, b) => {
          const pmf = Array.from({ length: n + 1 }, (_, k) => betaBinomialPmf(k, n, a, b));
          expect(pmf.reduce((total, p) => total + p, 0)).toBeCloseTo(1, 11);
          expect(pmf.reduce((total, p, k) => total + p * k, 0) / n).toBeCloseTo(a / (a + b), 10);
        },
      ),
    );
  });

  it('turns into the binomial when the chance is known, and is nothing outside 0 … n', () => {
    // Its excess variance is n²p(1−p)/(a+b+1); at 1e9 that moves a chance by less than 1e-7.
    for (let k = 0; k <= 12; k++) expect(betaBinomialPmf(k, 12, 3e8, 7e8)).toBeCloseTo(binomialPmf(k, 12, 0.3), 6);
    expect([betaBinomialPmf(-1, 5, 1, 1), betaBinomialPmf(6, 5, 1, 1), betaBinomialPmf(0.5, 5, 1, 1)]).toEqual([0, 0, 0]);
  });
});

describe('plants needed', () => {
  it('is the smallest number that is enough', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.002, max: 0.99, noNaN: true }),
        fc.integer({ min: 1, max: 30 }),
        fc.double({ min: 0.05, max: 0.999, noNaN: true }),
        (q, r, P) => {
          const n = plantsNeeded(q, r, P);
          expect(atLeast(r, n, q)).toBeGreaterThanOrEqual(P - 1e-11);
          if (n > r) expect(atLeast(r, n - 1, q)).toBeLessThan(P);
        },
      ),
    );
  });

  it('counts a chance that is met exactly as met', () => {
    expect([plantsNeeded(0.5, 1, 0.5), plantsNeeded(0.5, 1, 0.75), plantsNeeded(0.25, 1, 0.4375), plantsNeeded(0.5, 1, 1 - 2 ** -20)]).toEqual([1, 2, 2, 20]);
  });

  it('has an answer at the ends', () => {
    expect([plantsNeeded(1, 7, 0.9), plantsNeeded(0, 1, 0.9), plantsNeeded(0.5, 1, 1), plantsNeeded(0.5, 1, 0), plantsNeeded(1, 3, 1)]).toEqual([
      7,
      Infinity,
      Infinity,
      0,
      3,
    ]);
  });

  it('refuses what is no share, no chance or no count', () => {
    expect(() => plantsNeeded(1.2, 1, 0.9)).toThrow(RangeError);
    expect(() => plantsNeeded(NaN, 1, 0.9)).toThrow(RangeError);
    expect(() => plantsNeeded(0.5, 0, 0.9)).toThrow(RangeError);
    expect(() => plantsNeeded(0.5, 1.5, 0.9)).toThrow(RangeError);
    expect(() => plantsNeeded(0.5, 1, 1.1)).toThrow(RangeError);
  });
});
