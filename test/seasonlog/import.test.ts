import { describe, expect, it } from 'vitest';
import { logSchema } from '../../src/model/log.ts';
import { countCell, guessMark, numberCell } from '../../src/seasonlog/import/cells/number.ts';
import { dateCell, guessOrder, seasonYears, yearCell } from '../../src/seasonlog/import/cells/date.ts';
import { textCell } from '../../src/seasonlog/import/cells/cell.ts';
import { eventCell, positionCell, seenCell, statusCell } from '../../src/seasonlog/import/cells/words.ts';
import { textOf } from '../../src/seasonlog/import/bytes.ts';
import { importOf, type ImportChoices } from '../../src/seasonlog/import/import.ts';
import { cutCross, pollenOf } from '../../src/seasonlog/import/parents.ts';
import { guessSeparator, tableOf } from '../../src/seasonlog/import/table.ts';
import { batchName, crossWords } from '../../src/text/log.ts';
import { FILES } from './import-files.ts';
import { orchardNamed } from './import-orchard.ts';

const programme = orchardNamed();
const look = (text: string, choices: ImportChoices = {}, log = programme.log) =>
  importOf(text, programme, choices, (parents, year) => batchName(crossWords(parents, programme), year), log);

/** [cell, value taken, flag, level] — null: nothing is taken, or nothing is flagged. */
type Case = [string, string | number | null, string | null, string?];

