import { html } from 'lit';
import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import { OoChoices } from '../../../src/components/fields/choices.ts';
import { OoEstimate } from '../../../src/components/fields/estimate.ts';
import { OoField } from '../../../src/components/fields/field.ts';
import type { FormSection } from '../../../src/components/fields/form.ts';
import { programmeSchema } from '../../../src/model/programme.ts';
import { schemaAt, valueAt, type Path } from '../../../src/model/walk.ts';
import { samplePear } from './sample.ts';
import { boxOf, breaches, choose, Desk, edits, everything, find, mount, problemOf, settled, typeInto } from './mount.ts';

const GENERATION: Path = ['plans', 0, 'generations', 0];
const SECTIONS: readonly FormSection[] = [
  {
    title: 'Pollinate',
    keys: [
      'seedParents',
      'pollen',
      { key: 'flowers', help: 'Old Hedgerow can offer about 520.' },
      { at: ['crosses', 0, 'set'], label: 'Fruit set of this cross' },
    ],
  },
  { title: 'Rescue graft', keys: ['rescue'] },
  { title: 'Judge and keep', keys: ['judge', 'keep.conditions', 'goOn.when'], column: 2 },
];
const EVERYTHING: Path[] = [
  [],
  GENERATION,
  ['plans', 0, 'generations', 1],
  ['crosses', 0],
  ['kinds', 0],
  ['kinds', 1],
  ['kinds', 2],
  ['trees', 0],
  ['trees', 1],
  ['pools', 0],
  ['stocks', 0],
  ['traits', 0],
  ['traits', 1],
  ['limits'],
  ['hours'],
  ['weather'],
  ['goal'],
];

const desk = (path: Path, width?: number): Promise<Desk> => new Desk(path).open(width);
const plain = (text: string | undefined): string | undefined => text?.replaceAll('\u00a0', ' ');

