import { readFile } from 'node:fs/promises';
import { chromium, type Download, type Page } from 'playwright';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { handoutFile } from '../../sims/run/handout.ts';
import { CAUTIONS } from '../../src/handout/handout.ts';
import { findBrowser } from '../browser/find-browser.ts';
import { exampleOf, outlookFor } from '../handout/sample.ts';
import { axeFaults } from './axe.ts';
import { atRest, openFile, savedCopy, visits } from './visit.ts';

const visit = visits({ futures: 400 });
const RUNS = 200;

/** A visit whose programme is the walnut with few futures, on the page that tells it. */
async function telling(options: Parameters<typeof visit>[0] = {}): Promise<Page> {
  const page = await visit({ ...options, untilRest: false });
  await openFile(page, 'walnut.json', JSON.stringify({ ...exampleOf('slow-walnut'), runs: RUNS }));
  await page.getByRole('banner').getByText('A walnut for the next people').waitFor();
  await page.getByRole('link', { name: 'What do I tell others?' }).click();
  await page.locator('oo-sheet .sheet').waitFor();
  await atRest(page);
  return page;
}

async function pressed(page: Page, name: string): Promise<Download> {
  const button = page.locator('oo-tell').getByRole('button', { name });
  await button.and(page.locator(':enabled')).waitFor();
  const [download] = await Promise.all([page.waitForEvent('download'), button.click()]);
  return download;
}

