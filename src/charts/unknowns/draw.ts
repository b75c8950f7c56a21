import { canvas, group, marks, round, type Part } from '../svg.ts';
import type { BarRow, BarsLayout } from './layout.ts';

/** A shorter bar, px, has no room for an edge round its range. */
const SHORT = 90;

/** Draws one row: hairlines, the outline with the others, the bar alone, and its range. */
export function drawBar(svg: SVGSVGElement, layout: BarsLayout, row: BarRow): void {
  const { ticks, middle, bar, outline, height } = layout;
  const all = canvas(svg, layout.width, height);
  const [zero] = ticks;
  const from = zero?.x ?? 0;
  marks(group(all, 'grid'), 'line', 'hair', ticks.slice(1))
    .attr('x1', ({ x }) => round(x))
    .attr('x2', ({ x }) => round(x))
    .attr('y1', 0)
    .attr('y2', height);
  marks(group(all, 'outlines'), 'rect', 'together', row.total === null ? [] : [row.total])
    .attr('x', round(from))
    .attr('y', round(middle - outline / 2))
    .attr('width', (total) => round(Math.max(0, total - from)))
    .attr('height', outline);
  marks(group(all, 'bars'), 'rect', 'alone', [row.first])
    .attr('x', round(from))
    .attr('y', round(middle - bar / 2))
    .attr('width', (first) => round(Math.max(0, first - from)))
    .attr('height', bar);
  const ranges = group(all, 'ranges');
  // On the bar itself a pale edge keeps the line visible; a short bar would be cut in two by it.
  const onBar = row.first - from >= SHORT ? [{ from: row.whisker.from, to: row.first }] : [];
  drawRange(ranges, 'whisker-ground', onBar, middle);
  drawRange(ranges, 'whisker', [row.whisker], middle);
  marks(group(all, 'zero'), 'line', 'baseline', [from]).attr('x1', round).attr('x2', round).attr('y1', 0).attr('y2', height);
}

function drawRange(into: Part, name: string, lines: readonly BarRow['whisker'][], y: number): void {
  marks(into, 'line', name, lines)
    .attr('x1', ({ from }) => round(from))
    .attr('x2', ({ to }) => round(to))
    .attr('y1', round(y))
    .attr('y2', round(y));
}

/** Draws the scale over the column. */
export function drawScale(svg: SVGSVGElement, { ticks, width }: BarsLayout): void {
  const last = ticks.length - 1;
  marks(group(canvas(svg, width, 24), 'scale'), 'text', 'scale-number', ticks)
    .attr('x', ({ x }) => round(x))
    .attr('y', 17)
    .attr('text-anchor', (_, i) => (i === 0 ? 'start' : i === last ? 'end' : 'middle'))
    .text(({ text }) => text);
}
