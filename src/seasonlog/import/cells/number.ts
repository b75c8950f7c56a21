import type { Count } from '../../../model/log.ts';
import { readNumber } from '../../../model/numbers.ts';
import { kept, open, saysNothing, taken, trimmed, unguarded, type Cell } from './cell.ts';

/** Which sign is the decimal one in a column; null while nothing says so. */
export type DecimalMark = 'comma' | 'point' | null;

/** A count as it was made. */
export type Counted = Pick<Count, 'count' | 'unit'>;

type UnitName = NonNullable<Count['unit']>['name'];
const UNITS: readonly (readonly [RegExp, UnitName])[] = [
  [/^(flower )?clusters?$|^truss(es)?$/i, 'cluster'],
  [/^bags?$/i, 'bag'],
  [/^burs?$|^burrs?$/i, 'bur'],
  [/^branch(es)?$/i, 'branch'],
];
export const unitNamed = (word: string): UnitName | undefined => UNITS.find(([words]) => words.test(word.trim()))?.[1];

const LEAD = /^(~|≈|c\.|ca\.?|circa|about|approx\.?|approximately|around|roughly)\s*/i;
const AT_LEAST = /^(>=?|≥|at least|more than|over|min\.?)\s*(\d.*)$|^(\d[\d.,\s]*)\s*\+$/i;
const AT_MOST = /^(<=?|≤|at most|less than|under|fewer than|max\.?|up to)\s*(\d.*)$/i;
const RANGE = /^\d[\d.,]*\s*(?:[-–—]|to|\bor\b)\s*\d[\d.,]*$/i;
const OUT_OF = /^\d[\d.,]*\s*(?:\/|of|out of)\s*\d[\d.,]*$/i;

