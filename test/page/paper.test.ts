import { describe, expect, it } from 'vitest';
import { smallTexts, textOverlaps } from '../browser/overlaps.ts';
import { planLane, visits } from './visit.ts';

const visit = visits({ futures: 400 });
/** A4 inside margins of 15 mm, at 96 px an inch. */
const A4_WIDTH = Math.round(((210 - 30) / 25.4) * 96);

describe('on paper', () => {
  it('stand the answer, the boughs and the cautions, and nothing to press', async () => {
    const page = await visit();
    await page.setViewportSize({ width: A4_WIDTH, height: 1000 });
    // Longer than two lines on paper.
    await planLane(page, 'A').locator('button.plan-name').click();
    await page.locator('.plan-panel').getByRole('textbox').nth(1).fill('Seed gathered under Old Hedgerow. '.repeat(8));
    await page.keyboard.press('Tab');
    await planLane(page, 'A').locator('.note', { hasText: 'Hedgerow. Seed' }).waitFor();
    await page.emulateMedia({ media: 'print' });
    await page.waitForTimeout(300);
    for (const hidden of ['header .tools', 'nav', 'section.patterns', 'oo-orchard-panel', '.skip'])
      expect(await page.locator(hidden).first().isVisible(), hidden).toBe(false);
    const pressable = await page
      .locator('button, summary, select, input')
      .evaluateAll((all) => all.filter((each) => each.checkVisibility() && !each.matches('.row, .plan-name')).map((each) => each.textContent.trim()));
    expect(pressable).toEqual([]);
    expect(await page.getByRole('heading', { level: 1 }).isVisible()).toBe(true);
    for (const lane of await page.locator('oo-lanes .lane').all()) {
      const picture = await lane.locator('svg.lane-picture').boundingBox();
      expect(picture?.width).toBeGreaterThan(400);
      expect(await lane.locator('svg.lane-picture path').count()).toBeGreaterThan(0);
    }
    const cut = await page.locator('oo-lanes .note').evaluateAll((notes) => notes.filter((note) => note.scrollHeight > note.clientHeight + 1).length);
    expect(cut, 'notes cut short').toBe(0);
    for (const words of ['planning aid, not a promise', 'release cyanide', 'plant-health authority', 'owner’s licence', 'Grafting knives cut'])
      expect(await page.getByText(words).isVisible(), words).toBe(true);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
    expect(await textOverlaps(page)).toEqual([]);
    expect(await smallTexts(page, 15)).toEqual([]);
  });

  it('takes at most six pages of A4', async () => {
    const page = await visit();
    const pdf = (await page.pdf({ format: 'A4', printBackground: false, margin: { top: '15mm', bottom: '15mm', left: '15mm', right: '15mm' } })).toString(
      'latin1',
    );
    const pages = pdf.match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0;
    expect(pages).toBeGreaterThan(0);
    expect(pages).toBeLessThanOrEqual(6);
  });
});
