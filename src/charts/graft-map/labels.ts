import type { MapPoint } from '../../decisions/standing.ts';
import { graftText } from '../../text/pay-graft.ts';
import { boxAt, gap, inset, type Box } from '../boxes.ts';
import type { Letter } from '../letter.ts';
import type { Measure } from '../measure.ts';
import type { Edge, Point } from './edge.ts';

/** Words in the map, and where a leader goes from them. */
export interface MapLabel {
  readonly kind: 'graft' | 'own' | 'programme' | 'line' | 'between' | 'takes';
  readonly lines: readonly string[];
  readonly x: number;
  /** Baseline of the first line. */
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly leader: readonly [Point, Point] | null;
}

interface Room {
  readonly plot: Box;
  readonly edges: readonly Edge[];
  readonly rings: readonly { readonly outline: readonly Point[] }[];
  readonly programme: Letter;
  readonly middle: MapPoint;
  readonly phone: boolean;
  readonly measure: Measure;
}

const LINE = 21;
const SIZE = 17;
const BIG = 27;
const CLEAR = 6;

/** Places the words where they cover neither each other nor a line; words that find no room are left out, and stand under the picture. */
export function mapLabels(room: Room): readonly MapLabel[] {
  const { plot, edges, measure, phone, programme } = room;
  const taken: Box[] = [boxOf([...room.rings.flatMap(({ outline }) => outline), ...aroundLetter(programme)])];
  const labels: MapLabel[] = [];
  const put = (label: MapLabel | null, box: Box | null) => {
    if (!label || !box) return;
    labels.push(label);
    taken.push(box);
  };
  const caption = boxAt(plot.left + 10, plot.top + 6, measure(graftText.mapTakes, SIZE, true), LINE);
  put({ kind: 'takes', lines: [graftText.mapTakes], x: caption.left, y: caption.top + 17, anchor: 'start', leader: null }, caption);
  const own = ofProgramme(room, taken);
  put(own?.label ?? null, own?.box ?? null);
  if (!phone) {
    const between = besideEdge(room, taken, graftText.mapBetween, 'between');
    put(between?.label ?? null, between?.box ?? null);
    const line = besideEdge(room, taken, [graftText.mapLine], 'line');
    put(line?.label ?? null, line?.box ?? null);
  }
  for (const kind of ['graft', 'own'] as const) {
    const words = kind === 'graft' ? graftText.mapGraft : graftText.mapOwn;
    const size = phone ? 22 : BIG;
    const found = roomiest(measure(words, size, true) * 1.02, size, plot, (box) =>
      Math.min(inset(box, plot), inside(box, edges, kind), ...taken.map((other) => gap(box, other))),
    );
    if (found) put({ kind, lines: [words], x: (found.left + found.right) / 2, y: found.top + size * 0.78, anchor: 'middle', leader: null }, found);
  }
  return labels;
}

/** What is drawn and found no room for its words, in words for under the picture. */
export function unsaid(labels: readonly MapLabel[], { plot, edges }: Pick<Room, 'plot' | 'edges'>): readonly string[] {
  const drawn = {
    graft: edges.some(({ high }) => high > plot.top + 2),
    own: edges.some(({ low }) => low < plot.bottom - 2),
    line: edges.some(({ line }) => line > plot.top + 2 && line < plot.bottom - 2),
    between: edges.some(({ low, high }) => low - high > 2),
  };
  const said = new Set(labels.map(({ kind }) => kind));
  return (['graft', 'own', 'line', 'between'] as const).filter((kind) => drawn[kind] && !said.has(kind)).map((kind) => graftText.mapKey[kind]);
}

/** Distance into the part of the map where a choice surely wins; negative outside it. */
function inside(box: Box, edges: readonly Edge[], kind: 'graft' | 'own'): number {
  const at = [box.left, box.left + (box.right - box.left) / 3, box.right - (box.right - box.left) / 3, box.right].map((x) => edgeAt(edges, x));
  return Math.min(...at.map(({ low, high }) => (kind === 'graft' ? high - box.bottom : box.top - low)));
}

function edgeAt(edges: readonly Edge[], x: number): Edge {
  const above = edges.findIndex((edge) => edge.x >= x);
  const [after, before] = [edges[above] ?? edges.at(-1), edges[above - 1]];
  if (!after) return { x, line: 0, low: 0, high: 0 };
  if (!before || after.x === before.x) return { ...after, x };
  const share = (x - before.x) / (after.x - before.x);
  const between = (of: 'line' | 'low' | 'high') => before[of] + share * (after[of] - before[of]);
  return { x, line: between('line'), low: between('low'), high: between('high') };
}

