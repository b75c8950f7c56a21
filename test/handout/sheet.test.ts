import { readFileSync } from 'node:fs';
import { chromium, type Browser, type Page } from 'playwright';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FIRST_CHOICES, type Paper } from '../../src/handout/choices.ts';
import { fitted, PAPERS, roomPx } from '../../src/handout/fit.ts';
import { FONTS } from '../../src/handout/fonts.ts';
import { CAUTIONS, handoutOf, type Handout } from '../../src/handout/handout.ts';
import { LOOK, PLAN_COLOURS } from '../../src/handout/look.ts';
import { escaped, markup } from '../../src/handout/markup.ts';
import { sheetFile } from '../../src/handout/sheet.ts';
import { sansMeasure, serifMeasure } from '../../src/handout/widths.ts';
import type { Programme } from '../../src/model/programme.ts';
import type { Outlook } from '../../src/results/outlook.ts';
import { MARKS } from '../../src/model/plan.ts';
import { findBrowser } from '../browser/find-browser.ts';
import { smallTexts, textOverlaps } from '../browser/overlaps.ts';
import { EXAMPLES } from '../damage/damages.ts';
import { exampleOf, outlookFor } from './sample.ts';

const RUNS = 100;
const SIZES: readonly Paper[] = ['A4', 'Letter'];
const LINK = `https://orchard.example/odds/#/story/${'x'.repeat(4000)}`;

function made(programme: Programme, outlook: Outlook, paper: Paper): Handout {
  const handout = handoutOf(programme, outlook, { ...FIRST_CHOICES, paper }, { date: '2026-11-25', link: LINK }, 'a-programme.json');
  if (!handout) throw new Error('no handout');
  return handout;
}

let browser: Browser;
let page: Page;
const outlooks = new Map<string, Outlook>();
beforeAll(async () => {
  browser = await chromium.launch(await findBrowser());
  page = await browser.newPage();
  for (const name of EXAMPLES) outlooks.set(name, await outlookFor(exampleOf(name), RUNS, name === 'red-pear'));
}, 120_000);
afterAll(() => browser.close());

const plain = (text: string): string => text.replaceAll('\u2060', '').replace(/[\u00a0\u2009\s]+/g, ' ');

/** The text of each page, and its size in points. */
async function pagesOf(pdf: Buffer): Promise<{ text: string; width: number; height: number }[]> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise;
  const pages = [];
  for (let at = 1; at <= document.numPages; at += 1) {
    const one = await document.getPage(at);
    const { items } = await one.getTextContent();
    const text = plain(items.map((item) => ('str' in item ? `${item.str}${item.hasEOL ? ' ' : ''}` : '')).join(''));
    const [, , width = 0, height = 0] = one.view;
    pages.push({ text, width, height });
  }
  return pages;
}

/** How far anything on the sheet sticks out of its room, px. */
const OVERHANG = `(() => {
  const sheet = document.querySelector('.sheet');
  const middle = document.querySelector('.middle');
  const ends = [...middle.children].map((column) => column.lastElementChild.getBoundingClientRect().bottom);
  return { down: Math.max(...ends) - middle.getBoundingClientRect().bottom, across: sheet.scrollWidth - sheet.clientWidth, all: sheet.scrollHeight - sheet.clientHeight };
})()`;

async function printed(handout: Handout): Promise<{ pdf: Buffer; overhang: { down: number; across: number; all: number } }> {
  const room = roomPx(handout.paper);
  await page.setViewportSize({ width: Math.round(room.width), height: Math.round(room.height) });
  await page.setContent(sheetFile(handout, FONTS));
  await page.emulateMedia({ media: 'print' });
  await page.evaluate('document.fonts.ready');
  const overhang = await page.evaluate<{ down: number; across: number; all: number }>(OVERHANG);
  return { overhang, pdf: await page.pdf({ preferCSSPageSize: true }) };
}

