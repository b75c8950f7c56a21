import { canvas, group, marks, round, type Part } from '../svg.ts';
import type { FaredLayout } from './layout.ts';

/** Draws bars of what was forecast and dots of what came; a row that is read gets a ground. */
export function drawFared(svg: SVGSVGElement, layout: FaredLayout, reading: number | null): void {
  const { width, height, plot, ticks, heads, rows, today } = layout;
  const all = canvas(svg, width, height);
  marks(group(all, 'read'), 'rect', 'stretch', reading === null ? [] : rows.slice(reading, reading + 1))
    .attr('x', 0)
    .attr('width', width)
    .attr('y', ({ y, textY }) => round(Math.min(y, textY - 6) - 15))
    .attr('height', ({ y, textY }) => round(y - Math.min(y, textY - 6) + 30));
  const grid = group(all, 'grid');
  marks(grid, 'line', 'hair', ticks)
    .attr('x1', ({ x }) => round(x))
    .attr('x2', ({ x }) => round(x))
    .attr('y1', plot.top)
    .attr('y2', plot.bottom);
  marks(grid, 'line', 'panel-rule', [today])
    .attr('data-kind', 'level')
    .attr('x1', (x) => round(x))
    .attr('x2', (x) => round(x))
    .attr('y1', plot.top)
    .attr('y2', plot.bottom);
  drawRows(all, layout);
  const words = group(all, 'words');
  marks(words, 'text', 'across', ticks)
    .attr('x', ({ x }) => round(x))
    .attr('y', 20)
    .attr('text-anchor', ({ anchor }) => anchor)
    .text(({ text }) => text);
  marks(words, 'text', 'head', heads)
    .attr('x', 0)
    .attr('y', ({ y }) => round(y))
    .text(({ text }) => text);
  marks(words, 'text', 'label', rows)
    .attr('x', 0)
    .attr('y', ({ textY }) => round(textY))
    .text(({ label }) => label);
}

function drawRows(all: Part, { rows }: FaredLayout): void {
  const bars = rows.flatMap(({ bar, y }) => (bar ? [{ ...bar, y }] : []));
  marks(group(all, 'bars'), 'rect', 'bar', bars)
    .attr('x', ({ from }) => round(from))
    .attr('width', ({ from, to }) => round(Math.max(2, to - from)))
    .attr('y', ({ y }) => round(y - 8))
    .attr('height', 16);
  marks(
    group(all, 'middles'),
    'line',
    'middle',
    rows.flatMap(({ middle, y }) => (middle === null ? [] : [{ x: middle, y }])),
  )
    .attr('x1', ({ x }) => round(x))
    .attr('x2', ({ x }) => round(x))
    .attr('y1', ({ y }) => round(y - 8))
    .attr('y2', ({ y }) => round(y + 8));
  const came = rows.flatMap(({ came: x, y, missed }) => (x === null ? [] : [{ x, y, missed }]));
  // A dot that missed its bar is a ring with a point: told by form, not by colour alone.
  marks(group(all, 'dots'), 'circle', 'dot', came)
    .classed('missed', ({ missed }) => missed)
    .attr('cx', ({ x }) => round(x))
    .attr('cy', ({ y }) => round(y))
    .attr('r', 7);
  marks(
    group(all, 'points'),
    'circle',
    'point',
    came.filter(({ missed }) => missed),
  )
    .attr('cx', ({ x }) => round(x))
    .attr('cy', ({ y }) => round(y))
    .attr('r', 2.5);
}
