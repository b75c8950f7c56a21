import { IDBFactory, IDBObjectStore } from 'fake-indexeddb';
import { Database } from '../../src/storage/database.ts';
import { Device } from '../../src/storage/device.ts';
import type { Shelf } from '../../src/storage/journal.ts';

/** A device of its own, with nothing on it. */
export function freshDevice(): { readonly factory: IDBFactory; readonly device: Device } {
  const factory = new IDBFactory();
  return { factory, device: new Device(new Database(() => factory, 500)) };
}

/** Writes under a key of the store what an earlier version, or anybody, may have left there. */
export async function leave(factory: IDBFactory, key: string, value: unknown): Promise<void> {
  await new Database(() => factory).use('readwrite', (store) => {
    store.put(value, key);
    return Promise.resolve();
  });
}

/** Local storage in memory; `room` letters fit. */
export class MemoryShelf implements Shelf {
  private readonly items = new Map<string, string>();
  constructor(private readonly room = Infinity) {}

  get length(): number {
    return this.items.size;
  }

  key(at: number): string | null {
    return [...this.items.keys()][at] ?? null;
  }

  getItem(key: string): string | null {
    return this.items.get(key) ?? null;
  }

  setItem(key: string, value: string): void {
    if (key.length + value.length > this.room) throw new DOMException('full', 'QuotaExceededError');
    this.items.set(key, value);
  }

  removeItem(key: string): void {
    this.items.delete(key);
  }
}

const undone: (() => void)[] = [];

/** Puts every replaced method back. */
export function restoreAll(): void {
  for (const restore of undone.splice(0)) restore();
}

/** Puts another function in the place of a method, until the returned function, or restoreAll, is called. */
export function replaced<T extends object, K extends keyof T>(owner: T, name: K, by: T[K]): () => void {
  const own = owner[name];
  owner[name] = by;
  const restore = () => {
    owner[name] = own;
  };
  undone.unshift(restore);
  return restore;
}

/** Makes every write to a store fail by an exception of that name, until the returned function is called. */
export function failPuts(name: string): () => void {
  return replaced(IDBObjectStore.prototype, 'put', () => {
    throw new DOMException(name, name);
  });
}