/** The place with the greatest distance to everything, on a grid; null where nothing fits. */
function roomiest(width: number, height: number, plot: Box, distance: (box: Box) => number): Box | null {
  let best: Box | null = null;
  let far = CLEAR;
  for (let y = plot.top + CLEAR; y + height < plot.bottom; y += 8) {
    for (let x = plot.left + CLEAR; x + width < plot.right; x += 8) {
      const box = boxAt(x, y, width, height);
      const distant = distance(box);
      if (distant > far) [best, far] = [box, distant];
    }
  }
  return best;
}

function ofProgramme({ plot, programme, middle, measure, edges }: Room, taken: readonly Box[]): { label: MapLabel; box: Box } | null {
  const lines = [graftText.mapHere, graftText.mapPoint(middle.halfLife, middle.take)];
  const width = Math.max(measure(lines[0] ?? '', SIZE, true), measure(lines[1] ?? '', 16.5));
  const height = 2 * LINE;
  const [rings] = taken;
  if (!rings) return null;
  const { x } = programme;
  // Under the rings, over them, then beside.
  const spots: { box: Box; anchor: MapLabel['anchor']; x: number }[] = [60, 24, -60 - height, -24 - height].flatMap((down) => {
    const top = down > 0 ? rings.bottom + down : rings.top + down;
    return [
      { box: boxAt(x - 8 - width, top, width, height), anchor: 'end' as const, x: x - 8 },
      { box: boxAt(x + 8, top, width, height), anchor: 'start' as const, x: x + 8 },
    ];
  });
  spots.push(
    { box: boxAt(rings.right + 12, programme.y - LINE, width, height), anchor: 'start', x: rings.right + 12 },
    { box: boxAt(rings.left - 12 - width, programme.y - LINE, width, height), anchor: 'end', x: rings.left - 12 },
  );
  const free = spots.find(
    ({ box }) => inset(box, plot) >= 4 && taken.every((other) => gap(box, other) >= 4) && (inside(box, edges, 'graft') >= 4 || inside(box, edges, 'own') >= 4),
  );
  if (!free) return null;
  const { box, anchor } = free;
  const above = box.bottom < programme.y;
  const beside = box.top < programme.y && box.bottom > programme.y;
  const from: Point = above ? { x, y: box.top + 4 } : { x, y: box.bottom - 4 };
  const to: Point = { x, y: programme.y + (above ? -1 : 1) * (programme.r + 2) };
  return { label: { kind: 'programme', lines, x: free.x, y: box.top + 16, anchor, leader: beside ? null : [from, to] }, box };
}

/** Words on the side of grafting, left of the line or the gap between the dashes, with a leader to it. */
function besideEdge(
  { plot, edges, measure }: Room,
  taken: readonly Box[],
  lines: readonly string[],
  kind: 'line' | 'between',
): { label: MapLabel; box: Box } | null {
  const width = Math.max(...lines.map((words) => measure(words, SIZE, kind === 'line')));
  const height = lines.length * LINE;
  for (let y = plot.bottom - 14; y > plot.top + height; y -= 10) {
    const x = crossingX(edges, y, kind === 'line' ? 'line' : 'middle');
    if (x === null) continue;
    const wide = edgeAt(edges, x);
    if (kind === 'between' && wide.low - wide.high < 14) continue;
    for (const reach of [46, 70, 100]) {
      const box = boxAt(x - reach - width, y - height - (kind === 'line' ? 16 : 0) + height / 2, width, height);
      if (inset(box, plot) < 4 || inside(box, edges, 'graft') < 6 || taken.some((other) => gap(box, other) < 8)) continue;
      const leader: [Point, Point] = [
        { x: box.right + 6, y: (box.top + box.bottom) / 2 },
        { x, y },
      ];
      return { label: { kind, lines, x: box.right, y: box.top + 16, anchor: 'end', leader }, box };
    }
  }
  return null;
}

/** Where the line, or the middle of the gap, comes up to a height. */
function crossingX(edges: readonly Edge[], y: number, of: 'line' | 'middle'): number | null {
  const at = ({ line, low, high }: Edge) => (of === 'line' ? line : (low + high) / 2);
  for (const [i, after] of edges.entries()) {
    const before = edges[i - 1];
    if (before && at(before) > y && at(after) <= y) return before.x + ((after.x - before.x) * (at(before) - y)) / (at(before) - at(after));
  }
  return null;
}

function boxOf(points: readonly Point[]): Box {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

const aroundLetter = ({ x, y, r }: Letter): Point[] => [
  { x: x - r - 2, y: y - r - 2 },
  { x: x + r + 2, y: y + r + 2 },
];
