import { createStore, get, set, type UseStore } from 'idb-keyval';
import { readProgramme, type Reading } from '../model/read.ts';
import type { Programme } from '../model/programme.ts';

const KEY = 'programme';
/** Where a text is kept that this version cannot read: the next save must not be the end of it. */
const SET_ASIDE = 'programme that could not be read';

export type Saved = { readonly ok: true } | { readonly ok: false; readonly reason: string };

/** The one programme that is kept on this device. Text, not objects: what is read back goes through the same check as a file. */
export class Device {
  private store: UseStore | null = null;

  private open(): UseStore {
    this.store ??= createStore('orchard-odds', 'documents');
    return this.store;
  }

  /** Saves the document. Never throws: storage that is full, blocked or private is told in words. */
  async save(programme: Programme): Promise<Saved> {
    try {
      await set(KEY, JSON.stringify(programme), this.open());
      return { ok: true };
    } catch (error) {
      this.store = null;
      const name = error instanceof Error ? error.name : '';
      return { ok: false, reason: name === 'QuotaExceededError' ? 'this device’s storage is full' : 'this browser does not let us store anything here' };
    }
  }

  /** Null when nothing has been saved, or storage cannot be opened. */
  async load(): Promise<Reading | null> {
    try {
      const text: unknown = await get(KEY, this.open());
      if (typeof text !== 'string') return null;
      const reading = readProgramme(text);
      if (!reading.ok && !reading.draft) await set(SET_ASIDE, text, this.open());
      return reading;
    } catch {
      this.store = null;
      return null;
    }
  }
}
