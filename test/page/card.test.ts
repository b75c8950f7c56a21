import { readFile } from 'node:fs/promises';
import ICAL from 'ical.js';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import type { Page } from 'playwright';
import { describe, expect, it } from 'vitest';
import { axeFaults } from './axe.ts';
import { smallTargets } from '../browser/targets.ts';
import { savedCopy, openFile, visits } from './visit.ts';

const visit = visits({ futures: 400 });
/** Points to the millimetre (an inch is 25.4 mm and 72 points); sizes of paper by ISO 216. */
const PT = 72 / 25.4;
const PAPERS = { A6: [105 * PT, 148 * PT], A5: [148 * PT, 210 * PT] } as const;

async function toCard(page: Page): Promise<void> {
  await page.evaluate(() => (location.hash = '#/tell'));
  await page.locator('oo-card iframe').waitFor();
}

async function saved(page: Page, name: string): Promise<{ readonly name: string; readonly text: string }> {
  const [file] = await Promise.all([page.waitForEvent('download'), page.locator('oo-card').getByRole('button', { name }).click()]);
  return { name: file.suggestedFilename(), text: await readFile(await file.path(), 'utf8') };
}

/** Pages of a card as they print: their size in points, and their words. */
async function printed(page: Page, html: string) {
  const sheet = await page.context().newPage();
  await sheet.setContent(html);
  await sheet.evaluate(() => document.fonts.ready);
  const bytes = await sheet.pdf({ preferCSSPageSize: true });
  await sheet.close();
  const pdf = await getDocument({ data: new Uint8Array(bytes) }).promise;
  return Promise.all(
    Array.from({ length: pdf.numPages }, async (_, at) => {
      const leaf = await pdf.getPage(at + 1);
      const { items } = await leaf.getTextContent();
      const [, , width = 0, height = 0] = leaf.view;
      return {
        width,
        height,
        words: items
          .map((item) => ('str' in item ? item.str : ''))
          .join(' ')
          .replace(/\s+/g, ' '),
      };
    }),
  );
}

describe('the card for the pocket', () => {
  it.each(['A6', 'A5'] as const)(
    'is one page of %s in every season of the busiest plan, with its cautions and lines to write on',
    { timeout: 120_000 },
    async (paper) => {
      const page = await visit();
      await toCard(page);
      const card = page.locator('oo-card');
      await card.locator('select[name=plan]').selectOption({ index: 0 });
      await card.locator('select[name=paper]').selectOption(paper);
      const years = await card
        .locator('select[name=season] option')
        .evaluateAll((all) => all.map((each) => (each instanceof HTMLOptionElement ? each.value : '')));
      let most = 0;
      for (const year of years.filter((_, at) => at % 3 === 0 || at === 16)) {
        await card.locator('select[name=season]').selectOption(year);
        const { name, text } = await saved(page, 'Save the card as a file');
        expect(name).toBe(`red-pear-at-the-mill-a-${year}.html`);
        expect(text).not.toMatch(/<script|https?:|@import|<link|<img/);
        most = Math.max(most, text.match(/class="job"/g)?.length ?? 0);
        const pages = await printed(page, text);
        expect(pages, year).toHaveLength(1);
        const [only] = pages;
        expect(only?.width).toBeCloseTo(PAPERS[paper][0], 0);
        expect(only?.height).toBeCloseTo(PAPERS[paper][1], 0);
        expect(only?.words).toContain(`Season ${year}`);
        expect(only?.words).toMatch(/cyanide.*Knives.*permit.*Made on/s);
        expect(only?.words).toMatch(/Notes|What was seen/);
      }
      expect(most, 'jobs in a busy season').toBeGreaterThanOrEqual(8);
    },
  );

  it('gives the same jobs to a calendar, half a year later in the south', { timeout: 120_000 }, async () => {
    const page = await visit();
    const copy = await savedCopy(page);
    const months = async (where: Page) => {
      await toCard(where);
      await where.locator('oo-card select[name=plan]').selectOption('wide-rescue');
      const { name, text } = await saved(where, 'Save dates for a calendar');
      expect(name).toBe('red-pear-at-the-mill-d-2027.ics');
      const events = new ICAL.Component(ICAL.parse(text) as unknown[]).getAllSubcomponents('vevent').map((part) => new ICAL.Event(part));
      return events.map(({ startDate, summary }) => ({ date: startDate.toString(), summary }));
    };
    const north = await months(page);
    expect(north.map(({ date }) => date)).toEqual(['2027-03-01', '2027-04-01', '2027-05-01', '2027-09-01', '2027-10-01']);
    await openFile(page, 'south.json', copy.replace(/"bloomMonth": 4/, '"bloomMonth": 10'));
    await page.getByRole('banner').getByText('south.json is open').waitFor();
    await toCard(page);
    await page.locator('oo-card').getByText('begins in October').waitFor();
    const south = await months(page);
    expect(south.map(({ date }) => date)).toEqual(['2027-09-01', '2027-10-01', '2027-11-01', '2028-03-01', '2028-04-01']);
    expect(south.map(({ summary }) => summary)).toEqual(north.map(({ summary }) => summary));
    expect(await page.frameLocator('oo-card iframe').getByRole('heading', { level: 1 }).textContent()).toBe('Season 2027/28');
  });

  it.each([1440, 390, 320])('is worked with the keyboard, has no fault, and fits %i px', { timeout: 120_000 }, async (width) => {
    const page = await visit({ width });
    await toCard(page);
    expect(await axeFaults(page)).toEqual([]);
    const card = page.locator('oo-card');
    await card.locator('select[name=plan]').focus();
    // It opens on the plan that the sheet asks for help with: B.
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Tab');
    await page.keyboard.press('ArrowDown');
    await expect.poll(() => page.frameLocator('oo-card iframe').locator('.letter').textContent()).toBe('C');
    await expect.poll(() => page.frameLocator('oo-card iframe').getByRole('heading', { level: 1 }).textContent()).toBe('Season 2028');
    for (const stop of ['select[name=paper]', 'button.main']) {
      await page.keyboard.press('Tab');
      expect(await card.locator(stop).evaluate((each) => each === (each.getRootNode() as ShadowRoot).activeElement), stop).toBe(true);
    }
    expect(await smallTargets(page, 44, 'oo-app')).toEqual([]);
    const frame = await card.locator('.frame').boundingBox();
    expect((frame?.x ?? 0) + (frame?.width ?? Infinity)).toBeLessThanOrEqual(width);
    for (const element of ['oo-card', 'oo-figures']) {
      const wide = await page.locator(element).evaluate((each) => [each.scrollWidth, each.clientWidth]);
      expect(wide[0], element).toBeLessThanOrEqual(wide[1] ?? 0);
    }
    // The card itself is seen whole in its frame.
    const seen = await page
      .frameLocator('oo-card iframe')
      .locator('main')
      .evaluate((main) => [main.scrollHeight - main.clientHeight, main.scrollWidth - main.clientWidth]);
    expect(Math.max(...seen)).toBeLessThanOrEqual(1);
  });
});