describe('a cell', () => {
  it.each<Case>([
    ['140', 140, null],
    [' 140 ', 140, 'spaces', 'read'],
    ['\u00a0140\u00a0', 140, 'spaces', 'read'],
    ['~140', 140, 'about', 'read'],
    ['ca. 140', 140, 'about', 'read'],
    ['10–12', null, 'range', 'kept'],
    ['10-12', null, 'range', 'kept'],
    ['10 to 12', null, 'range', 'kept'],
    ['>12', null, 'atLeast', 'kept'],
    ['40+', null, 'atLeast', 'kept'],
    ['<5', null, 'atMost', 'kept'],
    ['1,500', null, 'twoNumbers', 'open'],
    ['1.500', null, 'twoNumbers', 'open'],
    ['~1,500', null, 'twoNumbers', 'open'],
    ['1 500', 1500, null],
    ['1.234.567', 1234567, 'thousands', 'read'],
    ['12.5', null, 'notWhole', 'kept'],
    ['-3', null, 'outside', 'kept'],
    ['18 of 240', null, 'outOf', 'kept'],
    ['-', null, 'nothing', 'kept'],
    ['n/a', null, 'nothing', 'kept'],
    ['about a dozen', null, 'notNumber', 'kept'],
    ['12 lost', null, 'notNumber', 'kept'],
    ["'-3", null, 'outside', 'kept'],
    ['=A1+2', null, 'notNumber', 'kept'],
  ])('of a count, “%s”', (raw, value, code, level) => {
    const cell = countCell(raw, null);
    expect(cell.value?.count ?? null).toBe(value);
    expect(cell.flag?.code ?? null).toBe(code);
    expect(cell.flag?.level).toBe(level);
    if (cell.flag) expect(cell.flag.raw).toBe(raw);
  });

  it('shows both readings of a number that can be read in two ways, and a choice settles it', () => {
    expect(countCell('1,500', null).flag?.readings).toEqual(['1.5', '1500']);
    expect(countCell('1,500', 'point').value).toEqual({ count: 1500 });
    expect(countCell('1.500', 'comma').value).toEqual({ count: 1500 });
    expect(countCell('1,500', 'comma').flag?.code).toBe('notWhole');
    expect(numberCell('1,500', 'comma').value).toBe(1.5);
    expect(numberCell('12,25', null).value).toBe(12.25);
    expect(numberCell('1.234,5', 'comma').value).toBe(1234.5);
  });

  it('keeps the unit that flowers were counted in', () => {
    expect(countCell('48 clusters of 5', null)).toEqual({ value: { count: 48, unit: { name: 'cluster', flowers: 5 } } });
    expect(countCell('12 bags', null)).toMatchObject({ value: { count: 12, unit: { name: 'bag', flowers: 1 } }, flag: { code: 'notKnown' } });
  });

  it.each<readonly [readonly string[], boolean, string | null]>([
    [['2,5', '1,500'], false, 'comma'],
    [['2.5', '3.0'], false, 'point'],
    [['1,500', '220'], true, 'point'],
    [['1,000', '220'], true, null],
    [['1.500', '1.250'], true, 'comma'],
    [['2,5', '2.5'], false, null],
    [['1,234.5'], false, 'point'],
  ])('tells the decimal sign of its column: %j', (cells, whole, mark) => {
    expect(guessMark(cells, whole)).toBe(mark);
  });

  it.each<Case>([
    ['2019-04-03', '2019-04-03', null],
    ['2019-04', '2019-04', null],
    ['2019', '2019', null],
    ['3/4/2019', null, 'twoDates', 'open'],
    ['3-4-2019', null, 'twoDates', 'open'],
    ['4/4/2019', '2019-04-04', null],
    ['13/4/2019', '2019-04-13', null],
    ['4/13/2019', '2019-04-13', null],
    ['3.4.2019', '2019-04-03', null],
    ['13/4/19', '2019-04-13', 'shortYear', 'read'],
    ['31/2/2019', null, 'noSuchDay', 'kept'],
    ['2019-02-30', null, 'noSuchDay', 'kept'],
    ['29.2.2020', '2020-02-29', null],
    ['3 April 2019', '2019-04-03', null],
    ['Apr 3, 2019', '2019-04-03', null],
    ['May 2019', '2019-05', null],
    ['late May', null, 'notDate', 'kept'],
    ['43558', null, 'notDate', 'kept'],
  ])('of a date, “%s”', (raw, value, code, level) => {
    const cell = dateCell(raw, null);
    expect(cell.value ?? null).toBe(value);
    expect(cell.flag?.code ?? null).toBe(code);
    expect(cell.flag?.level).toBe(level);
  });

  it('shows both days of a date that can be read in two ways, and a choice or another cell settles it', () => {
    expect(dateCell('3/4/2019', null).flag?.readings).toEqual(['2019-04-03', '2019-03-04']);
    expect(dateCell('3/4/2019', 'dayFirst').value).toBe('2019-04-03');
    expect(dateCell('3/4/2019', 'monthFirst').value).toBe('2019-03-04');
    expect(guessOrder(['3/4/2019', '14/4/2019'])).toBe('dayFirst');
    expect(guessOrder(['3/4/2019', '4/14/2019'])).toBe('monthFirst');
    expect(guessOrder(['14/4/2019', '4/14/2019'])).toBeNull();
  });

  it.each<Case>([
    ['2004', 2004, null],
    ['2004/05', 2004, 'seasonName', 'read'],
    ['2004-05', 2004, 'seasonName', 'read'],
    ['2004–2005', 2004, 'seasonName', 'read'],
    ['04/05', 2004, 'seasonName', 'read'],
    ['1999/00', 1999, 'seasonName', 'read'],
    ['3/4/2019', 2019, 'dayLeft', 'read'],
    ['some time ago', null, 'notYear', 'kept'],
  ])('of a year, “%s”', (raw, value, code, level) => {
    const cell = yearCell(raw, null, 'first');
    expect(cell.value ?? null).toBe(value);
    expect(cell.flag?.code ?? null).toBe(code);
    expect(cell.flag?.level).toBe(level);
  });

  it('knows a season over the turn of the year from any two years', () => {
    expect(seasonYears('2004/05')).toEqual([2004, 2005]);
    expect(seasonYears('2004/06')).toBeUndefined();
    expect(yearCell('2004/05', null, 'second').value).toBe(2005);
  });

  it.each(['235,2', '1106.1', '001', '2019-8-1', 'K80-2', '1e5', '3/4', 'Q×3 (2)', '12 OP'])('of a tag is text: “%s”', (raw) => {
    expect(textCell(raw, 60)).toEqual({ value: raw });
  });

  it('of a tag loses the spaces at its ends and a spreadsheet’s apostrophe, and says so', () => {
    expect(textCell('001 ', 60)).toMatchObject({ value: '001', flag: { code: 'spaces', raw: '001 ' } });
    expect(textCell("'=HYPERLINK(1)", 60)).toMatchObject({ value: '=HYPERLINK(1)', flag: { code: 'apostrophe' } });
    expect(textCell("'tis", 60)).toEqual({ value: "'tis" });
    expect(textCell('x'.repeat(61), 60)).toMatchObject({ value: 'x'.repeat(60), flag: { code: 'tooLong' } });
  });

  it.each<readonly [string, readonly [string, string] | undefined]>([
    ['A × B', ['A', 'B']],
    ['A x B', ['A', 'B']],
    ['A×B', ['A', 'B']],
    ['(A x B) x C', ['(A x B)', 'C']],
    ['A x (B x C)', ['A', '(B x C)']],
    ['A × B × C', ['A × B', 'C']],
    ['A x OP', ['A', 'OP']],
    ['A OP', ['A', 'OP']],
    ['A (open)', ['A', 'open']],
    ['Xenia', undefined],
    ['Mill Quince', undefined],
  ])('of a cross, “%s”', (raw, parts) => {
    expect(cutCross(raw)).toEqual(parts);
  });

  it('of a parent finds trees of the programme by name, without case, spaces and the sort of sign', () => {
    for (const text of ['Old Hedgerow', ' old  hedgerow', 'OLD\u00a0HEDGEROW', '‘Old Hedgerow’'])
      expect(pollenOf(text, programme)).toEqual({ tree: 'old-hedgerow' });
    expect(pollenOf('K80-2', programme)).toEqual({ tag: 'K80-2' });
    expect(['op', 'O.P.', 'selfed', 'bulk', '?', ''].map((text) => pollenOf(text, programme))).toEqual(['open', 'open', 'self', 'mixed', 'unknown', 'unknown']);
  });

  it('of a status, an event, a place and a judgement says what it took', () => {
    expect(statusCell('culled 2015').value).toEqual({ status: 'culled', since: 2015 });
    expect(statusCell('label lost').value).toEqual({ status: 'labelLost' });
    expect(statusCell('moved to Kate').flag).toMatchObject({ code: 'notKnown', level: 'kept' });
    expect(eventCell('voles under the snow')).toMatchObject({ value: 'rodents', flag: { code: 'notKnown' } });
    expect(positionCell('B2-4-7').value).toEqual({ block: 'B2', row: '4', tree: '7' });
    expect(positionCell('Block B2, row 4, tree 7').value).toEqual({ block: 'B2', row: '4', tree: '7' });
    expect(seenCell('3 of 6').value).toEqual({ showed: 3, cut: 6 });
    expect(seenCell('yes')).toMatchObject({ value: { showed: 1, cut: 1 }, flag: { code: 'yesNo' } });
    expect(seenCell('a bit').flag).toMatchObject({ level: 'kept' });
  });
});

