import { exp } from '../random/elementary.ts';
import type { Interval } from '../results/outlook.ts';
import { Z95 } from './interval.ts';

/*
 * What a trial is worth before it is made.
 *
 * A decision d is to be taken. In future r it comes to Y_d(r), and a trial with n units in each of its arms has the result t (successes in
 * each arm) with the likelihood p(t | r), a product of binomials: each arm's chance of success is a fact of the future. Then
 *
 *   worth(n) = Σ_t p(t) max_d E[Y_d | t] − max_d E[Y_d],   E[Y_d | t] = Σ_r p(t | r) Y_d(r) / Σ_r p(t | r),   p(t) = mean_r p(t | r):
 *
 * exact over the results, by importance weights over the futures.
 *
 * **Source:** preposterior analysis, Raiffa, H. & Schlaifer, R. (1961) Applied Statistical Decision Theory, ch. 4 (from memory); by regression
 * instead of weights: Strong, M., Oakley, J. E., Brennan, A. & Breeze, P. (2015) Med. Decis. Making 35:570–583 (from memory).
 */

/** Halves of the futures: what is chosen on one is valued on the other, and the other way round. */
const FOLDS = 2;

export interface TrialFutures {
  /** For each decision, what it comes to in each future, 0 … 1. */
  readonly outcomes: readonly ArrayLike<number>[];
  /** For each arm of the trial, the chance of success of one unit in each future. One or two arms. */
  readonly arms: readonly [Float64Array] | readonly [Float64Array, Float64Array];
  /** What the decisions come to without the trial, where that differs (as when the trial makes the plan wait); else `outcomes`. */
  readonly without?: readonly ArrayLike<number>[];
}

/** What a trial says, by its results: first arm · (n + 1) + second arm. */
export interface TrialSays {
  /** The chance of each result, and what each decision comes to with it times that chance. */
  readonly results: readonly { readonly chance: number; readonly sums: Float64Array }[];
  /** For each decision, in each future, the chance that the trial leads to it, when after each result the best is done. */
  readonly led: readonly Float64Array[];
}

/**
 * Returns the worth of a trial where the futures given are all there is, each as likely: the same futures choose and value. Never negative,
 * never above `perfectOver`, and never falling in n.
 * @param n units in each arm, a whole number from 0
 */
export function exactWorth(futures: TrialFutures, n: number): number {
  const { outcomes, without = outcomes } = futures;
  const size = sizeOf(futures);
  let after = 0;
  eachResult(futures.arms, n, (row) => {
    after += Math.max(...outcomes.map((outcome) => weighed(row, outcome)));
  });
  return after / size - Math.max(...without.map((outcome) => weighed(null, outcome) / size));
}

/** Returns what it would be worth to know which future it is, luck and all: a bound that no trial reaches. */
export function perfectOver({ outcomes, without = outcomes }: TrialFutures): number {
  const size = outcomes[0]?.length ?? 0;
  let after = 0;
  for (let r = 0; r < size; r += 1) after += Math.max(...outcomes.map((outcome) => outcome[r] ?? 0));
  return after / size - Math.max(...without.map((outcome) => weighed(null, outcome) / size));
}

/**
 * Returns the worth of a trial with its 95 % interval. The greatest of several noisy means is too great on average, so what to do upon each
 * result is chosen on one half of the futures and valued on the other, and the other way round. The interval is mean ± 1.96·SD/√(N/2) of what
 * the rule gains future by future: within a half it is a plain mean, and as the two halves have chosen for each other they count as one. One
 * gain and one loss of 1 are added, so that a rule that never changes anything has a width too. A rule that was fitted to luck can cost: a
 * figure below 0 says that there is nothing to measure.
 * @param n units in each arm
 * @throws RangeError when lists differ in length
 *
 * **Source:** as above; choosing and valuing on different parts: Stone, M. (1974) J. R. Stat. Soc. B 36:111–147 (from memory); that the mean of
 * two estimates errs by no more than one of them: own derivation, Cauchy–Schwarz; the pair added as in Bonett & Price (2012).
 */
