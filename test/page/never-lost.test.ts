import { describe, expect, it } from 'vitest';
import { axeFaults } from './axe.ts';
import { clearSiteData, leaveEarlier, savedNow, titles, typeFlowers } from './device.ts';
import { openMenu, openFile, plain, planLane, rowOf, savedCopy, visits } from './visit.ts';

const visit = visits({ futures: 400 });
const banner = (page: Parameters<typeof savedCopy>[0]) => page.getByRole('banner');

describe('loading the page again', () => {
  it('brings back the steps of undo and redo, with their names', async () => {
    const page = await visit({ untilRest: false });
    const example = await savedCopy(page);
    await typeFlowers(page, '130');
    await page.getByRole('textbox', { name: 'Flowers each spring' }).press('Tab');
    await typeFlowers(page, '140');
    await savedNow(page);
    const edited = await savedCopy(page);
    await page.reload();
    await planLane(page, 'B').waitFor();
    const undo = banner(page).getByRole('button', { name: 'Undo' });
    expect(await undo.getAttribute('title')).toBe('Undo: flowers each spring 130 → 140 (plan B)');
    await undo.click();
    expect(await undo.getAttribute('title')).toBe('Undo: flowers each spring 120 → 130 (plan B)');
    await undo.click();
    expect(await savedCopy(page)).toBe(example);
    await savedNow(page);
    await page.reload();
    await planLane(page, 'B').waitFor();
    const redo = banner(page).getByRole('button', { name: 'Redo' });
    for (let step = 0; step < 2; step += 1) await redo.click();
    expect(plain(await banner(page).getByRole('status').textContent())).toMatch(/^done again: flowers each spring 130 → 140 \(plan B\)/);
    expect(await savedCopy(page)).toBe(edited);
  });

  it.each([
    ['with nothing in between', ''],
    // Saving never ends: only what was written down before it can bring the edit back.
    ['while the device is too slow to save', `if (!sessionStorage.slow) { sessionStorage.slow = 1; IDBObjectStore.prototype.put = () => ({}); }`],
    [
      'while the page that is left lingers as well',
      `if (!sessionStorage.slow) { sessionStorage.slow = 1; IDBObjectStore.prototype.put = () => ({}); }
       const request = LockManager.prototype.request;
       LockManager.prototype.request = function (name, options, work) {
         const { signal } = options;
         return signal ? new Promise((_, refuse) => signal.addEventListener('abort', () => refuse(signal.reason))) : request.call(this, name, options, work);
       };`,
    ],
  ])('right after an edit keeps the edit (%s)', async (_how, before) => {
    const page = await visit({ untilRest: false, before });
    await rowOf(page, 'B', 1).click();
    // The edit and the leaving in one go.
    await page.getByRole('textbox', { name: 'Flowers each spring' }).evaluate((box: HTMLInputElement) => {
      box.value = '177';
      box.dispatchEvent(new InputEvent('input', { bubbles: true, composed: true }));
      location.reload();
    });
    await page.waitForLoadState('load');
    await planLane(page, 'B').waitFor();
    await expect
      .poll(async () => {
        const { plans } = JSON.parse(await savedCopy(page)) as { plans: { generations: { flowers: number }[] }[] };
        return plans[1]?.generations[1]?.flowers;
      })
      .toBe(177);
    expect(await banner(page).getByRole('button', { name: 'Undo' }).getAttribute('title')).toBe('Undo: flowers each spring 120 → 177 (plan B)');
  });
});

