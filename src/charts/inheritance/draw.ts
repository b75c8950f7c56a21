import { canvas, group, marks, round } from '../svg.ts';
import type { ChanceLayout } from './layout.ts';

/** Draws chances as dots on a line from never to always, with a dashed ring where each was before. */
export function drawChances(svg: SVGSVGElement, { rows, width, height, ticks, axis }: ChanceLayout, reading: number | null): void {
  const all = canvas(svg, width, height);
  const read = reading === null ? undefined : rows[reading];
  marks(group(all, 'frames'), 'rect', 'rate-read', read ? [read] : [])
    .attr('x', -8)
    .attr('width', width + 16)
    .attr('y', ({ top }) => round(top + 1))
    .attr('height', (row) => round(row.bottom - row.top - 2));
  const grid = group(all, 'grid');
  const stretches = rows.flatMap((row) => ticks.map(({ x }) => ({ x, from: row.y - 9, to: row.y + 9 })));
  marks(grid, 'line', 'hair', stretches)
    .attr('x1', ({ x }) => round(x))
    .attr('x2', ({ x }) => round(x))
    .attr('y1', ({ from }) => round(from))
    .attr('y2', ({ to }) => round(to));
  marks(grid, 'line', 'baseline', rows)
    .attr('x1', ({ left }) => round(left))
    .attr('x2', ({ right }) => round(right))
    .attr('y1', ({ y }) => round(y))
    .attr('y2', ({ y }) => round(y));
  const moved = rows.flatMap(({ before, after, y }) => (before === null ? [] : [{ before, after, y }]));
  marks(group(all, 'moves'), 'line', 'belief-move', moved)
    .attr('x1', ({ before }) => round(before))
    .attr('x2', ({ after }) => round(after))
    .attr('y1', ({ y }) => round(y))
    .attr('y2', ({ y }) => round(y));
  marks(group(all, 'before'), 'circle', 'belief-ring', moved)
    .attr('cx', ({ before }) => round(before))
    .attr('cy', ({ y }) => round(y))
    .attr('r', 8);
  marks(group(all, 'after'), 'circle', 'belief-dot', rows)
    .attr('cx', ({ after }) => round(after))
    .attr('cy', ({ y }) => round(y))
    .attr('r', 8);
  const words = group(all, 'words');
  marks(words, 'text', 'rate-end', ticks)
    .attr('x', ({ x }) => round(x))
    .attr('y', axis - 10)
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
