import type { Page } from 'playwright';
import { describe, expect, it } from 'vitest';
import { openWalked } from './places.ts';
import { smallTargets } from '../browser/targets.ts';
import { openMenu, atRest, plain, planLane, planNames, rowOf, savedCopy, visits } from './visit.ts';

const visit = visits({ futures: 400 });

/** What the focus stands on, seen through all shadow roots: role or tag, and its words. */
const focused = (page: Page) =>
  page.evaluate(() => {
    let at: Element | null = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    const name = [at?.getAttribute('aria-label'), at?.closest('label')?.textContent, at?.textContent, at?.id].find(Boolean) ?? '';
    return `${at?.tagName.toLowerCase() ?? ''} ${name.replace(/\s+/g, ' ').trim()}`;
  });

/** Presses Tab until the focus stands on what fits; fails after so many presses. */
async function tabTo(page: Page, fits: (words: string) => boolean | Promise<boolean>, most = 60): Promise<void> {
  const passed: string[] = [];
  for (let press = 0; press < most; press += 1) {
    await page.keyboard.press('Tab');
    const words = await focused(page);
    if (await fits(words)) return;
    passed.push(words);
  }
  throw new Error(`Not reached by Tab, but: ${passed.join('; ')}`);
}

describe('with the keyboard alone', () => {
  it('the first stop leads to the answer', async () => {
    const page = await visit({ untilRest: false });
    await page.keyboard.press('Tab');
    expect(await focused(page)).toBe('button Skip to the answer');
    await page.keyboard.press('Enter');
    expect(await focused(page)).toMatch(/^main/);
  });

  it('a row is reached, opened, a number in it changed, closed, and the focus is back on the row', async () => {
    const page = await visit();
    await tabTo(page, (words) => words.startsWith('button Brother × sister'));
    await page.keyboard.press('Enter');
    expect(await rowOf(page, 'B', 1).getAttribute('aria-expanded')).toBe('true');
    await tabTo(page, () =>
      page.getByRole('textbox', { name: 'Flowers each spring' }).evaluate((box) => (box.getRootNode() as ShadowRoot).activeElement === box),
    );
    await page.keyboard.type('150');
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Shift+ArrowDown');
    expect(await page.getByRole('textbox', { name: 'Flowers each spring' }).inputValue()).toBe('141');
    await atRest(page);
    expect(plain(await page.locator('oo-row-settings').getByRole('status').textContent())).toMatch(/ \d+ → \d+ in 100\./);
    await page.keyboard.press('Escape');
    expect(await rowOf(page, 'B', 1).getAttribute('aria-expanded')).toBe('false');
    expect(await focused(page)).toMatch(/^button Brother × sister/);
    expect(JSON.parse(await savedCopy(page))).toMatchObject({ plans: [{}, { generations: [{}, { flowers: 141 }] }, {}, {}] });
  });

  it('what a tick box did is undone from the tick box', async () => {
    const page = await visit({ untilRest: false });
    await page.getByRole('link', { name: 'Would it pay to…?' }).click();
    const tick = page.getByRole('checkbox', { name: 'Take my guesses as they stand' });
    await tick.focus();
    await page.keyboard.press('Space');
    expect(await tick.isChecked()).toBe(true);
    await page.keyboard.press('Control+z');
    await expect.poll(() => tick.isChecked()).toBe(false);
    await page.keyboard.press('Control+y');
    await expect.poll(() => tick.isChecked()).toBe(true);
  });

  it('“Close” under a row gives the focus back to the row too', async () => {
    const page = await visit({ untilRest: false });
    await rowOf(page, 'D').focus();
    await page.keyboard.press('Enter');
    await page.locator('oo-row-settings').getByRole('button', { name: 'Close', exact: true }).focus();
    await page.keyboard.press('Enter');
    expect(await rowOf(page, 'D').getAttribute('aria-expanded')).toBe('false');
    expect(await focused(page)).toMatch(/^button Wide cross, grafted/);
  });

  it('a plan is opened by its name, and Escape closes it and gives the focus back', async () => {
    const page = await visit({ untilRest: false });
    await planLane(page, 'B').locator('button.plan-name').focus();
    await page.keyboard.press('Enter');
    await page.locator('.plan-panel input').first().focus();
    await page.keyboard.press('Escape');
    await page.locator('.plan-panel').waitFor({ state: 'detached' });
    await expect.poll(() => focused(page)).toMatch(/^button Plan BControlled cross/);
  });

  it('a plan that is moved or removed leaves the focus at hand', async () => {
    const page = await visit();
    await planLane(page, 'B').locator('button.plan-name').focus();
    await page.keyboard.press('Alt+ArrowUp');
    await expect.poll(async () => (await planNames(page))[0]).toMatch(/^Controlled cross/);
    expect(await focused(page)).toMatch(/^button Plan BControlled cross/);
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: /^Move down/ }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await planNames(page))[1]).toMatch(/^Controlled cross/);
    expect(await focused(page)).toMatch(/^button Move down/);
    await page.getByRole('button', { name: /^Remove Controlled/ }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => planNames(page)).toHaveLength(3);
    expect(await focused(page)).toMatch(/^button Plan CWide cross, own roots/);
  });

  it('a plan added from a pattern takes the focus, and the ninth is refused in words', { timeout: 120_000 }, async () => {
    const page = await visit();
    const pattern = page.getByRole('button', { name: 'One cross, keep the best', exact: true });
    for (let n = 5; n <= 8; n += 1) {
      await pattern.focus();
      await page.keyboard.press('Enter');
      await expect.poll(() => focused(page)).toMatch(/^button Cross, generation 1 of 1/);
      await expect.poll(() => planNames(page)).toHaveLength(n);
    }
    expect((await planNames(page)).slice(4)).toEqual(['', ' 2', ' 3', ' 4'].map((end) => `One cross, keep the best${end}`));
    expect(await pattern.isDisabled()).toBe(true);
    expect(await page.getByText('All eight letters are given; remove a plan first.').isVisible()).toBe(true);
  });

  it('what is focused is never hidden behind the bar of the open row', async () => {
    const page = await visit({ height: 700 });
    await rowOf(page, 'D').focus();
    await page.keyboard.press('Enter');
    const covered: string[] = [];
    for (let press = 0; press < 70; press += 1) {
      await page.keyboard.press('Tab');
      const words = await focused(page);
      const hidden = await page.evaluate(async () => {
        for (let frame = 0; frame < 2; frame += 1) await new Promise(requestAnimationFrame);
        let at: Element | null = document.activeElement;
        while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
        const bar = document
          .querySelector('oo-app')
          ?.shadowRoot?.querySelector('oo-likely')
          ?.shadowRoot?.querySelector('oo-plan-lanes')
          ?.shadowRoot?.querySelector('oo-row-settings')
          ?.shadowRoot?.querySelector('.bar');
        if (!at || !bar || bar.contains(at)) return false;
        const [box, over] = [at.getBoundingClientRect(), bar.getBoundingClientRect()];
        return box.top >= over.top - 1 && box.bottom <= over.bottom + 1 && box.width > 0;
      });
      if (hidden) covered.push(words);
      if (words.startsWith('button Close')) break;
    }
    expect(covered).toEqual([]);
  });
});

