import { cp, mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser } from 'playwright';
import { preview, type PreviewServer } from 'vite';
import { afterAll, beforeAll } from 'vitest';
import { findBrowser } from '../browser/find-browser.ts';
import { withFewer, WITH_NUMBERS } from './fewer.ts';

/** A copy of the built page on a server of its own. */
export interface OwnCopy {
  readonly browser: Browser;
  /** Folder of the copy. */
  readonly dist: string;
  readonly url: string;
}

/**
 * Gives the tests of a file a copy of the built page that may keep itself on the device and be changed, and a browser to visit it with.
 * @param port that no other file of tests asks for
 * @param futures as in visit.ts
 */
export function ownCopy(port: number, futures: number): () => OwnCopy {
  let server: PreviewServer;
  let copy: OwnCopy;
  beforeAll(async () => {
    const browser = await chromium.launch(await findBrowser());
    const dist = await mkdtemp(join(tmpdir(), 'orchard-odds-'));
    await cp('dist', dist, { recursive: true });
    for (const name of await readdir(join(dist, 'assets'))) {
      const path = join(dist, 'assets', name);
      if (WITH_NUMBERS.test(path)) await writeFile(path, withFewer(path, await readFile(path, 'utf8'), futures));
    }
    server = await preview({ configFile: false, root: dist, logLevel: 'error', build: { outDir: '.' }, preview: { host: '127.0.0.1', port, open: false } });
    copy = { browser, dist, url: server.resolvedUrls?.local[0] ?? '' };
  });
  afterAll(async () => {
    await copy.browser.close();
    await server.close();
    await rm(copy.dist, { recursive: true });
  });
  return () => copy;
}
