import { cp, mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Browser, type Page } from 'playwright';
import { preview, type PreviewServer } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { findBrowser } from '../browser/find-browser.ts';
import { smallTexts, textOverlaps } from '../browser/overlaps.ts';
import { smallTargets } from '../browser/targets.ts';
import { axeFaults } from './axe.ts';
import { openFile, plain, savedCopy } from './visit.ts';

let browser: Browser;
let server: PreviewServer;
let dist: string;
let url: string;

beforeAll(async () => {
  browser = await chromium.launch(await findBrowser());
  dist = await mkdtemp(join(tmpdir(), 'orchard-odds-log-'));
  await cp('dist', dist, { recursive: true });
  server = await preview({ configFile: false, root: dist, logLevel: 'error', build: { outDir: '.' }, preview: { host: '127.0.0.1', port: 4283, open: false } });
  url = server.resolvedUrls?.local[0] ?? '';
});

afterAll(async () => {
  await browser.close();
  await server.close();
  await rm(dist, { recursive: true });
});

const batches = z.object({
  log: z.object({ batches: z.array(z.looseObject({ name: z.string(), counts: z.array(z.looseObject({})), trees: z.array(z.looseObject({})) })) }),
});
const logOf = async (page: Page) => batches.parse(JSON.parse(await savedCopy(page))).log.batches;

async function visited(width: number, offline: boolean): Promise<Page> {
  const context = await browser.newContext({
    viewport: { width, height: 844 },
    reducedMotion: 'reduce',
    hasTouch: width < 700,
    ...(offline ? {} : { serviceWorkers: 'block' as const }),
  });
  const page = await context.newPage();
  page.setDefaultTimeout(30_000);
  await page.goto(url);
  if (offline) await page.locator('header .saved').filter({ hasText: 'opens without a connection' }).waitFor();
  return page;
}

async function toLog(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'What has happened?' }).click();
  await page.locator('oo-happened h1').waitFor();
}

/** Chooses by a tap, the way a thumb does. */
const tap = (page: Page, group: string, choice: string) => page.getByRole('group', { name: group }).getByRole('radio', { name: choice, exact: true }).tap();

async function note(page: Page, stage: string, number: string, button: string): Promise<void> {
  await tap(page, 'What did you count?', stage);
  await page.getByRole('textbox', { name: 'How many altogether' }).fill(number);
  await page.getByRole('button', { name: button }).tap();
}

const saved = (page: Page) =>
  page
    .locator('header .saved')
    .filter({ hasText: /saved on this device/ })
    .waitFor();

describe('a season in the orchard, on a phone without a connection', () => {
  it('is entered, undone by name, and all there after the page is loaded anew', { timeout: 120_000 }, async () => {
    const page = await visited(390, true);
    await page.context().setOffline(true);
    await page.reload();
    await toLog(page);
    await page.getByRole('button', { name: 'Add a batch' }).tap();
    await tap(page, 'Seed parent', 'Old Hedgerow');
    await tap(page, 'Pollen', 'Mill Quince');
    await page.getByRole('textbox', { name: 'Name' }).fill('First wide cross');
    await page.getByRole('button', { name: 'Add the batch' }).tap();
    await note(page, 'Flowers pollinated', '400', 'Note 400 flowers pollinated');
    await note(page, 'Ripe fruits', '18', 'Note 18 ripe fruits');
    await note(page, 'Sound seeds', '52', 'Note 52 sound seeds');

    const trees = page.locator('oo-log-trees');
    await trees.getByRole('textbox', { name: 'How many' }).fill('12');
    await trees.getByRole('textbox', { name: 'Tag of the first' }).fill('2031-1-1');
    await trees.getByRole('textbox', { name: 'Block' }).fill('B2');
    await trees.getByRole('button', { name: 'Add 12 trees' }).tap();
    await trees.getByRole('button', { name: '2031-1-4', exact: true }).tap();
    await page.locator('oo-log-tree').getByRole('group', { name: 'Status' }).getByRole('radio', { name: 'culled' }).tap();

    // Undo says what it takes back, beside the thumb and in the header, and takes back that alone.
    await page.getByRole('button', { name: 'Undo: 2031-1-4: culled' }).tap();
    await page.getByRole('button', { name: 'Undo', exact: true }).first().tap();
    expect(await page.getByRole('button', { name: 'Undo', exact: true }).first().getAttribute('title')).toBe('Undo: 52 sound seeds noted in First wide cross');
    await page.getByRole('button', { name: 'Redo', exact: true }).tap();

    await saved(page);
    const before = await savedCopy(page);
    await page.reload();
    await page.locator('oo-happened h1').waitFor();
    expect(await savedCopy(page)).toBe(before);
    const [batch, ...others] = await logOf(page);
    expect(others).toEqual([]);
    expect(batch?.name).toBe('First wide cross');
    expect(batch?.counts).toMatchObject([
      { stage: 'flowers', count: 400 },
      { stage: 'fruits', count: 18 },
      { stage: 'seeds', count: 52 },
    ]);
    expect(batch?.trees).toHaveLength(12);
    expect(batch?.trees.map(({ tag, status }) => [tag, status])).toContainEqual(['2031-1-4', 'alive']);
    expect(plain(await page.locator('oo-happened h1').textContent())).toMatch(
      /^One batch, 400 flowers, 12 seedlings standing, the oldest may bear from \d{4}\.$/,
    );
    await page.context().close();
  });
});

describe('the log of ten seasons', () => {
  it.each([1440, 390, 320])('fits %i px with a batch and a tree open, and axe finds no fault', { timeout: 120_000 }, async (width) => {
    const page = await visited(width, false);
    await openFile(page, 'ten.json', await readFile('sims/examples/red-pear-ten-seasons.json', 'utf8'));
    await page.locator('oo-likely').waitFor();
    await toLog(page);
    await page.setViewportSize({ width, height: 12_000 });
    for (const open of [
      () => Promise.resolve(),
      () => page.getByRole('button', { name: 'First wide cross' }).click(),
      () => page.getByRole('button', { name: '2027-1-2', exact: true }).click(),
    ]) {
      await open();
      await page.evaluate(() => document.fonts.ready);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth), 'scrolls sideways').toBeLessThanOrEqual(0);
      expect(await textOverlaps(page)).toEqual([]);
      expect(await smallTexts(page)).toEqual([]);
      if (width < 700) expect(await smallTargets(page, 44)).toEqual([]);
      expect(await axeFaults(page)).toEqual([]);
    }
    expect(plain(await page.locator('oo-happened h1').textContent())).toMatch(/seedlings standing; \d+ of the \d+ judged have shown red flesh\.$/);
    await page.context().close();
  });
});
