import { betaPdf, betaQuantile } from '../statistics/beta.ts';
import { pertMean, pertShape } from '../statistics/pert.ts';
import type { Counted, Estimate, Ranged } from './estimate.ts';
import { countShape, middleOf, perFlower } from './estimate-forms.ts';

/** What an estimate says of a value: its mean, its middle eight of ten, and a curve over the part of the axis that matters. */
export interface Spread {
  readonly mean: number;
  /** 1 in 10 lies below, 1 in 10 above. */
  readonly low: number;
  readonly high: number;
  /** Ends of the axis of a sketch; `from` < `to`. */
  readonly from: number;
  readonly to: number;
  /** Density, in no particular unit, at a value; zero outside what can be. */
  readonly density: (value: number) => number;
}

/** A beta on [low, low + width]. */
function stretched(low: number, width: number, a: number, b: number, mean: number): Spread {
  const at = (u: number): number => low + width * betaQuantile(u, a, b);
  return { mean, low: at(0.1), high: at(0.9), from: low, to: low + width, density: (value) => betaPdf((value - low) / width, a, b) };
}

function ofRange({ low, likely, high }: Ranged): Spread | undefined {
  if (!(high > low)) return undefined;
  const { alpha, beta } = pertShape(low, likely, high);
  return stretched(low, high - low, alpha, beta, pertMean(low, likely, high));
}

/** A count in clusters of n flowers is drawn in clusters and turned into flowers, so its density is moved by p = 1 − (1 − u)^(1/n). */
function ofCount(count: Counted, sameSpringLuck: number): Spread {
  const { a, b } = countShape(count, sameSpringLuck);
  const n = count.unit?.flowers ?? 1;
  const at = (u: number): number => perFlower(betaQuantile(u, a, b), n);
  const mean = n === 1 ? a / (a + b) : at(0.5);
  // The last thousandth at either end is left off the axis: it would be paper only.
  const from = at(0.001);
  const to = at(0.999);
  const room = (to - from) / 12;
  const density = (p: number): number => (p < 0 || p > 1 ? 0 : betaPdf(1 - (1 - p) ** n, a, b) * n * (1 - p) ** (n - 1));
  return { mean, low: at(0.1), high: at(0.9), from: Math.max(0, from - room), to: Math.min(1, to + room), density };
}

/**
 * Returns what a range or a count says of its value. One number and alternatives have no curve.
 * @param sameSpringLuck how alike flowers of one spring are (ρ), for a count of fruit set or of seeds that come up; else 0
 * @returns undefined for one number, for alternatives, and for a range without width
 *
 * **Source:** docs of the forms in `estimate.ts`: PERT beta (Malcolm et al. 1959), Jeffreys' beta with Kish's design effect.
 */
export function spreadOf(estimate: Estimate, sameSpringLuck = 0): Spread | undefined {
  if (typeof estimate === 'number' || 'value' in estimate || 'oneOf' in estimate) return undefined;
  return 'low' in estimate ? ofRange(estimate) : ofCount(estimate, sameSpringLuck);
}

/** Points of a sketch: value and height, the highest 1. A density that runs to infinity at an end is looked at half a step inside. */
export function curveOf({ from, to, density }: Spread, steps = 40): readonly (readonly [number, number])[] {
  const values = Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * Math.min(steps - 0.25, Math.max(0.25, i))) / steps);
  const heights = values.map(density);
  const most = Math.max(...heights);
  return values.map((value, i) => [value, most > 0 ? (heights[i] ?? 0) / most : 0]);
}

/** Bars of alternatives: value and share of the weight. */
export function barsOf(estimate: Estimate): readonly (readonly [number, number])[] {
  if (typeof estimate === 'number' || !('oneOf' in estimate)) return [[middleOf(estimate), 1]];
  const weight = estimate.oneOf.reduce((sum, option) => sum + option.weight, 0);
  return estimate.oneOf.map((option) => [option.value, option.weight / weight]);
}
