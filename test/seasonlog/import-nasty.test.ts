import { describe, expect, it } from 'vitest';
import { logSchema } from '../../src/model/log.ts';
import { textOf } from '../../src/seasonlog/import/bytes.ts';
import { dateCell, guessOrder, yearCell } from '../../src/seasonlog/import/cells/date.ts';
import { noteOf } from '../../src/seasonlog/import/drafts.ts';
import { importOf, type ImportChoices } from '../../src/seasonlog/import/import.ts';
import { tableOf } from '../../src/seasonlog/import/table.ts';
import { batchName, crossWords } from '../../src/text/log.ts';
import { orchardNamed } from './import-orchard.ts';

/* Tables as they come out of drawers and other people's machines. All invented. */

const programme = orchardNamed();
const look = (text: string, choices: ImportChoices = {}, log = programme.log) =>
  importOf(text, programme, choices, (parents, year) => batchName(crossWords(parents, programme), year), log);
const flagsOf = ({ read }: ReturnType<typeof look>): string[] => [...read.flags.values()].map(({ code, raw }) => `${code} ${raw}`);
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const wide = (text: string, low: boolean): Uint8Array =>
  new Uint8Array(Array.from(text).flatMap((c) => (low ? [c.charCodeAt(0) & 255, c.charCodeAt(0) >> 8] : [c.charCodeAt(0) >> 8, c.charCodeAt(0) & 255])));

describe('bytes', () => {
  it('of UTF-16 without a mark are known by their noughts', () => {
    const text = 'Cross\tYear\tFlowers\r\nMoniquí × OP’s\t2019\t40\r\n';
    for (const low of [true, false]) expect(textOf(wide(text, low))).toEqual({ text, encoding: 'utf-16' });
  });

  it('of a workbook, an archive or a printed page are no text, whatever their name ends in', () => {
    // First bytes: ZIP APPNOTE 6.3.10 §4.3.7; ISO 32000-1 §7.5.2. The third is a picture: PNG (ISO/IEC 15948 §5.2), with noughts after it.
    for (const first of [
      [0x50, 0x4b, 0x03, 0x04, 0x14, 0x06, 0x08],
      [0x25, 0x50, 0x44, 0x46, 0x2d, 0x31, 0x2e, 0x37],
      [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0x0d],
    ])
      expect(textOf(new Uint8Array(first))).toEqual({ text: '', encoding: 'no text' });
  });

  it('stay text with one nought that slipped in', () => {
    expect(textOf(bytes(`Tag,Note\n${'1,a\n'.repeat(40)}2,b\u0000\n`)).encoding).toBe('utf-8');
    expect(textOf(bytes('Tag,Note\n2,b\u0000\n')).encoding).toBe('utf-8');
  });
});

describe('cutting', () => {
  it('takes a space before a quote for no letter, where the rows come out even', () => {
    const { rows } = tableOf('Cross, Year, Note\n"A x B", 2019, "windy, cold"\n"C x OP", 2020, "a ""good"" year"\n');
    expect(rows.map((row) => row.map((cell) => cell.trim()))).toEqual([
      ['A x B', '2019', 'windy, cold'],
      ['C x OP', '2020', 'a "good" year'],
    ]);
    // Where they are even without it, nothing is touched.
    expect(tableOf('Tag,Note\n1, "6 in" pot\n2,b\n').rows[0]).toEqual(['1', ' "6 in" pot']);
  });

  it('takes a stroke before a quote for an escape under the same condition', () => {
    expect(tableOf('Tag,Note,Row\n1,"he said \\"no\\", twice",4\n2,z,5\n').rows[0]).toEqual(['1', 'he said "no", twice', '4']);
    expect(tableOf('Tag,Note\n1,a\\"b\n2,c\n').rows[0]).toEqual(['1', 'a\\"b']);
  });

  it('does as the first line tells, and counts lines from the top of the file', () => {
    const told = tableOf('\ufeffsep=;\r\nTag;Note\r\n1,5;a,b,c\r\n');
    expect(told).toMatchObject({ separator: ';', headers: ['Tag', 'Note'], rows: [['1,5', 'a,b,c']], lines: [3], above: [] });
  });

  it('leaves out ruled lines and strokes at the ends of lines, and nothing else', () => {
    const piped = tableOf('| Tag | Note |\n|---|:--|\n| 1 | -- |\n');
    expect(piped.headers).toEqual(['Tag', 'Note']);
    expect(piped.rows).toEqual([[' 1 ', ' -- ']]);
    const tabs = tableOf('Tag\tNote\t\t\n1\ta\t\t\n2\tb\t\tc\n');
    expect(tabs.rows).toEqual([
      ['1', 'a', '', ''],
      ['2', 'b', '', 'c'],
    ]);
    expect(tableOf('Tag\tNote\t\t\n1\ta\t\t\n').headers).toEqual(['Tag', 'Note']);
  });

  it.each(['', '  \n\u00a0\n', ';;;;\n;;;\n', ',,\r\n,,\r\n', '\ufeff', '---\n===\n'])('finds nothing in %j', (text) => {
    expect(tableOf(text)).toMatchObject({ headers: [], rows: [] });
    expect(look(text).additions.log).toBe(programme.log);
  });

  it('adds nothing of headings without rows', () => {
    expect(look('Cross,Year,Flowers\n').additions).toMatchObject({ newBatches: 0, rows: 0 });
  });
});

