import type { Locator, Page } from 'playwright';
import { describe, expect, it } from 'vitest';
import { plain, planLane, planNames, rowOf, savedCopy, visits } from './visit.ts';

const visit = visits({ futures: 400 });
const undo = (page: Page) => page.getByRole('banner').getByRole('button', { name: 'Undo' });
const toMend = (page: Page) => page.getByText('To mend before it can run again.');
const section = (page: Page, title: string) => page.locator('oo-orchard-panel details.section', { has: page.locator(`> summary:has-text("${title}")`) });

async function unfold(details: Locator): Promise<Locator> {
  if ((await details.getAttribute('open')) === null) await details.locator('> summary').click();
  return details;
}

async function removeEntry(page: Page, title: string, name: string): Promise<void> {
  const entry = section(page, title).locator('details.entry', { has: page.locator('> summary', { hasText: name }) });
  await unfold(entry.first());
  await page.getByRole('button', { name: `Remove ${name}` }).click();
}

describe('what nobody should do, but somebody will', () => {
  it('taking out a tree that plans use, and every cross entry, is told in words, and undo mends it', async () => {
    const page = await visit({ untilRest: false });
    const before = await savedCopy(page);
    await page.getByRole('link', { name: 'What have I got?' }).click();
    // Unfolded from the start.
    await section(page, 'Trees').locator('details.entry').first().waitFor();
    await removeEntry(page, 'Trees', 'Old Hedgerow');
    await toMend(page).waitFor();
    expect(await page.locator('.problems li').count()).toBeGreaterThanOrEqual(4);
    await undo(page).click();
    await toMend(page).waitFor({ state: 'detached' });
    expect(await savedCopy(page)).toBe(before);

    await unfold(section(page, 'Crosses between kinds'));
    for (const name of ['pear × quince', 'back to the pear', 'pear × pear']) await removeEntry(page, 'Crosses between kinds', name);
    await toMend(page).waitFor();
    await page.getByRole('link', { name: 'What is likely?' }).click();
    expect(await planNames(page)).toHaveLength(4);
    await page.getByText('from before your last change').first().waitFor();
    for (let step = 0; step < 3; step += 1) await undo(page).click();
    await toMend(page).waitFor({ state: 'detached' });
    expect(await savedCopy(page)).toBe(before);
  });

  it('the last tree cannot be taken out', async () => {
    const page = await visit({ untilRest: false });
    await page.getByRole('link', { name: 'What have I got?' }).click();
    // Unfolded from the start.
    await section(page, 'Trees').locator('details.entry').first().waitFor();
    for (const name of ['Saffron Bell', 'Mill Quince']) await removeEntry(page, 'Trees', name);
    const before = await savedCopy(page);
    await removeEntry(page, 'Trees', 'Old Hedgerow');
    await page.getByRole('alert').waitFor();
    expect(await savedCopy(page)).toBe(before);
  });

  it('a last year before the first, and a hundred and fifty years on, are told in words; the last picture stays', async () => {
    const page = await visit();
    const answer = await page.getByRole('heading', { level: 1 }).textContent();
    await page.getByRole('link', { name: 'What have I got?' }).click();
    await unfold(section(page, 'Goal, years'));
    const last = page.getByRole('textbox', { name: 'Your last judging year' });
    await last.fill('2020');
    await page.getByText('lies before the first spring').first().waitFor();
    expect(await last.getAttribute('aria-invalid')).toBe('true');
    await last.fill('3000');
    await page.getByText('more than 150 years').first().waitFor();
    await page.getByRole('link', { name: 'What is likely?' }).click();
    await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent()).toBe(answer);
    await undo(page).click();
    await toMend(page).waitFor({ state: 'detached' });
  });

  it('no flowers are told in words; a million flowers are as many as the tree has', async () => {
    const page = await visit({ untilRest: false });
    await rowOf(page, 'B').click();
    const flowers = page.getByRole('textbox', { name: 'Flowers each spring' });
    await flowers.fill('0');
    await page.getByText('crosses no flowers').first().waitFor();
    expect(await flowers.getAttribute('aria-invalid')).toBe('true');
    await flowers.fill('1000000');
    await toMend(page).waitFor({ state: 'detached' });
    await expect.poll(async () => plain(await rowOf(page, 'B').textContent())).toMatch(/: 300 flowers,/);
  });

  it('eight plans are the most; a ninth is not offered', async () => {
    const page = await visit({ untilRest: false });
    const patterns = page.locator('section.patterns button');
    for (const mark of ['E', 'F', 'G', 'H']) {
      await patterns.first().click();
      await planLane(page, mark).waitFor();
    }
    for (const pattern of await patterns.all()) expect(await pattern.isDisabled()).toBe(true);
    expect(await page.getByRole('button', { name: 'Copy plan' }).isDisabled()).toBe(true);
    expect(await page.locator('oo-lanes h2').textContent()).toMatch(/^Eight ways/);
  });

  it('names in letters of all kinds are kept as they are, and harm nothing', async () => {
    const page = await visit({ untilRest: false });
    await planLane(page, 'A').locator('button.plan-name').click();
    const name = page.locator('.plan-panel').getByRole('textbox', { name: 'Name' });
    for (const text of [
      '🍐🍏 👩‍🌾',
      '<b onclick="x()">Pear</b> & “quince”',
      'груша × айва',
      'شجرة',
      'Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamter',
    ]) {
      await name.fill(text);
      await expect.poll(async () => (await planNames(page))[0]).toBe(text);
      expect(await name.inputValue()).toBe(text);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth), text).toBeLessThanOrEqual(0);
      expect(JSON.parse(await savedCopy(page))).toMatchObject({ plans: [{ name: text }, {}, {}, {}] });
    }
    for (const text of ['', '   ', 'x'.repeat(81)]) {
      await name.fill(text);
      expect(await name.getAttribute('aria-invalid'), text).toBe('true');
      expect(await name.inputValue()).toBe(text);
      expect((await planNames(page))[0]).toMatch(/^Donau/);
    }
  });
});
