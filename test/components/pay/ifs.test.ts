import { ContextProvider } from '@lit/context';
import { beforeAll, describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import pear from '../../../sims/examples/red-pear.json';
import { answersContext, programmeContext } from '../../../src/components/contexts.ts';
import { PayIfs } from '../../../src/components/pay/ifs/ifs.ts';
import { ifs, type IfsAnswer } from '../../../src/decisions/ifs.ts';
import { inlineFutures } from '../../../src/decisions/inline.ts';
import type { Answer } from '../../../src/decisions/question.ts';
import { programmeSchema, type Programme } from '../../../src/model/programme.ts';
import { AnswersStore } from '../../../src/state/answers-store.ts';
import { ProgrammeStore } from '../../../src/state/programme-store.ts';
import { breaches, everything, find, settled } from '../fields/mount.ts';

const programme: Programme = { ...programmeSchema.parse(pear), runs: 100 };
let whole: IfsAnswer;

beforeAll(async () => {
  const answer = await ifs.ask(programme, { plan: 'wide-rescue', runs: 24 }, inlineFutures(), () => undefined);
  if (answer.cannotSay !== null) throw new Error(answer.cannotSay);
  whole = answer;
}, 60_000);

async function open(width = 1100, answer: IfsAnswer = whole): Promise<{ section: PayIfs; asked: () => number }> {
  await page.viewport(width, 900);
  let asked = 0;
  const asking = {
    ask: async (_id: string, _of: Programme, _options: object, report: (partial: Answer) => void) => {
      asked += 1;
      report({ ...answer, lines: answer.lines.map((line) => ({ ...line, curve: line.curve === null ? null : [] })), done: false } as Answer);
      await Promise.resolve();
      return answer;
    },
  };
  const place = document.createElement('main');
  document.body.append(place);
  new ContextProvider(place, { context: programmeContext, initialValue: new ProgrammeStore(programme) });
  new ContextProvider(place, { context: answersContext, initialValue: new AnswersStore(programme, asking) });
  const section = Object.assign(new PayIfs(), { plan: 'wide-rescue' });
  // Its title is an h2: on the page a h1 stands before it.
  place.innerHTML = '<h1>Would it pay to…?</h1>';
  place.append(section);
  await settled();
  return { section, asked: () => asked };
}

async function answered(width?: number, answer?: IfsAnswer): Promise<PayIfs> {
  const { section } = await open(width, answer);
  find(section.renderRoot, HTMLElement, 'button.main').click();
  await expect.poll(() => everything(section.renderRoot).some((element) => element.matches("[role='slider']"))).toBe(true);
  await document.fonts.ready;
  await settled();
  return section;
}

const words = (section: PayIfs, selector: string, at = 0): string =>
  find(section.renderRoot, HTMLElement, selector, at)
    .textContent.replaceAll(/[\u00a0\s]+/gu, ' ')
    .trim();

describe('oo-pay-ifs', () => {
  it('waits for the button, for it is much work', async () => {
    const { section, asked } = await open();
    section.scrollIntoView();
    await new Promise((done) => setTimeout(done, 100));
    expect(asked()).toBe(0);
    expect(words(section, 'h2')).toBe('What if something happens?');
    expect(words(section, '#name'), 'its own name stands above, before and after').toBe('If something happens');
    find(section.renderRoot, HTMLElement, 'button.main').focus();
    await userEvent.keyboard('{Enter}');
    await expect.poll(asked).toBe(1);
  });

  it.each([
    ['a desk', 1100],
    ['a phone', 320],
  ])('has no breach of WCAG 2.2 AA, light and dark, and no sideways scroll: %s', async (_, width) => {
    const section = await answered(width);
    for (const details of everything(section.renderRoot).filter((element) => element.localName === 'details')) details.setAttribute('open', '');
    await settled();
    expect(await breaches(section)).toEqual([]);
    document.documentElement.dataset['theme'] = 'dark';
    expect(await breaches(section)).toEqual([]);
    delete document.documentElement.dataset['theme'];
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
  });

  it('has a row for everything that can happen, the ranked jobs, and a table of all', async () => {
    const section = await answered();
    expect(words(section, 'h2')).toMatch(/cost \d+ in 100/);
    const rows = everything(section.renderRoot).filter((element) => element.matches('.row'));
    expect(rows).toHaveLength(6);
    expect(everything(section.renderRoot).filter((element) => element.localName === 'oo-if')).toHaveLength(6);
    const tables = [...section.renderRoot.querySelectorAll('.scroll table')];
    expect(tables.map((table) => table.querySelectorAll('tbody tr').length)).toEqual([whole.jobs!.length, whole.lines.length]);
    const ranks = [...tables[0]!.querySelectorAll('td.rank')].map((cell) => Number(cell.textContent));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(ranks[0]).toBe(1);
    expect(tables[1]!.textContent).toContain('no clear difference');
    expect(words(section, '.trust')).toContain('truly are');
  });

  it('says why something cannot happen to the plan', async () => {
    const lines = whole.lines.filter((line) => line.if !== 'leafTest');
    const section = await answered(1100, { ...whole, lines, cannot: [{ if: 'leafTest', why: 'noGene' }] });
    expect(words(section, '.alone')).toBe('A leaf test comes The goal names no gene that a leaf could show and every good tree needs.');
  });

  it('each curve is read with the arrow keys, year by year', async () => {
    const section = await answered();
    const bar = find(section.renderRoot, HTMLElement, "[role='slider']", 2);
    expect(bar.getAttribute('aria-label')).toBe('The land is lost: year to read');
    bar.focus();
    await userEvent.keyboard('{Home}');
    await settled();
    expect(bar.getAttribute('aria-valuenow')).toBe('2028');
    expect(bar.getAttribute('aria-valuetext')).toMatch(/^2028: all lost .*%.*; founders apart .*%/);
    await userEvent.keyboard('{End}');
    await settled();
    expect(bar.getAttribute('aria-valuenow')).toBe('2057');
    await userEvent.keyboard('{Escape}');
    await settled();
    expect(bar.getAttribute('aria-valuetext')).toBe('no year chosen');
  });

  it('keeps every target 44 px high on a phone', async () => {
    const section = await answered(390);
    for (const target of everything(section.renderRoot).filter((element) => element.matches('summary, button')))
      if (target.getBoundingClientRect().height > 0) expect(target.getBoundingClientRect().height, target.localName).toBeGreaterThanOrEqual(44);
  });
});
