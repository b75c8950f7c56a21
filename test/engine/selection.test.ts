import { describe, expect, it } from 'vitest';
import { binomialPmf } from '../../src/statistics/binomial.ts';
import { normalCdf } from '../../src/statistics/normal.ts';
import { expectMean, expectRatio, expectShare, expectVariance } from './agreement.ts';
import { climb, momentsOf, type Ladder } from './ladder.ts';
import { document, future, generation, kind, measured, neverProven, picksOf, plans, shown, tree, type Document, type MeasuredDocument } from './programmes.ts';

const goal = neverProven();
/** One copy of 64 is worth √(4·V_G/64) = ¼ when V_G = 1 (docs/model.md §3). */
const COPY = 1 / 4;
const traits = (changes: Partial<MeasuredDocument> = {}): Document['traits'] => [shown(2), measured(changes)];
const selfing = [kind({ selfCompatible: true, firstFruit: { years: 1 } })];
const unstated = [tree('a'), tree('b')];

/** Ways of writing V_G: variance 1, heritability h², repeatability t. */
const NOISY = { sd: Math.sqrt(2.5), heritability: 0.4, repeatability: 0.6 };
const noisy: Ladder = { trait: 'size', from: -10, step: 1, steps: 21 };
/** What reading one tree on that ladder adds to its variance: step²/12 (Sheppard 1898). */
const ROUNDING = 1 / 12;

describe('what is seen (V_P = 2.5, h² = 0.4, t = 0.6)', () => {
  const seen = (seedlings: number, judge: number, runs: number, changes: Partial<MeasuredDocument> = {}) =>
    momentsOf(
      noisy,
      climb(noisy, [generation('g', seedlings, { judge })], { goal, traits: traits({ ...NOISY, ...changes }), trees: unstated, lastYear: 2005 + judge }, runs),
      true,
    );

  it('one season varies by V_P, the mean of n seasons by V_P·(t + (1 − t)/n) (Falconer & Mackay 1996 ch. 8)', () => {
    for (const n of [1, 2, 4]) {
      const runs = seen(1, n, 4000).map((run) => run.mean);
      expectVariance(runs, 2.5 * (0.6 + 0.4 / n) + ROUNDING, `${String(n)} seasons`);
      expectMean(runs, 0);
    }
  });

  it('however much of the passing noise is common to the year', () => {
    for (const yearShare of [0.1, 0.9])
      expectVariance(
        seen(1, 1, 4000, { yearShare }).map((run) => run.mean),
        2.5 + ROUNDING,
        `year share ${String(yearShare)}`,
      );
  });

  it('trees seen in one year share its effect: within a family V_G/2 + V_C + V_E + V_S', () => {
    for (const yearShare of [0, 0.7])
      expectMean(
        seen(40, 1, 500, { yearShare }).map(({ variance }) => variance),
        0.5 + 0.2 * 2.5 + (1 - yearShare) * 0.4 * 2.5,
        `year share ${String(yearShare)}`,
      );
  });

  it('truly good and the shortfall follow from G and what travels of C + E: exact over copies, C and noise', () => {
    const [x, travels] = [1.5, 0.3];
    const [c, n] = [0.2 * 2.5 * travels, 0.2 * 2.5 * (1 - travels) + 0.4 * 2.5];
    const conditions = [{ type: 'measured' as const, trait: 'size', atLeast: x }];
    const columns = future(
      document({ traits: traits({ ...NOISY, travels }), trees: unstated, goal: { conditions, crops: 1 }, plans: plans([generation('g', 1)]) }),
      40_000,
    );
    let [seenAbove, bothAbove, short] = [0, 0, 0];
    for (let k = 0; k <= 64; k += 1) {
      const g = (k - 32) * COPY;
      const p = binomialPmf(k, 64, 0.5);
      const z = (x - g) / Math.sqrt(c + n);
      seenAbove += p * normalCdf(-z);
      short += (p * (n / Math.sqrt(c + n)) * Math.exp(-0.5 * z * z)) / Math.sqrt(2 * Math.PI);
      const step = 0.002;
      const low = (x - g) / Math.sqrt(c);
      for (let u = Math.max(low, -8) + step / 2; u < Math.max(low, -8) + 16; u += step)
        bothAbove += (p * step * Math.exp(-0.5 * u * u) * normalCdf((g + Math.sqrt(c) * u - x) / Math.sqrt(n))) / Math.sqrt(2 * Math.PI);
    }
    const proven = columns.run('proven');
    expectMean(proven, seenAbove, 'proven');
    expectRatio(columns.run('trulyGood'), proven, bothAbove / seenAbove, 'truly good');
    expectRatio(columns.shortfall(0), proven, short / seenAbove, 'shortfall');
    expectShare(
      proven.reduce((a, b) => a + b, 0),
      40_000,
      seenAbove,
    );
  });
});