describe('oo-form', () => {
  it.each(EVERYTHING)('has no breach of WCAG 2.2 AA: %s %s %s %s', async (...path) => {
    expect(await breaches((await desk(path)).form)).toEqual([]);
  });

  it('shows each number, text and estimate of the whole programme once, with the value it has', async () => {
    const { form, programme } = await desk([]);
    const fields = everything(form.renderRoot).filter((each) => each instanceof OoField || each instanceof OoEstimate || each instanceof OoChoices);
    const shown = new Map(fields.map((each) => [each.path.join('/'), each]));
    expect(shown.size).toBe(fields.length);
    expect(shown.size).toBeGreaterThan(150);
    for (const each of fields) expect(each.value, each.path.join('/')).toEqual(valueAt(programme, each.path));
    for (const path of [
      ['title'],
      ['limits', 'places'],
      ['crosses', 0, 'set'],
      [...GENERATION, 'rescue', 'month'],
      ['trees', 1, 'values', 'sweet'],
      [...GENERATION, 'pollen'],
    ])
      expect(shown.has(path.join('/')), path.join('/')).toBe(true);
    for (const hidden of ['format', 'version', 'example', 'trees/0/id', 'plans/0/mark']) expect(shown.has(hidden), hidden).toBe(false);
  });

  it('names every control', async () => {
    const { form } = await desk([]);
    const controls = everything(form.renderRoot).filter(
      (each) => each instanceof HTMLInputElement || each instanceof HTMLSelectElement || each instanceof HTMLTextAreaElement,
    );
    expect(controls.length).toBeGreaterThan(200);
    for (const control of controls) {
      const root = control.getRootNode() as ShadowRoot;
      const byId = (control.getAttribute('aria-labelledby') ?? '').split(' ').map((id) => (id === '' ? '' : (root.getElementById(id)?.textContent ?? '')));
      const named = [control.ariaLabel ?? '', ...byId, ...[...(control.labels ?? [])].map((label) => label.textContent)].join(' ').trim();
      expect(named, control.outerHTML).toMatch(/\p{L}{2}/u);
      expect(control.getAttribute('placeholder')).toBeNull();
    }
  });

  it.each([320, 390, 760, 1100])('fits %d px: nothing sticks out, targets of 44 px, no text under 16 px', async (width) => {
    for (const path of [[], GENERATION, ['crosses', 0]] as Path[]) {
      const { form } = await desk(path, width);
      const { right } = form.getBoundingClientRect();
      for (const element of everything(form.renderRoot)) {
        const box = element.getBoundingClientRect();
        if (box.width === 0 || element.closest('.visually-hidden, option, svg')) continue;
        expect(box.right, `${element.outerHTML} in ${path.join('/')}`).toBeLessThanOrEqual(right + 0.5);
        const ticks = element instanceof HTMLInputElement && (element.type === 'checkbox' || element.type === 'radio');
        const target = ticks ? element.closest('label')! : element;
        if (element.matches('button, input, select, textarea')) expect(target.getBoundingClientRect().height, element.outerHTML).toBeGreaterThanOrEqual(44);
        if (element.textContent.trim() !== '') expect(parseFloat(getComputedStyle(element).fontSize), element.outerHTML).toBeGreaterThanOrEqual(16);
      }
      form.parentElement?.remove();
    }
  });

  it('sends an edit with its path from the top and a name for undo', async () => {
    const { form, edits: seen, programme } = await desk(GENERATION);
    const box = boxOf(find(form.renderRoot, OoField, `[data-path="${[...GENERATION, 'flowers'].join('/')}"]`).renderRoot);
    typeInto(box, '600');
    expect(seen.map((each) => ({ ...each, label: plain(each.label) }))).toEqual([
      { path: [...GENERATION, 'flowers'], value: 600, label: 'flowers each spring 400 → 600' },
    ]);
    expect(programme.plans[0]?.generations[0]?.flowers).toBe(400);
  });

  it('sends each edit once, from the form, however deep the field', async () => {
    const form = new Desk(['crosses', 0]);
    const place = await mount(html`${form.form}`);
    const seen = edits(place);
    typeInto(boxOf(form.at(['crosses', 0, 'weakness', 'course', 'halfLife']), 0), '3');
    expect(seen.map((each) => plain(each.label))).toEqual(['Pear by quince, half are dead by 2–5–15 → 3–5–15 months after that']);
  });

  it('shows only what its sections name, foreign fields too, under their headings and with their words', async () => {
    const it_ = new Desk(GENERATION);
    it_.form.sections = SECTIONS;
    await it_.open();
    const legends = everything(it_.form.renderRoot).flatMap((each) => (each.matches('.section > legend') ? [each.textContent] : []));
    expect(legends).toEqual(['Pollinate', 'Rescue graft', 'Judge and keep']);
    expect(it_.at(['crosses', 0, 'set'])).toBeInstanceOf(OoEstimate);
    expect(it_.at(['crosses', 0, 'set'])).toHaveProperty('label', 'Fruit set of this cross');
    expect(it_.at([...GENERATION, 'flowers'])).toHaveProperty('help', 'Old Hedgerow can offer about 520.');
    expect(() => it_.at([...GENERATION, 'springs'])).toThrow();
    // The rescue stands under a heading of the same words and has none of its own.
    expect(everything(it_.form.renderRoot).filter((each) => each.textContent.trim() === 'Rescue graft')).toHaveLength(1);
    expect(await breaches(it_.form)).toEqual([]);
    typeInto(boxOf(it_.at(['crosses', 0, 'set'])), '20');
    expect(it_.programme.crosses[0]?.set).toMatchObject({ hits: 20, of: 240 });
  });

  it('keeps the sections in two columns where there is room, in one where there is not', async () => {
    const columns = async (width: number): Promise<number> => {
      const it_ = new Desk(GENERATION);
      it_.form.sections = SECTIONS;
      await it_.open(width);
      const lefts = everything(it_.form.renderRoot).flatMap((each) => (each.matches('.column') ? [Math.round(each.getBoundingClientRect().left)] : []));
      return new Set(lefts).size;
    };
    expect(await columns(1100)).toBe(2);
    expect(await columns(390)).toBe(1);
  });

  it('adds a group that may be absent, goes to it, and takes it out again', async () => {
    const it_ = await desk(['plans', 0, 'generations', 1]);
    const path: Path = ['plans', 0, 'generations', 1, 'rescue'];
    it_.button('add a rescue graft').click();
    await settled();
    expect(it_.programme.plans[0]?.generations[1]?.rescue).toEqual({ who: 'weak', month: 6, stock: 'field-pear', scions: 1, keepOwnRoots: false });
    expect(it_.edits.at(-1)?.label).toBe('rescue graft added');
    expect(it_.at(path).contains(document.activeElement) || it_.form.shadowRoot?.activeElement?.closest('[data-path]')?.getAttribute('data-path')).toBe(
      [...path, 'who'].join('/'),
    );
    it_.button('remove rescue graft').click();
    await settled();
    expect(it_.programme.plans[0]?.generations[1]?.rescue).toBeUndefined();
    expect(it_.edits.at(-1)).toMatchObject({ path, value: undefined, label: 'rescue graft removed' });
    expect(it_.form.shadowRoot?.activeElement).toBe(it_.button('add a rescue graft'));
  });

  it('says what is missing where something cannot be added yet', async () => {
    const it_ = new Desk(['plans', 0, 'generations', 1]);
    it_.form.programme = { ...samplePear(), stocks: [], genes: [] };
    await it_.open();
    expect(it_.words).toContain('add a rescue graft: Add a rootstock first: this needs one.');
    expect(() => it_.button('add a rescue graft')).toThrow();
    expect(it_.words).toContain('add a leaf test: Add a gene first: this needs one.');
  });

  it('hides what a choice rules out, and brings it back as it was', async () => {
    const it_ = await desk(GENERATION);
    const graft = (place: number): HTMLInputElement => find(it_.at([...GENERATION, 'rescue', 'who']), HTMLInputElement, 'input[type=radio]', place);
    graft(0).click();
    await settled();
    expect(() => it_.at([...GENERATION, 'rescue', 'month'])).toThrow();
    expect(it_.programme.plans[0]?.generations[0]?.rescue?.month).toBe(8);
    graft(1).click();
    await settled();
    expect(boxOf(it_.at([...GENERATION, 'rescue', 'month'])).value).toBe('8');
  });

  it('adds to a list and takes out of it', async () => {
    const it_ = await desk(GENERATION);
    const conditions = (): unknown => it_.programme.plans[0]?.generations[0]?.keep.conditions;
    it_.button('add a condition').click();
    await settled();
    expect(conditions()).toHaveLength(2);
    choose(find(it_.at([...GENERATION, 'keep', 'conditions', 1]), HTMLSelectElement, 'select'), '2');
    await settled();
    expect(conditions()).toEqual([expect.objectContaining({ type: 'shown', trait: 'red' }), { type: 'test', gene: 'redness' }]);
    it_.button('remove condition 1').click();
    await settled();
    expect(conditions()).toEqual([{ type: 'test', gene: 'redness' }]);
    expect(it_.edits.map((each) => each.label)).toEqual(['keep a tree if: one added', 'keep a tree if changed', 'keep a tree if: one removed']);
  });

  it('does not take the last one out of a list that needs one', async () => {
    const it_ = await desk(['goal']);
    expect(() => it_.button('remove condition 1')).toThrow();
    it_.button('add a condition').click();
    await settled();
    expect(it_.button('remove condition 1')).toBeDefined();
  });

  it('gives one thing in another form', async () => {
    const it_ = await desk(['kinds', 0]);
    const forms = (): HTMLSelectElement => find(it_.at(['kinds', 0, 'firstFruit']), HTMLSelectElement, 'select[aria-label="First fruit, from seed: given as"]');
    expect([...forms().options].map((option) => option.textContent)).toEqual(['one age', 'three ages', 'between two kinds']);
    choose(forms(), '2');
    await settled();
    expect(it_.programme.kinds[0]?.firstFruit).toEqual({ between: { seed: 'pear', pollen: 'pear' } });
    choose(forms(), '0');
    await settled();
    expect(it_.programme.kinds[0]?.firstFruit).toEqual({ years: 5 });
  });

  it('sets three ages side by side, and each as a range when asked', async () => {
    const it_ = await desk(['kinds', 0]);
    const half: Path = ['kinds', 0, 'firstFruit', 'half'];
    typeInto(boxOf(it_.at(half)), '7');
    expect(it_.programme.kinds[0]?.firstFruit).toEqual({ earliest: 4, half: 7, ninety: 9 });
    await settled();
    it_.button('give each as a range').click();
    await settled();
    expect(it_.at(half)).toBeInstanceOf(OoEstimate);
    choose(find(it_.at(half), HTMLSelectElement, 'select'), 'ranged');
    await settled();
    expect(it_.programme.kinds[0]?.firstFruit).toMatchObject({ earliest: 4, half: { likely: 7 }, ninety: 9 });
  });

  it('has one row per gene and per trait of the right type, stated or not', async () => {
    const it_ = await desk(['trees', 1]);
    expect(it_.words).toContain('Sweetness (°Bx)');
    typeInto(boxOf(it_.at(['trees', 1, 'values', 'sweet'])), '15,5');
    expect(it_.programme.trees[1]?.values).toEqual({ sweet: 15.5 });
    await settled();
    it_.button('add “Redness”').click();
    await settled();
    expect(it_.programme.trees[1]?.genes).toEqual({ redness: { copies: 1 } });
    choose(find(it_.at(['trees', 1, 'genes', 'redness']), HTMLSelectElement, 'select[aria-label="Redness: given as"]'), '1');
    await settled();
    expect(it_.programme.trees[1]?.genes['redness']).toMatchObject({ frequency: { likely: 0.5 } });
    choose(find(it_.at(['trees', 1, 'genes', 'redness']), HTMLSelectElement, 'select[aria-label="Redness: given as"]'), '');
    await settled();
    expect(it_.programme.trees[1]?.genes).toEqual({});
    it_.button('remove sweetness (°Bx)').click();
    await settled();
    expect(it_.programme.trees[1]?.values).toEqual({});
  });

  it('puts a problem beside its field, beside its group, or at the top, and loses none', async () => {
    const it_ = await desk(GENERATION);
    it_.form.problems = [
      { path: [...GENERATION, 'flowers'], message: 'More than there are.' },
      { path: [...GENERATION, 'rescue', 'month'], message: 'Before they look weak.' },
      { path: [...GENERATION, 'keep', 'conditions', '0', 'trait'], message: 'No such trait.' },
      { path: [...GENERATION, 'goOn'], message: 'Never goes on.' },
      { path: [...GENERATION, 'test', 'gene'], message: 'Not drawn here.' },
      { path: ['plans', 0, 'generations', 1, 'flowers'], message: 'Somebody else’s.' },
    ];
    await settled();
    expect(problemOf(it_.at([...GENERATION, 'flowers']))).toBe('More than there are.');
    expect(problemOf(it_.at([...GENERATION, 'rescue', 'month']))).toBe('Before they look weak.');
    expect(problemOf(it_.at([...GENERATION, 'keep', 'conditions', 0, 'trait']))).toBe('No such trait.');
    expect(problemOf(it_.at([...GENERATION, 'goOn']))).toBe('Never goes on.');
    expect(problemOf(it_.form.renderRoot)).toMatch(/^Not drawn here\. \|/);
    expect(problemOf(it_.form.renderRoot)).not.toContain('Somebody');
  });

  it('says what is only worth knowing without marking it as wrong', async () => {
    const it_ = await desk(GENERATION);
    it_.form.problems = [
      { path: [...GENERATION, 'flowers'], message: 'more than the tree offers', fix: 'The rest is not pollinated.', stops: false },
      { path: [...GENERATION, 'springs'], message: 'never ends', fix: 'Give fewer.', stops: true },
    ];
    await settled();
    const remark = find(it_.at([...GENERATION, 'flowers']), HTMLElement, '.remark');
    expect(remark.textContent).toBe('more than the tree offers. The rest is not pollinated.');
    expect(boxOf(it_.at([...GENERATION, 'flowers'])).getAttribute('aria-invalid')).toBe('false');
    expect(boxOf(it_.at([...GENERATION, 'flowers'])).getAttribute('aria-describedby')).toContain('remark');
    expect(problemOf(it_.form)).toBe('never ends. Give fewer.');
    expect(boxOf(it_.at([...GENERATION, 'springs'])).getAttribute('aria-invalid')).toBe('true');
    expect(await breaches(it_.form)).toEqual([]);
  });

  it('names a run of keystrokes from where it began, and begins anew after an edit from elsewhere', async () => {
    const it_ = await desk(GENERATION);
    const box = (): HTMLInputElement => boxOf(it_.at([...GENERATION, 'flowers']));
    for (const text of ['6', '65', '650']) {
      typeInto(box(), text);
      await settled();
    }
    expect(it_.edits.map((each) => each.label)).toEqual(['flowers each spring 400 → 6', 'flowers each spring 400 → 65', 'flowers each spring 400 → 650']);
    it_.put([...GENERATION, 'flowers'], 300);
    await settled();
    typeInto(box(), '301');
    expect(it_.edits.at(-1)?.label).toBe('flowers each spring 300 → 301');
  });

  it('keeps what is being typed when another field changes the document, and when an edit is refused', async () => {
    const it_ = await desk(['crosses', 0]);
    const germination = it_.at(['crosses', 0, 'germination']);
    typeInto(boxOf(germination), '60');
    typeInto(find(it_.at(['crosses', 0, 'name']), HTMLInputElement, 'input'), 'Wide');
    await settled();
    expect(boxOf(germination).value).toBe('60');
    expect(it_.programme.crosses[0]).toMatchObject({ name: 'Wide', germination: { low: 0.4 } });
  });

  it('follows an edit from elsewhere', async () => {
    const it_ = await desk(GENERATION);
    it_.put([...GENERATION, 'flowers'], 123);
    it_.put(['crosses', 0, 'set'], 0.2);
    await settled();
    expect(boxOf(it_.at([...GENERATION, 'flowers'])).value).toBe('123');
  });

  it('keeps the caret in a field of the form while the document comes back', async () => {
    const it_ = await desk(GENERATION);
    const box = boxOf(it_.at([...GENERATION, 'flowers']));
    box.focus();
    box.setSelectionRange(1, 1);
    await userEvent.keyboard('12');
    await settled();
    expect([box.value, box.selectionStart, it_.programme.plans[0]?.generations[0]?.flowers]).toEqual(['41200', 3, 41_200]);
  });

  it('takes a schema and a value of its own', async () => {
    const programme = samplePear();
    const schema = schemaAt(programmeSchema, ['weather'], programme)!;
    const place = await mount(html`<oo-form .schema=${schema} .value=${{ frostChance: 0.3 }} .path=${['weather']}></oo-form>`);
    const seen = edits(place);
    const box = boxOf(place);
    expect(box.value).toBe('30');
    typeInto(box, '40');
    expect(seen).toEqual([{ path: ['weather', 'frostChance'], value: 0.4, label: 'Springs with a frost in bloom' }]);
  });
});

