import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Simulator } from '../../src/engine/simulate.ts';
import { sentence } from '../../src/model/problem.ts';
import { readProgramme, type Reading } from '../../src/model/read.ts';
import { faultOf } from '../../src/model/text-scan.ts';
import { programmeText, readFile } from '../../src/storage/file.ts';
import { linkFragment, readLink } from '../../src/storage/link.ts';
import { programmes } from './arbitrary.ts';

const text = readFileSync(new URL('../../sims/examples/red-pear.json', import.meta.url), 'utf8');

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
const fresh = (): Json => JSON.parse(text) as Json;

/** Every place in a document, as paths. */
function placesOf(value: Json, path: readonly (string | number)[] = []): (readonly (string | number)[])[] {
  if (value === null || typeof value !== 'object') return [path];
  const inner = Array.isArray(value)
    ? value.map((one, i) => placesOf(one, [...path, i]))
    : Object.entries(value).map(([key, one]) => placesOf(one, [...path, key]));
  return [path, ...inner.flat()];
}
const places = placesOf(fresh()).filter((path) => path.length > 0);

/** Values that fit nowhere, nearly fit, or belong elsewhere. */
const anything: fc.Arbitrary<Json> = fc.oneof(
  fc.constantFrom<Json[]>(
    null,
    true,
    false,
    0,
    -1,
    1,
    2,
    1e9,
    -1e9,
    1e308,
    0.5,
    '',
    'pear',
    'red',
    'd1',
    'no such thing',
    'open',
    'self',
    '__proto__',
    'constructor',
    [],
    {},
    [[]],
    { tree: 'quince' },
    { picksOf: 'd2' },
    { copies: 2 },
    { frequency: 2 },
  ),
  fc.constantFrom<Json[]>(
    { low: 3, likely: 2, high: 1 },
    { hits: 5, of: 2 },
    { hits: 1, of: 0 },
    { oneOf: [] },
    { value: 'much' },
    { low: 0, likely: 0, high: 0 },
    { source: true },
    { showed: 9, seasons: 2 },
    { years: 0 },
    { between: { seed: 'pear', pollen: 'pear' } },
  ),
  fc.constantFrom(...places.slice(0, 400)).map((path) => at(fresh(), path)),
  fc.jsonValue({ maxDepth: 2 }) as fc.Arbitrary<Json>,
);

function at(value: Json, path: readonly (string | number)[]): Json {
  return path.reduce<Json>((here, key) => (here !== null && typeof here === 'object' ? ((here as Record<string | number, Json>)[key] ?? null) : null), value);
}

interface Change {
  readonly path: readonly (string | number)[];
  readonly how: 'delete' | 'replace' | 'insert' | 'double';
  readonly key: string;
  readonly value: Json;
}
const change: fc.Arbitrary<Change> = fc.record({
  path: fc.constantFrom(...places),
  how: fc.constantFrom('delete', 'replace', 'insert', 'double'),
  key: fc.constantFrom('id', 'name', 'note', 'extra', '__proto__', 'kind', 'value'),
  value: anything,
});

function apply(document: Json, { path, how, key, value }: Change): void {
  const parent = at(document, path.slice(0, -1));
  const last = path.at(-1)!;
  if (parent === null || typeof parent !== 'object') return;
  if (Array.isArray(parent)) {
    const i = Number(last);
    if (how === 'delete') parent.splice(i, 1);
    else if (how === 'insert') parent.splice(i, 0, value);
    else if (how === 'double') parent.push(structuredClone(parent[i] ?? null));
    else parent[i] = value;
    return;
  }
  if (how === 'delete') delete parent[last];
  else Object.defineProperty(parent, how === 'insert' ? key : last, { value, enumerable: true, configurable: true, writable: true });
}

function tellsOf(source: string, reading: Reading): void {
  const problems = reading.ok ? reading.notes : reading.problems;
  if (!reading.ok) expect(problems.length).toBeGreaterThan(0);
  if (!reading.ok) expect(problems.some(({ stops }) => stops)).toBe(true);
  else expect(problems.every(({ stops }) => !stops)).toBe(true);
  let document: unknown = null;
  try {
    document = JSON.parse(source);
  } catch {
    // Not JSON: the sentence stands without a place.
  }
  for (const problem of problems) {
    const said = sentence(document, problem);
    expect(said).toMatch(/\S{2,}.*[.!?”)]$/s);
    expect(said).not.toMatch(/undefined|NaN|\[object/);
    expect(problem.message.trim().length).toBeGreaterThan(3);
  }
}