describe('dates', () => {
  it.each([
    // FAO/Bioversity Multi-Crop Passport Descriptors V.2.1, COLLDATE: YYYYMMDD, hyphens for what is not known.
    ['19750615', '1975-06-15'],
    ['197506--', '1975-06'],
    ['1975----', '1975'],
    ['Mon 4/15/2019', '2019-04-15'],
    ['Wednesday, 15 May 2019', '2019-05-15'],
    ['15.05.2019 10:30', '2019-05-15'],
  ])('“%s”', (raw, value) => {
    expect(dateCell(raw, null).value).toBe(value);
  });

  it('keep a time of day in the note, but for the midnight that spreadsheets add', () => {
    expect(dateCell('15.05.2019 10:30', null)).toMatchObject({ value: '2019-05-15', flag: { code: 'timeLeft', level: 'read' } });
    expect(dateCell('2019-05-15T00:00:00.000Z', null)).toEqual({ value: '2019-05-15' });
    const { additions } = look('Cross,Date,Flowers\nOld Hedgerow x OP,2019-05-15 18:05,40\n');
    expect(additions.log.batches[0]).toMatchObject({ counts: [{ when: '2019-05-15' }], note: 'Date: 2019-05-15 18:05' });
  });

  it.each(['19751315', '1975--15', '20190230', '00001231'])('“%s” is none', (raw) => {
    expect(dateCell(raw, null)).toMatchObject({ flag: { level: 'kept' } });
  });

  it('without a year are of the year of their row, by the same doubts about the order', () => {
    expect(dateCell('15/4', null, 2019)).toEqual({ value: '2019-04-15', flag: { level: 'read', code: 'rowsYear', raw: '15/4', readings: ['2019-04-15'] } });
    expect(dateCell('12.5.', null, 2019).value).toBe('2019-05-12');
    expect(dateCell('3 May', null, 2019).value).toBe('2019-05-03');
    expect(dateCell('May 3rd', null, 2019).flag?.level).toBe('read');
    expect(dateCell('3/4', null, 2019).flag).toMatchObject({ level: 'open', raw: '3/4', readings: ['2019-04-03', '2019-03-04'] });
    expect(dateCell('29/2', null, 2019).flag).toMatchObject({ code: 'noSuchDay', raw: '29/2' });
    expect(dateCell('15/4', null).flag?.code).toBe('notDate');
    expect(guessOrder(['15/4', '3/4'])).toBe('dayFirst');
  });

  it('of bloom take it, those of what came later do not', () => {
    const { additions } = look('Cross,Year,"Flowers",Pollinated on,Came up,"Came up, on"\nOld Hedgerow x OP,2019,40,15/4,9,3 May\n');
    expect(additions.log.batches[0]).toMatchObject({ counts: [{ stage: 'flowers', when: '2019-04-15' }, { stage: 'cameUp' }], note: 'Came up, on: 3 May' });
    // No year in the file: none is made up.
    expect(look('Cross,Flowers,Date\nOld Hedgerow x OP,40,15/4\n').additions.log.batches[0]).toMatchObject({ note: 'Date: 15/4', counts: [{ count: 40 }] });
  });

  it('of two figures are years of bloom, and never of a first fruit, where they could be an age', () => {
    expect(yearCell('98', null, 'first', true)).toMatchObject({ value: 1998, flag: { code: 'shortYear' } });
    expect(yearCell('’19', null, 'first', true).value).toBe(2019);
    const { additions } = look('Tag,Cross,Year,First fruit\n1,Old Hedgerow x OP,98,12\n');
    expect(additions.log.batches[0]).toMatchObject({ year: 1998, trees: [{ tag: '1', note: 'First fruit: 12' }] });
    expect(additions.log.batches[0]?.trees[0]?.firstFruit).toBeUndefined();
  });
});

