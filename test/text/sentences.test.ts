import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Interval, Spread } from '../../src/results/outlook.ts';
import { wilson } from '../../src/statistics/interval.ts';
import { countError, handCount, howOften, inTenBeside, planParagraph, planSentences, type SaidPlan } from '../../src/text/sentences.ts';

const RUNS = 4000;
const spread = (p50: number, width = 0): Spread => ({ mean: p50, p10: p50 - width / 2, p50, p90: p50 + width / 2 });

/** A plan whose chance rises by equal steps from 2040 on to the given share in 2050. */
function plan(share: number, runs = RUNS, more: Partial<SaidPlan> = {}): SaidPlan {
  const hits = Math.round(share * runs);
  const chanceByYear = Array.from({ length: 21 }, (_, y) => ({ year: 2030 + y, ...wilson(Math.round((hits * Math.max(0, y - 9)) / 11), runs) }));
  return {
    name: 'Wide cross',
    runs,
    chance: wilson(hits, runs),
    chanceByYear,
    guesses: null,
    trulyGood: null,
    byRule: [],
    byFact: [],
    seedlings: spread(154, 20),
    busiestHours: spread(46, 10),
    ...more,
  };
}

const plain = (words: string) => words.replaceAll('\u00a0', ' ');
const opening = (share: number, runs = RUNS) => plain(planSentences(plan(share, runs), 2050).chance);

/** The chances that wording allows: what a reader would take it to mean, give or take three quarters of a tenth. */
function meant(chance: Interval): { low: number; high: number } {
  const often = howOften(chance);
  if (often.kind === 'hardly') return { low: 0, high: 0.025 };
  if (often.kind === 'nearly') return { low: 0.975, high: 1 };
  if (often.kind !== 'tenths') return { low: 0, high: 1 };
  const [from = NaN, to = from] = [...often.words.matchAll(/\d+/g)].map(([digits]) => Number(digits) / 10);
  if (often.words.startsWith('fewer')) return { low: 0, high: from };
  if (often.words.startsWith('more')) return { low: from, high: 1 };
  return { low: from - 0.075, high: to + 0.075 };
}

describe('how often, in words', () => {
  it('never says more than the interval allows: whatever the futures, the words hold for all of it', () => {
    const counts = fc.integer({ min: 1, max: 20_000 }).chain((runs) => fc.tuple(fc.integer({ min: 0, max: runs }), fc.constant(runs)));
    fc.assert(
      fc.property(counts, ([hits, runs]) => {
        const chance = wilson(hits, runs);
        const { low, high } = meant(chance);
        expect(low).toBeLessThanOrEqual(chance.low + 1e-12);
        expect(high).toBeGreaterThanOrEqual(chance.high - 1e-12);
      }),
      { numRuns: 2000 },
    );
  });

  it('names one tenth where the futures are enough, two or more where they are not', () => {
    expect(opening(0.6)).toMatch(/^Wide cross: 6 times in 10 you have a proven tree by 2050/);
    expect(opening(0.1)).toMatch(/: 1 time in 10 /);
    expect(opening(0.6, 100)).toMatch(/: 5 to 7 times in 10 /);
    expect(opening(0.65, 1000)).toMatch(/: 6 or 7 times in 10 /);
  });

  it('has words for the ends', () => {
    expect(opening(0)).toBe('Wide cross: you hardly ever have a proven tree by 2050.');
    expect(opening(0.035)).toMatch(/: fewer than 1 time in 10 /);
    expect(opening(0.965)).toMatch(/: more than 9 times in 10 /);
    expect(opening(0.99)).toMatch(/: in nearly every future you have /);
    expect(opening(0.5, 2)).toBe('Wide cross: too few futures yet to say how often you have a proven tree by 2050.');
    expect(opening(0, 0)).toBe('Wide cross: too few futures yet to say how often you have a proven tree by 2050.');
  });

  it('words alike what stands side by side and cannot be told apart', () => {
    expect([wilson(846, 1000), wilson(854, 1000)].map(inTenBeside).map(plain)).toEqual(['8 or 9 in 10', '8 or 9 in 10']);
  });
});

describe('the year by which half are there', () => {
  it('is named with the years that the futures leave open', () => {
    // Shares after six, seven and eight years: 0.85·6/11 = 0.464, 0.541, 0.618. Standard error from 4,000 futures 0.008, from 200 0.035.
    expect(opening(0.85)).toMatch(/; half of all futures get there by 2046\.$/);
    expect(opening(0.85, 200)).toMatch(/; half of all futures get there between 2045 and 2047\.$/);
  });

  it('is that of the successes where fewer than half get there', () => {
    // y/11 = ½ at y = 5.5: the sixth year.
    expect(opening(0.3)).toMatch(/; when it works, half of the time by 2045\.$/);
  });

  it('is left out where nothing can be said', () => {
    expect(opening(0.5)).toMatch(/ by 2050(; when it works, half of the time by 2045)?\.$/);
    expect(opening(0.2, 10)).not.toMatch(/half/);
  });
});