describe('oo-choices', () => {
  it('chooses seed parents: trees, and picks of earlier generations', async () => {
    const it_ = await desk(['plans', 0, 'generations', 1]);
    const parents: Path = ['plans', 0, 'generations', 1, 'seedParents'];
    const root = (): HTMLElement => it_.at(parents);
    expect([...find(root(), HTMLSelectElement, 'select').options].map((option) => option.textContent)).toEqual([
      'Old Hedgerow',
      'Saffron Bell',
      'Mill Quince',
      'picks of Wide cross, grafted',
    ]);
    expect(find(root(), HTMLSelectElement, 'select').value).toBe('picksOf g1');
    find(root(), HTMLButtonElement, 'button[aria-label="Seed parent: another"]').click();
    await settled();
    choose(find(root(), HTMLSelectElement, 'select', 1), 'tree saffron');
    await settled();
    expect(it_.programme.plans[0]?.generations[1]?.seedParents).toEqual([{ picksOf: 'g1' }, { tree: 'saffron' }]);
    find(root(), HTMLButtonElement, 'button[aria-label="remove Seed parent 1"]').click();
    await settled();
    expect(it_.programme.plans[0]?.generations[1]?.seedParents).toEqual([{ tree: 'saffron' }]);
    expect(everything(root()).some((each) => each.getAttribute('aria-label') === 'remove Seed parent')).toBe(false);
  });

  it('takes a word in place of the list, and a list in place of the word', async () => {
    const it_ = await desk(GENERATION);
    const select = (): HTMLSelectElement => find(it_.at([...GENERATION, 'pollen']), HTMLSelectElement, 'select');
    expect([...select().options].map((option) => option.textContent)).toEqual([
      'whatever is in the air',
      'its own',
      'Old Hedgerow',
      'Saffron Bell',
      'Mill Quince',
    ]);
    choose(select(), '= open');
    await settled();
    expect(it_.programme.plans[0]?.generations[0]?.pollen).toBe('open');
    expect(select().value).toBe('= open');
    choose(select(), 'tree saffron');
    await settled();
    expect(it_.programme.plans[0]?.generations[0]?.pollen).toEqual([{ tree: 'saffron' }]);
  });

  it('may be empty where the schema allows it', async () => {
    const it_ = await desk(['trees', 0]);
    const root = it_.at(['trees', 0, 'gardens']);
    find(root, HTMLButtonElement, 'button[aria-label="remove Stands in"]').click();
    await settled();
    expect(it_.programme.trees[0]?.gardens).toEqual([]);
    find(root, HTMLButtonElement, 'button[aria-label="Stands in: another garden"]').click();
    await settled();
    expect(it_.programme.trees[0]?.gardens).toEqual(['home']);
  });

  it('keeps in sight what is no longer there', async () => {
    const el = Object.assign(new OoChoices(), {
      schema: schemaAt(programmeSchema, ['trees', 0, 'gardens'], samplePear()),
      value: ['lost'],
      path: ['trees', 0, 'gardens'],
      programme: samplePear(),
      label: 'Stands in',
    });
    await mount(html`${el}`);
    expect(find(el.renderRoot, HTMLSelectElement, 'select').selectedOptions[0]?.textContent).toBe('“lost”, no longer there');
  });
});

