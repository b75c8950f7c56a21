import type { Browser, Locator, Page } from 'playwright';

/** A part of a page that the guide shows. */
interface Part {
  readonly name: string;
  /** What stands behind the address of the page. */
  readonly address: string;
  /** The element that is drawn, with a little paper round it. */
  readonly at: (page: Page) => Locator;
  /** Makes ready what the part waits for. */
  readonly ready?: (page: Page) => Promise<void>;
}

/** The finished answer to a question: its method stands under it, and nothing is on its way any more. */
async function answered(section: Locator): Promise<void> {
  await section.scrollIntoViewIfNeeded();
  await section.locator('details.method').waitFor({ timeout: 120_000 });
  await section.locator('.state', { hasNotText: /\S/ }).waitFor({ timeout: 120_000, state: 'attached' });
}

const PARTS: readonly Part[] = [
  { name: 'guide-boughs', address: '#/likely', at: (page) => page.locator('oo-lanes') },
  { name: 'guide-tray', address: '#/have', at: (page) => page.locator('oo-tray .tray, oo-tray').first() },
  {
    name: 'guide-graft',
    address: '#/pay',
    at: (page) => page.locator('oo-graft-map').first(),
    ready: (page) => answered(page.locator('oo-pay-graft')),
  },
  { name: 'guide-sheet', address: '#/tell', at: (page) => page.locator('oo-sheet') },
];

/**
 * Draws what the guide shows, each in a page of its own.
 * @param open opens the address behind `url`, with all futures counted
 * @param save takes the picture
 */
export async function drawGuide(
  browser: Browser,
  url: string,
  open: (browser: Browser, url: string, width: number, scheme: 'light') => Promise<Page>,
  save: (name: string, part: Locator) => Promise<void>,
): Promise<void> {
  for (const { name, address, at, ready } of PARTS) {
    const page = await open(browser, url, 1440, 'light');
    await page.goto(`${url}${address}`);
    const part = at(page);
    await part.waitFor();
    await ready?.(page);
    await part.scrollIntoViewIfNeeded();
    await page.waitForTimeout(500);
    await save(name, part);
    await page.close();
  }
}