describe('the text of a file', () => {
  const bytes = (text: string, ...mark: number[]) => new Uint8Array([...mark, ...new TextEncoder().encode(text)]);
  const wide = (text: string, low: boolean) =>
    new Uint8Array([
      ...(low ? [0xff, 0xfe] : [0xfe, 0xff]),
      ...Array.from(text).flatMap((c) => (low ? [c.charCodeAt(0) & 255, c.charCodeAt(0) >> 8] : [c.charCodeAt(0) >> 8, c.charCodeAt(0) & 255])),
    ]);
  it('is read from UTF-8, with and without a mark, from UTF-16 and from Windows-1252', () => {
    const text = 'Tag;Moniquí × “Ærlig”';
    expect(textOf(bytes(text))).toEqual({ text, encoding: 'utf-8' });
    expect(textOf(bytes(text, 0xef, 0xbb, 0xbf))).toEqual({ text, encoding: 'utf-8 marked' });
    expect(textOf(wide(text, true))).toEqual({ text, encoding: 'utf-16' });
    expect(textOf(wide(text, false))).toEqual({ text, encoding: 'utf-16' });
    // Windows-1252, code chart of the WHATWG Encoding Standard, index windows-1252: í 0xED, × 0xD7, “ 0x93, – 0x96.
    expect(textOf(new Uint8Array([0x4d, 0xed, 0x20, 0xd7, 0x20, 0x93, 0x96]))).toEqual({ text: 'Mí × “–', encoding: 'windows-1252' });
  });

  it.each<readonly [string, string]>([
    ['a;b;c\n1,5;2,5;3', ';'],
    ['a,b,c\n1,"2;3",3', ','],
    ['a\tb\n1,5\t2;3', '\t'],
    ['a|b\n1|2', '|'],
    ['Tag\n001\n002', ','],
  ])('is cut where its columns are: %j', (text, separator) => {
    expect(guessSeparator(text)).toBe(separator);
  });

  it('keeps line breaks within quotes, mixed line ends, ragged rows, and quotes that never close', () => {
    expect(tableOf('Tag,Note\r\n1,"a\nb"\r\n2,c\n3,d').rows).toEqual([
      ['1', 'a\nb'],
      ['2', 'c'],
      ['3', 'd'],
    ]);
    const ragged = tableOf('Tag,Note\n1\n2,b,c\n');
    expect(ragged.headers).toEqual(['Tag', 'Note', 'column 3']);
    expect(ragged.rows).toEqual([
      ['1', '', ''],
      ['2', 'b', 'c'],
    ]);
    expect(ragged.ragged).toEqual([0, 1]);
    const loose = tableOf('Tag,Note\n1,"pot of 5\n2,b');
    expect(loose.looseQuotes).toBe(true);
    expect(loose.rows).toEqual([
      ['1', '"pot of 5'],
      ['2', 'b'],
    ]);
  });

  it('names headings that are missing or doubled', () => {
    expect(tableOf('Tag,,Note,Note\n1,2,3,4').headers).toEqual(['Tag', 'column 2', 'Note', 'Note (2)']);
  });
});

