import { area, curveMonotoneX, line } from 'd3';
import { drawRules, drawYears } from '../axis.ts';
import { drawLetters } from '../letter.ts';
import { canvas, group, marks, place, round, type Part } from '../svg.ts';
import type { ChanceLayout, EndLabel, PlanLine, Point } from './layout.ts';

export interface ChanceLooks {
  /** Year of the reading rule; null for none. */
  readonly reading: number | null;
  /** Shares at that year, by plan. */
  readonly shares: ReadonlyMap<string, number>;
  readonly lifted: string | null;
}

const path = line<Point>()
  .x(({ x }) => x)
  .y(({ y }) => y)
  .curve(curveMonotoneX);
const strip = area<PlanLine['band'][number]>()
  .x(({ x }) => x)
  .y0(({ low }) => low)
  .y1(({ high }) => high)
  .curve(curveMonotoneX);

/** Draws the lines, bands, labels and the reading rule. */
export function drawChance(svg: SVGSVGElement, layout: ChanceLayout, looks: ChanceLooks): void {
  const all = canvas(svg, layout.width, layout.height);
  drawGrid(group(all, 'grid'), layout);
  const resting = ({ plan }: { readonly plan: string }) => looks.lifted !== null && looks.lifted !== plan;
  marks(group(all, 'bands'), 'path', 'band', layout.lines)
    .attr('data-mark', ({ mark }) => mark)
    .classed('resting', resting)
    .attr('d', ({ band }) => strip(band));
  marks(group(all, 'lines'), 'path', 'chance-line', layout.lines)
    .attr('data-mark', ({ mark }) => mark)
    .classed('resting', resting)
    .attr('stroke-dasharray', ({ dash }) => dash)
    .attr('stroke-linecap', ({ cap }) => cap)
    .attr('d', ({ points }) => path(points));
  drawReading(group(all, 'reading'), layout, looks);
  drawCrossing(group(all, 'crossing'), layout);
  drawWords(group(all, 'words'), layout);
  drawLabels(group(all, 'labels'), layout, looks);
}

function drawGrid(into: Part, { calendar, plot, shares }: ChanceLayout): void {
  marks(into, 'line', 'hair', shares.slice(1))
    .attr('x1', round(plot.left))
    .attr('x2', round(plot.right))
    .attr('y1', ({ y }) => round(y))
    .attr('y2', ({ y }) => round(y));
  drawRules(group(into, 'rules'), calendar, plot.top, plot.bottom);
  marks(into, 'line', 'baseline', [plot.bottom])
    .attr('x1', round(plot.left))
    .attr('x2', round(plot.right))
    .attr('y1', (y) => y)
    .attr('y2', (y) => y);
}

function drawReading(into: Part, { x, y, plot, lines, box }: ChanceLayout, { reading, shares, lifted }: ChanceLooks): void {
  const at = reading === null ? [] : [x(reading)];
  marks(into, 'line', 'reading-rule', at)
    .attr('x1', (px) => round(px))
    .attr('x2', (px) => round(px))
    .attr('y1', plot.top)
    .attr('y2', plot.bottom);
  // A thin line ties the box to its year.
  const tied = at.filter((px) => box !== null && px > box.x + box.width);
  marks(into, 'path', 'tie', tied).attr('d', (px) => (box ? `M${round(box.x + box.width)},${round(box.y + 22)} H${round(px)}` : ''));
  const dots = at.flatMap((px) => lines.map(({ plan, mark }) => ({ plan, mark, x: px, y: y(shares.get(plan) ?? 0) })));
  place(
    marks(into, 'circle', 'ring', dots)
      .attr('data-mark', ({ mark }) => mark)
      .classed('resting', ({ plan }) => lifted !== null && lifted !== plan)
      .attr('r', 5.5),
    (dot) => dot.x,
    (dot) => dot.y,
  );
}

function drawCrossing(into: Part, { crossing }: ChanceLayout): void {
  const found = crossing ? [crossing] : [];
  marks(into, 'path', 'pointer', found).attr('d', ({ x, y, anchor }) =>
    anchor === 'end'
      ? `M${round(x - 12)},${round(y - 31)} L${round(x - 3)},${round(y - 9)}`
      : `M${round(x + 12)},${round(y - 31)} L${round(x + 3)},${round(y - 9)}`,
  );
  marks(into, 'circle', 'meeting', found)
    .attr('cx', ({ x }) => round(x))
    .attr('cy', ({ y }) => round(y))
    .attr('r', 7);
}

function drawWords(into: Part, { calendar, plot, shares, crossing, note }: ChanceLayout): void {
  drawYears(into, calendar, plot.top - 14, null);
  marks(into, 'text', 'share', shares)
    .attr('x', ({ textX }) => round(textX))
    .attr('y', ({ textY }) => round(textY))
    .attr('text-anchor', ({ anchor }) => anchor)
    .text(({ text }) => text);
  marks(into, 'text', 'level', crossing ? [crossing] : [])
    .attr('x', ({ textX }) => round(textX))
    .attr('y', ({ textY }) => round(textY))
    .attr('text-anchor', ({ anchor }) => anchor)
    .text(({ text }) => text);
  const lines = (note?.lines ?? []).map((text, index) => ({ text, x: note?.x ?? 0, y: (note?.y ?? 0) + index * 22 }));
  marks(into, 'text', 'aside', lines)
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .text(({ text }) => text);
}

function drawLabels(into: Part, { labels, plot }: ChanceLayout, { lifted }: ChanceLooks): void {
  // Where a label had to move away from its line, a thin leader says whose it is.
  marks(
    into,
    'path',
    'leader',
    labels.filter(({ y, lineY }) => Math.abs(y - lineY) > 5),
  ).attr('d', ({ x, y, r, lineY }) => `M${round(plot.right + 3)},${round(lineY)} L${round(x - r - 2)},${round(y)}`);
  drawLetters(into, labels, { lifted });
  const texts = marks(into, 'text', 'end-label', labels)
    .attr('data-plan', ({ plan }) => plan)
    .classed('resting', ({ plan }) => lifted !== null && lifted !== plan)
    .attr('y', ({ textY }) => round(textY));
  texts
    .selectAll<SVGTSpanElement, { text: string; x: number; first: boolean; value: boolean }>('tspan')
    .data((label) => spans(label))
    .join('tspan')
    .attr('x', ({ x }) => round(x))
    .attr('dy', ({ first }) => (first ? 0 : 20))
    .attr('class', ({ value }) => (value ? 'value' : 'name'))
    .text(({ text }) => text);
}

const spans = ({ name, value, textX }: EndLabel) =>
  [...name.map((text) => ({ text, value: false })), { text: value, value: name.length > 0 }].map((part, index) => ({ ...part, x: textX, first: index === 0 }));
