import { afterEach, describe, expect, it, vi } from 'vitest';
import walnut from '../../sims/examples/slow-walnut.json';
import { Browser } from './keeper-pages.ts';
import { failPuts, freshDevice, leave, MemoryShelf } from '../storage/stubs.ts';

const browser = () => new Browser(freshDevice().factory, new MemoryShelf());

afterEach(() => {
  vi.restoreAllMocks();
});

describe('a page', () => {
  it('keeps nothing of an example until something is changed in it', async () => {
    const { keeper, library, startYear } = await browser().page();
    expect(keeper.state).toMatchObject({ id: null, status: 'shown' });
    expect(await library.list()).toEqual({ ok: true, entries: [] });
    startYear(2030);
    expect(keeper.state.status).toBe('saving');
    expect(await keeper.flush()).toBe(true);
    expect(keeper.state).toMatchObject({ id: 'id1', status: 'kept' });
    expect(await library.list()).toMatchObject({ ok: true, entries: [{ id: 'id1', programme: { startYear: 2030 } }] });
  });

  it('that is loaded again has the document and both ways of going', async () => {
    const all = browser();
    const before = await all.page();
    for (const year of [2030, 2031, 2032]) before.startYear(year);
    before.programmes.undo();
    await before.keeper.flush();
    before.die();
    const { programmes, year } = await all.page();
    expect(year()).toBe(2031);
    expect(programmes.state.undo.map(({ label }) => label)).toEqual(['first spring 2030', 'first spring 2031']);
    programmes.redo();
    expect(year()).toBe(2032);
    for (let i = 0; i < 3; i += 1) programmes.undo();
    expect(year()).toBe(2027);
  });

  it('that dies before its last edit is saved loses nothing', async () => {
    const all = browser();
    const before = await all.page();
    before.startYear(2030);
    await before.keeper.flush();
    const stop = failPuts('AbortError');
    before.startYear(2031);
    await before.keeper.flush();
    stop();
    before.die();
    const { said, year, programmes } = await all.page();
    expect(year()).toBe(2031);
    expect(said.join(' ')).toContain('It has been brought back.');
    programmes.undo();
    expect(year()).toBe(2030);
    expect((await all.page()).said).toEqual([]);
  });

  it('opens what comes as a programme of its own, and twice the same only once', async () => {
    const { keeper, library, startYear, programmes } = await browser().page();
    startYear(2030);
    expect(await keeper.open(walnut, 'keep')).toBe('opened');
    expect(programmes.state.undo).toEqual([]);
    await keeper.flush();
    expect(await keeper.openEntry('id1')).toBe('opened');
    expect(programmes.state.programme.startYear).toBe(2030);
    expect(await keeper.open(walnut, 'keep')).toBe('again');
    const list = await library.list();
    expect(list.ok && list.entries.map(({ id }) => id).sort()).toEqual(['id1', 'id2']);
    expect(await keeper.open({ no: 'programme' }, 'keep')).toBe('refused');
  });

  it('does not let go of what it cannot save', async () => {
    const { keeper, startYear, year } = await browser().page();
    const stop = failPuts('QuotaExceededError');
    startYear(2030);
    expect(await keeper.open(walnut, 'keep')).toBe('held');
    expect(keeper.state).toMatchObject({ status: 'unsaved', trouble: 'full' });
    expect(year()).toBe(2030);
    stop();
    await keeper.retry();
    expect(keeper.state).toMatchObject({ status: 'kept', trouble: null });
    expect(await keeper.open(walnut, 'look')).toBe('looked');
    expect(keeper.state.id).toBeNull();
  });
});

