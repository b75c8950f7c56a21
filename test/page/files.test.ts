import type { Page } from 'playwright';
import { describe, expect, it } from 'vitest';
import { openFile, plain, planNames, rowOf, savedCopy, visits } from './visit.ts';

const visit = visits();

async function dropFile(page: Page, name: string, text: string): Promise<void> {
  const transfer = await page.evaluateHandle(
    ([file, content]) => {
      const data = new DataTransfer();
      data.items.add(new File([content], file, { type: 'application/json' }));
      return data;
    },
    [name, text] as const,
  );
  await page.dispatchEvent('oo-app', 'dragover', { dataTransfer: transfer });
  await page.getByText('Drop the file to open it').waitFor();
  await page.dispatchEvent('oo-app', 'drop', { dataTransfer: transfer });
}

describe('a saved copy', () => {
  it('opens again as the same document, through “Open” and by dropping it on the page', async () => {
    const page = await visit({ untilRest: false });
    const example = await savedCopy(page);
    await rowOf(page, 'D').click();
    await page.getByRole('textbox', { name: 'Flowers each spring' }).fill('77');
    const copy = await savedCopy(page);
    expect(copy).not.toBe(example);
    const elsewhere = await visit({ untilRest: false });
    await openFile(elsewhere, 'pears.json', copy);
    await elsewhere.getByRole('button', { name: 'Undo' }).and(elsewhere.locator('[title="Undo: opened pears.json"]')).waitFor();
    expect(await savedCopy(elsewhere)).toBe(copy);
    await dropFile(elsewhere, 'example.json', example);
    await expect.poll(() => savedCopy(elsewhere)).toBe(example);
    expect(await elsewhere.getByText('Drop the file to open it').count()).toBe(0);
  });

  it('is named after its title', async () => {
    const page = await visit({ untilRest: false });
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save a copy' }).click()]);
    expect(download.suggestedFilename()).toBe('red-pear-at-the-mill.json');
  });
});

describe('a file that is none of ours', () => {
  it.each([
    ['cut off', (good: string) => good.slice(0, 2000)],
    ['a letter to a friend', () => 'Dear Anna, the pears are ripe.'],
    ['a list of numbers', () => '[1, 2, 3]'],
    ['empty', () => ''],
    ['from a later version', (good: string) => good.replace('"version": 1', '"version": 2')],
    ['without its plans', (good: string) => JSON.stringify({ ...(JSON.parse(good) as object), plans: undefined })],
    ['with a year of letters', (good: string) => good.replace('"startYear": 2027', '"startYear": "soon"')],
    ['larger than 5 MB', (good: string) => good + ' '.repeat(5_100_000)],
  ])('(%s) is refused in words, and changes nothing', async (_, damage) => {
    const page = await visit({ untilRest: false });
    const before = await savedCopy(page);
    await openFile(page, 'pears.json', damage(before));
    const alert = page.getByRole('alert');
    await alert.waitFor();
    const [first, ...why] = await alert.locator('p').allTextContents();
    expect(first).toBe('“pears.json” was not opened. Nothing was changed.');
    expect(plain(why)).toMatch(/^\S.{10,}[.]$/);
    expect(plain(why)).not.toMatch(/undefined|null|NaN|\[object|Zod|JSON\.parse/);
    expect(await savedCopy(page)).toBe(before);
    expect(await page.getByRole('banner').getByRole('button', { name: 'Undo' }).isDisabled()).toBe(true);
    await alert.getByRole('button', { name: 'Close' }).click();
    expect(await alert.count()).toBe(0);
  });
});

describe('a file that contradicts itself', () => {
  it('is opened, says what is to mend, and the picture waits', async () => {
    const page = await visit();
    const example = await savedCopy(page);
    const broken = example.replaceAll('"picksOf": "b1"', '"picksOf": "nobody"');
    await openFile(page, 'pears.json', broken);
    await page.getByText('To mend before it can run again.').waitFor();
    expect(await page.locator('.problems li').count()).toBeGreaterThan(0);
    expect(await page.locator('oo-lanes[stale]').count()).toBe(1);
    expect(await planNames(page)).toHaveLength(4);
    await page.getByRole('banner').getByRole('button', { name: 'Undo' }).click();
    expect(await page.locator('.problems').count()).toBe(0);
    expect(await page.locator('oo-lanes[stale]').count()).toBe(0);
    expect(await savedCopy(page)).toBe(example);
  });
});
