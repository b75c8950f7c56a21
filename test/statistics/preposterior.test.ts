import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rootOf, Stream } from '../../src/random/stream.ts';
import { betaQuantile } from '../../src/statistics/beta.ts';
import { atLeast, betaBinomialPmf } from '../../src/statistics/binomial.ts';
import { errorOfMean, mean } from '../engine/agreement.ts';
import { exactWorth, perfectOver, perfectWorth, trialSays, trialWorth, type TrialFutures } from '../../src/statistics/preposterior.ts';

/** Chance x of success from Beta(a, b): leave it and get c, or do it and get x; n trials first. **Source:** Raiffa & Schlaifer (1961), closed by conjugacy. */
const closed = (n: number, a: number, b: number, c: number): number =>
  Array.from({ length: n + 1 }, (_, t) => betaBinomialPmf(t, n, a, b) * Math.max((a + t) / (a + b + n), c)).reduce((sum, part) => sum + part, 0) -
  Math.max(a / (a + b), c);

/** Futures with x at the middles of equally likely parts of Beta(a, b). */
const even = (size: number, a: number, b: number, c: number): TrialFutures => {
  const x = Float64Array.from({ length: size }, (_, i) => betaQuantile((i + 0.5) / size, a, b));
  return { outcomes: [new Float64Array(size).fill(c), x], arms: [x] };
};

/** Futures with x drawn, and what is got drawn as yes or no on top. */
const drawn = (size: number, a: number, b: number, c: number, word: string): TrialFutures => {
  const stream = new Stream(rootOf(word));
  const x = new Float64Array(size);
  const [leave, act] = [new Uint8Array(size), new Uint8Array(size)];
  for (let r = 0; r < size; r += 1) {
    stream.future(1, r).key(1);
    x[r] = betaQuantile(stream.uniform(), a, b);
    leave[r] = Number(stream.uniform() < c);
    act[r] = Number(stream.uniform() < (x[r] ?? 0));
  }
  return { outcomes: [leave, act], arms: [x] };
};

/** A 95 % half-width is 1.96 standard errors. */
const fourErrors = ({ low, high }: { low: number; high: number }) => (4 / 1.96) * ((high - low) / 2);

describe('a decision on one share with a Beta prior, closed by conjugacy', () => {
  it('by hand: a flat prior and ½ for certain are worth 1/12 after one trial or two, and 1/8 at most', () => {
    expect(closed(1, 1, 1, 0.5)).toBeCloseTo(1 / 12, 14);
    expect(closed(2, 1, 1, 0.5)).toBeCloseTo(1 / 12, 14);
    // The midpoint rule over 2,000 parts of polynomials of degree 3 whose second derivative is at most 24 each.
    const bound = (3 * 24) / 24 / 2000 ** 2;
    expect(Math.abs(exactWorth(even(2000, 1, 1, 0.5), 1) - 1 / 12)).toBeLessThan(bound);
    expect(Math.abs(exactWorth(even(2000, 1, 1, 0.5), 2) - 1 / 12)).toBeLessThan(bound);
    expect(Math.abs(perfectOver(even(2000, 1, 1, 0.5)) - 1 / 8)).toBeLessThan(bound);
  });

  it.each([5, 10, 20])('exactly, for a flat prior and %i trials, to the error of the midpoint rule', (n) => {
    const size = 2000;
    // |second derivative| of C(n, t) xᵗ(1 − x)ⁿ⁻ᵗ(x − c) is at most 4n² + 4n (differences of the Bernstein basis), over n + 1 results.
    const bound = ((n + 1) * (4 * n * n + 4 * n)) / 24 / size ** 2;
    for (const c of [0.3, 0.5, 0.62]) expect(Math.abs(exactWorth(even(size, 1, 1, c), n) - closed(n, 1, 1, c))).toBeLessThan(bound);
  });

  it.each([
    [4, 2, 3, 0.45],
    [10, 2, 3, 0.4],
    [20, 5, 5, 0.55],
  ])('within four errors, from 20,000 drawn futures that say only yes or no: %i trials, Beta(%d, %d), %d for certain', (n, a, b, c) => {
    const worth = trialWorth(drawn(20_000, a, b, c, 'trial'), n);
    expect(Math.abs(worth.value - closed(n, a, b, c))).toBeLessThan(fourErrors(worth));
    // The interval is no wider than the errors of plain shares would make it, so the check above can fail.
    expect(fourErrors(worth)).toBeLessThan(4 * Math.sqrt(1 / 10_000));
  });

  it('knowing the share itself: the mean of the better one, within four errors', () => {
    const [a, b, c] = [2, 3, 0.4];
    const better = even(20_000, a, b, c).arms[0].reduce((sum, x) => sum + Math.max(x, c), 0) / 20_000;
    const worth = perfectWorth(drawn(20_000, a, b, c, 'perfect'));
    expect(Math.abs(worth.value - (better - Math.max(a / (a + b), c)))).toBeLessThan(fourErrors(worth));
    expect(worth.low).toBeGreaterThan(0);
  });

  it('another arm that says nothing adds nothing', () => {
    const one = even(500, 2, 3, 0.4);
    const two: TrialFutures = { ...one, arms: [one.arms[0], new Float64Array(500).fill(0.3)] };
    expect(exactWorth(two, 8)).toBeCloseTo(exactWorth(one, 8), 12);
    expect(trialSays(two, 3).results.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 12);
  });
});

