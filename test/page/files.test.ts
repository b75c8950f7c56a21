import type { Page } from 'playwright';
import { describe, expect, it } from 'vitest';
import { openFile, plain, planNames, rowOf, savedCopy, visits } from './visit.ts';

const visit = visits({ futures: 400 });

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
    await elsewhere.getByRole('banner').getByText('pears.json is open, as one of “My programmes”').waitFor();
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

const DAMAGED: readonly (readonly [name: string, damage: (good: string) => string])[] = [
  ['cut-off.json', (good) => good.slice(0, 2000)],
  ['letter.json', () => 'Dear Anna, the pears are ripe.'],
  ['list.json', () => '[1, 2, 3]'],
  ['empty.json', () => ''],
  ['later-version.json', (good) => good.replace(/"version": \d+/, '"version": 999')],
  ['without-plans.json', (good) => good.replace('"plans":', '"plants":')],
  ['year-in-letters.json', (good) => good.replace('"startYear": 2027', '"startYear": "soon"')],
  ['too-large.json', (good) => good + ' '.repeat(5_100_000)],
];

describe('a file that is none of ours', () => {
  it('is refused in words, and changes nothing', async () => {
    const page = await visit({ untilRest: false });
    const before = await savedCopy(page);
    const alert = page.getByRole('alert');
    for (const [name, damage] of DAMAGED) {
      const damaged = damage(before);
      expect(damaged, name).not.toBe(before);
      await openFile(page, name, damaged);
      await alert.filter({ hasText: name }).waitFor();
      const [first, ...why] = await alert.locator('p').allTextContents();
      expect(first).toBe(`“${name}” was not opened. Nothing was changed.`);
      expect(plain(why), name).toMatch(/^\S.{10,}[.]$/);
      expect(plain(why), name).not.toMatch(/undefined|null|NaN|\[object|Zod|JSON\.parse/);
      expect(await savedCopy(page), name).toBe(before);
      expect(await page.getByRole('banner').getByRole('button', { name: 'Undo' }).isDisabled(), name).toBe(true);
      await alert.getByRole('button', { name: 'Close' }).click();
      expect(await alert.count(), name).toBe(0);
    }
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
    expect(await savedCopy(page)).toBe(broken);
    await openFile(page, 'mended.json', example);
    await page.getByRole('banner').getByText('mended.json is open').waitFor();
    expect(await page.locator('.problems').count()).toBe(0);
    expect(await page.locator('oo-lanes[stale]').count()).toBe(0);
    expect(await savedCopy(page)).toBe(example);
  });
});
