import { z } from 'zod';

/** One programme as it lies on the device. The document stays text: what is read back goes through the same check as a file. */
export interface StoredProgramme {
  /** Goes up by one with every save. A page that wants to save must know the last one. */
  readonly revision: number;
  /** The open page that saved last. */
  readonly writer: string;
  /** Time of the last save, ms since 1970 UTC. */
  readonly changed: number;
  /** When it was put away, ms since 1970 UTC; null while it stands in the list. */
  readonly removed: number | null;
  readonly text: string;
  /** Undo and redo, as text of their own; empty when there are none. */
  readonly history: string;
}

const PREFIX = 'programme/';
export const keyOf = (id: string): string => `${PREFIX}${id}`;
/** The id behind a key of the store; null if it is the key of something else. */
export const idOf = (key: IDBValidKey): string | null => (typeof key === 'string' && key.startsWith(PREFIX) ? key.slice(PREFIX.length) : null);

/** Where the first version kept its only programme, and a text that it could not read. */
export const EARLIER_KEYS = ['programme', 'programme that could not be read'] as const;

const storedSchema = z.object({
  revision: z.int().min(1),
  writer: z.string(),
  changed: z.number(),
  removed: z.number().nullable(),
  text: z.string(),
  history: z.string(),
});

/** Reads a record. One of an unknown form is never dropped: its text, or all of it as text, is offered as it lies there. */
export function storedFrom(value: unknown): StoredProgramme {
  const read = storedSchema.safeParse(value);
  if (read.success) return read.data;
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return { revision: 1, writer: '', changed: 0, removed: null, text, history: '' };
}

/** What a page asks to have saved. */
export interface SaveRequest {
  /** The revision that the page's document grew from; 0 for a programme that is not on the device yet. */
  readonly base: number;
  readonly writer: string;
  readonly changed: number;
  readonly text: string;
  readonly history: string;
}

export type SaveDecision =
  | { readonly write: StoredProgramme }
  /** `conflict`: another page has saved since; `gone`: it is no longer on the device; `removed`: it was put away elsewhere. */
  | { readonly refuse: 'conflict' | 'gone' | 'removed' };

/**
 * Decides whether a save may overwrite what lies there. It may if nothing was saved since the page last knew, or if the page itself
 * saved last (a save whose answer never came), or if both are the same text.
 */
export function decideSave(stored: StoredProgramme | undefined, asked: SaveRequest): SaveDecision {
  const { base, ...rest } = asked;
  if (!stored) return base === 0 ? { write: { ...rest, revision: 1, removed: null } } : { refuse: 'gone' };
  const mine = stored.revision === base || stored.writer === asked.writer;
  if (!mine && stored.text !== asked.text) return { refuse: 'conflict' };
  if (stored.removed !== null) return { refuse: 'removed' };
  return { write: { ...rest, revision: stored.revision + 1, removed: null } };
}
