import { promisifyRequest } from 'idb-keyval';
import { Database } from './database.ts';
import { decideSave, EARLIER_KEYS, idOf, keyOf, storedFrom, type SaveRequest, type StoredProgramme } from './records.ts';
import { answered, type Answer } from './trouble.ts';

export type SaveOutcome = { readonly revision: number } | { readonly refused: 'conflict' | 'gone' | 'removed' };

/** A programme of the device with its id. */
export interface Kept {
  readonly id: string;
  readonly stored: StoredProgramme;
}

/** The programmes that are kept on this device. Nothing here throws: trouble comes back as a value. */
export class Device {
  constructor(private readonly database = new Database()) {}

  /** Calls back when what this site had stored was cleared while the page was open. */
  onLost(callback: () => void): void {
    this.database.onLost = callback;
  }

  /** All programmes, put-away ones too, in no order. */
  list(): Promise<Answer<readonly Kept[]>> {
    return answered(() =>
      this.database.use('readonly', async (store) => {
        const [keys, values] = await Promise.all([promisifyRequest(store.getAllKeys()), promisifyRequest<unknown[]>(store.getAll())]);
        return keys.flatMap((key, i) => {
          const id = idOf(key);
          return id === null ? [] : [{ id, stored: storedFrom(values[i]) }];
        });
      }),
    );
  }

  load(id: string): Promise<Answer<StoredProgramme | null>> {
    return answered(() => this.database.use('readonly', (store) => readRecord(store, id)));
  }

  /** Saves a programme unless another page has saved it since: the look and the write are one transaction. */
  save(id: string, asked: SaveRequest): Promise<Answer<SaveOutcome>> {
    return answered(() =>
      this.database.use('readwrite', async (store): Promise<SaveOutcome> => {
        const decision = decideSave((await readRecord(store, id)) ?? undefined, asked);
        if ('refuse' in decision) return { refused: decision.refuse };
        await promisifyRequest(store.put(decision.write, keyOf(id)));
        return { revision: decision.write.revision };
      }),
    );
  }

  /** Puts a programme away (with the time), or brings it back (null). False if it is not there. */
  setRemoved(id: string, removed: number | null): Promise<Answer<boolean>> {
    return answered(() =>
      this.database.use('readwrite', async (store) => {
        const stored = await readRecord(store, id);
        if (stored) await promisifyRequest(store.put({ ...stored, removed }, keyOf(id)));
        return stored !== null;
      }),
    );
  }

  /** Takes a programme off the device for good. */
  erase(id: string): Promise<Answer<undefined>> {
    return answered(() => this.database.use('readwrite', (store) => promisifyRequest(store.delete(keyOf(id)))));
  }

  /**
   * Makes entries of what the first version kept under keys of its own, readable or not, as it lies there.
   * @param newId gives an id that is not used yet
   */
  takeOver(newId: () => string, now: number): Promise<Answer<readonly string[]>> {
    return answered(async () => {
      const found = await this.database.use('readonly', (store) => earlierTexts(store));
      if (found.length === 0) return [];
      return this.database.use('readwrite', async (store) => {
        const taken: string[] = [];
        // Looked at again: another page may have done it meanwhile.
        for (const [key, text] of await earlierTexts(store)) {
          const id = newId();
          const stored: StoredProgramme = { revision: 1, writer: '', changed: now, removed: null, text, history: '' };
          await promisifyRequest(store.put(stored, keyOf(id)));
          await promisifyRequest(store.delete(key));
          taken.push(id);
        }
        return taken;
      });
    });
  }
}

async function readRecord(store: IDBObjectStore, id: string): Promise<StoredProgramme | null> {
  const value: unknown = await promisifyRequest<unknown>(store.get(keyOf(id)));
  return value === undefined ? null : storedFrom(value);
}

async function earlierTexts(store: IDBObjectStore): Promise<(readonly [key: string, text: string])[]> {
  const texts: (readonly [string, string])[] = [];
  for (const key of EARLIER_KEYS) {
    const value: unknown = await promisifyRequest<unknown>(store.get(key));
    if (typeof value === 'string') texts.push([key, value]);
  }
  return texts;
}
