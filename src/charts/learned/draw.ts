import { area, curveMonotoneX, line } from 'd3';
import { canvas, group, marks, round } from '../svg.ts';
import type { RateLayoutRow, RatesLayout } from './layout.ts';

const path = line<{ readonly x: number; readonly y: number }>()
  .x(({ x }) => x)
  .y(({ y }) => y)
  .curve(curveMonotoneX);

/** Draws belief before and now for every learned number, and a frame around the one that is read. */
export function drawRates(svg: SVGSVGElement, { rows, width, height }: RatesLayout, reading: number | null): void {
  const all = canvas(svg, width, height);
  const read = reading === null ? undefined : rows[reading];
  marks(group(all, 'frames'), 'rect', 'rate-read', read ? [read] : [])
    .attr('x', -8)
    .attr('width', width + 16)
    .attr('y', ({ top }) => round(top + 3))
    .attr('height', (row) => round(row.bottom - row.top - 6));
  const grid = group(all, 'grid');
  marks(grid, 'line', 'hair', rows.slice(1))
    .attr('x1', 0)
    .attr('x2', width)
    .attr('y1', ({ top }) => round(top))
    .attr('y2', ({ top }) => round(top));
  marks(grid, 'line', 'baseline', rows)
    .attr('x1', ({ plot }) => round(plot.left))
    .attr('x2', ({ plot }) => round(plot.right))
    .attr('y1', ({ plot }) => round(plot.base))
    .attr('y2', ({ plot }) => round(plot.base));
  const filled = area<RateLayoutRow['after'][number]>()
    .x(({ x }) => x)
    .y1(({ y }) => y)
    .curve(curveMonotoneX);
  marks(group(all, 'after'), 'path', 'belief-now', rows).attr('d', ({ after, plot }) => filled.y0(plot.base)(after));
  marks(group(all, 'before'), 'path', 'belief-before', rows).attr('d', ({ before }) => path(before));
  marks(group(all, 'middle'), 'line', 'belief-middle', rows)
    .attr('x1', ({ middle }) => round(middle.x))
    .attr('x2', ({ middle }) => round(middle.x))
    .attr('y1', ({ middle }) => round(middle.y))
    .attr('y2', ({ plot }) => round(plot.base));
  const words = group(all, 'words');
  marks(
    words,
    'text',
    'rate-end',
    rows.flatMap(({ ends, plot }) => ends.map((end) => ({ ...end, y: plot.base + 19 }))),
  )
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .attr('text-anchor', ({ anchor }) => anchor)
    .text(({ text }) => text);
  marks(
    words,
    'text',
    'rate-words',
    rows.flatMap((row) => row.words),
  )
    .attr('data-kind', ({ kind }) => kind)
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .text(({ text }) => text);
}
