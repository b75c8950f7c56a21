import { csvParseRows } from 'd3';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Columns } from '../../src/results/columns.ts';
import type { Frame } from '../../src/results/frame.ts';
import { csvLine } from '../../src/results/writers/csv.ts';
import { runsCsv } from '../../src/results/writers/runs-csv.ts';
import { alignedTable } from '../../src/results/writers/table.ts';

describe('one record of comma-separated values', () => {
  it('is quoted as RFC 4180 §2 shows', () => {
    expect(csvLine(['aaa', 'b\r\nbb', 'ccc'])).toBe('aaa,"b\r\nbb",ccc\r\n');
    expect(csvLine(['aaa', 'b"bb', 'ccc'])).toBe('aaa,"b""bb",ccc\r\n');
    expect(csvLine(['a,b', null, 1.5, -2])).toBe('"a,b",,1.5,-2\r\n');
  });

  it('is read back by another reader (d3-dsv) as it was', () => {
    const text = fc.string({ unit: fc.constantFrom('a', 'é', ' ', ',', '"', '\n', '\r', ';') });
    fc.assert(
      fc.property(fc.array(fc.array(text, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 4 }), (rows) => {
        // A cell that begins with a lone carriage return would be a formula to some spreadsheets and gets an apostrophe.
        const kept = rows.map((row) => row.map((cell) => (cell.startsWith('\r') ? `'${cell}` : cell)));
        expect(csvParseRows(rows.map(csvLine).join(''))).toEqual(kept);
      }),
    );
  });

  it('never lets a name become a formula, nor a number a text', () => {
    expect(csvLine(['=1+1', '@x', '+y', '-z', -3])).toBe("'=1+1,'@x,'+y,'-z,-3\r\n");
  });
});

describe('columns of text', () => {
  it('stand under each other, also with accents and short rows', () => {
    expect(
      alignedTable([
        ['', 'A', 'B'],
        ['Röte', '5', '1,200'],
        ['Ro\u0308te', '15'],
      ]),
    ).toBe(['       A      B', 'Röte   5  1,200', 'Ro\u0308te  15'].join('\n'));
    expect(
      alignedTable(
        [
          ['a', 'b', 'c'],
          ['aa', 'bb', 'cc'],
        ],
        [0, 2],
      ),
    ).toBe('a    b  c\naa  bb  cc');
    expect(alignedTable([])).toBe('');
  });
});

const frame: Frame = {
  startYear: 2030,
  lastYear: 2040,
  years: 11,
  hoursLimit: null,
  moneyLimit: null,
  placesLimit: 10,
  plans: [
    { id: 'one', mark: 'A', name: 'One', generations: [{ id: 'g', round: 1, name: 'G', grownFrom: null }] },
    {
      id: 'two',
      mark: 'B',
      name: 'Two',
      generations: [
        { id: 'g', round: 1, name: 'G', grownFrom: null },
        { id: 'h', round: 1, name: 'H', grownFrom: 0 },
      ],
    },
  ],
  shown: [{ name: 'red, deep', rules: ['one copy', 'two copies'] }],
  facts: [{ name: 'roots' }, { name: '' }],
  measured: [
    { name: 'weight', unit: 'g', inGoal: true },
    { name: 'weight', unit: 'g', inGoal: false },
  ],
};

function filled(generations: number): Columns {
  const columns = new Columns({ generations, rules: 1, facts: 2, measured: 2, years: 11 }, 2);
  columns.run('yearProven').set([4, -1]);
  columns.run('yearStood').set([0, -1]);
  columns.run('failure').set([-1, 1]);
  columns.run('seedlings').set([12, 0]);
  columns.rule(0).set([1, 0]);
  columns.fact(0).set([1, 0]);
  columns.amount('treeYears').set([1.25, 0]);
  columns.year('hours', 3).set([12.1, 0]);
  columns.shortfall(1).set([-0.5, 0]);
  for (let g = 0; g < generations; g += 1) columns.generation(g, 'firstPick').set([g + 1, -1]);
  return columns;
}

describe('every future as one line', () => {
  const rows = csvParseRows([...runsCsv(frame, [filled(1), filled(2)])].join(''));
  const heads = rows[0]!;
  const cell = (row: number, head: string) => rows[row]![heads.indexOf(head)];

  it('has a line for each future of each plan, all of one length, under heads that differ', () => {
    expect(rows.slice(1).map(([plan, future]) => [plan, future])).toEqual([
      ['one', '1'],
      ['one', '2'],
      ['two', '1'],
      ['two', '2'],
    ]);
    for (const row of rows) expect(row).toHaveLength(heads.length);
    expect(new Set(heads).size).toBe(heads.length);
  });

  it('gives calendar years, empty for never, also for the first year', () => {
    expect([1, 2].map((row) => cell(row, 'yearProven'))).toEqual(['2034', '']);
    expect([1, 2].map((row) => cell(row, 'yearStood'))).toEqual(['2030', '']);
  });

  it('gives rules, facts and failures in words', () => {
    expect([1, 2].map((row) => cell(row, 'rule: red, deep'))).toEqual(['two copies', 'one copy']);
    expect([1, 2].map((row) => cell(row, 'fact: roots'))).toEqual(['yes', 'no']);
    expect([1, 2].map((row) => cell(row, 'fact 2'))).toEqual(['no', 'no']);
    expect([1, 2].map((row) => cell(row, 'failure'))).toEqual(['', 'stillWaiting']);
  });

  it('keeps counts and amounts as they are, and leaves empty what a plan does not have', () => {
    expect([1, 2].map((row) => cell(row, 'seedlings'))).toEqual(['12', '0']);
    expect(cell(1, 'treeYears')).toBe('1.25');
    expect([1, 2].map((row) => cell(row, 'hours 2033'))).toEqual(['12.1', '0']);
    expect(cell(1, 'shortfall: weight (g) (2)')).toBe('-0.5');
    expect([1, 3, 4].map((row) => cell(row, 'generation 2: firstPick'))).toEqual(['', '2032', '']);
    expect([1, 3].map((row) => cell(row, 'generation 2: flowers'))).toEqual(['', '0']);
  });
});