describe('counts', () => {
  it('are rounded to what a hand can count', () => {
    expect([0, 0.3, 7, 46, 67, 154, 1234].map((n) => handCount(n))).toEqual([0, 0, 7, 45, 65, 150, 1250]);
  });

  it('are no finer than they are known', () => {
    expect([3, 8, 30, 70].map((error) => handCount(154, error))).toEqual([150, 150, 150, 200]);
    fc.assert(
      fc.property(fc.double({ min: 0, max: 5000, noNaN: true }), fc.double({ min: 0, max: 1000, noNaN: true }), (n, error) => {
        const count = handCount(n, error);
        // Off by half a step, and a step is at most five times the error or the hand's own step.
        expect(Math.abs(count - n)).toBeLessThanOrEqual(Math.max(2.5 * error, n < 12 ? 0.5 : n < 100 ? 2.5 : n < 1000 ? 5 : 25) + 1e-9);
      }),
    );
  });

  it('know their error from the spread: that of a median of n normal values, 1.2533·σ/√n (Kenney & Keeping 1962)', () => {
    // 10 and 90 % of a normal distribution with σ = 10 around 100.
    const normal = { mean: 100, p50: 100, p10: 100 - 12.8155, p90: 100 + 12.8155 };
    expect(countError(normal, 400)).toBeCloseTo((1.96 * 1.2533 * 10) / 20, 2);
    expect(countError(normal, 0)).toBe(Infinity);
  });

  it('stand in a sentence, in words where there is nothing to count', () => {
    expect(planSentences(plan(0.5), 2050).effort).toBe('Expect to raise about 150 seedlings and to need about 46 hours in the busiest year.');
    const work = (seedlings: Spread, busiestHours: Spread) => planSentences(plan(0.5, RUNS, { seedlings, busiestHours }), 2050).effort;
    expect(planSentences(plan(0.5, 10), 2050).effort).toBe('');
    expect(work(spread(0), spread(0))).toBe('Expect to raise no seedlings.');
    expect(work(spread(0.3), spread(1))).toBe('Expect to raise hardly any seedlings and to need about 1 hour in the busiest year.');
  });
});

describe('trust and guesses', () => {
  const trust = (trulyGood: Interval | null) => planSentences(plan(0.5, RUNS, { trulyGood }), 2050).trust;
  const guesses = (low: number, high: number) => plain(planSentences(plan(0.5, RUNS, { guesses: { low, high } }), 2050).guesses);

  it('says how many of ten proven trees truly are', () => {
    expect(trust(wilson(3080, 4000))).toBe('Of ten trees you would call proven, about eight truly are.');
    expect(trust(wilson(75, 100))).toBe('Of ten trees you would call proven, seven or eight truly are.');
    expect(trust(wilson(400, 4000))).toBe('Of ten trees you would call proven, about one truly is.');
    expect(trust(wilson(3999, 4000))).toBe('Of ten trees you would call proven, nearly all truly are.');
    expect(trust(wilson(2, 5))).toBe('Too few trees were proven to say how many truly are as good as they looked.');
    expect(trust(null)).toBe('');
  });

  it('says what the guesses allow', () => {
    expect(guesses(0.24, 0.83)).toBe('If your guesses are off: 2 to 8 in 10.');
    expect(guesses(0.6, 0.62)).toBe('If your guesses are off: still 6 in 10.');
    expect(guesses(0, 0.3)).toBe('If your guesses are off: fewer than 1 to 3 in 10.');
    expect(guesses(0.4, 1)).toBe('If your guesses are off: 4 to nearly 10 in 10.');
    expect(guesses(0, 0.01)).toBe('If your guesses are off: still hardly ever.');
    expect(guesses(0.98, 1)).toBe('If your guesses are off: still nearly always.');
  });
});

describe('what the answer leans on', () => {
  const part = (rule: string, hits: number, of: number) => ({ trait: 'red', rule, runs: of, chance: wilson(hits, of) });

  it('is named where the alternatives are surely apart, and not where they are not', () => {
    const leans = (byRule: SaidPlan['byRule']) => planSentences(plan(0.5, RUNS, { byRule }), 2050).leans.map(plain);
    expect(leans([part('one copy', 1200, 2000), part('two copies', 600, 2000)])).toEqual(['If “one copy”: 6 in 10; if “two copies”: 3 in 10.']);
    expect(leans([part('one copy', 30, 50), part('two copies', 22, 50)])).toEqual([]);
    expect(leans([part('one copy', 11_000, 20_000), part('two copies', 10_000, 20_000)])).toEqual([]);
  });

  it('may be a yes or no that is not known', () => {
    const byFact = [true, false].map((holds) => ({ fact: 'weakness sits in the roots', holds, runs: 2000, chance: wilson(holds ? 1400 : 600, 2000) }));
    expect(plain(planParagraph(plan(0.5, RUNS, { byFact }), 2050))).toMatch(/ If weakness sits in the roots: 7 in 10; if not: 3 in 10\.$/);
  });
});
