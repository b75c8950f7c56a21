import { ContextProvider } from '@lit/context';
import { html } from 'lit';
import { describe, expect, it, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import pear from '../../../sims/examples/red-pear.json';
import { answersContext, programmeContext } from '../../../src/components/contexts.ts';
import { PayUnknowns } from '../../../src/components/pay/unknowns/unknowns.ts';
import type { Answer, AskOptions, NoAnswer } from '../../../src/decisions/question.ts';
import type { UnknownsAnswer } from '../../../src/decisions/unknowns.ts';
import { programmeSchema, type Programme } from '../../../src/model/programme.ts';
import { AnswersStore } from '../../../src/state/answers-store.ts';
import { ProgrammeStore } from '../../../src/state/programme-store.ts';
import { unknownsText } from '../../../src/text/pay-unknowns.ts';
import { breaches, everything, find, mount, settled } from '../fields/mount.ts';
import { SAMPLE } from './unknowns-sample.ts';

const redPear = programmeSchema.parse(pear);

/** Asks nobody: remembers the question, and answers when told to. */
class Quiet {
  readonly asked: { readonly question: string; readonly options: AskOptions }[] = [];
  answer: (answer: Answer | NoAnswer) => void = () => undefined;
  report: (partial: Answer) => void = () => undefined;

  ask(question: string, _programme: Programme, options: AskOptions, report: (partial: Answer) => void): Promise<Answer | NoAnswer> {
    this.asked.push({ question, options });
    this.report = report;
    return new Promise((done) => (this.answer = done));
  }
}

async function open(width = 1144) {
  await page.viewport(width, 900);
  const asking = new Quiet();
  const place = document.createElement('div');
  new ContextProvider(place, { context: programmeContext, initialValue: new ProgrammeStore(redPear) });
  new ContextProvider(place, { context: answersContext, initialValue: new AnswersStore(redPear, asking) });
  const element = new PayUnknowns();
  element.plan = 'wide-rescue';
  place.append(element);
  await mount(html`${place}`);
  return { element, asking };
}

async function answered(answer: UnknownsAnswer = SAMPLE, width = 1144) {
  const opened = await open(width);
  await userEvent.click(button(opened.element, unknownsText.button));
  await vi.waitFor(() => expect(opened.asking.asked).toHaveLength(1));
  opened.asking.answer(answer);
  await vi.waitFor(() => expect(opened.element.renderRoot.querySelector('oo-unknowns-table')).not.toBeNull());
  await settled();
  return opened;
}

function button(element: PayUnknowns, name: string): HTMLButtonElement {
  const found = [...element.renderRoot.querySelectorAll('button')].find((each) => each.textContent.trim() === name);
  if (!found) throw new Error(`no “${name}”`);
  return found;
}

const said = (root: Element): string => root.textContent.replace(/\s+/g, ' ').replaceAll('\u00a0', ' ').trim();
const rowsOf = (element: PayUnknowns) => everything(element.renderRoot).filter((each) => each.matches('.ranked tbody tr'));

describe('which unknown matters most', () => {
  it('asks nothing before the button, which the keyboard presses', async () => {
    const { element, asking } = await open();
    expect(said(find(element.renderRoot, HTMLElement, 'h2'))).toBe(unknownsText.asking);
    expect(asking.asked).toEqual([]);
    await userEvent.keyboard('{Tab}');
    expect(element.shadowRoot?.activeElement?.textContent.trim()).toBe(unknownsText.button);
    await userEvent.keyboard('{Enter}');
    await vi.waitFor(() => expect(asking.asked).toEqual([{ question: 'unknowns', options: { plan: 'wide-rescue' } }]));
  });

  it('says luck’s share first, then what matters most, and what is worth finding out', async () => {
    const { element } = await answered();
    expect(said(find(element.renderRoot, HTMLElement, 'h2'))).toBe('80 in 100 is luck; of the rest, whether weakness sits in the roots matters most');
    expect(said(find(element.renderRoot, HTMLElement, '.said'))).toContain('about eight truly are');
    expect(said(find(element.renderRoot, HTMLElement, '.worth'))).toBe(
      'Worth finding out: whether weakness sits in the roots. Graft ten weak seedlings, watch two summers: about 4 hours, ten trees, two seasons.',
    );
    expect(said(find(element.renderRoot, HTMLElement, '.flips p'))).toBe(
      'If weakness sits in the roots, D is ahead of A by 20 in 100 (13 to 25); if not, A is ahead of D by 19 in 100 (13 to 25). By your guesses the first is so 7 of 10 times.',
    );
  });

  it('has a row for each fact that counts, with its share, direction, source and way to learn it', async () => {
    const { element } = await answered();
    const rows = rowsOf(element).map(said);
    expect(rows).toHaveLength(2);
    expect(rows[0]).toMatch(
      /Weakness sits in the roots.*65 ?58–74 on its own.*68 \(50–90\) with the others.*if so: 73 %.*eight of ten truly good.*if not: 34 %.*guess/,
    );
    expect(rows[1]).toMatch(
      /The fruit set of pear × quince.*12 ?9–16.*more is better.*your count.*one more spring of 40 flowers, counted.*about 1 hour, one season/,
    );
    expect(said(find(element.renderRoot, HTMLElement, 'details.small summary'))).toMatch(/^Two more unknowns/);
    expect(said(find(element.renderRoot, HTMLElement, 'details.small tbody'))).toMatch(
      /How early each family comes into fruit.*3.*The fruit set of pear × pear.*changed none of 960 futures/,
    );
  });

  it('draws each bar as long as its share says, on one scale', async () => {
    const { element } = await answered();
    const lengths = everything(element.renderRoot).flatMap((each) =>
      each instanceof SVGRectElement && each.matches('.alone') ? [each.width.baseVal.value] : [],
    );
    expect(lengths).toHaveLength(2);
    expect(lengths[0]! / lengths[1]!).toBeCloseTo(0.65 / 0.12, 1);
    const cell = find(element.renderRoot, HTMLElement, 'td.matters');
    expect(find(cell, SVGSVGElement, 'svg').width.baseVal.value).toBeLessThanOrEqual(cell.clientWidth);
  });

  it('says so where facts explain too little to share out, or where none leads', async () => {
    const nothing = await answered({
      ...SAMPLE,
      measurable: false,
      clear: false,
      worth: null,
      flips: [],
      facts: SAMPLE.facts.map((fact) => ({ ...fact, clear: false })),
    });
    expect(said(find(nothing.element.renderRoot, HTMLElement, 'h2'))).toBe('What you do not know explains less than we can measure: nearly all is luck');
    expect(rowsOf(nothing.element)).toEqual([]);
    const level = await answered({ ...SAMPLE, clear: false });
    expect(said(find(level.element.renderRoot, HTMLElement, 'h2'))).toMatch(/and the fruit set of pear × quince lead: no clear difference$/);
    const alone = await answered({
      ...SAMPLE,
      clear: false,
      facts: SAMPLE.facts.map((fact, i) => ({ ...fact, first: { ...fact.first, low: i === 0 ? 0.01 : 0 } })),
    });
    expect(said(find(alone.element.renderRoot, HTMLElement, 'h2'))).toMatch(/whether weakness sits in the roots leads the others by no clear difference$/);
    const none = await answered({ ...SAMPLE, clear: false, facts: SAMPLE.facts.map((fact) => ({ ...fact, first: { ...fact.first, low: 0 } })) });
    expect(said(find(none.element.renderRoot, HTMLElement, 'h2'))).toMatch(/no single unknown stands out$/);
  });

  it.each([1144, 700, 320])('has no breach of WCAG 2.2 AA, and no sideways scroll, at %i px', async (width) => {
    const { element } = await answered(SAMPLE, width);
    for (const details of element.renderRoot.querySelectorAll('details')) details.open = true;
    await settled();
    for (const theme of ['light', 'dark']) {
      document.documentElement.dataset['theme'] = theme;
      expect(await breaches(element), theme).toEqual([]);
    }
    delete document.documentElement.dataset['theme'];
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
    for (const summary of element.renderRoot.querySelectorAll('summary')) expect(summary.getBoundingClientRect().height).toBeGreaterThanOrEqual(44);
  });
});
