import { beliefOf, cells, normalised, type Belief } from './weighed.ts';

/** One unknown: the stretch looked at, on a scale on which belief is smooth, and the value at a point of it. */
export interface Axis {
  readonly from: number;
  readonly to: number;
  /** Rising. */
  readonly value: (at: number) => number;
  /** ln of the prior on the scale of `at`. */
  readonly logPrior: (at: number) => number;
  readonly coarse?: number;
  readonly fine?: number;
}

/** A chance on the scale of its logit. */
export function shareAxis(density: (share: number) => number, size: { coarse?: number; fine?: number } = {}): Axis {
  const value = (at: number): number => 1 / (1 + Math.exp(-at));
  return { from: -12, to: 12, value, logPrior: (at) => Math.log(density(value(at)) * value(at) * (1 - value(at))), ...size };
}

/** A positive amount between two ends, on the scale of its logarithm. */
export function amountAxis(density: (amount: number) => number, from: number, to: number, size: { coarse?: number; fine?: number } = {}): Axis {
  return { from: Math.log(from), to: Math.log(to), value: Math.exp, logPrior: (at) => Math.log(density(Math.exp(at)) * Math.exp(at)), ...size };
}

const COARSE = 30;
const FINE = 50;
/** Cells whose share of the belief is below e⁻²⁵ of the fullest of their axis are left out of the second look. */
const NEGLIGIBLE = Math.exp(-25);

interface Looked {
  readonly axes: readonly { readonly values: readonly number[]; readonly borders: readonly number[]; readonly marginal: readonly number[] }[];
}

function look(axes: readonly Axis[], sizes: readonly number[], logLikelihood: (values: readonly number[]) => number): Looked {
  const grids = axes.map((axis, d) => cells(axis.from, axis.to, sizes[d] ?? 1));
  const values = grids.map((grid, d) => grid.values.map((at) => axes[d]?.value(at) ?? at));
  const priors = grids.map((grid, d) => grid.values.map((at) => axes[d]?.logPrior(at) ?? 0));
  const logs: number[] = [];
  const point: number[] = axes.map(() => 0);
  // The last axis runs fastest, so that a likelihood can keep what depends on the others alone.
  const visit = (d: number, prior: number): void => {
    if (d === axes.length) {
      logs.push(prior === -Infinity ? -Infinity : prior + logLikelihood(point));
      return;
    }
    (values[d] ?? []).forEach((value, i) => {
      point[d] = value;
      visit(d + 1, prior + (priors[d]?.[i] ?? 0));
    });
  };
  visit(0, 0);
  const weights = normalised(logs.map((one) => (Number.isNaN(one) ? -Infinity : one)));
  return {
    axes: grids.map((grid, d) => {
      const inner = sizes.slice(d + 1).reduce((product, size) => product * size, 1);
      const marginal = new Array<number>(grid.values.length).fill(0);
      weights.forEach((weight, i) => {
        const at = Math.floor(i / inner) % marginal.length;
        marginal[at] = (marginal[at] ?? 0) + weight;
      });
      return { values: values[d] ?? [], borders: grid.borders, marginal };
    }),
  };
}

/**
 * Returns belief about a few unknowns after counting, by quadrature: a coarse grid finds where belief is, a fine one weighs it.
 * @param axes one to three
 * @param logLikelihood ln of the chance of what was counted at values in the order of the axes; the last changes fastest
 *
 * **Source:** own derivation: Bayes' rule by the midpoint rule.
 */
export function learnGrid(axes: readonly Axis[], logLikelihood: (values: readonly number[]) => number): Belief[] {
  const rough = look(
    axes,
    axes.map(({ coarse = COARSE }) => coarse),
    logLikelihood,
  );
  const narrowed = axes.map((axis, d): Axis => {
    const { marginal = [], borders = [] } = rough.axes[d] ?? {};
    const most = Math.max(...marginal);
    const kept = marginal.flatMap((one, i) => (one > most * NEGLIGIBLE ? [i] : []));
    const first = Math.max(0, (kept[0] ?? 0) - 1);
    const last = Math.min(borders.length - 1, (kept[kept.length - 1] ?? 0) + 2);
    return { ...axis, from: borders[first] ?? axis.from, to: borders[last] ?? axis.to };
  });
  const seen = look(
    narrowed,
    axes.map(({ fine = FINE }) => fine),
    logLikelihood,
  );
  return seen.axes.map(({ values, borders, marginal }, d) => {
    const { value } = narrowed[d] ?? { value: (at: number) => at };
    return beliefOf({ values, borders: borders.map(value), weights: marginal });
  });
}
