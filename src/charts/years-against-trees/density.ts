import { blur2, contours } from 'd3';

export interface GridOptions {
  /** Size of the drawing, px, and of a cell. */
  readonly width: number;
  readonly height: number;
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

/** Cells beside the drawing, so that what is smoothed over its edge is not thrown back. */
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
  const pad = Math.ceil((PAD_BANDWIDTHS * bandwidth) / cell);
  const columns = Math.ceil(options.width / cell) + 2 * pad;
  const rows = Math.ceil(options.height / cell) + 2 * pad;
  const column = (x: number) => Math.min(columns - 1, Math.max(0, x / cell + pad));
  const row = (y: number) => Math.min(rows - 1, Math.max(0, Math.floor(y / cell + pad)));
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
    return { share, polygons: coordinates.map((polygon) => polygon.map((ring) => ring.map(([x, y]) => [((x ?? 0) - pad) * cell, ((y ?? 0) - pad) * cell] as const))) };
  });
}
