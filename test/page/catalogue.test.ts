import type { Page } from 'playwright';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { axeFaults } from './axe.ts';
import { openFile, plain, savedCopy, visits } from './visit.ts';

const visit = visits({ futures: 400 });
const copySchema = z.object({ kinds: z.array(z.object({ id: z.string() })), traits: z.array(z.object({ id: z.string(), name: z.string() })) });
const kindsOf = async (page: Page): Promise<string[]> => copySchema.parse(JSON.parse(await savedCopy(page))).kinds.map(({ id }) => id);
const undoTitle = (page: Page): Promise<string | null> => page.getByRole('button', { name: 'Undo', exact: true }).first().getAttribute('title');

async function toHave(page: Page): Promise<void> {
  await page.goto(`${page.url().split('#')[0] ?? ''}#/have`);
  await page.locator('oo-from-catalogue h2').waitFor();
}

describe('the catalogue on “What have I got?”', () => {
  it('adds a kind by keyboard as one step that undo names and takes back', async () => {
    const page = await visit({ untilRest: false });
    await toHave(page);
    const before = await savedCopy(page);
    await page.locator('oo-orchard-panel summary', { hasText: /^Kinds/ }).focus();
    await page.keyboard.press('Enter');
    const way = page.getByRole('button', { name: 'Add a kind from the catalogue' });
    await way.focus();
    await page.keyboard.press('Enter');
    // The way leads to the first choice: what is typed now chooses there.
    await page.locator('oo-add-kind select').waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.tagName)).toBe('OO-APP');
    await page.locator('oo-add-kind select:focus').waitFor();
    await page.keyboard.type('apple');
    await page.locator('oo-add-kind .comes').waitFor();
    expect(await axeFaults(page)).toEqual([]);
    const button = page.getByRole('button', { name: 'Add apple' });
    await button.focus();
    await page.keyboard.press('Enter');
    await page.locator('oo-add-kind .done:focus').waitFor();
    expect(plain(await page.locator('oo-add-kind .done').textContent())).toMatch(/^The kinds apple, .* were added\. Undo takes all of it out again\.$/);
    expect(await undoTitle(page)).toBe('Undo: apple added from the catalogue');
    expect(await kindsOf(page)).toEqual(['pear', 'quince', 'pear-quince', 'apple', 'apple-pear-hybrid', 'apple-quince-hybrid']);
    await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
    expect(await savedCopy(page)).toBe(before);
  });

  it('adds a known trait of a kind that is there', async () => {
    const page = await visit({ untilRest: false });
    await toHave(page);
    await page.locator('oo-from-catalogue summary', { hasText: 'Add a known trait' }).click();
    await page.locator('oo-add-trait').getByLabel('Trait').selectOption({ label: 'black spot resistance' });
    await page.locator('oo-add-trait').getByLabel('Old Hedgerow').selectOption({ label: 'shows it' });
    await page.getByRole('button', { name: 'Add black spot resistance' }).click();
    expect(await undoTitle(page)).toBe('Undo: black spot resistance added from the catalogue');
    expect(copySchema.parse(JSON.parse(await savedCopy(page))).traits.at(-1)?.name).toBe('black spot resistance');
    expect(await axeFaults(page)).toEqual([]);
  });
});

/** Counts how often the browser is asked; `granted` is what it answers. */
const asked = (granted: boolean) => `
  window.askedToKeep = Number(sessionStorage.getItem('asked') ?? 0);
  navigator.storage.persist = () => { sessionStorage.setItem('asked', String(++window.askedToKeep)); return Promise.resolve(${String(granted)}); };
  navigator.storage.persisted = () => Promise.resolve(${String(granted)});`;
const times = (page: Page): Promise<unknown> => page.evaluate(() => sessionStorage.getItem('asked'));

describe('whether the browser keeps what is stored', () => {
  it.each([
    [true, 'This browser has promised to keep them when the disk is full.'],
    [false, 'This browser may clear them when the disk is full: save a copy now and then.'],
  ])('it is asked once, after the first edit that is saved, and “My programmes” says what it answered (%s)', async (granted, words) => {
    const page = await visit({ untilRest: false, before: asked(granted) });
    expect(await times(page), 'nothing to keep yet').toBeNull();
    await toHave(page);
    await page.locator('oo-from-catalogue summary', { hasText: 'Add a kind' }).click();
    await page.locator('oo-add-kind select').selectOption('walnut');
    await page.getByRole('button', { name: 'Add walnut' }).click();
    await page
      .getByText(/saved on this device/)
      .first()
      .waitFor();
    await expect.poll(() => times(page)).toBe('1');
    await page.getByRole('button', { name: 'Undo', exact: true }).first().click();
    await page.reload();
    await toHave(page);
    await page.getByRole('button', { name: 'Redo', exact: true }).first().click();
    await page.goto(`${page.url().split('#')[0] ?? ''}#/mine`);
    await page.getByText(words).waitFor();
    expect(await times(page), 'asked once ever').toBe('1');
  });
});

describe('a file that is refused', () => {
  it('names the entries it complains of as the file does', async () => {
    const page = await visit({ untilRest: false });
    const text = (await savedCopy(page)).replace(/"copies": \d+/, '"copies": 99');
    await openFile(page, 'strange.json', text);
    const said = plain(await page.locator('.message').textContent());
    expect(said).toContain('“strange.json” was not opened.');
    expect(said).toMatch(/traits › “red flesh” › rules › “one copy is enough” › .*: must be at most 6\./);
  });
});