/** Mean of the best k of n normal values, by integration of their density. **Source:** own derivation; Harter 1961, Biometrika 48:151–165 tabulates them. */
function intensity(k: number, n: number): number {
  const choose = (of: number, m: number) => Array.from({ length: m }, (_, i) => (of - i) / (i + 1)).reduce((x, y) => x * y, 1);
  let sum = 0;
  for (let z = -9; z <= 9; z += 0.001) {
    const below = normalCdf(z);
    const density = Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);
    for (let rank = 1; rank <= k; rank += 1) sum += 0.001 * z * density * n * choose(n - 1, rank - 1) * below ** (n - rank) * (1 - below) ** (rank - 1);
  }
  return sum / k;
}

describe('breeder’s equation', () => {
  it('knows the intensities of Harter 1961: best of 10 is 1.53875, second 1.00136 (from memory)', () => {
    expect(intensity(1, 10)).toBeCloseTo(1.53875, 4);
    expect(2 * intensity(2, 10) - intensity(1, 10)).toBeCloseTo(1.00136, 4);
  });

  it('best 2 of 10 full sibs on one season: response i · (V_G/2)/σ, σ² = V_G/2 + V_C + V_E + V_S', () => {
    const first = (rank: 'index' | 'first') => generation('g1', 10, { keep: { howMany: 2, rank, weights: { size: 1 } }, goOn: { when: 'allJudged' } });
    const second = generation('g2', 20, { seedParents: picksOf('g1'), pollen: picksOf('g1') });
    const changes = { goal, traits: traits(NOISY), trees: unstated, lastYear: 2013 };
    const [best, any] = (['index', 'first'] as const).map((rank) => momentsOf(noisy, climb(noisy, [first(rank), second], changes, 1500), true));
    const response = best!.map((run, i) => run.mean - any![i]!.mean);
    const within = 0.5 + 0.2 * 2.5 + 0.5 * 0.4 * 2.5;
    const expected = (intensity(2, 10) * 0.5) / Math.sqrt(within);
    // Families differ in how many loci segregate (32 ± 4), and few loci are not quite normal: together less than 0.5 % of the response (own derivation).
    expectMean(response, expected, 'response', 0.005 * expected);
  });
});

describe('inbreeding and named genes', () => {
  /** E[max(0, 1 − 2H)] when each of 32 loci has two different alleles with chance p. */
  const lost = (p: number) => Array.from({ length: 33 }, (_, k) => binomialPmf(k, 32, p) * Math.max(0, 1 - k / 16)).reduce((x, y) => x + y, 0);
  const means = (trait: Partial<MeasuredDocument>, changes: Partial<Document>, pollen: 'self' | null) =>
    momentsOf(
      noisy,
      climb(
        noisy,
        [generation('g', 40, pollen ? { pollen } : {})],
        {
          goal,
          traits: traits({ sd: Math.SQRT2, heritability: 0.5, repeatability: 0.5, yearShare: 0, ...trait }),
          trees: unstated,
          lastYear: 2006,
          ...changes,
        },
        500,
      ),
      true,
    ).map((run) => run.mean);

  it('selfed seedlings lose inbreeding · E[max(0, 1 − 2H)] with H ~ Binomial(32, ¼)/32; random crosses 0.07 of it', () => {
    expect(lost(0.5)).toBeCloseTo(0.07, 3);
    expectMean(means({ inbreeding: 4 }, { kinds: selfing }, 'self'), -4 * lost(0.25), 'selfed');
    expectMean(means({ inbreeding: 4 }, {}, null), -4 * lost(0.5), 'crossed');
  });

  it('a gene adds −a, d, +a for 0, 1, 2 copies, and a stated value includes it', () => {
    const genes = [{ gene: 'r', half: 2, dominance: 1 }];
    const r = (n: number) => ({ r: { copies: n } });
    const state = (a: number, b: number, values: boolean) => ({
      trees: [tree('a', { genes: r(a), ...(values ? { values: { size: 3 } } : {}) }), tree('b', { genes: r(b), ...(values ? { values: { size: 0 } } : {}) })],
    });
    expectMean(means({ genes }, state(2, 0, false), null), 1, 'hybrid of random trees: d');
    expectMean(means({ genes }, state(2, 2, false), null), 2, 'two copies: +a');
    expectMean(means({ genes }, state(1, 0, false), null), (1 - 2) / 2, 'half d, half −a');
    // 3 = 1 + 2 and 0 = 2 − 2: the other loci average 1½; the hybrid adds d.
    expectMean(means({ genes }, state(2, 0, true), null), 2.5, 'stated values');
  });
});
