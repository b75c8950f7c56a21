import { jeffreys, perFlower } from '../statistics/interval.ts';
import type { Estimate } from '../model/estimate.ts';
import { meanOf } from '../model/mean.ts';

export type Range = readonly [low: number, likely: number, high: number];

const NORMAL_95 = 1.96;

/** Low, likely and high of any estimate. Of a count: the mean of its Beta and about 95 % around it, within 0 and 1. */
export function rangeOf(estimate: Estimate): Range {
  if (typeof estimate === 'number') return [estimate, estimate, estimate];
  if ('value' in estimate) return [estimate.value, estimate.value, estimate.value];
  if ('low' in estimate) return [estimate.low, estimate.likely, estimate.high];
  if ('oneOf' in estimate) {
    const values = estimate.oneOf.map(({ value }) => value);
    return [Math.min(...values), meanOf(estimate), Math.max(...values)];
  }
  const { alpha, beta } = jeffreys(estimate.hits, estimate.of);
  const mean = alpha / (alpha + beta);
  const reach = NORMAL_95 * Math.sqrt((mean * (1 - mean)) / (alpha + beta + 1));
  const flower = (share: number) => perFlower(Math.min(1, Math.max(0, share)), estimate.unit?.flowers ?? 1);
  return [flower(mean - reach), flower(mean), flower(mean + reach)];
}
