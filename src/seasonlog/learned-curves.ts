import type { Estimate } from '../model/estimate.ts';
import { spreadOf } from '../model/estimate-spread.ts';
import type { Belief } from '../statistics/weighed.ts';
import type { Learned, LearnedCurves } from './learned-types.ts';
import type { Stated } from './priors.ts';

/** Density of a share or a time, per unit of its value. */
export type Density = (value: number) => number;
type Curve = readonly (readonly [value: number, density: number])[];

/** Points of a curve: more than a small picture can show. */
const POINTS = 80;
/** Below this part of its highest point a curve lies on its axis. */
const LEAST_HEIGHT = 1e-3;

const short = (value: number): number => Number(value.toPrecision(4));

/** Ends that an axis may have: 1, 2, 4, 6 or 8 times a power of ten. */
function roundUp(value: number): number {
  const power = 10 ** Math.floor(Math.log10(value));
  return short(([1, 2, 4, 6, 8].find((step) => step * power >= value * 0.999) ?? 10) * power);
}

/** Where an axis from 0 ends so that all but a two-hundredth of the belief lies on it, and what was said before. */
function axisEnd({ quantile }: Pick<Belief, 'quantile'>, before: Stated | null, scale: Learned['scale']): number {
  const most = Math.max(quantile(0.995), before?.high ?? (before?.mean ?? 0) * 1.3);
  const end = roundUp(Math.max(most, 1e-4));
  return scale === 'share' ? Math.min(1, end) : end;
}

const even = (to: number, density: Density): Curve =>
  Array.from({ length: POINTS }, (_, i) => {
    const value = ((i + 0.5) * to) / POINTS;
    return [short(value), short(density(value))] as const;
  });

/** The points of a belief that rise from the axis, thinned evenly. */
function afterOf(belief: Pick<Belief, 'density'>, to: number): Curve {
  const all = belief.density().filter(([value]) => value <= to);
  const top = Math.max(0, ...all.map(([, height]) => height));
  const risen = all.filter(([, height]) => height > top * LEAST_HEIGHT);
  const stride = Math.max(1, Math.ceil(risen.length / POINTS));
  return risen.filter((_, i) => i % stride === 0 || i === risen.length - 1).map(([value, height]) => [short(value), short(height)] as const);
}

/**
 * Curves of belief before and after counting over one axis.
 * @param prior null where the programme says it in another way
 */
export function curvesOf(belief: Belief, prior: Density | null, before: Stated | null, scale: Learned['scale']): LearnedCurves {
  const to = axisEnd(belief, before, scale);
  return { to, before: prior && even(to, prior), after: afterOf(belief, to) };
}

/** The curve of an estimate as the programme states it; null where it states one number. */
export function statedCurve(estimate: Estimate, to: number): Curve | null {
  const spread = spreadOf(estimate);
  if (!spread) return null;
  // The density of a sketch has no unit of its own: here all belief together is 1, as in the other curves.
  const points = even(to, (value) => (value < spread.from || value > spread.to ? 0 : spread.density(value)));
  const area = points.reduce((sum, [, height]) => sum + (height * to) / POINTS, 0);
  return area > 0 ? points.map(([value, height]) => [value, short(height / area)] as const) : null;
}
