import { drawLetters } from '../letter.ts';
import { canvas, group, marks, round } from '../svg.ts';
import type { FromTodayLayout } from './layout.ts';

/** Draws a row a plan: a ring for the first forecast, a full mark for the one from today, each with its interval, and a line from one to the other. */
export function drawFromToday(svg: SVGSVGElement, { width, height, plot, ticks, rows, valueX, beforeX }: FromTodayLayout): void {
  const all = canvas(svg, width, height);
  const grid = group(all, 'grid');
  marks(grid, 'line', 'hair', ticks)
    .attr('x1', ({ x }) => round(x))
    .attr('x2', ({ x }) => round(x))
    .attr('y1', plot.top - 6)
    .attr('y2', plot.bottom);
  const moved = rows.flatMap(({ mark, y, now, first }) => (first ? [{ mark, y, from: first, to: now }] : []));
  marks(group(all, 'moves'), 'line', 'move', moved)
    .attr('data-mark', ({ mark }) => mark)
    .attr('x1', ({ from }) => round(from.x))
    .attr('x2', ({ to }) => round(to.x))
    .attr('y1', ({ y }) => round(y))
    .attr('y2', ({ y }) => round(y));
  const spans = [...moved.map(({ mark, y, from }) => ({ mark, y, of: from })), ...rows.map(({ mark, y, now }) => ({ mark, y, of: now }))];
  marks(group(all, 'spans'), 'line', 'span', spans)
    .attr('data-mark', ({ mark }) => mark)
    .attr('x1', ({ of }) => round(of.low))
    .attr('x2', ({ of }) => round(of.high))
    .attr('y1', ({ y }) => round(y))
    .attr('y2', ({ y }) => round(y));
  marks(group(all, 'befores'), 'circle', 'before', moved)
    .attr('data-mark', ({ mark }) => mark)
    .attr('cx', ({ from }) => round(from.x))
    .attr('cy', ({ y }) => round(y))
    .attr('r', 7);
  marks(group(all, 'nows'), 'rect', 'now', rows)
    .attr('data-mark', ({ mark }) => mark)
    .attr('x', ({ now }) => round(now.x - 6))
    .attr('y', ({ y }) => round(y - 9))
    .attr('width', 12)
    .attr('height', 18);
  const words = group(all, 'words');
  marks(words, 'text', 'across', ticks)
    .attr('x', ({ x }) => round(x))
    .attr('y', 18)
    .attr('text-anchor', ({ anchor }) => anchor)
    .text(({ text }) => text);
  marks(words, 'text', 'value', rows)
    .attr('x', round(valueX))
    .attr('y', ({ y }) => round(y + 6))
    .text(({ value }) => value);
  marks(words, 'text', 'was', beforeX === null ? [] : rows)
    .attr('x', round(beforeX ?? 0))
    .attr('y', ({ y }) => round(y + 6))
    .text(({ before }) => before);
  drawLetters(
    group(all, 'letters'),
    rows.map(({ plan, mark, y, letterX }) => ({ plan, mark, x: letterX, y, r: 13 })),
    { lifted: null },
  );
}
