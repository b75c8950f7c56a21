import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { z } from 'zod';
import type { Work } from './kernel.ts';
import { compareSpeeds, type Comparison } from './ratio.ts';
import { timed } from './speed.ts';

const KERNEL = 'sims/bench/kernel.ts';
const PAIRS = 30;
const WARM_UP = 200;

interface Earlier {
  readonly ref: string;
  readonly commit: string;
}

export interface Against extends Comparison, Earlier {}

/**
 * Times this state of the project against an earlier commit in one process, taking turns, so that what else the machine does falls on both.
 * @param top the project's folder
 * @param earlier the commit, as the caller named it and in full
 * @param file programme, from the top
 * @param futures in all, for each side
 * @throws Error when the commit cannot be built, or cannot read the programme
 */
export async function against(top: string, { ref, commit }: Earlier, file: string, plans: number, futures: number): Promise<Against> {
  const folder = mkdtempSync(join(tmpdir(), 'orchard-odds-bench-'));
  const tree = join(folder, 'then');
  const clear = () => {
    git(top, 'worktree', 'remove', '--force', tree);
    rmSync(folder, { recursive: true, force: true });
  };
  process.once('exit', clear);
  try {
    git(top, 'worktree', 'add', '--detach', '--quiet', tree, commit);
    symlinkSync(join(top, 'node_modules'), join(folder, 'node_modules'));
    cpSync(join(top, KERNEL), join(tree, KERNEL));
    const text = readFileSync(join(top, file), 'utf8');
    const then = await workOf(
      tree,
      join(folder, 'built-then'),
      readableThen(text, () => readFileSync(join(tree, file), 'utf8')),
    );
    const now = await workOf(top, join(folder, 'built-now'), text);
    return { ref, commit, ...takeTurns(now, then, plans, futures) };
  } finally {
    process.removeListener('exit', clear);
    clear();
  }
}

/** The programme as the earlier state can read it: its own file, where the two differ in nothing but the version of the format. */
function readableThen(now: string, readThen: () => string): string {
  const said = (text: string): string => {
    const { version: _, units: _units, ...rest } = z.record(z.string(), z.unknown()).parse(JSON.parse(text));
    return JSON.stringify(rest);
  };
  try {
    const then = readThen();
    return said(then) === said(now) ? then : now;
  } catch {
    // The file is younger than that commit.
    return now;
  }
}

function takeTurns(now: Work, then: Work, plans: number, futures: number): Comparison {
  for (const work of [now, then, now, then]) work(0, WARM_UP);
  const length = Math.max(1, Math.ceil(futures / PAIRS));
  const pairs = Array.from({ length: PAIRS }, (_, pair) => {
    const stretch = (work: Work) => timed(work, plans, pair * length, length);
    // Who goes first changes, so that neither always finds the other's memory to clear.
    if (pair % 2 === 0) {
      const first = stretch(now);
      return { now: first, then: stretch(then) };
    }
    const first = stretch(then);
    return { now: stretch(now), then: first };
  });
  return compareSpeeds(pairs);
}

const kernelSchema = z.object({ prepare: z.custom<(text: string) => Work>((value) => typeof value === 'function') });

/** Builds the engine of a state of the project, the same way for each. */
async function workOf(tree: string, folder: string, text: string): Promise<Work> {
  const { build } = await import('vite');
  await build({
    root: join(tree, 'src'),
    configFile: false,
    logLevel: 'error',
    build: {
      ssr: join(tree, KERNEL),
      outDir: folder,
      emptyOutDir: true,
      copyPublicDir: false,
      target: 'es2022',
      rolldownOptions: { output: { entryFileNames: 'kernel.mjs' } },
    },
  });
  const module: unknown = await import(pathToFileURL(join(folder, 'kernel.mjs')).href);
  return kernelSchema.parse(module).prepare(text);
}

/** @throws Error with a sentence when there is no such commit */
export function commitOf(top: string, ref: string): string {
  try {
    return git(top, 'rev-parse', '--verify', '--quiet', '--end-of-options', `${ref}^{commit}`).trim();
  } catch {
    throw new Error(`Git knows no commit “${ref}” here.`);
  }
}

const git = (top: string, ...argv: string[]) => execFileSync('git', argv, { cwd: top, encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
