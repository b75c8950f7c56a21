import type { ChanceAt } from '../../decisions/when.ts';
import { drawLetters } from '../letter.ts';
import { drawPanel } from '../panel/draw.ts';
import { canvas, group, marks, round } from '../svg.ts';
import type { WhenLayout } from './layout.ts';

/** Draws what is saved and what the plan comes to, by age at grafting; and the age that is read. */
export function drawWhen(svg: SVGSVGElement, layout: WhenLayout, reading: ChanceAt | null): void {
  const { upper, lower, drop, stands, plot, x, y } = layout;
  const all = canvas(svg, layout.width, layout.height);
  // The level ages run through the gap between the panels as well.
  marks(group(all, 'gap'), 'rect', 'stretch', upper.stretches)
    .attr('x', ({ from }) => round(from))
    .attr('width', ({ from, to }) => round(to - from))
    .attr('y', upper.plot.bottom)
    .attr('height', lower.plot.top - upper.plot.bottom);
  drawPanel(group(all, 'upper'), upper);
  drawPanel(group(all, 'lower'), lower);
  marks(group(all, 'drop'), 'line', 'panel-rule', [drop])
    .attr('x1', round(drop.x))
    .attr('x2', round(drop.x))
    .attr('y1', round(drop.from + 7))
    .attr('y2', round(drop.to));
  drawLetters(group(all, 'letters'), stands ? [stands] : [], { around: true, lifted: null });
  const read = group(all, 'reading');
  const at = reading ? [reading] : [];
  marks(read, 'line', 'reading-rule', at)
    .attr('x1', ({ month }) => round(x(month)))
    .attr('x2', ({ month }) => round(x(month)))
    .attr('y1', plot.top)
    .attr('y2', plot.bottom);
  marks(read, 'circle', 'ring', at)
    .attr('cx', ({ month }) => round(x(month)))
    .attr('cy', ({ outcome }) => round(y(outcome.chance.value)))
    .attr('r', 5);
}
