import { z } from 'zod';

/**
 * The last edit of an open page, written at once and in one go before the page does anything else. Saving takes a moment and can be cut
 * off by a reload or a crash; the next page that opens finds the edit here. One slot for each open page.
 */
export interface JournalEntry {
  /** The programme it belongs to, and the revision that it grew from (0: not on the device yet). */
  readonly id: string;
  readonly base: number;
  readonly writer: string;
  readonly changed: number;
  readonly text: string;
  readonly history: string;
}

const PREFIX = 'orchard-odds unsaved ';
const entrySchema = z.object({ id: z.string(), base: z.int().min(0), writer: z.string(), changed: z.number(), text: z.string(), history: z.string() });

/** The part of `localStorage` that is used; asking for it may throw where storage is blocked. */
export type Shelf = Pick<Storage, 'getItem' | 'setItem' | 'removeItem' | 'key' | 'length'>;

/** Never throws: a journal that cannot be written is a comfort missing, not a fault; the save that follows tells what is wrong. */
export class Journal {
  constructor(
    private readonly shelf: () => Shelf | undefined,
    readonly writer: string,
  ) {}

  write(entry: JournalEntry): boolean {
    return this.attempt((shelf) => (shelf.setItem(PREFIX + this.writer, JSON.stringify(entry)), true), false);
  }

  /** Forgets this page's edit, once it is saved, or another page's, once it is taken in. */
  clear(writer = this.writer): void {
    this.attempt((shelf) => (shelf.removeItem(PREFIX + writer), true), false);
  }

  /** What other pages, open or closed, have left; the newest last. */
  left(): readonly JournalEntry[] {
    return this.attempt((shelf) => {
      const keys = Array.from({ length: shelf.length }, (_, i) => shelf.key(i) ?? '').filter((key) => key.startsWith(PREFIX) && key !== PREFIX + this.writer);
      return keys
        .flatMap((key) => {
          const read = parsed(shelf.getItem(key));
          return read ? [{ ...read, writer: key.slice(PREFIX.length) }] : [];
        })
        .sort((a, b) => a.changed - b.changed);
    }, []);
  }

  private attempt<T>(work: (shelf: Shelf) => T, otherwise: T): T {
    try {
      const shelf = this.shelf();
      return shelf ? work(shelf) : otherwise;
    } catch {
      return otherwise;
    }
  }
}

function parsed(text: string | null): JournalEntry | null {
  try {
    const read = entrySchema.safeParse(JSON.parse(text ?? ''));
    return read.success ? read.data : null;
  } catch {
    return null;
  }
}
