import { html } from 'lit';
import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import { z } from 'zod';
import { OoField } from '../../../src/components/fields/field.ts';
import { field, name, note, number, reference, whole } from '../../../src/model/fields.ts';
import { rescueSchema } from '../../../src/model/plan.ts';
import { boxOf, breaches, edits, everything, find, mount, problemOf, settled, typeInto, choose } from './mount.ts';

const flowers = whole(0, 1_000_000, { label: 'Flowers each spring', unit: 'flowers', help: 'As many as a spring gives.' });
const cover = number(0, 1, { label: 'Stray pollen let through', scale: 'share' });
const month = number(0.5, 24, { label: 'At age', scale: 'months', unit: 'months' });
const atLatest = whole(1, 60, { label: 'At the latest after', scale: 'years', unit: 'years' }).optional();
const graft = field(z.enum(['none', 'weak', 'every']), { label: 'Graft', words: { none: 'none', weak: 'weak ones', every: 'every seedling' } });
const goOn = field(z.enum(['a', 'b', 'c']), { label: 'Go on when', words: { a: 'the first pick is made', b: 'enough picks were made', c: 'all are judged' } });
const stock = reference('stocks', { label: 'Onto' });
const ownRoots = field(z.boolean(), { label: 'Stays on its own roots' });
/** Schemas by a name that reads well in a list of tests. */
const NAMED = { flowers, cover, month };
const ENTRIES = [
  { id: 'pear', name: 'field pear' },
  { id: 'quince', name: 'quince stock' },
];

async function field_(schema: z.ZodType, value: unknown, more: Partial<OoField> = {}): Promise<{ el: OoField; seen: ReturnType<typeof edits> }> {
  const el = Object.assign(new OoField(), { schema, value, path: ['x', 0, 'y'], ...more });
  const place = await mount(html`${el}`);
  return { el, seen: edits(place) };
}

/** Hands every edit back as the new value, as the app does. */
function loop(el: OoField): void {
  el.addEventListener('oo-change', (event) => {
    el.value = event.detail.value;
  });
}