describe.each(Object.entries(FILES))('%s', (_, file) => {
  const { text } = typeof file.source === 'string' ? { text: file.source } : textOf(file.source);
  const found = look(text, file.choices);

  it('is understood', () => {
    expect(found.table.separator).toBe(file.shown.separator);
    expect(found.columns.map(({ role }) => role)).toEqual(file.shown.roles);
    expect(found.additions).toMatchObject({ newBatches: file.shown.batches, newTrees: file.shown.trees, noRoom: 0 });
    const flags = [...found.read.flags.values()].map(({ code }) => code);
    expect([...new Set(flags)].sort()).toEqual([...file.shown.flags].sort());
    if (file.shown.first) expect(found.additions.log.batches[0]).toMatchObject(file.shown.first);
  });

  it('gives a log that can be kept, loses no cell, and adds nothing the second time', () => {
    expect(() => logSchema.parse(found.additions.log)).not.toThrow();
    const everything = JSON.stringify(found.additions.log).normalize('NFC');
    for (const cell of file.shown.mustStand ?? []) expect(everything).toContain(JSON.stringify(cell).slice(1, -1));
    const again = look(text, file.choices, found.additions.log).additions;
    expect(again.log).toBe(found.additions.log);
    expect([again.rowsThere, again.rows]).toEqual([found.table.rows.length, found.table.rows.length]);
  });
});

