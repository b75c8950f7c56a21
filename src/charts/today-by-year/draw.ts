import { drawPanel } from '../panel/draw.ts';
import { canvas, group, marks, round } from '../svg.ts';
import { keyLines, type TodayLayout } from './layout.ts';

/** Draws a plan's two forecasts and the year that is read, with a ring on each line. */
export function drawToday(svg: SVGSVGElement, layout: TodayLayout, reading: { readonly year: number; readonly shares: readonly number[] } | null): void {
  const { panel, width, height, x, y } = layout;
  const all = canvas(svg, width, height);
  const rings = reading ? reading.shares.map((share) => ({ x: x(reading.year), y: y(share) })) : [];
  drawPanel(group(all, 'panel'), { ...panel, rings });
  marks(group(all, 'key'), 'line', 'panel-curve', keyLines(layout))
    .attr('data-of', ({ of }) => of)
    .attr('stroke-width', (line) => line.width)
    .attr('stroke-dasharray', ({ dash }) => dash)
    .attr('x1', (line) => round(line.x))
    .attr('x2', (line) => round(line.x + 30))
    .attr('y1', (line) => round(line.y))
    .attr('y2', (line) => round(line.y));
  marks(group(all, 'reading'), 'line', 'reading-rule', reading ? [reading.year] : [])
    .attr('x1', (year) => round(x(year)))
    .attr('x2', (year) => round(x(year)))
    .attr('y1', panel.plot.top)
    .attr('y2', panel.plot.bottom);
}
