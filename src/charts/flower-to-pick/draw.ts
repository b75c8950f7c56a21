import { canvas, group, marks, place, round } from '../svg.ts';
import { ROW, type FunnelLayout } from './layout.ts';

/**
 * Draws the steps of one generation.
 * @param reading index of the step that is read; null for none
 */
export function drawFunnel(svg: SVGSVGElement, layout: FunnelLayout, reading: number | null): void {
  const all = canvas(svg, layout.width, layout.height);
  const { steps, ticks } = layout;
  const read = steps.filter((_, index) => index === reading);
  marks(group(all, 'reading'), 'rect', 'read-band', read)
    .attr('x', 0.5)
    .attr('y', ({ y }) => round(y - ROW / 2))
    .attr('width', Math.max(0, layout.width - 1))
    .attr('height', ROW);
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
  place(
    marks(group(all, 'read'), 'circle', 'read-ring', read).attr('r', 9.5),
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
