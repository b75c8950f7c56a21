import type { Shelf } from '../storage/journal.ts';

/** What this open page knows of itself and of the other open pages: names, marks and messages that only a browser has. */

/** A name that nothing else has. `randomUUID` is missing where the page does not come over https. */
export function newName(): string {
  return [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** The calendar day here, year-month-day. */
export function calendarDay(now: Date): string {
  const two = (part: number) => String(part).padStart(2, '0');
  return `${String(now.getFullYear())}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

export const localShelf = (): Shelf | undefined => localStorage;

const OPEN = 'orchard-odds open';

/** Notes which programme this tab shows, and for tabs to come which was shown last. Blocked storage is no fault here. */
export function remember(id: string): void {
  for (const shelf of [() => sessionStorage, () => localStorage]) {
    try {
      shelf().setItem(OPEN, id);
    } catch {
      // The page then opens the programme that was changed last.
    }
  }
}

export function remembered(): string | null {
  for (const shelf of [() => sessionStorage, () => localStorage]) {
    try {
      const id = shelf().getItem(OPEN);
      if (id !== null) return id;
    } catch {
      // As above.
    }
  }
  return null;
}

const lockOf = (writer: string): string => `orchard-odds page ${writer}`;
/** A page that is being left still holds its mark for a moment. */
const LEAVING_MS = 600;

/** Marks this page as open for as long as it lives. Browsers without locks, or pages that may not use them, go without. */
export function holdMark(writer: string): void {
  // The lock ends with the page, or with a browser that refuses it.
  if ('locks' in navigator) navigator.locks.request(lockOf(writer), () => new Promise<never>(() => undefined)).catch(() => undefined);
}

/** Whether the page of that name is still open. Unknown counts as closed: what it left is then taken in by the same rules as any save. */
export async function alive(writer: string): Promise<boolean> {
  try {
    return await navigator.locks.request(lockOf(writer), { signal: AbortSignal.timeout(LEAVING_MS) }, () => false);
  } catch (error) {
    return error instanceof DOMException && (error.name === 'TimeoutError' || error.name === 'AbortError');
  }
}

const SHOWN = 'orchard-odds page of this tab';

/**
 * Notes the name of this page for its tab, and returns that of the page the tab showed before. A tab shows one page at a time: the one
 * before is closed, though its mark may linger for seconds while a busy browser tears it down. (A tab that was duplicated brings the
 * name of an open page: taking in its edit is then the save that it is about to make itself.)
 */
export function takeTab(writer: string): string | null {
  try {
    const before = sessionStorage.getItem(SHOWN);
    sessionStorage.setItem(SHOWN, writer);
    return before;
  } catch {
    return null;
  }
}

export interface Channel {
  readonly say: (id: string) => void;
  readonly onHeard: (callback: (id: string) => void) => void;
}

/** Between the open pages of this site. Where there is none, every save still looks before it writes. */
export function openChannel(): Channel {
  if (typeof BroadcastChannel === 'undefined') return { say: () => undefined, onHeard: () => undefined };
  const channel = new BroadcastChannel('orchard-odds');
  return {
    say: (id) => channel.postMessage(id),
    onHeard: (callback) => {
      channel.onmessage = ({ data }: MessageEvent<unknown>) => {
        if (typeof data === 'string') callback(data);
      };
    },
  };
}

const ASKED = 'orchard-odds asked to be kept';

/** Whether the browser promised to keep what this site stores when the disk fills up; false where it cannot say. */
export async function isPromised(): Promise<boolean> {
  try {
    return await navigator.storage.persisted();
  } catch {
    // Missing where the page does not come over https, and in old browsers.
    return false;
  }
}

/** Asks the browser for that promise, once ever: some answer by themselves, some ask the person, and nobody likes to be asked twice. */
export async function askToKeep(): Promise<void> {
  try {
    // Where it cannot be noted that it was asked, it would be asked at every visit.
    if (localStorage.getItem(ASKED) !== null) return;
    localStorage.setItem(ASKED, 'yes');
    await navigator.storage.persist();
  } catch {
    // As above: then nothing is promised, and the list of programmes says so.
  }
}