export function trialWorth(futures: TrialFutures, n: number): Interval {
  const { outcomes, arms, without = outcomes } = futures;
  const size = sizeOf(futures);
  const best = bestWithout(without, size);
  const gains = new Float64Array(size);
  for (let r = 0; r < size; r += 1) gains[r] = (outcomes[0]?.[r] ?? 0) - (without[best[r % FOLDS] ?? 0]?.[r] ?? 0);
  // Where all decisions come to the same, nothing hangs on the trial; the others stand fold by fold.
  const differ = Array.from({ length: size }, (_, r) => r).filter((r) => outcomes.some((outcome) => outcome[r] !== outcomes[0]?.[r]));
  const at = Int32Array.from(Array.from({ length: FOLDS }, (_, f) => differ.filter((r) => r % FOLDS === f)).flat());
  const ends = Array.from({ length: FOLDS }, (_, f) => differ.filter((r) => r % FOLDS <= f).length);
  const more = outcomes.map((outcome) => Float64Array.from(at, (r) => (outcome[r] ?? 0) - (outcomes[0]?.[r] ?? 0)));
  const gained = new Float64Array(at.length);
  const byFold = outcomes.map(() => new Float64Array(FOLDS));
  const total = new Float64Array(outcomes.length);
  eachResult(pick(arms, at), n, (row) => {
    total.fill(0);
    more.forEach((outcome, d) => {
      const folds = byFold[d] ?? total;
      for (let f = 0, i = 0; f < FOLDS; f += 1) {
        let sum = 0;
        for (const end = ends[f] ?? 0; i < end; i += 1) sum += (row[i] ?? 0) * (outcome[i] ?? 0);
        folds[f] = sum;
        total[d] = (total[d] ?? 0) + sum;
      }
    });
    for (let f = 0, i = 0; f < FOLDS; f += 1) {
      const outcome = more[greatest(more.length, best[f] ?? 0, (d) => (total[d] ?? 0) - (byFold[d]?.[f] ?? 0))] ?? gained;
      for (const end = ends[f] ?? 0; i < end; i += 1) gained[i] = (gained[i] ?? 0) + (row[i] ?? 0) * (outcome[i] ?? 0);
    }
  });
  at.forEach((r, i) => (gains[r] = (gains[r] ?? 0) + (gained[i] ?? 0)));
  return meanGain(gains);
}

/**
 * Returns what the results of a trial say of each decision, over all futures.
 * @param n units in each arm
 */
export function trialSays(futures: TrialFutures, n: number): TrialSays {
  const { outcomes, arms } = futures;
  const size = sizeOf(futures);
  const [best] = bestOver(outcomes);
  const led = outcomes.map(() => new Float64Array(size));
  const results: { chance: number; sums: Float64Array }[] = [];
  eachResult(arms, n, (row) => {
    const sums = Float64Array.from(outcomes, (outcome) => weighed(row, outcome) / size);
    const to = led[greatest(outcomes.length, best, (d) => sums[d] ?? 0)];
    if (to) for (let r = 0; r < size; r += 1) to[r] = (to[r] ?? 0) + (row[r] ?? 0);
    results.push({ chance: row.reduce((sum, chance) => sum + chance, 0) / size, sums });
  });
  return { results, led };
}

/** Cells along each arm of the grid on which futures with like chances are pooled, and the trial whose fineness that pooling has. */
const CELLS = 64;
const AS_FINE_AS = 200;

/**
 * Returns the worth of knowing the chances of success of all arms themselves: what a trial without end would come to. Futures with like chances
 * are pooled with a normal kernel over arcsin √p, as wide as the error of a trial with 200 in each arm; chosen and valued as in `trialWorth`.
 *
 * **Source:** partial perfect information by non-parametric regression: Strong, M., Oakley, J. E. & Brennan, A. (2014) Med. Decis. Making
 * 34:311–326; the scale on which binomial errors are alike: Anscombe, F. J. (1948) Biometrika 35:246–254 (both from memory).
 */
export function perfectWorth(futures: TrialFutures): Interval {
  const { outcomes, arms, without = outcomes } = futures;
  const size = sizeOf(futures);
  const best = bestWithout(without, size);
  const cellOf = (p: number) => Math.min(CELLS - 1, Math.floor((Math.asin(Math.sqrt(Math.min(1, Math.max(0, p)))) / (Math.PI / 2)) * CELLS));
  const [first, second] = arms;
  const across = second ? CELLS : 1;
  const at = Int32Array.from({ length: size }, (_, r) => cellOf(first[r] ?? 0) * across + (second ? cellOf(second[r] ?? 0) : 0));
  const smooth = outcomes.map((outcome) =>
    Array.from({ length: FOLDS }, (_, f) => {
      const cells = new Float64Array(CELLS * across);
      for (let r = f; r < size; r += FOLDS) cells[at[r] ?? 0] = (cells[at[r] ?? 0] ?? 0) + (outcome[r] ?? 0);
      return smoothed(cells, across);
    }),
  );
  const all = smooth.map((folds) => folds.reduce((sum, cells) => sum.map((value, c) => value + (cells[c] ?? 0)), new Float64Array(CELLS * across)));
  const gains = Float64Array.from({ length: size }, (_, r) => {
    const f = r % FOLDS;
    const cell = at[r] ?? 0;
    const d = greatest(outcomes.length, best[f] ?? 0, (one) => (all[one]?.[cell] ?? 0) - (smooth[one]?.[f]?.[cell] ?? 0));
    return (outcomes[d]?.[r] ?? 0) - (without[best[f] ?? 0]?.[r] ?? 0);
  });
  return meanGain(gains);
}

