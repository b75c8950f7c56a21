import { describe, expect, it } from 'vitest';
import { savedNow, titles, typeFlowers } from './device.ts';
import { planLane, savedCopy, visits } from './visit.ts';

const visit = visits({ futures: 400 });

/** The link that “Share” shows for what stands on the page. */
async function sharedLink(page: Parameters<typeof savedCopy>[0]): Promise<string> {
  await page.getByRole('banner').getByRole('button', { name: 'Share' }).click();
  const box = page.getByRole('dialog').getByRole('textbox');
  await box.waitFor();
  const link = await box.inputValue();
  await page.keyboard.press('Escape');
  return link;
}

describe('a programme that comes with a link', () => {
  it('is told about first; kept, looked at, or left, it never takes the place of the own', async () => {
    const sender = await visit({ untilRest: false });
    await typeFlowers(sender, '222');
    const sent = await savedCopy(sender);
    const link = await sharedLink(sender);
    expect(link).toContain('#/open/');

    const page = await visit({ untilRest: false });
    await typeFlowers(page, '130');
    await savedNow(page);
    const own = await savedCopy(page);
    const arrive = async () => {
      await page.goto('about:blank');
      await page.goto(link);
      await page.getByRole('heading', { name: 'Somebody’s programme: Red pear at the mill' }).waitFor();
      expect(await savedCopy(page)).toBe(own);
    };
    await arrive();
    await page.getByRole('link', { name: 'Go back to mine' }).click();
    await planLane(page, 'B').waitFor();
    expect(await savedCopy(page)).toBe(own);

    await arrive();
    await page.getByRole('button', { name: 'Look only' }).click();
    await page.getByRole('banner').getByText('kept only once you change something').waitFor();
    expect(await savedCopy(page)).toBe(sent);
    await page.getByRole('link', { name: 'My programmes' }).click();
    await expect.poll(() => titles(page)).toHaveLength(1);

    await arrive();
    await page.getByRole('button', { name: 'Keep it as my own copy' }).click();
    await savedNow(page);
    expect(await savedCopy(page)).toBe(sent);
    await page.getByRole('link', { name: 'My programmes' }).click();
    await expect.poll(() => titles(page)).toHaveLength(2);
  });

  it('and is damaged: it says so, and the own stays', async () => {
    const page = await visit({ untilRest: false });
    await typeFlowers(page, '130');
    await savedNow(page);
    const own = await savedCopy(page);
    await page.evaluate(() => (location.hash = '#/open/not-a-programme'));
    await page.getByRole('alert').filter({ hasText: 'The programme in this link cannot be read. Your own is untouched.' }).waitFor();
    await page.getByRole('link', { name: 'Go back to mine' }).click();
    await planLane(page, 'B').waitFor();
    expect(await savedCopy(page)).toBe(own);
  });
});
