import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { betaFrom, binomialInverse, hypergeometricInverse, lognormalFrom, normalCdfFast, normalFrom, springRate } from '../../src/random/draws.ts';
import { rootOf, Stream } from '../../src/random/stream.ts';
import { betaCdf } from '../../src/statistics/beta.ts';
import { binomialPmf } from '../../src/statistics/binomial.ts';
import { normalCdf, normalQuantile } from '../../src/statistics/normal.ts';
import { count, expectMean, expectShare, expectVariance } from '../engine/agreement.ts';

const run = { seed: 5, numRuns: 3000 };
const chance = fc.double({ min: 0, max: 1, noNaN: true });
const inside = fc.integer({ min: 0, max: 2 ** 32 - 1 }).map((i) => (i + 0.5) / 2 ** 32);

/** P(X ≤ k) by adding up, from the nearer end. */
function below(k: number, n: number, p: number): number {
  let sum = 0;
  for (let i = 0; i <= k; i += 1) sum += binomialPmf(i, n, p);
  return sum;
}

describe('binomial by inversion of one uniform', () => {
  it('is the smallest k with P(X ≤ k) ≥ u, against the added probabilities', () => {
    fc.assert(
      fc.property(inside, fc.integer({ min: 0, max: 300 }), chance, (u, n, p) => {
        const k = binomialInverse(u, n, p);
        expect(Number.isInteger(k) && k >= 0 && k <= n).toBe(true);
        // Mirrored for p > ½, so that the smaller share is added up: there k is the largest with P(X ≥ k) ≥ 1 − u, the same but for ties.
        expect(below(k, n, p)).toBeGreaterThanOrEqual(u - 1e-9);
        if (k > 0) expect(below(k - 1, n, p)).toBeLessThanOrEqual(u + 1e-9);
      }),
      run,
    );
  });

  it('also for many trials: within its own step of the distribution function', () => {
    const large = fc.constantFrom(1000, 5000, 20_000, 100_000, 1_000_000);
    fc.assert(
      fc.property(inside, large, fc.oneof(chance, fc.double({ min: 0, max: 0.01, noNaN: true })), (u, n, p) => {
        const k = binomialInverse(u, n, p);
        const cdf = (x: number) => (x < 0 ? 0 : x >= n ? 1 : betaCdf(1 - p, n - x, x + 1));
        expect(cdf(k)).toBeGreaterThanOrEqual(u - 1e-7);
        expect(cdf(k - 1)).toBeLessThanOrEqual(u + 1e-7);
      }),
      { seed: 6, numRuns: 600 },
    );
  });

  it('moves with u, with n and with p, never against them', () => {
    const sizes = fc.oneof(fc.integer({ min: 0, max: 400 }), fc.integer({ min: 400, max: 100_000 }));
    fc.assert(
      fc.property(inside, inside, sizes, chance, (u, v, n, p) => {
        expect(binomialInverse(Math.max(u, v), n, p)).toBeGreaterThanOrEqual(binomialInverse(Math.min(u, v), n, p));
      }),
      run,
    );
    fc.assert(
      fc.property(inside, sizes, fc.integer({ min: 1, max: 50 }), chance, (u, n, more, p) => {
        expect(binomialInverse(u, n + more, p)).toBeGreaterThanOrEqual(binomialInverse(u, n, p));
      }),
      run,
    );
    fc.assert(
      fc.property(inside, sizes, chance, chance, (u, n, p, q) => {
        expect(binomialInverse(u, n, Math.max(p, q))).toBeGreaterThanOrEqual(binomialInverse(u, n, Math.min(p, q)));
      }),
      run,
    );
  });

  it('ends', () => {
    expect([
      binomialInverse(0.5, 0, 0.5),
      binomialInverse(0.5, 9, 0),
      binomialInverse(0.5, 9, 1),
      binomialInverse(0.5, 9, 1.2),
      binomialInverse(0.5, 9, -1),
    ]).toEqual([0, 0, 9, 9, 0]);
    expect(binomialInverse(1 - 2 ** -33, 1_000_000, 1e-9)).toBeLessThan(5);
    expect(binomialInverse(2 ** -33, 1_000_000, 1 - 1e-9)).toBeGreaterThan(999_995);
  });

  it('has the mean and variance of a binomial', () => {
    const s = new Stream(rootOf('binomial')).future(1, 1).key(1);
    for (const [n, p] of [
      [20, 0.3],
      [500, 0.97],
      [50_000, 0.4],
    ] as const) {
      const values = Array.from({ length: 20_000 }, () => binomialInverse(s.uniform(), n, p));
      expectMean(values, n * p);
      expectVariance(values, n * p * (1 - p));
    }
  });
});

