import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright';
import { describe, expect, it } from 'vitest';
import { ownCopy } from './own-copy.ts';
import { atRest, percentOf, plain, rowOf, savedCopy } from './visit.ts';

/** A copy of the built page, so that a newer version can be put in its place. */
const site = ownCopy(4273, 400);

const saved = (page: Page) => page.locator('header .saved');

/** A first visit, until the page is on the device. */
async function visited(): Promise<Page> {
  const { browser, url } = site();
  const context = await browser.newContext({ reducedMotion: 'reduce' });
  const page = await context.newPage();
  page.setDefaultTimeout(55_000);
  await page.goto(url);
  await saved(page).filter({ hasText: 'opens without a connection' }).waitFor();
  return page;
}

/** Types another number of flowers into the second generation of plan B, and waits until it is kept. */
async function flowers(page: Page, number: string): Promise<void> {
  await rowOf(page, 'B', 1).click();
  await page.getByRole('textbox', { name: 'Flowers each spring' }).fill(number);
  await saved(page)
    .filter({ hasText: /saved on this device/ })
    .waitFor();
}

describe('without a connection', () => {
  it('the page opens, edits, runs, saves and loads anew after one visit', async () => {
    const page = await visited();
    await page.context().setOffline(true);
    await page.reload();
    await atRest(page);
    const before = await percentOf(page, 'A');
    expect(before).toBeGreaterThan(0);
    await flowers(page, '37');
    await atRest(page);
    const copy = await savedCopy(page);
    expect(copy).toContain('"flowers": 37');
    await page.reload();
    await atRest(page);
    expect(await savedCopy(page)).toBe(copy);
    // Pages that come in pieces, and the threads of questions, are on the device as well.
    for (const address of ['have', 'do', 'pay', 'mine', 'start']) {
      await page.goto(`${site().url}#/${address}`);
      await page.getByRole('heading', { level: 1 }).waitFor();
    }
    await page.context().close();
  });

  it('a newer version is offered in words, waits while somebody edits, and comes when it is wanted, with the edit saved', async () => {
    const page = await visited();
    await page.reload();
    await atRest(page);
    await newVersion();
    await page.reload();
    const offer = page.locator('oo-newer');
    await offer.getByText('A newer version of Orchard Odds is there.').waitFor();
    expect(await page.title()).toBe('Orchard Odds');
    await flowers(page, '41');
    expect(await page.title()).toBe('Orchard Odds');
    await Promise.all([page.waitForEvent('load'), offer.getByRole('button', { name: 'Take it now' }).click()]);
    await page.waitForFunction(() => document.title === 'Orchard Odds, newer');
    await atRest(page);
    expect(plain(await page.locator('header').textContent())).toContain('saved on this device');
    expect(await savedCopy(page)).toContain('"flowers": 41');
    await page.context().close();
  });
});

/** The page with another title, and the list of what belongs to it with another stamp, as a build would make them. */
async function newVersion(): Promise<void> {
  const { dist } = site();
  const index = join(dist, 'index.html');
  await writeFile(index, (await readFile(index, 'utf8')).replace('<title>Orchard Odds</title>', '<title>Orchard Odds, newer</title>'));
  const worker = join(dist, 'sw.js');
  const text = await readFile(worker, 'utf8');
  const stamped = text
    .replace(/(url:"index\.html",revision:")[0-9a-f]+/, '$10123456789abcdef')
    .replace(/(revision:")[0-9a-f]+(",url:"index\.html")/, '$10123456789abcdef$2');
  expect(stamped).not.toBe(text);
  expect(await readdir(dist)).toContain('manifest.webmanifest');
  await writeFile(worker, stamped);
}
