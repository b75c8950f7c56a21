import { blur2, contours, max, min } from 'd3';

export interface GridOptions {
  /** Size of a cell, px. */
  readonly cell: number;
  /** Standard deviation of the smoothing, px. */
  readonly bandwidth: number;
}

/** A success on the drawing: a bar of px between x0 and x1 (it is known only to the year), at a height. */
export interface Spot {
  readonly x0: number;
  readonly x1: number;
  readonly y: number;
}

/** One outline: rings of px, the first of each polygon outside, the others holes. */
export interface Outline {
  readonly share: number;
  readonly polygons: readonly (readonly (readonly (readonly [number, number])[])[])[];
}

/** Cells beside the outermost spots, so that what is smoothed over the edge is not thrown back. */
const PAD_BANDWIDTHS = 3;

/**
 * Outlines that hold the given shares of all spots where they lie closest: highest-density regions of a smoothed count.
 * @param spots px
 * @param shares 0–1
 *
 * **Source:** Hyndman, R. J. (1996) Am. Stat. 50:120–126: the threshold is a quantile of the density at the observations themselves.
 */
export function outlines(spots: readonly Spot[], shares: readonly number[], options: GridOptions): Outline[] {
  if (spots.length === 0) return [];
  const { cell, bandwidth } = options;
  const pad = PAD_BANDWIDTHS * bandwidth;
  const origin = { x: (min(spots, ({ x0 }) => x0) ?? 0) - pad, y: (min(spots, (spot) => spot.y) ?? 0) - pad };
  const columns = Math.ceil(((max(spots, ({ x1 }) => x1) ?? 0) + pad - origin.x) / cell) + 1;
  const rows = Math.ceil(((max(spots, (spot) => spot.y) ?? 0) + pad - origin.y) / cell) + 1;
  const column = (x: number) => (x - origin.x) / cell;
  const row = (y: number) => Math.floor((y - origin.y) / cell);
  const data = new Float64Array(columns * rows);
  for (const { x0, x1, y } of spots) {
    const [from, to] = [column(x0), column(x1)];
    const width = Math.max(1e-6, to - from);
    for (let c = Math.floor(from); c <= Math.floor(to) && c < columns; c++) {
      const overlap = Math.min(to, c + 1) - Math.max(from, c);
      const index = row(y) * columns + c;
      data[index] = (data[index] ?? 0) + (to === from ? 1 : Math.max(0, overlap) / width);
    }
  }
  // d3's blur is three box blurs, which come close to a Gaussian whose deviation is the radius given.
  blur2({ data, width: columns, height: rows }, bandwidth / cell);
  const heights = spots.map(({ x0, x1, y }) => data[row(y) * columns + Math.floor(column((x0 + x1) / 2))] ?? 0).sort((a, b) => b - a);
  const shape = contours().size([columns, rows]).smooth(true);
  return shares.map((share) => {
    const threshold = heights[Math.min(heights.length - 1, Math.max(0, Math.ceil(share * heights.length) - 1))] ?? 0;
    const { coordinates } = shape.contour([...data], threshold);
    return {
      share,
      polygons: coordinates.map((polygon) => polygon.map((ring) => ring.map(([x, y]) => [(x ?? 0) * cell + origin.x, (y ?? 0) * cell + origin.y] as const))),
    };
  });
}
