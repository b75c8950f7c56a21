import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const TOP = fileURLToPath(new URL('../..', import.meta.url));

export const read = (path: string): string => readFileSync(join(TOP, path), 'utf8');

/** Names that git does not keep either, at any depth. */
const LEFT_OUT = new Set([
  '.git',
  ...read('.gitignore')
    .split('\n')
    .filter((line) => line !== '' && !line.includes('*')),
]);

function filesIn(folder: string): string[] {
  return readdirSync(join(TOP, folder), { withFileTypes: true }).flatMap((entry) => {
    if (LEFT_OUT.has(entry.name) || entry.name.endsWith('.log')) return [];
    const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
    return entry.isDirectory() ? filesIn(path) : [path];
  });
}

/** Every file of the project, as paths from its top; found without git, which a fresh machine need not have. */
export const files: readonly string[] = filesIn('').sort();

const folders = new Set(files.flatMap((file) => file.split('/').map((_, i, parts) => parts.slice(0, i + 1).join('/'))));

/** Whether a file or folder of that path belongs to the project. */
export const exists = (path: string): boolean => folders.has(path.replace(/^\.\//, '').replace(/\/$/, ''));

export const documents: readonly string[] = files.filter((file) => file.endsWith('.md'));