describe.each(SIZES)('on %s', (paper) => {
  it.each(EXAMPLES)('%s takes exactly one page, nothing cut, with its chance, the chance of nothing, the shuffle word and every caution', async (name) => {
    const programme = exampleOf(name);
    const handout = made(programme, outlooks.get(name)!, paper);
    const { pdf, overhang } = await printed(handout);
    const pages = await pagesOf(pdf);
    expect(pages).toHaveLength(1);
    const { text, width, height } = pages[0]!;
    // Points are 72 to the inch; a printer’s page may be rounded by less than one.
    expect(Math.abs(width - (PAPERS[paper].widthMm / 25.4) * 72)).toBeLessThan(1);
    expect(Math.abs(height - (PAPERS[paper].heightMm / 25.4) * 72)).toBeLessThan(1);
    expect(overhang.down).toBeLessThanOrEqual(0);
    expect(overhang.across).toBeLessThanOrEqual(0);
    expect(overhang.all).toBeLessThanOrEqual(1);
    const said = [
      handout.title,
      ...handout.headline.answer.map(({ text: piece }) => piece),
      `${String(Math.round(handout.lead.chance.value * 100))} %`,
      handout.nothing,
      `shuffle word “${programme.shuffleWord}”`,
      '25 November 2026',
      'engine ',
      'https://orchard.example/odds/',
      'a-programme.json',
      ...CAUTIONS,
      ...fitted(handout).asks.map(({ what }) => what),
    ];
    for (const words of said) expect(text).toContain(plain(words).trim());
  });

  it('eight plans of twelve repeated generations under the longest names still take one page, with every caution', async () => {
    const base = exampleOf('red-pear');
    const long = (length: number) => 'Wide and windy '.repeat(20).slice(0, length).trim();
    const outlook = outlooks.get('red-pear')!;
    const rows = Array.from({ length: 24 }, (_, at) => ({
      ...outlook.plans[1]!.generations[1]!,
      id: `g${String(Math.floor(at / 2))}`,
      round: (at % 2) + 1,
      name: long(80),
    }));
    const generations = Array.from({ length: 12 }, (_, at) => ({ ...base.plans[1]!.generations[1]!, id: `g${String(at)}`, name: long(80), repeat: 2 }));
    const plans = MARKS.map((mark) => ({ ...base.plans[1]!, id: mark.toLowerCase(), mark, name: long(80), generations }));
    const programme: Programme = { ...base, title: long(120), plans, shuffleWord: long(100), trees: base.trees.map((tree) => ({ ...tree, name: long(80) })) };
    const many = { ...outlook, word: long(100), plans: plans.map(({ id, mark, name }) => ({ ...outlook.plans[1]!, id, mark, name, generations: rows })) };
    const handout = made(programme, many, paper);
    const { pdf, overhang } = await printed(handout);
    const pages = await pagesOf(pdf);
    expect(pages).toHaveLength(1);
    for (const caution of CAUTIONS) expect(pages[0]!.text).toContain(plain(caution));
    expect(pages[0]!.text).toContain(plain(handout.nothing));
    expect(overhang.across).toBeLessThanOrEqual(0);
    expect(overhang.down).toBeLessThanOrEqual(0);
  });
});

