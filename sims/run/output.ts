import { once } from 'node:events';
import { accessSync, constants, realpathSync, rmSync, statSync, type Stats } from 'node:fs';
import { open, rename } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { codeOf } from './programme-file.ts';

/** Where results go. A file is written under another name beside it and takes its own name when it is whole. */
export interface Output {
  write(pieces: Iterable<string>): Promise<void>;
  /** Takes back what has been written so far; callable at any time, does not wait. */
  giveUp(): void;
}

/** Pieces are gathered to this many letters before they are written. */
const BATCH = 1 << 16;

function* batches(pieces: Iterable<string>): Generator<string, void, undefined> {
  let batch = '';
  for (const piece of pieces) {
    batch += piece;
    if (batch.length < BATCH) continue;
    yield batch;
    batch = '';
  }
  if (batch !== '') yield batch;
}

/** Writes to standard output, at the pace of its reader. A reader that has seen enough ends the writing, and is no fault. */
export function standardOutput(stream: NodeJS.WriteStream = process.stdout): Output {
  return {
    async write(pieces) {
      const left = new Promise<'left'>((resolve, reject) => {
        stream.once('error', (error: Error) => {
          if (codeOf(error) === 'EPIPE') resolve('left');
          else reject(error);
        });
      });
      for (const batch of batches(pieces)) {
        const goOn: unknown = stream.write(batch) || (await Promise.race([once(stream, 'drain'), left]));
        if (goOn === 'left') return;
      }
      await Promise.race([new Promise<void>((resolve) => stream.write('', () => resolve())), left]);
    },
    giveUp: () => undefined,
  };
}

/**
 * Looks before the work begins whether a file can be written, and prepares to.
 * @param path where to write
 * @param source the programme's own file, which is never overwritten
 * @returns the output, or a sentence on why it cannot be
 */
export function fileOutput(path: string, source: string): Output | string {
  const there = statOf(path);
  if (there?.isDirectory()) return `--out names a folder: “${path}”.`;
  if (there && samePlace(there, statOf(source))) return '--out names the programme file itself; it would be lost.';
  // A device or pipe is written to, not replaced.
  if (there && !there.isFile()) return writer(path, path);
  const target = there ? realpathSync(path) : path;
  try {
    accessSync(dirname(target), constants.W_OK);
  } catch {
    return `Nothing can be written to the folder of “${path}”.`;
  }
  return writer(join(dirname(target), `.${basename(target)}.${String(process.pid)}.part`), target);
}

function writer(part: string, target: string): Output {
  const giveUp = () => {
    if (part !== target) rmSync(part, { force: true });
  };
  return {
    async write(pieces) {
      try {
        const file = await open(part, 'w');
        try {
          for (const batch of batches(pieces)) await file.appendFile(batch);
          if (part !== target) await file.sync();
        } finally {
          await file.close();
        }
        if (part !== target) await rename(part, target);
      } catch (error) {
        giveUp();
        throw error;
      }
    },
    giveUp,
  };
}

function statOf(path: string): Stats | null {
  return statSync(path, { throwIfNoEntry: false }) ?? null;
}

const samePlace = (a: Stats, b: Stats | null) => b !== null && a.ino === b.ino && a.dev === b.dev;
