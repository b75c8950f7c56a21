import type { Calendar } from './calendar.ts';
import { canvas, group, marks, round, type Part } from './svg.ts';

/** Writes the years on top of a picture; the last judging year ends at the horizon rule, in bold. */
export function drawYears(into: Part, { ticks, horizon, lastYear }: Calendar, y: number, caption: string | null): void {
  marks(into, 'text', 'tick', ticks)
    .attr('x', ({ x }) => round(x))
    .attr('y', y)
    .text(({ year }) => year);
  marks(into, 'text', 'last-year', [lastYear])
    .attr('x', round(horizon))
    .attr('y', y)
    .text((year) => year);
  marks(into, 'text', 'caption', caption === null ? [] : [caption])
    .attr('x', round(horizon))
    .attr('y', y - 19)
    .text((words) => words);
}

/** Hairlines down from the years, and the horizon rule. */
export function drawRules(into: Part, { ticks, horizon }: Calendar, top: number, bottom: number): void {
  const vertical = (name: string, places: readonly number[]) =>
    marks(into, 'line', name, places)
      .attr('x1', (x) => round(x))
      .attr('x2', (x) => round(x))
      .attr('y1', top)
      .attr('y2', bottom);
  vertical(
    'hair',
    ticks.map(({ x }) => x),
  );
  vertical('horizon', [horizon]);
}

const AXIS_HEIGHT = 64;

/** The calendar alone, to stand on top of the lanes. */
export function drawAxis(svg: SVGSVGElement, calendar: Calendar, caption: string): void {
  const all = canvas(svg, calendar.width, AXIS_HEIGHT);
  drawRules(group(all, 'grid'), calendar, AXIS_HEIGHT - 17, AXIS_HEIGHT);
  drawYears(group(all, 'words'), calendar, AXIS_HEIGHT - 25, caption);
}