/** What the focus stands on: its words, whether it is wholly in sight with nothing over it, and how it is marked. */
interface Stand {
  readonly what: string;
  readonly inSight: boolean;
  readonly marked: boolean;
  /** Tells one stop from another with the same words. */
  readonly at: string;
}

const stand = (page: Page): Promise<Stand> =>
  page.evaluate(async () => {
    for (let frame = 0; frame < 2; frame += 1) await new Promise(requestAnimationFrame);
    let at: Element | null = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    if (!at || at === document.body) return { what: 'nothing', inSight: true, marked: true, at: '' };
    const words = at.getAttribute('aria-label') ?? at.closest('label')?.textContent ?? at.textContent;
    const what = `${at.tagName.toLowerCase()} ${(words || at.id).replace(/\s+/g, ' ').trim().slice(0, 60)}`;
    const box = at.getBoundingClientRect();
    // The middle of what the window holds of it.
    const [x, y] = [(Math.max(0, box.left) + Math.min(innerWidth, box.right)) / 2, (Math.max(0, box.top) + Math.min(innerHeight, box.bottom)) / 2];
    let over = document.elementFromPoint(x, y);
    while (over?.shadowRoot) {
      const inner: Element | null = over.shadowRoot.elementFromPoint(x, y);
      if (!inner || inner === over) break;
      over = inner;
    }
    const holds = (outer: Node, inner: Node | null): boolean => {
      for (let node = inner; node; node = node.parentNode ?? (node instanceof ShadowRoot ? node.host : null)) if (node === outer) return true;
      return false;
    };
    const inWindow = box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth;
    const label = at.closest('label');
    // A slider that lets the pointer through lies over its own picture.
    const through = getComputedStyle(at).pointerEvents === 'none' && over?.getRootNode() === at.getRootNode();
    const inSight = inWindow && (through || holds(at, over) || (over !== null && holds(over, at)) || (label !== null && holds(label, over)));
    const marks = [at, label, at.parentElement].flatMap((element) => (element ? [getComputedStyle(element), getComputedStyle(element, '::before')] : []));
    const marked = marks.some(({ outlineStyle, outlineWidth }) => outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2);
    return { what, inSight, marked, at: `${String(Math.round(box.left + scrollX))},${String(Math.round(box.top + scrollY))}` };
  });

