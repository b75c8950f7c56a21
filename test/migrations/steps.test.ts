import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { climb, STEPS } from '../../src/model/migrations/steps.ts';
import { isRecord, sentence } from '../../src/model/problem.ts';
import { VERSION } from '../../src/model/programme.ts';
import { parseProgramme, readProgramme } from '../../src/model/read.ts';

/** Documents as they were saved when their version was the current one. A new version adds files here and changes none. */
const folder = new URL('documents/', import.meta.url);
const old = readdirSync(folder).map((file) => {
  const text = readFileSync(new URL(file, folder), 'utf8');
  const document: unknown = JSON.parse(text);
  if (!isRecord(document)) throw new Error(`${file} is no document`);
  return { file, text, document, version: Number(/^v(\d+)-/.exec(file)?.[1]) };
});
const first = () => structuredClone(old.find(({ version }) => version === 1)!.document);
const said = (document: unknown) => {
  const reading = parseProgramme(document);
  return (reading.ok ? [] : reading.problems).map((problem) => sentence(document, problem));
};

describe('steps from old versions', () => {
  it('lead from 1 to ours without a gap', () => {
    expect(STEPS.map(({ from }) => from)).toEqual(Array.from({ length: VERSION - 1 }, (_, i) => i + 1));
    for (const { from, to } of STEPS) expect(to).toBe(from + 1);
  });

  it.each(STEPS.map((step) => [step.from, step] as const))('the step from version %i is exercised by a document of that version', (from, step) => {
    const documents = old.filter(({ version }) => version === from);
    expect(documents.length).toBeGreaterThan(0);
    for (const { file, document } of documents) {
      expect(step.was().safeParse(document).success, file).toBe(true);
      const before = structuredClone(document);
      expect(step.up(document)['version'], file).toBe(step.to);
      expect(document, file).toEqual(before);
    }
  });

  it.each(old)('$file says its version, and opens as one of ours that loses nothing of it', ({ text, document, version }) => {
    expect(document['version']).toBe(version);
    const reading = readProgramme(text);
    if (!reading.ok) throw new Error(reading.problems.map((problem) => sentence(document, problem)).join('\n'));
    expect(reading.programme).toMatchObject({ ...document, version: VERSION });
    expect(readProgramme(JSON.stringify(reading.programme))).toEqual(reading);
  });

  it('leave a document of ours, and one of no version, as they are', () => {
    for (const document of [{ version: VERSION }, { version: 0 }, {}, { version: '1' }]) {
      const climbed = climb(document);
      expect(climbed.ok && climbed.document).toBe(document);
    }
  });
});

describe('a document of version 1', () => {
  it.each<[string, (document: Record<string, unknown>) => void, RegExp]>([
    [
      'a source that version 1 did not know',
      (d) => (d['money'] = { perFlower: { value: 1, source: { kind: 'remembered' } } }),
      /^money › perFlower: must be a number/,
    ],
    ['a line of units', (d) => (d['units'] = 'shares'), /^does not know “units”/],
    ['a key of the future', (d) => (d['weathr'] = {}), /^does not know “weathr”/],
    ['no trees', (d) => Reflect.deleteProperty(d, 'trees'), /^trees: is missing\. \S/],
    ['a year in letters', (d) => (d['startYear'] = 'soon'), /^startYear: must be a number/],
  ])('is held to the schema of its time: %s', (_, change, words) => {
    const document = first();
    change(document);
    expect(said(document)).toEqual([expect.stringMatching(words)]);
  });

  it('cannot say “remembered”, which the same document in version 2 can', () => {
    const document = JSON.parse(JSON.stringify(first()).replace('"kind":"practice"', '"kind":"remembered"')) as Record<string, unknown>;
    expect(JSON.stringify(document)).toContain('remembered');
    expect(said(document).length).toBeGreaterThan(0);
    expect(said({ ...document, version: 2 })).toEqual([]);
  });

  it('is held to bounds of estimates, which its frozen schema does not know, by ours', () => {
    const document = JSON.parse(JSON.stringify(first()).replace(/"low":[\d.]+/, '"low":-3')) as unknown;
    expect(said(document).join()).toMatch(/must lie between/);
  });
});
