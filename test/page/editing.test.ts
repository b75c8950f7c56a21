import type { Page } from 'playwright';
import { describe, expect, it } from 'vitest';
import { PATTERNS } from '../../src/model/patterns.ts';
import { atRest, percentOf, plain, planLane, planNames, rowOf, savedCopy, visits } from './visit.ts';

const visit = visits({ futures: 400 });
const flowers = 'Flowers each spring';
/** What is read aloud of the last generation of B. */
const listened = async (page: Page) => plain(await rowOf(page, 'B', 1).textContent());

describe('a number typed in an open row', () => {
  it('is never touched under the caret, changes the picture, and its effect is told', async () => {
    // So many that they still run while somebody types.
    const page = await visit({ futures: 4000 });
    const before = await percentOf(page, 'B');
    expect(await listened(page)).toMatch(/: 240 flowers,/);
    await rowOf(page, 'B', 1).click();
    const box = page.getByRole('textbox', { name: flowers });
    await box.click();
    await box.evaluate((input: HTMLInputElement) => {
      input.select();
      // Every text the box shows in any frame, and where its caret stands.
      const seen = [`${input.value}|`];
      Reflect.set(window, 'seen', seen);
      const look = () => {
        const now = `${input.value}|${input.selectionStart === input.value.length ? '' : 'moved'}`;
        if (input.selectionStart === input.selectionEnd && seen.at(-1) !== now) seen.push(now);
        requestAnimationFrame(look);
      };
      look();
    });
    for (const letter of ['1', '2']) {
      await page.keyboard.press(letter);
      await page.waitForTimeout(150);
    }
    expect(await page.locator('.progress').textContent()).not.toMatch(/4,000 of 4,000/);
    await atRest(page);
    expect(await page.evaluate(() => Reflect.get(window, 'seen') as string[])).toEqual(['120|', '1|', '12|']);
    expect(await box.evaluate((input) => input.getRootNode() instanceof ShadowRoot && (input.getRootNode() as ShadowRoot).activeElement === input)).toBe(true);

    const after = await percentOf(page, 'B');
    expect(after).toBeLessThan(before);
    expect(await listened(page)).toMatch(/: \d\d flowers,/);
    const told = await page.locator('oo-row-settings').getByRole('status').textContent();
    expect(plain(told)).toBe(`flowers each spring 120 → 12: ${String(before)} → ${String(after)} in 100. Clearly worse.`);
  });

  it('that cannot be read is marked in words, and the document keeps the last good one', async () => {
    const page = await visit({ untilRest: false });
    const before = await savedCopy(page);
    await rowOf(page, 'B', 1).click();
    const box = page.getByRole('textbox', { name: flowers });
    for (const [text, words] of [
      ['many', '“many” is not a number.'],
      ['-3', 'Must lie between 0 and 1,000,000 flowers.'],
      ['99999999999999999999', 'Must lie between 0 and 1,000,000 flowers.'],
      ['', 'A number is needed here.'],
      ['2.5', 'Must be a whole number.'],
      ['\u{1F350}', '“\u{1F350}” is not a number.'],
    ] as const) {
      await box.fill(text);
      expect(await box.getAttribute('aria-invalid'), text).toBe('true');
      expect(plain(await page.locator('oo-row-settings .problem:not(:empty)').allTextContents()), text).toContain(words);
      expect(await savedCopy(page), text).toBe(before);
      expect(await box.inputValue()).toBe(text);
    }
    await box.fill('1,500');
    expect(await box.getAttribute('aria-invalid')).toBe('false');
    expect(JSON.parse(await savedCopy(page))).toMatchObject({ plans: [{}, { generations: [{}, { flowers: 1500 }] }, {}, {}] });
  });
});

describe('plans', () => {
  it('start from every pattern, and can run on the example', async () => {
    const page = await visit({ untilRest: false });
    const before = await savedCopy(page);
    const names = await planNames(page);
    const added: string[] = [];
    for (const { name } of PATTERNS) {
      await page.locator('section.patterns').getByRole('button', { name, exact: true }).click();
      await planLane(page, 'E')
        .filter({ hasText: name.split(',')[0] ?? name })
        .waitFor();
      // A name that stands already gets a number.
      expect((await planNames(page)).at(-1)).toBe(names.includes(name) ? `${name} 2` : name);
      expect(await page.locator('.problems:not(.notes)').count(), name).toBe(0);
      expect(plain(await planLane(page, 'E').locator('.percent').textContent()), name).toMatch(/\d %.*from [\d,]+ futures/);
      const copy = await savedCopy(page);
      expect(copy, name).not.toBe(before);
      added.push(copy);
      await page.getByRole('banner').getByRole('button', { name: 'Undo' }).click();
      expect(await savedCopy(page), name).toBe(before);
    }
    expect(new Set(added).size).toBe(PATTERNS.length);
  });

  it('are copied, renamed, moved and removed; undo and redo bring each document back, to the letter', async () => {
    const page = await visit({ untilRest: false });
    const copies = [await savedCopy(page)];
    const done = async (step: () => Promise<void>) => {
      await step();
      copies.push(await savedCopy(page));
    };
    const openPlan = (mark: string) => planLane(page, mark).locator('button.plan-name').click();
    await openPlan('B');
    await done(() => page.getByRole('button', { name: 'Copy Controlled cross, then brother × sister' }).click());
    await expect.poll(async () => (await planNames(page))[2]).toBe('Controlled cross, then brother × sister, varied');
    await openPlan('E');
    await done(async () => {
      await page.locator('.plan-panel').getByRole('textbox', { name: 'Name' }).press('End');
      await page.keyboard.type(' 🍐');
    });
    await expect.poll(async () => (await planNames(page))[2]).toBe('Controlled cross, then brother × sister, varied 🍐');
    await done(() => page.getByRole('button', { name: 'Move up Controlled cross, then brother × sister, varied 🍐' }).click());
    await expect.poll(async () => (await planNames(page))[1]).toBe('Controlled cross, then brother × sister, varied 🍐');
    await openPlan('A');
    await done(() => page.getByRole('button', { name: 'Remove Open-pollinated seed' }).click());
    await expect.poll(() => planNames(page)).toHaveLength(4);
    expect(new Set(copies).size).toBe(5);

    const undo = page.getByRole('banner').getByRole('button', { name: 'Undo' });
    const redo = page.getByRole('banner').getByRole('button', { name: 'Redo' });
    for (const copy of copies.slice(0, -1).reverse()) {
      await undo.click();
      expect(await savedCopy(page)).toBe(copy);
    }
    expect(await undo.isDisabled()).toBe(true);
    for (const copy of copies.slice(1)) {
      await redo.click();
      expect(await savedCopy(page)).toBe(copy);
    }
    expect(await redo.isDisabled()).toBe(true);
    await page.keyboard.press('Control+z');
    expect(await savedCopy(page)).toBe(copies.at(-2));
  });

  it('stand there again, as edited, when the page is loaded again', async () => {
    const page = await visit();
    await rowOf(page, 'B', 1).click();
    await page.getByRole('textbox', { name: flowers }).fill('300');
    await page.getByRole('banner').getByText('saved on this device').waitFor();
    await atRest(page);
    const edited = await savedCopy(page);
    const words = await listened(page);
    expect(JSON.parse(edited)).toMatchObject({ plans: [{}, { generations: [{}, { flowers: 300 }] }, {}, {}] });
    await page.reload();
    await atRest(page);
    expect(await savedCopy(page)).toBe(edited);
    expect(await listened(page)).toBe(words);
  });
});
