import { ContextProvider } from '@lit/context';
import { describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import pear from '../../../sims/examples/red-pear.json';
import { answersContext, programmeContext } from '../../../src/components/contexts.ts';
import { PayOpen } from '../../../src/components/pay/open/open.ts';
import { inlineFutures } from '../../../src/decisions/inline.ts';
import { open, type OpenOptions } from '../../../src/decisions/open.ts';
import type { Answer } from '../../../src/decisions/question.ts';
import { programmeSchema, type Programme } from '../../../src/model/programme.ts';
import { AnswersStore } from '../../../src/state/answers-store.ts';
import { ProgrammeStore } from '../../../src/state/programme-store.ts';
import { breaches, choose, everything, find, settled } from '../fields/mount.ts';

const redPear = (): Programme => ({ ...programmeSchema.parse(pear), runs: 200 });

async function opened(plan: string, width = 1100): Promise<{ readonly section: PayOpen; readonly asked: OpenOptions[] }> {
  await page.viewport(width, 900);
  const asked: OpenOptions[] = [];
  const programme = redPear();
  const asking = {
    ask: (_id: string, of: Programme, options: OpenOptions, report: (partial: Answer) => void, ended: AbortSignal) => {
      asked.push(options);
      return open.ask(of, options, inlineFutures(ended), report);
    },
  };
  const place = document.createElement('main');
  document.body.append(place);
  const answers = new AnswersStore(programme, asking);
  new ContextProvider(place, { context: programmeContext, initialValue: new ProgrammeStore(programme) });
  new ContextProvider(place, { context: answersContext, initialValue: answers });
  const section = Object.assign(new PayOpen(), { plan });
  place.innerHTML = '<h1>Would it pay to…?</h1>';
  place.append(section);
  await expect.poll(() => answers.state.get('open')?.answer?.done === true, { timeout: 20_000 }).toBe(true);
  await document.fonts.ready;
  await settled();
  return { section, asked };
}

const words = (section: PayOpen, selector: string): string =>
  find(section.renderRoot, HTMLElement, selector)
    .textContent.replaceAll(/[\u00a0\s]+/gu, ' ')
    .trim();

describe('oo-pay-open', () => {
  it.each([
    ['a desk', 1100],
    ['a phone', 320],
  ])('has no breach of WCAG 2.2 AA, light and dark, and no sideways scroll: %s', async (_, width) => {
    const { section } = await opened('brother-sister', width);
    for (const details of everything(section.renderRoot).filter((element) => element.localName === 'details')) details.setAttribute('open', '');
    await settled();
    expect(await breaches(section)).toEqual([]);
    document.documentElement.dataset['theme'] = 'dark';
    expect(await breaches(section)).toEqual([]);
    delete document.documentElement.dataset['theme'];
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
  });

  it('says the finding first, draws a row for each way, and has them in a table', async () => {
    const { section } = await opened('brother-sister');
    expect(words(section, 'h2')).toMatch(/mother or father|the mother/);
    const rows = everything(section.renderRoot).filter((element) => element.matches('.way-year'));
    const table = find(section.renderRoot, HTMLElement, 'table');
    expect(rows).toHaveLength(3);
    expect(table.querySelectorAll('tbody tr')).toHaveLength(3);
    expect(table.textContent).toContain('as the plan stands');
    expect(words(section, '.notes')).toContain('One cross entry serves both ways round');
    expect(words(section, '.notes')).toContain('truly are');
  });

  it('is read with the arrow keys, way by way', async () => {
    const { section } = await opened('brother-sister');
    const bar = find(section.renderRoot, HTMLElement, "[role='slider']");
    bar.focus();
    await userEvent.keyboard('{ArrowDown}');
    await settled();
    expect(bar.getAttribute('aria-valuetext')).toMatch(/^crossed by hand, Old Hedgerow × Saffron Bell: /);
    await userEvent.keyboard('{End}');
    await settled();
    expect(bar.getAttribute('aria-valuenow')).toBe('3');
    expect(bar.getAttribute('aria-valuetext')).toMatch(/^open-pollinated, Old Hedgerow, pollen of “/);
    expect(everything(section.renderRoot).filter((element) => element.matches('.read-row'))).toHaveLength(1);
    await userEvent.keyboard('{Escape}');
    await settled();
    expect(bar.getAttribute('aria-valuetext')).toBe('nothing chosen');
  });

  it('shows another generation without asking again, and names the entry that is missing', async () => {
    const { section, asked } = await opened('wide-rescue');
    expect(words(section, '.notes')).toContain('there is no cross entry quince × pear');
    choose(find(section.renderRoot, HTMLSelectElement, '.choices select'), 'd2');
    await settled();
    expect(words(section, '.notes')).toContain('there is no cross entry pear × quince × pear');
    expect(asked).toEqual([{ plan: 'wide-rescue' }]);
  });

  it('keeps every target 44 px high on a phone', async () => {
    const { section } = await opened('wide-rescue', 390);
    for (const target of everything(section.renderRoot).filter((element) => element.matches('select, summary, button')))
      if (target.getBoundingClientRect().height > 0) expect(target.getBoundingClientRect().height, target.localName).toBeGreaterThanOrEqual(44);
  });
});
