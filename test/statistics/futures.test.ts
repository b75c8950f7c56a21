import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { binomialPmf } from '../../src/statistics/binomial.ts';
import { clearlyDifferent, comparePaired, pairedDifference } from '../../src/statistics/compare.ts';
import { chanceGivenFacts } from '../../src/statistics/ignorance.ts';
import { wilson, Z95 } from '../../src/statistics/interval.ts';
import { normalCdf, normalQuantile } from '../../src/statistics/normal.ts';
import { quantileSorted } from '../../src/statistics/order.ts';

/** A number in [0, 1) for a run, from a fixed integer hash (Wang, T., 32-bit mix): no hidden randomness in a test. */
function uniform(index: number): number {
  let h = index >>> 0;
  h = (h ^ 61 ^ (h >>> 16)) >>> 0;
  h = Math.imul(h, 9) >>> 0;
  h = (h ^ (h >>> 4)) >>> 0;
  h = Math.imul(h, 0x27d4eb2d) >>> 0;
  return ((h ^ (h >>> 15)) >>> 0) / 2 ** 32;
}

/** Hits of R futures whose chance is p, by inversion of one uniform. */
function hitsOf(R: number, p: number, u: number): number {
  let left = u;
  for (let k = 0; k < R; k++) {
    left -= binomialPmf(k, R, p);
    if (left < 0) return k;
  }
  return R;
}

/** P(sample variance of 100 normal values < x times the true one): chi-square by its cube root, Wilson & Hilferty (1931) PNAS 17:684–688. */
function varianceRatioBelow(x: number): number {
  const small = 2 / (9 * 99);
  return normalCdf((Math.cbrt(x) - (1 - small)) / Math.sqrt(small));
}

/**
 * Chance that 100 sets of 100 futures that share one chance p seem to differ by `width` or more from their 10 to their 90 % point. Those points
 * lie 2·1.2816 standard deviations apart, give or take 9 % for 100 values (asymptotic variance of quantiles, Serfling 1980).
 */
function wideByChance(p: number, width: number): number {
  const noise = (p * (1 - p)) / 100;
  const steps = Array.from({ length: 99 }, (_, i) => 1 + 0.09 * normalQuantile((i + 1) / 100));
  const chances = steps.map((factor) => 1 - varianceRatioBelow(1 + (width / (2 * 1.2816 * factor)) ** 2 / noise));
  return chances.reduce((total, chance) => total + chance, 0) / steps.length;
}

describe('chance given the facts', () => {
  it('follows docs/model.md §2 step by step', () => {
    const [hits, R] = [[10, 40, 55, 70, 95], 100];
    const p = hits.map((count) => count / R);
    const mean = p.reduce((a, b) => a + b) / 5;
    const variance = p.reduce((total, one) => total + (one - mean) ** 2, 0) / 4;
    const between = variance - p.reduce((total, one) => total + (one * (1 - one)) / 99, 0) / 5;
    const shrunk = p.map((one) => mean + (one - mean) * Math.sqrt(between / variance));
    const range = chanceGivenFacts(hits, R);
    expect(range.mean).toBeCloseTo(0.54, 14);
    expect(range.low).toBeCloseTo(quantileSorted(shrunk, 0.1), 13);
    expect(range.high).toBeCloseTo(quantileSorted(shrunk, 0.9), 13);
    expect(chanceGivenFacts([95, 10, 70, 55, 40], R)).toEqual(range);
  });

  it('is a point when the sets differ by no more than their noise', () => {
    expect(chanceGivenFacts([48, 50, 52, 51, 49], 100)).toEqual({ mean: 0.5, low: 0.5, high: 0.5 });
    expect(chanceGivenFacts([100, 100], 100)).toEqual({ mean: 1, low: 1, high: 1 });
    expect(chanceGivenFacts([30], 100)).toEqual({ mean: 0.3, low: 0.3, high: 0.3 });
  });

  it('stays within the chances seen, around their mean', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 1, maxLength: 40 }), (hits) => {
        const { mean, low, high } = chanceGivenFacts(hits, 100);
        expect(low).toBeLessThanOrEqual(high);
        expect(low).toBeGreaterThanOrEqual(Math.min(...hits) / 100 - 1e-12);
        expect(high).toBeLessThanOrEqual(Math.max(...hits) / 100 + 1e-12);
        expect(mean).toBeCloseTo(hits.reduce((a, b) => a + b) / hits.length / 100, 12);
      }),
    );
  });

  it('with all facts known and 100 × 100 futures, is 0 for about half of all words and under 8 points for practically all (docs/model.md §2)', () => {
    const words = 400;
    for (const p of [0.2, 0.5, 0.8]) {
      const widths = Array.from({ length: words }, (_, word) => {
        const hits = Array.from({ length: 100 }, (_, set) => hitsOf(100, p, uniform(word * 100 + set + Math.round(p * 10) * 1_000_000)));
        const { low, high } = chanceGivenFacts(hits, 100);
        return high - low;
      });
      const share = (counts: (width: number) => boolean): number => widths.filter(counts).length / words;
      const error = (chance: number): number => Math.sqrt((chance * (1 - chance)) / words);
      expect(Math.abs(share((width) => width === 0) - varianceRatioBelow(1))).toBeLessThan(4 * error(varianceRatioBelow(1)));
      const wide = wideByChance(p, 0.08);
      expect(share((width) => width >= 0.08)).toBeLessThanOrEqual(wide + 4 * error(wide));
      expect(wide).toBeLessThan(0.01);
    }
  });

  it('finds a spread that is there: chances 0.1 … 0.9 in even steps', () => {
    const hits = Array.from({ length: 100 }, (_, set) => hitsOf(100, 0.1 + (0.8 * set) / 99, uniform(set + 77_000_000)));
    const { low, high } = chanceGivenFacts(hits, 100);
    // Each end rests on about the 20 sets within ±0.08 of it: √(0.15·0.85/100/20) = 0.008.
    expect(Math.abs(low - 0.18)).toBeLessThan(4 * 0.008);
    expect(Math.abs(high - 0.82)).toBeLessThan(4 * 0.008);
  });

  it('needs sets of facts, and two futures in each', () => {
    expect(() => chanceGivenFacts([], 100)).toThrow(RangeError);
    expect(() => chanceGivenFacts([1, 0], 1)).toThrow(RangeError);
  });
});