describe('the focus, when something is taken out', () => {
  const placed = (it_: Desk): string | undefined => {
    const active = it_.form.shadowRoot?.activeElement;
    return active?.closest<HTMLElement>('.entry, [data-path]')?.dataset['path'];
  };
  const later = (): Promise<unknown> => new Promise((done) => setTimeout(done, 20));

  it('goes to the entry that moved up, then to the one before, then to the button that adds one', async () => {
    const it_ = await desk(GENERATION);
    const list = [...GENERATION, 'keep', 'conditions'].join('/');
    it_.button('add a condition').click();
    await settled();
    it_.button('add a condition').click();
    await settled();
    const remove = async (place: number): Promise<void> => {
      const button = it_.button(`remove condition ${String(place)}`);
      button.focus();
      button.click();
      await settled();
      await later();
    };
    await remove(2);
    expect(placed(it_)).toMatch(new RegExp(`^${list}/1`));
    await remove(2);
    expect(placed(it_)).toMatch(new RegExp(`^${list}/0`));
    await remove(1);
    expect(placed(it_)).toBe(list);
    expect(it_.form.shadowRoot?.activeElement).toBe(it_.button('add a condition'));
  });

  it('stays among the choices when one of several parents is taken out', async () => {
    const it_ = await desk(GENERATION);
    const root = (): HTMLElement => it_.at([...GENERATION, 'seedParents']);
    find(root(), HTMLButtonElement, 'button[aria-label="Seed parent: another"]').click();
    await settled();
    const last = find(root(), HTMLButtonElement, 'button[aria-label="remove Seed parent 2"]');
    last.focus();
    last.click();
    await settled();
    await later();
    expect(root().shadowRoot?.activeElement).toBeInstanceOf(HTMLSelectElement);
  });

  it('goes along when a range is typed into one of three small boxes', async () => {
    const it_ = await desk(['kinds', 0]);
    const half: Path = ['kinds', 0, 'firstFruit', 'half'];
    boxOf(it_.at(half)).focus();
    boxOf(it_.at(half)).select();
    await userEvent.keyboard('5-8{Enter}');
    await settled();
    await later();
    expect(it_.programme.kinds[0]?.firstFruit).toMatchObject({ earliest: 4, half: { low: 5, likely: 6.5, high: 8 }, ninety: 9 });
    expect(it_.at(half)).toBeInstanceOf(OoEstimate);
    expect(it_.form.shadowRoot?.activeElement).toBe(it_.at(half));
  });
});

