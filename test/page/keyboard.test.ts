import type { Page } from 'playwright';
import { describe, expect, it } from 'vitest';
import { atRest, plain, planLane, planNames, rowOf, savedCopy, visits } from './visit.ts';

const visit = visits();

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

  it('“Close row” gives the focus back to the row too', async () => {
    const page = await visit({ untilRest: false });
    await rowOf(page, 'D').focus();
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Close row' }).focus();
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
      if (words.startsWith('button Close row')) break;
    }
    expect(covered).toEqual([]);
  });
});
