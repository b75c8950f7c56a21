import { area, curveMonotoneX, line } from 'd3';
import { canvas, group, marks, place, round, type Part } from '../svg.ts';
import type { Bough, Stop } from './bough.ts';
import type { ChanceMark } from './chance-mark.ts';
import type { Descent, LaneLayout } from './lane.ts';

const TEXTURES = ['nursery', 'waiting', 'judging', 'contour'] as const;

const shape = (y: number) =>
  area<Bough['points'][number]>()
    .x((point) => point.x)
    .y0((point) => y - point.half)
    .y1((point) => y + point.half)
    .curve(curveMonotoneX);
const edge = (y: number, side: 1 | -1) =>
  line<Bough['points'][number]>()
    .x((point) => point.x)
    .y((point) => y + side * point.half)
    .curve(curveMonotoneX);

/** One gradient per texture: the colour stays, its opacity follows the stops. */
function gradient(defs: Part, id: string, from: number, to: number, stops: readonly Stop[]): void {
  const width = Math.max(1, to - from);
  const made = defs
    .append('linearGradient')
    .attr('id', id)
    .attr('class', 'gradient')
    .attr('gradientUnits', 'userSpaceOnUse')
    .attr('x1', round(from))
    .attr('x2', round(to))
    .attr('y1', 0)
    .attr('y2', 0);
  made
    .selectAll('stop')
    .data(stops)
    .join('stop')
    .attr('class', 'plan-stop')
    .attr('offset', ({ x }) => Math.round(Math.min(1, Math.max(0, (x - from) / width)) * 10000) / 10000)
    .attr('stop-opacity', ({ opacity }) => opacity);
}

/** Defines the textures of one bough and draws it around the middle line `y`. */
export function drawBough(into: Part, defs: Part, layout: Bough, y: number, id: string, dotsId: string): void {
  const x1 = layout.from - 2;
  const x2 = layout.to + 2;
  for (const texture of TEXTURES) gradient(defs, `${id}-${texture}`, x1, x2, layout[texture]);
  const frame = { x: round(x1), y: round(y - 40), width: round(x2 - x1), height: '80' };
  const mask = defs.append('mask').attr('id', `${id}-mask`).attr('class', 'alpha').attr('maskUnits', 'userSpaceOnUse');
  const ground = mask.append('rect').attr('fill', `url(#${id}-nursery)`);
  for (const [name, value] of Object.entries(frame)) {
    mask.attr(name, value);
    ground.attr(name, value);
  }
  const d = shape(y)(layout.points);
  into.append('path').attr('class', 'nursery').attr('d', d).attr('mask', `url(#${id}-mask)`).attr('fill', `url(#${dotsId})`);
  into.append('path').attr('class', 'waiting').attr('d', d).attr('fill', `url(#${id}-waiting)`);
  into.append('path').attr('class', 'judging').attr('d', d).attr('fill', `url(#${id}-judging)`);
  for (const side of [1, -1] as const)
    into.append('path').attr('class', 'contour').attr('d', edge(y, side)(layout.points)).attr('stroke', `url(#${id}-contour)`);
}

/** The seed dots, in the colour of the plan they are defined under. */
export function defineDots(defs: Part, id: string): void {
  const pattern = defs.append('pattern').attr('id', id).attr('width', 6).attr('height', 6).attr('patternUnits', 'userSpaceOnUse');
  pattern.append('rect').attr('class', 'dots-ground').attr('width', 6).attr('height', 6);
  for (const at of [1.5, 4.5]) pattern.append('circle').attr('class', 'dots-dot').attr('cx', at).attr('cy', at).attr('r', 1.25);
}

/**
 * Draws one lane. Boughs are few and their shapes change as wholes, so they are drawn anew; marks that move are joined, so that they can glide.
 * @param id told apart from other lanes under the same root: definitions carry it
 */
export function drawLane(svg: SVGSVGElement, layout: LaneLayout, id: string): void {
  const all = canvas(svg, layout.width, layout.height);
  const defs = group(all, 'defs');
  defs.selectChildren('*').remove();
  drawGround(group(all, 'ground'), layout);
  drawGrid(group(all, 'grid'), layout);
  defineDots(defs, `${id}-dots`);
  const boughs = group(all, 'boughs');
  boughs.selectChildren('*').remove();
  layout.rows.forEach((row, index) => {
    if (row.bough) drawBough(boughs, defs, row.bough, row.y, `${id}-${String(index)}`, `${id}-dots`);
  });
  marks(group(all, 'lines'), 'path', 'descent', layout.lines)
    .attr('d', descent)
    .attr('stroke-width', ({ width }) => round(width));
  drawMarks(group(all, 'marks'), layout);
  drawWords(group(all, 'words'), layout);
}

