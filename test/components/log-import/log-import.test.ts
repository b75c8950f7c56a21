import { describe, expect, it } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import example from '../../../sims/examples/red-pear-ten-seasons.json';
import { LogImport } from '../../../src/components/log-import/log-import.ts';
import { logSchema } from '../../../src/model/log.ts';
import { programmeSchema, type Programme } from '../../../src/model/programme.ts';
import { breaches, edits, everything, find, settled } from '../fields/mount.ts';

const AMERICAN = 'Cross,Flowers,Date,Fruits\nK80-2 x Old Hedgerow,"1,000",3/4/2019,30\nOld Hedgerow x OP,240,5/6/2019,>12\n';
const empty = (): Programme => ({ ...programmeSchema.parse(example), log: { batches: [] } });

async function open(programme = empty(), width = 1100) {
  await page.viewport(width, 900);
  const place = document.createElement('main');
  place.innerHTML = '<h1>What has happened?</h1>';
  // The margin that every page has.
  place.style.padding = '0 16px';
  document.body.append(place);
  const changes = edits(place);
  const part = Object.assign(new LogImport(), { programme });
  place.append(part);
  await settled();
  return { part, changes };
}

const said = (part: LogImport, selector: string): string =>
  everything(part.renderRoot)
    .filter((element) => element.matches(selector))
    .map((element) => element.textContent.replaceAll(/[\u00a0\s]+/gu, ' ').trim())
    .join(' | ');
const button = (part: LogImport, words: string): HTMLButtonElement => {
  const found = everything(part.renderRoot).find((element) => element instanceof HTMLButtonElement && element.textContent.trim().startsWith(words));
  if (!(found instanceof HTMLButtonElement)) throw new Error(`No button “${words}”.`);
  return found;
};
async function pick(part: LogImport, label: string, value: string): Promise<void> {
  await userEvent.selectOptions(find(part.renderRoot, HTMLSelectElement, `select[aria-label="${label}"]`), value);
  await settled();
}
async function paste(part: LogImport, text: string): Promise<void> {
  button(part, 'Paste a table').click();
  await settled();
  find(part.renderRoot, HTMLTextAreaElement, 'textarea').value = text;
  button(part, 'Look at it').click();
  await settled();
}

