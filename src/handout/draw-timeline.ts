import { area, curveMonotoneX, line } from 'd3';
import type { Bough, Stop } from '../charts/boughs/bough.ts';
import type { Measure } from '../charts/measure.ts';
import { timelineText } from '../text/handout.ts';
import { colourOf, isRing, LOOK, SANS, SERIF } from './look.ts';
import { markup, NOTHING, type Markup } from './markup.ts';
import type { Timeline, TimelineLane } from './timeline.ts';
import { sansMeasure, serifMeasure } from './widths.ts';

/** Tenths of a px are enough, and keep files steady. */
const px = (value: number): string => String(Math.round(value * 10) / 10);
const share = (value: number): string => String(Math.round(value * 1000) / 1000);

const shape = (y: number) =>
  area<Bough['points'][number]>()
    .x(({ x }) => x)
    .y0(({ half }) => y - half)
    .y1(({ half }) => y + half)
    .curve(curveMonotoneX)
    .digits(1);
const edge = (y: number, side: 1 | -1) =>
  line<Bough['points'][number]>()
    .x(({ x }) => x)
    .y(({ half }) => y + side * half)
    .curve(curveMonotoneX)
    .digits(1);

/** Stops that lie on the straight line between others say nothing. */
function telling(stops: readonly Stop[]): Stop[] {
  return stops.filter(({ opacity }, at) => opacity !== stops[at - 1]?.opacity || opacity !== stops[at + 1]?.opacity);
}

function gradient(id: string, { from, to }: Bough, stops: readonly Stop[], colour: string, strength = 1): Markup {
  const [x1, x2] = [from - 2, to + 2];
  const marks = telling(stops).map(({ x, opacity }) => {
    const at = Math.min(1, Math.max(0, (x - x1) / (x2 - x1)));
    return markup`<stop offset="${share(at)}" stop-color="${colour}" stop-opacity="${share(opacity * strength)}"/>`;
  });
  return markup`<linearGradient id="${id}" gradientUnits="userSpaceOnUse" x1="${px(x1)}" x2="${px(x2)}" y1="0" y2="0">${marks}</linearGradient>`;
}

/** How dark the years before first fruit are, of full. */
const WAITING = 0.24;

function boughOf(layout: Bough, y: number, id: string, colour: string): { readonly defs: Markup; readonly drawn: Markup } {
  const d = shape(y)(layout.points) ?? '';
  const defs = markup`${gradient(`${id}n`, layout, layout.nursery, '#fff')}${gradient(`${id}w`, layout, layout.waiting, colour, WAITING)}${gradient(`${id}j`, layout, layout.judging, colour)}${gradient(`${id}c`, layout, layout.contour, colour)}<mask id="${id}m" maskUnits="userSpaceOnUse" x="${px(layout.from - 2)}" y="${px(y - 20)}" width="${px(layout.to - layout.from + 4)}" height="40"><rect x="${px(layout.from - 2)}" y="${px(y - 20)}" width="${px(layout.to - layout.from + 4)}" height="40" fill="url(#${id}n)"/></mask>`;
  const contours = ([1, -1] as const).map(
    (side) => markup`<path d="${edge(y, side)(layout.points) ?? ''}" fill="none" stroke="url(#${id}c)" stroke-width="1.2"/>`,
  );
  const dots = id.replace(/r\d+$/, 'd');
  const drawn = markup`<path d="${d}" fill="url(#${dots})" mask="url(#${id}m)"/><path d="${d}" fill="url(#${id}w)"/><path d="${d}" fill="url(#${id}j)"/>${contours}`;
  return { defs, drawn };
}

const dotsOf = (id: string, colour: string): Markup =>
  markup`<pattern id="${id}d" width="5" height="5" patternUnits="userSpaceOnUse"><rect width="5" height="5" fill="${colour}" fill-opacity="0.06"/><circle cx="1.25" cy="1.25" r="1" fill="${colour}"/><circle cx="3.75" cy="3.75" r="1" fill="${colour}"/></pattern>`;

/** Paper under words that stand on lines: an outline around letters would be read twice where a program reads them. */
const ground = (x: number, y: number, text: string, size: number, measure: Measure, bold = false): Markup =>
  markup`<rect x="${px(x - 2)}" y="${px(y - size * 0.78)}" width="${px(measure(text, size, bold) + 4)}" height="${px(size)}" fill="${LOOK.paper}" fill-opacity="0.85"/>`;