describe('what do I tell others?', () => {
  it('saves the same sheet that the headless runner writes for the same date; an address that only this computer can open is not printed', async () => {
    // The runner tries all its guesses.
    const page = await telling({ futures: 4000 });
    expect(await page.locator('oo-story-share textarea').inputValue()).toContain('#/story/');
    const download = await pressed(page, 'Save as one file');
    expect(download.suggestedFilename()).toBe('a-walnut-for-the-next-people.html');
    const saved = await readFile(await download.path(), 'utf8');
    const programme = { ...exampleOf('slow-walnut'), runs: RUNS };
    const date = await page.evaluate(() => new Intl.DateTimeFormat('sv-SE').format(new Date()));
    const all = programme.plans.map((_, at) => at);
    expect(saved).toBe(handoutFile(programme, await outlookFor(programme, RUNS, true), all, { file: '', paper: 'A4', date, link: null, leave: [] }));
  });

  it.each(['A4', 'Letter'] as const)('prints the sheet alone, on one page of %s', async (paper) => {
    const page = await telling();
    await page.getByRole('radio', { name: paper }).check();
    await page.evaluate(() => document.fonts.ready);
    const pdf = await page.pdf({ preferCSSPageSize: true });
    const printed = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
    expect(printed.numPages).toBe(1);
    const one = await printed.getPage(1);
    const { items } = await one.getTextContent();
    const text = items
      .map((item) => ('str' in item ? `${item.str}${item.hasEOL ? ' ' : ''}` : ''))
      .join('')
      .replace(/\s+/g, ' ');
    for (const caution of CAUTIONS) expect(text).toContain(caution.replace(/\s+/g, ' '));
    expect(text).not.toContain('My programmes');
    expect(text).not.toContain('What the sheet says');
    expect(Math.round(one.view[3] ?? 0)).toBe(paper === 'A4' ? 842 : 792);
  });

  it('hands out the picture as a whole SVG and as a PNG of 300 dots to the inch', async () => {
    const page = await telling();
    const svg = await readFile(await (await pressed(page, 'Picture as SVG')).path(), 'utf8');
    expect(svg).toMatch(/^<\?xml[^>]*>\n<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg"/);
    expect(svg).not.toMatch(/var\(--|class=|<script|http(?!:\/\/www\.w3\.org)/);
    expect(svg).toContain('shuffle word');
    expect(svg).toContain('data:font/woff2');
    const parsed = await page.evaluate((text) => new DOMParser().parseFromString(text, 'image/svg+xml').querySelectorAll('parsererror').length, svg);
    expect(parsed).toBe(0);
    const png = await readFile(await (await pressed(page, 'Picture as PNG')).path());
    const widthMm = Number(/ width="([\d.]+)mm"/.exec(svg)?.[1]);
    // PNG (Third Edition) §11.2.1: the width stands in bytes 16–19.
    expect(png.subarray(1, 4).toString('latin1')).toBe('PNG');
    expect(png.readUInt32BE(16)).toBe(Math.round((widthMm / 25.4) * 300));
  });

  it('leaves out names of trees and gardens on the sheet and in the link, and the own programme as it was', async () => {
    const page = await telling();
    const own = await savedCopy(page);
    await page.getByRole('checkbox', { name: 'names of trees' }).check();
    await page.getByRole('checkbox', { name: 'names of gardens' }).check();
    const sheet = page.locator('oo-sheet');
    await sheet.getByText('Tree 1').first().waitFor();
    const text = (await sheet.innerText()).toLowerCase();
    for (const name of ['ferryman', 'broad acre', 'churchyard', 'far field']) expect(text).not.toContain(name);
    expect(await savedCopy(page)).toBe(own);
    const link = await page.locator('oo-story-share textarea').inputValue();
    await page.goto('about:blank');
    await page.goto(link);
    await page.getByRole('button', { name: 'Open as my own copy' }).click();
    await page.getByRole('banner').getByText('is open').waitFor();
    const copy = (await savedCopy(page)).toLowerCase();
    for (const name of ['ferryman', 'broad acre', 'broad-acre', 'churchyard', 'far field', 'far-field']) expect(copy).not.toContain(name);
  });

  it('seals today’s forecast, opens it beside today’s, and refuses a damaged one in a sentence', async () => {
    const page = await telling();
    const sealed = await readFile(await (await pressed(page, 'Seal today’s forecast')).path(), 'utf8');
    const choose = async (text: string) => {
      const [chooser] = await Promise.all([page.waitForEvent('filechooser'), page.getByRole('button', { name: 'Open a sealed forecast' }).click()]);
      await chooser.setFiles({ name: 'old.json', mimeType: 'application/json', buffer: Buffer.from(text) });
    };
    await choose(sealed.replace(/"value": 0\.\d/, '"value": 0.9'));
    await page.getByRole('alert').getByText('Its seal is broken').waitFor();
    await choose(sealed);
    const opened = page.getByRole('region', { name: /Sealed on/ });
    await opened.getByText('It was sealed from the programme as it stands now.').waitFor();
    expect(await opened.getByText('no clear difference').count()).toBe(4);
    const { startYear, lastYear } = exampleOf('slow-walnut');
    expect(await opened.locator('tbody tr').count()).toBe(lastYear - startYear + 1);
    const cells = await opened.locator('tbody tr').last().locator('td').allTextContents();
    expect(cells).toHaveLength(8);
    for (let at = 0; at < 8; at += 2) expect(cells[at]).toBe(cells[at + 1]);
  });

  it('has no fault that axe knows and no sideways scroll at any width, light and dark', { timeout: 120_000 }, async () => {
    const page = await telling();
    for (const [width, colorScheme] of [
      [1440, 'light'],
      [1440, 'dark'],
      [390, 'dark'],
      [390, 'light'],
      [320, 'light'],
    ] as const) {
      await page.emulateMedia({ colorScheme });
      await page.setViewportSize({ width, height: 900 });
      await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
      expect(await axeFaults(page), `${String(width)} px, ${colorScheme}`).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth), String(width)).toBeLessThanOrEqual(0);
    }
  });
});

it('the saved sheet stands in grey as well: no colour alone tells anything apart', async () => {
  const browser = await chromium.launch(await findBrowser());
  try {
    const page = await browser.newPage();
    const programme = { ...exampleOf('slow-walnut'), runs: RUNS };
    const all = programme.plans.map((_, at) => at);
    const file = handoutFile(programme, await outlookFor(programme, RUNS), all, { file: '', paper: 'A4', date: '2026-11-25', link: null, leave: [] });
    await page.setContent(`${file}<style>html{filter:grayscale(1)}</style>`);
    const letters = await page.locator('.picture .wide svg text[text-anchor=middle][font-weight="700"]').allTextContents();
    expect(letters.filter((letter) => /^[A-H]$/.test(letter))).toEqual(programme.plans.map(({ mark }) => mark));
  } finally {
    await browser.close();
  }
});
