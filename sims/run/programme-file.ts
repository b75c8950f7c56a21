import { readFile, stat } from 'node:fs/promises';
import { sentence } from '../../src/model/problem.ts';
import type { Programme } from '../../src/model/programme.ts';
import { MOST_BYTES } from '../../src/model/read.ts';
import { readBytes } from '../../src/storage/bytes.ts';

export type FileReading =
  { readonly ok: true; readonly programme: Programme; readonly notes: readonly string[] } | { readonly ok: false; readonly problems: readonly string[] };

const refuse = (message: string): FileReading => ({ ok: false, problems: [message] });

/**
 * Reads a programme from a file.
 * @param name the file as the caller typed it, for the sentences
 */
export async function readProgrammeFile(path: string, name: string): Promise<FileReading> {
  let bytes: Uint8Array;
  try {
    const { size } = await stat(path);
    if (size > MOST_BYTES) return refuse(`“${name}” is larger than 5 MB. A programme of ours is far smaller; choose another file.`);
    bytes = await readFile(path);
  } catch (error) {
    return refuse(whyNot(name, error));
  }
  const reading = readBytes(bytes);
  const document = plainData(bytes);
  if (reading.ok) return { ok: true, programme: reading.programme, notes: reading.notes.map((note) => sentence(document, note)) };
  return { ok: false, problems: reading.problems.map((problem) => sentence(document, problem)) };
}

/** Only to put names into sentences; nothing where it is not JSON. */
function plainData(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    return null;
  }
}

function whyNot(name: string, error: unknown): string {
  switch (codeOf(error)) {
    case 'ENOENT':
      return `There is no file “${name}”.`;
    case 'EISDIR':
      return `“${name}” is a folder, not a programme file.`;
    case 'EACCES':
      return `“${name}” may not be read.`;
    default:
      return `“${name}” cannot be read: ${error instanceof Error ? error.message : String(error)}.`;
  }
}

/** The code that Node gives its errors; empty where there is none. */
export function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : '';
}
