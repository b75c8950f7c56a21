import { describe, expect, it } from 'vitest';
import { axeFaults } from './axe.ts';
import { visits } from './visit.ts';

/** Pages and dialogs as they open are looked at in everywhere.test.ts. */
const visit = visits({ futures: 400 });
const WIDTHS = [1440, 390] as const;

describe('axe-core finds no fault', () => {
  it.each(WIDTHS)('in any part of the numbers the answers rest on (%i px)', { timeout: 300_000 }, async (width) => {
    const page = await visit({ width, untilRest: false });
    await page.getByRole('link', { name: 'What have I got?' }).click();
    const sections = page.locator('oo-have oo-orchard-panel details.section');
    await sections.first().waitFor();
    const count = await sections.count();
    expect(count).toBeGreaterThanOrEqual(10);
    for (let i = 0; i < count; i += 1) {
      const section = sections.nth(i);
      const summary = section.locator('> summary');
      const name = (await summary.textContent())?.trim();
      if ((await section.getAttribute('open')) === null) await summary.click();
      // Drawn once it is unfolded: a section of settings has a form, a list the button that adds an entry.
      await section.locator('oo-form, .buttons button').first().waitFor();
      const entry = section.locator('details.entry > summary').first();
      if ((await entry.count()) > 0) {
        await entry.click();
        await section.locator('oo-form').first().waitFor();
      }
      expect(await axeFaults(page), name).toEqual([]);
      await summary.click();
    }
  });
});
