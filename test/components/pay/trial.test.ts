import { ContextProvider } from '@lit/context';
import { describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import pear from '../../../sims/examples/red-pear.json';
import { answersContext, programmeContext } from '../../../src/components/contexts.ts';
import { PayTrial } from '../../../src/components/pay/trial/trial.ts';
import { inlineFutures } from '../../../src/decisions/inline.ts';
import type { Answer } from '../../../src/decisions/question.ts';
import { trial, type TrialAnswer, type TrialOptions } from '../../../src/decisions/trial.ts';
import { programmeSchema, type Programme } from '../../../src/model/programme.ts';
import { AnswersStore } from '../../../src/state/answers-store.ts';
import { ProgrammeStore } from '../../../src/state/programme-store.ts';
import { pay } from '../../../src/text/pay.ts';
import { sampleTrial } from '../../charts/trial-samples.ts';
import { breaches, choose, everything, find, settled } from '../fields/mount.ts';

const redPear = (): Programme => ({ ...programmeSchema.parse(pear), runs: 100 });

interface Opened {
  readonly section: PayTrial;
  readonly asked: TrialOptions[];
  readonly done: () => Promise<void>;
}

/** @param answer given at once instead of being worked out */
async function open(width = 1100, answer: TrialAnswer | null = null): Promise<Opened> {
  await page.viewport(width, 900);
  const asked: TrialOptions[] = [];
  const programme = redPear();
  const asking = {
    ask: (_id: string, of: Programme, options: TrialOptions, report: (partial: Answer) => void, ended: AbortSignal) => {
      asked.push(options);
      return answer ? Promise.resolve(answer) : trial.ask(of, options, inlineFutures(ended), report);
    },
  };
  const place = document.createElement('main');
  document.body.append(place);
  const answers = new AnswersStore(programme, asking);
  new ContextProvider(place, { context: programmeContext, initialValue: new ProgrammeStore(programme) });
  new ContextProvider(place, { context: answersContext, initialValue: answers });
  const section = Object.assign(new PayTrial(), { plan: 'wide-rescue' });
  place.innerHTML = '<h1>Would it pay to…?</h1>';
  place.append(section);
  await settled();
  const done = async () => {
    await expect.poll(() => answers.state.get('trial')?.asking === false && answers.state.get('trial')?.answer?.done === true, { timeout: 20_000 }).toBe(true);
    await document.fonts.ready;
    await settled();
  };
  return { section, asked, done };
}

const words = (section: PayTrial, selector: string): string =>
  find(section.renderRoot, HTMLElement, selector)
    .textContent.replaceAll(/[\u00a0\s]+/gu, ' ')
    .trim();
const press = async ({ section, done }: Opened) => {
  find(section.renderRoot, HTMLButtonElement, 'button.main').click();
  await settled();
  await done();
};

describe('oo-pay-trial', () => {
  it('asks only at its button, for the plan and the generation chosen', async () => {
    const opened = await open();
    const { section, asked, done } = opened;
    expect(words(section, 'h2')).toBe('What is a trial worth?');
    expect(asked).toEqual([]);
    await press(opened);
    expect(asked).toEqual([{ plan: 'wide-rescue' }]);
    // A hundred futures can measure nothing here.
    expect(words(section, 'h2')).toMatch(/^A trial is worth less than we can measure: /);
    expect(words(section, '.notes')).toContain('A plan that waits two seasons');
    choose(find(section.renderRoot, HTMLSelectElement, '.choices select'), 'd2');
    await settled();
    await done();
    expect(asked.at(-1)).toEqual({ plan: 'wide-rescue', generation: 'd2' });
    section.plan = 'brother-sister';
    await settled();
    await done();
    expect(asked).toHaveLength(3);
    expect(words(section, '.cannot')).toContain('raises no seedlings that are weak');
  });

  it('offers no button where nothing is weak, and says so', async () => {
    const { section, asked } = await open();
    const buttons = () => everything(section.renderRoot).filter((element) => element.matches('button.main')).length;
    expect(buttons()).toBe(1);
    section.plan = 'brother-sister';
    await settled();
    expect(buttons()).toBe(0);
    expect(words(section, "[role='status']")).toBe(pay.cannotSay.nothingWeak);
    expect(asked).toEqual([]);
  });

  it('keeps its own name above the finding, and in the name of the section', async () => {
    const opened = await open(1100, sampleTrial(0.04, 0.01));
    await press(opened);
    const part = find(opened.section.renderRoot, HTMLElement, 'section');
    const named = (part.getAttribute('aria-labelledby') ?? '').split(' ').map((id) => words(opened.section, `#${id}`));
    expect(named).toEqual([pay.names.trial, expect.stringMatching(/are worth/)]);
  });

  it.each([
    ['a desk', 1100],
    ['a phone', 320],
  ])('has no breach of WCAG 2.2 AA, light and dark, and no sideways scroll: %s', async (_, width) => {
    const opened = await open(width, sampleTrial(0.04, 0.01));
    const { section } = opened;
    expect(await breaches(section)).toEqual([]);
    await press(opened);
    for (const details of everything(section.renderRoot).filter((element) => element.localName === 'details')) details.setAttribute('open', '');
    await settled();
    expect(await breaches(section)).toEqual([]);
    document.documentElement.dataset['theme'] = 'dark';
    expect(await breaches(section)).toEqual([]);
    delete document.documentElement.dataset['theme'];
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
  });

  it('is read with the arrow keys, size by size, with a table behind that has every size', async () => {
    const opened = await open(1100, sampleTrial(0.04, 0.01));
    await press(opened);
    const { section } = opened;
    const bar = find(section.renderRoot, HTMLElement, "[role='slider']");
    expect([bar.getAttribute('aria-valuemin'), bar.getAttribute('aria-valuemax')]).toEqual(['2', '20']);
    bar.focus();
    await userEvent.keyboard('{ArrowRight}');
    await settled();
    expect(bar.getAttribute('aria-valuetext')).toMatch(/^2 grafted and 2 left: after one summer worth less than we can measure/);
    await userEvent.keyboard('{End}');
    await settled();
    expect(bar.getAttribute('aria-valuenow')).toBe('20');
    expect(bar.getAttribute('aria-valuetext')?.replaceAll('\u00a0', ' ')).toContain('after two summers 4 in 100 (3 to 5)');
    expect(everything(section.renderRoot).filter((element) => element.matches('.reading-rule'))).toHaveLength(1);
    await userEvent.keyboard('{Escape}');
    await settled();
    expect(bar.getAttribute('aria-valuetext')).toBe('nothing chosen');
    const table = find(section.renderRoot, HTMLElement, 'details.data table');
    expect(table.querySelectorAll('tbody tr')).toHaveLength(19);
    expect(table.textContent).toContain('5 or more of the 10 left alone: leave all on their own roots');
  });

  it('keeps every target 44 px high on a phone', async () => {
    const opened = await open(390, sampleTrial(0.04, 0.01));
    const high = () => {
      for (const target of everything(opened.section.renderRoot).filter((element) => element.matches('select, summary, button')))
        if (target.getBoundingClientRect().height > 0) expect(target.getBoundingClientRect().height, target.localName).toBeGreaterThanOrEqual(44);
    };
    high();
    await press(opened);
    high();
  });
});
