import type { RootsPoint } from '../../decisions/roots-line.ts';
import { drawPanel } from '../panel/draw.ts';
import { canvas, group, marks, round } from '../svg.ts';
import type { RootsLayout } from './roots.ts';

/** Draws the two chances over the chance that weakness sits in the roots, and the place that is read. */
export function drawRoots(svg: SVGSVGElement, { panel, width, height, x }: RootsLayout, reading: RootsPoint | null): void {
  const all = canvas(svg, width, height);
  drawPanel(group(all, 'panel'), panel);
  marks(group(all, 'reading'), 'line', 'reading-rule', reading ? [reading] : [])
    .attr('x1', ({ rootChance }) => round(x(rootChance)))
    .attr('x2', ({ rootChance }) => round(x(rootChance)))
    .attr('y1', panel.plot.top)
    .attr('y2', panel.plot.bottom);
}
