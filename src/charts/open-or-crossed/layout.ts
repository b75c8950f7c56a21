import type { OpenWay } from '../../decisions/open.ts';
import { percent, percentRange } from '../../text/charts.ts';
import { openText, parentsWords } from '../../text/pay-open.ts';
import { calendar, roomFor, type Calendar } from '../calendar.ts';
import { wrap, type Measure } from '../measure.ts';

/** One way: its words, its years on the calendar, its chance on a scale. All places in px. */
export interface WayRow {
  readonly how: OpenWay['how'];
  readonly stands: boolean;
  readonly top: number;
  readonly bottom: number;
  readonly lines: readonly WayLine[];
  /** Middle of the bar. */
  readonly y: number;
  /** From the year of 1 in 10 futures to that of 9 in 10; open where those lie beyond the last judging year. Null: fewer than 1 in 10 ever. */
  readonly bar: { readonly from: number; readonly to: number; readonly open: boolean } | null;
  /** The year by which half have a proven tree. */
  readonly half: number | null;
  readonly year: { readonly text: string; readonly x: number; readonly y: number; readonly anchor: 'start' | 'middle' | 'end' };
  readonly chance: { readonly x: number; readonly to: number; readonly low: number; readonly high: number; readonly end: number; readonly y: number };
}

export interface WayLine {
  readonly text: string;
  readonly kind: 'name' | 'parents' | 'figure' | 'truly';
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'end';
}

export interface OpenLayout {
  readonly width: number;
  readonly height: number;
  readonly calendar: Calendar;
  readonly rows: readonly WayRow[];
  readonly caption: string;
  /** px of the axis words, and of the first row. */
  readonly axisY: number;
  readonly top: number;
  readonly bottom: number;
}

const LINE = 21;
const SCALE = 130;
const NAMES = 250;
const HEAD = 56;

/** Lays out the ways of a generation, one row each, on one calendar. */
export function openLayout(
  ways: readonly OpenWay[],
  { startYear, lastYear, width, measure }: { readonly startYear: number; readonly lastYear: number; readonly width: number; readonly measure: Measure },
): OpenLayout {
  const phone = roomFor(width) === 'phone';
  const years = calendar({ startYear, lastYear, width, left: phone ? 0 : NAMES, right: phone ? 6 : SCALE + 40 });
  const top = HEAD + 14;
  let next = top;
  const rows = ways.map((way): WayRow => {
    const row = rowOf(way, next, { years, width, phone, measure, lastYear });
    next = row.bottom;
    return row;
  });
  return {
    width,
    height: next + 4,
    calendar: years,
    rows,
    caption: measure(openText.caption, 16, true) <= width - 8 ? openText.caption : openText.captionShort,
    axisY: HEAD - 8,
    top: HEAD,
    bottom: next,
  };
}

interface Room {
  readonly years: Calendar;
  readonly width: number;
  readonly phone: boolean;
  readonly measure: Measure;
  readonly lastYear: number;
}

function rowOf(way: OpenWay, top: number, { years, width, phone, measure, lastYear }: Room): WayRow {
  const name = `${openText.how[way.how]}${way.asItStands ? `, ${openText.asItStands}` : ''}`.replace(/^./, (letter) => letter.toUpperCase());
  const room = phone ? width : NAMES - 18;
  const named = wrap(name, room, 17, measure, true);
  const parents = wrap(parentsWords(way), room, 16, measure);
  const lines: WayLine[] = [
    ...named.map((text, i): WayLine => ({ text, kind: 'name', x: 0, y: top + 18 + i * LINE, anchor: 'start' })),
    ...parents.map((text, i): WayLine => ({ text, kind: 'parents', x: 0, y: top + 18 + (named.length + i) * LINE, anchor: 'start' })),
  ];
  const words = top + (named.length + parents.length) * LINE + 4;
  // On a phone the words stand over the years, and the chance on its scale between them.
  const y = phone ? words + 82 : top + 34;
  const bottom = phone ? y + 36 : Math.max(words + 12, y + 48);
  const { chance } = way.outcome;
  const at = phone ? 0 : years.right + 34;
  const share = (value: number) => at + value * SCALE;
  const scaleY = phone ? words + 8 : y - 8;
  const truly = openText.truly(way.outcome.trulyGood);
  const figure = `${percent(chance.value)} (${percentRange(chance.low, chance.high)})`;
  return {
    how: way.how,
    stands: way.asItStands,
    top,
    bottom,
    lines: [
      ...lines,
      { text: figure, kind: 'figure', x: phone ? SCALE + 14 : at, y: phone ? scaleY + 15 : scaleY - 8, anchor: 'start' },
      ...(truly === '' ? [] : [{ text: truly, kind: 'truly' as const, x: at, y: scaleY + 38, anchor: 'start' as const }]),
    ],
    y,
    ...spreadOf(way, y, years, lastYear),
    chance: { x: at, to: share(chance.value), low: share(chance.low), high: share(chance.high), end: at + SCALE, y: scaleY },
  };
}

function spreadOf({ outcome: { yearProven } }: OpenWay, y: number, years: Calendar, lastYear: number): Pick<WayRow, 'bar' | 'half' | 'year'> {
  const { p10, p50, p90 } = yearProven;
  const below = y + 26;
  if (p10 === null) return { bar: null, half: null, year: { text: openText.hardly, x: years.horizon - 8, y: y + 6, anchor: 'end' } };
  const bar = { from: years.x(p10), to: p90 === null ? years.horizon : years.x(p90), open: p90 === null };
  if (p50 === null) return { bar, half: null, year: { text: openText.notHalf(lastYear), x: years.horizon - 8, y: below, anchor: 'end' } };
  const x = years.x(p50);
  // A year near an end of the picture stays inside it.
  const anchor = x > years.horizon - 30 ? 'end' : x < years.left + 30 ? 'start' : 'middle';
  return { bar, half: x, year: { text: String(p50), x: anchor === 'end' ? years.horizon - 4 : x, y: below, anchor } };
}

/** The row under a height; null outside all. */
export function rowUnder(rows: readonly WayRow[], y: number): number | null {
  const at = rows.findIndex(({ top, bottom }) => y >= top && y < bottom);
  return at < 0 ? null : at;
}
