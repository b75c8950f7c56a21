/**
 * Why something could not be kept or read:
 * `full` no room left; `closed` this browser lets us store nothing (private window, blocked, damaged); `silent` storage does not answer.
 */
export type DeviceTrouble = 'full' | 'closed' | 'silent';

/** Thrown by work on the database; never leaves the storage folder, where it becomes a value. */
export class StorageFailure extends Error {
  constructor(
    readonly trouble: DeviceTrouble,
    cause: unknown,
  ) {
    super(trouble, { cause });
  }
}

/** The outcome of asking the device for something. */
export type Answer<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly trouble: DeviceTrouble };

/** Names of the exceptions by which browsers say that there is no room. Source: Web IDL §2.8.1 and Firefox’s own name, from memory. */
const FULL = new Set(['QuotaExceededError', 'NS_ERROR_DOM_QUOTA_REACHED']);

/** Turns whatever was thrown into one of the troubles. */
export function failureOf(error: unknown): StorageFailure {
  if (error instanceof StorageFailure) return error;
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  return new StorageFailure(FULL.has(name) ? 'full' : 'closed', error);
}

/** Runs work that may fail for storage reasons and gives its outcome as a value. */
export async function answered<T>(work: () => Promise<T>): Promise<Answer<T>> {
  try {
    return { ok: true, value: await work() };
  } catch (error) {
    return { ok: false, trouble: failureOf(error).trouble };
  }
}
