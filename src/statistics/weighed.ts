/** Values of a grid in rising order, the borders of their cells and the share of belief in each cell. */
export interface Grid {
  readonly values: readonly number[];
  /** One more than values: cell i lies between border i and border i + 1. */
  readonly borders: readonly number[];
  /** Sum to 1. */
  readonly weights: readonly number[];
}

/** What is believed of one number after counting. */
export interface Belief {
  readonly mean: number;
  readonly sd: number;
  /** 1 in 10 lies below, 1 in 10 above. */
  readonly low: number;
  readonly high: number;
  /** Value below which a share u of the belief lies; linear within a cell. */
  readonly quantile: (u: number) => number;
  /** Density at the values of the grid, in rising order: belief per unit of the value. */
  readonly density: () => readonly (readonly [value: number, density: number])[];
}

/** Turns logarithms of weights, of any size, into weights that sum to 1. */
export function normalised(logs: readonly number[]): number[] {
  const most = logs.reduce((a, b) => Math.max(a, b), -Infinity);
  const raw = logs.map((one) => (one === -Infinity ? 0 : Math.exp(one - most)));
  const total = raw.reduce((sum, one) => sum + one, 0);
  return raw.map((one) => one / total);
}

/** ln(Σ e^x), without overflow; −∞ for none. */
export function logSum(logs: readonly number[]): number {
  const most = logs.reduce((a, b) => Math.max(a, b), -Infinity);
  if (most === -Infinity) return -Infinity;
  return most + Math.log(logs.reduce((sum, one) => sum + Math.exp(one - most), 0));
}

/**
 * Summarises belief on a grid.
 * @param grid at least one value
 */
export function beliefOf({ values, borders, weights }: Grid): Belief {
  const mean = values.reduce((sum, value, i) => sum + value * (weights[i] ?? 0), 0);
  const variance = values.reduce((sum, value, i) => sum + (value - mean) ** 2 * (weights[i] ?? 0), 0);
  const quantile = (u: number): number => {
    let below = 0;
    for (let i = 0; i < values.length; i += 1) {
      const here = weights[i] ?? 0;
      if (here > 0 && below + here >= u) {
        const [from = 0, to = 0] = [borders[i], borders[i + 1]];
        return from + (to - from) * Math.min(1, Math.max(0, (u - below) / here));
      }
      below += here;
    }
    return borders[borders.length - 1] ?? NaN;
  };
  const density = () =>
    values.flatMap((value, i): [number, number][] => {
      const width = (borders[i + 1] ?? 0) - (borders[i] ?? 0);
      return width > 0 ? [[value, (weights[i] ?? 0) / width]] : [];
    });
  return { mean, sd: Math.sqrt(variance), low: quantile(0.1), high: quantile(0.9), quantile, density };
}

/** Evenly spaced nodes at the middles of equal cells between two ends. */
export function cells(from: number, to: number, count: number): { readonly values: number[]; readonly borders: number[] } {
  const step = (to - from) / count;
  return {
    values: Array.from({ length: count }, (_, i) => from + (i + 0.5) * step),
    borders: Array.from({ length: count + 1 }, (_, i) => from + i * step),
  };
}
