import { html } from 'lit';
import { describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { FromCatalogue } from '../../../src/components/pages/catalogue/from-catalogue.ts';
import { setAt } from '../../../src/model/edits.ts';
import type { Programme } from '../../../src/model/programme.ts';
import { parseProgramme } from '../../../src/model/read.ts';
import { EMPTY, filledIn } from '../../../src/start/answers.ts';
import { buildProgramme } from '../../../src/start/build.ts';
import { breaches, edits, everything, find, mount, settled } from '../fields/mount.ts';

function startedWith(kind: string): Programme {
  const reading = buildProgramme(filledIn({ ...EMPTY, tree: { name: 'Gate Tree', kind, trait: 'odd leaf' }, partners: [{ name: 'Lane Tree' }] }, 2027));
  if (!reading.ok) throw new Error('No programme.');
  return reading.programme;
}

/** The part of the page over a programme, which takes every edit as the app does. */
async function open(programme: Programme): Promise<{ el: FromCatalogue; made: { label: string; programme: Programme }[] }> {
  const el = Object.assign(new FromCatalogue(), { programme });
  const made: { label: string; programme: Programme }[] = [];
  el.addEventListener('oo-change', ({ detail: { path, value, label } }) => {
    const reading = parseProgramme(setAt(el.programme, path, value));
    if (!reading.ok) throw new Error(reading.problems.map(({ message }) => message).join(' '));
    made.push({ label, programme: reading.programme });
    el.programme = reading.programme;
  });
  await mount(html`${el}`);
  return { el, made };
}
const focused = (): Element | null => {
  let at = document.activeElement;
  while (at?.shadowRoot?.activeElement) at = at.shadowRoot.activeElement;
  return at;
};
/** Presses Tab until what has the focus is called so; a person would. */
async function tabTo(words: string): Promise<void> {
  const passed: string[] = [];
  for (let press = 0; press < 30; press += 1) {
    const at = focused();
    const label = at instanceof HTMLInputElement || at instanceof HTMLSelectElement ? (at.labels?.[0]?.textContent ?? '') : (at?.textContent ?? '');
    passed.push(label.trim().slice(0, 40));
    if (at !== document.body && label.includes(words)) return;
    await userEvent.keyboard('{Tab}');
  }
  throw new Error(`“${words}” is not reached by Tab, but: ${passed.join('; ')}`);
}
/** Unfolds a part by keyboard; its code comes from the network. */
async function unfold(el: FromCatalogue, words: string, inside: string): Promise<void> {
  await tabTo(words);
  await userEvent.keyboard('{Enter}');
  await expect.poll(() => everything(el).some((each) => each.matches(inside))).toBe(true);
  await settled();
}
const textOf = (el: Element, selector: string): string => find(el, HTMLElement, selector).textContent.replace(/\s+/g, ' ').trim();

describe('oo-from-catalogue', () => {
  it('adds a kind by keyboard alone: says what comes before, what came after, and names the step', async () => {
    const { el, made } = await open(startedWith('pear'));
    await unfold(el, 'Add a kind', '#kind');
    await tabTo('Kind');
    await userEvent.keyboard('quince');
    await settled();
    expect(textOf(el, '.comes')).toMatch(
      /^This adds the kinds quince and pear-quince hybrid, 8 crosses and 3 rootstocks\. Of the \d+ figures, \d+ are published, .* only remembered and \d+ guesses\.$/,
    );
    await tabTo('rootstocks for quince');
    await userEvent.keyboard(' ');
    await settled();
    expect(textOf(el, '.comes')).not.toContain('rootstock');
    await tabTo('Add quince');
    await userEvent.keyboard('{Enter}');
    await settled();
    expect(made.map(({ label }) => label)).toEqual(['quince added from the catalogue']);
    expect(made[0]?.programme.kinds.map(({ id }) => id)).toEqual(['pear', 'quince', 'pear-quince-hybrid']);
    expect(made[0]?.programme.stocks).toEqual(startedWith('pear').stocks);
    expect(textOf(el, '.done')).toBe('The kinds quince and pear-quince hybrid and 8 crosses were added. Undo takes all of it out again.');
    expect(focused()).toBe(find(el, HTMLElement, '.done'));
  });

  it('of a kind that is there offers only what is missing, and nothing of one that is complete', async () => {
    const { el, made } = await open(startedWith('pear'));
    await unfold(el, 'Add a kind', '#kind');
    const options = () => [...find(el, HTMLSelectElement, '#kind').options].map(({ text, disabled }) => `${text}${disabled ? ' (closed)' : ''}`);
    expect(options()).toContain('pear: all of it is here (closed)');
    await tabTo('Kind');
    await userEvent.keyboard('quince');
    await settled();
    await tabTo('rootstocks for quince');
    await userEvent.keyboard(' ');
    await tabTo('Add quince');
    await userEvent.keyboard('{Enter}');
    await settled();
    expect(options()).toContain('quince: here already, something is missing');
    await userEvent.keyboard('{Shift>}{Tab}{/Shift}');
    await userEvent.keyboard('quince');
    await settled();
    expect(textOf(el, '.comes')).toMatch(/^This adds 3 rootstocks\./);
    await tabTo('Add what is missing of quince');
    await userEvent.keyboard('{Enter}');
    await settled();
    expect(made.at(-1)?.label).toBe('quince, what was missing, added from the catalogue');
  });

  it('leaves out a pair of which no fruit is known unless it is asked for', async () => {
    const { el } = await open(startedWith('pear'));
    await unfold(el, 'Add a kind', '#kind');
    await tabTo('Kind');
    await userEvent.keyboard('walnut');
    await settled();
    expect(find(el, HTMLInputElement, '#with-pear').checked).toBe(false);
    expect(textOf(el, '.comes')).toMatch(/^This adds the kind walnut, one cross and/);
  });

  it('shows every figure with where it is from and how sure it is', async () => {
    const { el } = await open(startedWith('pear'));
    await unfold(el, 'Add a kind', '#kind');
    await tabTo('Kind');
    await userEvent.keyboard('quince');
    await settled();
    const figures = everything(el).filter((each) => each.matches('.figure'));
    const said = Number(/Of the (\d+) figures/.exec(textOf(el, '.comes'))?.[1]);
    expect(figures).toHaveLength(said);
    const badges = figures.map((each) => each.querySelector('.badge')?.textContent ?? '');
    for (const badge of badges) expect(badge).toMatch(/^(published|common practice|only remembered|guess) · (high|middling|low) confidence$/);
    // Pear × quince, 23 of 60 flowers: J. Jpn. Soc. Hort. Sci. 52:243–249 (1983).
    expect(figures.map((each) => each.textContent.replace(/\s+/g, ' ').trim())).toContainEqual(
      expect.stringMatching(/^Fruit set 23 of 60 published · high confidence/),
    );
  });

  it('says why something cannot be added, and does not add it', async () => {
    const full = startedWith('pear');
    const [stock] = full.stocks;
    const stocks = Array.from({ length: 20 }, (_, at) => ({
      ...(stock ?? { name: '', takeTender: 1, takeRipe: 1 }),
      id: `own-${String(at)}`,
      name: `own ${String(at)}`,
    }));
    const reading = parseProgramme({ ...full, stocks: [...full.stocks, ...stocks].slice(0, 20) });
    if (!reading.ok) throw new Error('Twenty are allowed.');
    const { el, made } = await open(reading.programme);
    await unfold(el, 'Add a kind', '#kind');
    await tabTo('Kind');
    await userEvent.keyboard('quince');
    await settled();
    expect(textOf(el, '.refused')).toBe('A programme holds at most 20 rootstocks, and this would make 23. Leave some of it out.');
    await tabTo('Add quince');
    await userEvent.keyboard('{Enter}');
    await settled();
    expect(made).toEqual([]);
  });

  it('adds a known trait by keyboard alone, with what was seen of the trees', async () => {
    const { el, made } = await open(startedWith('peach'));
    await unfold(el, 'Add a known trait', '#trait');
    await tabTo('Trait');
    await userEvent.keyboard('white');
    await settled();
    expect(everything(el).map((each) => (each.matches('.offer p') ? each.textContent.replace(/\s+/g, ' ').trim() : ''))).toContain(
      'Known in peach: white flesh. One gene; one parent that carries it is enough.',
    );
    expect(textOf(el, '.from .badge')).toBe('only remembered · high confidence');
    await tabTo('Gate Tree');
    await userEvent.keyboard('shows');
    await settled();
    await tabTo('Add white flesh');
    await userEvent.keyboard('{Enter}');
    await settled();
    expect(made.map(({ label }) => label)).toEqual(['white flesh added from the catalogue']);
    const after = made[0]?.programme;
    expect(after?.traits.at(-1)?.name).toBe('white flesh');
    expect(after?.genes.at(-1)).toMatchObject({ id: 'peach-y', name: 'Y' });
    expect(after?.trees[0]?.seen['peach-white-flesh']).toEqual({ source: true });
    expect(focused()).toBe(find(el, HTMLElement, '.done'));
    expect([...find(el, HTMLSelectElement, '#trait').options].map(({ text }) => text)).not.toContain('white flesh');
  });

  it('says so where the catalogue knows no trait of these kinds', async () => {
    const { el } = await open(startedWith('quince'));
    await unfold(el, 'Add a known trait', 'oo-add-trait');
    expect(textOf(find(el, HTMLElement, 'oo-add-trait'), '.quiet')).toMatch(/knows no trait of your kinds/);
  });

  it('has no breach of WCAG 2.2 AA, fits 320 pixels, and tells nothing of itself', async () => {
    await page.viewport(320, 800);
    const { el } = await open(startedWith('peach'));
    const leaked = edits(document.body);
    for (const [words, inside, choice] of [
      ['Add a kind', '#kind', 'almond'],
      ['Add a known trait', '#trait', 'white'],
    ] as const) {
      await unfold(el, words, inside);
      await tabTo(words === 'Add a kind' ? 'Kind' : 'Trait');
      await userEvent.keyboard(choice);
      await settled();
    }
    for (const details of everything(el).filter((each) => each instanceof HTMLDetailsElement)) details.open = true;
    await settled();
    expect(await breaches(el)).toEqual([]);
    expect(el.scrollWidth).toBeLessThanOrEqual(320);
    expect(leaked).toEqual([]);
    await page.viewport(1100, 800);
  });
});