describe('the file', () => {
  const file = (title = 'Red pear at the mill', wanted = '') => {
    const programme = { ...exampleOf('red-pear'), title };
    const handout = handoutOf(programme, outlooks.get('red-pear')!, { ...FIRST_CHOICES, wanted }, { date: '2026-11-25', link: LINK }, 'a.json');
    if (!handout) throw new Error('no handout');
    return sheetFile(handout, FONTS);
  };

  it('has no script, no outside address but its link, and asks for nothing when it is opened', async () => {
    const text = file();
    expect(text).not.toMatch(/<script|<iframe|<link|javascript:|\son\w+=|@import/i);
    expect([...text.matchAll(/(?:href|src)="([^"]*)"/g)].map(([, address]) => address)).toEqual([LINK]);
    for (const [, address] of text.matchAll(/url\(([^)]*)\)/g)) expect(address).toMatch(/^(data:font\/woff2;base64,|#)/);
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.setContent(text);
    await page.evaluate('document.fonts.ready');
    expect(asked.filter((address) => !address.startsWith('data:'))).toEqual([]);
    expect(await page.evaluate('document.compatMode')).toBe('CSS1Compat');
  });

  it('shows what people wrote as text, whatever it is', async () => {
    const nasty = '</title><script>document.title="x"</script><img src=x onerror="document.title=1">&amp;"\'';
    await page.setContent(file(nasty, nasty));
    expect(await page.evaluate("document.querySelectorAll('script, img').length")).toBe(0);
    expect(await page.title()).toBe(nasty);
    expect(await page.locator('.bar strong').textContent()).toBe(nasty);
    expect(await page.locator('h1 span').first().textContent()).toContain('<script>');
  });

  it('is the same bytes for the same arguments', () => expect(file()).toBe(file()));

  it.each([390, 320, 760, 1440])('fits a screen of %i px without sideways scroll, and names every picture', async (width) => {
    await page.setViewportSize({ width, height: 900 });
    await page.setContent(file());
    await page.emulateMedia({ media: 'screen' });
    expect(await page.evaluate('document.documentElement.scrollWidth - innerWidth')).toBeLessThanOrEqual(0);
    expect(await page.locator('svg[role=img]:not([aria-label])').count()).toBe(0);
    const shown = [];
    for (const picture of ['wide', 'phone', 'least']) if (await page.locator(`.picture .${picture}`).isVisible()) shown.push(picture);
    expect(shown).toEqual([width >= 800 ? 'wide' : width >= 350 ? 'phone' : 'least']);
    // As wide as paper it is shown as it prints; on a phone it is read.
    if (width < 800) expect(await smallTexts(page)).toEqual([]);
    expect(await textOverlaps(page)).toEqual([]);
  });

  it('tells plans apart in grey: no two futures that end otherwise have one sign', () => {
    const signs = [...file().matchAll(/<li><svg[^>]*>(.*?)<\/svg>/g)].map(([, sign]) => sign);
    expect(signs.length).toBeGreaterThan(1);
    expect(new Set(signs).size).toBe(signs.length);
  });
});

it('markup escapes what is put in, and only that', () => {
  expect(markup`<p title="${'"<&\''}">${markup`<b>${1}</b>`}${[markup`a`, markup`b`]}</p>`.text).toBe('<p title="&quot;&lt;&amp;&#39;"><b>1</b>ab</p>');
  expect(escaped('a\u0000\ud800b😀')).toBe('a\ufffd\ufffdb😀');
});

it('colours are the light ones of the page', () => {
  const tokens = readFileSync(new URL('../../src/styles/tokens.css', import.meta.url), 'utf8');
  const light = (name: string) => new RegExp(`--${name}: light-dark\\((#[0-9a-f]{3,6})`).exec(tokens)?.[1];
  for (const [mark, colour] of Object.entries(PLAN_COLOURS)) expect(colour).toBe(light(`plan-${mark.toLowerCase()}`));
  expect([LOOK.ink, LOOK.ink2, LOOK.edge, LOOK.rule, LOOK.hair, LOOK.onPlan]).toEqual(['ink', 'ink2', 'edge', 'rule', 'hair', 'on-plan'].map(light));
});

it('widths of letters are those of the fonts, as Chromium measures them', async () => {
  await page.setContent(
    `<style>@font-face{font-family:S;font-weight:200 900;src:url(${FONTS.sans})}@font-face{font-family:B;font-weight:400 700;src:url(${FONTS.serif})}</style><p style="font-family:S">a<b>b</b></p><p style="font-family:B">a</p>`,
  );
  await page.evaluate('document.fonts.ready');
  const text = 'Wide cross, rescue graft: “half” by the year – see below; Brother × sister ½';
  const measured = await page.evaluate<number[]>(
    `['400 1000px S', '600 1000px S', '500 1000px B'].map((font) => { const brush = document.createElement('canvas').getContext('2d'); brush.font = font; return brush.measureText(${JSON.stringify(text)}).width; })`,
  );
  const ours = [sansMeasure(text, 1000), sansMeasure(text, 1000, true), serifMeasure(text, 1000)];
  // Kerning is left out: pairs of letters, a hundredth of a line or so.
  ours.forEach((width, at) => expect(Math.abs(width / measured[at]! - 1)).toBeLessThan(0.015));
});
