import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright';
import { describe, expect, it } from 'vitest';
import { smallTexts, textOverlaps } from '../browser/overlaps.ts';
import { smallTargets } from '../browser/targets.ts';
import { axeFaults } from './axe.ts';
import { openMenu, openFile, plain, visits } from './visit.ts';

const visit = visits({ futures: 100 });

/** The example of ten seasons with so few futures that the page is soon at rest. */
async function tenSeasons(page: Page): Promise<void> {
  const example = JSON.parse(await readFile('sims/examples/red-pear-ten-seasons.json', 'utf8')) as Record<string, unknown>;
  await openFile(page, 'ten.json', JSON.stringify({ ...example, runs: 120 }));
}

describe('the forecast from what stands', () => {
  it('stands beside the first one, and lets every page count from it until it is undone', async () => {
    const page = await visit({ width: 390, height: 844, untilRest: false });
    await tenSeasons(page);
    // It opens on “What is likely?”, and that closes the menu.
    await page.waitForURL(/#\/likely$/);
    await page.getByRole('banner').getByText('Red pear, ten seasons on').first().waitFor();
    await openMenu(page);
    await page.getByRole('link', { name: 'What has happened?' }).click();
    const today = page.locator('oo-today');
    await today.locator('oo-from-today-picture svg').waitFor();
    expect(plain(await today.locator('ul.said').innerText())).toMatch(
      /D \(Wide cross, rescue graft\): \d times in 10 a proven tree by 2057 from what stands today\. When you began, it was \d in 10/,
    );
    await page.locator('oo-fared-picture svg').waitFor();
    expect(plain(await page.locator('oo-fared .told').innerText())).toMatch(/Of \d+ things that can be told, \d+ came inside/);

    await today.getByText('Let every page count from today').click();
    for (const faults of [await axeFaults(page), await smallTexts(page), await textOverlaps(page), await smallTargets(page, 44)]) expect(faults).toEqual([]);
    await today.getByRole('checkbox').check();
    await openMenu(page);
    await page.getByRole('link', { name: 'What is likely?' }).click();
    const which = page.locator('oo-likely').getByText('Forecast from what stands before spring 2037, by your log.');
    await which.waitFor();
    await page.getByRole('button', { name: 'Undo' }).first().click();
    await which.waitFor({ state: 'detached' });
  });
});
