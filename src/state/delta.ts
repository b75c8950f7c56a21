import { z } from 'zod';
import { isRecord } from '../model/problem.ts';

/** What must be put where to make one document of another: few lines for an edit of one field. */
export interface Change {
  readonly path: readonly (string | number)[];
  readonly value: unknown;
}
export type Delta = readonly Change[];

export const deltaSchema = z.array(z.object({ path: z.array(z.union([z.string(), z.int().min(0)])), value: z.unknown() }));

/**
 * Finds what must be put into `from` to get `to`, as the text of both would be. Objects with other keys, or keys in another order, and
 * lists of another length are replaced as a whole: so the outcome is the same to the letter.
 */
export function deltaBetween(from: unknown, to: unknown): Delta {
  const changes: Change[] = [];
  collect(from, to, [], changes);
  return changes;
}

function collect(from: unknown, to: unknown, path: readonly (string | number)[], changes: Change[]): void {
  if (Object.is(from, to)) return;
  if (Array.isArray(from) && Array.isArray(to) && from.length === to.length) {
    const [before, after]: readonly (readonly unknown[])[] = [from, to];
    after?.forEach((value, i) => collect(before?.[i], value, [...path, i], changes));
    return;
  }
  if (isRecord(from) && isRecord(to)) {
    const keys = Object.keys(to);
    // As text with its quotes: joined by any letter, a key that is empty or holds that letter would be taken for others.
    if (JSON.stringify(Object.keys(from)) === JSON.stringify(keys)) {
      for (const key of keys) collect(from[key], to[key], [...path, key], changes);
      return;
    }
  }
  changes.push({ path, value: to });
}

/** Applies changes; the document itself stays as it is. */
export function applyDelta(document: unknown, delta: Delta): unknown {
  return delta.reduce((now, { path, value }) => putAt(now, path, 0, value), document);
}

function putAt(document: unknown, path: Change['path'], depth: number, value: unknown): unknown {
  const key = path[depth];
  if (key === undefined) return value;
  if (Array.isArray(document) && typeof key === 'number' && key < document.length) {
    const list: readonly unknown[] = document;
    return list.with(key, putAt(list[key], path, depth + 1, value));
  }
  if (isRecord(document) && typeof key === 'string' && Object.hasOwn(document, key))
    return { ...document, [key]: putAt(document[key], path, depth + 1, value) };
  throw new RangeError(`Nothing stands at “${path.join(' / ')}”.`);
}
