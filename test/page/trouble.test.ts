import { describe, expect, it } from 'vitest';
import { atRest, percentOf, plain, rowOf, savedCopy, visits } from './visit.ts';

const visit = visits({ futures: 400 });
const flowers = 'Flowers each spring';

describe('edits while futures run', () => {
  it('the latest of several wins, and pictures say so as long as they are stale', async () => {
    // So many that the first edit is under way when the second comes.
    const page = await visit({ futures: 4000 });
    await rowOf(page, 'B', 1).click();
    const box = page.getByRole('textbox', { name: flowers });
    await box.fill('20');
    await atRest(page);
    const alone = await percentOf(page, 'B');
    await box.fill('120');
    await atRest(page);
    expect(await percentOf(page, 'B')).not.toBe(alone);

    const pictures = ['oo-lanes', 'oo-chance-by-year', 'oo-side-by-side'];
    await page.locator('oo-lanes').evaluate((lanes) => {
      const states = [lanes.hasAttribute('stale')];
      Reflect.set(window, 'staleStates', states);
      new MutationObserver(() => states.push(lanes.hasAttribute('stale'))).observe(lanes, { attributeFilter: ['stale'] });
    });
    // Two in one breath, so that the first is under way when the second comes.
    await box.evaluate(async (input: HTMLInputElement) => {
      for (const text of ['400', '20']) {
        input.value = text;
        input.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
        await new Promise((resolve) => setTimeout(resolve, 30));
      }
    });
    await atRest(page);
    expect(await percentOf(page, 'B')).toBe(alone);
    for (const picture of pictures) expect(await page.locator(`${picture}[stale]`).count(), picture).toBe(0);
    expect(await page.getByText('from before your last change').count()).toBe(0);
    const states = await page.evaluate(() => Reflect.get(window, 'staleStates') as boolean[]);
    expect(states[0]).toBe(false);
    expect(states).toContain(true);
    expect(states.at(-1)).toBe(false);
  });

  it('undo puts the figures back, and nothing stays stale', async () => {
    const page = await visit();
    const answer = await page.getByRole('heading', { level: 1 }).textContent();
    await rowOf(page, 'B', 1).click();
    await page.getByRole('textbox', { name: flowers }).fill('20');
    await atRest(page);
    expect(await page.getByRole('heading', { level: 1 }).textContent()).not.toBe(answer);
    const told = page.locator('oo-row-settings').getByRole('status');
    expect(plain(await told.textContent())).toMatch(/^flowers each spring 120 → 20:/);
    await page.getByRole('banner').getByRole('button', { name: 'Undo' }).click();
    await atRest(page);
    expect(plain(await told.textContent())).toBe('');
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(answer);
    expect(await page.locator('oo-lanes[stale], oo-chance-by-year[stale], oo-side-by-side[stale]').count()).toBe(0);
    expect(await page.getByRole('textbox', { name: flowers }).inputValue()).toBe('120');
  });
});

describe('where this device stores nothing', () => {
  it.each([
    ['blocked', `IDBFactory.prototype.open = () => { throw new DOMException('no', 'SecurityError'); };`],
    ['absent', `Object.defineProperty(window, 'indexedDB', { value: undefined });`],
    ['full', `IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError'); };`],
  ])('(%s) the page works, and says so in words', async (how, before) => {
    const page = await visit({ before, untilRest: false });
    await rowOf(page, 'B', 1).click();
    await page.getByRole('textbox', { name: flowers }).fill('20');
    const said = page.getByRole('banner').getByRole('status');
    await said.filter({ hasText: 'not saved' }).waitFor();
    expect(plain(await said.textContent())).toBe(
      `not saved: ${how === 'full' ? 'this device’s storage is full' : 'this browser does not let us store anything here'}. Save a copy as a file.`,
    );
    await page.getByText(/^[1-9]\d* of 400 futures/).waitFor();
    expect(JSON.parse(await savedCopy(page))).toMatchObject({ plans: [{}, { generations: [{}, { flowers: 20 }] }, {}, {}] });
  });
});
