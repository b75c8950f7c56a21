/** How the bytes of a file were understood. */
export type Encoding = 'utf-8' | 'utf-8 marked' | 'utf-16' | 'windows-1252';

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

/**
 * Turns the bytes of a file into text: UTF-8 with or without a mark at its beginning, UTF-16 with one; whatever is no UTF-8 is taken for
 * Windows-1252, which every byte fits, and said so.
 *
 * **Source:** the marks: The Unicode Standard 15.0, §23.8, table 23-2; the fallback: WHATWG Encoding, index windows-1252.
 */
export function textOf(bytes: Uint8Array): { readonly text: string; readonly encoding: Encoding } {
  if (begins(bytes, 0xff, 0xfe)) return { text: new TextDecoder('utf-16le').decode(bytes), encoding: 'utf-16' };
  if (begins(bytes, 0xfe, 0xff)) return { text: new TextDecoder('utf-16be').decode(bytes), encoding: 'utf-16' };
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return { text, encoding: begins(bytes, 0xef, 0xbb, 0xbf) ? 'utf-8 marked' : 'utf-8' };
  } catch {
    return { text: windows1252(bytes), encoding: 'windows-1252' };
  }
}
