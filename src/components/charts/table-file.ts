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

/** As long as a name of a file may get, letters: a table may stand under a whole sentence. */
const NAME_LETTERS = 60;

/** A heading as the name of a file, cut at a word. */
export function fileNameOf(words: string, otherwise: string): string {
  const name = slug(words, otherwise);
  return name.length > NAME_LETTERS ? name.slice(0, NAME_LETTERS + 1).replace(/-[^-]*$/, '') : name;
}

/**
 * @param name what the tables show, in words
 * @param tables in one file, with an empty line between them
 */
export const saveTable = (name: string, tables: readonly HTMLTableElement[]): void =>
  saveAsFile(`${fileNameOf(name, 'table')}.csv`, MARK + tables.map((table) => tableRows(table).map(csvLine).join('')).join('\r\n'), 'text/csv;charset=utf-8');
