import { drawRules, drawYears } from '../axis.ts';
import { canvas, group, marks, round } from '../svg.ts';
import type { OpenLayout, WayRow } from './layout.ts';

/** Draws the ways of a generation: years on the calendar, the chance on a scale beside them; and the row that is read. */
export function drawOpen(svg: SVGSVGElement, layout: OpenLayout, reading: number | null): void {
  const { rows, calendar, top, bottom, axisY, width, height, caption } = layout;
  const all = canvas(svg, width, height);
  const read = reading === null ? undefined : rows[reading];
  marks(group(all, 'read'), 'rect', 'read-row', read ? [read] : [])
    .attr('x', -8)
    .attr('width', width + 16)
    .attr('y', (row) => row.top - 4)
    .attr('height', (row) => row.bottom - row.top);
  drawRules(group(all, 'grid'), calendar, top, bottom);
  drawBars(group(all, 'bars'), rows);
  drawChances(group(all, 'chances'), rows);
  const words = group(all, 'words');
  drawYears(words, calendar, axisY, null);
  marks(words, 'text', 'caption', [caption])
    .attr('x', round(calendar.horizon))
    .attr('y', 16)
    .text((text) => text);
  marks(
    words,
    'text',
    'way-line',
    rows.flatMap(({ lines }) => lines),
  )
    .attr('data-kind', ({ kind }) => kind)
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .attr('text-anchor', ({ anchor }) => anchor)
    .text(({ text }) => text);
  marks(words, 'text', 'way-year', rows)
    .attr('x', ({ year }) => round(year.x))
    .attr('y', ({ year }) => round(year.y))
    .attr('text-anchor', ({ year }) => year.anchor)
    .text(({ year }) => year.text);
}

function drawBars(into: ReturnType<typeof group>, rows: readonly WayRow[]): void {
  const barred = rows.flatMap(({ bar, y, stands }) => (bar ? [{ ...bar, y, stands }] : []));
  marks(into, 'line', 'way-bar', barred)
    .classed('stands', ({ stands }) => stands)
    .attr('x1', ({ from }) => round(from))
    .attr('x2', ({ to }) => round(to))
    .attr('y1', ({ y }) => round(y))
    .attr('y2', ({ y }) => round(y));
  const ends = barred.flatMap(({ from, to, open, y }) => [{ x: from, y }, ...(open ? [] : [{ x: to, y }])]);
  marks(into, 'line', 'way-end', ends)
    .attr('x1', ({ x }) => round(x))
    .attr('x2', ({ x }) => round(x))
    .attr('y1', ({ y }) => round(y - 8))
    .attr('y2', ({ y }) => round(y + 8));
  marks(
    into,
    'path',
    'way-on',
    barred.filter(({ open }) => open),
  ).attr('d', ({ to, y }) => `M${round(to - 9)},${round(y - 6)} L${round(to - 1)},${round(y)} L${round(to - 9)},${round(y + 6)}`);
  marks(
    into,
    'circle',
    'way-half',
    rows.flatMap(({ half, y, stands }) => (half === null ? [] : [{ half, y, stands }])),
  )
    .classed('stands', ({ stands }) => stands)
    .attr('cx', ({ half }) => round(half))
    .attr('cy', ({ y }) => round(y))
    .attr('r', 7);
}

function drawChances(into: ReturnType<typeof group>, rows: readonly WayRow[]): void {
  marks(into, 'rect', 'scale', rows)
    .attr('x', ({ chance }) => round(chance.x))
    .attr('width', ({ chance }) => round(chance.end - chance.x))
    .attr('y', ({ chance }) => round(chance.y))
    .attr('height', 18);
  marks(into, 'rect', 'chance', rows)
    .attr('x', ({ chance }) => round(chance.x))
    .attr('width', ({ chance }) => round(chance.to - chance.x))
    .attr('y', ({ chance }) => round(chance.y))
    .attr('height', 18);
  for (const name of ['bar-halo', 'bar'] as const)
    marks(into, 'line', name, rows)
      .attr('x1', ({ chance }) => round(chance.low))
      .attr('x2', ({ chance }) => round(chance.high))
      .attr('y1', ({ chance }) => round(chance.y + 9))
      .attr('y2', ({ chance }) => round(chance.y + 9));
}
