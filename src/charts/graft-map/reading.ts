import type { GraftMap } from '../../decisions/graft-map.ts';
import type { MapPoint } from '../../decisions/standing.ts';
import type { Box } from '../boxes.ts';
import type { Press } from '../reading.ts';

type Grid = Pick<GraftMap, 'halfLives' | 'takes'>;

/** Cells that Shift and Page keys go. */
const STRIDE = 3;

/** The cell of a map nearest to a point: its index among the cells. */
export function cellNear({ halfLives, takes }: Grid, { halfLife, take }: MapPoint): number {
  const nearest = (values: readonly number[], distance: (value: number) => number) =>
    values.reduce((best, value, i) => (distance(value) < distance(values[best] ?? value) ? i : best), 0);
  const column = nearest(halfLives, (months) => Math.abs(Math.log(months / halfLife)));
  return nearest(takes, (share) => Math.abs(share - take)) * halfLives.length + column;
}

/**
 * The cell after a key: left and right go along the months, up and down along the take, with Shift three at once; Home and End to the ends
 * of a row, Escape to none.
 * @param at index of the cell that is read; null for none
 * @param start the cell that any arrow comes to first
 * @returns undefined for keys that mean nothing here
 */
export function cellAfter({ key, shiftKey }: Press, at: number | null, { halfLives, takes }: Grid, start: number): number | null | undefined {
  const across = halfLives.length;
  const from = at ?? start;
  const [row, column] = [Math.floor(from / across), from % across];
  const step = shiftKey ? STRIDE : 1;
  const to = (r: number, c: number) => (at === null ? start : Math.min(takes.length - 1, Math.max(0, r)) * across + Math.min(across - 1, Math.max(0, c)));
  switch (key) {
    case 'ArrowRight':
      return to(row, column + step);
    case 'ArrowLeft':
      return to(row, column - step);
    case 'ArrowUp':
      return to(row + step, column);
    case 'ArrowDown':
      return to(row - step, column);
    case 'PageUp':
      return to(row + STRIDE, column);
    case 'PageDown':
      return to(row - STRIDE, column);
    case 'Home':
      return to(row, 0);
    case 'End':
      return to(row, across - 1);
    case 'Escape':
      return null;
    default:
      return undefined;
  }
}

/** The cell of another map of the same plan that lies where a cell of this one does. */
export function sameCell({ halfLives, takes }: Grid, at: number, other: Grid): number {
  const across = halfLives.length;
  return cellNear(other, { halfLife: halfLives[at % across] ?? 1, take: takes[Math.floor(at / across)] ?? 0 });
}

/** The cell under a point of the picture; null outside all. */
export function cellUnder(cells: readonly Box[], x: number, y: number): number | null {
  const at = cells.findIndex(({ left, right, top, bottom }) => x >= left && x < right && y >= top && y < bottom);
  return at < 0 ? null : at;
}