describe('any document (fast-check, fixed seed)', () => {
  it('is read to a programme, or to problems in whole sentences; never to an exception', () => {
    let refused = 0;
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 3 }), (changes) => {
        const document = fresh();
        for (const one of changes) apply(document, one);
        const source = JSON.stringify(document);
        const reading = readProgramme(source);
        tellsOf(source, reading);
        if (!reading.ok) refused += 1;
      }),
      { seed: 4, numRuns: 3000 },
    );
    expect(refused).toBeGreaterThan(1000);
  });

  it('that is accepted runs', () => {
    let ran = 0;
    fc.assert(
      fc.property(change, (one) => {
        const document = fresh();
        apply(document, one);
        const reading = readProgramme(JSON.stringify(document));
        if (!reading.ok) return;
        // A changed example may ask for very much; a few futures are enough to see that it runs.
        const { programme } = reading;
        if (programme.plans.some(({ generations }) => generations.some(({ seedlings, flowers }) => seedlings > 5000 || flowers > 1e5))) return;
        const columns = new Simulator(programme).runs(
          programme.plans.map((_, p) => p),
          0,
          2,
        );
        ran += 1;
        expect(columns).toHaveLength(programme.plans.length);
      }),
      { seed: 9, numRuns: 900 },
    );
    expect(ran).toBeGreaterThan(100);
  });

  it('text that is no programme is refused in words', () => {
    const documents = fc.oneof(
      fc.string(),
      fc.json(),
      fc.constantFrom('', '{', '[]', 'null', '{"format":"orchard-odds programme"}', `\uFEFF${text.slice(0, 400)}`),
    );
    fc.assert(
      fc.property(documents, (source) => {
        const reading = readProgramme(source);
        expect(reading.ok).toBe(false);
        tellsOf(source, reading);
      }),
      { seed: 1, numRuns: 400 },
    );
  });

  it('of a generated programme reads the same again when it is written', () => {
    fc.assert(
      fc.property(programmes, (document) => {
        const reading = readProgramme(JSON.stringify(document));
        fc.pre(reading.ok);
        const again = readProgramme(JSON.stringify(reading.programme));
        expect(again).toEqual(reading);
      }),
      { seed: 2, numRuns: 100 },
    );
  });

  it('of a generated programme comes back the same from a file and from a link, whatever its words', async () => {
    let kept = 0;
    const words = fc.record({ title: fc.string({ unit: 'binary', minLength: 1, maxLength: 50 }), note: fc.string({ unit: 'grapheme', maxLength: 200 }) });
    await fc.assert(
      fc.asyncProperty(programmes, words, async (document, said) => {
        const reading = readProgramme(JSON.stringify({ ...document, ...said }));
        fc.pre(reading.ok);
        kept += 1;
        expect(await readFile(new File([programmeText(reading.programme)], 'any.json'))).toEqual(reading);
        expect(await readLink(await linkFragment(reading.programme))).toEqual(reading);
        expect(readProgramme(JSON.stringify(reading.programme))).toEqual(reading);
      }),
      { seed: 6, numRuns: 100 },
    );
    expect(kept).toBeGreaterThanOrEqual(100);
  });

  it('is looked over as the standard has it: a fault is found where JSON.parse finds one, and nowhere else', () => {
    const cut = fc.nat(text.length).map((n) => text.slice(0, n));
    const put = fc
      .tuple(
        fc.nat(text.length),
        fc.constantFrom('"', '\\', ',', ':', '{', '}', '[', ']', '-', '0', '1', 'e', '.', 't', '\n', '\t', '\u0000', 'u12', '\ud800', ' '),
        fc.nat(2),
      )
      .map(([n, letter, taken]) => text.slice(0, n) + letter + text.slice(n + taken));
    const small = fc
      .array(fc.constantFrom('"a"', '"\\u00', '41"', '\\n', ',', ':', '{', '}', '[', ']', '-', '0', '12', '1.5', 'e+3', 'true', 'nul', 'null', ' '), {
        maxLength: 9,
      })
      .map((parts) => parts.join(''));
    const whole = fc.json().filter((json) => /^[{[]/.test(json));
    const outcomes = { whole: 0, broken: 0 };
    fc.assert(
      fc.property(
        fc.oneof(
          cut,
          put,
          small.map((inner) => `{"k":${inner}}`),
          small.map((inner) => `[${inner}]`),
          whole,
        ),
        (source) => {
          const fault = faultOf(source);
          // A key that stands twice is a fault of ours only.
          if (fault && ['twice', 'forbidden', 'tooDeep'].includes(fault.kind)) return;
          let parses = true;
          try {
            JSON.parse(source);
          } catch {
            parses = false;
          }
          expect(fault === null, source.slice(0, 80)).toBe(parses);
          outcomes[parses ? 'whole' : 'broken'] += 1;
        },
      ),
      { seed: 11, numRuns: 4000 },
    );
    expect(outcomes.whole).toBeGreaterThan(400);
    expect(outcomes.broken).toBeGreaterThan(400);
  });
});
