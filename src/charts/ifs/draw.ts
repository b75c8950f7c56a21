import { drawPanel } from '../panel/draw.ts';
import { canvas, group, marks, round } from '../svg.ts';
import type { IfLayout, IfPicture } from './layout.ts';

/** Draws the curves of one if, and the year that is read. */
export function drawIf(svg: SVGSVGElement, { width, height, panel, x, y }: IfLayout, { lines }: IfPicture, reading: number | null): void {
  const all = canvas(svg, width, height);
  drawPanel(group(all, 'panel'), panel);
  const read = group(all, 'reading');
  marks(read, 'line', 'reading-rule', reading === null ? [] : [reading])
    .attr('x1', (year) => round(x(year)))
    .attr('x2', (year) => round(x(year)))
    .attr('y1', panel.plot.top)
    .attr('y2', panel.plot.bottom);
  marks(
    read,
    'circle',
    'ring',
    lines.flatMap(({ curve }) => (curve ?? []).filter(({ year }) => year === reading)),
  )
    .attr('cx', ({ year }) => round(x(year)))
    .attr('cy', ({ chance }) => round(y(chance.value)))
    .attr('r', 4);
}