/** A plan’s letter on its disc. */
export function letterOf(mark: string, x: number, y: number, r: number): Markup {
  const colour = colourOf(mark);
  const [ground, ink] = isRing(mark) ? [LOOK.paper, LOOK.ink] : [colour, LOOK.onPlan];
  return markup`<circle cx="${px(x)}" cy="${px(y)}" r="${px(r - 1)}" fill="${ground}" stroke="${colour}" stroke-width="2"/><text x="${px(x)}" y="${px(y + r * 0.42)}" text-anchor="middle" font-size="${px(r * 1.25)}" font-weight="700" fill="${ink}">${mark}</text>`;
}

function descent({ x1, y1, x2, y2, width }: TimelineLane['lines'][number], colour: string): Markup {
  const bend = Math.min(26, (y2 - y1) * 0.7);
  const d = `M${px(x1)},${px(y1)}V${px(y2 - bend)}C${px(x1)},${px(y2 - bend * 0.3)} ${px(x1 + (x2 - x1) * 0.3)},${px(y2)} ${px(x2)},${px(y2)}`;
  return markup`<path d="${d}" fill="none" stroke="${colour}" stroke-width="${px(width)}" stroke-linecap="round"/>`;
}

function dotOf({ dot }: TimelineLane, colour: string, size: number): Markup {
  if (!dot) return NOTHING;
  const d = `M${px(dot.from)},${px(dot.y)}H${px(dot.to)}M${px(dot.from)},${px(dot.y - 4)}v8M${px(dot.to)},${px(dot.y - 4)}v8`;
  return markup`<path d="${d}" fill="none" stroke="${LOOK.paper}" stroke-width="5"/><path d="${d}" fill="none" stroke="${LOOK.ink}" stroke-width="1.8"/><circle cx="${px(dot.x)}" cy="${px(dot.y)}" r="5.2" fill="${colour}" stroke="${LOOK.paper}" stroke-width="1.6"/>${ground(dot.yearX, dot.y + size * 0.35, dot.year, size, sansMeasure, true)}<text x="${px(dot.yearX)}" y="${px(dot.y + size * 0.35)}" font-size="${px(size)}" font-weight="650" fill="${LOOK.ink}">${dot.year}</text>`;
}

function chanceOf({ chance: { width, ticks, guesses, chance } }: TimelineLane, x: number, y: number, colour: string): Markup {
  const scale = [`M${px(x + 1)},${px(y)}H${px(x + width - 1)}`, ...ticks.map((tick) => `M${px(x + tick)},${px(y - 3)}v6`)].join('');
  const allowed = guesses
    ? markup`<rect x="${px(x + guesses.x)}" y="${px(y - 4.5)}" width="${px(guesses.width)}" height="9" fill="${colour}" fill-opacity="0.22" stroke="${colour}" stroke-width="1"/>`
    : NOTHING;
  return markup`<path d="${scale}" fill="none" stroke="${LOOK.edge}" stroke-width="1"/>${allowed}<rect x="${px(x + chance.x)}" y="${px(y - 6)}" width="${px(chance.width)}" height="12" fill="${colour}"/>`;
}

/** Chance at a lane's end: the numeral, the percent with its error, and the scale. */
function endOf(lane: TimelineLane, { scheme, calendar }: Timeline, colour: string): Markup {
  const { text, narrow, width } = scheme;
  if (narrow) {
    const y = lane.top + 43;
    return markup`<text x="0" y="${px(y)}" font-size="${px(text)}" fill="${LOOK.ink2}"><tspan font-weight="700" fill="${LOOK.ink}">${lane.numeral} ${lane.words}</tspan>  ${lane.percent} ${lane.error}</text>${lane.guesses === '' ? NOTHING : markup`<text x="0" y="${px(y + 1.4 * text)}" font-size="${px(text)}" fill="${LOOK.ink2}">${lane.guesses}</text>`}`;
  }
  const x = calendar.horizon + 14;
  const y = lane.top + 20;
  return markup`<text x="${px(x)}" y="${px(y)}" font-family="${SERIF}" font-size="20" font-weight="500" fill="${LOOK.ink}">${lane.numeral}<tspan font-size="13.5"> ${lane.words}</tspan></text><text x="${px(width)}" y="${px(y)}" text-anchor="end" font-size="${px(text)}" fill="${LOOK.ink2}"><tspan font-weight="650" fill="${LOOK.ink}">${lane.percent}</tspan> ${lane.error}</text>${chanceOf(lane, x, y + 14, colour)}`;
}

