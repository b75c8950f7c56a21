import { chromium, type Browser, type Page } from 'playwright';
import { createServer, type ViteDevServer } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fileURLToPath } from 'node:url';
import { findBrowser } from '../../browser/find-browser.ts';
import { smallTexts, textOverlaps } from '../../browser/overlaps.ts';

/** The pictures in a real browser, with the fixture's invented figures. */
let server: ViteDevServer;
let browser: Browser;
let url: string;
const failures: string[] = [];

beforeAll(async () => {
  server = await createServer({ configFile: fileURLToPath(new URL('vite.config.ts', import.meta.url)), logLevel: 'error' });
  await server.listen();
  url = server.resolvedUrls?.local[0] ?? '';
  browser = await chromium.launch(await findBrowser());
}, 60_000);

afterAll(async () => {
  await browser.close();
  await server.close();
});

async function open(width: number, query = ''): Promise<Page> {
  const page = await browser.newPage({ viewport: { width, height: 900 }, reducedMotion: 'reduce' });
  page.on('pageerror', (error) => failures.push(error.message));
  await page.goto(`${url}?${query}`);
  await page.waitForSelector('main[data-ready]');
  await page.evaluate(() => document.fonts.ready);
  await page.waitForTimeout(200);
  return page;
}

describe('the check of overlaps', () => {
  it('finds a text laid over a chart label in a shadow root, and a small one', async () => {
    const page = await open(1024);
    await page.evaluate(() => {
      const label = document.querySelector('oo-chance-by-year')?.shadowRoot?.querySelector('text.level')?.getBoundingClientRect();
      const over = document.createElement('p');
      over.textContent = 'planted';
      over.style.cssText = `position: absolute; margin: 0; font-size: 12px; left: ${String((label?.left ?? 0) + window.scrollX)}px; top: ${String((label?.top ?? 0) + window.scrollY)}px`;
      document.body.append(over);
    });
    const found = await textOverlaps(page);
    expect(found.map(({ a, b }) => [a, b].sort())).toContainEqual(['level in 2052', 'planted']);
    expect(await smallTexts(page)).toEqual([{ text: 'planted', size: 12 }]);
    await page.close();
  });
});

describe('the pictures', () => {
  it.each([320, 390, 700, 800, 1024, 1440])('fit %i px: no sideways scroll, no texts on texts, none below 16 px', async (width) => {
    for (const query of ['', 'open', 'open&compact', 'extreme']) {
      const page = await open(width, query);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth), `sideways, ${query}`).toBeLessThanOrEqual(0);
      expect(await textOverlaps(page), query).toEqual([]);
      expect(await smallTexts(page), query).toEqual([]);
      await page.close();
    }
    expect(failures).toEqual([]);
  });
});