describe('what is decided by hand', () => {
  const american = 'Cross,Flowers,Date,Fruits\nOld Hedgerow x Mill Quince,"1,000",3/4/2019,30\n';

  it('settles all cells of a column', () => {
    const before = look(american);
    expect([...before.read.flags.values()].map(({ code }) => code)).toEqual(expect.arrayContaining(['twoNumbers', 'twoDates']));
    expect(before.additions.log.batches[0]?.note).toMatch(/Flowers: 1,000/);
    const after = look(american, { columns: { 1: { mark: 'point' }, 2: { order: 'monthFirst' } } });
    expect(after.additions.log.batches[0]).toMatchObject({
      counts: [
        { stage: 'flowers', count: 1000, when: '2019-03-04' },
        { stage: 'fruits', count: 30 },
      ],
    });
    expect(after.additions.log.batches[0]?.note).toBeUndefined();
  });

  it('changes what a column is, leaves one out, and gives kinds to parents once', () => {
    const text = 'Cross,Flowers,Batch,Spare\nK80-2 x OP,20,one,gone\nK80-2 x OP,30,two,gone\n';
    expect(look(text).parents).toEqual([{ key: 'k80-2', name: 'K80-2', batches: 2 }]);
    const chosen = look(text, { kinds: { 'k80-2': 'pear' }, columns: { 1: { role: 'count:fruits' }, 3: { role: 'leave' } } });
    expect(chosen.additions.log.batches).toMatchObject([
      { name: 'one', seed: { tag: 'K80-2' }, seedKind: 'pear', counts: [{ stage: 'fruits', count: 20 }] },
      { name: 'two', seedKind: 'pear', counts: [{ stage: 'fruits', count: 30 }] },
    ]);
    expect(JSON.stringify(chosen.additions.log)).not.toContain('gone');
    expect(look(text).additions.log.batches[0]?.note).toBe('Spare: gone');
  });
});

describe('a log that is not empty', () => {
  it('stays as it is; a batch that is there gets only what it has not, and a clash is told', () => {
    const first = look('Batch,Cross,Year,Flowers\nA,Old Hedgerow x OP,2020,40\n').additions.log;
    const second = look('Batch,Cross,Year,Flowers,Fruits\nA,Old Hedgerow x OP,2020,40,9\nB,Old Hedgerow x OP,2021,50,8\n', {}, first).additions;
    expect(second).toMatchObject({ newBatches: 1, grown: 1 });
    expect(second.log.batches[0]?.counts.map(({ stage, count }) => [stage, count])).toEqual([
      ['flowers', 40],
      ['fruits', 9],
    ]);
    expect(first.batches[0]?.counts).toHaveLength(1);
    const trees = look('Batch,Cross,Year,Tag,Status,Season,Brix\nA,Old Hedgerow x OP,2020,1,alive,2030,12\n', {}, first).additions.log;
    const clash = look('Batch,Cross,Year,Tag,Status,Season,Brix\nA,Old Hedgerow x OP,2020,1,dead,2031,13\n', {}, trees).additions;
    expect(clash.log.batches[0]?.trees[0]).toMatchObject({ status: 'alive', seasons: [{ year: 2030 }, { year: 2031 }] });
    expect(clash.differs).toMatchObject([{ batch: 'A', tag: '1' }]);
  });
});

describe('a long table', () => {
  it('of 5,000 trees is read in less than a second', () => {
    const rows = Array.from(
      { length: 5000 },
      (_, i) =>
        `${String(i)};Old Hedgerow x K${String(i % 9)};${String(2004 + (i % 3))}/0${String(5 + (i % 3))};B${String(i % 7)}-${String(i % 50)}-${String(i)};${i % 5 === 0 ? 'dead 2012' : 'alive'};${String(i % 9)},5;~${String(i)}`,
    );
    const text = ['Tag;Cross;Year;Position;Status;Brix 2012;Remark', ...rows].join('\r\n');
    const times = [1, 2, 3].map(() => {
      const start = performance.now();
      const { additions } = look(text);
      expect(additions.newTrees).toBe(5000);
      return performance.now() - start;
    });
    // The fastest of three: others may be busy on the machine.
    expect(Math.min(...times)).toBeLessThan(1000);
  });
});
