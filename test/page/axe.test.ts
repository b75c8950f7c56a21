import { describe, expect, it } from 'vitest';
import { axeFaults } from './axe.ts';
import { planLane, rowOf, visits } from './visit.ts';

const visit = visits();
const WIDTHS = [1440, 390] as const;
const LOOKS = [{ colorScheme: 'light' }, { colorScheme: 'dark' }, { forcedColors: 'active' }] as const;
const cases = WIDTHS.flatMap((width) => LOOKS.map((look) => ({ width, ...look, look: Object.values(look).join() })));

describe('axe-core finds no fault', () => {
  it.each(cases)(
    'at first sight, with a row, a plan and all pictures open, and on the other pages ($width px, $look)',
    { timeout: 120_000 },
    async ({ look: _, ...options }) => {
      const page = await visit(options);
      expect(await axeFaults(page), 'first sight').toEqual([]);
      await planLane(page, 'B').hover();
      expect(await axeFaults(page), 'a plan pointed at, the others set back').toEqual([]);
      await rowOf(page, 'C').focus();
      expect(await axeFaults(page), 'a row with the focus').toEqual([]);
      await rowOf(page, 'D').click();
      await page.locator('oo-row-settings').waitFor();
      expect(await axeFaults(page), 'row open').toEqual([]);
      await planLane(page, 'B').locator('button.plan-name').click();
      await page.locator('.plan-panel').waitFor();
      expect(await axeFaults(page), 'plan open').toEqual([]);
      await page.locator('oo-more-pictures summary').first().click();
      for (const table of await page.locator('details.data > summary').all()) await table.click();
      expect(await axeFaults(page), 'all pictures and tables unfolded').toEqual([]);
      for (const question of ['What have I got?', 'What could I do?']) {
        await page.getByRole('link', { name: question }).click();
        expect(await axeFaults(page), question).toEqual([]);
      }
    },
  );

  it.each(WIDTHS)('in any part of the numbers the answers rest on (%i px)', { timeout: 300_000 }, async (width) => {
    const page = await visit({ width, untilRest: false });
    await page.getByRole('link', { name: 'What have I got?' }).click();
    const sections = page.locator('oo-orchard-panel details.section');
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
