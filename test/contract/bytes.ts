import { createHash } from 'node:crypto';
import type { Columns } from '../../src/results/columns.ts';

/** A digest of all bytes of each plan's columns: equal if and only if every result is. */
export const bytesOf = (columns: readonly Columns[]): string[] =>
  columns.map(({ ints, amounts, byYear }) => {
    const hash = createHash('sha256');
    for (const list of [ints, amounts, byYear]) hash.update(new Uint8Array(list.buffer, list.byteOffset, list.byteLength));
    return hash.digest('hex');
  });
