import { readFile } from 'node:fs/promises';
import { chromium, type Browser, type BrowserContext, type BrowserContextOptions, type Locator, type Page } from 'playwright';
import { afterAll, afterEach, beforeAll, expect, inject } from 'vitest';
import { findBrowser } from '../browser/find-browser.ts';
import { withFewer, WITH_NUMBERS } from './fewer.ts';

/** Files of the built page with other numbers in them, so that visits of a file share them. */
const changed = new Map<string, string>();

/** What a visit may differ in from a desk with a wide screen and empty storage. */
export interface VisitOptions extends Pick<BrowserContextOptions, 'colorScheme' | 'forcedColors' | 'serviceWorkers'> {
  readonly width?: number;
  readonly height?: number;
  /** JavaScript that runs before the page's own. */
  readonly before?: string;
  /**
   * The example is visited with so many futures a plan instead of its own 4,000, and guesses are tried with as many fewer: for tests that look
   * at something else, on a machine that has better to do. The page itself is the one that was built.
   */
  readonly futures?: number;
  /** Also when the last futures are counted. */
  readonly untilRest?: boolean;
}

/**
 * Gives the tests of a file one browser, and each visit a fresh profile that keeps nothing of the page for later. After every test: whatever it did, the page must have asked
 * no other host and said nothing on the console.
 */
export function visits(always: Pick<VisitOptions, 'futures'> = {}): (options?: VisitOptions) => Promise<Page> {
  let browser: Browser;
  let noise: string[] = [];
  const open: Page[] = [];
  beforeAll(async () => {
    browser = await chromium.launch(await findBrowser());
  });
  afterAll(() => browser.close());
  afterEach(async () => {
    for (const page of open.splice(0)) await page.context().close();
    const heard = noise;
    noise = [];
    expect(heard, 'console, page errors and requests to other hosts').toEqual([]);
  });
  return async ({ width = 1440, height = 900, before = '', untilRest = true, futures = always.futures, ...options } = {}) => {
    const context = await browser.newContext({ viewport: { width, height }, reducedMotion: 'reduce', serviceWorkers: 'block', ...options });
    if (futures !== undefined) await withFutures(context, futures);
    const page = await context.newPage();
    page.setDefaultTimeout(55_000);
    open.push(page);
    listen(page, (line) => noise.push(line));
    if (before) await page.addInitScript(before);
    await page.goto(inject('url'));
    if (untilRest) await atRest(page);
    else await page.locator('oo-lanes .lane').first().waitFor();
    return page;
  };
}

async function withFutures(context: BrowserContext, futures: number): Promise<void> {
  await context.route(WITH_NUMBERS, async (route) => {
    const url = route.request().url();
    const key = `${String(futures)} ${url}`;
    const body = changed.get(key) ?? withFewer(url, await (await route.fetch()).text(), futures);
    changed.set(key, body);
    await route.fulfill({ body, contentType: 'text/javascript' });
  });
}

function listen(page: Page, hear: (line: string) => void): void {
  const own = new URL(inject('url')).host;
  page.on('console', (message) => {
    // The visit itself forbids the page to keep itself on the device.
    if (message.text() === 'Service Worker registration blocked by Playwright') return;
    if (message.type() === 'error' || message.type() === 'warning') hear(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => hear(`page error: ${error.message}`));
  // A font that is on its way when the page is left is given up by the browser.
  page.on('requestfailed', (request) => request.failure()?.errorText !== 'net::ERR_ABORTED' && hear(`not loaded: ${request.url()}`));
  page.on('request', (request) => {
    const { protocol, host } = new URL(request.url());
    if (protocol.startsWith('http') && host !== own) hear(`other host: ${request.url()}`);
  });
}

/** Waits until all futures of the document are counted, those over the guesses too. */
export async function atRest(page: Page): Promise<void> {
  await page
    .locator('.progress', { hasText: /(\S+) of \1 futures/ })
    .filter({ hasNotText: 'your guesses' })
    .waitFor();
}

export const planLane = (page: Page, mark: string): Locator => page.locator(`oo-lanes .lane[data-mark="${mark}"]`);
export const rowOf = (page: Page, mark: string, generation = 0): Locator => planLane(page, mark).locator('button.row').nth(generation);
/** Percent at the end of a plan's lane. */
export const percentOf = async (page: Page, mark: string): Promise<number> =>
  parseInt(plain(await planLane(page, mark).locator('.percent b').textContent()), 10);
export const planNames = (page: Page): Promise<string[]> =>
  page.locator('oo-lanes .plan-name').evaluateAll((names) => names.map((name) => (name.lastElementChild?.textContent ?? '').replace(/\s+/g, ' ')));

/** Text on one line, with plain spaces. */
export const plain = (text: string | readonly string[] | null): string => [text ?? ''].flat().join(' ').replace(/\s+/g, ' ').trim();

/** On a narrow page files and questions stand behind a button. */
export async function openMenu(page: Page): Promise<void> {
  const menu = page.getByRole('banner').getByRole('button', { name: 'Menu', exact: true });
  if ((await menu.isVisible()) && (await menu.getAttribute('aria-expanded')) === 'false') await menu.click();
}

/** The document as the breeder can have it: the text of a saved copy. */
export async function savedCopy(page: Page): Promise<string> {
  await openMenu(page);
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'Save a copy', exact: true }).click()]);
  return readFile(await download.path(), 'utf8');
}

/** Chooses a file the way a person does, through “Open”. */
export async function openFile(page: Page, name: string, text: string): Promise<void> {
  await openMenu(page);
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.getByRole('button', { name: 'Open', exact: true }).click()]);
  await chooser.setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
}
