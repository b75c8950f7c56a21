import type { Programme } from '../model/programme.ts';
import { MOST_BYTES, readProgramme, type Reading } from '../model/read.ts';

/** Readable JSON, the same that is opened again. */
export function programmeText(programme: Programme): string {
  return `${JSON.stringify(programme, null, 2)}\n`;
}

/** File name of a copy: title in plain letters. */
export function fileName(programme: Programme): string {
  const plain = programme.title
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return `${plain || 'programme'}.json`;
}

/** Reads a chosen file; one over 5 MB is refused by its size, before reading. */
export async function readFile(file: { readonly size: number; readonly name: string; text(): Promise<string> }): Promise<Reading> {
  if (file.size > MOST_BYTES)
    return {
      ok: false,
      problems: [{ path: [], message: `“${file.name}” is larger than 5 MB`, fix: 'A programme of ours is far smaller; choose another file.', stops: true }],
    };
  return readProgramme(await file.text());
}
