import { ContextProvider } from '@lit/context';
import { html, render } from 'lit';
import { afterEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { lessonsContext, programmeContext, runsContext } from '../../../src/components/contexts.ts';
import '../../../src/components/inheritance/inheritance.ts';
import '../../../src/components/learned/learned.ts';
import '../../../src/components/losers/losers.ts';
import { setAt } from '../../../src/model/edits.ts';
import type { Programme } from '../../../src/model/programme.ts';
import { lessonKey } from '../../../src/state/lessons/lesson-key.ts';
import { learnAll, type Lessons } from '../../../src/state/lessons/lessons.ts';
import { LessonsStore } from '../../../src/state/lessons/lessons-store.ts';
import { ProgrammeStore } from '../../../src/state/programme-store.ts';
import { RunsStore } from '../../../src/state/runs-store.ts';
import { inlineThread } from '../../../src/workers/inline.ts';
import { poolRunner } from '../../../src/workers/runner.ts';
import { breaches, everything, find, settled } from '../fields/mount.ts';
import { button, labelled, tenSeasons, tooSmall } from '../log/desk.ts';

const PARTS = { learned: html`<oo-learned></oo-learned>`, inheritance: html`<oo-inheritance></oo-inheritance>`, losers: html`<oo-losers></oo-losers>` };

afterEach(() => document.documentElement.removeAttribute('data-theme'));

/** Learns each state of the log once, however many tests look at it. */
const known = new Map<string, Lessons>();
const once = {
  learn: (programme: Programme): Promise<Lessons> => {
    const key = lessonKey(programme);
    const lessons = known.get(key) ?? learnAll(programme);
    known.set(key, lessons);
    return Promise.resolve(lessons);
  },
};

/** The three parts on a page of their own, with an orchard of ten invented seasons; every edit goes to the store as on the page. */
async function open(width: number, part: keyof typeof PARTS) {
  await page.viewport(width, 900);
  const pauses: (() => void)[] = [];
  const programmes = new ProgrammeStore(tenSeasons());
  const store = new LessonsStore(programmes.state.runnable, once, () => new Promise((resolve) => void pauses.push(resolve)));
  programmes.subscribe(({ runnable }) => store.update(runnable));
  const place = document.createElement('main');
  document.body.append(place);
  new ContextProvider(place, { context: programmeContext, initialValue: programmes });
  new ContextProvider(place, { context: runsContext, initialValue: new RunsStore(poolRunner(() => inlineThread(), 1)) });
  new ContextProvider(place, { context: lessonsContext, initialValue: store });
  const draw = () => {
    render(
      html`<h1>What has happened?</h1>
        ${PARTS[part]}`,
      place,
    );
    const element = place.querySelector<HTMLElementTagNameMap['oo-learned']>(`oo-${part}`);
    if (element) element.programme = programmes.state.programme;
  };
  programmes.subscribe(draw);
  place.addEventListener('oo-change', (event) => {
    const { path, value, label } = event.detail;
    programmes.edit(setAt(programmes.state.programme, path, value), label, path.join('/'));
  });
  draw();
  const ready = async () => {
    for (const end of pauses.splice(0)) end();
    await expect.poll(() => !store.state.learning && store.state.of === programmes.state.runnable, { timeout: 10_000 }).toBe(true);
    await document.fonts.ready;
    await settled();
  };
  await settled();
  await ready();
  return { place, programmes, ready };
}

const words = (root: ParentNode): string =>
  everything(root)
    .filter((element) => element.childElementCount === 0 && !element.closest('style'))
    .map((element) => element.textContent)
    .join(' | ')
    .replaceAll(/[\u00a0\s]+/gu, ' ');

describe('what the log teaches, on the page', () => {
  it.each([
    [1100, 'learned', 'light'],
    [320, 'learned', 'dark'],
    [320, 'inheritance', 'light'],
    [320, 'losers', 'dark'],
  ] as const)('has no breach of WCAG 2.2 AA, nothing too small and no sideways scroll at %i px (%s, %s)', async (width, part, theme) => {
    document.documentElement.dataset['theme'] = theme;
    const { place } = await open(width, part);
    expect(await breaches(place)).toEqual([]);
    expect(await tooSmall(place)).toEqual([]);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
  });

  it('takes a learned number over at a click, says so, and goes back', async () => {
    const { place, programmes, ready } = await open(1100, 'learned');
    const at = programmes.state.programme.crosses.findIndex(({ name }) => name === 'pear × quince');
    const set = () => programmes.state.programme.crosses[at]?.set ?? 0;
    const before = set();
    const use = button(place, 'Use my counts: Fruit set, pear × quince');
    use.focus();
    await userEvent.keyboard('{Enter}');
    expect(programmes.state.undo.at(-1)?.named).toBe('my counts used: Fruit set, pear × quince');
    expect(set()).toMatchObject({ source: { kind: 'counted', note: 'my counts 2027–2029' } });
    await settled();
    // Until the log is read again, what stands there goes into no document.
    const waiting = button(place, 'Use my counts: Seeds that come up, pear × quince');
    expect(waiting.getAttribute('aria-disabled')).toBe('true');
    waiting.click();
    expect(programmes.state.undo).toHaveLength(1);

    await ready();
    expect(words(place)).toContain('in use 6.6–21');
    await userEvent.click(button(place, 'Go back to what it was: Fruit set, pear × quince'));
    expect(set()).toEqual(before);
    expect(programmes.state.undo.at(-1)?.named).toBe('back to what it was: Fruit set, pear × quince');
  });

  it('takes all at once, as one step', async () => {
    const { place, programmes, ready } = await open(1100, 'learned');
    const all = find(place, HTMLButtonElement, 'button.all');
    expect(all.textContent.trim()).toMatch(/^Use my counts for all \d\d$/);
    await userEvent.click(all);
    await ready();
    expect(programmes.state.undo).toHaveLength(1);
    expect(everything(place).some((element) => element.matches('button.all'))).toBe(false);
    expect(words(place)).not.toContain('not yet');
  });

  it('is read row by row with the arrow keys, in words', async () => {
    const { place } = await open(1100, 'learned');
    const slider = find(place, HTMLElement, '[role=slider]');
    slider.focus();
    await userEvent.keyboard('{ArrowDown}');
    expect(slider.getAttribute('aria-valuetext')?.replaceAll('\u00a0', ' ')).toBe(
      'Fruit set, pear × quince: with your counts 7–21, 8 times in 10; before 20–60; another spring 3.9–25; 70 fruits of 900 flowers; 3 batches, 2027–2029',
    );
    await userEvent.keyboard('{ArrowDown}');
    expect(slider.getAttribute('aria-valuetext')).toMatch(/^Seeds that come up, pear × quince/);
  });

  it('keeps a spoilt batch out of the rates, and says what was left out', async () => {
    const { place, programmes, ready } = await open(1100, 'learned');
    await userEvent.click(labelled(place, 'Pear by pear, frost year: frost 20 April 2028'));
    expect(programmes.state.programme.log.batches.find(({ name }) => name === 'Pear by pear, frost year')?.apart).toBe(true);
    expect(programmes.state.undo.at(-1)?.named).toBe('Pear by pear, frost year kept out of the rates');
    await ready();
    expect(words(place)).toContain('Pear by pear, frost year: kept out of the rates, as you asked');
  });

  it('weighs the explanations once, and goes back to what was believed', async () => {
    const { place, programmes, ready } = await open(1100, 'inheritance');
    const rules = () => programmes.state.programme.traits.flatMap((trait) => (trait.type === 'shown' ? trait.rules : []));
    const before = rules();
    await userEvent.click(button(place, 'Take these chances for red flesh'));
    await ready();
    expect(words(place)).toContain('The programme believes what your counts say.');
    expect(rules().map(({ weightBefore }) => weightBefore)).toEqual(before.map(({ weight }) => weight));
    await userEvent.click(button(place, 'Go back to what was believed'));
    expect(rules()).toEqual(before);
  });

  it('lists the likely carriers with their places, the likeliest first', async () => {
    const { place } = await open(1100, 'losers');
    const table = everything(place).filter(
      (element): element is HTMLTableElement => element instanceof HTMLTableElement && element.rows[0]?.textContent.includes('Tag') === true,
    )[0];
    const lines = [...(table?.tBodies[0]?.rows ?? [])].map(({ cells }) => [...cells].map((cell) => cell.textContent));
    const chances = lines.map((line) => parseInt(line.at(-1) ?? '', 10));
    expect(chances).toEqual(chances.toSorted((a, b) => b - a));
    expect(lines).toHaveLength(12);
    expect(lines.every(([tag, stands]) => tag !== '' && /block/.test(stands ?? ''))).toBe(true);
    const more = everything(place).find(
      (element): element is HTMLButtonElement => element instanceof HTMLButtonElement && element.textContent.includes('more'),
    );
    const rest = Number(/\d+/.exec(more?.textContent ?? '')?.[0]);
    more?.click();
    await settled();
    expect(table?.tBodies[0]?.rows).toHaveLength(12 + rest);
  });
});
