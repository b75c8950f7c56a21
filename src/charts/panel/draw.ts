import { area, curveMonotoneX, line } from 'd3';
import { group, marks, round, type Part } from '../svg.ts';
import type { EndWords, Panel, PanelBand, PanelCurve } from './layout.ts';

const path = line<PanelCurve['points'][number]>()
  .x(({ x }) => x)
  .y(({ y }) => y)
  .curve(curveMonotoneX);

const filled = area<PanelBand['points'][number]>()
  .x(({ x }) => x)
  .y0(({ low }) => low)
  .y1(({ high }) => high)
  .curve(curveMonotoneX);

/** Draws a panel into a part of a picture; its words lie on top of its lines. */
export function drawPanel(into: Part, panel: Panel): void {
  const { plot, across, up } = panel;
  marks(group(into, 'stretches'), 'rect', 'stretch', panel.stretches)
    .attr('x', ({ from }) => round(from))
    .attr('width', ({ from, to }) => round(to - from))
    .attr('y', plot.top)
    .attr('height', plot.bottom - plot.top);
  const grid = group(into, 'grid');
  marks(grid, 'line', 'hair', across)
    .attr('x1', ({ x }) => round(x))
    .attr('x2', ({ x }) => round(x))
    .attr('y1', plot.top)
    .attr('y2', plot.bottom);
  const level = (name: string, ticks: Panel['up']) =>
    marks(grid, 'line', name, ticks)
      .attr('x1', plot.left)
      .attr('x2', plot.right)
      .attr('y1', ({ y }) => round(y))
      .attr('y2', ({ y }) => round(y));
  level('level-hair', up.slice(1));
  level('baseline', up.slice(0, 1));
  marks(group(into, 'bands'), 'path', 'panel-band', panel.bands)
    .attr('data-of', ({ of }) => of)
    .attr('d', ({ points }) => filled(points));
  marks(group(into, 'rules'), 'line', 'panel-rule', panel.rules)
    .attr('data-kind', ({ kind }) => kind)
    .attr('x1', ({ x }) => round(x))
    .attr('x2', ({ x }) => round(x))
    .attr('y1', ({ from }) => round(from))
    .attr('y2', ({ to }) => round(to));
  marks(group(into, 'curves'), 'path', 'panel-curve', panel.curves)
    .attr('data-of', ({ of }) => of)
    .attr('stroke-width', ({ width }) => width)
    .attr('stroke-dasharray', ({ dash }) => dash)
    .attr('d', ({ points }) => path(points));
  marks(group(into, 'rings'), 'circle', 'ring', panel.rings)
    .attr('cx', ({ x }) => round(x))
    .attr('cy', ({ y }) => round(y))
    .attr('r', 6);
  drawPanelWords(group(into, 'words'), panel);
}

function drawPanelWords(into: Part, { plot, across, up, words, ends }: Panel): void {
  marks(
    into,
    'path',
    'leader',
    ends.filter(({ y, lineY }) => Math.abs(y - 6 - lineY) > 6),
  ).attr('d', ({ x, y, lineX, lineY }) => `M${round(lineX + 2)},${round(lineY)} L${round(x - 3)},${round(y - 6)}`);
  marks(into, 'text', 'across', across)
    .attr('x', ({ x }) => round(x))
    .attr('y', plot.bottom + 25)
    .attr('text-anchor', ({ anchor }) => anchor)
    .text(({ text }) => text);
  marks(into, 'text', 'up', up)
    .attr('x', plot.left - 10)
    .attr('y', ({ y }) => round(y + 6))
    .attr('text-anchor', 'end')
    .text(({ text }) => text);
  marks(into, 'text', 'panel-words', words)
    .attr('data-kind', ({ kind }) => kind)
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .attr('text-anchor', ({ anchor }) => anchor)
    .text(({ text }) => text);
  const end = marks(into, 'text', 'end-words', ends).attr('data-of', ({ of }) => of);
  end
    .selectAll<SVGTSpanElement, { readonly words: string; readonly end: EndWords; readonly first: boolean }>('tspan')
    .data((one) => [one.name, ...(one.value === null ? [] : [one.value])].map((text, i) => ({ words: text, end: one, first: i === 0 })))
    .join('tspan')
    .attr('class', ({ first }) => (first ? 'name' : 'value'))
    .attr('x', ({ end: { x } }) => round(x))
    .attr('y', ({ end: { y }, first }) => round(first ? y : y + 20))
    .text(({ words }) => words);
}
