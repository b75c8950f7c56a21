import type { Programme } from '../model/programme.ts';
import { MOST_BYTES, type Reading } from '../model/read.ts';
import { readBytes } from './bytes.ts';

/** What the address of a shared programme begins with; the programme itself follows. */
export const LINK = '#/open/';
/** zlib's own frame (RFC 1950): its check sum finds a changed letter that would otherwise open as another number. */
const FORM = 'deflate';
/** Letters of base64 that 5 MB can take at the very most: more is refused unread. */
const MOST_LETTERS = Math.ceil((MOST_BYTES * 4) / 3);
const AT_ONCE = 0x8000;

const refuse = (message: string, fix: string): Reading => ({ ok: false, problems: [{ path: [], message, fix, stops: true }] });
const damaged = (): Reading =>
  refuse('This link is damaged: it was cut short or changed on the way', 'Copy the whole of it once more, or ask for the file instead.');

/** base64url without padding (RFC 4648 §5). */
function toLetters(bytes: Uint8Array): string {
  let binary = '';
  for (let at = 0; at < bytes.length; at += AT_ONCE) binary += String.fromCharCode(...bytes.subarray(at, at + AT_ONCE));
  return btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

/** Null where the letters are none of base64url, or cannot be the whole of any bytes. */
function fromLetters(letters: string): Uint8Array<ArrayBuffer> | null {
  if (!/^[\w-]+$/.test(letters) || letters.length % 4 === 1) return null;
  return Uint8Array.from(atob(letters.replaceAll('-', '+').replaceAll('_', '/')), (letter) => letter.charCodeAt(0));
}

/** What comes out of a stream, joined; null as soon as it is more than `most` bytes: the rest is never made. */
async function gather(stream: ReadableStream<Uint8Array>, most: number): Promise<Uint8Array | null> {
  const parts: Uint8Array[] = [];
  let length = 0;
  const reader = stream.getReader();
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    length += value.length;
    if (length > most) {
      void reader.cancel().catch(() => undefined);
      return null;
    }
    parts.push(value);
  }
  const whole = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

const through = (bytes: Uint8Array<ArrayBuffer>, transform: CompressionStream | DecompressionStream) => new Blob([bytes]).stream().pipeThrough(transform);

/** The part of an address that holds the whole programme: it goes with the link and nowhere else, servers are not sent it. */
export async function linkFragment(programme: Programme): Promise<string> {
  // The line of units is for people with an editor; the schema puts it back.
  const text = JSON.stringify({ ...programme, units: undefined });
  const packed = await gather(through(new TextEncoder().encode(text), new CompressionStream(FORM)), Infinity);
  return `${LINK}${toLetters(packed ?? new Uint8Array())}`;
}

/** Whether an address holds a programme, readable or not. */
export const isLink = (fragment: string): boolean => fragment.startsWith(LINK);

/**
 * Reads a programme from the part of an address that `linkFragment` made. Never throws. Unpacking stops at 5 MB, however much more
 * a small link would unfold to.
 */
export async function readLink(fragment: string): Promise<Reading> {
  if (!isLink(fragment)) return refuse('This is no link to a programme', `One of ours goes on with “${LINK}” after the address of the page.`);
  const letters = fragment.slice(LINK.length);
  if (letters.length > MOST_LETTERS) return refuse('This link holds more than 5 MB', 'A programme of ours is far smaller; ask for the file instead.');
  const packed = fromLetters(letters);
  if (!packed) return damaged();
  try {
    const bytes = await gather(through(packed, new DecompressionStream(FORM)), MOST_BYTES);
    return bytes ? readBytes(bytes) : refuse('This link unfolds to more than 5 MB', 'A programme of ours is far smaller; ask for the file instead.');
  } catch {
    return damaged();
  }
}
