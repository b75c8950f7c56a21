import { drawLetters } from '../letter.ts';
import { drawPanel } from '../panel/draw.ts';
import { canvas, group, marks, round, type Part } from '../svg.ts';
import type { HowManyLayout } from './layout.ts';

export interface HowManyLooks {
  /** Number that is read, by its place in the list; null for none. */
  readonly reading: number | null;
}

/** Draws the chances by three years against a number. */
export function drawHowMany(svg: SVGSVGElement, layout: HowManyLayout, { reading }: HowManyLooks): void {
  const { panel, present } = layout;
  const all = canvas(svg, layout.width, layout.height);
  drawLevels(group(all, 'levels'), layout);
  drawPanel(group(all, 'panel'), panel);
  drawHours(group(all, 'hours').classed('words', true), layout);
  drawLetters(group(all, 'letters'), present ? [present] : [], { around: true, lifted: null });
  const read = reading === null ? undefined : layout.places[reading];
  const rule = group(all, 'reading');
  marks(rule, 'line', 'reading-rule', read ? [read] : [])
    .attr('x1', ({ x }) => round(x))
    .attr('x2', ({ x }) => round(x))
    .attr('y1', panel.plot.top)
    .attr('y2', panel.plot.bottom);
  const rings = (name: string) =>
    marks(rule, 'circle', name, read ? read.ys.map((y) => ({ x: read.x, y })) : [])
      .attr('cx', ({ x }) => round(x))
      .attr('cy', ({ y }) => round(y))
      .attr('r', 6);
  rings('read-halo');
  rings('read-ring');
}

/** Where more buys little; the rules that are read off; where half of the futures use up the hours. */
function drawLevels(into: Part, { panel: { plot }, level, levels, limit }: HowManyLayout): void {
  marks(into, 'rect', 'stretch', level ? [level] : [])
    .attr('x', ({ from }) => round(from))
    .attr('width', ({ from, to }) => round(to - from))
    .attr('y', plot.top)
    .attr('height', plot.bottom - plot.top);
  marks(into, 'line', 'read-level', levels)
    .attr('x1', plot.left)
    .attr('x2', plot.right)
    .attr('y1', ({ y }) => round(y))
    .attr('y2', ({ y }) => round(y));
  marks(into, 'line', 'horizon', limit ? [limit] : [])
    .attr('x1', ({ x }) => round(x))
    .attr('x2', ({ x }) => round(x))
    .attr('y1', plot.top - 4)
    .attr('y2', plot.bottom);
}

function drawHours(into: Part, { panel: { plot }, hours, hoursY, levels, limit }: HowManyLayout): void {
  marks(into, 'text', 'across', hours)
    .attr('x', ({ x }) => round(x))
    .attr('y', hoursY)
    .attr('text-anchor', ({ anchor }) => anchor)
    .text(({ text }) => text);
  marks(into, 'text', 'read-chance', levels)
    .attr('x', plot.left - 10)
    .attr('y', ({ y }) => round(y + 6))
    .attr('text-anchor', 'end')
    .text(({ text }) => text);
  marks(into, 'text', 'limit-words', limit ? [limit.words] : [])
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .attr('text-anchor', ({ anchor }) => anchor)
    .text(({ text }) => text);
}
