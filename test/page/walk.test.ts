import type { Page } from 'playwright';
import { expect, it } from 'vitest';
import { read } from '../repo/files.ts';
import { atRest, plain, planLane, rowOf, visits } from './visit.ts';

const visit = visits();
const guide = plain(read('docs/guide.md'));
/** What the page says must stand in the guide, word for word. */
const told = (words: string) => expect(guide).toContain(plain(words));
const go = (page: Page, name: string) => page.getByRole('link', { name, exact: true }).click();
const undo = async (page: Page) => {
  await page.getByRole('banner').getByRole('button', { name: 'Undo' }).click();
  await atRest(page);
};
const effect = async (page: Page) => plain(await page.locator('oo-row-settings').getByRole('status').textContent());

it('the walk of the guide goes through, and the page says what the guide says', { timeout: 240_000 }, async () => {
  const page = await visit();

  // Minutes 1 to 4.
  const opening = plain(await page.getByRole('heading', { level: 1 }).textContent());
  expect(opening).toMatch(/^8 times in 10 plan B \(.*\) has a proven tree by 2057; half of all futures get there by 2048\. D \(.*\) is ahead until 2049/);
  told('8 times in 10 plan B has a proven tree by 2057; half of all futures get there by 2048. D is ahead until 2049, but ends at 6 in 10.');
  const laneB = plain(await planLane(page, 'B').textContent());
  expect(laneB).toContain('79 % ± 1½ from 4,000 futures');
  expect(laneB).toContain('your guesses allow 68–89 %');
  const years = page.locator('oo-chance-by-year').getByRole('slider');
  await years.focus();
  for (let key = 0; key < 31 && !((await years.getAttribute('aria-valuetext')) ?? '').includes('2045'); key += 1) await page.keyboard.press('ArrowRight');
  expect(plain(await years.getAttribute('aria-valuetext'))).toMatch(/2045: .*rescue graft 52 %.* brother × sister 9 %/);
  await page.getByText('More pictures').first().click();
  await page.getByRole('heading', { name: 'Why futures fail' }).waitFor();

  // Minutes 5 to 8.
  await rowOf(page, 'D').click();
  for (const [name, text] of [
    ['At age', '8'],
    ['Springs, at most', '2'],
  ] as const) {
    await page.getByRole('textbox', { name }).fill(text);
    await atRest(page);
    told((await effect(page)).replace(/^springs, at most 1 → 2: /, ''));
    await undo(page);
  }
  await page.getByRole('textbox', { name: 'At age' }).fill('1');
  await page.locator('.problems', { hasText: 'weak ones cannot be told' }).first().waitFor();
  // What cannot run has no effect to tell.
  expect(await effect(page)).toBe('at age 3 → 1 month: cannot run: weak ones cannot be told before 2 months.');
  await undo(page);

  // Minutes 9 to 11.
  await go(page, 'What have I got?');
  told((/\d+ estimates/.exec(plain(await page.getByRole('heading', { level: 1 }).textContent())) ?? [''])[0]);
  await page.getByText(/Of twenty seedlings of Old Hedgerow.*Saffron Bell\s+about six/).waitFor();
  await page.locator('oo-have summary', { hasText: 'Crosses between kinds' }).click();
  await page
    .locator('oo-have summary', { hasText: /^\s*pear\s*×\s*pear\s/ })
    .first()
    .click();
  await page.getByRole('group', { name: 'Fruit set' }).first().getByRole('textbox').first().fill('18 of 240');
  await go(page, 'What is likely?');
  await atRest(page);
  const counted = plain(await planLane(page, 'B').textContent());
  const [, percent = 'no chance', allowed = 'nothing'] = /(\d+ %) ±.*?(allow \S+ %)/.exec(counted) ?? [];
  told(`from 79 to ${percent}, and your guesses now ${allowed}`);
  await undo(page);

  // Minutes 12 to 15.
  await go(page, 'Would it pay to…?');
  const graft = page.locator('oo-pay-graft');
  await graft.locator('details.method').waitFor();
  await graft.locator('.state', { hasNotText: /\S/ }).waitFor({ state: 'attached' });
  told((/^Yes, graft\..*?own roots/.exec(plain(await page.locator('oo-pay h1').textContent())) ?? ['nothing'])[0]);
  await go(page, 'What do I tell others?');
  await page.getByRole('button', { name: 'Save as one file' }).waitFor();
  await page.getByRole('button', { name: 'Save a copy' }).waitFor();
});