describe('headings', () => {
  it('never say the same twice, nor stand alone above another one', async () => {
    for (const path of EVERYTHING) {
      const { form } = await desk(path);
      const legends = everything(form.renderRoot).filter((each) => each.matches('legend'));
      for (const legend of legends) {
        const above = legend.parentElement?.parentElement?.closest('fieldset')?.querySelector('legend')?.textContent.toLowerCase() ?? '';
        expect(legend.textContent.toLowerCase(), path.join('/')).not.toBe(above);
        expect(above === '' || !legend.textContent.toLowerCase().startsWith(`${above} `), `${above} / ${legend.textContent}`).toBe(true);
      }
      form.parentElement?.remove();
    }
  });

  it('are one where a section holds one group', async () => {
    const it_ = new Desk([]);
    it_.form.sections = [
      { title: 'Limits', keys: ['limits'] },
      { title: 'Goal', keys: ['goal'] },
    ];
    await it_.open();
    const legends = everything(it_.form.renderRoot).flatMap((each) => (each.matches('legend') ? [each.textContent] : []));
    expect(legends).toEqual(['Limits', 'Goal', 'A tree is proven if']);
    const row = new Desk(GENERATION);
    row.form.sections = [{ title: 'Rescue', keys: ['rescue', 'judge', 'keep'] }];
    await row.open();
    expect(everything(row.form.renderRoot).flatMap((each) => (each.matches('legend') ? [each.textContent] : []))).toEqual(['Rescue', 'Keep a tree if']);
  });
});

