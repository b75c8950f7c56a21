import type { Stream } from '../random/stream.ts';
import type { Interval } from '../results/outlook.ts';
import { quantileSorted } from './order.ts';

/*
 * How much of the variance of an outcome Y is due to inputs X₁ … X_k that are drawn independently, when the outcome also has a luck of its
 * own that is drawn anew each time (docs/model.md, “Which unknown matters”). With f(x) = E[Y | x], the mean over luck:
 *   V  = Var f(X)                 what all inputs explain together
 *   Vᵢ = Var E[f(X) | Xᵢ]         what input i explains on its own
 *   Tᵢ = V − Var E[f(X) | X₋ᵢ]    what is left open while i alone is unknown
 * **Source:** I. M. Sobol’ 1993, Mathematical Modelling and Computational Experiments 1:407–414; T. Homma & A. Saltelli 1996, Reliability
 * Engineering & System Safety 52:1–17 (both from memory).
 */

/** Outcomes by level: an input (or all inputs) held at a value, everything else and luck drawn anew, `each` times at every level. */
export interface Levels {
  /** Sum of the outcomes at each level, and of their squares. */
  readonly sums: Float64Array;
  readonly squares: Float64Array;
  /** Outcomes at each level, at least 2. */
  readonly each: number;
}

/** How often each row is taken in one resample; null: once each. */
export type Weights = Uint8Array | null;

/**
 * Returns the variance between levels with the noise within them taken out, (MSB − MSW)/each: unbiased, so it may come out below 0.
 * Levels are rows of a replicated design: every input runs through its levels in an order of its own, so the same futures serve all.
 *
 * **Source:** one-way analysis of variance with random effects; replicated designs for first-order indices: M. D. McKay 1995, NUREG/CR-6311;
 * T. A. Mara & O. Rakoto Joseph 2008, J. Stat. Comput. Simul. 78:167–178; J.-Y. Tissot & C. Prieur 2015, J. Stat. Comput. Simul.
 * 85:1358–1381 (all from memory).
 */
export function betweenLevels({ sums, squares, each }: Levels, weights: Weights = null): number {
  let n = 0;
  let sum = 0;
  let ofSquares = 0;
  let squaredSums = 0;
  for (let i = 0; i < sums.length; i += 1) {
    const w = weights ? (weights[i] ?? 0) : 1;
    const s = sums[i] ?? 0;
    n += w;
    sum += w * s;
    squaredSums += w * s * s;
    ofSquares += w * (squares[i] ?? 0);
  }
  const between = (squaredSums - (sum * sum) / n) / each / (n - 1);
  const within = (ofSquares - squaredSums / each) / (n * (each - 1));
  return (between - within) / each;
}

/** Mean and variance of all outcomes at the levels. */
export function overall({ sums, squares, each }: Levels, weights: Weights = null): { readonly mean: number; readonly variance: number } {
  const mean = weightedMean(sums, weights) / each;
  return { mean, variance: weightedMean(squares, weights) / each - mean * mean };
}

/**
 * Returns what each row says of Tᵢ: ½·(f(x) − f(x with input i drawn anew))². The square is the product of the differences of two separate
 * lucks, each luck the same before and after, averaged over all pairs of lucks: so luck adds no bias, and an input that changes nothing
 * gives exactly 0. Tᵢ is the mean over rows (`weightedMean`).
 * @param before outcomes of a row, at [row · lucks + luck]
 * @param after the same with input i drawn anew
 * @param lucks at least 2
 *
 * **Source:** M. J. W. Jansen 1999, Computer Physics Communications 117:35–43 (from memory); the product over two lucks is an own derivation:
 * given both inputs the two differences are independent, and each has the mean f(x) − f(x′).
 */
export function totalByRow(before: ArrayLike<number>, after: ArrayLike<number>, lucks: number): Float64Array {
  return Float64Array.from({ length: before.length / lucks }, (_, row) => {
    let sum = 0;
    let squares = 0;
    for (let at = row * lucks; at < (row + 1) * lucks; at += 1) {
      const difference = (after[at] ?? 0) - (before[at] ?? 0);
      sum += difference;
      squares += difference * difference;
    }
    return (sum * sum - squares) / (lucks * (lucks - 1)) / 2;
  });
}

export function weightedMean(values: ArrayLike<number>, weights: Weights = null): number {
  let n = 0;
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) {
    const w = weights ? (weights[i] ?? 0) : 1;
    n += w;
    sum += w * (values[i] ?? 0);
  }
  return sum / n;
}

/**
 * Draws resamples of so many rows with replacement: how often each row is taken. One number of the stream for each row and resample.
 *
 * **Source:** B. Efron 1979, Ann. Statist. 7:1–26; for these indices G. E. B. Archer, A. Saltelli & I. M. Sobol’ 1997, J. Stat. Comput.
 * Simul. 58:99–120 (from memory).
 */
export function resamples(rows: number, times: number, stream: Stream): readonly Uint8Array[] {
  return Array.from({ length: times }, () => {
    const taken = new Uint8Array(rows);
    for (let i = 0; i < rows; i += 1) {
      const row = Math.floor(stream.uniform() * rows);
      // A row is taken 256 times in one resample about never; were it, once less does no harm.
      if ((taken[row] ?? 0) < 255) taken[row] = (taken[row] ?? 0) + 1;
    }
    return taken;
  });
}

/** A value with the middle 95 % of what its resamples give. */
export function percentileInterval(value: number, resampled: readonly number[]): Interval {
  const sorted = Float64Array.from(resampled).sort();
  return { value, low: Math.min(value, quantileSorted(sorted, 0.025)), high: Math.max(value, quantileSorted(sorted, 0.975)) };
}

/** The numbers 0 … n − 1 in random order. **Source:** Fisher & Yates, as by R. Durstenfeld 1964, Comm. ACM 7:420. */
export function shuffled(n: number, stream: Stream): Int32Array {
  const order = Int32Array.from({ length: n }, (_, i) => i);
  for (let i = n - 1; i > 0; i -= 1) {
    const j = Math.floor(stream.uniform() * (i + 1));
    const last = order[i] ?? 0;
    order[i] = order[j] ?? 0;
    order[j] = last;
  }
  return order;
}
