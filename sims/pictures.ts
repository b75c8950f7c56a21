import { mkdirSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { chromium, type Browser, type Locator, type Page } from 'playwright';
import { preview } from 'vite';
import { findBrowser } from '../test/browser/find-browser.ts';
import { drawGuide } from './pictures/guide.ts';
import { packed } from './pictures/png.ts';

// Draws docs/pictures/*.png from the built page: `npm run pictures`; those of the guide alone: `npm run pictures -- guide`. The same
// programme and shuffle word give the same figures again.

const FOLDER = fileURLToPath(new URL('../docs/pictures/', import.meta.url));
const WIDTHS = [1440, 390];
const SCHEMES = ['light', 'dark'] as const;

async function openAtRest(browser: Browser, url: string, width: number, colorScheme: (typeof SCHEMES)[number]): Promise<Page> {
  const page = await browser.newPage({ viewport: { width, height: 900 }, colorScheme, reducedMotion: 'reduce', locale: 'en-GB', timezoneId: 'UTC' });
  // A picture must not change with the clock on the wall.
  await page.clock.setFixedTime('2027-02-01T19:30:00Z');
  await page.goto(url);
  await atRest(page);
  return page;
}

async function atRest(page: Page): Promise<void> {
  await page
    .locator('.progress', { hasText: /(\S+) of \1 futures/ })
    .filter({ hasNotText: 'your guesses' })
    .waitFor({ timeout: 120_000 });
  await page.evaluate(() => document.fonts.ready);
}

/** The whole page, in a window as high as it: what stays at a window's edge then stands where it belongs. */
async function draw(page: Page, name: string): Promise<void> {
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  await page.setViewportSize({ width: page.viewportSize()?.width ?? 1440, height });
  await page.mouse.move(1, 1);
  await page.waitForTimeout(500);
  write(name, await page.screenshot({ fullPage: true }));
}

async function drawPart(name: string, part: Locator): Promise<void> {
  write(name, await part.screenshot());
}

function write(name: string, screenshot: Buffer): void {
  const png = packed(screenshot);
  writeFileSync(`${FOLDER}${name}.png`, png);
  process.stdout.write(`docs/pictures/${name}.png  ${String(Math.round(png.length / 1000))} kB\n`);
}

async function drawAll(browser: Browser, url: string): Promise<void> {
  for (const scheme of SCHEMES)
    for (const width of WIDTHS) {
      const page = await openAtRest(browser, url, width, scheme);
      await draw(page, `likely-${String(width)}-${scheme}`);
      await page.close();
    }
  const page = await openAtRest(browser, url, 1440, 'light');
  await page.locator('oo-lanes .lane[data-mark="D"] button.row').first().click();
  const box = page.getByRole('textbox', { name: 'Flowers each spring' });
  await box.fill('120');
  await atRest(page);
  await page.getByText('saved on this device').waitFor();
  // While a row has the focus, the other plans step back.
  await box.blur();
  await draw(page, 'row-open-1440-light');
}

mkdirSync(FOLDER, { recursive: true });
const server = await preview({ logLevel: 'error', preview: { host: '127.0.0.1', port: 4183, strictPort: false, open: false } });
const browser = await chromium.launch(await findBrowser());
try {
  const url = server.resolvedUrls?.local[0] ?? '';
  if (!process.argv.includes('guide')) await drawAll(browser, url);
  await drawGuide(browser, url, openAtRest, drawPart);
} finally {
  await browser.close();
  await server.close();
}
