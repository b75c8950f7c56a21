import { promisifyRequest } from 'idb-keyval';
import { failureOf, StorageFailure } from './trouble.ts';

const NAME = 'orchard-odds';
const STORE = 'documents';
/** Longer than any disk takes; after it the page says so and goes on without. */
const PATIENCE_MS = 5000;
/** While a browser clears a site’s data it closes every connection that is being opened; soon after, it lets one through. */
const CLEARING = { tries: 8, pauseMs: 150 };

const pause = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));

/** A promise that fails as `silent` when nothing comes of it in time. */
function withPatience<T>(work: Promise<T>, ms: number): Promise<T> {
  return new Promise((resolve, reject) => {
    const timer = setTimeout(() => reject(new StorageFailure('silent', null)), ms);
    work.then(resolve, reject).finally(() => clearTimeout(timer));
  });
}

/**
 * The one database of the page, opened when it is first used and again when the browser has closed it. All work happens in transactions
 * of their own: what a piece of work writes is there as a whole or not at all, also when the browser dies in the middle.
 */
export class Database {
  private opening: Promise<IDBDatabase> | null = null;
  /** Called when the browser closes or deletes the database under us: somebody cleared what this site had stored. */
  onLost: () => void = () => undefined;

  constructor(
    private readonly factory: () => IDBFactory | undefined = () => globalThis.indexedDB,
    private readonly patienceMs = PATIENCE_MS,
  ) {}

  private open(): Promise<IDBDatabase> {
    this.opening ??= this.openNow().catch((error: unknown) => {
      this.opening = null;
      throw error;
    });
    return this.opening;
  }

  private async openNow(): Promise<IDBDatabase> {
    for (let attempt = 1; ; attempt += 1) {
      try {
        return await this.connect();
      } catch (error) {
        if (!(error instanceof DOMException) || error.name !== 'AbortError' || attempt === CLEARING.tries) throw error;
        await pause(CLEARING.pauseMs);
      }
    }
  }

  private async connect(): Promise<IDBDatabase> {
    const factory = this.factory();
    if (!factory) throw new StorageFailure('closed', null);
    const request = factory.open(NAME);
    request.onupgradeneeded = () => {
      if (!request.result.objectStoreNames.contains(STORE)) request.result.createObjectStore(STORE);
    };
    const database = await promisifyRequest(request);
    const lost = () => {
      this.opening = null;
      this.onLost();
    };
    database.onclose = lost;
    database.onversionchange = () => {
      // Somebody wants to delete it: a connection that stays open would only make them wait.
      database.close();
      lost();
    };
    return database;
  }

  /**
   * Does work in one transaction and waits until the device has it.
   * @param work may await nothing but requests of this store: the transaction ends when none is pending
   * @throws StorageFailure
   */
  async use<T>(mode: IDBTransactionMode, work: (store: IDBObjectStore) => Promise<T>): Promise<T> {
    try {
      return await withPatience(this.transact(mode, work), this.patienceMs);
    } catch (error) {
      const failure = failureOf(error);
      // Whatever it was, the next attempt starts from a fresh connection.
      if (failure.trouble === 'closed') this.opening = null;
      throw failure;
    }
  }

  private async transact<T>(mode: IDBTransactionMode, work: (store: IDBObjectStore) => Promise<T>): Promise<T> {
    const transaction = this.begin(await this.open(), mode) ?? this.begin(await this.open(), mode);
    if (!transaction) throw new StorageFailure('closed', null);
    const done = promisifyRequest(transaction);
    // Looked at below; until then a failure must not count as unhandled.
    done.catch(() => undefined);
    try {
      const result = await work(transaction.objectStore(STORE));
      await done;
      return result;
    } catch (error) {
      try {
        transaction.abort();
      } catch {
        // Already over.
      }
      throw error;
    }
  }

  /** Null when the connection turned out to be closed; the next `open` makes a new one. */
  private begin(database: IDBDatabase, mode: IDBTransactionMode): IDBTransaction | null {
    try {
      return database.transaction(STORE, mode, mode === 'readwrite' ? { durability: 'strict' } : {});
    } catch (error) {
      if (!(error instanceof DOMException) || (error.name !== 'InvalidStateError' && error.name !== 'NotFoundError')) throw error;
      database.close();
      this.opening = null;
      return null;
    }
  }
}