describe('any decisions, any arms, where the futures are all there is', () => {
  const share = fc.double({ min: 0, max: 1, noNaN: true });
  const futures = fc.integer({ min: 1, max: 12 }).chain((size) => {
    const list = fc.array(share, { minLength: size, maxLength: size }).map((values) => Float64Array.from(values));
    return fc.record({ outcomes: fc.array(list, { minLength: 1, maxLength: 3 }), arms: fc.tuple(list, list) });
  });

  it('never less than nothing, never more than knowing the future, and never less with more trees (Blackwell 1953)', () => {
    fc.assert(
      fc.property(futures, (one) => {
        let before = 0;
        for (let n = 0; n <= 6; n += 1) {
          const worth = exactWorth(one, n);
          expect(worth).toBeGreaterThanOrEqual(before - 1e-12);
          before = worth;
        }
        expect(before).toBeLessThanOrEqual(perfectOver(one) + 1e-12);
      }),
    );
  });

  it('says with which chance each result comes and what is then done: in each future they sum to one', () => {
    fc.assert(
      fc.property(futures, fc.integer({ min: 0, max: 5 }), (one, n) => {
        const { results, led } = trialSays(one, n);
        expect(results).toHaveLength((n + 1) ** 2);
        one.arms[0].forEach((_, r) => expect(led.reduce((sum, chances) => sum + chances[r]!, 0)).toBeCloseTo(1, 10));
        const reached = led.reduce((sum, chances, d) => sum + chances.reduce((part, chance, r) => part + chance * one.outcomes[d]![r]!, 0), 0);
        const now = Math.max(...one.outcomes.map((outcome) => outcome.reduce((sum, value) => sum + value, 0)));
        expect((reached - now) / one.arms[0].length).toBeCloseTo(exactWorth(one, n), 10);
      }),
    );
  });
});

describe('luck is not taken for knowledge', () => {
  /** Three coins and two arms that have nothing to do with them. */
  const nothing = (word: string, size: number): TrialFutures => {
    const stream = new Stream(rootOf(word));
    const drawn = (key: number) =>
      Float64Array.from({ length: size }, (_, r) => {
        stream.future(1, r).key(key);
        return stream.uniform();
      });
    const coin = (key: number) => Uint8Array.from(drawn(key), (u) => Number(u < 0.5));
    return { outcomes: [coin(1), coin(2), coin(3)], arms: [drawn(4), drawn(5)] };
  };
  const one = nothing('luck', 2000);

  it('decisions that do not hang on the arms: choosing and valuing on the same futures sees worth, on different ones it does not', () => {
    const many = Array.from({ length: 20 }, (_, i) => nothing(`luck ${String(i)}`, 300));
    const naive = many.map((futures) => exactWorth(futures, 6));
    const honest = many.map((futures) => trialWorth(futures, 6).value);
    expect(mean(naive)).toBeGreaterThan(4 * errorOfMean(naive));
    expect(mean(honest)).toBeLessThan(4 * errorOfMean(honest));
  });

  it.each(['trial', 'knowing'] as const)('no more intervals leave out nothing than 1 in 40 may: %s', (what) => {
    const many = Array.from({ length: 400 }, (_, i) => nothing(`interval ${String(i)}`, 300));
    const wrong = many.filter((futures) => (what === 'trial' ? trialWorth(futures, 5) : perfectWorth(futures)).low > 0).length;
    expect(atLeast(wrong, many.length, 0.025)).toBeGreaterThan(3.167e-5);
  });

  it('decisions that come to the same are worth nothing to tell apart, with a width all the same', () => {
    const same: TrialFutures = { ...one, outcomes: [one.outcomes[0]!, one.outcomes[0]!] };
    const worth = trialWorth(same, 5);
    expect(worth.value).toBe(0);
    expect(worth.low).toBeLessThan(0);
    expect(worth.high).toBeGreaterThan(0);
  });

  it('what waiting costs counts against it, whatever the trial says', () => {
    const half = one.outcomes.map((outcome) => Uint8Array.from(outcome as Uint8Array, (value, r) => (r % 2 === 0 ? value : 0)));
    const worth = trialWorth({ ...one, outcomes: half, without: one.outcomes }, 5);
    expect(worth.value + 0.25).toBeLessThan(fourErrors(worth));
    expect(worth.high).toBeLessThan(0);
  });

  it('wants the same futures everywhere', () => {
    expect(() => trialWorth({ ...one, outcomes: [new Uint8Array(3)] }, 2)).toThrow(RangeError);
  });
});