function drawGrid(into: Part, { ticks, ticksFrom, height, horizon }: LaneLayout): void {
  marks(into, 'line', 'hair', ticks)
    .attr('x1', ({ x }) => round(x))
    .attr('x2', ({ x }) => round(x))
    .attr('y1', ticksFrom)
    .attr('y2', height);
  marks(into, 'line', 'horizon', [horizon])
    .attr('x1', (x) => round(x))
    .attr('x2', (x) => round(x))
    .attr('y1', 0)
    .attr('y2', height);
}

/** The ground of the open row, which its settings continue below. */
function drawGround(into: Part, { rows, width }: LaneLayout): void {
  marks(
    into,
    'path',
    'open-ground',
    rows.filter(({ open }) => open),
  ).attr('d', ({ top, height }) => `M0.5,${round(top + height)} V${round(top + 0.5)} H${round(width - 0.5)} V${round(top + height)}`);
}

/** Straight down from the ring, then a short bend into the next bough. */
function descent({ x1, y1, x2, y2 }: Descent): string {
  const bend = Math.min(50, (y2 - y1) * 0.7);
  return `M${round(x1)},${round(y1)} V${round(y2 - bend)} C${round(x1)},${round(y2 - bend * 0.3)} ${round(x1 + (x2 - x1) * 0.3)},${round(y2)} ${round(x2)},${round(y2)}`;
}

/** Years of a proven tree: on the last row, or on a line of its own. */
const dots = ({ rows, proven }: LaneLayout) => [
  ...rows.flatMap(({ dot, open }) => (dot ? [{ ...dot, open }] : [])),
  ...(proven ? [{ ...proven.dot, open: false }] : []),
];

function drawMarks(into: Part, layout: LaneLayout): void {
  const { rows } = layout;
  const rings = rows.flatMap(({ ring }) => (ring ? [ring] : []));
  place(
    marks(into, 'circle', 'ring', rings).attr('r', ({ r }) => r),
    ({ x }) => x,
    ({ y }) => y,
  );
  drawProven(into, dots(layout));
}

/** The year of a proven tree: a bar for 8 in 10 and a dot for half. */
export function drawProven(
  into: Part,
  proven: readonly { readonly x: number; readonly y: number; readonly r: number; readonly from: number; readonly to: number }[],
): void {
  for (const name of ['bar-halo', 'bar'] as const)
    marks(into, 'path', name, proven).attr(
      'd',
      ({ from, to, y }) => `M${round(from)},${round(y)} H${round(to)} M${round(from)},${round(y - 5)} v10 M${round(to)},${round(y - 5)} v10`,
    );
  place(
    marks(into, 'circle', 'dot', proven).attr('r', ({ r }) => r),
    ({ x }) => x,
    ({ y }) => y,
  );
}

function drawWords(into: Part, layout: LaneLayout): void {
  const { rows, proven } = layout;
  const lines = rows.flatMap((row) => row.chain.map((chain) => ({ ...chain, size: row.textSize, open: row.open })));
  marks(into, 'text', 'chain', lines)
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .style('font-size', ({ size }) => `${String(size)}px`)
    .classed('on-open', ({ open }) => open)
    .selectAll<SVGTSpanElement, { text: string; kind: string }>('tspan')
    .data(({ spans }) => spans)
    .join('tspan')
    .attr('class', ({ kind }) => kind)
    .text(({ text }) => text);
  marks(into, 'text', 'proven-label', proven ? [proven.label] : [])
    .attr('x', ({ x }) => round(x))
    .attr('y', ({ y }) => round(y))
    .text(({ text }) => text);
  marks(into, 'text', 'year', dots(layout))
    .attr('x', ({ yearX }) => round(yearX))
    .attr('y', ({ yearY }) => round(yearY))
    .classed('on-open', ({ open }) => open)
    .text(({ year }) => year);
}

/** Draws the scale of a chance from 0 to 10 in 10. */
export function drawChanceMark(svg: SVGSVGElement, layout: ChanceMark): void {
  drawChanceParts(canvas(svg, layout.width, layout.height), layout);
}

/** The same inside a larger picture. */
export function drawChanceParts(all: Part, { width, y, ticks, guesses, chance }: ChanceMark): void {
  const scale = [`M1,${round(y)} H${round(width - 1)}`, ...ticks.map((x) => `M${round(x)},${round(y - 4)} v8`)].join(' ');
  marks(all, 'path', 'scale', [scale]).attr('d', (d) => d);
  marks(all, 'rect', 'guesses', guesses ? [guesses] : [])
    .attr('x', (range) => round(range.x))
    .attr('y', round(y - 6))
    .attr('width', (range) => round(range.width))
    .attr('height', 12);
  marks(all, 'rect', 'chance', [chance])
    .attr('x', (range) => round(range.x))
    .attr('y', round(y - 9))
    .attr('width', (range) => round(range.width))
    .attr('height', 18);
}
