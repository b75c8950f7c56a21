import { describe, expect, it } from 'vitest';
import { rootOf, Stream } from '../../src/random/stream.ts';
import { betweenLevels, overall, percentileInterval, resamples, shuffled, totalByRow, weightedMean } from '../../src/statistics/sensitivity.ts';
import { expectMean } from '../engine/agreement.ts';

const streamOf = (run: number) => new Stream(rootOf('which unknown')).future(1, run).key(1);

/**
 * T. Ishigami & T. Homma 1990, Proc. ISUMA ’90, 398–403; a = 7, b = 0.1, inputs uniform on −π … π. Variances by integration:
 * V = a²/8 + bπ⁴/5 + b²π⁸/18 + ½, V₁ = ½(1 + bπ⁴/5)², V₂ = a²/8, V₃ = 0, V₁₃ = b²π⁸(1/18 − 1/50).
 */
const [A, B] = [7, 0.1];
const ishigami = ([x1 = 0, x2 = 0, x3 = 0]: readonly number[]) => Math.sin(x1) + A * Math.sin(x2) ** 2 + B * x3 ** 4 * Math.sin(x1);
const V13 = B ** 2 * Math.PI ** 8 * (1 / 18 - 1 / 50);
const FIRST = [0.5 * (1 + (B * Math.PI ** 4) / 5) ** 2, A ** 2 / 8, 0];
const TOTAL = [FIRST[0]! + V13, FIRST[1]!, V13];
const ALL = FIRST[0]! + FIRST[1]! + V13;

const input = (stream: Stream) => Math.PI * (2 * stream.uniform() - 1);
/** Outcome of a luck of its own: 0 or 1, with a chance that goes with the function, which lies between −12 and 18. */
const chanceOf = (x: readonly number[]) => (ishigami(x) + 12) / 30;

type Outcome = (x: readonly number[], stream: Stream) => number;
const plain: Outcome = (x) => ishigami(x);
const proven: Outcome = (x, stream) => Number(stream.uniform() < chanceOf(x));

/** One whole estimate: a replicated design for the first-order indices, sets of inputs for V, and rows with one input drawn anew. */
function estimate(outcome: Outcome, run: number, [levels, each, rows, lucks]: readonly [number, number, number, number]) {
  const stream = streamOf(run);
  const values = [0, 1, 2].map(() => Float64Array.from({ length: levels }, () => input(stream)));
  const first = values.map(() => ({ sums: new Float64Array(levels), squares: new Float64Array(levels), each }));
  for (let replicate = 0; replicate < each; replicate += 1) {
    const orders = values.map(() => shuffled(levels, stream));
    for (let row = 0; row < levels; row += 1) {
      const y = outcome(
        orders.map((order, i) => values[i]![order[row]!]!),
        stream,
      );
      orders.forEach((order, i) => {
        first[i]!.sums[order[row]!]! += y;
        first[i]!.squares[order[row]!]! += y * y;
      });
    }
  }
  const sets = { sums: new Float64Array(rows), squares: new Float64Array(rows), each: lucks };
  const before = new Float64Array(rows * lucks);
  const after = [0, 1, 2].map(() => new Float64Array(rows * lucks));
  for (let row = 0; row < rows; row += 1) {
    const [x, fresh] = [[0, 1, 2].map(() => input(stream)), [0, 1, 2].map(() => input(stream))];
    for (let luck = 0; luck < lucks; luck += 1) {
      // The same luck before and after: a stream of its own, started anew.
      const key = 1 + row * lucks + luck;
      const of = (point: readonly number[]) => outcome(point, new Stream(rootOf('luck')).future(run, 0).key(key));
      const y = of(x);
      before[row * lucks + luck] = y;
      sets.sums[row]! += y;
      sets.squares[row]! += y * y;
      after.forEach((list, i) => (list[row * lucks + luck] = of(x.map((value, j) => (i === j ? fresh[j]! : value)))));
    }
  }
  return {
    variance: betweenLevels(sets),
    first: first.map((one) => betweenLevels(one)),
    total: after.map((list) => weightedMean(totalByRow(before, list, lucks))),
  };
}

