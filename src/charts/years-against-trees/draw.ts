import { area, curveBasis } from 'd3';
import { drawRules, drawYears } from '../axis.ts';
import { drawLetters } from '../letter.ts';
import { canvas, group, marks, round, type Part } from '../svg.ts';
import type { Outline } from './density.ts';
import type { CloudLayout, Strip } from './layout.ts';
import type { CloudPlace } from './places.ts';

const ringPath = (ring: readonly (readonly [number, number])[]) => `M${ring.map(([x, y]) => `${round(x)},${round(y)}`).join('L')}Z`;
const outlinePath = ({ polygons }: Outline) => polygons.flatMap((rings) => rings.map(ringPath)).join('');

export interface CloudLooks {
  readonly lifted: string | null;
  /** The place that is read; null for none. */
  readonly place: CloudPlace | null;
}

/** Draws clouds, letters, words and strips. */
export function drawClouds(svg: SVGSVGElement, layout: CloudLayout, { lifted, place: read }: CloudLooks): void {
  const { calendar, plot } = layout;
  const all = canvas(svg, layout.width, layout.height);
  const resting = ({ plan }: { readonly plan: string }) => lifted !== null && lifted !== plan;
  drawGrid(group(all, 'grid'), layout);
  clip(group(all, 'defs'), layout);
  const shapes = layout.clouds.flatMap(({ plan, mark, strength, outlines }) =>
    outlines.map((outline, index) => ({ plan, mark, strength, outline, inner: index > 0 })),
  );
  marks(group(all, 'clouds').attr('clip-path', 'url(#plot)'), 'path', 'cloud', shapes)
    .attr('data-mark', ({ mark }) => mark)
    .attr('data-plan', ({ plan }) => plan)
    .classed('resting', resting)
    .attr('stroke-width', ({ inner }) => (inner ? 2.2 : 1.4))
    .attr('fill-opacity', ({ inner, strength }) => Math.round((inner ? 0.22 : 0.11) * strength * 1000) / 1000)
    .attr('d', ({ outline }) => outlinePath(outline));
  drawStrips(group(all, 'strips'), layout.strips, resting);
  marks(group(all, 'leaders'), 'path', 'pointer', layout.labels)
    .classed('resting', resting)
    .attr('d', ({ x, y, toX, toY }) => `M${round(x + 7)},${round(y - 6)} L${round(toX)},${round(toY)}`);
  const words = group(all, 'words');
  drawYears(words, calendar, plot.top - 14, null);
  drawWords(words, layout, resting);
  drawLetters(group(all, 'letters'), layout.letters, { around: true, lifted });
  drawLetters(group(all, 'strip-letters'), layout.stripLetters, { lifted });
  drawPlace(group(all, 'reading'), layout, read);
}

/** A ring on the place, and lines down to its year and across to its seedlings. */
function drawPlace(into: Part, { plot }: CloudLayout, read: CloudPlace | null): void {
  const ruled = read?.rules === true ? [read] : [];
  marks(into, 'path', 'reading-rule', ruled).attr(
    'd',
    ({ x, y }) => `M${round(plot.left)},${round(y)} H${round(x)} M${round(x)},${round(plot.top)} V${round(plot.bottom)}`,
  );
  for (const name of ['read-halo', 'read-ring'])
    marks(into, 'circle', name, read ? [read] : [])
      .attr('cx', ({ x }) => round(x))
      .attr('cy', ({ y }) => round(y))
      .attr('r', ({ r }) => r);
}

function clip(into: Part, { plot }: CloudLayout): void {
  const shape = into.selectChild('clipPath').empty() ? into.append('clipPath').attr('id', 'plot') : into.selectChild<SVGClipPathElement>('clipPath');
  const frame = shape.selectChild('rect').empty() ? shape.append('rect') : shape.selectChild<SVGRectElement>('rect');
  frame
    .attr('x', round(plot.left))
    .attr('y', plot.top - 8)
    .attr('width', round(plot.right - plot.left))
    .attr('height', plot.bottom - plot.top + 8);
}

function drawGrid(into: Part, { calendar, plot, counts, width }: CloudLayout): void {
  const line = (name: string, at: readonly { y: number }[]) =>
    marks(into, 'line', name, at)
      .attr('x1', round(plot.left))
      .attr('x2', round(width))
      .attr('y1', ({ y }) => round(y))
      .attr('y2', ({ y }) => round(y));
  line('hair', counts.slice(1));
  line('baseline', counts.slice(0, 1));
  drawRules(group(into, 'rules'), calendar, plot.top, plot.bottom);
}

function drawStrips(into: Part, strips: readonly Strip[], resting: (strip: { readonly plan: string }) => boolean): void {
  const shape = (x: number) =>
    area<Strip['points'][number]>()
      .y(({ y }) => y)
      .x0(({ half }) => x - half)
      .x1(({ half }) => x + half)
      .curve(curveBasis);
  marks(into, 'path', 'strip', strips)
    .attr('data-mark', ({ mark }) => mark)
    .attr('data-plan', ({ plan }) => plan)
    .classed('resting', resting)
    .attr('d', ({ x, points }) => shape(x)(points));
}

function drawWords(into: Part, layout: CloudLayout, resting: (label: { readonly plan: string }) => boolean): void {
  const { counts, labels, strips, stripHead, plot, calendar } = layout;
  marks(into, 'text', 'share', counts)
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ textY }) => round(textY))
    .attr('text-anchor', ({ anchor }) => anchor)
    .text(({ text }) => text);
  const texts = marks(into, 'text', 'cloud-label', labels)
    .attr('data-plan', ({ plan }) => plan)
    .classed('resting', resting)
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y));
  texts
    .selectAll<SVGTSpanElement, { part: string; name: boolean }>('tspan')
    .data(({ name, text }) => [
      { part: name, name: true },
      { part: text, name: false },
    ])
    .join('tspan')
    .attr('class', ({ name }) => (name ? 'name' : 'value'))
    .text(({ part }) => part);
  marks(into, 'text', 'strip-head', stripHead)
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .text(({ text }) => text);
  marks(into, 'text', 'strip-number', calendar.room === 'phone' ? [] : strips)
    .attr('x', ({ x }) => round(x))
    .attr('y', plot.top - 14)
    .text(({ text }) => text);
}
