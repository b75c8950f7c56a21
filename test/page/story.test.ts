import { deflateSync } from 'node:zlib';
import type { Page } from 'playwright';
import { describe, expect, inject, it } from 'vitest';
import { exampleOf } from '../handout/sample.ts';
import { axeFaults } from './axe.ts';
import { savedNow, titles, typeFlowers } from './device.ts';
import { planLane, savedCopy, visits } from './visit.ts';

const visit = visits({ futures: 400 });
const PEACH = { ...exampleOf('peach-quick'), runs: 200 };
/** Packed by Node’s own zlib and Buffer. */
const storyOf = (document: unknown): string => `#/story/${deflateSync(JSON.stringify(document)).toString('base64url')}`;

async function arrive(page: Page, fragment: string): Promise<void> {
  await page.goto('about:blank');
  await page.goto(`${inject('url')}${fragment}`);
}

describe('a story that comes with a link', () => {
  it('tells in four steps by keyboard on a phone, without a fault that axe knows', { timeout: 120_000 }, async () => {
    const page = await visit({ width: 390, untilRest: false });
    await arrive(page, storyOf(PEACH));
    await page.getByText('Step 1 of 4').waitFor();
    await page.getByRole('heading', { level: 1, name: /Wanted/ }).waitFor();
    await page.getByText(/futures counted on this device/).waitFor({ state: 'detached' });
    const seen: string[] = [];
    for (let step = 1; step <= 4; step += 1) {
      await page.getByText(`Step ${String(step)} of 4`).waitFor();
      seen.push((await page.locator('oo-story main').innerText()).replace(/\s+/g, ' '));
      expect(await axeFaults(page), `step ${String(step)}`).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
      if (step === 4) break;
      await page.getByRole('button', { name: 'Next' }).focus();
      await page.keyboard.press('Enter');
      await expect.poll(() => page.evaluate(() => document.activeElement?.shadowRoot?.activeElement?.shadowRoot?.activeElement?.tagName)).toBe('H1');
    }
    expect(seen[1]).toMatch(/seedlings/);
    expect(seen[2]).toMatch(/of 100 futures we end with nothing/);
    expect(seen[3]).toMatch(/Who keeps .*look for first fruit.*cyanide.*planning aid, not a promise/);
    await page.getByRole('button', { name: 'Back' }).focus();
    await page.keyboard.press('Space');
    await page.getByText('Step 3 of 4').waitFor();
    for (const button of await page.locator('oo-story button').all()) expect((await button.boundingBox())?.height).toBeGreaterThanOrEqual(44);
  });

  it('never takes the place of the own programme, whose results come back with it; a copy is one more', async () => {
    const page = await visit({ untilRest: false });
    await typeFlowers(page, '130');
    await savedNow(page);
    const own = await savedCopy(page);
    await arrive(page, storyOf(PEACH));
    await page.getByRole('heading', { level: 1, name: /Wanted/ }).waitFor();
    await page.getByRole('link', { name: 'Go to my own programmes' }).click();
    await expect.poll(() => titles(page)).toHaveLength(1);
    await page.getByRole('link', { name: 'What is likely?' }).click();
    await planLane(page, 'B').getByText('Brother × sister').first().waitFor();
    expect(await savedCopy(page)).toBe(own);

    await arrive(page, storyOf(PEACH));
    await page.getByRole('button', { name: 'Open as my own copy' }).click();
    await savedNow(page);
    expect(JSON.parse(await savedCopy(page))).toMatchObject({ title: PEACH.title, runs: 200 });
    await page.getByRole('link', { name: 'My programmes' }).click();
    await expect.poll(() => titles(page)).toHaveLength(2);
  });

  it.each([
    ['damaged', '#/story/not-a-programme'],
    ['empty', '#/story/'],
    ['hostile', `#/story/${deflateSync('{"__proto__":{"polluted":1}}').toString('base64url')}`],
    ['of another kind', storyOf([1, 2])],
  ])('and is %s: it says so, and the own stays', async (_, fragment) => {
    const page = await visit({ width: 390, untilRest: false });
    const own = await savedCopy(page);
    await page.evaluate((hash) => (location.hash = hash), fragment);
    await page.getByRole('alert').filter({ hasText: 'The story in this link cannot be read. Your own programmes are untouched.' }).waitFor();
    expect(await page.evaluate(() => Reflect.has(Object.prototype, 'polluted'))).toBe(false);
    await page.getByRole('link', { name: 'Go to my own programmes' }).click();
    await page.locator('oo-mine h1').waitFor();
    expect(await savedCopy(page)).toBe(own);
  });

  it('with text that looks like markup shows it as text', async () => {
    const page = await visit({ width: 390, untilRest: false });
    const nasty = '<img src=x onerror="document.title=1">';
    await arrive(page, storyOf({ ...PEACH, title: nasty, plans: PEACH.plans.map((plan) => ({ ...plan, name: nasty })) }));
    await page.getByRole('heading', { level: 1, name: /Wanted/ }).waitFor();
    await page.getByRole('button', { name: 'Next' }).click();
    await page.locator('oo-story figure svg:visible').waitFor();
    expect(await page.locator('oo-story img').count()).toBe(0);
    expect(await page.title()).toBe('Orchard Odds');
  });
});
