import type { Columns } from '../../src/results/columns.ts';

/** All bytes of columns, as text: equal if and only if every result is. */
export const bytesOf = (columns: readonly Columns[]): string[] =>
  columns.map(({ ints, amounts, byYear }) =>
    [ints, amounts, byYear].map((list) => Buffer.from(list.buffer, list.byteOffset, list.byteLength).toString('base64')).join(' '),
  );
