import { html } from 'lit';
import { describe, expect, it, vi } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../../src/components/log/add-batch.ts';
import '../../../src/components/log/log-table.ts';
import { addTrees, rowOfTrees } from '../../../src/seasonlog/edits.ts';
import { breaches, choose, everything, find, settled, typeInto } from '../fields/mount.ts';
import { button, labelled, LogDesk, tenSeasons, TODAY, tooSmall } from './desk.ts';

const tableDesk = (open = '', programme = tenSeasons()) =>
  new LogDesk(programme, (desk) => html`<oo-log-table .programme=${desk.programme} .problems=${desk.problems} .today=${TODAY} .open=${open}></oo-log-table>`);
const addDesk = () =>
  new LogDesk(
    { ...tenSeasons(), log: { batches: [] } },
    (desk) =>
      html`<h3>A new batch</h3>
        <oo-log-add .programme=${desk.programme} .today=${TODAY}></oo-log-add>`,
  );

/** Ten seasons, with the trees of one batch last looked at in a year. */
function withLooks(id: string, year: number): ReturnType<typeof tenSeasons> {
  const programme = tenSeasons();
  const batches = programme.log.batches.map((batch) =>
    batch.id === id ? { ...batch, trees: batch.trees.map((tree) => ({ ...tree, lookedUntil: year })) } : batch,
  );
  return { ...programme, log: { batches } };
}

const words = (root: ParentNode): string =>
  everything(root)
    .filter((element) => element.childElementCount === 0 && !element.closest('style'))
    .map((element) => element.textContent.trim())
    .join(' | ');

/** Opens a tree of an open batch and waits for it. */
async function openTree(place: HTMLElement, tag: string): Promise<HTMLElement> {
  await userEvent.click(button(place, tag));
  await settled();
  return find(place, HTMLElement, 'oo-log-tree');
}

