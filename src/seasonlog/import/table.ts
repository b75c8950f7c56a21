import Papa from 'papaparse';
import { knownHeader } from './headers.ts';

/** What may stand between two cells. */
export const SEPARATORS = [',', ';', '\t', '|'] as const;
export type Separator = (typeof SEPARATORS)[number];

/** A text cut into cells; nothing in a cell is changed. */
export interface Table {
  readonly separator: Separator;
  /** Lines above the headings, as they stood. */
  readonly above: readonly string[];
  /** One per column; empty or doubled ones are told apart (“Count (2)”), and one that is missing is numbered. */
  readonly headers: readonly string[];
  /** False: the first line is already a row. */
  readonly headed: boolean;
  /** As many cells as there are headers; a cell that was not there is empty. */
  readonly rows: readonly (readonly string[])[];
  /** Line of the file on which each row stands, from 1 (a row with line breaks in its cells counts once). */
  readonly lines: readonly number[];
  /** Rows that had more or fewer cells than the headings, by place. */
  readonly ragged: readonly number[];
  /** A quote was opened and never closed, so quotes were taken for letters. */
  readonly looseQuotes: boolean;
  /** Lines end as on Windows. */
  readonly crlf: boolean;
}

const RULED_OUT = -1;
/** Rows that are looked at to guess. */
const LOOKED_AT = 60;
const MOST_TITLES = 6;

/** Line ends outside of quotes, all alike; where a file mixes them a library would take one sort for letters. */
function evenLineEnds(text: string): { readonly text: string; readonly newline: '\n' | '\r\n' | '\r' } {
  const crlf = text.split('\r\n').length - 1;
  const lf = text.split('\n').length - 1 - crlf;
  const cr = text.split('\r').length - 1 - crlf;
  if (lf === 0 && cr === 0) return { text, newline: crlf > 0 ? '\r\n' : '\n' };
  if (crlf === 0 && (lf === 0 || cr === 0)) return { text, newline: lf > 0 ? '\n' : '\r' };
  const parts = text.split('"');
  // Every second part stands between quotes, where a line break belongs to the cell.
  return { text: parts.map((part, i) => (i % 2 === 0 ? part.replace(/\r\n?/g, '\n') : part)).join('"'), newline: '\n' };
}

interface Parsed {
  readonly rows: string[][];
  readonly loose: boolean;
}

/** “a, "b"” with the space taken out, so that the quote is one; within quotes nothing is touched unless they are not closed as they should be. */
const closedUp = (text: string, delimiter: Separator): string =>
  text.replace(new RegExp(`(^|[\\n\\r]|${delimiter === '|' ? '\\|' : delimiter})[ \\u00a0]+(?=")`, 'g'), '$1');

/** No letter and no figure: an empty line, or a rule drawn under the headings. */
const blank = (row: readonly string[]): boolean =>
  row.every((cell) => /^[\s\u00a0\ufeff]*$/.test(cell)) || (row.some((cell) => /[-=_]{2}/.test(cell)) && row.every((cell) => /^[\s\u00a0:=_-]*$/.test(cell)));

/** How many cells most rows have, and the share of the rows that have as many. */
function usualWidth(rows: readonly (readonly string[])[]): { readonly width: number; readonly share: number } {
  const widths = rows.filter((row) => !blank(row)).map((row) => row.length);
  const counts = new Map<number, number>();
  for (const width of widths) counts.set(width, (counts.get(width) ?? 0) + 1);
  const [width = 1, often = 0] = [...counts].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0] ?? [];
  return { width, share: widths.length === 0 ? 0 : often / widths.length };
}

/**
 * Cuts a text at a separator. Quotes are those of RFC 4180; spaces before one, or a stroke before one within, are tried only where they cut
 * the rows more evenly, and quotes that never close are taken for letters.
 */
