import { describe, expect, it } from 'vitest';
import { savedNow, secondTab, titles, typeFlowers } from './device.ts';
import { rowOf, savedCopy, visits } from './visit.ts';

const visit = visits({ futures: 400 });
const flowersOf = async (page: Parameters<typeof savedCopy>[0]): Promise<number | undefined> => {
  const { plans } = JSON.parse(await savedCopy(page)) as { plans: { generations: { flowers: number }[] }[] };
  return plans[1]?.generations[1]?.flowers;
};
/** A tab that does not hear of others, as one that slept. */
const DEAF = `Object.defineProperty(window, 'BroadcastChannel', { value: undefined });`;

describe('two tabs with the same programme', () => {
  it('follow each other, and an edit in the one that followed is taken', async () => {
    const page = await visit({ untilRest: false });
    await typeFlowers(page, '130');
    await savedNow(page);
    const other = await secondTab(page);
    expect(await flowersOf(other)).toBe(130);
    await typeFlowers(page, '140');
    await other.getByRole('banner').getByText('changed in another window just now').waitFor();
    expect(await flowersOf(other)).toBe(140);
    await typeFlowers(other, '150');
    await expect.poll(() => flowersOf(page)).toBe(150);
    expect(await page.getByRole('alert').count()).toBe(0);
    expect(await other.getByRole('alert').count()).toBe(0);
  });

  it('that did not hear of each other: the later says so, overwrites nothing, and can take theirs or keep its own', async () => {
    const page = await visit({ untilRest: false, before: DEAF });
    await typeFlowers(page, '130');
    await savedNow(page);
    const other = await secondTab(page, DEAF);
    await rowOf(other, 'B', 1).click();
    await typeFlowers(page, '140');
    await savedNow(page);
    await typeFlowers(other, '150');
    const alert = other.getByRole('alert').filter({ hasText: 'Another window or tab has saved this programme' });
    await alert.waitFor();
    expect(await flowersOf(other)).toBe(150);
    await other.getByRole('button', { name: 'Take theirs' }).click();
    await alert.waitFor({ state: 'detached' });
    expect(await flowersOf(other)).toBe(140);
    await other.getByRole('banner').getByRole('button', { name: 'Undo' }).click();
    expect(await flowersOf(other)).toBe(150);
    await savedNow(other);

    await typeFlowers(page, '160');
    await page.getByRole('button', { name: 'Keep mine as a copy' }).click();
    await savedNow(page);
    await page.getByRole('link', { name: 'My programmes' }).click();
    await expect.poll(() => titles(page)).toEqual(['Red pear at the mill, mine', 'Red pear at the mill']);
    expect(await flowersOf(page)).toBe(160);
    expect(await flowersOf(other)).toBe(150);
  });
});
