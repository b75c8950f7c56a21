import { ContextProvider } from '@lit/context';
import { describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import pear from '../../../sims/examples/red-pear.json';
import { answersContext, programmeContext } from '../../../src/components/contexts.ts';
import { PayHowMany } from '../../../src/components/pay/how-many/how-many.ts';
import { howMany, type HowManyOptions } from '../../../src/decisions/how-many.ts';
import { inlineFutures } from '../../../src/decisions/inline.ts';
import type { Answer } from '../../../src/decisions/question.ts';
import { programmeSchema, type Programme } from '../../../src/model/programme.ts';
import { AnswersStore } from '../../../src/state/answers-store.ts';
import { ProgrammeStore } from '../../../src/state/programme-store.ts';
import { breaches, choose, everything, find, settled } from '../fields/mount.ts';

const redPear = (): Programme => ({ ...programmeSchema.parse(pear), runs: 100 });

interface Opened {
  readonly section: PayHowMany;
  readonly asked: HowManyOptions[];
  readonly done: () => Promise<void>;
}

async function open(plan: string, width = 1100): Promise<Opened> {
  await page.viewport(width, 900);
  const asked: HowManyOptions[] = [];
  const programme = redPear();
  const asking = {
    ask: (_id: string, of: Programme, options: HowManyOptions, report: (partial: Answer) => void, ended: AbortSignal) => {
      asked.push(options);
      return howMany.ask(of, options, inlineFutures(ended), report);
    },
  };
  const place = document.createElement('main');
  document.body.append(place);
  const answers = new AnswersStore(programme, asking);
  new ContextProvider(place, { context: programmeContext, initialValue: new ProgrammeStore(programme) });
  new ContextProvider(place, { context: answersContext, initialValue: answers });
  const section = Object.assign(new PayHowMany(), { plan });
  // Its title is an h2: on the page a h1 stands before it.
  place.innerHTML = '<h1>Would it pay to…?</h1>';
  place.append(section);
  const done = async () => {
    await expect
      .poll(() => answers.state.get('howmany')?.asking === false && answers.state.get('howmany')?.answer?.done === true, { timeout: 20_000 })
      .toBe(true);
    await document.fonts.ready;
    await settled();
  };
  await done();
  return { section, asked, done };
}

const words = (section: PayHowMany, selector: string): string =>
  find(section.renderRoot, HTMLElement, selector)
    .textContent.replaceAll(/[\u00a0\s]+/gu, ' ')
    .trim();
const slider = (section: PayHowMany) => find(section.renderRoot, HTMLElement, "[role='slider']");

describe('oo-pay-howmany', () => {
  it.each([
    ['a desk', 1100],
    ['a phone', 320],
  ])('has no breach of WCAG 2.2 AA, light and dark, and no sideways scroll: %s', async (_, width) => {
    const { section } = await open('wide-rescue', width);
    for (const details of everything(section.renderRoot).filter((element) => element.localName === 'details')) details.setAttribute('open', '');
    await settled();
    expect(await breaches(section)).toEqual([]);
    document.documentElement.dataset['theme'] = 'dark';
    expect(await breaches(section)).toEqual([]);
    delete document.documentElement.dataset['theme'];
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
  });

  it('says the finding first, with picture, read-offs, what is planned backwards, and a table behind', async () => {
    const { section } = await open('wide-rescue');
    expect(words(section, 'h2')).toMatch(/^\d+ flowers each spring/);
    expect(words(section, '.read-offs')).toMatch(/Chance ?by 20\d\d ?by 20\d\d ?by 2057 ?50 %/);
    expect(words(section, '.back')).toMatch(/For one proven tree 8 times in 10 by 2057: .* the narrowest step is/i);
    expect(everything(section.renderRoot).filter((element) => element.matches('.chain .narrowest'))).toHaveLength(1);
    const table = find(section.renderRoot, HTMLElement, 'details.data table');
    expect(table.querySelectorAll('tbody tr')).toHaveLength(Number(slider(section).getAttribute('aria-valuemax')));
    expect(table.textContent).toContain('as the plan stands');
    expect(words(section, '.notes')).toContain('truly are');
    expect(words(section, '.notes')).toContain('A check from your rates alone, not the answer');
  });

  it('is read with the arrow keys, number by number', async () => {
    const { section } = await open('wide-rescue');
    const bar = slider(section);
    bar.focus();
    await userEvent.keyboard('{Home}');
    await settled();
    expect(bar.getAttribute('aria-valuetext')).toMatch(/^5.flowers each spring: by 20\d\d .*%.*against the plan as it stands/);
    await userEvent.keyboard('{ArrowRight}');
    await settled();
    expect(bar.getAttribute('aria-valuenow')).toBe('2');
    expect(bar.getAttribute('aria-valuetext')).toMatch(/^8.flowers/);
    const rings = everything(section.renderRoot).filter((element) => element.matches('.read-ring'));
    expect(rings).toHaveLength(3);
    await userEvent.keyboard('{End}');
    await settled();
    expect(bar.getAttribute('aria-valuetext')).toMatch(/^300.flowers/);
    await userEvent.keyboard('{Escape}');
    await settled();
    expect(bar.getAttribute('aria-valuetext')).toBe('no number chosen');
  });

  it('asks anew for another number, generation or chance, and only for that', async () => {
    const { section, asked, done } = await open('wide-rescue');
    expect(asked).toEqual([{ plan: 'wide-rescue' }]);
    const box = (place: number) => find(section.renderRoot, HTMLSelectElement, '.choices select', place);
    choose(box(0), 'picks');
    await settled();
    await done();
    expect(asked.at(-1)).toEqual({ plan: 'wide-rescue', lever: 'picks', generation: 'd1' });
    expect(words(section, 'h2')).toContain('pick');
    choose(box(1), 'd2');
    await settled();
    await done();
    expect(asked.at(-1)).toEqual({ plan: 'wide-rescue', lever: 'picks', generation: 'd2' });
    choose(box(2), '0.5');
    await settled();
    await done();
    expect(asked.at(-1)).toEqual({ plan: 'wide-rescue', lever: 'picks', generation: 'd2', chance: 0.5 });
    expect(words(section, '.back')).toContain('5 times in 10');
    // Another plan has no generation of that name.
    section.plan = 'brother-sister';
    await settled();
    await done();
    expect(asked.at(-1)).toEqual({ plan: 'brother-sister', lever: 'picks', chance: 0.5 });
    expect(asked).toHaveLength(5);
  });

  it('keeps every target 44 px high on a phone', async () => {
    const { section } = await open('wide-rescue', 390);
    for (const target of everything(section.renderRoot).filter((element) => element.matches('select, summary, button')))
      if (target.getBoundingClientRect().height > 0) expect(target.getBoundingClientRect().height, target.localName).toBeGreaterThanOrEqual(44);
  });
});
