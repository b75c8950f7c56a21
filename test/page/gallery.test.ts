import { fileURLToPath } from 'node:url';
import { chromium, type Browser, type Page } from 'playwright';
import { createServer, type ViteDevServer } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findBrowser } from '../browser/find-browser.ts';
import { smallTexts, textOverlaps } from '../browser/overlaps.ts';

/** The pictures in a real browser, with the fixture's invented figures. Pages are opened once and then made wider or narrower. */
let server: ViteDevServer;
let browser: Browser;
let url: string;
const failures: string[] = [];
const opened = new Map<string, Page>();

beforeAll(async () => {
  server = await createServer({ configFile: fileURLToPath(new URL('../charts/gallery/vite.config.ts', import.meta.url)), logLevel: 'error' });
  await server.listen();
  url = server.resolvedUrls?.local[0] ?? '';
  browser = await chromium.launch(await findBrowser());
});

afterAll(async () => {
  await browser.close();
  await server.close();
});

/** The gallery at a width, drawn at that width. */
async function open(width: number, query = ''): Promise<Page> {
  const known = opened.get(query);
  const page = known ?? (await browser.newPage({ viewport: { width, height: 900 }, reducedMotion: 'reduce' }));
  if (!known) {
    opened.set(query, page);
    page.on('pageerror', (error) => failures.push(error.message));
    await page.goto(`${url}?${query}`);
    await page.waitForSelector('main[data-ready]');
  }
  await page.setViewportSize({ width, height: 900 });
  await drawn(page);
  return page;
}

/** Waits until every picture is as wide as its element. */
async function drawn(page: Page): Promise<void> {
  await page.waitForFunction(() =>
    [...document.querySelectorAll('main > *')].every((picture) => {
      const svg = picture.shadowRoot?.querySelector('.picture > svg, [role=img] > svg');
      return !svg || picture.localName === 'oo-flower-to-pick' || Number(svg.getAttribute('width')) === Math.floor(picture.getBoundingClientRect().width);
    }),
  );
  await page.evaluate(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))));
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
  });
});