describe('indices of the Ishigami function, against its analytic values (within 4 standard errors over repeated estimates)', () => {
  it('has them as published: S 0.3139, 0.4424, 0; T 0.5576, 0.4424, 0.2437', () => {
    // Published to four places, e.g. A. Saltelli et al. 2008, Global Sensitivity Analysis: The Primer (from memory).
    expect(FIRST.map((v) => (v / ALL).toFixed(4))).toEqual(['0.3139', '0.4424', '0.0000']);
    expect(TOTAL.map((v) => (v / ALL).toFixed(4))).toEqual(['0.5576', '0.4424', '0.2437']);
  });

  const many = (outcome: Outcome, times: number, size: readonly [number, number, number, number]) =>
    Array.from({ length: times }, (_, run) => estimate(outcome, run, size));

  it.each<[string, Outcome, number, readonly [number, number, number, number]]>([
    ['the function itself', plain, 1, [100, 10, 100, 2]],
    ['0 or 1 with a chance that follows it', proven, 1 / 30, [100, 20, 100, 4]],
  ])('%s', (_, outcome, scale, size) => {
    const found = many(outcome, 60, size);
    const unit = scale ** 2;
    expectMean(
      found.map(({ variance }) => variance),
      ALL * unit,
      'V',
    );
    [0, 1, 2].forEach((i) => {
      expectMean(
        found.map(({ first }) => first[i]!),
        FIRST[i]! * unit,
        `V${String(i + 1)}`,
      );
      expectMean(
        found.map(({ total }) => total[i]!),
        TOTAL[i]! * unit,
        `T${String(i + 1)}`,
      );
    });
  });
});

describe('estimators', () => {
  it('between levels: worked by hand', () => {
    // Levels (0, 0), (1, 1): MSB = 1, MSW = 0, so (1 − 0)/2. Levels (0, 1), (0, 1): MSB = 0, MSW = ½, so −¼.
    expect(betweenLevels({ sums: Float64Array.of(0, 2), squares: Float64Array.of(0, 2), each: 2 })).toBeCloseTo(0.5, 12);
    expect(betweenLevels({ sums: Float64Array.of(1, 1), squares: Float64Array.of(1, 1), each: 2 })).toBeCloseTo(-0.25, 12);
    expect(overall({ sums: Float64Array.of(0, 2), squares: Float64Array.of(0, 2), each: 2 })).toEqual({ mean: 0.5, variance: 0.25 });
  });

  it('a row taken twice counts as two rows', () => {
    const levels = { sums: Float64Array.of(0, 1, 3), squares: Float64Array.of(0, 1, 3), each: 3 };
    const twice = { sums: Float64Array.of(0, 3, 3), squares: Float64Array.of(0, 3, 3), each: 3 };
    expect(betweenLevels(levels, Uint8Array.of(1, 0, 2))).toBeCloseTo(betweenLevels(twice), 12);
    expect(weightedMean([5, 7, 9], Uint8Array.of(1, 0, 2))).toBeCloseTo(23 / 3, 12);
  });

  it('an input that changes nothing has a total of exactly 0, whatever luck does', () => {
    const outcomes = [0, 1, 1, 0, 1, 0];
    expect([...totalByRow(outcomes, outcomes, 3)]).toEqual([0, 0]);
    // Row of lucks (0, 0) → (1, 1): ½·1·1; (0, 1) → (1, 0): ½·1·(−1).
    expect([...totalByRow([0, 0, 0, 1], [1, 1, 1, 0], 2)]).toEqual([0.5, -0.5]);
  });

  it('orders hold every number once, and each comes first equally often', () => {
    const stream = streamOf(1);
    const firsts = [0, 0, 0, 0];
    for (let i = 0; i < 4000; i += 1) {
      const order = shuffled(4, stream);
      expect([...order].sort()).toEqual([0, 1, 2, 3]);
      firsts[order[0]!]! += 1;
    }
    for (const n of firsts) expect(Math.abs(n - 1000)).toBeLessThan(4 * Math.sqrt(4000 * 0.25 * 0.75));
  });
});

describe('intervals by resampling', () => {
  it('take as many rows as there are, each equally often', () => {
    const taken = resamples(50, 400, streamOf(2));
    expect(taken.every((weights) => weights.reduce((sum, w) => sum + w, 0) === 50)).toBe(true);
    const first = taken.map((weights) => weights[0]!);
    expectMean(first, 1);
  });

  it('hold the truth about as often as they say: a share of variance of the Ishigami function', () => {
    const TIMES = 150;
    let held = 0;
    for (let run = 0; run < TIMES; run += 1) {
      const stream = streamOf(100 + run);
      const [levels, each] = [200, 4];
      const x2 = Array.from({ length: levels }, () => input(stream));
      const sums = new Float64Array(levels);
      const squares = new Float64Array(levels);
      x2.forEach((value, i) => {
        for (let n = 0; n < each; n += 1) {
          const y = ishigami([input(stream), value, input(stream)]);
          sums[i]! += y;
          squares[i]! += y * y;
        }
      });
      const all = { sums, squares, each };
      const { low, high } = percentileInterval(
        betweenLevels(all),
        resamples(levels, 200, stream).map((taken) => betweenLevels(all, taken)),
      );
      held += Number(low <= FIRST[1]! && FIRST[1]! <= high);
    }
    expect(held / TIMES).toBeGreaterThan(0.95 - 4 * Math.sqrt((0.95 * 0.05) / TIMES));
  });
});
