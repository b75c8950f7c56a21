import { describe, expect, it } from 'vitest';
import { Simulator } from '../../src/engine/simulate.ts';
import type { Programme } from '../../src/model/programme.ts';
import { chanceGivenFacts } from '../../src/statistics/ignorance.ts';
import { atLeast } from '../../src/statistics/binomial.ts';
import { normalCdf } from '../../src/statistics/normal.ts';
import { FACT_SETS, FUTURES_A_SET } from '../../src/workers/analysis.ts';
import { expectShare } from '../engine/agreement.ts';
import { cross, document, generation, plans, read, tree, type Document } from '../engine/programmes.ts';

const hybrids = [tree('a', { genes: { r: { copies: 1 } } }), tree('b', { genes: { r: { copies: 1 } } })];
/** n seedlings of two trees with one copy each: proven in 1 − ¾ⁿ of futures, in year 6. */
const certain = (n: number, changes: Partial<Document> = {}): Programme =>
  read(document({ trees: hybrids, lastYear: 2006, plans: plans([generation('g', n)]), ...changes }));

/** 10–90 % range of the chance given the facts, by the last year. */
function range(programme: Programme, word: string): { low: number; high: number } {
  const provenBy = new Simulator({ ...programme, shuffleWord: word }).factSets([0], 0, FACT_SETS, FUTURES_A_SET);
  const years = programme.lastYear - programme.startYear + 1;
  const hits = Array.from({ length: FACT_SETS }, (_, set) => provenBy[set * years + years - 1]!);
  return chanceGivenFacts(hits, FUTURES_A_SET);
}

/** P(sample variance of 100 normal values < the true one): chi-square by its cube root, Wilson & Hilferty (1931) PNAS 17:684–688. */
const BELOW_NOISE = normalCdf((1 - (1 - 2 / (9 * 99))) / Math.sqrt(2 / (9 * 99)));
const WORDS = Array.from({ length: 40 }, (_, i) => `word ${String(i)}`);

describe('chance given the facts, with nothing left to know (docs/model.md §2)', () => {
  it('has no range for about half of all words', () => {
    const widths = WORDS.map((word) => {
      const { low, high } = range(certain(3), word);
      return high - low;
    });
    expectShare(widths.filter((width) => width === 0).length, WORDS.length, BELOW_NOISE);
    // Eight points and more: by chance in about 0.5 % of words (variance 1.4 times its noise), so in at most this many of 40.
    const wide = widths.filter((width) => width >= 0.08).length;
    expect(atLeast(wide, WORDS.length, 0.0055)).toBeGreaterThan(3e-5);
  });

  it('and under 8 points for every word where a future succeeds nine times in ten', () => {
    for (const word of WORDS.slice(0, 30)) {
      const { low, high } = range(certain(8), word);
      expect(high - low, word).toBeLessThan(0.08);
      expect(Math.abs((low + high) / 2 - (1 - 0.75 ** 8))).toBeLessThan(0.05);
    }
  });
});

describe('chance given the facts, with something to know', () => {
  it('a yes/no fact that decides everything opens the range from never to what the genes allow', () => {
    // Sound until half a month, grafted then; those whose weakness sits in the top are dead long before they fruit.
    const programme = certain(6, {
      facts: [{ id: 'f', name: 'it sits in the roots', chance: 0.5 }],
      crosses: [cross({ weakness: { share: 1, onset: 0.5, course: { halfLife: 0.05 }, rootBorne: { fact: 'f' } } })],
      stocks: [{ id: 'stock', name: 'stock', takeTender: 1, takeRipe: 1 }],
      plans: plans([generation('g', 6, { rescue: { who: 'every', month: 0.5, stock: 'stock' } })]),
    });
    const { low, high } = range(programme, 'fact');
    const cured = 1 - 0.75 ** 6;
    expect(low).toBeLessThan(0.01);
    expect(Math.abs(high - cured)).toBeLessThan(4 * Math.sqrt((cured * (1 - cured)) / FUTURES_A_SET));
  });

  it('a range of rates gives its own range, and none with guesses as they stand', () => {
    const set = { low: 0, likely: 0.5, high: 1 };
    const trees = ['a', 'b'].map((id) => tree(id, { genes: { r: { copies: 2 } } }));
    const one = (guessesAsTheyStand: boolean) => certain(1, { trees, guessesAsTheyStand, crosses: [cross({ set })] });
    // One flower: the chance is the set itself, Beta(3, 3); 10 % and 90 % at 0.2466 and 0.7534 (root of 10x³ − 15x⁴ + 6x⁵ = 0.1).
    const open = range(one(false), 'range');
    const density = (x: number) => 30 * x ** 2 * (1 - x) ** 2;
    const error = Math.sqrt((0.1 * 0.9) / FACT_SETS) / density(0.2466);
    expect(10 * 0.2466 ** 3 - 15 * 0.2466 ** 4 + 6 * 0.2466 ** 5).toBeCloseTo(0.1, 3);
    expect(Math.abs(open.low - 0.2466)).toBeLessThan(4 * error);
    expect(Math.abs(open.high - 0.7534)).toBeLessThan(4 * error);
    const shut = WORDS.slice(0, 24).map((word) => range(one(true), word));
    expectShare(shut.filter(({ low, high }) => high === low).length, shut.length, BELOW_NOISE);
    expect(shut.filter(({ low, high }) => high - low > 0.12)).toEqual([]);
  });
});
