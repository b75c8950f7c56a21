import type { Estimate } from '../model/estimate.ts';
import { readEstimate } from '../model/estimate-forms.ts';
import { setAt } from '../model/edits.ts';
import type { Programme } from '../model/programme.ts';
import { isRecord, valueAt, type Path } from '../model/walk.ts';
import { isCountsNote, isFromCounts } from './own-counts.ts';
import type { CountsNote, Put } from './learned-types.ts';

/** Returns the document with all edits of one click; unchecked, as `setAt` leaves it. */
export const withPuts = (document: unknown, puts: readonly Put[]): unknown => puts.reduce((next, { path, value }) => setAt(next, path, value), document);

/** The entry that a path leads into is the same one in both documents: lists may have been put in another order since. */
const sameEntry = (one: unknown, other: unknown, path: Path): boolean => {
  if (typeof path[1] !== 'number') return true;
  const id = (document: unknown): unknown => valueAt(document, [...path.slice(0, 2), 'id']);
  return id(one) !== undefined && id(one) === id(other);
};

/**
 * Finds what stood at the places of a learned number before the counts were put there.
 * @param earlier documents of before, the latest first
 * @returns edits that bring it back; null where no earlier document has it
 */
export function putsBack(programme: Programme, puts: readonly Put[], earlier: Iterable<unknown>, note: CountsNote): Put[] | null {
  const mine = isFromCounts(programme, note);
  const known = isCountsNote(programme, note);
  const counted = (value: unknown): boolean => {
    if (typeof value === 'string') return known(value);
    const parts = isRecord(value) ? [value, value['half'], value['halfLife']] : [value];
    return parts.some((part) => {
      const estimate: Estimate | undefined = readEstimate(part);
      return estimate !== undefined && mine(estimate);
    });
  };
  for (const document of earlier) {
    const was = puts.map(({ path }) => ({ path, value: sameEntry(programme, document, path) ? valueAt(document, path) : undefined }));
    const other = was.some(({ path, value }) => JSON.stringify(value) !== JSON.stringify(valueAt(programme, path)));
    // A source beside the number may have been there or not.
    if (other && was[0]?.value !== undefined && was.every(({ value }) => !counted(value))) return was;
  }
  return null;
}
