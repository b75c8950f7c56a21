import { area, curveMonotoneX, line } from 'd3';
import { drawRules, drawYears } from '../axis.ts';
import { drawLetters } from '../letter.ts';
import { canvas, group, marks, place, round, type Part } from '../svg.ts';
import type { BusyLayout, Strip } from './layout.ts';
import { BUSY_LINE } from './load.ts';
import type { BusyLine } from './reading.ts';

export interface BusyLooks {
  /** Year of the reading rule; null for none. */
  readonly reading: number | null;
  /** px of the middle value at that year, by strip. */
  readonly dots: readonly number[];
  /** Words beside each strip. */
  readonly words: readonly (readonly BusyLine[])[];
  readonly lifted: string | null;
}

const path = line<Strip['line'][number]>()
  .x(({ x }) => x)
  .y(({ y }) => y)
  .curve(curveMonotoneX);
const shade = area<Strip['band'][number]>()
  .x(({ x }) => x)
  .y0(({ low }) => low)
  .y1(({ high }) => high)
  .curve(curveMonotoneX);

/** Draws the strips, their limits and bars, the reading rule and the words. */
export function drawBusy(svg: SVGSVGElement, layout: BusyLayout, looks: BusyLooks): void {
  const { calendar, plot, strips } = layout;
  const all = canvas(svg, layout.width, layout.height);
  const resting = ({ plan }: { readonly plan: string }) => looks.lifted !== null && looks.lifted !== plan;
  const own = <Tag extends keyof SVGElementTagNameMap, Datum extends { readonly plan: string; readonly mark: string }>(
    into: Part,
    tag: Tag,
    name: string,
    data: readonly Datum[],
  ) =>
    marks(into, tag, name, data)
      .attr('data-mark', ({ mark }) => mark)
      .attr('data-plan', ({ plan }) => plan)
      .classed('resting', resting);
  drawGrid(group(all, 'grid'), layout);
  drawGrounds(group(all, 'defs'), layout);
  own(group(all, 'bands'), 'path', 'band', strips).attr('d', ({ band }) => shade(band));
  own(
    group(all, 'bands'),
    'path',
    'over',
    layout.strips.filter(({ limitY }) => limitY !== null),
  )
    .attr('fill', 'url(#over-hatch)')
    .attr('clip-path', ({ plan }) => `url(#over-${String(strips.findIndex((strip) => strip.plan === plan))})`)
    .attr('d', ({ band }) => shade(band));
  across(
    group(all, 'limits'),
    'limit',
    layout,
    strips.flatMap(({ limitY }) => limitY ?? []),
  );
  own(group(all, 'lines'), 'path', 'chance-line', strips)
    .attr('stroke-dasharray', ({ dash }) => dash)
    .attr('stroke-linecap', ({ cap }) => cap)
    .attr('d', ({ line: points }) => path(points));
  own(
    group(all, 'bars'),
    'rect',
    'over-bar',
    strips.flatMap(({ plan, mark, bars }) => bars.map((bar) => ({ ...bar, plan, mark }))),
  )
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .attr('width', ({ width }) => round(width))
    .attr('height', ({ height }) => round(height));
  drawReading(group(all, 'reading'), layout, looks);
  const words = group(all, 'words');
  drawYears(words, calendar, plot.top - 14, null);
  own(
    words,
    'text',
    'strip-name',
    strips.map(({ plan, mark, name }) => ({ plan, mark, ...name })),
  )
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .text(({ text }) => text);
  marks(
    words,
    'text',
    'share',
    strips.flatMap(({ axis }) => axis),
  )
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .attr('text-anchor', calendar.room === 'phone' ? 'start' : 'end')
    .classed('limit-word', ({ kind }) => kind === 'limit')
    .text(({ text }) => text);
  const lines = strips.flatMap(({ plan, mark, words: at }, index) =>
    (looks.words[index] ?? []).map((said, n) => ({ plan, mark, x: at.x, y: at.y + n * BUSY_LINE, ...said })),
  );
  own(words, 'text', 'said', lines)
    .classed('first', ({ first }) => first)
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .text(({ text }) => text);
  drawLetters(
    group(all, 'letters'),
    strips.map(({ letter }) => letter),
    { lifted: looks.lifted },
  );
}

const across = (into: Part, name: string, { plot }: BusyLayout, ys: readonly number[]) =>
  marks(into, 'line', name, ys)
    .attr('x1', round(plot.left))
    .attr('x2', round(plot.right))
    .attr('y1', (y) => round(y))
    .attr('y2', (y) => round(y));

function drawGrid(into: Part, layout: BusyLayout): void {
  const { calendar, plot, strips } = layout;
  across(into, 'hair', layout, [...strips.flatMap(({ hairs, barRule }) => [...hairs, ...(barRule ? [barRule.top] : [])])]);
  across(
    into,
    'baseline',
    layout,
    strips.flatMap(({ bottom, barRule }) => [bottom, ...(barRule ? [barRule.bottom] : [])]),
  );
  drawRules(group(into, 'rules'), calendar, plot.top, plot.bottom);
}

/** A hatch for what lies over the limit, and for each strip the space over its limit. */
function drawGrounds(defs: Part, { plot, strips }: BusyLayout): void {
  if (defs.selectChild('pattern').empty())
    defs
      .append('pattern')
      .attr('id', 'over-hatch')
      .attr('width', 7)
      .attr('height', 7)
      .attr('patternUnits', 'userSpaceOnUse')
      .append('path')
      .attr('class', 'over-hatch')
      .attr('d', 'M0,7 L7,0 M-2,2 L2,-2 M5,9 L9,5');
  const spaces = marks(defs, 'clipPath', 'over-space', strips).attr('id', (_, index) => `over-${String(index)}`);
  spaces
    .selectAll<SVGRectElement, Strip>('rect')
    .data((strip) => [strip])
    .join('rect')
    .attr('x', round(plot.left))
    .attr('width', round(plot.right - plot.left))
    .attr('y', ({ top }) => round(top - 2))
    .attr('height', ({ top, limitY }) => round(Math.max(0, (limitY ?? top) - top + 2)));
}

function drawReading(into: Part, { calendar, plot, strips }: BusyLayout, { reading, dots, lifted }: BusyLooks): void {
  const at = reading === null ? [] : [calendar.x(reading)];
  marks(into, 'line', 'reading-rule', at)
    .attr('x1', (x) => round(x))
    .attr('x2', (x) => round(x))
    .attr('y1', plot.top)
    .attr('y2', plot.bottom);
  const rings = at.flatMap((x) => strips.flatMap(({ plan, mark }, index) => ({ plan, mark, x, y: dots[index] ?? 0 })));
  place(
    marks(into, 'circle', 'ring', rings)
      .attr('data-mark', ({ mark }) => mark)
      .classed('resting', ({ plan }) => lifted !== null && lifted !== plan)
      .attr('r', 5.5),
    ({ x }) => x,
    ({ y }) => y,
  );
}