function parse(text: string, delimiter: Separator, newline: '\n' | '\r\n' | '\r', preview = 0): Parsed {
  const strict = Papa.parse<string[]>(text, { delimiter, newline, preview });
  const tries = [
    ...(new RegExp(`[\\n\\r${delimiter}][ \\u00a0]+"`).test(text) ? [{ text: closedUp(text, delimiter) }] : []),
    ...(/\\"/.test(text) ? [{ text, escapeChar: '\\' }] : []),
  ];
  let best = { rows: strict.data, faults: strict.errors.length, even: usualWidth(strict.data).share };
  for (const { text: other, ...options } of tries) {
    const { data, errors } = Papa.parse<string[]>(other, { delimiter, newline, preview, ...options });
    const even = usualWidth(data).share;
    if (errors.length <= best.faults && even > best.even) best = { rows: data, faults: errors.length, even };
  }
  if (best.rows !== strict.data || !strict.errors.some(({ code }) => code === 'MissingQuotes')) return { rows: best.rows, loose: false };
  return { rows: text.split(/\r\n|\n|\r/).map((line) => line.split(delimiter)), loose: true };
}

/** How well a separator cuts: rows of as many cells as most have, and more cells rather than fewer of them. */
function score(rows: readonly (readonly string[])[]): number {
  const { width, share } = usualWidth(rows);
  return width < 2 ? RULED_OUT : share + Math.min(width, 50) / 1000;
}

/** The separator that cuts most rows into equally many cells; a comma where none does. Tab and semicolon go before commas, which may be decimal. */
export function guessSeparator(text: string): Separator {
  const { text: even, newline } = evenLineEnds(text.slice(0, 200_000));
  const order: readonly Separator[] = ['\t', ';', '|', ','];
  const scored = order.map((separator) => ({ separator, score: score(parse(even, separator, newline, LOOKED_AT).rows) }));
  return scored.reduce((best, each) => (each.score > best.score + 1e-9 ? each : best), { separator: ',', score: RULED_OUT }).separator;
}

const NUMBERISH = /^[\s\u00a0'~<>≈+-]*\d[\d\s\u00a0.,/–-]*%?$/;

/** The line of the headings: the one of the first few with most known words; if none has any, the first, unless it holds numbers. */
function headerRow(rows: readonly (readonly string[])[], known: (header: string) => boolean): number {
  const first = rows.slice(0, MOST_TITLES).map((row) => row.filter((cell) => cell.trim() !== '' && known(cell)).length);
  const most = Math.max(0, ...first);
  if (most > 0) return first.indexOf(most);
  return rows.length > 1 && rows[0]?.every((cell) => !NUMBERISH.test(cell)) ? 0 : -1;
}

function distinct(cells: readonly string[], columns: readonly number[]): string[] {
  const used = new Map<string, number>();
  return columns.map((c) => {
    const plain = (cells[c] ?? '').replace(/[\s\u00a0\ufeff]+/g, ' ').trim() || `column ${String(c + 1)}`;
    const times = (used.get(plain) ?? 0) + 1;
    used.set(plain, times);
    return times === 1 ? plain : `${plain} (${String(times)})`;
  });
}

/** What a person may decide otherwise than it was guessed. */
export interface TableChoices {
  readonly separator?: Separator;
  readonly headed?: boolean;
}

/** “sep=;” on the first line, by which some spreadsheets are told how to cut a file: it is no cell. */
const TOLD = /^sep=([,;\t|])\r?\n/i;

/** Columns that have a heading or a cell; strokes or separators at the ends of all lines make others. */
function usedColumns(heads: readonly string[], body: readonly { readonly cells: readonly string[] }[], width: number): number[] {
  const says = (cell: string | undefined): boolean => cell !== undefined && !blank([cell]);
  const used = Array.from({ length: width }, (_, c) => says(heads[c]) || body.some(({ cells }) => says(cells[c])));
  const [from, to] = [used.indexOf(true), used.lastIndexOf(true)];
  return from < 0 ? [] : Array.from({ length: to - from + 1 }, (_, i) => from + i);
}

/**
 * Cuts a text into a table. Nothing is refused: rows of any length, headings that are missing, empty or doubled.
 * @param known whether a heading is one of this programme’s own, such as a trait
 */
export function tableOf(source: string, choices: TableChoices = {}, known: (header: string) => boolean = () => false): Table {
  const marked = source.replace(/^\ufeff/, '');
  const told = SEPARATORS.find((each) => each === TOLD.exec(marked)?.[1]);
  const plain = told ? marked.replace(TOLD, '') : marked;
  const separator = choices.separator ?? told ?? guessSeparator(plain);
  const { text, newline } = evenLineEnds(plain);
  const { rows: all, loose } = /^[\s\u00a0,;|]*$/.test(text) ? { rows: [], loose: false } : parse(text, separator, newline);
  const numbered = all.map((cells, i) => ({ cells, line: i + (told ? 2 : 1) })).filter(({ cells }) => !blank(cells));
  const found = headerRow(
    numbered.map(({ cells }) => cells),
    (cell) => knownHeader(cell) || known(cell),
  );
  const at = choices.headed === undefined ? found : choices.headed ? Math.max(0, found) : -1;
  const body = numbered.slice(at + 1);
  const heads = at < 0 ? [] : (numbered[at]?.cells ?? []);
  const width = body.reduce((most, { cells }) => Math.max(most, cells.length), heads.length);
  const used = usedColumns(heads, body, width);
  return {
    separator,
    above: numbered.slice(0, Math.max(0, at)).map(({ cells }) => cells.filter((cell) => cell.trim() !== '').join(separator === '\t' ? ' ' : `${separator} `)),
    headers: distinct(heads, used),
    headed: at >= 0,
    rows: body.map(({ cells }) => used.map((c) => cells[c] ?? '')),
    lines: body.map(({ line }) => line),
    ragged: at < 0 ? [] : body.flatMap(({ cells }, r) => (cells.length === heads.length ? [] : [r])),
    looseQuotes: loose,
    crlf: plain.includes('\r\n'),
  };
}
