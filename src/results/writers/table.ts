const letters = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Characters as a reader counts them, so that accents do not shift a column. */
const width = (text: string): number => Array.from(letters.segment(text)).length;

/**
 * Writes rows as columns of text, two spaces between. Shorter rows are filled up.
 * @param left columns set to the left, by position; the others stand to the right
 * @returns lines without trailing spaces, joined by line feeds
 */
export function alignedTable(rows: readonly (readonly string[])[], left: readonly number[] = [0]): string {
  const columns = rows.reduce((most, row) => Math.max(most, row.length), 0);
  const widths = Array.from({ length: columns }, (_, c) => rows.reduce((most, row) => Math.max(most, width(row[c] ?? '')), 0));
  const line = (row: readonly string[]) =>
    widths
      .map((wide, c) => {
        const cell = row[c] ?? '';
        const room = ' '.repeat(wide - width(cell));
        return left.includes(c) ? cell + room : room + cell;
      })
      .join('  ')
      .trimEnd();
  return rows.map(line).join('\n');
}
