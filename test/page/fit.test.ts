import type { Page } from 'playwright';
import { describe, expect, it } from 'vitest';
import { smallTexts, textOverlaps } from '../browser/overlaps.ts';
import { smallTargets } from '../browser/targets.ts';
import { axeFaults } from './axe.ts';
import { atRest, planLane, rowOf, visits } from './visit.ts';

const visit = visits({ futures: 400 });
/** Phones, a small tablet, a desk: one page is made wider and narrower; that it opens at each width is seen by the tests of single pages. */
const WIDTHS = [320, 390, 1024, 1440] as const;
/** So high that the bar of an open row, which stays at the window's lower edge, lies on nothing. */
const HIGH = 20_000;
const sideways = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);

/** All that must hold in every window, whatever is open. What axe knows of a page as it opens is looked for in everywhere.test.ts. */
async function expectFits(page: Page, state: string, axeAt: readonly number[] = []): Promise<void> {
  await page.evaluate(() => document.fonts.ready);
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: HIGH });
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    const where = `${state}, ${String(width)} px`;
    expect(await sideways(page), `scrolls sideways, ${where}`).toBeLessThanOrEqual(0);
    expect(await textOverlaps(page), `texts on texts, ${where}`).toEqual([]);
    expect(await smallTexts(page), `texts below 16 px, ${where}`).toEqual([]);
    if (width < 700) expect(await smallTargets(page, 44), `targets below 44 px, ${where}`).toEqual([]);
    if (axeAt.includes(width)) expect(await axeFaults(page), where).toEqual([]);
  }
}

describe('the page', () => {
  it('fits every window', { timeout: 180_000 }, async () => {
    const page = await visit({ width: 320, height: HIGH });
    await expectFits(page, 'first sight');
    for (const [mark, generation] of [
      ['B', 1],
      ['D', 0],
    ] as const) {
      await rowOf(page, mark, generation).click();
      await page.locator('oo-row-settings').waitFor();
      await expectFits(page, `row ${mark} open`);
    }
    await planLane(page, 'B').locator('button.plan-name').click();
    await expectFits(page, 'plan open');
    await page.locator('oo-more-pictures summary').first().click();
    await page.locator('oo-diary').waitFor();
    for (const table of await page.locator('details.data > summary').all()) await table.click();
    await expectFits(page, 'all pictures and tables unfolded');
  });

  it('fits every window on the other pages, with no fault that axe knows in any section unfolded', { timeout: 240_000 }, async () => {
    const page = await visit({ height: HIGH, untilRest: false });
    await page.getByRole('link', { name: 'What could I do?' }).click();
    await atRest(page);
    await expectFits(page, 'What could I do?');
    await rowOf(page, 'D').click();
    await expectFits(page, 'What could I do?, row open');
    await page.getByRole('link', { name: 'What have I got?' }).click();
    await page.locator('oo-tray').waitFor();
    const sections = await page.locator('oo-orchard-panel details.section').all();
    expect(sections.length).toBeGreaterThanOrEqual(10);
    for (const section of sections) {
      const summary = section.locator('> summary');
      if ((await section.getAttribute('open')) === null) await summary.click();
      // Drawn once it is unfolded: a section of settings has a form, a list the button that adds an entry.
      await section.locator('oo-form, .buttons button').first().waitFor();
      const entries = await section.locator('details.entry > summary').all();
      for (const entry of entries) await entry.click();
      if (entries.length > 0)
        await section
          .locator('oo-form')
          .nth(entries.length - 1)
          .waitFor();
      await expectFits(page, (await summary.textContent())?.trim() ?? '', [390, 1440]);
      await summary.click();
    }
  });

  it('follows a window that is made narrow and wide again, without a fault', async () => {
    const page = await visit({ untilRest: false });
    await rowOf(page, 'B').click();
    for (const width of [390, 1024, 320, 1440]) {
      await page.setViewportSize({ width, height: 900 });
      await page.waitForTimeout(300);
      expect(await sideways(page), String(width)).toBeLessThanOrEqual(0);
    }
  });
});
