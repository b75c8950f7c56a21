import { fileURLToPath } from 'node:url';
import { chromium, type Browser, type Page } from 'playwright';
import { createServer, type ViteDevServer } from 'vite';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Lanes } from '../../src/components/charts/lanes/lanes.ts';
import { findBrowser } from '../browser/find-browser.ts';
import { smallTexts, textOverlaps } from '../browser/overlaps.ts';
import { axeFaults } from './axe.ts';

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
    const small = await smallTexts(page);
    await page.getByText('planted').evaluate((over) => over.remove());
    expect(found.map(({ a, b }) => [a, b].sort())).toContainEqual(['level in 2052', 'planted']);
    expect(small).toEqual([{ text: 'planted', size: 12 }]);
  });
});

describe('the pictures', () => {
  it.each([
    ['light', ''],
    ['dark', 'extreme&load=places'],
  ])('have no fault that axe knows (%s, %s)', async (theme, query) => {
    const page = await open(1024, query);
    await page.evaluate((name) => (document.documentElement.dataset['theme'] = name), theme);
    expect(await axeFaults(page)).toEqual([]);
  });

  it('open and close rows with the keyboard, move between them, and give the focus back', async () => {
    const page = await open(1024);
    const focused = () => page.evaluate(() => document.querySelector('oo-lanes')?.shadowRoot?.activeElement?.querySelector('.label')?.textContent);
    const rows = page.locator('oo-lanes button.row');
    await rows.first().focus();
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowDown');
    expect(await focused()).toBe('Cross');
    const lane = page.locator('oo-lanes .lane').nth(1);
    const before = await lane.evaluate((item) => item.clientHeight);
    await page.keyboard.press('Enter');
    expect(await rows.nth(2).getAttribute('aria-expanded')).toBe('true');
    const form = await page.locator('oo-lanes form').boundingBox();
    const row = await rows.nth(2).boundingBox();
    expect(form!.y).toBeCloseTo(row!.y + row!.height, 0);
    // The picture follows in the same frame: the lane's drawing is as tall as the lane with its form.
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
              heard.push([type, event instanceof CustomEvent ? event.detail : null]);
              if (heard.length === 3) resolve(heard);
            });
        }),
    );
    const row = page.locator('oo-lanes button.row').nth(7);
    await row.click();
    await page.locator('oo-lanes button.plan-name').first().click();
    await page.keyboard.press('Alt+ArrowDown');
    expect(await said).toEqual([
      ['oo-row', { plan: 'rescue', generation: 'back-graft', round: 1, open: true }],
      ['oo-plan', { plan: 'open' }],
      ['oo-move', { plan: 'open', by: 1 }],
    ]);
    await row.click();
  });

  it('read the chances at a year by keys, mouse and Escape', async () => {
    const page = await open(1440);
    const slider = page.locator('oo-chance-by-year [role=slider]');
    await slider.focus();
    await page.keyboard.press('End');
    expect(await slider.getAttribute('aria-valuetext')).toBe(
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

  it('read what a year asks for, in hours, bloom days and places', async () => {
    const page = await open(1440);
    const busy = page.locator('oo-busiest-years');
    const slider = busy.locator('[role=slider]');
    const said = () => slider.getAttribute('aria-valuetext');
    const words = () => busy.locator('text.said.first').allTextContents();
    expect([await said(), (await words())[1]]).toEqual(['no year chosen', 'most in 2042: 113\u00a0hours']);
    const height = await busy.evaluate((element) => element.clientHeight);
    await slider.focus();
    await page.keyboard.press('Home');
    await page.keyboard.press('Shift+ArrowRight');
    expect(await slider.getAttribute('aria-valuenow')).toBe('2032');
    // The fixture spreads its first rows evenly over 0.35 · (59 … 173) hours and 0.35 · (44 … 120) places.
    expect(await said()).toContain('Controlled cross, then brother × sister: in 2032: 41\u00a0hours, 1 in\u00a010 above 57, never over 150');
    expect(await busy.locator('line.reading-rule').count()).toBe(1);
    expect(await busy.evaluate((element) => element.clientHeight), 'nothing below moves').toBe(height);
    await busy.getByRole('button', { name: 'places' }).click();
    expect(await busy.getByRole('button', { name: 'places' }).getAttribute('aria-pressed')).toBe('true');
    expect((await words())[1]).toBe('in 2032: 29\u00a0places');
    expect(await busy.locator('.finding').textContent()).toMatch(/^B is busiest in 2042: about 80\u00a0places, within your 120/u);
    await slider.focus();
    await page.keyboard.press('Escape');
    expect(await said()).toBe('no year chosen');
    await busy.getByRole('button', { name: 'hours' }).click();
  });

  it('read what is left of the chance when a plan begins later', async () => {
    const page = await open(1440);
    const springs = page.locator('oo-last-spring');
    const slider = springs.locator('[role=slider]');
    expect(await springs.locator('.finding').textContent()).toMatch(/^Begin B by 2033 and it still ends well in 5\u00a0in\u00a010; after 2039 not at all\./u);
    await slider.focus();
    await page.keyboard.press('Home');
    expect(await slider.getAttribute('aria-valuetext')).toMatch(
      /^Begun in 2027: Controlled cross, then brother × sister 73\u00a0%, Wide cross, rescue graft 57\u00a0%/u,
    );
    await page.keyboard.press('End');
    expect(await springs.locator('.box h3').textContent()).toBe('Begun in 2057');
    expect(await springs.locator('.box b').allTextContents()).toEqual(Array(4).fill('0\u00a0%'));
    await page.keyboard.press('Escape');
    expect(await springs.locator('.box').count()).toBe(0);
  });

  it.each([
    [
      'oo-years-against-trees',
      ['Home', 'ArrowRight'],
      /^Open-pollinated seed: half of its successes by 20\d\d; half raise \d+ seedlings or fewer$/u,
      'circle.read-ring',
    ],
    ['oo-why-futures-fail', ['Home', 'ArrowDown'], /^Controlled cross, then brother × sister: a proven tree in 73 of 100 futures$/u, 'rect.read-frame'],
    [
      'oo-flower-to-pick',
      ['Home', 'ArrowRight'],
      /^Open-pollinated seed, Gathered seed: \d+ fruiting; 8 in 10 futures between \d+ and \d+$/u,
      'rect.read-band',
    ],
  ] as const)('%s is read from place to place by keys, and by the pointer', async (name, keys, words, mark) => {
    const page = await open(1440);
    await page.mouse.move(1, 1);
    const picture = page.locator(name);
    const slider = picture.locator('[role=slider]');
    const said = async () => ((await slider.getAttribute('aria-valuetext')) ?? '').replaceAll('\u00a0', ' ');
    const height = await picture.evaluate((element) => element.clientHeight);
    expect([await said(), await picture.locator(mark).count()]).toEqual(['nothing read', 0]);
    await slider.focus();
    for (const key of keys) await page.keyboard.press(key);
    const read = await said();
    expect(read).toMatch(words);
    expect(await picture.locator(mark).count()).toBe(1);
    expect((await picture.locator('p.read').textContent())?.replaceAll('\u00a0', ' ')).toContain(read);
    expect(await picture.evaluate((element) => element.clientHeight), 'nothing below moves').toBe(height);
    await picture.locator('.picture').scrollIntoViewIfNeeded();
    const at = await picture.locator(mark).boundingBox();
    await page.keyboard.press('Escape');
    expect(await said()).toBe('nothing read');
    await page.mouse.move(at!.x + at!.width / 2, at!.y + at!.height / 2);
    expect(await said()).toBe(read);
    await page.mouse.move(1, 1);
    expect(await said()).toBe('nothing read');
  });

  it('keep their words readable while another plan is lifted', async () => {
    const page = await open(1440);
    await page.locator('oo-lanes .lane').nth(1).hover();
    const faded = await page.evaluate(() =>
      [...document.querySelectorAll('main > *')].flatMap((picture) =>
        [...(picture.shadowRoot?.querySelectorAll('svg text, li, td, th') ?? [])].flatMap((text) => {
          let opacity = 1;
          for (let at: Element | null = text; at; at = at.parentElement) opacity *= Number(getComputedStyle(at).opacity);
          return opacity < 1 ? [`${picture.localName}: ${text.textContent}`] : [];
        }),
      ),
    );
    expect(faded).toEqual([]);
    expect(
      await page
        .locator('oo-lanes .lane.resting g.boughs')
        .first()
        .evaluate((boughs) => Number(getComputedStyle(boughs).opacity)),
    ).toBeLessThan(1);
    await page.mouse.move(1, 1);
  });

  it('draw the lanes once for a change, and not at all when a plan is lifted', async () => {
    const page = await open(1440);
    const drawn = await page.locator('oo-lanes').evaluate(async (lanes: Lanes) => {
      const kind = Object.getPrototypeOf(lanes) as { draw: () => void };
      const draw = kind.draw;
      let count = 0;
      kind.draw = function counted() {
        count += 1;
        draw.call(this);
      };
      const after = async (change: () => void) => {
        count = 0;
        change();
        await new Promise((resolve) => setTimeout(resolve, 300));
        return count;
      };
      const { outlook } = lanes;
      const plan = outlook?.plans[1];
      const counts = [
        await after(() => (lanes.outlook = outlook && { ...outlook, runs: outlook.runs + 1 })),
        await after(() => (lanes.lifted = plan?.id ?? null)),
        await after(() => (lanes.open = { plan: plan?.id ?? '', generation: plan?.generations[0]?.id ?? '' })),
      ];
      kind.draw = draw;
      [lanes.open, lanes.lifted] = [null, null];
      return counts;
    });
    expect(drawn).toEqual([1, 0, 1]);
  });

  it('lift the plan that is looked at, everywhere', async () => {
    const page = await open(1440);
    await page.locator('oo-lanes .lane').nth(1).hover();
    const resting = (where: string) => page.locator(`${where}.resting`).count();
    expect(await resting('oo-lanes .lane')).toBe(3);
    for (const picture of ['oo-chance-by-year', 'oo-busiest-years', 'oo-last-spring']) expect(await resting(`${picture} path.chance-line`), picture).toBe(3);
    expect(await resting('oo-side-by-side thead th')).toBe(3);
    await page.mouse.move(5, 5);
    expect(await resting('oo-lanes .lane')).toBe(0);
    const plot = await page.locator('oo-busiest-years [role=slider]').boundingBox();
    await page.locator('oo-busiest-years [role=slider]').hover({ position: { x: 200, y: plot!.height - 20 } });
    expect(await page.locator('oo-lanes .lane:not(.resting)').getAttribute('data-mark')).toBe('D');
    await page.mouse.move(5, 5);
  });

  it('draw again without leaving anything behind', async () => {
    const page = await open(1440);
    const count = () => page.evaluate(() => [...document.querySelectorAll('main > *')].map((picture) => picture.shadowRoot?.querySelectorAll('*').length));
    const before = await count();
    for (const width of [700, 390, 1440]) await open(width);
    expect(await count()).toEqual(before);
  });

  it('say that they are stale', async () => {
    const page = await open(1024);
    const stale = (is: boolean) =>
      page.evaluate((wanted) => document.querySelectorAll('main > *').forEach((picture) => picture.toggleAttribute('stale', wanted)), is);
    await stale(true);
    expect(await page.getByText('from before your last change').count()).toBe(await page.locator('main > *').count());
    await stale(false);
  });

  it.each([320, 390, 700, 1024, 1440])('fit %i px: no sideways scroll, no texts on texts, none below 16 px', async (width) => {
    for (const query of ['', 'open&compact&load=flowers', 'extreme&load=places']) {
      const page = await open(width, query);
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth), `sideways, ${query}`).toBeLessThanOrEqual(0);
      expect(await textOverlaps(page), query).toEqual([]);
      expect(await smallTexts(page), query).toEqual([]);
    }
    expect(failures).toEqual([]);
  });
});