describe('oo-field', () => {
  it('has no breach of WCAG 2.2 AA, in any kind, good or bad', async () => {
    const place = await mount(html`
      <oo-field .schema=${flowers} .value=${400}></oo-field>
      <oo-field .schema=${month} .value=${8} slider></oo-field>
      <oo-field .schema=${cover} .value=${0.2} .problem=${'Must agree with the bags.'}></oo-field>
      <oo-field .schema=${atLatest} .value=${undefined}></oo-field>
      <oo-field .schema=${name} .value=${'Old Hedgerow'}></oo-field>
      <oo-field .schema=${note} .value=${undefined}></oo-field>
      <oo-field .schema=${ownRoots} .value=${true}></oo-field>
      <oo-field .schema=${graft} .value=${'weak'}></oo-field>
      <oo-field .schema=${goOn} .value=${'a'}></oo-field>
      <oo-field .schema=${stock} .value=${'pear'} .entries=${ENTRIES}></oo-field>
      <oo-field .schema=${stock} .value=${'lost'} .entries=${ENTRIES} compact></oo-field>
    `);
    expect(await breaches(place)).toEqual([]);
    typeInto(boxOf(place), '40x');
    await settled();
    expect(await breaches(place)).toEqual([]);
  });

  it('names the box by its label and describes it by unit, help and problem', async () => {
    const { el } = await field_(flowers, 400, { problem: 'More than there are.' });
    const box = boxOf(el.renderRoot);
    expect(box.labels?.[0]?.textContent).toBe('Flowers each spring');
    const words = (box.getAttribute('aria-describedby') ?? '').split(' ').map((id) => find(el.renderRoot, HTMLElement, `#${id}`).textContent);
    expect(words).toEqual(['flowers', 'As many as a spring gives.', 'More than there are.']);
    expect(box.getAttribute('aria-invalid')).toBe('true');
  });

  it('sends an edit on every keystroke that can be read, from its own path', async () => {
    const { el, seen } = await field_(flowers, 400);
    loop(el);
    await userEvent.fill(boxOf(el.renderRoot), '');
    await userEvent.type(boxOf(el.renderRoot), '65');
    expect(seen).toEqual([
      { path: ['x', 0, 'y'], value: 6, label: 'Flowers each spring' },
      { path: ['x', 0, 'y'], value: 65, label: 'Flowers each spring' },
    ]);
  });

  it.each<[keyof typeof NAMED, string, number, string]>([
    ['month', '8,5', 8.5, '8.5'],
    ['month', '8½', 8.5, '8.5'],
    ['cover', '12,5', 0.125, '12.5'],
    ['cover', '1,2 %', 0.012, '1.2'],
    ['flowers', '1 200', 1200, '1200'],
    ['flowers', '1,500', 1500, '1500'],
  ])('takes a comma, a half, a percent sign and blanks (%s: %s)', async (schema, text, value, tidy) => {
    const { el, seen } = await field_(NAMED[schema], 0.5);
    typeInto(boxOf(el.renderRoot), text);
    expect(seen.at(-1)?.value).toBe(value);
    expect(boxOf(el.renderRoot).value).toBe(text);
    boxOf(el.renderRoot).dispatchEvent(new Event('change'));
    await settled();
    expect(boxOf(el.renderRoot).value).toBe(tidy);
  });

  it.each<[keyof typeof NAMED, string, string]>([
    ['flowers', '40x', '“40x” is not a number. The picture still shows your last good number, 400.'],
    ['flowers', '', 'A number is needed here. The picture still shows your last good number, 400.'],
    ['flowers', '4.5', 'Must be a whole number. The picture still shows your last good number, 400.'],
    ['flowers', '10.000', '“10.000” can be read in two ways. Which is meant? The picture still shows your last good number, 400.'],
    ['flowers', '2000000', 'Must lie between 0 and 1,000,000 flowers. The picture still shows your last good number, 400.'],
  ])('keeps %s %j as typed, says what is wrong and sends nothing', async (schema, text, words) => {
    const { el, seen } = await field_(NAMED[schema], 400);
    typeInto(boxOf(el.renderRoot), text);
    await settled();
    expect(boxOf(el.renderRoot).value).toBe(text);
    expect(boxOf(el.renderRoot).getAttribute('aria-invalid')).toBe('true');
    expect(problemOf(el.renderRoot)).toBe(words);
    boxOf(el.renderRoot).dispatchEvent(new Event('change'));
    await settled();
    expect(boxOf(el.renderRoot).value).toBe(text);
    expect(seen).toEqual([]);
  });

  it('says the bounds of a share in percent', async () => {
    const { el, seen } = await field_(cover, 0.2);
    typeInto(boxOf(el.renderRoot), '120');
    await settled();
    expect(problemOf(el.renderRoot)).toBe('Must lie between 0 and 100 %. The picture still shows your last good number, 20.');
    expect(seen).toEqual([]);
  });

  it('sends nothing for a property that is set', async () => {
    const { el, seen } = await field_(flowers, 400);
    el.value = 500;
    el.problem = 'x';
    el.schema = cover;
    await settled();
    expect(seen).toEqual([]);
  });

  it('does not stutter: the caret and the text stay while the value comes back', async () => {
    const { el } = await field_(flowers, 400);
    loop(el);
    const box = boxOf(el.renderRoot);
    box.focus();
    box.setSelectionRange(1, 1);
    await userEvent.keyboard('12');
    await settled();
    expect([box.value, box.selectionStart, el.value]).toEqual(['41200', 3, 41_200]);
    await userEvent.keyboard('{Backspace}');
    await settled();
    expect([box.value, box.selectionStart]).toEqual(['4100', 2]);
  });

  it('leaves “08” and “8,” alone while they say what the value says', async () => {
    const { el } = await field_(month, 5);
    loop(el);
    for (const text of ['0', '08', '8', '8,', '8,0']) {
      typeInto(boxOf(el.renderRoot), text);
      await settled();
      expect(boxOf(el.renderRoot).value).toBe(text);
    }
    expect(el.value).toBe(8);
  });

  it('is not undone by a late echo of an earlier keystroke', async () => {
    const { el } = await field_(flowers, 400);
    typeInto(boxOf(el.renderRoot), '6');
    typeInto(boxOf(el.renderRoot), '60');
    el.value = 6;
    await settled();
    expect(boxOf(el.renderRoot).value).toBe('60');
    el.value = 60;
    await settled();
    expect(boxOf(el.renderRoot).value).toBe('60');
    // Once all is answered, the same number from outside is news again: somebody pressed undo.
    el.value = 6;
    await settled();
    expect(boxOf(el.renderRoot).value).toBe('6');
  });

  it('follows undo, also in the middle of bad text, and keeps bad text while nothing changes', async () => {
    const { el } = await field_(flowers, 400);
    boxOf(el.renderRoot).focus();
    typeInto(boxOf(el.renderRoot), '40x');
    el.value = 400;
    el.help = 'Another render.';
    await settled();
    expect(boxOf(el.renderRoot).value).toBe('40x');
    el.value = 300;
    await settled();
    expect(boxOf(el.renderRoot).value).toBe('300');
    expect(problemOf(el.renderRoot)).toBe('');
  });

  it('does not carry typed text to another place of the document', async () => {
    const { el } = await field_(flowers, 400);
    typeInto(boxOf(el.renderRoot), '40x');
    el.path = ['x', 1, 'y'];
    await settled();
    expect(boxOf(el.renderRoot).value).toBe('400');
  });

  it('steps with the arrow keys, ten times as far with Shift, and stops at the bounds', async () => {
    const { el, seen } = await field_(month, 8);
    loop(el);
    boxOf(el.renderRoot).focus();
    await userEvent.keyboard('{ArrowUp}{ArrowDown}{ArrowDown}{Shift>}{ArrowUp}{ArrowUp}{ArrowUp}{ArrowUp}{/Shift}');
    expect(seen.map((each) => each.value)).toEqual([8.5, 8, 7.5, 12.5, 17.5, 22.5, 24]);
    await settled();
    expect(boxOf(el.renderRoot).value).toBe('24');
  });

  it('steps from the last good number while the text is bad', async () => {
    const { el, seen } = await field_(flowers, 400);
    typeInto(boxOf(el.renderRoot), '40x');
    boxOf(el.renderRoot).focus();
    await userEvent.keyboard('{ArrowUp}');
    expect(seen.map((each) => each.value)).toEqual([401]);
    expect(boxOf(el.renderRoot).value).toBe('401');
  });

  it('steps by a drag on its label', async () => {
    const { el, seen } = await field_(flowers, 400);
    const label = find(el.renderRoot, HTMLLabelElement, 'label.name');
    const drag = (type: string, clientX: number, shiftKey = false): boolean =>
      label.dispatchEvent(new PointerEvent(type, { clientX, shiftKey, bubbles: true, pointerId: 1 }));
    drag('pointerdown', 100);
    drag('pointermove', 104);
    drag('pointermove', 118);
    drag('pointermove', 101, true);
    drag('pointerup', 101);
    drag('pointermove', 300);
    expect(seen.map((each) => each.value)).toEqual([402, 392]);
  });

  it('has a slider beside the number, both saying the same', async () => {
    const { el, seen } = await field_(month, 8, { slider: true });
    loop(el);
    const slider = find(el.renderRoot, HTMLInputElement, 'input[type=range]');
    expect([slider.value, slider.min, slider.max, slider.step, slider.ariaValueText]).toEqual(['8', '0.5', '24', '0.5', '8 months']);
    typeInto(slider, '5.5');
    await settled();
    expect(boxOf(el.renderRoot).value).toBe('5.5');
    typeInto(boxOf(el.renderRoot), '12');
    await settled();
    expect(slider.value).toBe('12');
    expect(seen.map((each) => each.value)).toEqual([5.5, 12]);
  });

  it('takes an optional number out when its box is emptied', async () => {
    const { el, seen } = await field_(atLatest, 12);
    typeInto(boxOf(el.renderRoot), '');
    await settled();
    expect(seen).toEqual([{ path: ['x', 0, 'y'], value: undefined, label: 'At the latest after' }]);
    expect(problemOf(el.renderRoot)).toBe('');
  });

  it('shows the default of the schema where nothing is stated', async () => {
    const { el } = await field_(rescueSchema.shape.scions, undefined);
    expect(boxOf(el.renderRoot).value).toBe('1');
  });

  it('takes text letter by letter, and marks what is too short or too long', async () => {
    const { el, seen } = await field_(name, 'Old');
    const box = find(el.renderRoot, HTMLInputElement, 'input.text');
    typeInto(box, 'Old ');
    typeInto(box, 'Old H');
    expect(seen.map((each) => each.value)).toEqual(['Old H']);
    expect(box.value).toBe('Old H');
    typeInto(box, '');
    await settled();
    expect(problemOf(el.renderRoot)).toBe('A few letters are needed here.');
    typeInto(box, 'x'.repeat(81));
    await settled();
    expect(problemOf(el.renderRoot)).toBe('At most 80 letters fit here.');
    expect(seen).toHaveLength(1);
  });

  it('chooses one of three by radio, with the keyboard too', async () => {
    const { el, seen } = await field_(graft, 'none');
    loop(el);
    const radios = everything(el.renderRoot).filter((each) => each instanceof HTMLInputElement && each.type === 'radio') as HTMLInputElement[];
    expect(radios.map((radio) => radio.labels?.[0]?.textContent.trim())).toEqual(['none', 'weak ones', 'every seedling']);
    radios[0]!.focus();
    await userEvent.keyboard('{ArrowRight}{ArrowRight}');
    expect(seen.map((each) => each.value)).toEqual(['weak', 'every']);
    el.value = 'none';
    await settled();
    expect(radios.map((radio) => radio.checked)).toEqual([true, false, false]);
  });

  it('chooses from a list where the words are long', async () => {
    const { el, seen } = await field_(goOn, 'b');
    const select = find(el.renderRoot, HTMLSelectElement, 'select');
    expect([select.value, select.labels[0]?.textContent]).toEqual(['b', 'Go on when']);
    choose(select, 'c');
    expect(seen.map((each) => each.value)).toEqual(['c']);
  });

  it('chooses among the entries of a section, and keeps one that is gone in sight', async () => {
    const { el, seen } = await field_(stock, 'lost', { entries: ENTRIES });
    const select = find(el.renderRoot, HTMLSelectElement, 'select');
    expect([...select.options].map((option) => option.textContent)).toEqual(['“lost”, no longer there', 'field pear', 'quince stock']);
    choose(select, 'quince');
    expect(seen.map((each) => each.value)).toEqual(['quince']);
  });

  it('can choose none where a reference may be absent', async () => {
    const { el, seen } = await field_(reference('gardens', { label: 'Garden' }).optional(), 'pear', { entries: ENTRIES, path: ['garden'] });
    const select = find(el.renderRoot, HTMLSelectElement, 'select');
    expect(select.options[0]?.textContent).toBe('the home garden');
    choose(select, '');
    expect(seen).toEqual([{ path: ['garden'], value: undefined, label: 'Garden' }]);
  });

  it('ticks', async () => {
    const { el, seen } = await field_(ownRoots, false);
    await userEvent.click(find(el.renderRoot, HTMLInputElement, 'input'));
    expect(seen.map((each) => each.value)).toEqual([true]);
    el.value = true;
    await settled();
    el.value = false;
    await settled();
    expect(find(el.renderRoot, HTMLInputElement, 'input').checked).toBe(false);
  });
});

