import { area, curveCatmullRomClosed, curveMonotoneX, line } from 'd3';
import type { Box } from '../boxes.ts';
import { drawLetters } from '../letter.ts';
import { canvas, group, marks, round, type Part } from '../svg.ts';
import type { MapLabel } from './labels.ts';
import type { Edge, Point } from './edge.ts';
import type { MapLayout } from './layout.ts';

export interface MapLooks {
  /** Cell that is read; null for none. */
  readonly cell: Box | null;
}

const outline = line<Point>()
  .x(({ x }) => x)
  .y(({ y }) => y)
  .curve(curveCatmullRomClosed);

const along = (of: 'line' | 'low' | 'high') =>
  line<Edge>()
    .x(({ x }) => x)
    .y((edge) => edge[of])
    .curve(curveMonotoneX);

/** Draws where each choice wins, the break-even line, and where the programme stands. */
export function drawMap(svg: SVGSVGElement, layout: MapLayout, { cell }: MapLooks): void {
  const { plot, edges, rings, programme } = layout;
  const all = canvas(svg, layout.width, layout.height);
  hatch(group(all, 'patterns'));
  const wins = area<Edge>()
    .x(({ x }) => x)
    .curve(curveMonotoneX);
  const grounds = group(all, 'grounds');
  marks(grounds, 'path', 'graft-wins', [edges]).attr(
    'd',
    wins.y0(plot.top).y1(({ high }) => high),
  );
  marks(grounds, 'path', 'own-wins', [edges]).attr('d', wins.y0(({ low }) => low).y1(plot.bottom));
  marks(grounds, 'path', 'own-hatch', [edges])
    .attr('d', wins.y0(({ low }) => low).y1(plot.bottom))
    .attr('fill', 'url(#own-hatch)');
  drawGrid(group(all, 'grid'), layout);
  const edge = group(all, 'edges');
  marks(edge, 'path', 'maybe', ['low', 'high'] as const).attr('d', (of) => along(of)(edges));
  marks(edge, 'path', 'break-even', [edges]).attr('d', along('line'));
  marks(group(all, 'rings'), 'path', 'guess-ring', rings)
    .classed('inner', ({ share }) => share <= 0.5)
    .attr('d', (ring) => outline(ring.outline));
  drawWords(group(all, 'words'), layout);
  drawLetters(group(all, 'letters'), [programme], { around: true, lifted: null });
  marks(group(all, 'reading'), 'rect', 'read-frame', cell ? [cell] : [])
    .attr('x', ({ left }) => round(left))
    .attr('y', ({ top }) => round(top))
    .attr('width', ({ left, right }) => round(right - left))
    .attr('height', ({ top, bottom }) => round(bottom - top));
}

function hatch(into: Part): void {
  const pattern = marks(into, 'pattern', 'own', ['own-hatch'])
    .attr('id', (id) => id)
    .attr('width', 9)
    .attr('height', 9)
    .attr('patternUnits', 'userSpaceOnUse');
  pattern
    .selectAll('path')
    .data(['M0,9 L9,0'])
    .join('path')
    .attr('class', 'own-lines')
    .attr('d', (d) => d);
}

function drawGrid(into: Part, { plot, months, takes }: MapLayout): void {
  marks(into, 'line', 'hair', months)
    .attr('x1', ({ x }) => round(x))
    .attr('x2', ({ x }) => round(x))
    .attr('y1', plot.top)
    .attr('y2', plot.bottom);
  const across = (name: string, at: MapLayout['takes']) =>
    marks(into, 'line', name, at)
      .attr('x1', plot.left)
      .attr('x2', plot.right)
      .attr('y1', ({ y }) => round(y))
      .attr('y2', ({ y }) => round(y));
  across('level-hair', takes.slice(1));
  across('baseline', takes.slice(0, 1));
}

function drawWords(into: Part, { plot, months, takes, labels, monthsCaption, captionY }: MapLayout): void {
  marks(
    into,
    'path',
    'leader',
    labels.flatMap(({ leader }) => (leader ? [leader] : [])),
  ).attr('d', ([from, to]) => `M${round(from.x)},${round(from.y)} L${round(to.x)},${round(to.y)}`);
  marks(
    into,
    'circle',
    'leader-end',
    labels.flatMap(({ leader, kind }) => (leader && kind === 'between' ? [leader[1]] : [])),
  )
    .attr('cx', ({ x }) => round(x))
    .attr('cy', ({ y }) => round(y))
    .attr('r', 3);
  marks(into, 'text', 'month', months)
    .attr('x', ({ x }) => round(x))
    .attr('y', plot.bottom + 25)
    .attr('text-anchor', ({ anchor }) => anchor)
    .text(({ text }) => text);
  marks(into, 'text', 'take', takes)
    .attr('x', plot.left - 10)
    .attr('y', ({ y }) => round(y + 6))
    .attr('text-anchor', 'end')
    .text(({ text }) => text);
  marks(into, 'text', 'axis-caption', [monthsCaption])
    .attr('x', plot.right)
    .attr('y', captionY)
    .attr('text-anchor', 'end')
    .text((words) => words);
  const label = marks(into, 'text', 'map-label', labels)
    .attr('data-kind', ({ kind }) => kind)
    .attr('text-anchor', ({ anchor }) => anchor);
  label
    .selectAll<SVGTSpanElement, { readonly words: string; readonly at: MapLabel; readonly i: number }>('tspan')
    .data((at) => at.lines.map((words, i) => ({ words, at, i })))
    .join('tspan')
    .attr('class', ({ i }) => (i === 0 ? 'first' : 'more'))
    .attr('x', ({ at }) => round(at.x))
    .attr('y', ({ at, i }) => round(at.y + 21 * i))
    .text(({ words }) => words);
}