describe('bringing a table in', () => {
  it('says what it understood, marks doubtful cells, and adds nothing before it is asked to', async () => {
    const { part, changes } = await open();
    await paste(part, AMERICAN);
    expect(said(part, '.understood')).toBe(
      'The pasted table: 2 rows of 4 columns, parted by commas. Read as one row per batch. Whether numbers have a decimal comma or point is not clear yet. Whether the day or the month comes first is not clear yet.',
    );
    expect(said(part, '.doubts li')).toMatch(/Line 2, Flowers: “1,000”: 1 or 1000\? Neither is taken until you choose\./);
    expect(said(part, '.doubts li')).toMatch(/“3\/4\/2019”: 3 April 2019 or 4 March 2019\? Neither is taken until you choose\./);
    expect(said(part, '.doubts li')).toMatch(/“>12” is a least number: kept in the note/);
    expect(said(part, 'td.open small')).toBe('not taken: choose | not taken: choose | not taken: choose');
    expect(changes).toEqual([]);
    expect(part.shadowRoot?.activeElement?.className).toBe('found');
    expect(await breaches(part)).toEqual([]);
  });

  it('settles a column by one choice and adds everything in one step', async () => {
    const { part, changes } = await open();
    await paste(part, AMERICAN);
    await pick(part, 'Flowers: 1,5 and 1.500', 'point');
    await pick(part, 'Date: 3/4 is', 'monthFirst');
    await pick(part, 'K80-2, in 1 batch', 'pear');
    expect(said(part, 'td.open')).toBe('');
    button(part, 'Add 2 batches').click();
    await settled();
    expect(changes).toHaveLength(1);
    expect(changes[0]).toMatchObject({ path: ['log', 'batches'], label: '2 batches added from the pasted table' });
    const { batches } = logSchema.parse({ batches: changes[0]?.value });
    expect(batches[0]).toMatchObject({
      name: 'K80-2 × Old Hedgerow 2019',
      year: 2019,
      seed: { tag: 'K80-2' },
      seedKind: 'pear',
      counts: [{ count: 1000, when: '2019-03-04' }, { count: 30 }],
    });
    expect(batches[1]?.note).toBe('Fruits: >12');
    expect(said(part, '.status')).toBe('2 batches added from the pasted table');
    expect(said(part, '.found')).toBe('');
  });

  it('puts doubts of one sort together, and shows more of them when asked', async () => {
    const { part } = await open();
    const rows = Array.from({ length: 60 }, (_, i) => `Old Hedgerow x OP,2004/05,${i === 30 ? '>12' : String(i)}`);
    await paste(part, ['Cross,Season,Flowers', ...rows].join('\n'));
    const lines = (): number => everything(part.renderRoot).filter((element) => element.matches('.doubts li')).length;
    // One least number, three seasons and the line that counts the other 57.
    expect(lines()).toBe(5);
    expect(said(part, '.doubts li')).toMatch(/Line 32, Flowers: “>12”.*Season: 57 more cells of this sort\. Show 20 more$/);
    button(part, 'Show 20 more').click();
    await settled();
    expect(lines()).toBe(25);
    expect(said(part, '.doubts li')).toMatch(/Season: 37 more cells of this sort/);
  });

  it('says of a workbook that it is no text, and of headings alone that there are no rows', async () => {
    const { part } = await open();
    const given = new DataTransfer();
    given.items.add(new File([new Uint8Array([0x50, 0x4b, 0x03, 0x04, 0x14, 0x00])], 'trees.csv'));
    const input = find(part.renderRoot, HTMLInputElement, 'input[type=file]');
    input.files = given.files;
    input.dispatchEvent(new Event('change'));
    await expect.poll(() => said(part, '.status')).toMatch(/^It is no text file: save the table as CSV/);
    await paste(part, ';;;\n;;;');
    expect(said(part, '.status')).toBe('There is nothing in it.');
    button(part, 'Paste a table').click();
    await settled();
    await paste(part, 'Cross,Year,Flowers');
    expect(said(part, '.found')).toMatch(/It has headings and no rows: there is nothing to add\./);
    expect(said(part, 'button.add')).toBe('');
  });

  it('notices a table that is there already', async () => {
    const first = await open();
    await paste(first.part, AMERICAN);
    button(first.part, 'Add 2 batches').click();
    const log = logSchema.parse({ batches: first.changes[0]?.value });
    document.body.replaceChildren();
    const { part } = await open({ ...empty(), log });
    await paste(part, AMERICAN);
    expect(said(part, '.found')).toMatch(/Everything in it is there already \(2 of 2 rows\)/);
    expect(said(part, 'button.add')).toBe('');
  });

  it('opens a file of any spreadsheet, and takes the log out', async () => {
    const { part } = await open(programmeSchema.parse(example));
    const file = new File([new Uint8Array([0x54, 0x61, 0x67, 0x3b, 0x4d, 0xfc, 0x0d, 0x0a, 0x31, 0x3b, 0xfc])], 'old.csv');
    const given = new DataTransfer();
    given.items.add(file);
    const input = find(part.renderRoot, HTMLInputElement, 'input[type=file]');
    input.files = given.files;
    input.dispatchEvent(new Event('change'));
    await expect
      .poll(() => said(part, '.understood'))
      .toMatch(/^Old\.csv: 1 row of 2 columns, parted by semicolons, with line ends as on Windows\. Read as one row per tree\./);
    expect(said(part, '.found > p')).toMatch(/taken for Windows-1252/);
    const saved: string[] = [];
    const click = Object.getOwnPropertyDescriptor(HTMLElement.prototype, 'click');
    HTMLElement.prototype.click = function (this: HTMLElement) {
      if (this instanceof HTMLAnchorElement) saved.push(this.download);
      else this.dispatchEvent(new MouseEvent('click'));
    };
    button(part, 'Batches as CSV').click();
    button(part, 'Trees as CSV').click();
    if (click) Object.defineProperty(HTMLElement.prototype, 'click', click);
    expect(saved.map((name) => name.replace(/^.*-(batches|trees)/, '$1'))).toEqual(['batches.csv', 'trees.csv']);
  });

  it('fits a phone, with targets for a thumb, and can be used by keyboard', async () => {
    const { part } = await open(empty(), 390);
    await paste(part, AMERICAN);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(390);
    for (const element of everything(part.renderRoot))
      if (element.matches('button, select, textarea'))
        expect([element.textContent.trim().slice(0, 20), element.getBoundingClientRect().height >= 44]).toEqual([
          element.textContent.trim().slice(0, 20),
          true,
        ]);
    button(part, 'Choose a file').focus();
    const reached: string[] = [];
    for (let i = 0; i < 30; i += 1) {
      await userEvent.tab();
      reached.push(part.shadowRoot?.activeElement?.className.trim() ?? '');
    }
    expect(reached).toContain('main add');
    expect(reached).toContain('scroll');
  });
});
