/** A cell: a number is written as ECMAScript writes it, null as an empty cell. */
export type CsvCell = string | number | null;

/** A spreadsheet takes text that begins so for a formula, and a programme's names may come from anyone. */
const FORMULA = /^[=+\-@\t\r]/;

/**
 * Writes one record of comma-separated values with its line end. Text with a comma, a quote or a line break is quoted; text that a
 * spreadsheet would run as a formula gets an apostrophe before it.
 *
 * **Source:** Shafranovich, Y. (2005) RFC 4180, §2; the apostrophe: OWASP, "CSV Injection".
 */
export function csvLine(cells: readonly CsvCell[]): string {
  return `${cells.map(csvCell).join(',')}\r\n`;
}

function csvCell(cell: CsvCell): string {
  if (cell === null) return '';
  if (typeof cell === 'number') return String(cell);
  const text = FORMULA.test(cell) ? `'${cell}` : cell;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
