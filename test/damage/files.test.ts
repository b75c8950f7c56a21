import { describe, expect, it } from 'vitest';
import { readProgramme, type Reading } from '../../src/model/read.ts';
import { ProgrammeStore } from '../../src/state/programme-store.ts';
import { readFile } from '../../src/storage/file.ts';
import { expectSentence } from './sentences.ts';
import { damages, genesThatAreNone, textOf } from './damages.ts';

/** What the app does with a file: a reading, or a document for the store. A store that holds another document must not notice a refusal. */
async function open(store: ProgrammeStore, bytes: Uint8Array<ArrayBuffer>): Promise<Reading> {
  const reading = await readFile(new File([bytes], 'pears.json'));
  const document = reading.ok ? reading.programme : reading.draft;
  if (document) store.edit(document, 'opened');
  return reading;
}

const holding = (): ProgrammeStore => {
  const reading = readProgramme(textOf('peach-quick'));
  if (!reading.ok) throw new Error('refused');
  return new ProgrammeStore(reading.programme);
};

const all = damages();

describe('damaged files', () => {
  it('are at least 300, all different', () => {
    expect(all.length).toBeGreaterThanOrEqual(300);
    expect(new Set(all.map(({ name }) => name)).size).toBe(all.length);
  });

  it.each(all)('$name: refused in a sentence within a second, and nothing else happens', async ({ bytes }) => {
    const store = holding();
    const before = store.state;
    let told = 0;
    store.subscribe(() => told++);
    const started = performance.now();
    const reading = await open(store, Uint8Array.from(bytes));
    expect(performance.now() - started).toBeLessThan(1000);
    expect(reading.ok).toBe(false);
    if (reading.ok) return;
    expect(reading.draft).toBeUndefined();
    expect(reading.problems.length).toBeGreaterThan(0);
    for (const problem of reading.problems) expectSentence(problem);
    expect(store.state).toBe(before);
    expect(told).toBe(0);
    expect(Object.prototype).not.toHaveProperty('polluted');
  });

  it.each(genesThatAreNone())('a gene called “$name” is not looked for among what every object has', async ({ name, bytes }) => {
    const reading = await readFile(new File([Uint8Array.from(bytes)], 'pears.json'));
    if (reading.ok) throw new Error('taken');
    expect(reading.problems.map(({ message }) => message)).toContainEqual(expect.stringContaining(`there is no “${name}”`));
  });

  it('none of it would have been refused undamaged', async () => {
    for (const name of ['red-pear', 'slow-walnut']) expect((await open(holding(), new TextEncoder().encode(textOf(name)))).ok).toBe(true);
  });
});
