import { rootOf, Stream } from '../../../../src/random/stream.ts';

/** A sampled figure and its standard error. A count keeps its trials: its error comes from the published chance. */
export type Sampled = { readonly got: number; readonly error: number } | { readonly hits: number; readonly of: number; readonly times: number };

/** Figures in the order of an entry's `expected`; null where one is not sampled. */
export type Figures = readonly (Sampled | null)[];

/** Independent values one by one; mean and its error. **Source:** Welford, B. P. (1962) Technometrics 4:419–420. */
export class Mean {
  private n = 0;
  private middle = 0;
  private squares = 0;

  add(value: number): void {
    this.n += 1;
    const off = value - this.middle;
    this.middle += off / this.n;
    this.squares += off * (value - this.middle);
  }

  /** The mean, times and plus something. */
  figure(times = 1, plus = 0): { readonly got: number; readonly error: number } {
    return { got: times * this.middle + plus, error: Math.abs(times) * Math.sqrt(this.squares / (this.n - 1) / this.n) };
  }
}

const meanOf = (values: ArrayLike<number>): number => {
  let total = 0;
  for (let i = 0; i < values.length; i += 1) total += values[i] ?? NaN;
  return total / values.length;
};

/** Mean of independent values. */
export function mean(values: ArrayLike<number>): Sampled {
  const all = new Mean();
  for (let i = 0; i < values.length; i += 1) all.add(values[i] ?? NaN);
  return all.figure();
}

/** Sample variance of independent values; its error from their own fourth moment. */
export function variance(values: ArrayLike<number>): { readonly got: number; readonly error: number } {
  const middle = meanOf(values);
  const squares = new Mean();
  for (let i = 0; i < values.length; i += 1) squares.add(((values[i] ?? NaN) - middle) ** 2);
  return squares.figure(values.length / (values.length - 1));
}

/** Standard deviation of independent values: error of the root to first order. */
export function deviation(values: ArrayLike<number>): Sampled {
  const { got, error } = variance(values);
  const root = Math.sqrt(got);
  return { got: root, error: error / (2 * root) };
}

/** Σ top / Σ bottom over independent groups. **Source:** ratio estimator, Cochran (1977) Sampling Techniques, ch. 6 (from memory). */
export function ratio(top: ArrayLike<number>, bottom: ArrayLike<number>): Sampled {
  const got = meanOf(top) / meanOf(bottom);
  const residuals = new Mean();
  for (let i = 0; i < top.length; i += 1) residuals.add((top[i] ?? NaN) - got * (bottom[i] ?? NaN));
  return { got, error: residuals.figure(1 / meanOf(bottom)).error };
}

/** `hits` of `of` trials; a published figure that counts in parts says how many parts are the whole. */
export const share = (hits: number, of: number, times = 1): Sampled => ({ hits, of, times });

/** The stream of luck of one check: nothing else draws from it. */
export const streamOf = (id: string): Stream => new Stream(rootOf(`validation/${id}`)).future(1, 0).key(1);
