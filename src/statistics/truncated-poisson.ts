import { exp, log } from '../random/elementary.ts';

/** Shares of 1 … atMost under the parameter exp(logRate), scaled by their largest so that nothing overflows, and their mean and variance. */
function conditioned(logRate: number, atMost: number): { table: Float64Array; mean: number; variance: number } {
  const logs = new Float64Array(atMost);
  let running = 0;
  for (let k = 1; k <= atMost; k++) {
    running += logRate - log(k);
    logs[k - 1] = running;
  }
  const largest = logs.reduce((most, value) => Math.max(most, value), -Infinity);
  const weights = logs.map((value) => exp(value - largest));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const table = weights.map((weight) => weight / total);
  const mean = table.reduce((sum, p, i) => sum + p * (i + 1), 0);
  const variance = table.reduce((sum, p, i) => sum + p * (i + 1 - mean) * (i + 1 - mean), 0);
  return { table, mean, variance };
}

/**
 * Returns the chances of 1 … atMost seeds in a fruit that has any: a Poisson conditioned on that range, with the stated mean.
 * @param mean mean number of seeds, at least 1; exactly 1 gives one seed in every fruit
 * @param atMost most seeds a fruit can hold, whole and at least 1
 * @returns `atMost` chances that sum to 1; entry 0 belongs to one seed. The mean is met to about 1e-12.
 * @throws RangeError when mean < 1, or mean ≥ atMost (and not 1): no such distribution exists
 *
 * **Source:** docs/model.md §6; the truncated Poisson is an exponential family, whose mean rises with the log of its parameter at the rate
 *   of its variance (own derivation), solved by guarded Newton steps.
 */
export function seedsPerFruitTable(mean: number, atMost: number): Float64Array {
  if (!Number.isInteger(atMost) || atMost < 1) throw new RangeError('The most seeds a fruit can hold must be a whole number of at least 1.');
  if (!(mean >= 1)) throw new RangeError('A fruit that has seed has at least one: the mean cannot be below 1.');
  if (mean === 1) return Float64Array.from({ length: atMost }, (_, i) => (i === 0 ? 1 : 0));
  if (mean >= atMost) throw new RangeError('The mean number of seeds must be below the most that a fruit can hold.');
  let low = -50;
  let high = 50 + log(atMost);
  let logRate = log(mean);
  for (let round = 0; round < 200; round++) {
    const now = conditioned(logRate, atMost);
    const gap = mean - now.mean;
    if (Math.abs(gap) <= 1e-13 * mean) break;
    if (gap > 0) low = logRate;
    else high = logRate;
    const next = logRate + gap / now.variance;
    logRate = next > low && next < high ? next : (low + high) / 2;
  }
  return conditioned(logRate, atMost).table;
}
