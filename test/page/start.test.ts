import type { Page } from 'playwright';
import { describe, expect, it } from 'vitest';
import { atRest, planNames, visits } from './visit.ts';

const visit = visits({ futures: 400 });

/** A first user may be asked for so much, and no more, before the first results. */
const MOST_INPUTS = 25;

/** What the focus stands on, through all shadow roots: the words that name it, else its own. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    let at: Element | null = document.activeElement;
    while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
    const root = at?.getRootNode();
    const names = (at?.getAttribute('aria-labelledby') ?? 'name')
      .split(' ')
      .map((id) => (root instanceof ShadowRoot ? (root.getElementById(id)?.textContent ?? '') : ''));
    return (names.join(' ').trim() || at?.getAttribute('aria-label') || at?.textContent || '').replace(/\s+/g, ' ').trim();
  });

/**
 * A person at the keyboard who never touches the mouse. An input is a field typed into, an option chosen or a button pressed; Tab only
 * moves on.
 */
class Person {
  inputs = 0;
  constructor(private readonly page: Page) {}

  private async reach(name: string): Promise<void> {
    const passed: string[] = [];
    for (let press = 0; press < 40; press += 1) {
      const words = await focused(this.page);
      if (words.includes(name)) return;
      passed.push(words);
      await this.page.keyboard.press('Tab');
    }
    throw new Error(`“${name}” is not reached by Tab, but: ${passed.join('; ')}`);
  }

  async types(name: string, text: string): Promise<void> {
    await this.reach(name);
    await this.page.keyboard.type(text);
    this.inputs += 1;
  }

  /** Presses Enter where the focus is: in a box it goes on. */
  async enters(): Promise<void> {
    await this.page.keyboard.press('Enter');
    this.inputs += 1;
  }

  async presses(name: string): Promise<void> {
    await this.reach(name);
    await this.enters();
  }
}

const question = (page: Page): Promise<string | null> => page.locator('oo-start h1').textContent();
async function open(page: Page): Promise<Person> {
  await page.goto(`${page.url().split('#')[0] ?? ''}#/start`);
  await page.locator('oo-start h1').waitFor();
  await page.locator('oo-start h1').focus();
  const person = new Person(page);
  // The way here is an input too.
  person.inputs = 1;
  return person;
}

describe('start your own', () => {
  it(`leads a first user by keyboard alone to first results, with at most ${String(MOST_INPUTS)} inputs`, async () => {
    const page = await visit({ untilRest: false });
    const person = await open(page);
    await person.types('Name of the tree', 'Gate Pippin');
    await person.types('It is a kind of', 'apple');
    await person.types('What is rare about it', 'pink flesh');
    await person.types('Seasons in which it showed', '4');
    await person.types('Seasons in which you looked', '5');
    await person.enters();
    expect(await question(page)).toBe('What will you cross it with, and how?');
    await person.types('Name of the partner', 'Lane Russet');
    await person.enters();
    expect(await question(page)).toBe('What ground, hands and years have you?');
    await person.types('Places for trees', '80');
    await person.types('Hours a year', '120');
    await person.types('Your last judging year', '2060');
    await person.enters();
    expect(await question(page)).toBe('What do you know, and from what counts?');
    await person.types('ripe fruits', '18');
    await person.types('of flowers pollinated', '240');
    await person.enters();
    expect(await question(page)).toBe('When are you satisfied?');
    await person.types('Trees you want', '1');
    await person.enters();
    await page.locator('oo-lanes .lane').first().waitFor();
    expect(person.inputs, 'inputs to the first results').toBeLessThanOrEqual(MOST_INPUTS);
    process.stdout.write(`start your own: ${String(person.inputs)} inputs\n`);
    await atRest(page);
    expect(new URL(page.url()).hash).toBe('#/likely');
    expect(await page.getByText('Pink flesh from Gate Pippin').first().isVisible()).toBe(true);
    expect(await planNames(page)).toEqual([
      'Open seed of Gate Pippin, best × best',
      'Brother × sister of Gate Pippin × Lane Russet',
      'One large cross, Gate Pippin × Lane Russet',
    ]);
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toMatch(/by 2060/);
  });

  it('loses no answer over a reload', async () => {
    const page = await visit({ untilRest: false });
    const person = await open(page);
    await person.types('Name of the tree', 'Gate Pippin');
    await person.types('It is a kind of', 'apple');
    await person.types('What is rare about it', 'pink flesh');
    await person.enters();
    await person.types('Name of the partner', 'Lane Russet');
    await page.reload();
    await page.locator('oo-start h1').waitFor();
    expect(await question(page)).toBe('What will you cross it with, and how?');
    expect(await page.getByRole('textbox', { name: 'Name of the partner' }).inputValue()).toBe('Lane Russet');
    await page.getByRole('button', { name: 'Back', exact: true }).click();
    expect(await page.getByRole('textbox', { name: 'Name of the tree' }).inputValue()).toBe('Gate Pippin');
  });

  it('Back of the browser goes from question to question, and from the results to the last one', async () => {
    const page = await visit({ untilRest: false });
    const person = await open(page);
    await person.types('Name of the tree', 'Gate Pippin');
    await person.types('It is a kind of', 'apple');
    await person.types('What is rare about it', 'pink flesh');
    await person.enters();
    await person.types('Name of the partner', 'Lane Russet');
    await person.enters();
    await page.locator('oo-start h1', { hasText: 'What ground' }).waitFor();
    expect(new URL(page.url()).hash).toBe('#/start/3');
    await page.goBack();
    await page.locator('oo-start h1', { hasText: 'What will you cross' }).waitFor();
    expect(await page.getByRole('textbox', { name: 'Name of the partner' }).inputValue()).toBe('Lane Russet');
    for (const title of ['What ground', 'What do you know', 'When are you satisfied']) {
      await page.getByRole('button', { name: 'Go on' }).click();
      await page.locator('oo-start h1', { hasText: title }).waitFor();
    }
    await page.getByRole('button', { name: 'Show me what is likely' }).click();
    await page.locator('oo-lanes .lane').first().waitFor();
    await page.goBack();
    await page.locator('oo-start h1', { hasText: 'When are you satisfied' }).waitFor();
    expect(await page.getByText('Gate Pippin, an apple').isVisible()).toBe(true);
  });
});
