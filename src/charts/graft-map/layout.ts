import { scaleLinear, scaleLog } from 'd3';
import type { GraftMap } from '../../decisions/graft-map.ts';
import type { Standing } from '../../decisions/standing.ts';
import { graftText } from '../../text/pay-graft.ts';
import type { Box } from '../boxes.ts';
import type { Letter } from '../letter.ts';
import type { Measure } from '../measure.ts';
import { mapLabels, unsaid, type MapLabel } from './labels.ts';
import type { Edge, Point } from './edge.ts';

export interface MapLayout {
  readonly width: number;
  readonly height: number;
  readonly plot: Box;
  readonly months: readonly { readonly x: number; readonly text: string; readonly anchor: 'start' | 'middle' | 'end' }[];
  readonly takes: readonly { readonly y: number; readonly text: string }[];
  readonly edges: readonly Edge[];
  /** What the guesses allow: closed outlines, the widest first. */
  readonly rings: readonly { readonly share: number; readonly outline: readonly Point[] }[];
  readonly programme: Letter;
  readonly labels: readonly MapLabel[];
  /** What found no room in the picture, in words. */
  readonly unsaid: readonly string[];
  /** In the order of the map's cells. */
  readonly cells: readonly Box[];
  readonly monthsCaption: string;
  readonly captionY: number;
}

export interface MapOptions {
  readonly width: number;
  readonly measure: Measure;
  /** Letter of the plan, and its id. */
  readonly mark: string;
  readonly plan: string;
}

const MONTHS = [0.25, 0.5, 1, 2, 3, 6, 12, 24, 48, 96, 192, 480, 1200];
const TAKES = [0, 0.2, 0.4, 0.6, 0.8, 1];
const PHONE = 520;
/** Half the least height and width of a ring, px: a stated take leaves no height, but the guess should be seen. */
const LEAST_RING = [9, 6] as const;

/** Lays out which choice wins over “half are dead by” (across, in the logarithm) and the share of grafts that take (up). */
export function mapLayout(map: GraftMap, standing: Standing, { width, measure, mark, plan: id }: MapOptions): MapLayout {
  const phone = width < PHONE;
  const plot: Box = { left: phone ? 30 : 56, right: width - (phone ? 4 : 14), top: 14, bottom: 14 + (phone ? 330 : Math.min(470, Math.round(width * 0.7))) };
  const x = scaleLog([map.from, map.to], [plot.left, plot.right]);
  const y = scaleLinear([0, 1], [plot.bottom, plot.top]);
  const edges = edgesOf(map, x, y, plot);
  const r = phone ? 12 : 14;
  const programme: Letter = { mark, plan: id, x: x(standing.middle.halfLife), y: y(standing.middle.take), r };
  const rings = standing.rings
    .map(({ share, outline }, i) => ({
      share,
      outline: puffed(
        outline.map(({ halfLife, take }) => ({ x: x(halfLife), y: y(take) })),
        LEAST_RING[standing.rings.length - 1 - i] ?? 6,
      ),
    }))
    .reverse();
  const labels = mapLabels({ plot, edges, rings, programme, middle: standing.middle, phone, measure });
  return {
    width,
    height: plot.bottom + (phone ? 62 : 60),
    plot,
    months: monthTicks(map, x, plot, measure),
    takes: TAKES.map((take) => ({ y: y(take), text: String(Math.round(take * 10)) })),
    edges,
    rings,
    programme,
    labels,
    unsaid: unsaid(labels, { plot, edges }),
    cells: cellsOf(map, x, y),
    monthsCaption: phone ? graftText.mapMonthsShort : graftText.mapMonths,
    captionY: plot.bottom + 50,
  };
}

type Scale = (value: number) => number;

/** The outermost columns reach to the edges of the picture. */
function edgesOf({ halfLives, line }: GraftMap, x: Scale, y: Scale, plot: Box): readonly Edge[] {
  const inner = line.map(({ take, low, high }, i): Edge => ({ x: x(halfLives[i] ?? 1), line: y(take), low: y(low), high: y(high) }));
  const [first, last] = [inner[0], inner.at(-1)];
  return first && last ? [{ ...first, x: plot.left }, ...inner, { ...last, x: plot.right }] : [];
}

function monthTicks({ from, to }: GraftMap, x: Scale, plot: Box, measure: Measure): MapLayout['months'] {
  const ticks: MapLayout['months'][number][] = [];
  let taken = -Infinity;
  for (const months of MONTHS.filter((at) => at >= from * 0.999 && at <= to * 1.001)) {
    const text = graftText.tick(months, ticks.length === 0);
    const at = x(months);
    const wide = measure(text, 17);
    const anchor = at + wide / 2 > plot.right + 4 ? 'end' : at - wide / 2 < plot.left - 26 ? 'start' : 'middle';
    const left = anchor === 'middle' ? at - wide / 2 : anchor === 'end' ? at - wide : at;
    const shown = left >= taken + 8;
    if (shown) taken = left + wide;
    ticks.push({ x: at, text: shown ? text : '', anchor });
  }
  return ticks;
}

/** Cells reach half way to their neighbours: even in the logarithm. */
function cellsOf({ from, to, halfLives, takes }: GraftMap, x: Scale, y: Scale): readonly Box[] {
  const [across, up] = [halfLives.length, takes.length];
  const month = (i: number) => x(from * (to / from) ** (i / across));
  return takes.flatMap((_, row) =>
    halfLives.map((__, column) => ({ left: month(column), right: month(column + 1), top: y((row + 1) / up), bottom: y(row / up) })),
  );
}

/** Blows an outline up from its middle where it has hardly any width or height. */
function puffed(outline: readonly Point[], least: number): readonly Point[] {
  const side = (of: (point: Point) => number) => {
    const values = outline.map(of);
    const [from, to] = [Math.min(...values), Math.max(...values)];
    return { middle: (from + to) / 2, half: (to - from) / 2 };
  };
  const [across, up] = [side(({ x }) => x), side(({ y }) => y)];
  const turn = (2 * Math.PI) / Math.max(1, outline.length);
  return outline.map((point, i) => ({
    x: across.half < least ? across.middle + least * Math.cos(turn * i) : point.x,
    y: up.half < least ? up.middle - least * Math.sin(turn * i) : point.y,
  }));
}
