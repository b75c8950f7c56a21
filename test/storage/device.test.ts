import { IDBFactory, IDBObjectStore } from 'fake-indexeddb';
import { afterEach, describe, expect, it } from 'vitest';
import { Database } from '../../src/storage/database.ts';
import { Device } from '../../src/storage/device.ts';
import { decideSave, type SaveRequest, type StoredProgramme } from '../../src/storage/records.ts';
import { failPuts, freshDevice, leave, replaced, restoreAll } from './stubs.ts';

const asked = (text: string, base: number, writer = 'me'): SaveRequest => ({ base, writer, changed: 1000, text, history: `of ${text}` });
const textOf = async (device: Device, id: string) => {
  const loaded = await device.load(id);
  return loaded.ok ? loaded.value?.text : loaded.trouble;
};

afterEach(() => {
  restoreAll();
});

describe('a programme on the device', () => {
  it('comes back as it was saved, and lists with the others', async () => {
    const { device } = freshDevice();
    expect(await device.save('a', asked('pears', 0))).toEqual({ ok: true, value: { revision: 1 } });
    expect(await device.save('b', asked('plums', 0))).toEqual({ ok: true, value: { revision: 1 } });
    expect(await device.save('a', asked('pears again', 1))).toEqual({ ok: true, value: { revision: 2 } });
    const stored = { writer: 'me', changed: 1000, removed: null };
    expect(await device.list()).toEqual({
      ok: true,
      value: [
        { id: 'a', stored: { ...stored, revision: 2, text: 'pears again', history: 'of pears again' } },
        { id: 'b', stored: { ...stored, revision: 1, text: 'plums', history: 'of plums' } },
      ],
    });
  });

  it('is put away and brought back without a change, and is gone when it is erased', async () => {
    const { device } = freshDevice();
    await device.save('a', asked('pears', 0));
    await device.setRemoved('a', 77);
    expect(await device.load('a')).toMatchObject({ value: { text: 'pears', revision: 1, removed: 77 } });
    expect(await device.save('a', asked('more pears', 1))).toEqual({ ok: true, value: { refused: 'removed' } });
    await device.setRemoved('a', null);
    expect(await device.save('a', asked('more pears', 1))).toEqual({ ok: true, value: { revision: 2 } });
    await device.erase('a');
    expect(await device.load('a')).toEqual({ ok: true, value: null });
    expect(await device.setRemoved('a', 1)).toEqual({ ok: true, value: false });
  });

  it('of an unknown form is offered as it lies there', async () => {
    const { factory, device } = freshDevice();
    await leave(factory, 'programme/odd', { kept: 'otherwise' });
    await leave(factory, 'programme/plain', 'only a text');
    expect(await textOf(device, 'odd')).toBe('{"kept":"otherwise"}');
    expect(await textOf(device, 'plain')).toBe('only a text');
  });
});

describe('two pages', () => {
  it('never overwrite each other: the one that has not seen the last save is refused', async () => {
    const { factory, device } = freshDevice();
    const other = new Device(new Database(() => factory));
    await device.save('a', asked('first', 0));
    expect(await other.save('a', asked('theirs', 1, 'other'))).toEqual({ ok: true, value: { revision: 2 } });
    expect(await device.save('a', asked('mine', 1))).toEqual({ ok: true, value: { refused: 'conflict' } });
    expect(await textOf(device, 'a')).toBe('theirs');
    expect(await device.save('a', asked('mine, after theirs', 2))).toEqual({ ok: true, value: { revision: 3 } });
  });

  it('that save in the same moment: one is first, the other is told', async () => {
    const { factory, device } = freshDevice();
    const other = new Device(new Database(() => factory));
    await device.save('a', asked('first', 0, 'somebody'));
    const outcomes = await Promise.all([device.save('a', asked('mine', 1)), other.save('a', asked('theirs', 1, 'other'))]);
    expect(outcomes.map((outcome) => outcome.ok && outcome.value)).toEqual(expect.arrayContaining([{ revision: 2 }, { refused: 'conflict' }]));
  });

  it('may save the same text, and a page whose answer never came may go on', () => {
    const stored: StoredProgramme = { revision: 5, writer: 'other', changed: 1, removed: null, text: 'same', history: '' };
    expect(decideSave(stored, asked('same', 4))).toMatchObject({ write: { revision: 6 } });
    expect(decideSave(stored, asked('different', 4))).toEqual({ refuse: 'conflict' });
    expect(decideSave({ ...stored, writer: 'me' }, asked('different', 4))).toMatchObject({ write: { revision: 6, text: 'different' } });
    expect(decideSave(undefined, asked('text', 4))).toEqual({ refuse: 'gone' });
  });
});

