/** How the bytes of a file were understood. */
export type Encoding = 'utf-8' | 'utf-8 marked' | 'utf-16' | 'windows-1252' | 'no text';

/** Bytes 0x80 to 0x9F; the five that stand for nothing are left as they are. Not every JavaScript engine reads them so. */
const UPPER = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f\u0090‘’“”•–—˜™š›œ\u009džŸ';

function windows1252(bytes: Uint8Array): string {
  const parts: string[] = [];
  // In pieces: a call takes only so many arguments.
  for (let at = 0; at < bytes.length; at += 4096)
    parts.push(String.fromCharCode(...bytes.subarray(at, at + 4096)).replace(/[\u0080-\u009f]/g, (letter) => UPPER[letter.charCodeAt(0) - 0x80] ?? letter));
  return parts.join('');
}

const begins = (bytes: Uint8Array, ...mark: readonly number[]): boolean => mark.every((byte, i) => bytes[i] === byte);

/** Bytes that are looked at for noughts. */
const LOOKED_AT = 4096;
/** Share of noughts among the even or the odd bytes from which a file is taken for UTF-16 without a mark: Latin letters have one each. */
const MOSTLY = 0.6;
/** Share of noughts from which a file is no text; one that slipped into a text does not make it none. */
const TOO_MANY = 0.01;

/** UTF-16 without a mark, by where its noughts stand; a file with many noughts elsewhere is no text. */
function byNoughts(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | 'no text' | undefined {
  const first = bytes.subarray(0, LOOKED_AT);
  const noughts = [0, 0];
  first.forEach((byte, i) => {
    if (byte === 0) noughts[i % 2] = (noughts[i % 2] ?? 0) + 1;
  });
  const [even = 0, odd = 0] = noughts;
  const most = (MOSTLY * first.length) / 2;
  // One in a short file is one that slipped in.
  const few = Math.max(1, TOO_MANY * first.length);
  if (odd > most && even <= few) return 'utf-16le';
  if (even > most && odd <= few) return 'utf-16be';
  return even + odd > few ? 'no text' : undefined;
}

/** First bytes of files that people take for tables: packed workbooks (as any ZIP archive), old workbooks, printed pages. */
const NO_TEXT = [
  [0x50, 0x4b, 0x03, 0x04],
  [0xd0, 0xcf, 0x11, 0xe0],
  [0x25, 0x50, 0x44, 0x46, 0x2d],
] as const;

/**
 * Turns the bytes of a file into text: UTF-8 with or without a mark at its beginning, UTF-16 with one or, where its letters are Latin ones,
 * without; whatever is no UTF-8 is taken for Windows-1252, which every byte fits, and said so. A workbook, a printed page or another file
 * that is no text comes back empty.
 *
 * **Source:** the marks: The Unicode Standard 15.0, §23.8, table 23-2; the fallback: WHATWG Encoding, index windows-1252;
 * first bytes of files: ZIP APPNOTE 6.3.10 §4.3.7, ISO 32000-1 §7.5.2, the compound file's from memory.
 */
export function textOf(bytes: Uint8Array): { readonly text: string; readonly encoding: Encoding } {
  if (begins(bytes, 0xff, 0xfe)) return { text: new TextDecoder('utf-16le').decode(bytes), encoding: 'utf-16' };
  if (begins(bytes, 0xfe, 0xff)) return { text: new TextDecoder('utf-16be').decode(bytes), encoding: 'utf-16' };
  const guess = NO_TEXT.some((mark) => begins(bytes, ...mark)) ? 'no text' : byNoughts(bytes);
  if (guess === 'no text') return { text: '', encoding: 'no text' };
  if (guess) return { text: new TextDecoder(guess).decode(bytes), encoding: 'utf-16' };
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return { text, encoding: begins(bytes, 0xef, 0xbb, 0xbf) ? 'utf-8 marked' : 'utf-8' };
  } catch {
    return { text: windows1252(bytes), encoding: 'windows-1252' };
  }
}
