import { canvas, group, marks, place, round } from '../svg.ts';
import type { FunnelLayout } from './layout.ts';

/** Draws the steps of one generation. */
export function drawFunnel(svg: SVGSVGElement, layout: FunnelLayout): void {
  const all = canvas(svg, layout.width, layout.height);
  const { steps, ticks } = layout;
  marks(group(all, 'grid'), 'line', 'hair', ticks)
    .attr('x1', ({ x }) => round(x))
    .attr('x2', ({ x }) => round(x))
    .attr('y1', layout.top)
    .attr('y2', layout.bottom);
  const bars = steps.flatMap(({ bar, y }) => (bar ? [{ ...bar, y }] : []));
  marks(group(all, 'bars'), 'rect', 'guesses', bars)
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y - 6))
    .attr('width', ({ width }) => round(width))
    .attr('height', 12);
  place(
    marks(group(all, 'dots'), 'circle', 'dot', steps).attr('r', 7),
    ({ dot }) => dot,
    ({ y }) => y,
  );
  const words = group(all, 'words');
  marks(words, 'text', 'note', ticks)
    .attr('text-anchor', 'middle')
    .attr('x', ({ x }) => round(x))
    .attr('y', layout.top - 8)
    .text(({ text }) => text);
  marks(words, 'text', 'step', steps)
    .attr('text-anchor', 'end')
    .attr('x', round(layout.labelX))
    .attr('y', ({ y }) => round(y + 5.5))
    .text(({ label }) => label);
  marks(words, 'text', 'step-count', steps)
    .attr('x', ({ textX }) => round(textX))
    .attr('y', ({ y }) => round(y + 5.5))
    .selectAll<SVGTSpanElement, { text: string; name: string }>('tspan')
    .data(({ middle, range }) => [
      { text: middle, name: 'name' },
      { text: range === '' ? '' : `  ${range}`, name: 'value' },
    ])
    .join('tspan')
    .attr('class', ({ name }) => name)
    .attr('xml:space', 'preserve')
    .text(({ text }) => text);
}
