import { betaQuantile } from './beta.ts';

/** Plans that may be the best, and how far each may lie behind it. */
export interface AgainstBest {
  /** Interval for the mean of this one minus the least mean of the others: below 0 it is the best. */
  readonly low: number;
  readonly high: number;
  /** Whether the samples leave open that no other has a smaller mean. */
  readonly mayBeBest: boolean;
}

/**
 * Returns the t below which Student's distribution lies with probability p.
 * @param p in (0, 1)
 * @param freedom degrees of freedom, positive
 * @returns relative error about 1e-10
 *
 * **Source:** Abramowitz & Stegun (1964) 26.7.1 and 26.5.27: the tail beyond |t| is ½·I_x(ν/2, ½) with x = ν/(ν + t²).
 */
export function studentQuantile(p: number, freedom: number): number {
  if (p === 0.5) return 0;
  const x = betaQuantile(2 * Math.min(p, 1 - p), freedom / 2, 0.5);
  return Math.sign(p - 0.5) * Math.sqrt((freedom * (1 - x)) / x);
}

/**
 * Compares each plan with the best of the others on the same futures: simultaneous intervals for μᵢ − min over l ≠ i of μₗ, all of them right
 * together with at least the stated confidence, whatever way the plans' luck hangs together.
 *
 * Only the comparisons of the best with the others have to be right, so k − 1 one-sided bounds on paired differences are shared out
 * (Bonferroni), each with its own standard error. A plan that is clearly behind some other cannot be the best, and no interval is measured
 * from it (Edwards & Hsu 1983).
 * @param samples one a plan, equally long, at least two values each; less is better
 * @param confidence in (0, 1)
 * @throws RangeError when the samples differ in length
 *
 * **Source:** Hsu, J. C. (1984) Ann. Stat. 12:1136–1144; for common random numbers Yang, W.-N. & Nelson, B. L. (1991) Oper. Res. 39:583–591 and
 * Nelson, B. L. & Matejcik, F. J. (1995) Manage. Sci. 41:1935–1945; unequal widths after Edwards, D. G. & Hsu, J. C. (1983) J. Am. Stat.
 * Assoc. 78:965–971 (all from memory; derivation in docs/model.md).
 */
export function againstBest(samples: readonly ArrayLike<number>[], confidence: number): readonly AgainstBest[] {
  const others = samples.length - 1;
  if (others < 1) return samples.map(() => ({ low: 0, high: 0, mayBeBest: true }));
  const t = studentQuantile(1 - (1 - confidence) / others, sizeOf(samples) - 1);
  const pairs = samples.map((a) => samples.map((b) => pairedMean(a, b)));
  const least = pairs.map((row, i) => Math.max(...row.flatMap(({ mean, error }, l) => (l === i ? [] : [mean - t * error]))));
  const mayBeBest = least.map((bound) => bound <= 0);
  return pairs.map((row, i) => {
    const behind = row.flatMap(({ mean, error }, l) => (l !== i && mayBeBest[l] === true ? [mean + t * error] : []));
    // Nothing else may be the best: this one is, by no less than nothing.
    return { low: Math.min(0, least[i] ?? 0), high: Math.max(0, ...behind), mayBeBest: mayBeBest[i] === true };
  });
}

/**
 * Finds the plans that are clearly beaten on two things at once, of both of which less is better. Plan j clearly beats plan i when one-sided
 * bounds on both paired differences say that it is no worse on either and better on one at least; where two plans are alike in every future
 * the bound is 0. The bounds are shared out over all k(k − 1) pairs, and both halves must hold, so that with at least the stated confidence no
 * plan is called beaten which nothing beats.
 * @param one a sample for each plan, all over the same futures, two values at least
 * @param other the same of the other thing
 * @param confidence in (0, 1)
 * @returns for each plan the one that beats it most clearly, as a position; −1 where none clearly does
 * @throws RangeError when samples differ in length
 *
 * **Source:** both halves at once: intersection–union tests, Berger, R. L. (1982) Technometrics 24:295–300; shared out by Bonferroni. The same
 * question for ranking and selection: Lee, L. H., Chew, E. P., Teng, S. & Goldsman, D. (2010) IIE Trans. 42:656–674 (from memory).
 */
export function clearlyBeaten(one: readonly ArrayLike<number>[], other: readonly ArrayLike<number>[], confidence: number): readonly number[] {
  const k = one.length;
  if (k < 2) return one.map(() => -1);
  const t = studentQuantile(1 - (1 - confidence) / (k * (k - 1)), sizeOf([...one, ...other]) - 1);
  /** How far j is surely ahead of i, in standard errors beyond the bound; 0 where they never differ. */
  const ahead = (samples: readonly ArrayLike<number>[], i: number, j: number) => {
    const { mean, error } = pairedMean(samples[i] ?? [], samples[j] ?? []);
    return error > 0 ? mean / error - t : mean === 0 ? 0 : Math.sign(mean) * Infinity;
  };
  return one.map((_, i) => {
    let best = -1;
    let most = 0;
    for (let j = 0; j < k; j += 1) {
      if (j === i) continue;
      const [a, b] = [ahead(one, i, j), ahead(other, i, j)];
      const clearly = a > 0 && b > 0 ? Math.min(a, b) : Math.max(a, b);
      if (Math.min(a, b) >= 0 && clearly > most) [best, most] = [j, clearly];
    }
    return best;
  });
}

/** Mean of a − b over pairs and its standard error, SD/√n. */
function pairedMean(a: ArrayLike<number>, b: ArrayLike<number>): { readonly mean: number; readonly error: number } {
  const n = a.length;
  let mean = 0;
  let squares = 0;
  for (let i = 0; i < n; i += 1) {
    const difference = (a[i] ?? 0) - (b[i] ?? 0);
    const step = difference - mean;
    mean += step / (i + 1);
    squares += step * (difference - mean);
  }
  return { mean, error: Math.sqrt(squares / (n - 1) / n) };
}

function sizeOf(samples: readonly ArrayLike<number>[]): number {
  const n = samples[0]?.length ?? 0;
  if (n < 2 || samples.some(({ length }) => length !== n)) throw new RangeError('Plans can only be compared over the same futures, two at least.');
  return n;
}
