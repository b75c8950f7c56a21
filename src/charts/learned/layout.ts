import { scaleLinear } from 'd3';
import { lessons } from '../../text/log-lessons.ts';
import { wrap, type Measure } from '../measure.ts';

/** One number of the programme beside what the log says of it, in the words and numbers that the picture shows. */
export interface RateRow {
  readonly id: string;
  readonly name: string;
  /** The pair, kind or stock it belongs to; empty for the whole orchard. */
  readonly of: string;
  readonly unit: string;
  readonly scale: 'share' | 'months' | 'years';
  /** The programme has it from these counts. */
  readonly used: boolean;
  readonly before: { readonly mean: number; readonly low?: number; readonly high?: number } | null;
  readonly after: { readonly mean: number; readonly low: number; readonly high: number };
  readonly nextSpring: { readonly low: number; readonly high: number } | null;
  /** What was counted; empty where that is not one count. */
  readonly counted: string;
  /** In how many batches, and when. */
  readonly where: string;
  readonly curves: {
    readonly to: number;
    readonly before: readonly (readonly [value: number, density: number])[] | null;
    readonly after: readonly (readonly [value: number, density: number])[];
  };
}

interface Point {
  readonly x: number;
  readonly y: number;
}

export interface RateWords extends Point {
  readonly kind: 'name' | 'unit' | 'now' | 'plain';
  readonly text: string;
}

export interface RateLayoutRow {
  readonly id: string;
  readonly top: number;
  readonly bottom: number;
  readonly plot: { readonly left: number; readonly right: number; readonly top: number; readonly base: number };
  readonly ends: readonly { readonly x: number; readonly text: string; readonly anchor: 'start' | 'end' }[];
  readonly before: readonly Point[];
  readonly after: readonly Point[];
  /** The middle of what is believed now, from the axis up to its curve. */
  readonly middle: Point;
  readonly words: readonly RateWords[];
  /** Where a button of the row has room. */
  readonly button: { readonly left: number; readonly top: number; readonly width: number };
}

export interface RatesLayout {
  readonly width: number;
  readonly height: number;
  readonly rows: readonly RateLayoutRow[];
}

const PHONE = 560;
const WIDE = 860;
const BUTTON = { width: 152, height: 44 };
const NAME = 18;
const SMALL = 16;
const LINE = 22;
const CURVE = 58;
/** Room above the middle of a curve, before it is cut off. */
const HEADROOM = 1.05;
/** Names stand in the serif, which runs wider than the letters that are measured. */
export const SERIF = 1.12;
/** Room for the numbers at the ends of an axis. */
const END = 24;

interface Columns {
  readonly names: { readonly x: number; readonly room: number };
  readonly plot: { readonly left: number; readonly right: number };
  readonly words: { readonly x: number; readonly room: number };
  readonly how: 'wide' | 'middle' | 'phone';
}

function columnsOf(width: number): Columns {
  if (width < PHONE)
    return { how: 'phone', names: { x: 0, room: width }, plot: { left: 4, right: width - 4 }, words: { x: 0, room: width - BUTTON.width - 12 } };
  const aside = width < WIDE ? 0 : BUTTON.width + 22;
  const [names, words] = width < WIDE ? [190, 210] : [250, 236];
  const at = width - aside - words;
  return { how: width < WIDE ? 'middle' : 'wide', names: { x: 0, room: names }, plot: { left: names + 20, right: at - 24 }, words: { x: at, room: words } };
}

/** Lays out a row for every learned number: name, curves of before and now over one axis, the numbers in words, room for a button. */
export function ratesLayout(rows: readonly RateRow[], { width, measure }: { readonly width: number; readonly measure: Measure }): RatesLayout {
  const columns = columnsOf(width);
  let top = 0;
  const laid = rows.map((row) => {
    const one = rowOf(row, columns, top, measure);
    top = one.bottom;
    return one;
  });
  return { width, height: top, rows: laid };
}