describe('what people type into a plain number field', () => {
  it.each<[string, string]>([
    ['6–10', '“6–10” is a range, but one number fits here. The picture still shows your last good number, 400.'],
    ['18 of 240', '“18 of 240” is a count, but one number fits here. The picture still shows your last good number, 400.'],
    ['about 80', 'One number fits here, without “about”: 80. The picture still shows your last good number, 400.'],
    ['at least 80', 'One number fits here, without “at least”: 80. The picture still shows your last good number, 400.'],
    ['< 80', 'One number fits here, without “at most”: 80. The picture still shows your last good number, 400.'],
    ['20 or 50', '“20 or 50” gives a choice, but one number fits here. The picture still shows your last good number, 400.'],
    ['8 %', 'No percentage fits here: type the number itself. The picture still shows your last good number, 400.'],
  ])('refuses %j with what fits', async (text, words) => {
    const { el, seen } = await field_(NAMED.flowers, 400);
    typeInto(boxOf(el.renderRoot), text);
    await settled();
    expect(problemOf(el.renderRoot)).toBe(words);
    expect(seen).toEqual([]);
  });

  it('shows two readings as two buttons, takes neither, and lets one be chosen', async () => {
    const { el, seen } = await field_(NAMED.flowers, 400);
    loop(el);
    const box = boxOf(el.renderRoot);
    box.focus();
    box.select();
    await userEvent.keyboard('10.000');
    await settled();
    expect(el.value).toBe(400);
    const buttons = everything(el.renderRoot).filter((each) => each.matches('.choose button'));
    expect(buttons.map((each) => each.textContent.replaceAll('\u00a0', ' '))).toEqual(['10 flowers', '10000 flowers']);
    expect(await breaches(el)).toEqual([]);
    await userEvent.tab();
    await userEvent.tab();
    await userEvent.keyboard(' ');
    await settled();
    expect([el.value, box.value, seen.at(-1)?.value]).toEqual([10_000, '10000', 10_000]);
    await new Promise((done) => setTimeout(done, 20));
    expect(el.shadowRoot?.activeElement).toBe(box);
  });

  it('says so where the bounds left only one of two readings', async () => {
    const { el } = await field_(NAMED.flowers, 400);
    typeInto(boxOf(el.renderRoot), '1,500');
    await settled();
    expect(find(el.renderRoot, HTMLElement, '#understood').textContent.replaceAll('\u00a0', ' ')).toBe('Read as 1500 flowers.');
  });
});
