import type { GenerationOutlook } from '../../results/outlook.ts';
import { laneText } from '../../text/charts.ts';
import type { Measure } from '../measure.ts';

type SpanKind = 'count' | 'kept' | 'reached';
export interface Span {
  readonly text: string;
  readonly kind: SpanKind;
}
/** One written line: its left end in px, its place counted from the first line, and its parts in order. */
export interface ChainLine {
  readonly x: number;
  readonly line: number;
  readonly width: number;
  readonly spans: readonly Span[];
}

/** Share below which the picture says how many futures get there at all. */
const ALWAYS = 0.9;

/** What rides under a bough: flowers › seedlings › fruiting › kept, middle values of the futures that reach it. */
export function chainSpans({ stages, reached }: GenerationOutlook): Span[] {
  const { flowers, seedlings, aliveAtGraft, fruiting, kept } = stages;
  const middle = ({ p50 }: { p50: number }) => Math.round(p50);
  const counts = [
    flowers.p90 > 0 ? laneText.flowers(middle(flowers)) : laneText.gathered,
    laneText.seedlings(middle(seedlings)),
    ...(aliveAtGraft.p90 > 0 ? [laneText.alive(middle(aliveAtGraft))] : []),
    laneText.fruiting(middle(fruiting)),
  ].map((text): Span => ({ text, kind: 'count' }));
  const spans: Span[] = [...counts, { text: laneText.kept(middle(kept), Math.round(kept.p10), Math.round(kept.p90)), kind: 'kept' }];
  return reached < ALWAYS ? [...spans, { text: laneText.reached(reached), kind: 'reached' }] : spans;
}

/** The whole chain as one text, for those who listen to it. */
export const chainWords = (generation: GenerationOutlook): string =>
  chainSpans(generation)
    .map(({ text }) => text)
    .join(', ');

export interface ChainRoom {
  /** Where the chain would begin, px. */
  readonly start: number;
  /** Leftmost and rightmost px it may use. */
  readonly least: number;
  readonly limit: number;
  /** px of a line of descent that crosses the chain's height; null for none. */
  readonly crossing: number | null;
  readonly size: number;
  readonly measure: Measure;
}

const GAP_LEFT = 10;
const GAP_RIGHT = 14;

/**
 * Places a chain: on one line that breaks at the line of descent where it fits, whole on one side of it where not,
 * and on several lines where the picture is narrow.
 */
export function chainLines(spans: readonly Span[], room: ChainRoom): ChainLine[] {
  const { start, least, limit, crossing } = room;
  const whole = joined(spans);
  const width = widthOf(whole, room);
  if (crossing !== null) {
    const cut = spans.findIndex(({ kind }) => kind === 'kept');
    const before = joined(spans.slice(0, cut));
    const after = joined(spans.slice(cut), true);
    const [w1, w2] = [widthOf(before, room), widthOf(after, room)];
    if (start + w1 <= crossing - GAP_LEFT && crossing + GAP_RIGHT + w2 <= limit)
      return [
        { x: start, line: 0, width: w1, spans: before },
        { x: crossing + GAP_RIGHT, line: 0, width: w2, spans: after },
      ];
    if (crossing + GAP_RIGHT + width <= limit) return [{ x: crossing + GAP_RIGHT, line: 0, width, spans: whole }];
  }
  const side = crossing === null ? null : beside(crossing, spans, room);
  if (side) return wrapped(spans, side);
  if (width <= limit - least) return [{ x: Math.max(least, Math.min(start, limit - width)), line: 0, width, spans: whole }];
  return wrapped(spans, room);
}

/** The wider side of a line that crosses the chain's height; null where a part is too wide even there. */
function beside(crossing: number, spans: readonly Span[], room: ChainRoom): ChainRoom | null {
  const right = { ...room, start: crossing + GAP_RIGHT, least: Math.max(room.least, crossing + GAP_RIGHT) };
  const left = { ...room, limit: Math.min(room.limit, crossing - GAP_LEFT) };
  const wider = right.limit - right.least >= left.limit - left.least ? right : left;
  const widest = Math.max(...spans.map((span) => widthOf(joined([span], true), room)));
  return widest <= wider.limit - wider.least ? wider : null;
}

/** Greedy lines; all begin where the widest still ends before the limit. */
function wrapped(spans: readonly Span[], room: ChainRoom): ChainLine[] {
  const rows: Span[][] = [];
  let row: Span[] = [];
  for (const span of spans) {
    if (row.length > 0 && widthOf(joined([...row, span], rows.length > 0), room) > room.limit - room.least) {
      rows.push(row);
      row = [span];
    } else row = [...row, span];
  }
  rows.push(row);
  const lines = rows.map((parts, index) => joined(parts, index > 0));
  const widths = lines.map((parts) => widthOf(parts, room));
  const x = Math.max(room.least, Math.min(room.start, room.limit - Math.max(...widths)));
  return lines.map((parts, line) => ({ x, line, width: widths[line] ?? 0, spans: parts }));
}

/** Puts the arrows between counts; what is not a count follows after a space. */
function joined(spans: readonly Span[], continues = false): Span[] {
  return spans.map((span, index) => {
    const first = index === 0 && !continues;
    if (first) return span;
    return { ...span, text: span.kind === 'reached' ? `${index === 0 ? '' : '\u2002'}${span.text}` : `${laneText.arrow}${span.text}` };
  });
}

const widthOf = (spans: readonly Span[], { size, measure }: ChainRoom): number =>
  spans.reduce((sum, { text, kind }) => sum + measure(text, size, kind === 'kept'), 0);
