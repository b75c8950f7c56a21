import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { tableCsv, tableRows } from '../../../src/components/charts/table-file.ts';

function table(rows: string): HTMLTableElement {
  const element = document.createElement('table');
  element.innerHTML = rows;
  return element;
}

const plain = table(`<thead><tr><th>Year</th><th>A  Red,
  pear</th></tr></thead><tbody><tr><th>2031</th><td>58 % (56–60)</td></tr><tr><th>2032</th><td>"sure"</td></tr></tbody>`);

describe('a table as a file', () => {
  it('reads back cell for cell with a kept reader', () => {
    const { data, errors } = Papa.parse<string[]>(tableCsv(plain).replace(/^\u{feff}/u, ''), { skipEmptyLines: true });
    expect(errors).toEqual([]);
    expect(data).toEqual([
      ['Year', 'A Red, pear'],
      ['2031', '58 % (56–60)'],
      ['2032', '"sure"'],
    ]);
  });

  it('is told to be UTF-8, and runs nothing in a spreadsheet', () => {
    const csv = tableCsv(table('<tr><td>=1+1</td><td>@x</td><td>−2</td></tr>'));
    expect(csv).toBe("\u{feff}'=1+1,'@x,−2\r\n");
  });

  it('keeps columns in place under cells that span', () => {
    expect(
      tableRows(table('<tr><th colspan="2">a</th><th rowspan="2">b</th></tr><tr><td>1</td><td>2</td></tr><tr><td>3</td><td>4</td><td>5</td></tr>')),
    ).toEqual([
      ['a', '', 'b'],
      ['1', '2', ''],
      ['3', '4', '5'],
    ]);
  });
});