function smoothed(cells: Float64Array, across: number): Float64Array {
  const spread = (CELLS / (Math.PI / 2)) * (1 / (2 * Math.sqrt(AS_FINE_AS)));
  const weights = Float64Array.from({ length: CELLS }, (_, step) => exp(-0.5 * (step / spread) * (step / spread)));
  const along = (from: Float64Array, stride: number, starts: readonly number[]) => {
    const to = new Float64Array(from.length);
    for (const start of starts)
      for (let i = 0; i < CELLS; i += 1) {
        const value = from[start + i * stride] ?? 0;
        if (value !== 0) for (let j = 0; j < CELLS; j += 1) to[start + j * stride] = (to[start + j * stride] ?? 0) + value * (weights[Math.abs(i - j)] ?? 0);
      }
    return to;
  };
  const once = along(
    cells,
    across,
    Array.from({ length: across }, (_, c) => c),
  );
  return across === 1
    ? once
    : along(
        once,
        1,
        Array.from({ length: CELLS }, (_, c) => c * across),
      );
}

/** Visits every result of a trial with its likelihood in each future; the row is used again for the next. */
function eachResult(arms: TrialFutures['arms'], n: number, visit: (row: Float64Array) => void): void {
  const [first, second] = arms.map((chances) => likelihoods(chances, n));
  for (const row of first ?? []) {
    if (!second) {
      visit(row);
      continue;
    }
    const joint = new Float64Array(row.length);
    for (const other of second) {
      for (let r = 0; r < joint.length; r += 1) joint[r] = (row[r] ?? 0) * (other[r] ?? 0);
      visit(joint);
    }
  }
}

/** Binomial likelihoods of 0 … n successes in each future. */
function likelihoods(chances: Float64Array, n: number): readonly Float64Array[] {
  let ways = 1;
  return Array.from({ length: n + 1 }, (_, k) => {
    if (k > 0) ways = (ways * (n - k + 1)) / k;
    const choices = ways;
    return chances.map((p) => choices * whole(p, k) * whole(1 - p, n - k));
  });
}

function whole(base: number, times: number): number {
  let result = 1;
  for (let i = 0; i < times; i += 1) result *= base;
  return result;
}

function sizeOf({ outcomes, arms, without = outcomes }: TrialFutures): number {
  const size = arms[0].length;
  if ([...outcomes, ...without, ...arms].some(({ length }) => length !== size))
    throw new RangeError('Decisions and arms of a trial can only be weighed on the same futures.');
  return size;
}

function weighed(row: Float64Array | null, outcome: ArrayLike<number>): number {
  let sum = 0;
  for (let r = 0; r < outcome.length; r += 1) sum += (row === null ? 1 : (row[r] ?? 0)) * (outcome[r] ?? 0);
  return sum;
}

function pick(arms: TrialFutures['arms'], at: Int32Array): TrialFutures['arms'] {
  const [first, second] = arms;
  const part = (chances: Float64Array) => Float64Array.from(at, (r) => chances[r] ?? 0);
  return second ? [part(first), part(second)] : [part(first)];
}

/** The best decision without a trial and what it comes to, all futures together; the first of equals. */
function bestOver(outcomes: readonly ArrayLike<number>[]): readonly [number, readonly number[]] {
  const totals = outcomes.map((outcome) => weighed(null, outcome));
  return [greatest(outcomes.length, 0, (d) => totals[d] ?? 0), totals];
}

/** The decision without a trial, for each fold chosen on the others; too few futures to divide choose for themselves. */
function bestWithout(without: readonly ArrayLike<number>[], size: number): Int32Array {
  const [best, totals] = bestOver(without);
  if (size < FOLDS) return new Int32Array(FOLDS).fill(best);
  const own = without.map((outcome) => {
    const folds = new Float64Array(FOLDS);
    for (let r = 0; r < size; r += 1) folds[r % FOLDS] = (folds[r % FOLDS] ?? 0) + (outcome[r] ?? 0);
    return folds;
  });
  return Int32Array.from({ length: FOLDS }, (_, f) => greatest(without.length, 0, (d) => (totals[d] ?? 0) - (own[d]?.[f] ?? 0)));
}

/** Of equals the one to start from. */
function greatest(kinds: number, from: number, value: (d: number) => number): number {
  let best = from;
  for (let d = 0; d < kinds; d += 1) if (value(d) > value(best)) best = d;
  return best;
}

function meanGain(gains: Float64Array): Interval {
  const size = gains.length;
  const value = gains.reduce((sum, gain) => sum + gain, 0) / size;
  const squares = gains.reduce((sum, gain) => sum + gain * gain, 2);
  const half = Z95 * Math.sqrt((Math.max(0, squares / size - value * value) / size) * FOLDS);
  return { value, low: value - half, high: value + half };
}
