import { jeffreys, perFlower } from '../statistics/interval.ts';
import { pertMean } from '../statistics/pert.ts';
import type { Estimate } from './estimate.ts';

/**
 * Middle of an estimate, for checks and for words: the number itself, the PERT mean (low + 4·likely + high)/6, the Jeffreys mean
 * (hits + ½)/(of + 1) a flower, or the weighted mean. The design effect of a count moves it little and is left to the engine.
 */
export function meanOf(estimate: Estimate): number {
  if (typeof estimate === 'number') return estimate;
  if ('value' in estimate) return estimate.value;
  if ('low' in estimate) return pertMean(estimate.low, estimate.likely, estimate.high);
  if ('hits' in estimate) {
    const { alpha, beta } = jeffreys(estimate.hits, estimate.of);
    return perFlower(alpha / (alpha + beta), estimate.unit?.flowers ?? 1);
  }
  const total = estimate.oneOf.reduce((sum, { weight }) => sum + weight, 0);
  return estimate.oneOf.reduce((sum, { value, weight }) => sum + (value * weight) / total, 0);
}
