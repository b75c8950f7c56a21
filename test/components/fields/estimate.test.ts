import { html } from 'lit';
import { describe, expect, it } from 'vitest';
import { userEvent } from 'vitest/browser';
import { OoEstimate } from '../../../src/components/fields/estimate.ts';
import { barLines, curvePaths } from '../../../src/components/fields/sketch.ts';
import { crossSchema, kindSchema } from '../../../src/model/biology.ts';
import { estimate, share, type Estimate } from '../../../src/model/estimate.ts';
import { spreadOf } from '../../../src/model/estimate-spread.ts';
import { boxOf, breaches, choose, edits, everything, find, mount, problemOf, settled, typeInto } from './mount.ts';

const set = crossSchema.shape.set;
const age = estimate(1, 60, { label: 'First fruit at', scale: 'years', unit: 'years' });
const COUNT: Estimate = { hits: 18, of: 240, lots: 2, source: { kind: 'counted', note: '2025–26' } };
const RANGE: Estimate = { low: 0.4, likely: 0.55, high: 0.7, source: { kind: 'published', note: 'quince seed, chilled for twelve weeks' } };
const EITHER: Estimate = {
  oneOf: [
    { value: 0.2, weight: 5 },
    { value: 0.5, weight: 3 },
  ],
};

async function open(
  value: Estimate | undefined,
  more: Partial<OoEstimate> = {},
): Promise<{ el: OoEstimate; seen: ReturnType<typeof edits>; root: ParentNode }> {
  const el = Object.assign(new OoEstimate(), { schema: set, value, path: ['crosses', 0, 'set'], ...more });
  const place = await mount(html`${el}`);
  el.addEventListener('oo-change', (event) => {
    // As after parsing: equal, but never the same object.
    el.value = structuredClone(event.detail.value);
  });
  return { el, seen: edits(place), root: el.renderRoot };
}

const values = (root: ParentNode): string[] =>
  everything(root).flatMap((each) => (each instanceof HTMLInputElement && each.matches('.number') ? [each.value] : []));
const formChoice = (root: ParentNode): HTMLSelectElement => find(root, HTMLSelectElement, 'select[aria-label$="given as"]');
const said = (root: ParentNode): string => find(root, HTMLElement, '#said').textContent.replaceAll('\u00a0', ' ').replaceAll('\u2060', '').trim();

