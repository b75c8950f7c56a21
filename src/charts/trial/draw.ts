import { area, curveMonotoneX } from 'd3';
import { drawPanel } from '../panel/draw.ts';
import { canvas, group, marks, round, type Part } from '../svg.ts';
import { keyLines, type TrialLayout } from './layout.ts';

const filled = area<TrialLayout['zone'][number]>()
  .x(({ x }) => x)
  .y0(({ low }) => low)
  .y1(({ high }) => high)
  .curve(curveMonotoneX);

/** Draws what trials of each size are worth, and the size that is read. */
export function drawTrial(svg: SVGSVGElement, layout: TrialLayout, reading: number | null): void {
  const { panel, width, height, zone, x } = layout;
  const all = canvas(svg, width, height);
  hatch(group(all, 'patterns'));
  for (const name of ['stretch', 'zone-lines'] as const)
    marks(group(all, 'zone'), 'path', name, zone.length > 1 ? [zone] : [])
      .attr('d', (points) => filled([...points]))
      .attr('fill', name === 'zone-lines' ? 'url(#too-small)' : null);
  drawPanel(group(all, 'panel'), panel);
  marks(group(all, 'key'), 'line', 'panel-curve', keyLines(layout))
    .attr('data-of', ({ of }) => of)
    .attr('stroke-width', (line) => line.width)
    .attr('stroke-dasharray', ({ dash }) => dash)
    .attr('x1', (line) => round(line.x))
    .attr('x2', ({ to }) => round(to))
    .attr('y1', ({ y }) => round(y))
    .attr('y2', ({ y }) => round(y));
  marks(group(all, 'reading'), 'line', 'reading-rule', reading === null ? [] : [reading])
    .attr('x1', (n) => round(x(n)))
    .attr('x2', (n) => round(x(n)))
    .attr('y1', panel.plot.top)
    .attr('y2', panel.plot.bottom);
}

/** Lines slant where a gain cannot be measured, so that the zone shows through the band over it. */
function hatch(into: Part): void {
  marks(into, 'pattern', 'too-small', ['too-small'])
    .attr('id', (id) => id)
    .attr('width', 8)
    .attr('height', 8)
    .attr('patternUnits', 'userSpaceOnUse')
    .selectAll('path')
    .data(['M0,8 L8,0'])
    .join('path')
    .attr('class', 'zone-line')
    .attr('d', (d) => d);
}