describe('oo-tasted', () => {
  it('works out a true value, shows it, and puts it into the tree as a range with what it was', async () => {
    const it_ = await desk(['trees', 1]);
    const root = find(it_.form.renderRoot, HTMLElement, 'oo-tasted').shadowRoot!;
    find(root, HTMLButtonElement, 'button').click();
    await settled();
    expect(root.activeElement).toBe(boxOf(root));
    expect(find(root, HTMLButtonElement, 'button.main').disabled).toBe(true);
    typeInto(boxOf(root, 0), '15');
    typeInto(boxOf(root, 1), '3');
    await settled();
    // By hand: 3·0.4/(1 + 2·0.6) = 6/11 of 2 °Bx above 13; ends √7·√(0.4·2.25·5/11) off.
    expect(
      find(root, HTMLElement, '.found')
        .textContent.replaceAll(/[\u00a0]/g, ' ')
        .replaceAll('\u2060', ''),
    ).toBe('Keeps 55 % of its distance from the mean: true value about 14.09 °Bx, at the outermost 12.4–15.78.');
    expect(await breaches(it_.form)).toEqual([]);
    find(root, HTMLButtonElement, 'button.main').click();
    await settled();
    expect(it_.programme.trees[1]?.values).toEqual({
      sweet: { low: 12.4, likely: 14.09, high: 15.78, source: { kind: 'counted', note: 'tasted mean 15 °Bx of 3 seasons, drawn towards the reference 13' } },
    });
    expect(it_.form.shadowRoot?.activeElement).toBe(it_.at(['trees', 1, 'values', 'sweet']));
  });

  it('is offered where nothing is stated yet, closes on Escape, and changes nothing by itself', async () => {
    const it_ = await desk(['trees', 0]);
    const root = find(it_.form.renderRoot, HTMLElement, 'oo-tasted').shadowRoot!;
    find(root, HTMLButtonElement, 'button').click();
    await settled();
    await userEvent.keyboard('15{Escape}');
    await settled();
    expect(it_.edits).toEqual([]);
    expect(root.activeElement).toBe(find(root, HTMLButtonElement, 'button'));
    expect(everything(root).some((each) => each.matches('input'))).toBe(false);
  });
});