describe('nothing is written over', () => {
  it('by a second column of one trait and season: the first stands, the second is told and kept', () => {
    const found = look('Tag,Cross,Year,Brix 2019,Brix 2019,Red flesh 2019,Red flesh 2019\n1,Old Hedgerow x OP,2012,12.5,13.5,3 of 6,3 of 6\n');
    expect(found.additions.log.batches[0]?.trees[0]).toMatchObject({
      seasons: [{ year: 2019, values: { brix: 12.5 }, seen: { red: { showed: 3, cut: 6 } } }],
      note: 'Brix 2019 (2): 13.5',
    });
    expect(flagsOf(found)).toEqual(['differs 13.5']);
  });

  it('by a row of sums, which is no batch and stays as a note', () => {
    const text = 'Cross,Year,Flowers\nOld Hedgerow x OP,2019,40\n\nSaffron Bell x OP,2020,12\nTotal:,,52\n';
    const found = look(text);
    expect(found.additions).toMatchObject({ newBatches: 2 });
    expect(found.additions.log.batches[1]).toMatchObject({ counts: [{ count: 12 }], note: 'Cross: Total:; Flowers: 52' });
    expect(flagsOf(found)).toEqual(['sumRow Total:']);
    const again = look(text, {}, found.additions.log).additions;
    expect([again.log === found.additions.log, again.rowsThere]).toEqual([true, 3]);
  });

  it('in a note that is longer than a note may be: the longest parts give way first', () => {
    const { note = '' } = noteOf(['short', 'a'.repeat(30_000), 'b'.repeat(1500), 'last']);
    expect(note.length).toBeLessThanOrEqual(2000);
    expect(note.length).toBeGreaterThan(1990);
    for (const part of ['short', 'aaaa', 'bbbb', 'last']) expect(note).toContain(part);
    expect(noteOf(['a'.repeat(1999)])).toEqual({ note: 'a'.repeat(1999) });
  });
});

describe('more than there is room for', () => {
  it('is told, and the log can be kept', () => {
    const copies = Array.from({ length: 25 }, (_, i) => `1,Old Hedgerow x OP,2012,,garden ${String(i)}`);
    const seasons = Array.from({ length: 70 }, (_, i) => `2,Old Hedgerow x OP,2012,${String(1930 + i)},`);
    const { additions, read } = look(['Tag,Cross,Year,Season,Copy at', ...copies, ...seasons].join('\n'));
    expect(() => logSchema.parse(additions.log)).not.toThrow();
    expect(additions.log.batches[0]?.trees.map((tree) => [tree.copies.length, tree.seasons.length])).toEqual([
      [20, 0],
      [0, 60],
    ]);
    expect(read.noRoom).toBe(5 + 10);
  });
});

describe('a table that would take for ever', () => {
  it('with cells of a hundred thousand spaces, dashes and open parentheses is read at once', () => {
    const cells = [' '.repeat(100_000), '-'.repeat(100_000), '('.repeat(100_000), '1'.repeat(100_000), 'a '.repeat(50_000)].map((fill) => `x${fill}y`);
    const text = `Tag,Cross,Date,Flowers,Note\n1,${cells.slice(0, 4).join(',')}\n2,${cells.slice(1).join(',')}\n`;
    const start = performance.now();
    const found = look(text);
    expect(performance.now() - start).toBeLessThan(2000);
    expect(() => logSchema.parse(found.additions.log)).not.toThrow();
  });

  it('of 5,000 rows with line breaks in their cells keeps each row in its place', () => {
    const rows = Array.from({ length: 5000 }, (_, i) => `t${String(i)},Old Hedgerow x OP,2012,"line one\r\nline two, ""${String(i)}"""`);
    const { table, additions } = look(['Tag,Cross,Year,Note', ...rows].join('\r\n'));
    expect([table.rows.length, additions.newTrees, table.ragged.length]).toEqual([5000, 5000, 0]);
    expect(additions.log.batches.at(-1)?.trees.at(-1)).toMatchObject({ tag: 't4999', note: 'line one\r\nline two, "4999"' });
  });
});