describe('oo-estimate', () => {
  it('has no breach of WCAG 2.2 AA in any form, good or bad, with its source open', async () => {
    const place = await mount(html`
      <oo-estimate .schema=${set} .value=${0.08}></oo-estimate>
      <oo-estimate .schema=${set} .value=${RANGE}></oo-estimate>
      <oo-estimate .schema=${set} .value=${COUNT} .springLuck=${0.1} clusters></oo-estimate>
      <oo-estimate .schema=${set} .value=${{ ...COUNT, unit: { name: 'cluster', flowers: 5 } }} .springLuck=${0.1} clusters></oo-estimate>
      <oo-estimate .schema=${set} .value=${EITHER} .problem=${'Must agree.'}></oo-estimate>
      <oo-estimate .schema=${age} .value=${{ low: 4, likely: 6, high: 9, source: { kind: 'guess', note: '' } }}></oo-estimate>
    `);
    find(place, HTMLButtonElement, 'button.open', 2).click();
    await settled();
    expect(await breaches(place)).toEqual([]);
    typeInto(boxOf(place, 1), '90');
    await settled();
    expect(await breaches(place)).toEqual([]);
  });

  it('shows a share in percent in every form', async () => {
    for (const [value, texts] of [
      [0.08, ['8']],
      [RANGE, ['40', '55', '70']],
      [COUNT, ['18', '240', '2']],
      [EITHER, ['20', '5', '50', '3']],
      [undefined, ['0']],
    ] as const) {
      const { root } = await open(value);
      expect(values(root)).toEqual(texts);
    }
  });

  it('one number: sends it bare, or with its source kept', async () => {
    const bare = await open(0.08);
    typeInto(boxOf(bare.root), '12,5');
    expect(bare.seen).toEqual([{ path: ['crosses', 0, 'set'], value: 0.125, label: 'Fruit set' }]);
    const sourced = await open({ value: 0.08, source: { kind: 'guess', note: 'x' } });
    typeInto(boxOf(sourced.root), '9');
    expect(sourced.seen.at(-1)?.value).toEqual({ value: 0.09, source: { kind: 'guess', note: 'x' } });
  });

  it('a range: sends all three, and marks in words which two disagree', async () => {
    const { root, seen } = await open(RANGE);
    typeInto(boxOf(root, 0), '30');
    expect(seen.at(-1)?.value).toEqual({ ...RANGE, low: 0.3 });
    await settled();
    typeInto(boxOf(root, 0), '60');
    await settled();
    expect(seen).toHaveLength(1);
    expect(problemOf(root)).toBe('“likely” must not be below “low”. The picture still shows your last good numbers, 30, 55 and 70.');
    expect([0, 1, 2].map((i) => boxOf(root, i).getAttribute('aria-invalid'))).toEqual(['true', 'true', 'false']);
    // Put right from the other side, both numbers go out together.
    typeInto(boxOf(root, 1), '65');
    expect(seen.at(-1)?.value).toEqual({ ...RANGE, low: 0.6, likely: 0.65 });
    await settled();
    expect(problemOf(root)).toBe('');
  });

  it('keeps what disagrees as typed while the same numbers come back in a new object', async () => {
    const { el, root } = await open(RANGE);
    typeInto(boxOf(root, 0), '60');
    el.value = structuredClone(RANGE);
    await settled();
    expect(values(root)).toEqual(['60', '55', '70']);
    el.value = { ...RANGE, low: 0.35 };
    await settled();
    expect(values(root)).toEqual(['35', '55', '70']);
    expect(problemOf(root)).toBe('');
  });

  it('keeps the caret while the value comes back in a new object', async () => {
    const { root } = await open(RANGE);
    const box = boxOf(root, 1);
    box.focus();
    box.setSelectionRange(1, 1);
    await userEvent.keyboard('0{Backspace}1');
    await settled();
    expect([box.value, box.selectionStart]).toEqual(['515', 2]);
    await userEvent.keyboard('{Delete}');
    await settled();
    expect([box.value, box.selectionStart]).toEqual(['51', 2]);
  });

  it('a count: sends hits, of and lots, and no more hits than tries', async () => {
    const { root, seen } = await open(COUNT, { springLuck: 0.1 });
    typeInto(boxOf(root, 0), '20');
    await settled();
    typeInto(boxOf(root, 2), '3');
    expect(seen.at(-1)?.value).toEqual({ ...COUNT, hits: 20, lots: 3 });
    await settled();
    typeInto(boxOf(root, 1), '19');
    await settled();
    expect(seen).toHaveLength(2);
    expect(problemOf(root)).toBe('Cannot be more than what it is counted out of. The picture still shows your last good numbers, 20, 240 and 3.');
    typeInto(boxOf(root, 1), '0');
    await settled();
    expect(problemOf(root)).toMatch(/^Must be more than none/);
    typeInto(boxOf(root, 2), '1,5');
    await settled();
    expect(problemOf(root)).toMatch(/^Must be a whole number/);
    expect(seen).toHaveLength(2);
  });

  it('a count: can be made in clusters of flowers, and says so per flower', async () => {
    const { root, seen } = await open({ hits: 50, of: 100, lots: 1 }, { clusters: true });
    expect(said(root)).toMatch(/^about 50 in 100/);
    choose(find(root, HTMLSelectElement, '#per'), 'cluster');
    await settled();
    expect(seen.at(-1)?.value).toEqual({ hits: 50, of: 100, lots: 1, unit: { name: 'cluster', flowers: 5 } });
    // 1 − (1 − ½)^(1/5) = 0.129.
    expect(said(root)).toMatch(/^about 13 in 100/);
    typeInto(boxOf(root, 2), '2');
    await settled();
    // 1 − (1 − ½)^(1/2) = 0.293.
    expect(said(root)).toMatch(/^about 29 in 100/);
    choose(find(root, HTMLSelectElement, '#per'), 'flower');
    expect(seen.at(-1)?.value).toEqual({ hits: 50, of: 100, lots: 1 });
  });

  it('a count of one spring does not look surer than it is', async () => {
    // Beta(18.5, 222.5) by its normal approximation: 0.0768 ± 1.28 × 0.0171, so 5.5–9.9 in 100.
    expect(said((await open({ ...COUNT, lots: 1 })).root)).toBe('about 8 in 100; likely 6–10');
    expect(said((await open({ ...COUNT, lots: 1 }, { springLuck: 0.1 })).root)).not.toBe('about 8 in 100; likely 6–10');
  });

  it('alternatives: values and weights, one more, one fewer, never fewer than two', async () => {
    const { root, seen } = await open(EITHER);
    typeInto(boxOf(root, 1), '4');
    expect(seen.at(-1)?.value).toEqual({
      oneOf: [
        { value: 0.2, weight: 4 },
        { value: 0.5, weight: 3 },
      ],
    });
    await settled();
    const button = (name: string): HTMLButtonElement => find(root, HTMLButtonElement, `button[aria-label="${name}"]`);
    expect(button('remove alternative 1').disabled).toBe(true);
    everything(root)
      .find((each): each is HTMLButtonElement => each instanceof HTMLButtonElement && each.textContent.trim() === 'another alternative')
      ?.click();
    await settled();
    expect(values(root)).toEqual(['20', '4', '50', '3', '50', '3']);
    button('remove alternative 1').click();
    await settled();
    expect(values(root)).toEqual(['50', '3', '50', '3']);
    typeInto(boxOf(root, 1), '0');
    await settled();
    expect(problemOf(root)).toMatch(/^Must be more than none/);
  });

  it('changes its form, shows the new boxes and sends the new estimate', async () => {
    const { root, seen } = await open(0.08);
    choose(formChoice(root), 'ranged');
    await settled();
    expect(values(root)).toEqual(['4', '8', '12']);
    expect(seen.at(-1)?.value).toEqual({ low: 0.04, likely: 0.08, high: 0.12, source: { kind: 'guess', note: '' } });
    choose(formChoice(root), 'alternatives');
    await settled();
    expect(values(root)).toEqual(['4', '1', '8', '4', '12', '1']);
    choose(formChoice(root), 'known');
    await settled();
    expect(values(root)).toEqual(['8']);
  });

  it('offers a count for shares only', async () => {
    const forms = (root: ParentNode): string[] => [...formChoice(root).options].map((option) => option.textContent);
    expect(forms((await open(0.08)).root)).toEqual(['one number', 'a range', 'a count', 'alternatives']);
    expect(forms((await open(6, { schema: age })).root)).toEqual(['one number', 'a range', 'alternatives']);
  });

  it('follows undo from one form to another', async () => {
    const { el, root } = await open(RANGE);
    el.value = COUNT;
    await settled();
    expect(values(root)).toEqual(['18', '240', '2']);
    el.value = 0.3;
    await settled();
    expect(values(root)).toEqual(['30']);
  });

  it('keeps to the bounds of its field, in its own scale', async () => {
    const { root, seen } = await open({ low: 4, likely: 6, high: 9 }, { schema: age });
    typeInto(boxOf(root, 2), '99');
    await settled();
    expect(problemOf(root)).toBe('Must lie between 1 and 60 years. The picture still shows your last good numbers, 4, 6 and 9.');
    expect(seen).toEqual([]);
  });

  it('steps each box with the arrow keys', async () => {
    const { root, seen } = await open(RANGE);
    boxOf(root, 1).focus();
    await userEvent.keyboard('{ArrowUp}{Shift>}{ArrowDown}{/Shift}');
    expect(seen.map((each) => (each.value as { likely: number }).likely)).toEqual([0.56, 0.46]);
  });

  it('says what it is in words, and in a sketch that screen readers skip', async () => {
    const range = await open(RANGE);
    // PERT mean of 40–55–70 is 55; beta(3, 3) has its outer tenths at 0.247 and 0.753 of the way: 47.4 and 62.6.
    expect(said(range.root)).toBe('about 55 in 100; likely 47–63quince seed, chilled for twelve weeks');
    expect(find(range.root, SVGElement, 'svg').getAttribute('aria-hidden')).toBe('true');
    const years = await open({ low: 4, likely: 6, high: 9 }, { schema: kindSchema.shape.flowers });
    expect(said(years.root)).toMatch(/^about 6\.2 flowers; likely/);
    const one = await open(0.08);
    expect(everything(one.root).some((each) => each.matches('svg'))).toBe(false);
  });

  it('says a wide share in tens and a rare one in thousands', async () => {
    expect(said((await open({ hits: 14, of: 20, lots: 1 })).root)).toBe('about 7 in 10; likely 6–8');
    expect(said((await open({ low: 0.001, likely: 0.003, high: 0.008 })).root)).toMatch(/^about 4 in 1,000; likely [23]–[56]$/);
  });
});

