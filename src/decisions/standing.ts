import type { FactReader } from '../engine/fact-reader.ts';
import { quantileSorted } from '../statistics/order.ts';
import { takeAt } from '../statistics/graft.ts';

/** Futures whose facts are read: what the guesses allow. */
export const FACTS_READ = 400;
const RING_POINTS = 48;

/** A point of the map: half are dead by so many months after the onset; share of grafts that take. */
export interface MapPoint {
  readonly halfLife: number;
  readonly take: number;
}

/** Where a programme stands on the map, with its guesses. */
export interface Standing {
  /** Middle of the draws. */
  readonly middle: MapPoint;
  /** Closed outlines that hold this share of the draws; all points are the same where nothing is left open. */
  readonly rings: readonly { readonly share: number; readonly outline: readonly MapPoint[] }[];
  /** The draws themselves, one a future. */
  readonly draws: readonly MapPoint[];
}

/** Reads half-life and take in the first futures. A half-life out of the map is put on its edge. */
export function standing(reader: FactReader, cross: string, stock: string, month: number, [shortest, longest]: readonly [number, number]): Standing {
  const draws = Array.from({ length: FACTS_READ }, (_, run): MapPoint => {
    reader.goTo(run);
    const { halfLife } = reader.weak(cross);
    const wood = reader.stock(stock);
    return {
      halfLife: Math.min(longest, Math.max(shortest, halfLife)),
      take: takeAt(month, wood.takeTender, wood.takeRipe, wood.ripeMonths),
    };
  });
  return { ...ringsOf(draws), draws };
}

/**
 * Draws rings round the middle of points: egg-shaped, each half-axis as long as the points spread to that side (16, 50, 84 %), and blown up
 * until the ring holds the share. Own derivation; the two coordinates are drawn independently, so the rings need no slant.
 */
export function ringsOf(points: readonly MapPoint[], shares: readonly number[] = [0.5, 0.9]): Omit<Standing, 'draws'> {
  const across = sides(points.map(({ halfLife }) => Math.log(halfLife)));
  const up = sides(points.map(({ take }) => take));
  const distances = Float64Array.from(points, ({ halfLife, take }) => Math.hypot(across.steps(Math.log(halfLife)), up.steps(take))).sort();
  const at = (radius: number, angle: number): MapPoint => ({
    halfLife: Math.exp(across.from(radius * Math.cos(angle))),
    take: Math.min(1, Math.max(0, up.from(radius * Math.sin(angle)))),
  });
  return {
    middle: at(0, 0),
    rings: shares.map((share) => {
      const radius = quantileSorted(distances, share);
      return { share, outline: Array.from({ length: RING_POINTS }, (_, i) => at(radius, (2 * Math.PI * i) / RING_POINTS)) };
    }),
  };
}

/** A scale with its own step to either side of the middle. */
function sides(values: readonly number[]): { steps: (value: number) => number; from: (steps: number) => number } {
  const sorted = Float64Array.from(values).sort();
  const middle = quantileSorted(sorted, 0.5);
  // Where few values lie to a side (alternatives), the furthest of them is the measure.
  const below = middle - quantileSorted(sorted, 0.16) || middle - (sorted[0] ?? middle);
  const above = quantileSorted(sorted, 0.84) - middle || (sorted.at(-1) ?? middle) - middle;
  return {
    steps: (value) => (value === middle ? 0 : (value - middle) / (value < middle ? below : above)),
    from: (steps) => middle + steps * (steps < 0 ? below : above),
  };
}
