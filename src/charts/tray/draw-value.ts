import { line } from 'd3';
import { canvas, group, marks, round } from '../svg.ts';
import type { ValueLayout } from './value.ts';

const path = line<readonly [number, number]>()
  .x(([x]) => x)
  .y(([, y]) => y);

/** Draws a family's hill in one measured trait. */
export function drawValue(svg: SVGSVGElement, layout: ValueLayout): void {
  const all = canvas(svg, layout.width, layout.height);
  const { base, parents, goals, ticks, hill, mean, middle, meanRange } = layout;
  const ground = group(all, 'ground');
  marks(ground, 'path', 'hill', [hill]).attr('d', path);
  marks(ground, 'line', 'baseline', [base]).attr('x1', round(layout.from)).attr('x2', round(layout.to)).attr('y1', round).attr('y2', round);
  const leaders = group(all, 'leaders');
  marks(leaders, 'line', 'goal-rule', goals)
    .attr('x1', ({ x }) => round(x))
    .attr('x2', ({ x }) => round(x))
    .attr('y1', ({ textY }) => round(textY + 6))
    .attr('y2', round(base + 6));
  marks(leaders, 'line', 'leader', parents)
    .attr('x1', ({ x }) => round(x))
    .attr('x2', ({ x }) => round(x))
    .attr('y1', ({ textY }) => round(textY + 6))
    .attr('y2', round(base));
  const figures = group(all, 'figures');
  marks(figures, 'rect', 'mean-range', meanRange ? [meanRange] : [])
    .attr('x', ([from]) => round(from))
    .attr('width', ([from, to]) => round(to - from))
    .attr('y', round(base - 7))
    .attr('height', 14);
  marks(figures, 'path', 'bar', [middle]).attr('d', ([from, to]) => `M${round(from)},${round(base - 6)} v12 m0,-6 H${round(to)} m0,-6 v12`);
  marks(figures, 'circle', 'dot', [mean]).attr('cx', round).attr('cy', round(base)).attr('r', 6.5);
  marks(figures, 'circle', 'ring', parents)
    .attr('cx', ({ x }) => round(x))
    .attr('cy', round(base))
    .attr('r', 6);
  const words = group(all, 'words');
  marks(words, 'text', 'mark-name', [...parents, ...goals])
    .classed('goal', (one) => goals.includes(one))
    .attr('text-anchor', 'middle')
    .attr('x', ({ textX }) => round(textX))
    .attr('y', ({ textY }) => round(textY))
    .text(({ text }) => text);
  marks(words, 'text', 'tick', ticks)
    .attr('x', ({ x }) => round(x))
    .attr('y', round(base + 25))
    .text(({ text }) => text);
}
