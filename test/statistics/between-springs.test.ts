import { describe, expect, it } from 'vitest';
import { betaPdf, betaQuantile } from '../../src/statistics/beta.ts';
import { learnShare, pooledLuck, type Lot } from '../../src/statistics/between-springs.ts';
import { betaBinomialPmf } from '../../src/statistics/binomial.ts';
import { rangeLike } from '../../src/statistics/range-like.ts';

const flat = () => 1;
const LUCK = { mean: 0.1, weight: 10 };
const lots = (...pairs: readonly (readonly [number, number])[]): Lot[] => pairs.map(([hits, of]) => ({ hits, of }));

describe('a share where springs are alike', () => {
  it.each([
    [3, 20, 0.5, 0.5],
    [0, 35, 1, 1],
    [1, 1, 1, 1],
    [940, 1200, 6, 2],
  ])('%i of %i under Beta(%d, %d) is the conjugate beta', (hits, of, a, b) => {
    const { mean, sd, low, high } = learnShare([{ hits, of }], (p) => betaPdf(p, a, b), null);
    const [after, against] = [a + hits, b + of - hits];
    const size = after + against;
    // The grid cuts a posterior into some 40 cells a standard deviation or finer: moments to 1e-4 of the deviation, quantiles to a cell's part.
    const exact = { mean: after / size, sd: Math.sqrt((after * against) / (size * size * (size + 1))) };
    expect(Math.abs(mean - exact.mean) / exact.sd).toBeLessThan(1e-3);
    expect(sd / exact.sd).toBeCloseTo(1, 2);
    for (const [found, u] of [
      [low, 0.1],
      [high, 0.9],
    ] as const)
      expect(Math.abs(found - betaQuantile(u, after, against)) / exact.sd).toBeLessThan(0.01);
  });

  it('says the same of lots put together or counted apart', () => {
    const together = learnShare(lots([12, 80]), flat, null);
    const apart = learnShare(lots([5, 30], [7, 50]), flat, null);
    expect(apart.mean).toBeCloseTo(together.mean, 10);
    expect(apart.sd).toBeCloseTo(together.sd, 10);
  });

  it('converts clusters of n flowers: 63 of 127 clusters of three are 20.4 % a flower (own count of a published table, as printed there)', () => {
    const { mean } = learnShare([{ hits: 63, of: 127, flowers: 3 }], flat, null);
    expect(mean).toBeGreaterThan(0.17);
    expect(Math.abs(mean - 0.204)).toBeLessThan(0.005);
  });

  it('takes the fertility of a hybrid parent out of its count', () => {
    const plain = learnShare([{ hits: 40, of: 400 }], flat, null);
    const half = learnShare([{ hits: 20, of: 400, times: 0.5 }], flat, null);
    expect(Math.abs(half.mean - plain.mean)).toBeLessThan(0.01);
    expect(half.sd).toBeGreaterThan(plain.sd);
  });
});

/**
 * Uniform prior of the mean, Beta(1, 9) of ρ; worked out with SciPy 1.17.1: betabinom.logpmf on 160 × 160 Gauss–Legendre nodes (mean × logit
 * of ρ), mixture of beta.cdf solved for the next spring. `cells`: our grids are coarser, so three decimals are asked for.
 */
const SCIPY: readonly (readonly [string, Lot[], { mean: number; sd: number; luck: number; low: number; high: number }])[] = [
  [
    'three springs, one of them bad',
    lots([30, 120], [4, 200], [21, 90]),
    { mean: 0.19207589537, sd: 0.08382679962, luck: 0.14640880275, low: 0.01874361471, high: 0.43095961666 },
  ],
  ['none of 25', lots([0, 25]), { mean: 0.08599388419, sd: 0.09405557118, luck: 0.13921833406, low: 7.8e-8, high: 0.25044504716 }],
  ['one of one', lots([1, 1]), { mean: 2 / 3, sd: Math.sqrt(1 / 18), luck: 0.1, low: 0.25949632191, high: 0.98461541638 }],
  [
    'three alike and one bad',
    lots([24, 120], [22, 110], [27, 130], [2, 140]),
    { mean: 0.1778612717, sd: 0.06746904898, luck: 0.12368625354, low: 0.02393243983, high: 0.38102059276 },
  ],
];