function laneOf(lane: TimelineLane, timeline: Timeline, id: string, last: boolean): { readonly defs: Markup; readonly drawn: Markup } {
  const { scheme, calendar } = timeline;
  const colour = colourOf(lane.mark);
  const boughs = lane.rows.flatMap(({ bough, y }, at) => (bough ? [boughOf(bough, y, `${id}r${String(at)}`, colour)] : []));
  const labels = lane.rows.map(
    ({ label, labelY }) => markup`<text x="${scheme.narrow ? 0 : 22}" y="${px(labelY)}" font-size="${px(scheme.text)}" fill="${LOOK.ink}">${label}</text>`,
  );
  const never = lane.rows.every(({ bough }) => bough === null)
    ? markup`<text x="${px(calendar.left)}" y="${px((lane.rows[0]?.y ?? 0) + 4)}" font-size="${px(scheme.text)}" fill="${LOOK.ink2}">${timelineText.never}</text>`
    : NOTHING;
  const rings = lane.rows.flatMap(({ ring, y }) =>
    ring === null ? [] : [markup`<circle cx="${px(ring)}" cy="${px(y)}" r="5" fill="${LOOK.paper}" stroke="${colour}" stroke-width="2.2"/>`],
  );
  const r = scheme.narrow ? 13 : 8.2;
  const nameY = lane.top + (scheme.narrow ? 18 : 14.5);
  const foot = lane.top + lane.height - 0.5;
  const rule = last ? NOTHING : markup`<path d="M0,${px(foot)}H${px(scheme.width)}" stroke="${LOOK.rule}" stroke-width="1"/>`;
  const drawn = markup`${rule}${boughs.map((each) => each.drawn)}${lane.lines.map((each) => descent(each, colour))}${rings}${dotOf(lane, colour, scheme.text)}${letterOf(lane.mark, r, nameY - scheme.name * 0.33, r)}${ground(2 * r + 6, nameY, lane.name, scheme.name, serifMeasure, true)}<text x="${px(2 * r + 6)}" y="${px(nameY)}" font-family="${SERIF}" font-size="${px(scheme.name)}" font-weight="650" fill="${LOOK.ink}">${lane.name}</text>${labels}${never}${endOf(lane, timeline, colour)}`;
  return { defs: markup`${dotsOf(id, colour)}${boughs.map((each) => each.defs)}`, drawn };
}

function axisOf({ scheme: { axis, text, narrow }, calendar: { ticks, horizon, lastYear }, height }: Timeline): Markup {
  const years = ticks.map(
    ({ year, x }) => markup`<text x="${px(x)}" y="${px(axis - 7)}" text-anchor="middle" font-size="${px(text)}" fill="${LOOK.ink2}">${year}</text>`,
  );
  const hairs = ticks.map(({ x }) => `M${px(x)},${px(axis)}V${px(height)}`).join('');
  const end = narrow ? 'end' : 'middle';
  return markup`<path d="${hairs}" stroke="${LOOK.hair}" stroke-width="1"/><path d="M${px(horizon)},${px(axis - 3)}V${px(height)}" stroke="${LOOK.ink}" stroke-width="1.8"/>${years}<text x="${px(horizon)}" y="${px(axis - 7 - text * 1.15)}" text-anchor="${end}" font-size="${px(text)}" font-weight="600" fill="${LOOK.ink}">${timelineText.horizon}</text><text x="${px(horizon)}" y="${px(axis - 7)}" text-anchor="${end}" font-size="${px(text)}" font-weight="700" fill="${LOOK.ink}">${lastYear}</text>`;
}

/**
 * Draws the timeline as the inside of an SVG and as the SVG itself, whole in its own attributes: it looks the same on the sheet, in a file
 * and in a program that knows no style sheets.
 * @param id begins every id in it; two pictures on one page need two
 */
export function timelineSvg(timeline: Timeline, id: string): Markup {
  const { scheme, height, lanes, summary } = timeline;
  const drawn = lanes.map((lane, at) => laneOf(lane, timeline, `${id}${String(at)}`, at === lanes.length - 1));
  return markup`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${px(scheme.width)} ${px(height)}" width="${px(scheme.width)}" height="${px(height)}" role="img" aria-label="${summary}" font-family="${SANS}" style="font-variant-numeric:tabular-nums lining-nums"><defs>${drawn.map(({ defs }) => defs)}</defs>${axisOf(timeline)}${drawn.map((lane) => lane.drawn)}</svg>`;
}
