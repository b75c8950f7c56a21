import type { Problem } from '../model/problem.ts';
import { MOST_BYTES, readProgramme, type Reading } from '../model/read.ts';

const refuse = (message: string, fix: string): Reading => {
  const problem: Problem = { path: [], message, fix, stops: true };
  return { ok: false, problems: [problem] };
};

export const tooLarge = (what: string): Reading => refuse(`${what} is larger than 5 MB`, 'A programme of ours is far smaller; choose another file.');

const AGAIN = 'Save it as “UTF-8” in your editor, or open the copy that Orchard Odds saved.';
const startsWith = (bytes: Uint8Array, ...first: readonly number[]) => first.every((byte, i) => bytes[i] === byte);
/** The marks that UTF-16 puts first, in either order of bytes (Unicode Standard, table 2-4; from memory). */
const isMarkedWide = (bytes: Uint8Array) => startsWith(bytes, 0xff, 0xfe) || startsWith(bytes, 0xfe, 0xff);

/** Line of the first letter that could not be read: decoded loosely, it stands as U+FFFD. */
function lineOfBadLetter(bytes: Uint8Array): number {
  const [before = ''] = new TextDecoder().decode(bytes).split('\uFFFD', 1);
  return before.split('\n').length;
}

/**
 * Reads a programme from the bytes of a file or a link, which are text in UTF-8. Text in another writing is refused rather than
 * guessed at: letters would change unnoticed. Never throws.
 */
export function readBytes(bytes: Uint8Array): Reading {
  if (bytes.length > MOST_BYTES) return tooLarge('It');
  if (isMarkedWide(bytes)) return refuse('It is written in UTF-16, not in UTF-8 as files of ours are', AGAIN);
  const zero = bytes.indexOf(0);
  if (zero >= 0 && zero < 2 && bytes.length % 2 === 0) return refuse('It seems to be written in UTF-16, not in UTF-8 as files of ours are', AGAIN);
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    if (zero >= 0) return refuse('It is not text, but a file of another kind', 'Open a file that Orchard Odds has saved.');
    return refuse(`A letter on line ${String(lineOfBadLetter(bytes))} is not written in UTF-8, as files of ours are`, AGAIN);
  }
  return readProgramme(text);
}
