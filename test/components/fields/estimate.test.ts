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