/** Under a chosen decimal sign the other one parts thousands. Undefined: it does not fit the choice. */
function withMark(text: string, mark: 'comma' | 'point'): number | undefined {
  const [decimal, thousands] = mark === 'comma' ? [',', '.'] : ['.', ','];
  const at = text.lastIndexOf(decimal);
  const whole = at < 0 ? text : text.slice(0, at);
  const grouped = /^[-−–]?\d{1,3}(?:[.,\s\u00a0\u202f'’]\d{3})+$/.test(whole) || !whole.includes(thousands);
  if (!grouped || whole.includes(decimal)) return undefined;
  // Four decimals and more are never taken for thousands.
  const reading = readNumber(whole.replaceAll(thousands, '') + (at < 0 ? '' : `.${text.slice(at + 1).padEnd(4, '0')}`));
  return reading.ok ? reading.value : undefined;
}

/** One number, or why it is none; bounds are left to whoever asks. */
export function numberCell(raw: string, mark: DecimalMark): Cell<number> {
  const text = trimmed(unguarded(raw));
  if (text === '') return {};
  if (saysNothing(text)) return kept('nothing', raw);
  const lead = LEAD.exec(text)?.[0] ?? '';
  if (lead !== '' && lead.length < text.length) {
    const inner = numberCell(text.slice(lead.length), mark);
    return inner.value === undefined
      ? inner.flag?.level === 'open'
        ? { flag: { ...inner.flag, raw } }
        : kept('notNumber', raw)
      : taken(inner.value, 'about', raw, String(inner.value));
  }
  if (AT_LEAST.test(text)) return kept('atLeast', raw);
  if (AT_MOST.test(text)) return kept('atMost', raw);
  if (RANGE.test(text)) return kept('range', raw);
  if (OUT_OF.test(text)) return kept('outOf', raw);
  const reading = readNumber(text);
  if (reading.ok) {
    const settled = mark === null ? reading.value : (withMark(text, mark) ?? reading.value);
    return text.includes(',') || /\.\d{3}\./.test(text)
      ? taken(settled, Number.isInteger(settled) ? 'thousands' : 'decimal', raw, String(settled))
      : plainNumber(settled, raw, text);
  }
  if (reading.reason !== 'ambiguous') return kept('notNumber', raw);
  if (mark === null) return open('twoNumbers', raw, ...reading.readings.map(String));
  const value = withMark(text, mark);
  if (value === undefined) return kept('notNumber', raw);
  const [decimal, thousands] = reading.readings;
  return taken(value, value === thousands ? 'thousands' : 'decimal', raw, String(value), String(value === thousands ? decimal : thousands));
}

const plainNumber = (value: number, raw: string, text: string): Cell<number> => (raw === text ? { value } : taken(value, 'spaces', raw, text));

/** A whole number within bounds. */
export function wholeCell(raw: string, mark: DecimalMark, least: number, most: number): Cell<number> {
  const cell = numberCell(raw, mark);
  if (cell.value === undefined) return cell;
  if (!Number.isInteger(cell.value)) return kept('notWhole', raw, String(cell.value));
  return cell.value < least || cell.value > most ? kept('outside', raw, String(least), String(most)) : cell;
}

/** A count, perhaps with the unit it was made in: “48 clusters of 5”. @param unit of the column, where its heading says one */
export function countCell(raw: string, mark: DecimalMark, unit?: UnitName): Cell<Counted> {
  const text = trimmed(unguarded(raw));
  const [, number = '', word = '', of = ''] = /^([^a-z]*\d[^a-z]*)\s+([a-z]+)(?:\s+of\s+(\d{1,4}))?$/i.exec(text) ?? [];
  const named = word === '' ? undefined : unitNamed(word);
  if (named && number !== '') {
    const inner = wholeCell(number, mark, 0, 1e7);
    if (inner.value === undefined) return inner.flag ? { flag: { ...inner.flag, raw } } : {};
    const flowers = Number(of || '0');
    // Without “of 5” nobody knows how many flowers there were: one is the least, and it is said.
    if (flowers < 1 || flowers > 1000) return taken({ count: inner.value, unit: { name: named, flowers: 1 } }, 'notKnown', raw, `${named} of 1`);
    return {
      value: { count: inner.value, unit: { name: named, flowers } },
      ...(inner.flag && inner.flag.code !== 'spaces' ? { flag: { ...inner.flag, raw } } : {}),
    };
  }
  const cell = wholeCell(raw, mark, 0, 1e7);
  if (cell.value === undefined) return cell.flag ? { flag: cell.flag } : {};
  const value: Counted = { count: cell.value, ...(unit ? { unit: { name: unit, flowers: 1 } } : {}) };
  if (unit && !cell.flag) return taken(value, 'notKnown', raw, `${unit} of 1`);
  return { value, ...(cell.flag ? { flag: cell.flag } : {}) };
}

/**
 * What the cells of a column tell of its decimal sign: “2,5” and “1.234,5” a comma, “2.5” a point; where only whole numbers can stand,
 * “1,500” a comma between thousands. Null where nothing tells, or where they contradict each other.
 */
export function guessMark(cells: readonly string[], whole: boolean): DecimalMark {
  const said = new Set<DecimalMark>();
  for (const raw of cells) {
    const text = trimmed(unguarded(raw)).replace(LEAD, '');
    if (!/^[-−–+]?[\d\s\u00a0\u202f'’.,]*\d[.,]\d+$/.test(text)) continue;
    const last = text[Math.max(text.lastIndexOf(','), text.lastIndexOf('.'))] === ',' ? 'comma' : 'point';
    const reading = readNumber(text);
    // In a column of counts a sign before other than three figures is decimal all the same; “1,500” cannot be one and a half flowers.
    if (reading.ok) said.add(Number.isInteger(reading.value) && !/[.,]\d{1,2}$|[.,]\d{4,}$/.test(text) ? (last === 'comma' ? 'point' : 'comma') : last);
    else if (reading.reason === 'ambiguous' && whole && !Number.isInteger(reading.readings[0])) said.add(last === 'comma' ? 'point' : 'comma');
  }
  const [only = null] = said;
  return said.size === 1 ? only : null;
}