describe('the pictures', () => {
  it.each(['theme=light', 'theme=dark', 'open', 'extreme'])('have no fault that axe knows (%s)', async (query) => {
    const page = await open(1024, query);
    await page.addScriptTag({ path: fileURLToPath(new URL('../../node_modules/axe-core/axe.min.js', import.meta.url)) });
    const found = await page.evaluate(async () => {
      const axe = Reflect.get(window, 'axe') as {
        run: (root: Document, options: object) => Promise<{ violations: { id: string; nodes: { html: string; failureSummary?: string }[] }[] }>;
      };
      // The gallery is no page: it has neither a title of its own nor landmarks.
      const { violations } = await axe.run(document, { rules: { 'page-has-heading-one': { enabled: false }, region: { enabled: false } } });
      return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html, failureSummary }) => `${html} ${failureSummary ?? ''}`).join('\n')}`);
    });
    expect(found).toEqual([]);
  });

  it('open and close rows with the keyboard, move between them, and give the focus back', async () => {
    const page = await open(1024);
    const focused = () => page.evaluate(() => document.querySelector('oo-lanes')?.shadowRoot?.activeElement?.querySelector('.label')?.textContent);
    const rows = page.locator('oo-lanes button.row');
    await rows.first().focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    expect(await focused()).toBe('Cross');
    const before = await page
      .locator('oo-lanes .lane')
      .nth(1)
      .evaluate((lane) => lane.clientHeight);
    await page.keyboard.press('Enter');
    expect(await rows.nth(2).getAttribute('aria-expanded')).toBe('true');
    const form = await page.locator('oo-lanes form').boundingBox();
    const row = await rows.nth(2).boundingBox();
    expect(form!.y).toBeCloseTo(row!.y + row!.height, 0);
    // The picture follows in the same frame: the lane's drawing is as tall as the lane with its form.
    const lane = page.locator('oo-lanes .lane').nth(1);
    expect(await lane.evaluate((item) => item.clientHeight)).toBeGreaterThan(before + 150);
    expect(await lane.evaluate((item) => Number(item.querySelector('svg')?.getAttribute('height')) - item.clientHeight)).toBeCloseTo(0, 0);
    await page.locator('oo-lanes form input').focus();
    await page.keyboard.press('Escape');
    expect(await rows.nth(2).getAttribute('aria-expanded')).toBe('false');
    expect(await focused()).toBe('Cross');
  });

  it('say what a row, a plan and a wish to move are', async () => {
    const page = await open(1024);
    const said = page.evaluate(
      () =>
        new Promise<unknown[]>((resolve) => {
          const heard: unknown[] = [];
          for (const type of ['oo-row', 'oo-plan', 'oo-move'])
            document.addEventListener(type, (event) => {
              heard.push([type, (event as CustomEvent<unknown>).detail]);
              if (heard.length === 3) resolve(heard);
            });
        }),
    );
    await page.locator('oo-lanes button.row').nth(7).click();
    await page.locator('oo-lanes button.plan-name').first().click();
    await page.keyboard.press('Alt+ArrowDown');
    expect(await said).toEqual([
      ['oo-row', { plan: 'rescue', generation: 'back-graft', round: 1, open: true }],
      ['oo-plan', { plan: 'open' }],
      ['oo-move', { plan: 'open', by: 1 }],
    ]);
  });

  it('read the chances at a year by keys, mouse and Escape', async () => {
    const page = await open(1440);
    const slider = page.locator('oo-chance-by-year [role=slider]');
    const text = () => slider.getAttribute('aria-valuetext');
    await slider.focus();
    await page.keyboard.press('End');
    expect(await text()).toBe(
      'By the end of 2057: Controlled cross, then brother × sister 73\u00a0%, Wide cross, rescue graft 57\u00a0%, Open-pollinated seed 42\u00a0%, Wide cross, own roots 18\u00a0%',
    );
    await page.keyboard.press('ArrowLeft');
    await page.keyboard.press('Shift+ArrowLeft');
    expect(await slider.getAttribute('aria-valuenow')).toBe('2051');
    expect(await page.locator('oo-chance-by-year .box h3').textContent()).toBe('By the end of 2051');
    await page.keyboard.press('Escape');
    expect(await page.locator('oo-chance-by-year .box').count()).toBe(0);
    const plot = await slider.boundingBox();
    await page.mouse.move(plot!.x + plot!.width - 1, plot!.y + 100);
    expect(await slider.getAttribute('aria-valuenow')).toBe('2057');
  });

  it('lift the plan that is looked at, everywhere', async () => {
    const page = await open(1440);
    await page.locator('oo-lanes .lane').nth(1).hover();
    expect(await page.locator('oo-lanes .lane.resting').count()).toBe(3);
    expect(await page.locator('oo-chance-by-year path.chance-line.resting').count()).toBe(3);
    expect(await page.locator('oo-side-by-side thead th.resting').count()).toBe(3);
    await page.mouse.move(5, 5);
    expect(await page.locator('oo-lanes .lane.resting').count()).toBe(0);
  });

  it('draw again without leaving anything behind', async () => {
    const page = await open(1440);
    const count = () => page.evaluate(() => [...document.querySelectorAll('main > *')].map((picture) => picture.shadowRoot?.querySelectorAll('*').length));
    const before = await count();
    for (const width of [700, 390, 1440]) {
      await page.setViewportSize({ width, height: 900 });
      await page.waitForTimeout(150);
    }
    expect(await count()).toEqual(before);
  });

  it('say that they are stale', async () => {
    const page = await open(1024, 'stale');
    const pictures = await page.locator('main > *').count();
    expect(await page.getByText('from before your last change').count()).toBe(pictures);
  });

  it.each([320, 390, 700, 800, 1024, 1440])('fit %i px: no sideways scroll, no texts on texts, none below 16 px', async (width) => {
    for (const query of ['', 'open', 'open&compact', 'extreme']) {
      const page = await open(width, query);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth), `sideways, ${query}`).toBeLessThanOrEqual(0);
      expect(await textOverlaps(page), query).toEqual([]);
      expect(await smallTexts(page), query).toEqual([]);
      }
    expect(failures).toEqual([]);
  });
});