describe('the season log', () => {
  it.each([1100, 320])('has no breach of WCAG 2.2 AA, nothing too small and no sideways scroll at %i px, with a batch and a tree open', async (width) => {
    const place = await tableDesk('first-wide-cross').open(width);
    await openTree(place, '2027-1-2');
    await userEvent.click(labelled(place, 'Flowers pollinated'));
    expect(await breaches(place)).toEqual([]);
    expect(await tooSmall(place)).toEqual([]);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
    const wide = everything(place).filter((element) => element.getBoundingClientRect().right > width + 0.5 && element.checkVisibility());
    expect(wide.map((element) => element.outerHTML.slice(0, 80))).toEqual([]);
  });

  it('is a table of numbers in the units they were entered in', async () => {
    const place = await tableDesk().open();
    const table = find(place, HTMLTableElement, 'table');
    const heads = [...table.querySelectorAll('thead th')].map((head) => head.textContent);
    expect(heads).toEqual(['Batch', 'flowers', 'fruits', 'seeds', 'sown', 'came up', 'weak', 'grafted', 'took', 'planted', 'alive', 'fruited', 'red flesh']);
    const line = [...table.querySelectorAll('tr')].find((row) => row.querySelector('[data-batch="pear-by-pear"]'));
    expect(line?.querySelectorAll('td')[0]?.textContent.replace(/\s+/g, ' ').trim()).toBe('flowers35clusters of 4');
    // 400 + 400 + 400 flowers of three batches of the same parents.
    expect(words(place)).toContain('All of Old Hedgerow × Mill Quince | flowers | 1,200');
    expect(words(place)).toContain('41 lost to waterlogging');
  });

  it('says beside a number that it does not add up, and keeps it', async () => {
    const place = await tableDesk().open();
    expect(words(place)).toContain('15 seedlings of 12 seeds sown does not add up; kept as entered.');
    expect(find(place, HTMLElement, '.flagged b').textContent).toBe('15');
  });

  it('takes a count in the unit it was made in, under a name for undo, and starts anew', async () => {
    const desk = tableDesk('first-wide-cross');
    const place = await desk.open();
    const before = desk.batch('first-wide-cross').counts.length;
    await userEvent.click(labelled(place, 'Flowers pollinated'));
    await userEvent.click(labelled(place, 'bag', 'Counted by'));
    typeInto(labelled(place, 'Flowers in one'), '6');
    typeInto(labelled(place, 'How many altogether'), '1,200');
    await settled();
    await userEvent.click(button(place, 'Note 1,200 bags of 6 flowers pollinated'));
    expect(desk.edits.map(({ label }) => label)).toEqual(['1,200 bags of 6 flowers pollinated noted in First wide cross']);
    expect(desk.batch('first-wide-cross').counts.slice(before)).toEqual([{ stage: 'flowers', count: 1200, unit: { name: 'bag', flowers: 6 }, when: TODAY }]);
    await settled();
    expect(labelled(place, 'How many altogether').value).toBe('');
    await userEvent.click(button(place, 'Note it'));
    expect(desk.edits).toHaveLength(1);
    expect(words(place)).toContain('Choose what you counted, and how many.');
  });

  it('takes a count by the keys alone', async () => {
    const desk = tableDesk('back-to-old-hedgerow');
    const place = await desk.open();
    labelled(place, 'Flowers pollinated').focus();
    await userEvent.keyboard('{ArrowDown}{ArrowDown}');
    await settled();
    expect(labelled(place, 'Sound seeds').checked).toBe(true);
    await userEvent.keyboard('{Tab}18{Enter}');
    expect(desk.edits.map(({ label }) => label)).toEqual(['18 sound seeds noted in Back to Old Hedgerow']);
  });

  it('adds a row of trees at once, and says which', async () => {
    const desk = tableDesk('back-to-old-hedgerow');
    const place = await desk.open();
    typeInto(labelled(place, 'How many'), '12');
    typeInto(labelled(place, 'Tag of the first'), '2034-1-1');
    typeInto(labelled(place, 'Block'), 'E');
    typeInto(labelled(place, 'First place in the row'), '5');
    await settled();
    expect(words(place)).toContain('12 trees, tags 2034-1-1 … 2034-1-12');
    await userEvent.click(button(place, 'Add 12 trees'));
    expect(desk.edits.map(({ label }) => label)).toEqual(['12 trees added to Back to Old Hedgerow']);
    expect(desk.batch('back-to-old-hedgerow').trees.at(-1)).toMatchObject({ tag: '2034-1-12', place: { block: 'E', row: '', tree: '16' } });
  });

  it('judges a tree, changes its status, notes a copy, and offers no way to remove it', async () => {
    const desk = tableDesk('first-wide-cross');
    const place = await desk.open();
    const tree = await openTree(place, '2027-1-5');
    await userEvent.click(labelled(tree, '2036', 'Bears since'));
    typeInto(labelled(tree, 'red flesh: showed it'), '2');
    typeInto(labelled(tree, 'red flesh: fruits cut'), '5');
    typeInto(labelled(tree, 'keeping weeks'), '8,5');
    await settled();
    await userEvent.click(button(tree, 'Note season 2036'));
    await settled();
    typeInto(labelled(tree, 'Where'), 'Garden by the weir');
    await settled();
    await userEvent.click(button(tree, 'Add the copy'));
    await settled();
    await userEvent.click(labelled(tree, 'label lost', 'Status'));
    expect(desk.edits.map(({ label }) => label)).toEqual([
      '2027-1-5 bears since 2036',
      '2027-1-5 judged in 2036',
      'copy of 2027-1-5 at Garden by the weir noted',
      '2027-1-5: label lost',
    ]);
    expect(desk.batch('first-wide-cross').trees[4]).toMatchObject({
      firstFruit: 2036,
      status: 'labelLost',
      statusSince: 2036,
      seasons: [{ year: 2036, seen: { 'red-flesh': { showed: 2, cut: 5 } }, values: { 'keeping-weeks': 8.5 } }],
      copies: [{ where: 'Garden by the weir', whose: '', number: 1 }],
    });
    expect(
      everything(tree)
        .filter((element) => element instanceof HTMLButtonElement)
        .map((element) => element.textContent.trim())
        .filter((text) => /remove|delete/i.test(text)),
    ).toEqual([]);
  });

  it('says in one tap that the others were looked at and have not borne', async () => {
    const desk = tableDesk('frost-year-pear', withLooks('frost-year-pear', 2035));
    const place = await desk.open();
    await userEvent.click(button(place, 'Looked in 2036: the others have not borne'));
    await settled();
    expect(desk.edits.map(({ label }) => label)).toEqual(['no other tree of Pear by pear, frost year bears in 2036']);
    const { trees } = desk.batch('frost-year-pear');
    expect(trees.filter(({ firstFruit, lookedUntil }) => firstFruit === undefined && lookedUntil === 2036)).toHaveLength(8);
    expect(() => button(place, 'Looked in 2036: the others have not borne')).toThrow();
  });

  it('can belong to a generation of any plan, and undo names the batch', async () => {
    const desk = tableDesk('third-wide-cross');
    const place = await desk.open();
    const select = everything(place)
      .filter((element) => element instanceof HTMLSelectElement)
      .find((each) => [...each.options].some(({ textContent }) => textContent.trim() === 'D: Wide cross, grafted'));
    if (!select) throw new Error('no choice of generations');
    const option = [...select.options].find(({ textContent }) => textContent.trim() === 'C: Wide cross');
    choose(select, option?.value ?? '');
    await settled();
    expect(desk.batch('third-wide-cross').generation).toBe('c1');
    expect(desk.edits[0]?.label).toBe('Third wide cross, belongs to the generation D: Wide cross, grafted → C: Wide cross');
  });

  it('draws a few of two thousand trees, and finds the one that is wanted', async () => {
    const programme = tenSeasons();
    const log = addTrees(programme.log, 'pick-by-saffron-bell', rowOfTrees({ number: 2000, firstTag: '2035-1-1', block: '', row: '', firstPlace: '' }));
    const desk = tableDesk('pick-by-saffron-bell', { ...programme, log });
    const place = await desk.open();
    const lines = () => everything(place).filter((element) => element.matches('ul.trees > li')).length;
    expect(lines()).toBeLessThan(50);
    await userEvent.click(button(place, 'Show 100 more'));
    await settled();
    expect(lines()).toBeGreaterThan(100);
    typeInto(labelled(place, 'Find a tag'), '1-1987');
    await settled();
    expect(lines()).toBe(1);
    const tree = await openTree(place, '2035-1-1987');
    const before = performance.now();
    await userEvent.click(labelled(tree, 'dead', 'Status'));
    expect(desk.batch('pick-by-saffron-bell').trees[1986]?.status).toBe('dead');
    // A person notices a tenth of a second; a busy machine of two cores gets more.
    expect(performance.now() - before).toBeLessThan(1500);
  });
});

