import { csvLine } from '../../results/writers/csv.ts';
import { slug } from '../../storage/file.ts';
import { saveAsFile } from '../files.ts';

/** Spreadsheets take a file for UTF-8 only if it begins so; tables hold dashes and crosses. */
const MARK = '\u{feff}';

const text = (cell: Element): string => cell.textContent.replace(/\s+/g, ' ').trim();

/** Rows of a table as they stand on the page; a cell over several columns leaves the further ones empty, one over several rows those below. */
export function tableRows(table: HTMLTableElement): string[][] {
  const rows: string[][] = [];
  for (const [r, row] of [...table.rows].entries()) {
    let column = 0;
    for (const cell of row.cells) {
      const line = (rows[r] ??= []);
      while (line[column] !== undefined) column += 1;
      for (let down = 0; down < cell.rowSpan; down += 1)
        for (let across = 0; across < cell.colSpan; across += 1) (rows[r + down] ??= [])[column + across] = down === 0 && across === 0 ? text(cell) : '';
    }
  }
  return rows.map((row) => Array.from(row, (cell: string | undefined) => cell ?? ''));
}

/** The table as comma-separated values, safe to open in a spreadsheet. */
export const tableCsv = (table: HTMLTableElement): string => MARK + tableRows(table).map(csvLine).join('');

/** @param name what the table shows, in words */
export const saveTable = (name: string, table: HTMLTableElement): void => saveAsFile(`${slug(name)}.csv`, tableCsv(table), 'text/csv;charset=utf-8');
