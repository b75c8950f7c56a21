import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';

const dist = fileURLToPath(new URL('../../dist/', import.meta.url));
const built = (path: string): string => readFileSync(`${dist}${path}`, 'utf8');
const squeezed = (path: string): number => gzipSync(built(path), { level: 9 }).length;

/** What index.html asks for at once: its scripts, their modules and its styles. */
const named = [...built('index.html').matchAll(/(?:src|href)="\.\/(assets\/[^"]+\.(?:js|css))"/g)].map(([, path = '']) => path);
/** The thread that runs futures starts with the page; it is a build of its own. Those for questions and for the log start when they are wanted. */
const running = readdirSync(`${dist}assets`)
  .filter((name) => /^browser-host-.*\.js$/.test(name))
  .map((name) => `assets/${name}`);

describe('what a first visit loads before its pictures', () => {
  it('is all that the page and its first thread are made of', () => {
    expect(named.filter((path) => path.endsWith('.css'))).toHaveLength(1);
    expect(named.filter((path) => path.endsWith('.js')).length).toBeGreaterThan(3);
    expect(running).toHaveLength(1);
    // No module that the entry imports is left out of the count.
    for (const path of named.filter((name) => name.endsWith('.js')))
      for (const [, imported = ''] of built(path).matchAll(/(?:from|import)\s*"\.\/([\w.-]+\.js)"/g)) expect(named).toContain(`assets/${imported}`);
  });

  it('is at most 250 KB compressed, fonts aside', () => {
    const sizes = Object.fromEntries([...named, ...running].map((path) => [path, squeezed(path)]));
    const total = Object.values(sizes).reduce((sum, size) => sum + size, 0);
    expect(total, JSON.stringify(sizes, null, 1)).toBeLessThanOrEqual(250_000);
    // Not a page that failed to build.
    expect(total).toBeGreaterThan(50_000);
  });
});
