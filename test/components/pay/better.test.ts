import { ContextProvider } from '@lit/context';
import { beforeAll, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import pear from '../../../sims/examples/red-pear.json';
import { answersContext, programmeContext } from '../../../src/components/contexts.ts';
import { PayBetter } from '../../../src/components/pay/better/better.ts';
import { better, type BetterAnswer } from '../../../src/decisions/better.ts';
import { inlineFutures } from '../../../src/decisions/inline.ts';
import type { Answer, AskOptions } from '../../../src/decisions/question.ts';
import { MARKS } from '../../../src/model/plan.ts';
import { programmeSchema, type Programme } from '../../../src/model/programme.ts';
import { AnswersStore } from '../../../src/state/answers-store.ts';
import { ProgrammeStore } from '../../../src/state/programme-store.ts';
import { breaches, everything, find, settled } from '../fields/mount.ts';

const redPear = (): Programme => ({ ...programmeSchema.parse(pear), runs: 100 });

/** One search for all tests: what it reports on the way, and the answer. */
const reports: BetterAnswer[] = [];
beforeAll(async () => {
  await better.ask(redPear(), { plan: 'wide-rescue', looks: 60, runs: 200 }, inlineFutures(), (partial) => reports.push(partial));
}, 60_000);

interface Opened {
  readonly section: PayBetter;
  readonly programmes: ProgrammeStore;
  readonly answers: AnswersStore;
  readonly asked: AskOptions[];
}

/** @param until reports that have come; the question then waits for ever, or is answered with the last */
async function open(width = 1100, programme = redPear(), until = Infinity): Promise<Opened> {
  await page.viewport(width, 900);
  const asked: AskOptions[] = [];
  const asking = {
    ask: async (_id: string, _of: Programme, options: AskOptions, report: (partial: Answer) => void): Promise<Answer> => {
      asked.push(options);
      for (const partial of reports.slice(0, until)) report(partial);
      const last = reports.at(-1);
      return until < reports.length || !last ? new Promise<Answer>(() => undefined) : last;
    },
  };
  const place = document.createElement('main');
  document.body.append(place);
  const programmes = new ProgrammeStore(programme);
  const answers = new AnswersStore(programme, asking);
  programmes.subscribe((state) => answers.update(state.runnable));
  new ContextProvider(place, { context: programmeContext, initialValue: programmes });
  new ContextProvider(place, { context: answersContext, initialValue: answers });
  const section = Object.assign(new PayBetter(), { plan: 'wide-rescue' });
  // Its title is an h2: on the page a h1 stands before it.
  place.innerHTML = '<h1>Would it pay to…?</h1>';
  place.append(section);
  await document.fonts.ready;
  await settled();
  return { section, programmes, answers, asked };
}

const button = (section: PayBetter, name: string): HTMLButtonElement => {
  const found = everything(section.renderRoot).find((element) => element instanceof HTMLButtonElement && element.textContent.trim() === name);
  if (!(found instanceof HTMLButtonElement)) throw new Error(`No button “${name}”.`);
  return found;
};
async function ask(section: PayBetter): Promise<void> {
  button(section, 'Look for better plans').click();
  await expect
    .poll(() => everything(section.renderRoot).some((element) => element.localName === 'table' || element.localName === 'oo-better-picture'))
    .toBe(true);
  await settled();
}
const words = (section: PayBetter, selector: string): string =>
  find(section.renderRoot, HTMLElement, selector)
    .textContent.replaceAll(/[\u00a0\s]+/gu, ' ')
    .trim();
const slider = (section: PayBetter) => find(section.renderRoot, HTMLElement, "[role='slider']");
const found = (section: PayBetter) => everything(section.renderRoot).filter((element) => element.matches('tbody.found tr'));

describe('oo-pay-better', () => {
  it('is asked at its button only, once for all plans', async () => {
    const { section, asked } = await open();
    expect(asked).toEqual([]);
    expect(words(section, 'h2')).toBe('Is there a better plan within my limits?');
    await ask(section);
    expect(asked).toEqual([{ plan: 'wide-rescue' }]);
    expect(words(section, 'h2')).not.toContain('Is there');
  });

  it.each([
    ['a desk', 1100],
    ['a phone', 320],
  ])('has no breach of WCAG 2.2 AA, light and dark, and no sideways scroll: %s', async (_, width) => {
    const { section } = await open(width);
    await ask(section);
    for (const details of everything(section.renderRoot).filter((element) => element.localName === 'details')) details.setAttribute('open', '');
    await settled();
    expect(await breaches(section)).toEqual([]);
    document.documentElement.dataset['theme'] = 'dark';
    expect(await breaches(section)).toEqual([]);
    delete document.documentElement.dataset['theme'];
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
    if (width < 400)
      for (const target of everything(section.renderRoot).filter((element) => element.matches('button, summary')))
        expect(target.getBoundingClientRect().height, target.textContent).toBeGreaterThanOrEqual(44);
  });

  it('shows how far the search is, and can be stopped', async () => {
    const { section, answers } = await open(1100, redPear(), 2);
    await ask(section);
    expect(words(section, 'h2')).toMatch(/^Looking for better plans: \d+ of 60 plans looked at\.$/);
    expect(everything(section.renderRoot).some((element) => element.localName === 'table')).toBe(false);
    expect(everything(section.renderRoot).filter((element) => element.matches('.letter')).length).toBe(redPear().plans.length);
    button(section, 'Stop').click();
    await settled();
    expect(answers.state.get('better')?.asking).toBe(false);
  });

  it('lists the user’s plans and each found one, with its interval on every figure', async () => {
    const { section } = await open();
    await ask(section);
    const last = reports.at(-1)!;
    const own = last.plans.filter((plan) => plan.own);
    expect(own.length).toBe(4);
    expect(found(section)).toHaveLength(last.plans.length - own.length);
    expect(found(section).length).toBeGreaterThan(1);
    for (const row of found(section)) {
      expect(row.querySelector('th')!.textContent).toMatch(/Plan [A-D], with/);
      // Mean year, seedlings, chance, truly good, hours.
      for (const cell of [...row.querySelectorAll('td')].slice(1, 6)) expect(cell.textContent).toMatch(/[\d.]+.*\d+–\d+|–/su);
    }
    expect(words(section, '.notes')).toContain('95 in 100 sure');
    expect(words(section, '.method')).toContain('Hsu 1984');
  });

  it('is read with the arrow keys, from the soonest plan on', async () => {
    const { section } = await open();
    await ask(section);
    const bar = slider(section);
    bar.focus();
    await userEvent.keyboard('{Home}');
    await settled();
    const years = () => Number(/Mean year ([\d.]+)/.exec(bar.getAttribute('aria-valuetext') ?? '')?.[1]);
    const first = years();
    expect(first).toBeGreaterThan(2027);
    expect(Number(bar.getAttribute('aria-valuemax'))).toBe(reports.at(-1)!.plans.length);
    await userEvent.keyboard('{ArrowRight}');
    await settled();
    expect(bar.getAttribute('aria-valuenow')).toBe('2');
    expect(years()).toBeGreaterThanOrEqual(first);
    expect(everything(section.renderRoot).filter((element) => element.matches('.read-ring'))).toHaveLength(1);
    await userEvent.keyboard('{End}');
    await settled();
    expect(years()).toBeGreaterThan(first);
    await userEvent.keyboard('{Escape}');
    await settled();
    expect(bar.getAttribute('aria-valuetext')).toBe('no plan chosen');
  });

  it('adds a found plan as an ordinary one: a free letter, one step of undo with a name, and a link that has the focus', async () => {
    const { section, programmes } = await open();
    await ask(section);
    const before = programmes.state.programme;
    const [first] = found(section);
    const add = first!.querySelector('button')!;
    add.focus();
    await userEvent.keyboard('{Enter}');
    await settled();
    const { programme, problems, undo } = programmes.state;
    const added = programme.plans.at(-1)!;
    const shown = reports.at(-1)!.plans.find((plan) => !plan.own)!;
    expect(programme.plans).toHaveLength(before.plans.length + 1);
    expect(added.mark).toBe('E');
    expect(added.generations).toEqual(shown.document.generations);
    expect(problems.filter(({ stops }) => stops)).toEqual([]);
    expect(undo.at(-1)!.label).toBe('found plan added as E');
    const link = find(section.renderRoot, HTMLAnchorElement, 'a[data-found]');
    expect(link.getAttribute('href')).toBe('#/do');
    expect(section.renderRoot instanceof ShadowRoot && section.renderRoot.activeElement).toBe(link);
    expect(first!.textContent).toContain('Added as plan E');
    programmes.undo();
    await settled();
    expect(programmes.state.programme.plans).toEqual(before.plans);
    // Taken back: the button is there again.
    expect(found(section)[0]!.querySelector('button')!.textContent.trim()).toBe('Add as a plan');
  });

  it('says so where all letters are given', async () => {
    const programme = redPear();
    const full = MARKS.map((mark, m) => ({ ...programme.plans[m % 4]!, id: `plan-${mark.toLowerCase()}`, mark, name: `Plan ${mark}` }));
    const { section } = await open(1100, { ...programme, plans: full });
    await ask(section);
    expect(found(section)[0]!.querySelector('button')!.disabled).toBe(true);
    expect(words(section, 'section')).toContain('All eight letters are given');
  });
});
