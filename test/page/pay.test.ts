import type { Locator, Page } from 'playwright';
import { describe, expect, it } from 'vitest';
import { plain, visits, type VisitOptions } from './visit.ts';

/** That the page fits, and has no fault that axe knows, is looked at in everywhere.test.ts. */
const visit = visits({ futures: 400 });
const PATIENCE = { timeout: 90_000 };
/** So high that every question is in view, and asked. */
const HIGH = 12_000;

/** Questions that are walked through: what they are called in the page, what their finding says, and what must be pressed first. */
const QUESTIONS: readonly { readonly id: string; readonly finding: RegExp; readonly press?: string }[] = [
  { id: 'graft', finding: /^(Graft|Leave)/ },
  { id: 'when', finding: /^Graft at \d+½? months?/ },
  { id: 'trial', finding: /^A trial/, press: 'Work out what a trial is worth' },
  { id: 'howmany', finding: /flowers each spring/ },
  { id: 'open', finding: /pollen|Cross by hand|no clear difference/ },
  { id: 'unknowns', finding: /luck/, press: 'Find out' },
  { id: 'better', finding: /sooner|fewer|No clear difference|Nothing found/, press: 'Look for better plans' },
  { id: 'copies', finding: /Old Hedgerow/ },
  { id: 'ifs', finding: /This spring an hour gains most|would cost|Nothing here/, press: 'Work out what each would change' },
];

/** Opens the example and goes to the questions. */
async function toQuestions(options: VisitOptions = {}): Promise<Page> {
  const page = await visit({ height: HIGH, untilRest: false, ...options });
  await page.getByRole('link', { name: 'Would it pay to…?' }).click();
  return page;
}

const section = (page: Page, id: string): Locator => page.locator(`oo-pay-${id}`);
const opening = async (page: Page): Promise<string> => plain(await page.locator('oo-pay h1').textContent());

/** Waits until a question has its whole answer, for the document as it stands. */
async function answered(page: Page, { id, press }: (typeof QUESTIONS)[number]): Promise<void> {
  const at = section(page, id);
  await at.scrollIntoViewIfNeeded();
  // Much work that an edit overtakes is asked for again at another button.
  if (press !== undefined)
    await at
      .getByRole('button', { name: press })
      .or(at.getByRole('button', { name: 'Ask again' }))
      .click();
  await at.locator('details.method').waitFor(PATIENCE);
  await at.locator('.state', { hasNotText: /\S/ }).waitFor({ ...PATIENCE, state: 'attached' });
}

async function allAnswered(page: Page, questions = QUESTIONS): Promise<void> {
  for (const question of questions) await answered(page, question);
}

/** Those that are asked without a button. */
const QUICK = QUESTIONS.filter(({ press }) => press === undefined);

describe('“Would it pay to…?”', () => {
  it('opens with finding and unknowns; every question has sentence, picture and table, read with the arrow keys', { timeout: 180_000 }, async () => {
    const page = await toQuestions({ before: LONGEST_TASK });
    await allAnswered(page);
    expect(await opening(page)).toMatch(/^Yes, graft\. With your numbers \d in 10 futures of plan D .* by 2057, against \d in 10 on their own roots/);
    expect(plain(await page.locator('oo-pay .unknown').textContent())).toContain('No published count of grafted against ungrafted weak hybrids was found');
    expect(plain(await page.locator('oo-pay .lede').textContent())).toMatch(/Of ten trees you would call proven, about \w+ truly are\./);
    for (const { id, finding } of QUESTIONS) {
      const at = section(page, id);
      expect(plain(await at.locator('h2').first().textContent())).toMatch(finding);
      expect(await at.locator('.picture svg path, svg.bar rect').count(), `${id} has a picture`).toBeGreaterThan(0);
      for (const data of await at.locator('details.data > summary').all()) await data.click();
      expect(await at.locator('table tbody tr').count(), `${id} has a table`).toBeGreaterThan(1);
    }
    // Measured, not required: the page's own threads do the sums.
    console.info(`Longest task on the main thread: ${String(await page.evaluate<number>('window.longestTask ?? 0'))} ms`);

    // Read with the arrow keys.
    const map = page.getByRole('slider', { name: 'Place on the map to read' });
    const said = async (slider: Locator) => plain(await slider.getAttribute('aria-valuetext'));
    await map.focus();
    await page.keyboard.press('ArrowRight');
    const here = await said(map);
    expect(here).toMatch(/^Half of the weak dead by \d+½? months?, \d of 10 grafts take: grafting wins, \+\d+ in 100 \(.*\)\.$/);
    await page.keyboard.press('ArrowRight');
    expect(await said(map)).not.toBe(here);
    await page.keyboard.press('End');
    for (let row = 0; row < 5; row += 1) await page.keyboard.press('PageDown');
    // Eight years and a take of nearly nothing: the far corner.
    expect(await said(map)).toMatch(/^Half of the weak dead by 7 years, 3 of 100 grafts take: own roots win/);
    await page.keyboard.press('Escape');
    expect(await said(map)).toBe('no place chosen');
    for (const [name, words] of [
      ['Chance that weakness sits in the roots', /^In the roots .*: grafted \d+ % .*, on own roots/],
      ['Age at grafting to read', /^At 2 months: of 10 weak .* alive/],
      ['Year to read', /^By 2027 .* is lost: 1 copy 0 %/],
    ] as const) {
      const slider = page.getByRole('slider', { name });
      await slider.first().focus();
      await page.keyboard.press('Home');
      expect(await said(slider.first())).toMatch(words);
    }
  });

  it('asks anew for another plan and after an edit, and says what cannot be asked', { timeout: 180_000 }, async () => {
    const page = await toQuestions();
    await allAnswered(page, QUICK);
    await page.getByLabel('Asked of plan').selectOption({ index: 0 });
    await page.locator('oo-pay h1', { hasText: 'Plan A raises nothing weak' }).waitFor(PATIENCE);
    await section(page, 'when').getByText('there is nothing to rescue').waitFor(PATIENCE);
    await page.getByLabel('Asked of plan').selectOption({ index: 3 });
    await page.locator('oo-pay h1', { hasText: 'plan D' }).waitFor(PATIENCE);

    // Answers that an edit overtakes are marked until they are asked anew.
    await allAnswered(page, QUICK);
    const map = page.locator('oo-graft-map');
    expect(await map.getAttribute('stale')).toBeNull();
    // Watched from before the edit: a quick answer may take the mark away again between two looks.
    const marked = map.evaluate(
      (element) =>
        new Promise<void>((done) => {
          new MutationObserver(() => {
            if (element.hasAttribute('stale')) done();
          }).observe(element, { attributes: true });
        }),
    );
    await page.getByLabel('Take my guesses as they stand').check();
    await marked;
    await page.locator('oo-graft-map:not([stale])').waitFor(PATIENCE);
    await allAnswered(page, QUICK);
    // Nothing is left open, so the document states where it stands instead of guessing.
    expect(plain(await section(page, 'graft').locator('.notes').first().textContent())).toContain('You say that half of the weak ones are dead by');
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await page.getByLabel('Take my guesses as they stand').isChecked()).toBe(false);
  });
});

const LONGEST_TASK = `
  window.longestTask = 0;
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) window.longestTask = Math.max(window.longestTask, Math.round(duration));
  }).observe({ type: 'longtask', buffered: true });
`;