describe('two plans on the same futures', () => {
  it('counts the sooner, with no proven tree as later than any', () => {
    const a = [2035, 2040, 0, 2040, 0, 2036, 2033];
    const b = [2040, 2035, 2050, 2040, 0, 0, 0];
    const compared = comparePaired(a, b);
    expect(compared.aSooner).toEqual(wilson(3, 7));
    expect(compared.bSooner).toEqual(wilson(2, 7));
    expect(compared.tied).toEqual(wilson(2, 7));
    expect(compared.chanceDifference).toEqual(pairedDifference(2, 1, 7));
    expect(compared.chanceDifference.value).toBeCloseTo(1 / 7, 15);
    expect(comparePaired(Uint16Array.from(a), Uint16Array.from(b))).toEqual(compared);
    expect(() => comparePaired([1], [1, 2])).toThrow(RangeError);
    expect(comparePaired([], []).chanceDifference).toEqual({ value: 0, low: -1, high: 1 });
  });

  it('says the same of b against a, turned round', () => {
    const year = fc.constantFrom(0, 2031, 2032, 2033);
    fc.assert(
      fc.property(fc.array(fc.tuple(year, year), { minLength: 1, maxLength: 80 }), (pairs) => {
        const there = comparePaired(
          pairs.map(([a]) => a),
          pairs.map(([, b]) => b),
        );
        const back = comparePaired(
          pairs.map(([, b]) => b),
          pairs.map(([a]) => a),
        );
        expect(there.aSooner).toEqual(back.bSooner);
        expect(there.tied).toEqual(back.tied);
        expect(there.chanceDifference.low).toBeCloseTo(-back.chanceDifference.high, 12);
        const chances = pairs.filter(([a]) => a > 0).length - pairs.filter(([, b]) => b > 0).length;
        expect(there.chanceDifference.value).toBeCloseTo(chances / pairs.length, 12);
        expect(there.chanceDifference.low).toBeLessThanOrEqual(there.chanceDifference.value);
        expect(there.chanceDifference.high).toBeGreaterThanOrEqual(there.chanceDifference.value);
        expect(there.aSooner.value + there.bSooner.value + there.tied.value).toBeCloseTo(1, 12);
      }),
    );
  });

  it('covers the true difference in at least 93 of 100 cases even when few futures disagree (Bonett & Price 2012 aim at 95)', () => {
    // Exact coverage: sum over how many disagree, and how many of those are for a.
    for (const [onlyA, onlyB, of] of [
      [0.02, 0.01, 100],
      [0.1, 0.05, 100],
      [0.001, 0.001, 1000],
      [0.3, 0.2, 50],
    ] as const) {
      const disagree = onlyA + onlyB;
      let covered = 0;
      for (let m = 0; m <= of; m++)
        for (let k = 0; k <= m; k++) {
          const { low, high } = pairedDifference(k, m - k, of);
          if (low <= onlyA - onlyB && onlyA - onlyB <= high) covered += binomialPmf(m, of, disagree) * binomialPmf(k, m, onlyA / disagree);
        }
      expect(covered).toBeGreaterThan(0.93);
    }
  });

  it('is the normal interval of the per-future differences when many disagree', () => {
    const [onlyA, onlyB, of] = [3000, 2000, 10_000];
    const { value, low, high } = pairedDifference(onlyA, onlyB, of);
    const half = Z95 * Math.sqrt((0.5 - value * value) / of);
    // One pair added each way and two futures move the bounds by less than 2/of.
    expect(Math.abs(low - (value - half))).toBeLessThan(2 / of);
    expect(Math.abs(high - (value + half))).toBeLessThan(2 / of);
  });

  it('differ clearly when 0 is outside', () => {
    expect(clearlyDifferent({ value: 0.1, low: 0.02, high: 0.18 })).toBe(true);
    expect(clearlyDifferent({ value: -0.1, low: -0.18, high: -0.02 })).toBe(true);
    expect(clearlyDifferent({ value: 0.1, low: -0.02, high: 0.22 })).toBe(false);
    expect(clearlyDifferent({ value: 0, low: 0, high: 0 })).toBe(false);
  });
});