describe('my programmes', () => {
  it('are opened, copied, renamed, removed and brought back; none takes the place of another', async () => {
    const page = await visit({ untilRest: false });
    await page.getByRole('link', { name: 'My programmes' }).click();
    await page.getByRole('heading', { name: 'Nothing of yours is kept on this device yet.' }).waitFor();
    await page.getByRole('link', { name: 'What is likely?' }).click();
    await planLane(page, 'B').waitFor();
    await typeFlowers(page, '130');
    await savedNow(page);
    const pears = await savedCopy(page);

    await page.getByRole('link', { name: 'My programmes' }).click();
    await page.getByRole('button', { name: 'A slow walnut' }).click();
    await banner(page).getByText('A slow walnut is open, as one of “My programmes”').waitFor();
    expect(new URL(page.url()).hash).toBe('#/likely');
    expect(await savedCopy(page)).not.toBe(pears);
    await page.getByRole('link', { name: 'My programmes' }).click();
    await expect.poll(() => titles(page)).toHaveLength(2);
    const walnut = (await titles(page))[0] ?? '';

    await page.getByRole('textbox', { name: 'Title' }).fill('Walnuts by the brook');
    await page.keyboard.press('Enter');
    await expect.poll(() => titles(page)).toEqual(['Walnuts by the brook', 'Red pear at the mill']);
    expect(await banner(page).getByRole('button', { name: 'Undo' }).getAttribute('title')).toBe(`Undo: title “${walnut}” → “Walnuts by the brook”`);

    await page.getByRole('button', { name: 'Copy Red pear at the mill' }).click();
    await expect.poll(() => titles(page)).toEqual(['Red pear at the mill, copy', 'Walnuts by the brook', 'Red pear at the mill']);
    await page.getByRole('button', { name: 'Remove Red pear at the mill', exact: true }).click();
    await expect.poll(() => titles(page)).toEqual(['Red pear at the mill, copy', 'Walnuts by the brook']);
    await page.locator('oo-mine .said').getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => titles(page)).toHaveLength(3);
    await page.getByRole('button', { name: 'Remove Red pear at the mill', exact: true }).click();
    await page.getByRole('button', { name: 'Bring back Red pear at the mill' }).click();
    await expect.poll(() => titles(page)).toHaveLength(3);
    await page.getByRole('button', { name: 'Open Red pear at the mill', exact: true }).click();
    await planLane(page, 'B').waitFor();
    expect(await savedCopy(page)).toBe(pears);
  });

  it('the open one can be removed for good; the next is opened', async () => {
    const page = await visit({ untilRest: false });
    await typeFlowers(page, '130');
    await savedNow(page);
    await page.getByRole('link', { name: 'My programmes' }).click();
    await page.getByRole('button', { name: 'Remove Red pear at the mill' }).click();
    await page.getByRole('button', { name: 'Remove Red pear at the mill for good' }).click();
    await page.getByRole('button', { name: 'Yes, for good' }).click();
    await page.getByText('Red pear at the mill was removed for good.').waitFor();
    await page.getByRole('heading', { name: 'Nothing of yours' }).waitFor();
    await page.reload();
    await page.getByRole('heading', { name: 'Nothing of yours' }).waitFor();
  });

  it('have no fault that axe knows, and a text that cannot be read is offered as a file', async () => {
    const page = await visit({ untilRest: false, width: 390 });
    const later = '{"format":"orchard-odds programme","version":99,"title":"Mine, from next year"}';
    await leaveEarlier(page, later);
    await page.reload();
    await page.getByRole('alert').filter({ hasText: 'It has been set aside untouched' }).waitFor();
    await planLane(page, 'B').waitFor();
    await typeFlowers(page, '130');
    await savedNow(page);
    await openMenu(page);
    await page.getByRole('link', { name: 'My programmes' }).click();
    await page.getByRole('heading', { name: 'Set aside: cannot be read by this version' }).waitFor();
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: /^Save the text as a file: A text kept/ }).click()]);
    const chunks: Buffer[] = [];
    for await (const chunk of await download.createReadStream()) chunks.push(Buffer.from(chunk as Uint8Array));
    expect(Buffer.concat(chunks).toString('utf8')).toBe(later);
    expect(await axeFaults(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBeLessThanOrEqual(0);
  });

  it('what the first version kept becomes the first of them', async () => {
    const page = await visit({ untilRest: false });
    await leaveEarlier(page, (await savedCopy(page)).replace('Red pear at the mill', 'Pears of before'));
    await page.reload();
    await banner(page).getByText('Pears of before').waitFor();
    await page.getByRole('alert').filter({ hasText: 'What an earlier version kept on this device' }).waitFor();
    await openMenu(page);
    await page.getByRole('link', { name: 'My programmes' }).click();
    await expect.poll(() => titles(page)).toEqual(['Pears of before']);
  });
});

