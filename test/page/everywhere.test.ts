import type { Page } from 'playwright';
import { beforeAll, describe, expect, it } from 'vitest';
import { smallTexts, textOverlaps } from '../browser/overlaps.ts';
import { smallTargets } from '../browser/targets.ts';
import { axeFaults } from './axe.ts';
import { cutTexts, lettersNotInFonts, moving, painted, spoken, type Spoken } from './looks.ts';
import { openWalked, STOPS, type Stop } from './places.ts';
import { visits } from './visit.ts';

const visit = visits({ futures: 400 });
/** 720 px is a window of 1440 px at 200 %; 320 px is one of 1280 px at 400 % (WCAG 2.2, 1.4.4 and 1.4.10). */
const WIDTHS = [1440, 720, 390, 320] as const;
/** So high that a bar which stays at the window's lower edge lies on nothing. */
const HIGH = 20_000;
/** Below this a mark or border is hard to see (WCAG 2.2, 1.4.11). */
const SEEN = 3;
/** On a wide window the sheet for paper is shown as it is printed; on a phone it is there to be read. */
const PAPER = { sheet: 'oo-sheet', from: 800 } as const;

type Faults = Record<string, readonly unknown[]>;
const found = new Map<string, Faults>();

/** Everything that is looked for in one place, with the window as wide as each device, in every theme. One visit serves all looks. */
async function lookAt(page: Page, { name, brief = false }: Stop): Promise<Faults> {
  const faults: Faults = { 'axe-core, light': await axeFaults(page) };
  const inLight = await painted(page);
  await page.emulateMedia({ colorScheme: 'dark' });
  faults['contrast, dark'] = await axeFaults(page, ['color-contrast']);
  await page.emulateMedia({ colorScheme: 'light', forcedColors: 'active' });
  const forced = await painted(page);
  faults['marks and borders lost in forced colours'] = inLight.filter(({ contrast }, i) => contrast >= SEEN && (forced[i]?.contrast ?? 0) < SEEN);
  await page.emulateMedia({ colorScheme: 'light', forcedColors: 'none' });
  faults['moving though motion is to be reduced'] = await moving(page);
  faults['pictures without a finding in words'] = (await spoken(page)).filter((picture) => !saysFinding(picture));
  faults['letters that saved pictures have no font for'] = await lettersNotInFonts(page);
  if (brief) return faults;
  const isDialog = name.includes('dialog');
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: isDialog ? 900 : HIGH });
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    const sideways = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    faults[`sideways scroll, ${String(width)}`] = sideways > 0 ? [sideways] : [];
    faults[`texts cut off, ${String(width)}`] = await cutTexts(page);
    // A dialog lies over the page by its nature.
    faults[`texts on texts, ${String(width)}`] = isDialog ? [] : await textOverlaps(page);
    faults[`texts below 16 px, ${String(width)}`] = await smallTexts(page, 16, 'body', width < PAPER.from ? '' : PAPER.sheet);
    if (width < 700) faults[`targets below 44 px, ${String(width)}`] = await smallTargets(page, 44);
    if (width === 390) faults['axe-core, 390'] = await axeFaults(page);
  }
  await page.setViewportSize({ width: 1440, height: 900 });
  return faults;
}

/** A finding is a sentence, with a figure in it or long enough to say that there is no difference; a question is none. */
const saysFinding = ({ says }: Spoken): boolean => !says.endsWith('?') && says.split(' ').length >= (/\d/.test(says) ? 5 : 6);

beforeAll(async () => {
  const page = await visit({ untilRest: false });
  await openWalked(page);
  for (const stop of STOPS) {
    await stop.go(page);
    await page.evaluate(() => document.fonts.ready);
    found.set(stop.name, await lookAt(page, stop));
  }
}, 300_000);

describe('every page and dialog, light, dark and in forced colours, at 200 % and on phones', () => {
  it.each(STOPS.map(({ name }) => name))('%s', (name) => {
    const faults = found.get(name) ?? { 'never seen': [name] };
    expect(Object.fromEntries(Object.entries(faults).filter(([, list]) => list.length > 0))).toEqual({});
  });
});

describe('the looks themselves', () => {
  it('see what is cut off, what moves, what vanishes, and a picture that says only its name', async () => {
    const page = await visit({ untilRest: false });
    const before = { cut: await cutTexts(page), moves: await moving(page) };
    expect(before).toEqual({ cut: [], moves: [] });
    await page.evaluate(() => {
      const planted = document.createElement('section');
      planted.setAttribute('aria-label', 'Planted');
      planted.innerHTML = `<svg width="9" height="9"><text>→</text></svg><p style="width: 30px; overflow: hidden; white-space: nowrap; transition: opacity 1s">planted words</p>
        <svg width="300" height="40"><path d="M0 0H300V40H0Z" style="fill: Canvas; forced-color-adjust: none" /></svg>`;
      document.body.append(planted);
    });
    expect(await lettersNotInFonts(page)).toEqual(['→']);
    expect(await cutTexts(page)).toEqual(['p planted words']);
    expect(await moving(page)).toEqual(['p planted words']);
    expect((await painted(page)).at(-1)?.contrast).toBeLessThan(SEEN);
    const [last] = (await spoken(page)).slice(-1);
    expect(last && saysFinding(last)).toBe(false);
    await page.emulateMedia({ reducedMotion: 'no-preference' });
    expect((await moving(page)).length, 'pictures do glide for who wants it').toBeGreaterThan(1);
  });
});