/** Presses Tab so many times, or until the page has been gone through; says where the focus was not to be seen, or did not move on. */
async function goThrough(page: Page, most: number): Promise<{ readonly faults: string[]; readonly passed: number }> {
  const faults: string[] = [];
  let last = await stand(page);
  let passed = 0;
  for (let press = 0; press < most; press += 1) {
    await page.keyboard.press('Tab');
    let now = await stand(page);
    // An answer that comes in just then moves the page; the browser brings the place back in a moment.
    for (let wait = 0; wait < 5 && !now.inSight; wait += 1) {
      await page.waitForTimeout(100);
      now = await stand(page);
    }
    if (now.what === 'nothing') break;
    passed += 1;
    if (!now.inSight) faults.push(`out of sight: ${now.what}`);
    if (!now.marked) faults.push(`not marked: ${now.what}`);
    // Radios of a group may share their words and place; a box in which Tab writes would share both with itself.
    if (now.what === last.what && now.at === last.at) faults.push(`does not go on: ${now.what}`);
    last = now;
  }
  return { faults, passed };
}

describe('the menu of a narrow page', () => {
  it('opens by Enter, closes by Escape and gives the focus back, leads to a page and goes', { timeout: 60_000 }, async () => {
    const page = await visit({ width: 390, untilRest: false });
    const menu = page.getByRole('banner').getByRole('button', { name: 'Menu' });
    const link = page.getByRole('link', { name: 'My programmes' });
    expect(await link.isVisible()).toBe(false);
    await menu.focus();
    await page.keyboard.press('Enter');
    await link.waitFor();
    expect(await smallTargets(page, 44)).toEqual([]);
    await page.keyboard.press('Escape');
    expect(await menu.getAttribute('aria-expanded')).toBe('false');
    expect(await focused(page)).toMatch(/^button Menu/);
    await page.keyboard.press('Enter');
    await link.click();
    await page.locator('oo-mine h1').waitFor();
    expect(await link.isVisible()).toBe(false);
    expect(await focused(page)).toMatch(/^main/);
  });
});