describe('trouble with the device', () => {
  it('full: it says so, keeps nothing from being opened unasked, and saves when there is room', async () => {
    const page = await visit({
      untilRest: false,
      before: `window.full = true; const put = IDBObjectStore.prototype.put; IDBObjectStore.prototype.put = function (...args) { if (window.full) throw new DOMException('full', 'QuotaExceededError'); return put.apply(this, args); };`,
    });
    await typeFlowers(page, '130');
    await page.getByRole('alert').filter({ hasText: 'There is no room left on this device' }).waitFor();
    const edited = await savedCopy(page);
    await openFile(page, 'other.json', edited.replace('Red pear at the mill', 'Other pears'));
    await page.getByRole('alert').filter({ hasText: 'What you have here is not saved yet' }).waitFor();
    expect(await savedCopy(page)).toBe(edited);
    await page.getByRole('button', { name: 'Stay here' }).click();
    await page.evaluate(() => Reflect.set(window, 'full', false));
    await page.getByRole('button', { name: 'Try again' }).click();
    await savedNow(page);
    expect(await page.getByRole('alert').count()).toBe(0);
  });

  it('cleared while the page is open: it says so without an edit, and keeps it again', async () => {
    const page = await visit({ untilRest: false });
    await typeFlowers(page, '130');
    await savedNow(page);
    const edited = await savedCopy(page);
    await clearSiteData(page);
    await page.getByRole('alert').filter({ hasText: 'no longer on this device' }).waitFor();
    expect(await savedCopy(page)).toBe(edited);
    await page.getByRole('button', { name: 'Keep it on this device again' }).click();
    await savedNow(page);
    await page.reload();
    await planLane(page, 'B').waitFor();
    expect(await savedCopy(page)).toBe(edited);
  });
});

describe('the focus', () => {
  it('stays on the page after the last undo, after a plan is removed, and when a message is closed', async () => {
    const page = await visit({ untilRest: false });
    const focused = () => page.evaluate(() => document.activeElement?.localName);
    await typeFlowers(page, '130');
    const undo = banner(page).getByRole('button', { name: 'Undo' });
    await undo.focus();
    await page.keyboard.press('Enter');
    expect(await undo.isDisabled()).toBe(true);
    expect(await undo.evaluate((button) => (button.getRootNode() as ShadowRoot).activeElement === button)).toBe(true);

    await planLane(page, 'A').locator('button.plan-name').click();
    await page.getByRole('button', { name: 'Remove Open-pollinated seed' }).focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => planLane(page, 'A').count()).toBe(0);
    await expect.poll(focused).toBe('oo-app');

    await openFile(page, 'letter.json', 'Dear Anna');
    const alert = page.getByRole('alert');
    await alert.getByRole('button', { name: 'Close' }).focus();
    await page.keyboard.press('Enter');
    await alert.waitFor({ state: 'detached' });
    await expect.poll(focused).toBe('oo-app');
  });
});

describe('“Start my own”', () => {
  it('is reached from the rail and from the list', async () => {
    const page = await visit({ untilRest: false });
    await page.getByRole('navigation').getByRole('link', { name: 'Start my own' }).click();
    await page.locator('oo-start').getByRole('heading').first().waitFor();
    await page.getByRole('navigation').getByRole('link', { name: 'My programmes' }).click();
    await page.locator('oo-mine').getByRole('link', { name: 'Start my own' }).click();
    await page.locator('oo-start').getByRole('heading').first().waitFor();
  });
});