describe('what the first version kept', () => {
  it('becomes entries, also a text that cannot be read, and only once', async () => {
    const { factory, device } = freshDevice();
    await leave(factory, 'programme', 'pears');
    await leave(factory, 'programme that could not be read', 'from next year');
    let next = 0;
    const newId = () => `id${String((next += 1))}`;
    expect(await device.takeOver(newId, 5)).toEqual({ ok: true, value: ['id1', 'id2'] });
    expect(await textOf(device, 'id1')).toBe('pears');
    expect(await textOf(device, 'id2')).toBe('from next year');
    expect(await device.takeOver(newId, 6)).toEqual({ ok: true, value: [] });
    expect(await device.list()).toMatchObject({ value: [{ id: 'id1' }, { id: 'id2' }] });
  });
});

describe('trouble with the device', () => {
  it('a full one says so, keeps what it had, and takes the save when there is room', async () => {
    const { device } = freshDevice();
    await device.save('a', asked('pears', 0));
    const stop = failPuts('QuotaExceededError');
    expect(await device.save('a', asked('more', 1))).toEqual({ ok: false, trouble: 'full' });
    stop();
    expect(await textOf(device, 'a')).toBe('pears');
    expect(await device.save('a', asked('more', 1))).toEqual({ ok: true, value: { revision: 2 } });
  });

  it('a crash between two writes leaves neither', async () => {
    const { factory, device } = freshDevice();
    await leave(factory, 'programme', 'pears');
    // The new entry is written, then the page dies before the old one is taken away.
    const restore = replaced(IDBObjectStore.prototype, 'delete', () => {
      throw new Error('the page is no more');
    });
    expect(await device.takeOver(() => 'new', 1)).toMatchObject({ ok: false });
    restore();
    expect(await device.list()).toEqual({ ok: true, value: [] });
    expect(await device.takeOver(() => 'new', 1)).toEqual({ ok: true, value: ['new'] });
  });

  it('a browser that has no storage, or forbids it, says so', async () => {
    const none = new Device(new Database(() => undefined));
    expect(await none.load('a')).toEqual({ ok: false, trouble: 'closed' });
    const forbidden = new Device(
      new Database(() => {
        throw new DOMException('no', 'SecurityError');
      }),
    );
    expect(await forbidden.save('a', asked('pears', 0))).toEqual({ ok: false, trouble: 'closed' });
  });

  it('an opening that never ends is given up', async () => {
    const factory = new IDBFactory();
    replaced(factory, 'open', () => new EventTarget() as ReturnType<IDBFactory['open']>);
    expect(await new Device(new Database(() => factory, 30)).list()).toEqual({ ok: false, trouble: 'silent' });
  });

  it('storage that is deleted under the page is noticed, and opened anew', async () => {
    const { factory, device } = freshDevice();
    let lost = 0;
    device.onLost(() => (lost += 1));
    await device.save('a', asked('pears', 0));
    await new Promise((resolve) => {
      factory.deleteDatabase('orchard-odds').onsuccess = resolve;
    });
    expect(lost).toBe(1);
    expect(await device.save('a', asked('more', 1))).toEqual({ ok: true, value: { refused: 'gone' } });
    expect(await device.save('a', asked('more', 0))).toEqual({ ok: true, value: { revision: 1 } });
  });
});