describe('two pages with the same programme', () => {
  const pair = async () => {
    const all = browser();
    const first = await all.page();
    first.startYear(2030);
    await first.keeper.flush();
    const second = await all.page();
    return { all, first, second };
  };

  it('follow each other while nothing waits', async () => {
    const { first, second } = await pair();
    first.startYear(2033);
    await first.keeper.flush();
    await vi.waitFor(() => expect(second.year()).toBe(2033));
    second.startYear(2034);
    await second.keeper.flush();
    await vi.waitFor(() => expect(first.year()).toBe(2034));
    expect(second.keeper.state.trouble).toBeNull();
    expect(first.keeper.state.trouble).toBeNull();
  });

  it('that did not hear of each other: the second is told, and can take theirs and come back', async () => {
    const { all, first, second } = await pair();
    all.hears = false;
    first.startYear(2033);
    await first.keeper.flush();
    second.startYear(2040);
    expect(await second.keeper.flush()).toBe(false);
    expect(second.keeper.state).toMatchObject({ status: 'unsaved', trouble: 'conflict' });
    expect(second.year()).toBe(2040);
    await second.keeper.takeTheirs();
    expect(second.year()).toBe(2033);
    second.programmes.undo();
    expect(second.year()).toBe(2040);
    expect(await second.keeper.flush()).toBe(true);
  });

  it('or keep the own as a copy beside it', async () => {
    const { all, first, second } = await pair();
    all.hears = false;
    first.startYear(2033);
    await first.keeper.flush();
    second.startYear(2040);
    await second.keeper.flush();
    second.keeper.keepMine();
    expect(await second.keeper.flush()).toBe(true);
    const list = await second.library.list();
    expect(list.ok && list.entries.map(({ programme }) => [programme?.title, programme?.startYear])).toEqual([
      ['Red pear at the mill, mine', 2040],
      ['Red pear at the mill', 2033],
    ]);
  });

  it('removed in one: the other says so and can bring it back', async () => {
    const { first, second } = await pair();
    expect(await first.library.remove('id1')).toBe(true);
    expect(first.keeper.state.id).toBeNull();
    await vi.waitFor(() => expect(second.keeper.state.trouble).toBe('removed'));
    await second.keeper.keepAgain();
    expect(second.keeper.state).toMatchObject({ trouble: null, status: 'kept' });
    expect(await first.library.list()).toMatchObject({ entries: [{ id: 'id1', removed: null }] });
  });

  it('an edit that a closed page left, while the other went on, becomes a copy', async () => {
    const { all, first, second } = await pair();
    all.hears = false;
    const stop = failPuts('AbortError');
    second.startYear(2040);
    await second.keeper.flush();
    stop();
    second.die();
    first.startYear(2033);
    await first.keeper.flush();
    const third = await all.page();
    expect(third.said.join(' ')).toContain('They stand in “My programmes” as a copy.');
    const list = await third.library.list();
    expect(list.ok && list.entries.map(({ programme }) => programme?.startYear).sort()).toEqual([2033, 2040]);
  });
});

describe('a device that fails', () => {
  it('cleared under the page: it says so, and what is on the screen can be kept again', async () => {
    const all = browser();
    const { keeper, startYear } = await all.page();
    startYear(2030);
    await keeper.flush();
    await new Promise((resolve) => {
      all.factory.deleteDatabase('orchard-odds').onsuccess = resolve;
    });
    await vi.waitFor(() => expect(keeper.state).toMatchObject({ status: 'unsaved', trouble: 'gone' }));
    await keeper.keepAgain();
    expect(keeper.state).toMatchObject({ status: 'kept', trouble: null });
    expect(await keeper.device.load('id1')).toMatchObject({ value: { revision: 1 } });
  });

  it('blocked at the start: the unsaved edit of the page before is on the screen all the same', async () => {
    const all = browser();
    const before = await all.page();
    const stop = failPuts('UnknownError');
    before.startYear(2035);
    await before.keeper.flush();
    before.die();
    const { year, keeper, said } = await all.page();
    expect(year()).toBe(2035);
    expect(keeper.state.trouble).toBe('closed');
    expect(said.join(' ')).toContain('cannot be saved yet');
    stop();
    await keeper.retry();
    expect(keeper.state.status).toBe('kept');
  });
});

describe('a text that this version cannot read', () => {
  it('is listed as such and never touched', async () => {
    const all = browser();
    const text = '{"format":"orchard-odds programme","version":99,"title":"Mine, from next year"}';
    await leave(all.factory, 'programme', text);
    const { said, keeper, library, startYear } = await all.page();
    expect(said.join(' ')).toContain('set aside untouched');
    expect(keeper.state.id).toBeNull();
    startYear(2030);
    await keeper.flush();
    const list = await library.list();
    expect(list.ok && list.entries.filter(({ programme }) => programme === null).map((entry) => entry.text)).toEqual([text]);
  });
});
