import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import Papa from 'papaparse';
import type { Locator, Page } from 'playwright';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { canonicalJson } from '../../src/results/hash.ts';
import { axeFaults } from './axe.ts';
import { savedCopy, visits } from './visit.ts';

const visit = visits({ futures: 400 });
const MM_AN_INCH = 25.4;

async function download(page: Page, button: Locator): Promise<{ readonly name: string; readonly bytes: Buffer }> {
  const [file] = await Promise.all([page.waitForEvent('download'), button.click()]);
  return { name: file.suggestedFilename(), bytes: await readFile(await file.path()) };
}

const facesSchema = z.object({
  fault: z.string().nullable(),
  title: z.string(),
  texts: z.array(z.object({ family: z.string(), style: z.string(), text: z.string() })),
  outside: z.array(z.string()),
  faces: z.string(),
  elements: z.array(z.string()),
  scripts: z.number(),
  size: z.array(z.number()),
  ground: z.string(),
});

/** What stands in an SVG, read by the browser's XML parser. */
async function read(page: Page, svg: string) {
  const found: unknown = await page.evaluate((text) => {
    const parsed = new DOMParser().parseFromString(text, 'image/svg+xml');
    const root = parsed.documentElement;
    const all = [...parsed.querySelectorAll('*')];
    const references = all.flatMap((each) =>
      [...each.attributes].flatMap(({ name, value }) => [
        ...(/(^|:)href$|^src$/.test(name) ? [value] : []),
        ...[...value.matchAll(/url\(([^)]*)\)/g)].map(([, inside]) => (inside ?? '').replace(/["']/g, '')),
      ]),
    );
    const styles = [...parsed.querySelectorAll('style')].map(({ textContent }) => textContent).join('');
    const imported = [...styles.matchAll(/url\(([^)]{0,40})/g)].map(([, inside]) => inside ?? '');
    const ids = new Set(all.map(({ id }) => `#${id}`));
    return {
      fault: parsed.querySelector('parsererror')?.textContent ?? null,
      title: root.querySelector(':scope > title')?.textContent ?? '',
      texts: [...parsed.querySelectorAll('text')].map((each) => ({
        family: each.closest('[font-family]')?.getAttribute('font-family') ?? '',
        style: each.getAttribute('font-style') ?? 'normal',
        text: each.textContent,
      })),
      outside: [...references.filter((to) => !ids.has(to)), ...imported.filter((to) => !to.startsWith('data:font/woff2;base64,'))],
      faces: styles.replace(/url\([^)]*\)/g, ''),
      elements: [...new Set(all.map(({ localName }) => localName))],
      scripts: all.filter((each) => each.localName === 'script' || [...each.attributes].some(({ name }) => name.startsWith('on'))).length,
      size: ['width', 'height'].map((name) => Number.parseFloat(/^([\d.]+)mm$/.exec(root.getAttribute(name) ?? '')?.[1] ?? 'NaN')),
      ground: root.querySelector(':scope > rect')?.getAttribute('fill') ?? '',
    };
  }, svg);
  return facesSchema.parse(found);
}

/** All that must hold for a saved picture; returns its width and height in print, mm. */
async function expectAlone(page: Page, svg: string, title: string): Promise<readonly number[]> {
  const { fault, title: own, texts, outside, faces, elements, scripts, size, ground } = await read(page, svg);
  expect(fault, title).toBeNull();
  expect(own).toBe(title);
  expect(outside, `${title}: references to elsewhere`).toEqual([]);
  expect(scripts).toBe(0);
  expect(elements).not.toContain('foreignObject');
  expect(ground, `${title}: on white whatever the page's look`).toBe('#fff');
  const said = texts.map(({ text }) => text).join(' ');
  expect(said).toContain(title.split(' ')[0]);
  expect(said).toMatch(/engine \S+, shuffle word “red”, [\d,]+ futures a plan, \d+\s[A-Z]\w+\s\d{4}\. A planning aid/);
  expect(said).not.toMatch(/lit\$|undefined|NaN|\[object/);
  const families = [...faces.matchAll(/font-family:'([^']+)';font-style:(\w+)/g)].map(([, family, style]) => `${family ?? ''} ${style ?? ''}`);
  const used = new Set(texts.map(({ family, style }) => `${/^'?([^',]+)/.exec(family)?.[1] ?? '?'} ${style}`));
  expect(
    [...used].filter((face) => !families.includes(face)),
    `${title}: letters in a font that is not within`,
  ).toEqual([]);
  expect(size[0]).toBeLessThanOrEqual(170);
  expect(size[1], `${title}: fits a page of A4`).toBeLessThanOrEqual(257);
  return size;
}

/** Width and height of a PNG, and dots a metre (W3C, Portable Network Graphics, 5.2, 11.2.1 and 11.3.4.3). */
function png(bytes: Buffer) {
  expect(bytes.subarray(0, 8)).toEqual(Buffer.from([137, 80, 78, 71, 13, 10, 26, 10]));
  expect(bytes.subarray(12, 16).toString('latin1')).toBe('IHDR');
  const at = bytes.indexOf('pHYs');
  return { width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20), dotsAMetre: at < 0 ? 0 : bytes.readUInt32BE(at + 4) };
}

const save = (page: Page, kind: string) => page.getByRole('button', { name: `Save the picture as ${kind}`, exact: true });
const hosts = (page: Page) =>
  save(page, 'SVG').evaluateAll((all) =>
    all.map((button) => (button.getRootNode() instanceof ShadowRoot ? (button.getRootNode() as ShadowRoot).host.localName : '')),
  );

/** Saves every picture of the page as both kinds. */
async function expectPictures(page: Page, wanted: readonly string[]): Promise<void> {
  expect(await hosts(page)).toEqual(wanted);
  for (let at = 0; at < wanted.length; at += 1) {
    const svg = await download(page, save(page, 'SVG').nth(at));
    expect(svg.name).toMatch(/^[a-z0-9][a-z0-9-]{2,60}\.svg$/);
    const text = svg.bytes.toString('utf8');
    const title = /<title>([^<]+)<\/title>/.exec(text)?.[1] ?? '';
    expect(await page.getByRole('heading', { name: title.slice(0, 25) }).count(), `“${title}” is a heading of the page`).toBeGreaterThan(0);
    const mm = await expectAlone(page, text, title);
    const painted = await download(page, save(page, 'PNG').nth(at));
    const { width, height, dotsAMetre } = png(painted.bytes);
    // 300 dots an inch, to the dot; the file says the length to a hundredth of a millimetre.
    const dots = mm.map((length) => (length / MM_AN_INCH) * 300);
    expect(Math.abs(width - (dots[0] ?? 0)), `${title}: dots across`).toBeLessThanOrEqual(0.6);
    expect(Math.abs(height - (dots[1] ?? 0)), `${title}: dots down`).toBeLessThanOrEqual(0.6);
    expect(dotsAMetre).toBe(Math.round((300 / MM_AN_INCH) * 1000));
    expect(painted.bytes.length, `${title}: something is painted`).toBeGreaterThan(20_000);
  }
}

const LIKELY = [
  'oo-lanes',
  'oo-chance-by-year',
  'oo-side-by-side',
  'oo-years-against-trees',
  'oo-why-futures-fail',
  'oo-flower-to-pick',
  'oo-busiest-years',
  'oo-last-spring',
] as const;

describe('pictures as files', () => {
  it('of “What is likely?” stand alone, in light colours from a dark page', { timeout: 120_000 }, async () => {
    const page = await visit({ colorScheme: 'dark' });
    await page.locator('oo-more-pictures summary').first().click();
    await page.locator('oo-last-spring .saves').waitFor();
    await expectPictures(page, LIKELY);
  });

  it('of “What could I do?”, from a phone', { timeout: 120_000 }, async () => {
    const page = await visit({ width: 390 });
    await page.evaluate(() => (location.hash = '#/do'));
    await page.locator('oo-do .saves').waitFor();
    await expectPictures(page, ['oo-lanes']);
  });

  it('of “Would it pay to…?” say how many futures are behind the answer', { timeout: 240_000 }, async () => {
    const page = await visit();
    await page.evaluate(() => (location.hash = '#/pay'));
    const map = page.locator('oo-graft-map');
    await map.locator('.saves').waitFor({ timeout: 120_000 });
    await page.locator('oo-graft-roots .saves').waitFor({ timeout: 120_000 });
    for (const host of ['oo-graft-map', 'oo-graft-roots']) {
      const { bytes } = await download(page, page.locator(host).getByRole('button', { name: 'Save the picture as SVG' }));
      const text = bytes.toString('utf8');
      await expectAlone(page, text, /<title>([^<]+)<\/title>/.exec(text)?.[1] ?? '');
    }
  });

  it('of “What do I tell others?” stand alone', { timeout: 120_000 }, async () => {
    const page = await visit();
    await page.evaluate(() => (location.hash = '#/tell'));
    const button = page.getByRole('button', { name: 'Picture as SVG' });
    await button.waitFor();
    const { bytes } = await download(page, button);
    const text = bytes.toString('utf8');
    await expectAlone(page, text, /<title>([^<]+)<\/title>/.exec(text)?.[1] ?? '');
  });
});

describe('tables as files', () => {
  it('read back cell for cell', { timeout: 120_000 }, async () => {
    const page = await visit();
    await page.locator('oo-more-pictures summary').first().click();
    const buttons = page.getByRole('button', { name: 'Save the table as CSV' });
    await page.locator('oo-last-spring .saves').waitFor();
    const count = await buttons.count();
    expect(count).toBeGreaterThanOrEqual(LIKELY.length);
    for (let at = 0; at < count; at += 1) {
      const shown = await buttons.nth(at).evaluate((button) => {
        const place = button.closest('.beneath') ?? button.closest('.saves')?.previousElementSibling;
        const tables = place instanceof HTMLTableElement ? [place] : [...(place?.querySelectorAll('table') ?? [])];
        return tables.flatMap(({ rows }) => [...rows]).map((row) => [...row.cells].map((cell) => cell.textContent.replace(/\s+/g, ' ').trim()));
      });
      const { bytes, name } = await download(page, buttons.nth(at));
      const { data, errors } = Papa.parse<string[]>(bytes.toString('utf8').replace(/^\u{feff}/u, ''), { skipEmptyLines: true });
      expect(errors, name).toEqual([]);
      expect(shown.length, name).toBeGreaterThan(1);
      // A leading sign that a spreadsheet would run is held by an apostrophe.
      expect(
        data.map((row) => row.map((cell) => cell.replace(/^'(?=[=+\-@])/, ''))),
        name,
      ).toEqual(shown);
    }
  });
});

const analysisSchema = z.object({
  format: z.literal('orchard-odds analysis'),
  provenance: z.object({ engine: z.string(), word: z.string(), runs: z.number(), programmeHash: z.string(), documentVersion: z.number(), date: z.string() }),
  results: z.object({ programme: z.string(), plans: z.array(z.object({ id: z.string(), chance: z.object({ value: z.number() }) })) }),
  programme: z.looseObject({ shuffleWord: z.string(), runs: z.number(), version: z.number(), plans: z.array(z.looseObject({ id: z.string() })) }),
});

const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex');

describe('the figures as files', () => {
  it('futures have a line each, and the results match them, the hash of the programme and the saved copy', { timeout: 120_000 }, async () => {
    const page = await visit();
    const copy: unknown = JSON.parse(await savedCopy(page));
    await page.evaluate(() => (location.hash = '#/tell'));
    const runs = page.getByRole('button', { name: 'Every future (CSV)' });
    await runs.waitFor();
    expect(await axeFaults(page)).toEqual([]);
    const results = await download(page, page.getByRole('button', { name: 'The results (JSON)' }));
    const { provenance, results: found, programme } = analysisSchema.parse(JSON.parse(results.bytes.toString('utf8')));
    expect(programme).toEqual(copy);
    expect(provenance.programmeHash).toBe(sha256(canonicalJson(programme)));
    expect(found.programme).toBe(provenance.programmeHash);
    expect(provenance).toMatchObject({ word: programme.shuffleWord, runs: programme.runs, documentVersion: programme.version });
    expect(provenance.date).toMatch(/^\d{4}-\d\d-\d\d$/);
    const futures = await download(page, runs);
    const { data, errors } = Papa.parse<Record<string, string>>(futures.bytes.toString('utf8'), { header: true, skipEmptyLines: true });
    expect(errors).toEqual([]);
    expect(data).toHaveLength(programme.plans.length * programme.runs);
    for (const { id, chance } of found.plans) {
      const own = data.filter(({ plan }) => plan === id);
      expect(own.filter(({ yearProven }) => yearProven !== '').length / own.length).toBe(chance.value);
    }
  });
});