describe('hypergeometric by inversion', () => {
  /** ln of n over k, added up. */
  const lnChoose = (n: number, k: number) => Array.from({ length: k }, (_, i) => Math.log((n - i) / (i + 1))).reduce((a, b) => a + b, 0);
  it('is the smallest k whose added probability reaches u', () => {
    const small = fc.integer({ min: 0, max: 64 });
    fc.assert(
      fc.property(inside, small, small, fc.double({ min: 0, max: 1, noNaN: true }), (u, marked, others, part) => {
        const draws = Math.round(part * (marked + others));
        const k = hypergeometricInverse(u, marked, others, draws);
        const low = Math.max(0, draws - others);
        expect(k >= low && k <= Math.min(draws, marked)).toBe(true);
        const pmf = (i: number) => Math.exp(lnChoose(marked, i) + lnChoose(others, draws - i) - lnChoose(marked + others, draws));
        let before = 0;
        for (let i = low; i < k; i += 1) before += pmf(i);
        expect(before).toBeLessThanOrEqual(u + 1e-9);
        expect(before + pmf(k)).toBeGreaterThanOrEqual(u - 1e-9);
      }),
      run,
    );
  });

  it('has its mean and variance: n·K/N, n·K/N·(1 − K/N)·(N − n)/(N − 1)', () => {
    const s = new Stream(rootOf('hypergeometric')).future(1, 1).key(1);
    for (const [marked, others, draws] of [
      [44, 20, 32],
      [3000, 7000, 500],
    ] as const) {
      const values = Array.from({ length: 20_000 }, () => hypergeometricInverse(s.uniform(), marked, others, draws));
      const [N, share] = [marked + others, marked / (marked + others)];
      expectMean(values, draws * share);
      expectVariance(values, (draws * share * (1 - share) * (N - draws)) / (N - 1));
    }
  });
});

describe('normal and lognormal', () => {
  it('is the quantile of the uniform, to one part in ten million (Wichura 1988: PPND7)', () => {
    fc.assert(
      fc.property(fc.oneof(inside, fc.double({ min: 1e-12, max: 1e-3, noNaN: true })), (u) => {
        expect(Math.abs(normalFrom(u) - normalQuantile(u))).toBeLessThanOrEqual(1e-6 * Math.max(1, Math.abs(normalQuantile(u))));
        expect(normalFrom(1 - u)).toBeCloseTo(-normalFrom(u), 4);
      }),
      run,
    );
    expect(normalFrom(0.5)).toBe(0);
  });

  it('the fast distribution function is right to 10⁻⁷ (Abramowitz & Stegun 1964, 26.2.17)', () => {
    for (let z = -8; z <= 8; z += 0.01) expect(Math.abs(normalCdfFast(z) - normalCdf(z))).toBeLessThan(1e-7);
  });

  it('lognormal has median 1 and the stated coefficient of variation: variance = cv²·mean², mean √(1 + cv²)', () => {
    expect(lognormalFrom(0.5, 0.4)).toBe(1);
    expect(lognormalFrom(0.9, 0)).toBe(1);
    const s = new Stream(rootOf('lognormal')).future(1, 1).key(1);
    const values = Array.from({ length: 100_000 }, () => lognormalFrom(s.uniform(), 0.4));
    expectMean(values, Math.sqrt(1.16));
    expectVariance(values, 0.16 * 1.16);
  });
});

describe('beta', () => {
  for (const [a, b] of [
    [0.5, 0.5],
    [2.142857, 3.857143],
    [7.5, 40.5],
    [0.05, 1.2],
    [300, 2],
  ] as const)
    it(`Beta(${String(a)}, ${String(b)}): mean, variance, and shares below its own quantiles`, () => {
      const s = new Stream(rootOf('beta')).future(1, 1).key(1);
      const values = Array.from({ length: 60_000 }, () => betaFrom(s, a, b));
      expectMean(values, a / (a + b));
      expectVariance(values, (a * b) / ((a + b) ** 2 * (a + b + 1)));
      for (const x of [0.02, 0.1, 0.3, 0.5, 0.9, 0.99])
        expectShare(
          count(values, (value) => value <= x),
          values.length,
          betaCdf(x, a, b),
          `below ${String(x)}`,
        );
    });

  it('of tiny shapes is one end or the other', () => {
    const s = new Stream(rootOf('tiny')).future(1, 1).key(1);
    const values = Array.from({ length: 5000 }, () => betaFrom(s, 1e-6, 3e-6));
    expect(values.every((value) => value >= 0 && value <= 1)).toBe(true);
    expectMean(values, 0.25);
  });

  it('a spring’s rate has the stated mean and intraclass correlation: variance ρ·m·(1 − m)', () => {
    const s = new Stream(rootOf('spring')).future(1, 1).key(1);
    for (const [m, rho] of [
      [0.3, 0.1],
      [0.02, 0.1],
      [0.9, 0.6],
    ] as const) {
      const values = Array.from({ length: 60_000 }, () => springRate(s, m, rho));
      expectMean(values, m);
      expectVariance(values, rho * m * (1 - m));
    }
    expect([springRate(s, 0.4, 0), springRate(s, 0, 0.3), springRate(s, 1, 0.3), springRate(s, 1.4, 0), springRate(s, -1, 0.2)]).toEqual([0.4, 0, 1, 1, 0]);
  });
});
