import type { Programme } from '../model/programme.ts';
import { MOST_BYTES, type Reading } from '../model/read.ts';
import { readBytes, tooLarge } from './bytes.ts';

/** Readable JSON, the same that is opened again: version and units come first, sources stand with their numbers. */
export function programmeText(programme: Programme): string {
  return `${JSON.stringify(programme, null, 2)}\n`;
}

/** A text as the begin of a file name: in plain small letters. */
export function slug(text: string, otherwise = 'programme'): string {
  const plain = text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return plain || otherwise;
}

/** File name of a copy. */
export const fileName = (programme: Programme): string => `${slug(programme.title)}.json`;

/** Reads a chosen file; one over 5 MB is refused by its size, before reading. Rejects only if the file itself cannot be read. */
export async function readFile(file: { readonly size: number; readonly name: string; arrayBuffer(): Promise<ArrayBuffer> }): Promise<Reading> {
  if (file.size > MOST_BYTES) return tooLarge(`“${file.name}”`);
  return readBytes(new Uint8Array(await file.arrayBuffer()));
}
