import { curveMonotoneX, line } from 'd3';
import { drawRules, drawYears } from '../axis.ts';
import { drawLetters } from '../letter.ts';
import { canvas, group, marks, place, round, type Part } from '../svg.ts';
import type { SpringLayout, SpringLine } from './layout.ts';

export interface SpringLooks {
  /** Spring of the reading rule; null for none. */
  readonly reading: number | null;
  /** Shares at that spring, by plan. */
  readonly shares: ReadonlyMap<string, number>;
  readonly lifted: string | null;
}

const path = line<SpringLine['points'][number]>()
  .x(({ x }) => x)
  .y(({ y }) => y)
  .curve(curveMonotoneX);

/** Draws the falling lines, what is read off them, and the reading rule. */
export function drawSprings(svg: SVGSVGElement, layout: SpringLayout, looks: SpringLooks): void {
  const { plot, shares, lines, letters, ends } = layout;
  const all = canvas(svg, layout.width, layout.height);
  const resting = ({ plan }: { readonly plan: string }) => looks.lifted !== null && looks.lifted !== plan;
  const grid = group(all, 'grid');
  across(grid, 'hair', plot, shares.slice(1));
  drawRules(group(grid, 'rules'), layout.calendar, plot.top, plot.bottom);
  across(grid, 'baseline', plot, shares.slice(0, 1));
  marks(group(all, 'lines'), 'path', 'chance-line', lines)
    .attr('data-mark', ({ mark }) => mark)
    .attr('data-plan', ({ plan }) => plan)
    .classed('resting', resting)
    .attr('stroke-dasharray', ({ dash }) => dash)
    .attr('stroke-linecap', ({ cap }) => cap)
    .attr('d', ({ points }) => path(points));
  const rings = place(
    marks(group(all, 'ends'), 'circle', 'ring', ends)
      .attr('data-mark', ({ mark }) => mark)
      .attr('r', 5.5),
    ({ x }) => x,
    ({ y }) => y,
  );
  rings.classed('resting', resting);
  drawReading(group(all, 'reading'), layout, looks);
  const words = group(all, 'words');
  drawYears(words, layout.calendar, plot.top - 14, null);
  marks(words, 'text', 'share', shares)
    .attr('x', ({ textX }) => round(textX))
    .attr('y', ({ textY }) => round(textY))
    .attr('text-anchor', ({ anchor }) => anchor)
    .text(({ text }) => text);
  const moved = letters.filter(({ x, y, toX, toY }) => Math.hypot(x - toX, y - toY) > 5);
  marks(group(all, 'leaders'), 'path', 'leader', moved).attr('d', ({ x, y, toX, toY }) => `M${round(x)},${round(y)} L${round(toX)},${round(toY)}`);
  drawLetters(group(all, 'letters'), letters, { around: true, lifted: looks.lifted });
}

const across = (into: Part, name: string, plot: SpringLayout['plot'], at: readonly { readonly y: number }[]) =>
  marks(into, 'line', name, at)
    .attr('x1', round(plot.left))
    .attr('x2', round(plot.right))
    .attr('y1', ({ y }) => round(y))
    .attr('y2', ({ y }) => round(y));

function drawReading(into: Part, { calendar, plot, lines, y }: SpringLayout, { reading, shares, lifted }: SpringLooks): void {
  const at = reading === null ? [] : [calendar.x(reading)];
  marks(into, 'line', 'reading-rule', at)
    .attr('x1', (x) => round(x))
    .attr('x2', (x) => round(x))
    .attr('y1', plot.top)
    .attr('y2', plot.bottom);
  const dots = at.flatMap((x) => lines.map(({ plan, mark }) => ({ plan, mark, x, y: y(shares.get(plan) ?? 0) })));
  const placed = place(
    marks(into, 'circle', 'ring', dots)
      .attr('data-mark', ({ mark }) => mark)
      .attr('r', 4),
    (dot) => dot.x,
    (dot) => dot.y,
  );
  placed.classed('resting', ({ plan }) => lifted !== null && lifted !== plan);
}