function rowOf(row: RateRow, columns: Columns, top: number, measure: Measure): RateLayoutRow {
  const { how, names, plot, words } = columns;
  const pad = how === 'phone' ? 16 : 14;
  const nameLines = [
    ...wrap(row.name, names.room / SERIF, NAME, measure, true).map((text) => ({ kind: 'name' as const, text })),
    ...wrap(row.of === '' ? row.unit : `${row.of}, ${row.unit}`, names.room, SMALL, measure).map((text) => ({ kind: 'unit' as const, text })),
  ];
  const [now, was] = [lessons.now(row), lessons.was(row)];
  const wasAt = measure(now, NAME, true) + 10;
  // What it was stands beside what it is now, or under it where there is no room.
  const beside = wasAt + measure(was, SMALL) <= words.room;
  const said = [
    { kind: 'now' as const, text: now },
    ...[beside ? '' : was, lessons.another(row.nextSpring, row.scale), row.counted, row.where]
      .filter((text) => text !== '')
      .flatMap((text) => wrap(text, words.room, SMALL, measure).map((line) => ({ kind: 'plain' as const, text: line }))),
  ];
  const lines = <T>(list: readonly T[], x: number, from: number) => list.map((one, i) => ({ ...one, x, y: from + 17 + i * LINE }));
  const nameTop = top + pad;
  const curveTop = how === 'phone' ? nameTop + nameLines.length * LINE + 6 : top + pad;
  const base = curveTop + CURVE;
  const wordsTop = how === 'phone' ? base + END + 8 : nameTop;
  const wordsBottom = wordsTop + said.length * LINE;
  const button =
    how === 'wide'
      ? { left: words.x + words.room + 22, top: nameTop - 4 }
      : how === 'middle'
        ? { left: words.x, top: wordsBottom + 6 }
        : { left: words.x + words.room + 12, top: wordsTop };
  const bottom = Math.max(nameTop + nameLines.length * LINE, base + END, wordsBottom, button.top + BUTTON.height) + pad;
  return {
    id: row.id,
    top,
    bottom,
    plot: { ...plot, top: curveTop, base },
    ends: [
      { x: plot.left, text: '0', anchor: 'start' },
      { x: plot.right, text: String(row.scale === 'share' ? Math.round(row.curves.to * 1e4) / 100 : row.curves.to), anchor: 'end' },
    ],
    ...curvesOf(row, plot, curveTop, base),
    words: [
      ...lines(nameLines, names.x, nameTop),
      ...lines(said, words.x, wordsTop),
      ...(beside && was !== '' ? [{ kind: 'plain' as const, text: was, x: words.x + wasAt, y: wordsTop + 17 }] : []),
    ],
    button: { ...button, width: BUTTON.width },
  };
}

function curvesOf(
  { curves, after: { mean, low, high } }: RateRow,
  plot: Columns['plot'],
  top: number,
  base: number,
): Pick<RateLayoutRow, 'before' | 'after' | 'middle'> {
  const x = scaleLinear([0, curves.to], [plot.left, plot.right]).clamp(true);
  // Belief may run to infinity at the very ends of its axis: what counts is how high the middle eight of ten stand, and what was believed inside.
  const middle = curves.after.filter(([value]) => value >= low && value <= high);
  const inner = (curves.before ?? []).slice(2, -2);
  const most = Math.max(1e-12, ...middle.map(([, height]) => height * HEADROOM), ...inner.map(([, height]) => height));
  const y = scaleLinear([0, most], [base, top]).clamp(true);
  const points = (curve: RateRow['curves']['after']) => curve.map(([value, height]) => ({ x: x(value), y: y(height) }));
  const after = points(curves.after);
  const [first, last] = [after[0], after.at(-1)];
  const at = x(mean);
  return {
    before: points(curves.before ?? []),
    after: first && last ? [{ x: first.x, y: base }, ...after, { x: last.x, y: base }] : [],
    // A number without a curve is a mark as high as a curve.
    middle: { x: at, y: first ? heightAt(after, at, base) : top },
  };
}

/** Height of a line at a place, between its points. */
function heightAt(line: readonly Point[], x: number, base: number): number {
  const right = line.findIndex((point) => point.x >= x);
  const [a, b] = [line[right - 1], line[right]];
  return a && b && b.x > a.x ? a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x) : (b?.y ?? base);
}