describe('a share that varies between springs', () => {
  it.each(SCIPY)('%s: as a general statistics library has it', (_, counted, expected) => {
    const learned = learnShare(counted, flat, LUCK);
    expect(learned.mean).toBeCloseTo(expected.mean, 3);
    expect(learned.sd).toBeCloseTo(expected.sd, 3);
    expect(Math.abs((learned.luck?.mean ?? NaN) - expected.luck)).toBeLessThan(0.002);
    const next = learned.nextSpring();
    expect(next.low).toBeCloseTo(expected.low, 2);
    expect(next.high).toBeCloseTo(expected.high, 2);
  });

  it('with ρ known and a prior of two values, is Bayes’ rule on the beta-binomial (Skellam 1948)', () => {
    const [rho, size] = [0.2, 4];
    const spike = (p: number): number => (Math.abs(p - 0.3) < 0.002 || Math.abs(p - 0.6) < 0.002 ? 1 : 0);
    const weight = (m: number): number => betaBinomialPmf(4, 10, m * size, (1 - m) * size) * betaBinomialPmf(9, 12, m * size, (1 - m) * size);
    const above = weight(0.6) / (weight(0.3) + weight(0.6));
    const { mean } = learnShare(lots([4, 10], [9, 12]), (p) => 0.01 * betaPdf(p, 1, 1) + 500 * spike(p), { mean: rho, weight: Infinity });
    // Spikes fall into few cells of the grid: their weight is only as even as that.
    expect(Math.abs(mean - (0.3 + 0.3 * above))).toBeLessThan(0.05);
  });

  it.each([0.02, 0.1, 0.3])('one spring, however many flowers, leaves √(ρ·m(1 − m)) at ρ = %d', (rho) => {
    const huge = learnShare(lots([250_000, 1_000_000]), flat, { mean: rho, weight: Infinity });
    const few = learnShare(lots([25, 100]), flat, { mean: rho, weight: Infinity });
    // The limit of ever more flowers: the spring's own rate is known to be ¼, and still m is only as sure as Beta(m/ρ …) makes it.
    const size = 1 / rho - 1;
    const means = Array.from({ length: 4000 }, (__, i) => (i + 0.5) / 4000);
    const weights = means.map((m) => betaPdf(0.25, m * size, (1 - m) * size));
    const total = weights.reduce((sum, one) => sum + one, 0);
    const middle = means.reduce((sum, m, i) => sum + (m * weights[i]!) / total, 0);
    const limit = Math.sqrt(means.reduce((sum, m, i) => sum + ((m - middle) ** 2 * weights[i]!) / total, 0));
    expect(huge.sd / limit).toBeCloseTo(1, 2);
    // To first order in ρ that is √(ρ·m(1 − m)); a flat prior on 0 … 1 takes some of it off where ρ is large.
    expect(Math.abs(limit / Math.sqrt(rho * 0.25 * 0.75) - 1)).toBeLessThan(1.5 * rho + 0.03);
    expect(few.sd).toBeGreaterThan(huge.sd);
    const springs = learnShare(lots(...Array.from({ length: 50 }, (): [number, number] => [5000, 20_000])), flat, { mean: rho, weight: Infinity });
    expect(springs.sd).toBeLessThan(0.35 * huge.sd);
  });

  it('one bad year widens what another spring may bring, and is not averaged away', () => {
    const good = learnShare(lots([24, 120], [22, 110], [27, 130]), flat, LUCK);
    const bad = learnShare(lots([24, 120], [22, 110], [27, 130], [2, 140]), flat, LUCK);
    const averaged = learnShare(lots([73, 360], [2, 140]), flat, null);
    expect(bad.sd).toBeGreaterThan(good.sd);
    expect(bad.sd).toBeGreaterThan(2 * averaged.sd);
    expect(bad.nextSpring().low).toBeLessThan(good.nextSpring().low);
    expect(bad.luck!.mean).toBeGreaterThan(2 * good.luck!.mean);
  });

  it('without counts gives the prior back', () => {
    const { mean, low, high, luck } = learnShare([], (p) => betaPdf(p, 3, 7), LUCK);
    expect(mean).toBeCloseTo(0.3, 3);
    expect(low).toBeCloseTo(betaQuantile(0.1, 3, 7), 2);
    expect(high).toBeCloseTo(betaQuantile(0.9, 3, 7), 2);
    expect(luck!.mean).toBeCloseTo(0.1, 2);
  });

  it('adds what several pairs say of ρ, as if all were one pair where they are alike', () => {
    const one = learnShare(lots([30, 120], [4, 200]), flat, LUCK);
    const other = learnShare(lots([60, 90], [40, 160]), flat, LUCK);
    const alone = pooledLuck([one], LUCK);
    const both = pooledLuck([one, other], LUCK);
    expect(alone.mean).toBeCloseTo(one.luck!.mean, 6);
    expect(both.mean).toBeGreaterThan(Math.max(alone.mean, pooledLuck([other], LUCK).mean));
    expect(both.sd / both.mean).toBeLessThan(alone.sd / alone.mean);
  });
});

describe('a range like a belief', () => {
  const share = { min: 0, max: 1 };
  it.each([
    [0.1, 0.2, 0.4],
    [0.5, 0.7, 0.85],
    [0.02, 0.02, 0.3],
  ])('finds the PERT range %d, %d, %d again from its mean and its 10 and 90 %% points', (low, likely, high) => {
    const [a, b] = [1 + (4 * (likely - low)) / (high - low), 1 + (4 * (high - likely)) / (high - low)];
    const at = (u: number): number => low + (high - low) * betaQuantile(u, a, b);
    const found = rangeLike({ mean: (low + 4 * likely + high) / 6, low: at(0.1), high: at(0.9) }, share);
    expect(found.low).toBeCloseTo(low, 6);
    expect(found.likely).toBeCloseTo(likely, 6);
    expect(found.high).toBeCloseTo(high, 6);
  });

  it('stays within bounds and in order, keeping mean and width against a bound', () => {
    for (const belief of [
      { mean: 0.02, low: 0.001, high: 0.05 },
      { mean: 0.97, low: 0.93, high: 0.998 },
    ]) {
      const { low, likely, high } = rangeLike(belief, share);
      expect(low).toBeGreaterThanOrEqual(0);
      expect(high).toBeLessThanOrEqual(1);
      expect(low).toBeLessThanOrEqual(likely);
      expect(likely).toBeLessThanOrEqual(high);
      expect((low + 4 * likely + high) / 6).toBeCloseTo(belief.mean, 3);
    }
    expect(rangeLike({ mean: 0.3, low: 0.3, high: 0.3 }, share)).toEqual({ low: 0.3, likely: 0.3, high: 0.3 });
  });
});
