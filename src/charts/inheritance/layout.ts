import { scaleLinear } from 'd3';
import { SERIF } from '../learned/layout.ts';
import { wrap, type Measure } from '../measure.ts';

/** One line with a chance: an explanation before and now, or some trees that are alike. */
export interface ChanceRow {
  readonly id: string;
  readonly name: string;
  /** Small words under the name; empty for none. */
  readonly note: string;
  /** Shares; `before` null where there is none. */
  readonly before: number | null;
  readonly after: number;
  /** What stands beside it: the chance in bold, and what it was. */
  readonly strong: string;
  readonly plain: string;
}

export interface ChanceWords {
  readonly kind: 'name' | 'note' | 'strong' | 'plain';
  readonly text: string;
  readonly x: number;
  readonly y: number;
}

export interface ChanceLayout {
  readonly width: number;
  readonly height: number;
  readonly ticks: readonly { readonly x: number; readonly text: string; readonly anchor: 'start' | 'middle' | 'end' }[];
  readonly axis: number;
  readonly rows: readonly {
    readonly id: string;
    readonly top: number;
    readonly bottom: number;
    readonly y: number;
    readonly left: number;
    readonly right: number;
    readonly before: number | null;
    readonly after: number;
    readonly words: readonly ChanceWords[];
  }[];
}

const PHONE = 620;
const NAME = 18;
const LINE = 22;
const HEAD = 34;
/** A line shorter than this has no room for the last tick but one beside the words of the last. */
const NARROW = 380;

/** Lays out chances on one axis from never to always, a row each; on a phone the words stand above their line. */
export function chanceLayout(rows: readonly ChanceRow[], { width, measure }: { readonly width: number; readonly measure: Measure }): ChanceLayout {
  const phone = width < PHONE;
  const beside = Math.max(0, ...rows.map(({ strong, plain }) => measure(strong, NAME, true) + (plain === '' ? 0 : 12 + measure(plain, 16)))) + 4;
  const names = phone ? width - beside - 14 : Math.min(340, Math.round(width * 0.36));
  const [left, right] = phone ? [10, width - 10] : [names + 24, width - beside - 28];
  const x = scaleLinear([0, 1], [left, right]);
  let top = HEAD;
  const laid = rows.map((row) => {
    const lines = [
      ...wrap(row.name, names / SERIF, NAME, measure, true).map((text) => ({ kind: 'name' as const, text })),
      ...(row.note === '' ? [] : wrap(row.note, names, 16, measure).map((text) => ({ kind: 'note' as const, text }))),
    ];
    const from = top + 10;
    const tall = lines.length * LINE;
    const y = phone ? from + tall + 16 : from + Math.max(tall, LINE) / 2;
    const bottom = phone ? y + 18 : from + Math.max(tall, LINE) + 10;
    const wordsY = phone ? from + 17 : y + 6;
    const wordsX = width - beside;
    const laidRow = {
      id: row.id,
      top,
      bottom,
      y,
      left,
      right,
      before: row.before === null ? null : x(row.before),
      after: x(row.after),
      words: [
        ...lines.map((line, i) => ({ ...line, x: 0, y: from + 17 + i * LINE })),
        { kind: 'strong' as const, text: row.strong, x: wordsX, y: wordsY },
        ...(row.plain === '' ? [] : [{ kind: 'plain' as const, text: row.plain, x: wordsX + measure(row.strong, NAME, true) + 12, y: wordsY }]),
      ],
    };
    top = bottom;
    return laidRow;
  });
  return {
    width,
    height: top + 6,
    axis: HEAD - 4,
    ticks: (right - left < NARROW ? [0, 5, 10] : [0, 2, 4, 6, 8, 10]).map((tenths) => ({
      x: x(tenths / 10),
      text: tenths === 10 ? '10 in 10' : String(tenths),
      anchor: tenths === 10 ? 'end' : phone && tenths === 0 ? 'start' : 'middle',
    })),
    rows: laid,
  };
}