describe('a walk through the whole page by keyboard', () => {
  it.each([
    { width: 1440, height: 700 },
    { width: 390, height: 700, forcedColors: 'active' },
  ] as const)('shows the focus at every stop of every page ($width px)', { timeout: 240_000 }, async (look) => {
    const page = await visit({ ...look, untilRest: false });
    await openWalked(page);
    const faults: Record<string, string[]> = {};
    const places = [
      'What have I got?',
      'What could I do?',
      'What is likely?',
      'Would it pay to…?',
      'What has happened?',
      'What do I tell others?',
      'My programmes',
      'Start my own',
      'The guide',
    ];
    const rail = page.locator('nav[aria-label="Questions"] a');
    expect(await rail.count()).toBe(places.length);
    for (let at = 0; at < places.length; at += 1) {
      // From the address bar: a page newly come to begins at its beginning.
      await page.evaluate(() => (document.activeElement instanceof HTMLElement ? document.activeElement.blur() : undefined));
      const link = rail.nth(at);
      await openMenu(page);
      await link.focus();
      await page.keyboard.press('Enter');
      await expect.poll(() => link.getAttribute('aria-current')).toBe('page');
      // The first answer takes the place of the words that wait for it, and moves what stands below.
      await page.locator('main h1:not(.waiting)').first().waitFor();
      if (places[at] === 'What has happened?')
        for (const part of ['oo-from-today-picture svg', 'oo-losers section', 'oo-fared-picture svg']) await page.locator(part).first().waitFor();
      const { faults: found, passed } = await goThrough(page, 45);
      if (found.length > 0) faults[(await link.textContent()) ?? ''] = found;
      expect(passed, `stops of page ${String(at)}`).toBeGreaterThan(5);
    }
    expect(faults).toEqual({});
  });

  it('skips to the answer, follows the rail, edits a number, asks a question, chooses what to tell, and undoes', { timeout: 240_000 }, async () => {
    const page = await visit({ untilRest: false });
    await openWalked(page);
    await page.evaluate(() => (document.activeElement instanceof HTMLElement ? document.activeElement.blur() : undefined));
    await page.getByRole('button', { name: 'Skip to the answer' }).focus();
    await page.keyboard.press('Enter');
    expect(await focused(page)).toMatch(/^main/);
    await tabTo(page, (words) => words.startsWith('button Brother × sister'), 90);
    await page.keyboard.press('Enter');
    await page.getByRole('textbox', { name: 'Flowers each spring' }).waitFor();
    await tabTo(page, () =>
      page.getByRole('textbox', { name: 'Flowers each spring' }).evaluate((box) => (box.getRootNode() as ShadowRoot).activeElement === box),
    );
    await page.keyboard.type('150');
    await page.keyboard.press('Tab');
    await page.keyboard.press('Escape');

    const toRail = async (name: string) => {
      await page.getByRole('navigation', { name: 'Questions' }).getByRole('link').first().focus();
      if (!(await focused(page)).includes(name)) await tabTo(page, (words) => words.includes(name), 12);
      await page.keyboard.press('Enter');
    };
    await toRail('Would it pay to');
    await page.locator('oo-pay h1').waitFor();
    await tabTo(page, (words) => words.startsWith('button A trial first'), 30);
    await page.keyboard.press('Enter');
    await tabTo(page, (words) => words.startsWith('button Work out what a trial is worth'), 20);
    await page.keyboard.press('Enter');
    await page.locator('oo-pay-trial details.method').waitFor();

    await toRail('What do I tell others?');
    await page.locator('oo-sheet .sheet').waitFor();
    await tabTo(page, (words) => words.includes('names of trees'), 40);
    await page.keyboard.press('Space');
    await page.locator('oo-sheet').getByText('Tree 1').first().waitFor();

    await toRail('What could I do?');
    await page.keyboard.press('Control+z');
    await expect.poll(async () => JSON.stringify(JSON.parse(await savedCopy(page)))).not.toContain('"flowers":150');
  });
});
