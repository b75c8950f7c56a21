/**
 * Times the built page in a browser; run by tsx, because the finder of the browser looks beside its own file. Prints JSON.
 * The page marks each edit and the first picture that belongs to it; this makes the edits, each while the workers still run for the one before.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Locator, type Page } from 'playwright';
import { build, preview } from 'vite';
import { quantileSorted } from '../../src/statistics/order.ts';
import { findBrowser } from '../../test/browser/find-browser.ts';
import type { Edits, PageSpeed } from './page-speed.ts';

const EDITS = 20;
const TOP = fileURLToPath(new URL('../..', import.meta.url));
const MEASURE = 'oo-edit-to-paint';

/** Gathers long tasks from the start; a text, because it runs in the page. */
const WATCH = `window.longTasks = [];
new PerformanceObserver((list) => { for (const { startTime, duration } of list.getEntries()) window.longTasks.push({ startTime, duration }); }).observe({ type: 'longtask', buffered: true });`;

interface Timed {
  readonly startTime: number;
  readonly duration: number;
}

const measures = (page: Page): Promise<Timed[]> =>
  page.evaluate((name) => performance.getEntriesByName(name).map(({ startTime, duration }) => ({ startTime, duration })), MEASURE);
const longTasks = (page: Page): Promise<Timed[]> => page.evaluate('window.longTasks');

/** All futures of the document are counted, those over the guesses too. */
const atRest = (page: Page) =>
  page
    .locator('.progress', { hasText: /(\S+) of \1 futures/ })
    .filter({ hasNotText: 'your guesses' })
    .waitFor();

async function edits(page: Page, what: string, box: Locator): Promise<Edits> {
  await atRest(page);
  const first = Number((await box.inputValue()).replace(/\D/g, ''));
  const before = (await measures(page)).length;
  for (let edit = 1; edit <= EDITS; edit += 1) {
    await box.fill(String(first + edit));
    await page.waitForFunction(([name, wanted]) => performance.getEntriesByName(name).length >= wanted, [MEASURE, before + edit] as const);
  }
  await atRest(page);
  const pictures = (await measures(page)).slice(before);
  const tasks = await longTasks(page);
  const longest = pictures.map(({ startTime }, edit) => {
    const until = pictures[edit + 1]?.startTime ?? Infinity;
    return Math.max(0, ...tasks.filter((task) => task.startTime + task.duration >= startTime && task.startTime < until).map(({ duration }) => duration));
  });
  return { what, edits: pictures.length, editToPaint: middleAndWorst(pictures.map(({ duration }) => duration)), longestTask: middleAndWorst(longest) };
}

function middleAndWorst(values: readonly number[]): { median: number; worst: number } {
  const sorted = [...values].sort((a, b) => a - b);
  return { median: quantileSorted(sorted, 0.5), worst: sorted.at(-1) ?? NaN };
}

/** Everything on the page of questions is asked; how long its own thread is held meanwhile. */
async function questions(page: Page, url: string): Promise<Edits> {
  await page.goto(`${url}#/pay`);
  const asked = page.locator('oo-pay .part > *');
  await asked.first().waitFor();
  const start = await page.evaluate(() => performance.now());
  for (const section of await asked.all()) {
    await section.scrollIntoViewIfNeeded();
    const button = section.locator('.state button.main');
    if (await button.isVisible()) await button.click();
  }
  await page.waitForFunction(
    () => {
      const sections = document.querySelector('oo-app')?.shadowRoot?.querySelector('oo-pay')?.shadowRoot?.querySelectorAll('.part > *') ?? [];
      return sections.length > 0 && [...sections].every((section) => section.shadowRoot?.querySelector('.state')?.textContent.trim() === '');
    },
    undefined,
    { timeout: 240_000, polling: 500 },
  );
  const took = (await page.evaluate(() => performance.now())) - start;
  const tasks = (await longTasks(page)).filter(({ startTime }) => startTime >= start).map(({ duration }) => duration);
  return {
    what: 'all questions, to the last',
    edits: await asked.count(),
    editToPaint: { median: took, worst: took },
    longestTask: middleAndWorst(tasks.length > 0 ? tasks : [0]),
  };
}

async function time(url: string): Promise<PageSpeed> {
  const browser = await chromium.launch(await findBrowser());
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await page.addInitScript(WATCH);
    await page.goto(url);
    await page.locator('oo-lanes .lane[data-mark="D"] button.row').first().click();
    const one = await edits(page, 'flowers each spring, one plan', page.getByRole('textbox', { name: 'Flowers each spring' }));
    await page.locator('oo-orchard-panel details.section summary').first().click();
    const all = await edits(page, 'places, all plans', page.getByRole('textbox', { name: 'Places for trees' }));
    return { browser: browser.version(), series: [one, all, await questions(page, url)] };
  } finally {
    await browser.close();
  }
}

const folder = mkdtempSync(join(tmpdir(), 'orchard-odds-page-'));
const common = { root: `${TOP}src`, configFile: `${TOP}vite.config.ts`, logLevel: 'error', build: { outDir: folder, emptyOutDir: true } } as const;
try {
  await build(common);
  const server = await preview({ ...common, preview: { host: '127.0.0.1', port: 4273, strictPort: false, open: false } });
  try {
    const url = server.resolvedUrls?.local[0];
    if (url === undefined) throw new Error('The preview server has no address.');
    process.stdout.write(`${JSON.stringify(await time(url))}\n`);
  } finally {
    await server.close();
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
