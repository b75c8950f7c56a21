import { html } from 'lit';
import { beforeEach, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { OoStart } from '../../../src/components/pages/start/start.ts';
import { parseProgramme } from '../../../src/model/read.ts';
import { breaches, choose, edits, everything, find, mount, problemOf, settled, typeInto } from '../fields/mount.ts';

beforeEach(() => {
  sessionStorage.clear();
  history.replaceState(null, '', '#');
});

async function open(): Promise<OoStart> {
  const el = Object.assign(new OoStart(), { spring: 2027 });
  await mount(html`${el}`);
  return el;
}
/** The box, choice or first radio of an answer. */
const control = (el: OoStart, path: string): HTMLInputElement | HTMLSelectElement => {
  const field = find(el.renderRoot, HTMLElement, `[data-path="${path}"]`);
  const inner = everything(field).find((each) => each.matches('input, select'));
  if (inner instanceof HTMLInputElement || inner instanceof HTMLSelectElement) return inner;
  throw new Error(`Nothing to fill in at “${path}”.`);
};
async function fill(el: OoStart, answers: Readonly<Record<string, string>>): Promise<void> {
  for (const [path, text] of Object.entries(answers)) {
    const box = control(el, path);
    if (box instanceof HTMLSelectElement) choose(box, text);
    else typeInto(box, text);
    await settled();
  }
}
const press = async (el: OoStart, words: string): Promise<void> => {
  const button = everything(el.renderRoot).find((each) => each instanceof HTMLButtonElement && (each.ariaLabel ?? each.textContent.trim()) === words);
  if (!(button instanceof HTMLButtonElement)) throw new Error(`No button “${words}”.`);
  button.click();
  await settled();
};
const heading = (el: OoStart): string => find(el.renderRoot, HTMLHeadingElement, 'h1').textContent;
const progress = (el: OoStart): string => find(el.renderRoot, HTMLElement, '.lead b').textContent;
const focused = (): Element | null => {
  let at = document.activeElement;
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
  return at;
};

const TREE = { 'tree/name': 'Old Hedgerow', 'tree/kind': 'pear', 'tree/trait': 'red flesh' };

describe('oo-start', () => {
  it('has no breach of WCAG 2.2 AA in any question, with troubles and without', async () => {
    const el = await open();
    expect(await breaches(el)).toEqual([]);
    await press(el, 'Go on');
    expect(await breaches(el)).toEqual([]);
    await fill(el, TREE);
    await press(el, 'Go on');
    await fill(el, { 'partners/0/name': 'Mill Quince', 'partners/0/kind': 'quince' });
    expect(await breaches(el)).toEqual([]);
    for (const words of ['2 of 5', '3 of 5', '4 of 5']) {
      expect(progress(el)).toBe(words);
      await press(el, 'Go on');
      expect(await breaches(el)).toEqual([]);
    }
    expect(progress(el)).toBe('5 of 5');
  });

  it('does not leave a question that lacks something, says so beside it, and puts the focus there', async () => {
    const el = await open();
    await fill(el, { 'tree/name': 'Old Hedgerow', 'tree/kind': 'pear' });
    await press(el, 'Go on');
    expect(progress(el)).toBe('1 of 5');
    expect(problemOf(el.renderRoot)).toBe('Say in a word or two what is rare about it.');
    expect(focused()).toBe(control(el, 'tree/trait'));
    await fill(el, { 'tree/trait': 'red flesh', 'tree/showed': '5' });
    expect(problemOf(el.renderRoot)).toBe('');
    await fill(el, { 'tree/seasons': '4' });
    expect(problemOf(el.renderRoot)).toBe('It cannot have shown in more seasons than you looked.');
  });

  it('does not take what stood before for a number that cannot be read', async () => {
    const el = await open();
    await fill(el, { ...TREE, 'tree/seasons': 'many' });
    await press(el, 'Go on');
    expect(progress(el)).toBe('1 of 5');
    // No picture is there yet that could still show a number.
    expect(problemOf(el.renderRoot)).toBe('“many” is not a number. Your last good number, 3, stands.');
    expect(focused()).toBe(control(el, 'tree/seasons'));
  });

  it('Enter in a box goes on, and the focus is on the next question', async () => {
    const el = await open();
    await fill(el, TREE);
    control(el, 'tree/trait').focus();
    await userEvent.keyboard('{Enter}');
    await settled();
    expect(heading(el)).toBe('What will you cross it with, and how?');
    expect(focused()).toBe(find(el.renderRoot, HTMLHeadingElement, 'h1'));
  });

  it('marks what is filled in until it is given', async () => {
    const el = await open();
    const marks = () => everything(el.renderRoot).filter((each) => each.matches('.filled')).length;
    expect(marks()).toBe(4);
    await fill(el, { 'tree/showed': '4' });
    expect(marks()).toBe(3);
    expect(control(el, 'tree/seasons').value, 'filled in to agree with what was given').toBe('4');
  });

  it('keeps the answers and the question over Back, over a reload, and until they are emptied', async () => {
    const first = await open();
    await fill(first, TREE);
    await press(first, 'Go on');
    await fill(first, { 'partners/0/name': 'Saffron Bell' });
    await press(first, 'Back');
    expect(control(first, 'tree/name').value).toBe('Old Hedgerow');
    await press(first, 'Go on');
    expect(control(first, 'partners/0/name').value).toBe('Saffron Bell');
    first.remove();
    const second = await open();
    expect(progress(second)).toBe('2 of 5');
    expect(control(second, 'partners/0/name').value).toBe('Saffron Bell');
    await press(second, 'Back to “tree”');
    await press(second, 'Empty all answers');
    expect(control(second, 'tree/name').value).toBe('');
  });

  it('gives every question an address: Back of the browser goes to the question before, with all answers kept', async () => {
    location.hash = '#/start';
    const el = await open();
    expect(location.hash).toBe('#/start/1');
    const steps = history.length;
    await fill(el, TREE);
    await press(el, 'Go on');
    await fill(el, { 'partners/0/name': 'Saffron Bell' });
    await press(el, 'Go on');
    expect(location.hash).toBe('#/start/3');
    expect(history.length - steps, 'steps to go back').toBe(2);
    history.back();
    await expect.poll(() => progress(el)).toBe('2 of 5');
    await settled();
    expect(control(el, 'partners/0/name').value).toBe('Saffron Bell');
    expect(focused()).toBe(find(el.renderRoot, HTMLHeadingElement, 'h1'));
    history.back();
    await expect.poll(() => progress(el)).toBe('1 of 5');
    await settled();
    expect(control(el, 'tree/name').value).toBe('Old Hedgerow');
    history.forward();
    await expect.poll(() => progress(el)).toBe('2 of 5');
  });

  it('an address past a question that lacks something leads to that question', async () => {
    location.hash = '#/start/4';
    const el = await open();
    expect([progress(el), location.hash]).toEqual(['1 of 5', '#/start/1']);
    await fill(el, TREE);
    location.hash = '#/start/5';
    await expect.poll(() => location.hash).toBe('#/start/2');
    expect(progress(el)).toBe('2 of 5');
  });

  it('offers what is known of the trait in that kind, in plain words and with its source, to be taken or left', async () => {
    const el = await open();
    const known = () =>
      everything(el.renderRoot)
        .find((each) => each.matches('.known'))
        ?.textContent.replace(/\s+/g, ' ') ?? '';
    await fill(el, { ...TREE, 'tree/trait': 'white flesh' });
    expect(known(), 'not known in pear').not.toContain('white flesh.');
    await fill(el, { 'tree/kind': 'peach' });
    expect(known()).toContain('Known in peach: white flesh. One gene; one parent that carries it is enough.');
    expect(known()).toContain('only remembered · high confidence');
    expect(await breaches(el)).toEqual([]);
    await press(el, 'It is this one: white flesh');
    expect(focused()?.textContent.trim()).toBe('No, I don’t know how it is inherited');
    await press(el, 'Go on');
    await fill(el, { 'partners/0/name': 'Saffron Bell' });
    await press(el, 'Go on');
    await press(el, 'Go on');
    expect(control(el, 'known/rule').value).toBe('known:peach-white-flesh');
    await fill(el, { 'known/rule': 'unknown' });
    await press(el, 'Back to “tree”');
    expect(known()).toContain('It is this one');
  });

  it('lets a known trait be chosen instead of typed, and forgets its inheritance with another kind', async () => {
    const el = await open();
    await fill(el, { 'tree/name': 'Old Hedgerow', 'tree/kind': 'peach' });
    find(el.renderRoot, HTMLDetailsElement, 'details.known').open = true;
    await press(el, 'flat fruit');
    expect(control(el, 'tree/trait').value).toBe('flat fruit');
    await press(el, 'Go on');
    await fill(el, { 'partners/0/name': 'Saffron Bell' });
    await press(el, 'Back');
    await fill(el, { 'tree/kind': 'apple' });
    for (let question = 0; question < 3; question += 1) await press(el, 'Go on');
    expect(control(el, 'known/rule').value).toBe('unknown');
  });

  it('adds a partner, and takes one out without mixing up the others', async () => {
    const el = await open();
    await fill(el, TREE);
    await press(el, 'Go on');
    await fill(el, { 'partners/0/name': 'Saffron Bell' });
    await press(el, 'Add another tree');
    expect(focused()).toBe(control(el, 'partners/1/name'));
    await fill(el, { 'partners/1/name': 'Mill Quince', 'partners/1/kind': 'quince' });
    await press(el, 'Take Saffron Bell out');
    expect(control(el, 'partners/0/name').value).toBe('Mill Quince');
    expect(control(el, 'partners/0/kind').value).toBe('quince');
  });

  it('gives a sound programme with the answers in it, and no answer is taken for an edit of what is open', async () => {
    const el = await open();
    const opened: unknown[] = [];
    document.body.addEventListener('oo-open', ({ detail }) => opened.push(detail.document), { once: true });
    const leaked = edits(document.body);
    await fill(el, TREE);
    await press(el, 'Go on');
    await fill(el, { 'partners/0/name': 'Saffron Bell' });
    await press(el, 'Go on');
    await fill(el, { 'means/places': '80', 'means/lastYear': '2050' });
    await press(el, 'Go on');
    await fill(el, { 'counts/set/hits': '18', 'counts/set/of': '240', 'known/rule': 'two' });
    await press(el, 'Go on');
    expect([...find(el.renderRoot, HTMLElement, '.preview ol').querySelectorAll('b')].map((each) => each.textContent)).toEqual([
      'Open seed of Old Hedgerow, best × best',
      'Brother × sister of Old Hedgerow × Saffron Bell',
      'One large cross, Old Hedgerow × Saffron Bell',
    ]);
    await press(el, 'Show me what is likely');
    expect(leaked).toEqual([]);
    expect(opened).toHaveLength(1);
    expect(opened[0]).toMatchObject({
      title: 'Red flesh from Old Hedgerow',
      startYear: 2027,
      lastYear: 2050,
      limits: { places: 80 },
      crosses: [{ set: { hits: 18, of: 240, lots: 1, source: { kind: 'counted' } } }],
    });
    expect(parseProgramme(opened[0]).ok).toBe(true);
  });

  it('fits 320 pixels', async () => {
    await page.viewport(320, 800);
    const el = await open();
    await fill(el, TREE);
    for (let question = 0; question < 2; question += 1) {
      expect(el.scrollWidth).toBeLessThanOrEqual(320);
      await press(el, 'Go on');
    }
    await page.viewport(1100, 800);
  });
});
