import { expect } from 'vitest';
import { atLeast } from '../../src/statistics/binomial.ts';

/** Standard errors that a figure may lie from what is expected. Words are fixed, so a check that passes always passes. */
const ERRORS = 4;
/** Chance that a normal value lies further out than that, on one side. */
const BEYOND = 3.167e-5;
/** With fewer expected hits (or misses) than this the normal error means little: the exact binomial tail is asked instead. */
const FEW = 25;

export const total = (values: ArrayLike<number>): number => {
  let sum = 0;
  for (let i = 0; i < values.length; i += 1) sum += values[i]!;
  return sum;
};
export const mean = (values: ArrayLike<number>): number => total(values) / values.length;

/** Standard error of the mean of independent values. */
export function errorOfMean(values: ArrayLike<number>): number {
  const middle = mean(values);
  let squares = 0;
  for (let i = 0; i < values.length; i += 1) squares += (values[i]! - middle) ** 2;
  return Math.sqrt(squares / (values.length - 1) / values.length);
}

export const count = (values: ArrayLike<number>, test: (value: number) => boolean): number => Array.from(values).filter(test).length;

function agree(got: number, expected: number, error: number, slack: number, what: string): void {
  const beyond = Math.max(0, Math.abs(got - expected) - slack);
  const z = error > 0 ? beyond / error : beyond < 1e-12 * Math.max(1, Math.abs(expected)) ? 0 : Infinity;
  expect(z, `${what}${String(got)} against ${String(expected)}, standard error ${String(error)}: z`).toBeLessThanOrEqual(ERRORS);
}

/** `hits` of `of` independent trials of chance p (exact binomial error). @param slack how far off the expected value itself may be */
export function expectShare(hits: number, of: number, p: number, what = '', slack = 0): void {
  expect(of, 'trials').toBeGreaterThan(0);
  if (slack === 0 && p > 0 && p < 1 && of * Math.min(p, 1 - p) < FEW) {
    const said = `${what && `${what}: `}${String(hits)} of ${String(of)} at ${String(p)}: exact tail`;
    expect(atLeast(hits, of, p), said).toBeGreaterThan(BEYOND);
    expect(atLeast(of - hits, of, 1 - p), said).toBeGreaterThan(BEYOND);
    return;
  }
  agree(hits / of, p, Math.sqrt((p * (1 - p)) / of), slack, what && `${what}: `);
}

/** Mean of one independent value a run; the error comes from their own spread. */
export function expectMean(values: ArrayLike<number>, expected: number, what = '', slack = 0): void {
  expect(values.length, 'values').toBeGreaterThan(1);
  agree(mean(values), expected, errorOfMean(values), slack, what && `${what}: `);
}

/** Σ top / Σ bottom over independent runs. **Source:** ratio estimator, Cochran 1977, Sampling Techniques, ch. 6 (from memory). */
export function expectRatio(top: ArrayLike<number>, bottom: ArrayLike<number>, expected: number, what = ''): void {
  const ratio = total(top) / total(bottom);
  const residuals = Array.from(top, (value, i) => value - ratio * bottom[i]!);
  agree(ratio, expected, errorOfMean(residuals) / mean(bottom), 0, what && `${what}: `);
}

/** Sample variance of independent values; its error from their own fourth moment. */
export function expectVariance(values: ArrayLike<number>, expected: number, what = ''): void {
  const middle = mean(values);
  const squares = Array.from(values, (value) => (value - middle) ** 2);
  agree((mean(squares) * values.length) / (values.length - 1), expected, errorOfMean(squares), 0, what && `${what}: `);
}