describe('the source of a number', () => {
  const badge = (root: ParentNode): HTMLButtonElement => find(root, HTMLButtonElement, 'button.open');

  it('is told apart by fill and line, with its note as description', async () => {
    const looks: string[] = [];
    for (const kind of ['counted', 'published', 'practice', 'guess', 'invented'] as const) {
      const { root } = await open({ value: 0.08, source: { kind, note: 'a note that is long enough to stand outside' } });
      const { backgroundColor, borderTopStyle, fontStyle } = getComputedStyle(find(root, HTMLElement, '.badge'));
      looks.push(`${badge(root).textContent.trim()}: ${backgroundColor === 'rgba(0, 0, 0, 0)' ? borderTopStyle : 'filled'} ${fontStyle}`);
      const about = (badge(root).getAttribute('aria-describedby') ?? '')
        .split(' ')
        .map((id) => find(badge(root).parentNode!, HTMLElement, `#${id}`).textContent);
      expect(about).toEqual(['Where “Fruit set” comes from', 'a note that is long enough to stand outside']);
    }
    expect(looks).toEqual([
      'your count: filled normal',
      'published: solid normal',
      'common practice: solid italic',
      'guess: dashed normal',
      'invented: dotted normal',
    ]);
  });

  it('holds a short note in the badge', async () => expect(badge((await open(COUNT)).root).textContent.trim()).toBe('your count, 2025–26'));

  it('opens, takes a kind and a note, and closes on Escape back to the badge', async () => {
    const { root, seen } = await open(0.08);
    expect(badge(root).textContent.trim()).toBe('source not said');
    await userEvent.click(badge(root));
    await settled();
    expect(badge(root).ariaExpanded).toBe('true');
    choose(find(root, HTMLSelectElement, '.panel select'), 'published');
    expect(seen.at(-1)?.value).toEqual({ value: 0.08, source: { kind: 'published', note: '' } });
    await settled();
    const noteBox = find(root, HTMLInputElement, '.panel input');
    noteBox.focus();
    await userEvent.keyboard('leaflet 3');
    expect(seen.at(-1)?.value).toEqual({ value: 0.08, source: { kind: 'published', note: 'leaflet 3' } });
    await settled();
    expect(noteBox.value).toBe('leaflet 3');
    let leaked = false;
    document.body.addEventListener('keydown', (event) => (leaked ||= event.key === 'Escape'), { once: true });
    await userEvent.keyboard('{Escape}');
    await settled();
    expect(badge(root).ariaExpanded).toBe('false');
    expect(leaked).toBe(false);
    expect(badge(root).getRootNode()).toHaveProperty('activeElement', badge(root));
  });

  it('can be taken back', async () => {
    const { root, seen } = await open(COUNT);
    badge(root).click();
    await settled();
    choose(find(root, HTMLSelectElement, '.panel select'), '');
    expect(seen.at(-1)?.value).toEqual({ hits: 18, of: 240, lots: 2 });
  });
});

