import type { FaredYear } from '../../results/fared.ts';
import { faredText } from '../../text/today.ts';
import { calendar } from '../calendar.ts';
import { clip, type Measure } from '../measure.ts';

export interface FaredRow {
  readonly row: FaredYear;
  /** Baseline of its words, and middle of its bar, px. */
  readonly textY: number;
  readonly y: number;
  readonly label: string;
  /** Bar of 8 in 10 futures; `open`: it reaches past the last year. Null: fewer than 1 in 10 get there. */
  readonly bar: { readonly from: number; readonly to: number; readonly open: boolean } | null;
  readonly middle: number | null;
  /** The year in the log; null: not yet. */
  readonly came: number | null;
  readonly missed: boolean;
}

export interface FaredHead {
  readonly text: string;
  readonly y: number;
}

export interface FaredLayout {
  readonly width: number;
  readonly height: number;
  readonly plot: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  readonly ticks: readonly { readonly x: number; readonly text: string; readonly anchor: 'start' | 'middle' | 'end' }[];
  /** px of the first spring of which the log says nothing. */
  readonly today: number;
  readonly heads: readonly FaredHead[];
  readonly rows: readonly FaredRow[];
}

const PHONE = 620;
const ROW = 34;
const HEAD = 40;
const LABEL = 160;

/** Lays out years that were forecast, and the years that came, generation by generation. */
export function faredLayout(
  years: readonly FaredYear[],
  {
    startYear,
    lastYear,
    today,
    width,
    measure,
  }: { readonly startYear: number; readonly lastYear: number; readonly today: number; readonly width: number; readonly measure: Measure },
): FaredLayout {
  const phone = width < PHONE;
  const left = phone ? 8 : LABEL + 14;
  const scale = calendar({ startYear, lastYear, width, left, right: 14 });
  const row = phone ? ROW + 22 : ROW;
  const top = 34;
  const heads: FaredHead[] = [];
  const rows: FaredRow[] = [];
  let y = top;
  let before = -1;
  for (const year of years) {
    if (year.generation !== before) {
      before = year.generation;
      heads.push({ text: clip(faredText.generation(year), width - 12, 18, measure, true), y: y + 27 });
      y += HEAD;
    }
    const middle = y + (phone ? 38 : row / 2);
    rows.push({
      row: year,
      textY: phone ? y + 19 : middle + 6,
      y: middle,
      label: faredText.reached(year.what),
      bar:
        year.p10 === null ? null : { from: scale.x(year.p10 - 0.4), to: scale.x(year.p90 === null ? lastYear + 0.5 : year.p90 + 0.4), open: year.p90 === null },
      middle: year.p50 === null ? null : scale.x(year.p50),
      came: year.came === null ? null : scale.x(year.came),
      missed: year.verdict === 'before' || year.verdict === 'after' || year.verdict === 'overdue',
    });
    y += row;
  }
  const inner = scale.ticks.filter(({ x }) => x < scale.x(lastYear) - 62);
  return {
    width,
    height: y + 12,
    plot: { left, right: width - 14, top, bottom: y + 4 },
    ticks: [
      ...inner.map(({ x, year }) => ({ x, text: String(year), anchor: 'middle' as const })),
      { x: scale.x(lastYear), text: String(lastYear), anchor: 'end' as const },
    ],
    today: scale.x(today - 0.5),
    heads,
    rows,
  };
}