describe('a new batch', () => {
  it.each([1100, 320])('has no breach of WCAG 2.2 AA and nothing too small at %i px', async (width) => {
    const place = await addDesk().open(width);
    await userEvent.click(labelled(place, 'a tree by its tag…', 'Seed parent'));
    await userEvent.click(labelled(place, 'Seedlings that stand already'));
    expect(await breaches(place)).toEqual([]);
    expect(await tooSmall(place)).toEqual([]);
    expect(document.documentElement.scrollWidth).toBeLessThanOrEqual(width);
    const wide = everything(place).filter((element) => element.getBoundingClientRect().right > width + 0.5 && element.checkVisibility());
    expect(wide.map((element) => element.outerHTML.slice(0, 80))).toEqual([]);
  });

  it('is entered in three taps: seed parent, pollen, add', async () => {
    const desk = addDesk();
    const place = await desk.open();
    await userEvent.click(labelled(place, 'Old Hedgerow', 'Seed parent'));
    await userEvent.click(labelled(place, 'Mill Quince', 'Pollen'));
    await userEvent.click(button(place, 'Add the batch'));
    expect(desk.edits.map(({ label }) => label)).toEqual(['Old Hedgerow × Mill Quince 2036 added']);
    expect(desk.programme.log.batches).toMatchObject([
      { id: 'old-hedgerow-mill-quince-2036', year: 2036, seed: { tree: 'old-hedgerow' }, pollen: { tree: 'mill-quince' } },
    ]);
  });

  it('can have a pick of the log as a parent, whose kind is then known', async () => {
    const desk = new LogDesk(
      tenSeasons(),
      ({ programme }) =>
        html`<h3>A new batch</h3>
          <oo-log-add .programme=${programme} .today=${TODAY}></oo-log-add>`,
    );
    const place = await desk.open();
    await userEvent.click(labelled(place, 'Old Hedgerow', 'Seed parent'));
    await userEvent.click(labelled(place, '2027-1-2', 'Pollen'));
    await userEvent.click(button(place, 'Add the batch'));
    expect(desk.programme.log.batches.at(-1)).toMatchObject({ name: 'Old Hedgerow × 2027-1-2 2036', pollen: { tag: '2027-1-2' }, pollenKind: 'pear-quince' });
  });

  it('can be seedlings that stand already, of parents that nobody knows', async () => {
    const desk = addDesk();
    const place = await desk.open();
    await userEvent.click(labelled(place, 'Seedlings that stand already'));
    typeInto(labelled(place, 'Year of bloom, about'), '2019');
    typeInto(labelled(place, 'How many stand'), '3');
    typeInto(labelled(place, 'Tag of the first'), '009');
    typeInto(labelled(place, 'Name'), 'Under the old wall');
    await settled();
    await userEvent.click(button(place, 'Add the batch'));
    await vi.waitFor(() => expect(desk.edits).toHaveLength(1));
    expect(desk.programme.log.batches).toMatchObject([{ name: 'Under the old wall', year: 2019, seed: 'unknown', pollen: 'unknown', counts: [] }]);
    expect(desk.programme.log.batches[0]?.trees.map(({ tag }) => tag)).toEqual(['009', '010', '011']);
  });

  it('says what is missing', async () => {
    const desk = addDesk();
    const place = await desk.open();
    await userEvent.click(button(place, 'Add the batch'));
    await settled();
    expect(words(place)).toContain('Choose a seed parent and the pollen, or “not known”.');
    typeInto(labelled(place, 'Year of bloom'), '36');
    await settled();
    await userEvent.click(button(place, 'Add the batch'));
    await settled();
    expect(words(place)).toContain('Write the year with four digits.');
    expect(desk.edits).toEqual([]);
  });
});
