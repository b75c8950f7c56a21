import type { Page } from 'playwright';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { smallTexts, textOverlaps } from '../browser/overlaps.ts';
import { smallTargets } from '../browser/targets.ts';
import { exampleOf } from '../handout/sample.ts';
import { axeFaults } from './axe.ts';
import { ownCopy } from './own-copy.ts';
import { openMenu, openFile, plain, savedCopy, visits } from './visit.ts';

const site = ownCopy(4283, 400);
const visit = visits({ futures: 400 });

const batches = z.object({
  log: z.object({ batches: z.array(z.looseObject({ name: z.string(), counts: z.array(z.looseObject({})), trees: z.array(z.looseObject({})) })) }),
});
const logOf = async (page: Page) => batches.parse(JSON.parse(await savedCopy(page))).log.batches;

/** A phone on which the page has come to rest on the device. */
async function onPhone(): Promise<Page> {
  const { browser, url } = site();
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, reducedMotion: 'reduce', hasTouch: true });
  const page = await context.newPage();
  page.setDefaultTimeout(30_000);
  await page.goto(url);
  await page.locator('header .saved').filter({ hasText: 'opens without a connection' }).waitFor();
  return page;
}

/** The example of ten seasons, with few futures, on the page of its log. */
async function tenSeasons(): Promise<Page> {
  const page = await visit({ untilRest: false });
  await openFile(page, 'ten.json', JSON.stringify({ ...exampleOf('red-pear-ten-seasons'), runs: 300 }));
  // It opens on “What is likely?”, and that closes the menu.
  await page.waitForURL(/#\/likely$/);
  await page.getByRole('banner').getByText('Red pear, ten seasons on').first().waitFor();
  await toLog(page);
  return page;
}

async function toLog(page: Page): Promise<void> {
  await openMenu(page);
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
    const page = await onPhone();
    await page.context().setOffline(true);
    await page.reload();
    await toLog(page);
    // The first batches bring parts of the page before the one that brings tables in: what it says, and the focus, stay.
    const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.getByRole('button', { name: 'Choose a file' }).tap()]);
    await chooser.setFiles({ name: 'old.csv', mimeType: 'text/csv', buffer: Buffer.from('Cross,Year,Flowers\nOld Hedgerow x OP,2019,40\n') });
    await page.getByRole('button', { name: 'Add 1 batch' }).tap();
    await page.locator('oo-log-import .status', { hasText: '1 batch added from old.csv' }).waitFor();
    await page.getByRole('button', { name: 'Undo: 1 batch added from old.csv' }).tap();
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
  it('fits desk and phone with a batch and a tree open, and axe finds no fault', { timeout: 120_000 }, async () => {
    const page = await tenSeasons();
    // What the log teaches is part of the page that has to fit.
    await page.locator('oo-losers section').first().waitFor({ timeout: 60_000 });
    for (const [what, open] of [
      ['as it opens', () => Promise.resolve()],
      ['a batch open', () => page.getByRole('button', { name: 'First wide cross' }).click()],
      ['a tree open', () => page.getByRole('button', { name: '2027-1-2', exact: true }).click()],
    ] as const) {
      await open();
      await page.evaluate(() => document.fonts.ready);
      for (const width of [1440, 390, 320]) {
        const where = `${what}, ${String(width)} px`;
        await page.setViewportSize({ width, height: 12_000 });
        await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
        expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth), `scrolls sideways, ${where}`).toBeLessThanOrEqual(0);
        expect(await textOverlaps(page), where).toEqual([]);
        expect(await smallTexts(page), where).toEqual([]);
        if (width < 700) expect(await smallTargets(page, 44), where).toEqual([]);
        expect(await axeFaults(page), where).toEqual([]);
      }
    }
    expect(plain(await page.locator('oo-happened h1').textContent())).toMatch(/seedlings standing; \d+ of the \d+ judged have shown red flesh\.$/);
  });
});

describe('what the log teaches', () => {
  it('is learned beside the page, taken over at a click, and taken back', { timeout: 120_000 }, async () => {
    const page = await tenSeasons();
    const before = await savedCopy(page);
    const use = page.getByRole('button', { name: 'Use my counts: Fruit set, pear × quince' });
    await use.click({ timeout: 60_000 });
    expect(await savedCopy(page)).toContain('my counts 2027–2029');
    await page.getByRole('button', { name: 'Go back to what it was: Fruit set, pear × quince' }).waitFor({ timeout: 60_000 });
    await page.getByRole('button', { name: 'Undo: my counts used: Fruit set, pear × quince' }).click();
    await use.waitFor();
    expect(await savedCopy(page)).toBe(before);
  });
});
