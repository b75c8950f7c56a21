import type { Page } from 'playwright';
import { describe, expect, it } from 'vitest';
import { smallTexts, textOverlaps } from '../browser/overlaps.ts';
import { smallTargets } from '../browser/targets.ts';
import { atRest, planLane, rowOf, visits } from './visit.ts';

const visit = visits({ futures: 400 });
/** So high that the bar of an open row, which stays at the window's lower edge, lies on nothing. */
const HIGH = 20_000;
const sideways = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);

/** All that must hold at any width, whatever is open. */
async function expectFits(page: Page, width: number, state: string): Promise<void> {
  await page.evaluate(() => document.fonts.ready);
  expect(await sideways(page), `scrolls sideways, ${state}`).toBeLessThanOrEqual(0);
  expect(await textOverlaps(page), `texts on texts, ${state}`).toEqual([]);
  expect(await smallTexts(page), `texts below 16 px, ${state}`).toEqual([]);
  if (width < 700) expect(await smallTargets(page, 44), `targets below 44 px, ${state}`).toEqual([]);
}

describe('the page', () => {
  it.each([320, 390, 1024, 1440])('fits %i px', { timeout: 120_000 }, async (width) => {
    const page = await visit({ width, height: HIGH });
    await expectFits(page, width, 'first sight');
    for (const [mark, generation] of [
      ['B', 1],
      ['D', 0],
    ] as const) {
      await rowOf(page, mark, generation).click();
      await page.locator('oo-row-settings').waitFor();
      await expectFits(page, width, `row ${mark} open`);
    }
    await planLane(page, 'B').locator('button.plan-name').click();
    await expectFits(page, width, 'plan open');
    await page.locator('oo-more-pictures summary').first().click();
    await page.locator('oo-diary').waitFor();
    for (const table of await page.locator('details.data > summary').all()) await table.click();
    await expectFits(page, width, 'all pictures and tables unfolded');
  });

  it.each([320, 390, 1024, 1440])('fits %i px on the other pages, every section unfolded', { timeout: 240_000 }, async (width) => {
    const page = await visit({ width, height: HIGH, untilRest: false });
    await page.getByRole('link', { name: 'What could I do?' }).click();
    await atRest(page);
    await expectFits(page, width, 'What could I do?');
    await rowOf(page, 'D').click();
    await expectFits(page, width, 'What could I do?, row open');
    await page.getByRole('link', { name: 'What have I got?' }).click();
    await page.locator('oo-tray').waitFor();
    for (const section of await page.locator('oo-orchard-panel details.section').all()) {
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
      await expectFits(page, width, (await summary.textContent())?.trim() ?? '');
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