describe('the sketch', () => {
  it('stays within its 80 × 40, and its curve touches the top once', () => {
    const { line } = curvePaths(spreadOf({ low: 0.1, likely: 0.3, high: 0.9 })!);
    const points = [...line.matchAll(/([\d.]+),([\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
    expect(points).toHaveLength(41);
    expect(points.every(([x, y]) => x >= 0 && x <= 80 && y >= 0 && y <= 40)).toBe(true);
    // The peak of a PERT range is at its likely value: a quarter of the way.
    const peak = points.reduce((a, b) => (b[1] < a[1] ? b : a));
    expect(Math.abs(peak[0] - 20)).toBeLessThanOrEqual(80 / 40);
  });

  it('draws alternatives as bars as high as their weights', () => {
    const bars = barLines({
      oneOf: [
        { value: 0.2, weight: 1 },
        { value: 0.5, weight: 2 },
        { value: 0.3, weight: 2 },
      ],
    });
    const base = 37;
    expect((base - bars[0]!.top) * 2).toBeCloseTo(base - bars[1]!.top, 10);
    expect(bars[0]!.x).toBeLessThan(bars[2]!.x);
    expect(bars[2]!.x).toBeLessThan(bars[1]!.x);
  });

  it('draws nothing for a range without width', async () => {
    const { root } = await open({ low: 0.2, likely: 0.2, high: 0.2 }, { schema: share({ label: 'Flat' }) });
    expect(everything(root).some((each) => each.matches('svg'))).toBe(false);
  });
});

describe('a whole estimate typed into one box', () => {
  const box = (root: ParentNode, place = 0): HTMLInputElement => boxOf(root, place);
  const line = (root: ParentNode): string =>
    find(root, HTMLElement, '#understood').textContent.replaceAll('\u00a0', ' ').replaceAll('\u2060', '').replace(/\s+/g, ' ').trim();
  const button = (root: ParentNode, name: string): HTMLButtonElement => {
    const found = everything(root).find(
      (each) => each instanceof HTMLButtonElement && each.textContent.replaceAll('\u00a0', ' ').replaceAll('\u2060', '').trim() === name,
    );
    if (!(found instanceof HTMLButtonElement)) throw new Error(`No button “${name}”.`);
    return found;
  };
  /** Types as a person does: letter by letter, so that every beginning of the text is seen too. */
  async function write(root: ParentNode, text: string, place = 0): Promise<void> {
    const it_ = box(root, place);
    it_.focus();
    it_.select();
    await userEvent.keyboard(text.replaceAll('{', '{{').replaceAll('[', '[['));
    await settled();
  }
  const later = (): Promise<unknown> => new Promise((done) => setTimeout(done, 20));

  it('a range: says beforehand how it will be read, takes it on Enter, and stays in the boxes', async () => {
    const { root, seen } = await open({ value: 0.5, source: { kind: 'practice', note: '' } });
    await write(root, '6–10');
    expect(line(root)).toBe('Will be read as 6–8–10 %: likely is the middle of the two. Enter takes it, or leaving the box.');
    expect(problemOf(root)).toBe('');
    expect(box(root).getAttribute('aria-invalid')).toBe('false');
    await userEvent.keyboard('{Enter}');
    await settled();
    expect(seen.at(-1)?.value).toEqual({ low: 0.06, likely: 0.08, high: 0.1, source: { kind: 'practice', note: '' } });
    expect(values(root)).toEqual(['6', '8', '10']);
    expect(line(root)).toBe('“6–10” is read as 6–8–10 %: likely is the middle of the two. Change it in the boxes, or put back 50 %');
    await later();
    expect((root as ShadowRoot).activeElement?.id).toBe('low');
    button(root, 'put back 50 %').click();
    await settled();
    expect(seen.at(-1)?.value).toEqual({ value: 0.5, source: { kind: 'practice', note: '' } });
    expect(values(root)).toEqual(['50']);
  });

  it('a count: turns into hits and of on leaving the box, as a count of the breeder’s own', async () => {
    for (const text of ['18 of 240', '18/240', '18 out of 240']) {
      const { root, seen } = await open(RANGE);
      await write(root, text);
      await userEvent.tab();
      await settled();
      expect(seen.at(-1)?.value).toEqual({ hits: 18, of: 240, lots: 1, source: { kind: 'counted', note: '' } });
      expect(values(root)).toEqual(['18', '240']);
      await later();
      expect((root as ShadowRoot).activeElement, 'the focus is not lost with the box it was to go to').not.toBeNull();
    }
  });

  it('a count over a count keeps the springs it was made in', async () => {
    const { root, seen } = await open(COUNT);
    await write(root, '20/250');
    await userEvent.keyboard('{Enter}');
    await settled();
    expect(seen.at(-1)?.value).toEqual({ ...COUNT, hits: 20, of: 250 });
  });

  it('“about” and “at least” are a guess and say what was made of them', async () => {
    const about = await open(6, { schema: age });
    await write(about.root, 'about 8');
    await userEvent.keyboard('{Enter}');
    await settled();
    expect(about.seen.at(-1)?.value).toEqual({ low: 6.4, likely: 8, high: 9.6, source: { kind: 'guess', note: 'about 8' } });
    expect(line(about.root)).toMatch(/^“about 8” is read as 6\.4–8–9\.6 years: a fifth to either side, marked as a guess\./);
    expect(find(about.root, HTMLElement, '.badge').textContent).toBe('guess, about 8');
    const least = await open(6, { schema: age });
    await write(least.root, '> 12');
    await userEvent.keyboard('{Enter}');
    await settled();
    expect(least.seen.at(-1)?.value).toMatchObject({ low: 12, likely: 14.4, high: 16.8, source: { kind: 'guess' } });
  });

  it('sends nothing of the beginnings of a text in the end: what stood before stands until it is taken', async () => {
    const { el, root } = await open(6, { schema: age });
    await write(root, '8–');
    expect(el.value).toBe(6);
    expect(problemOf(root)).toBe('');
    box(root).blur();
    await settled();
    expect(problemOf(root)).toBe('“8–” is not a number. The picture still shows your last good number, 6.');
    expect(box(root).value).toBe('8–');
  });

  it('two readings: two buttons, neither taken, the text stays; a press takes one and gives the box back', async () => {
    const flowers = kindSchema.shape.flowers;
    const { el, root, seen } = await open(300, { schema: flowers });
    await write(root, '1,500');
    expect(el.value).toBe(300);
    expect(problemOf(root)).toBe('“1,500” can be read in two ways. Which is meant? The picture still shows your last good number, 300.');
    const group = find(root, HTMLElement, '.choose');
    expect([group.getAttribute('role'), group.ariaLabel]).toEqual(['group', 'What “1,500” means']);
    expect(await breaches(el)).toEqual([]);
    await userEvent.tab();
    await settled();
    expect([box(root).value, box(root).getAttribute('aria-invalid'), el.value]).toEqual(['1,500', 'true', 300]);
    expect((root as ShadowRoot).activeElement).toBe(button(root, '1.5 flowers'));
    await userEvent.tab();
    await userEvent.keyboard('{Enter}');
    await settled();
    expect(seen.at(-1)?.value).toBe(1500);
    expect([box(root).value, problemOf(root)]).toEqual(['1500', '']);
    await later();
    expect((root as ShadowRoot).activeElement).toBe(box(root));
  });

  it('two readings of a range, too', async () => {
    const { el, root } = await open(300, { schema: kindSchema.shape.flowers });
    await write(root, '1,500-2,500');
    button(root, '1500–2000–2500 flowers').click();
    await settled();
    expect(el.value).toEqual({ low: 1500, likely: 2000, high: 2500, source: { kind: 'guess', note: '' } });
  });

  it('says in words what does not fit', async () => {
    const years = await open(6, { schema: age });
    typeInto(box(years.root), '18/240');
    await settled();
    expect(problemOf(years.root)).toMatch(/^“18\/240” is a count, which only a share can be\. Type one number, or a range/);
    typeInto(box(years.root), '6–99');
    await settled();
    expect(problemOf(years.root)).toMatch(/^Must lie between 1 and 60 years/);
    typeInto(box(years.root), '10–6');
    await settled();
    expect(problemOf(years.root)).toMatch(/^“10–6” runs downwards/);
    const count = await open(COUNT);
    typeInto(box(count.root), '6 to 10');
    await settled();
    expect(problemOf(count.root)).toMatch(/^“6 to 10” does not fit a count/);
    const either = await open(EITHER);
    typeInto(box(either.root), '6 to 10');
    await settled();
    expect(problemOf(either.root)).toMatch(/^“6 to 10” is a range, but one number fits here/);
    expect([...years.seen, ...count.seen, ...either.seen]).toEqual([]);
  });

  it('says how a number was read where that is not plain to see', async () => {
    const { root, seen } = await open(0.5);
    await write(root, '7 in 10');
    expect(seen.at(-1)?.value).toBe(0.7);
    expect(line(root)).toBe('Read as 70 %, a share. If you counted, type “7 of 10”.');
    await write(root, '12,5 %');
    expect([seen.at(-1)?.value, line(root)]).toEqual([0.125, '']);
  });

  it('keeps the focus when an alternative is taken out', async () => {
    const three: Estimate = { oneOf: [0.1, 0.2, 0.3].map((value) => ({ value, weight: 1 })) };
    const { root } = await open(three);
    const last = find(root, HTMLButtonElement, 'button[aria-label="remove alternative 3"]');
    last.focus();
    await userEvent.keyboard('{Enter}');
    await settled();
    await later();
    expect(values(root)).toHaveLength(4);
    expect((root as ShadowRoot).activeElement).toBe(box(root));
  });
});

describe('how sure a source is', () => {
  it('stands in the badge and can be set and taken back', async () => {
    const { root, seen } = await open({ value: 0.08, source: { kind: 'published', note: 'a leaflet of three pages', confidence: 'high' } });
    const badge = find(root, HTMLButtonElement, 'button.open');
    expect(badge.textContent.trim()).toBe('published · high confidence');
    badge.click();
    await settled();
    const sure = find(root, HTMLSelectElement, '.panel select', 1);
    choose(sure, 'low');
    await settled();
    expect(seen.at(-1)?.value).toEqual({ value: 0.08, source: { kind: 'published', note: 'a leaflet of three pages', confidence: 'low' } });
    expect(badge.textContent.trim()).toBe('published · low confidence');
    choose(sure, '');
    expect(seen.at(-1)?.value).toEqual({ value: 0.08, source: { kind: 'published', note: 'a leaflet of three pages' } });
  });
});
