import { expect, it } from 'vitest';
import { smallTargets } from '../browser/targets.ts';
import { axeFaults } from './axe.ts';
import { openMenu, visits } from './visit.ts';

const visit = visits({ futures: 400 });
const PARTS = ['Guide', 'Twenty questions, answered', 'The model, with every formula'] as const;

it.each([
  { width: 1440, colorScheme: 'light' },
  { width: 390, colorScheme: 'dark' },
] as const)('the guide is read in the app: no fault that axe-core knows, $width px, $colorScheme', { timeout: 120_000 }, async (look) => {
  const page = await visit({ ...look, untilRest: false });
  await openMenu(page);
  await page.getByRole('link', { name: 'Guide', exact: true }).click();
  await page.getByRole('heading', { level: 1, name: 'A guide for breeders' }).waitFor();
  for (const name of PARTS) {
    await page.locator('oo-guide').getByRole('link', { name, exact: true }).first().click();
    await page.locator(`oo-guide .parts [aria-current]`, { hasText: name }).waitFor();
    expect(await axeFaults(page), name).toEqual([]);
  }
});

it('fits 320 px, leads to headings by links and by address, and moves the focus there', { timeout: 120_000 }, async () => {
  const page = await visit({ width: 320, height: 700, untilRest: false });
  await page.evaluate(() => (location.hash = '#/guide/answers/19-how-do-i-keep-the-only-tree-from-dying-on-me'));
  const heading = page.getByRole('heading', { name: '19. How do I keep the only tree from dying on me?' });
  await heading.waitFor();
  await expect.poll(async () => (await heading.boundingBox())?.y ?? -1).toBeLessThan(120);
  expect(await heading.evaluate((element) => (element.getRootNode() as ShadowRoot).activeElement === element)).toBe(true);
  for (const name of PARTS) {
    await page.locator('oo-guide .parts').getByRole('link', { name, exact: true }).click();
    await page.locator('oo-guide .parts [aria-current]', { hasText: name }).waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth), name).toBe(320);
  }
  await page.getByText('On this page').click();
  expect(await smallTargets(page, 44, 'oo-app')).toEqual([]);
  await page.locator('oo-guide .contents').getByRole('link', { name: '15. Questions' }).click();
  await expect.poll(async () => (await page.getByRole('heading', { name: '15. Questions' }).boundingBox())?.y ?? -1).toBeLessThan(120);
});
