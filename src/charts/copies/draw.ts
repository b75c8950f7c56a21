import type { CopiesAnswer } from '../../decisions/copies.ts';
import { drawPanel } from '../panel/draw.ts';
import { canvas, group, marks, round } from '../svg.ts';
import type { CopiesLayout } from './layout.ts';

/** Draws a line for every number of copies, and the year that is read (winters from the first year). */
export function drawCopies(svg: SVGSVGElement, { width, height, panel, x, y }: CopiesLayout, { ways }: CopiesAnswer, reading: number | null): void {
  const all = canvas(svg, width, height);
  drawPanel(group(all, 'panel'), panel);
  const read = group(all, 'reading');
  const at = reading === null ? [] : [reading];
  marks(read, 'line', 'reading-rule', at)
    .attr('x1', (winters) => round(x(winters)))
    .attr('x2', (winters) => round(x(winters)))
    .attr('y1', panel.plot.top)
    .attr('y2', panel.plot.bottom);
  marks(
    read,
    'circle',
    'ring',
    at.flatMap((winters) => ways.map(({ lostBy }) => ({ winters, share: lostBy[winters] ?? 0 }))),
  )
    .attr('cx', ({ winters }) => round(x(winters)))
    .attr('cy', ({ share }) => round(y(share)))
    .attr('r', 4);
}
