import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { sentence } from '../../src/model/problem.ts';
import { FORMAT, VERSION } from '../../src/model/programme.ts';
import { MOST_BYTES, parseProgramme, readProgramme, type Reading } from '../../src/model/read.ts';
import { document, generation, plans, type Document } from '../engine/programmes.ts';

const text = readFileSync(new URL('../../sims/examples/red-pear.json', import.meta.url), 'utf8');
const small = (): Document => document({ plans: plans([generation('g', 3)]) });
const problemsOf = (reading: Reading) => (reading.ok ? [] : reading.problems);
const said = (input: unknown) => problemsOf(parseProgramme(input)).map((problem) => sentence(input, problem));

describe('reading a programme', () => {
  it('gives the example back with nothing to say about it', () => {
    const reading = readProgramme(text);
    expect(reading.ok && reading.notes).toEqual([]);
    expect(reading.ok && reading.programme.plans).toHaveLength(4);
  });

  it('fills in what may be left out, and reads what it wrote as the same', () => {
    const reading = parseProgramme(small());
    if (!reading.ok) throw new Error('refused');
    const { programme } = reading;
    expect(programme.example).toBe(false);
    expect(programme.guessesAsTheyStand).toBe(false);
    expect(programme.goal).toMatchObject({ trees: 1, breedsTrue: false });
    expect(programme.weather).toMatchObject({ frostTakes: 0.8 });
    expect(programme.hours).toMatchObject({ perFlower: 0, perJudging: 0 });
    expect(programme.kinds[0]).toMatchObject({ regularity: 1, plantOutAge: 1, waitYears: 1, seedsAtMost: 1, selfCompatible: false });
    expect(programme.plans[0]?.generations[0]).toMatchObject({ reciprocal: false, cover: 1, repeat: 1, goOn: { when: 'firstPick' } });
    expect(parseProgramme(JSON.parse(JSON.stringify(programme)))).toEqual(reading);
  });

  it('takes a byte order mark, as some editors write it', () => {
    expect(readProgramme(`\uFEFF${text}`)).toEqual(readProgramme(text));
  });

  it('does not change what it is given', () => {
    const input = small();
    const before = JSON.stringify(input);
    parseProgramme(input);
    expect(JSON.stringify(input)).toBe(before);
  });

  it.each([
    ['nothing', '', /^There is nothing in it\. Open another copy\.$/],
    ['blank lines', ' \n\n', /^There is nothing in it/],
    ['half a file', text.slice(0, 2000), /^It breaks off on line \d+, after “.+”: it may have been cut short/],
    ['a file cut within a word', '{"example": tr', /^It breaks off on line 1/],
    ['a file cut within an escape', '{"title": "\\u20', /^It breaks off on line 1/],
    ['a comma too many', '{\n"title": "Mine",\n}', /^It cannot be read any further on line 3, after “Mine”/],
    ['a number that JSON has not', '{"runs": NaN}', /^It cannot be read any further on line 1/],
    ['a tab in a text', '{"title": "a\tb"}', /^It cannot be read any further on line 1/],
    ['two programmes in one file', `${text}${text}`, /^It goes on after its end, on line \d+, after “.+”\. Remove/],
    ['a name given twice', '{"title": "a", "t\\u0069tle": "b"}', /^“title” stands twice in the same entry, on line 1, after “a”\. Remove/],
    ['a key that means something to JavaScript', '{"__proto__": {"format": "x"}}', /^“__proto__” is no entry of a programme, on line 1\. Remove/],
    ['entries in entries without end', '['.repeat(1e6), /^Entries stand in one another more than 50 deep/],
    ['a list without end', `[${'1,'.repeat(9000)}1]`, /^More than 2000 entries stand in one list/],
    ['lists of lists', `[${`[${'1,'.repeat(1999)}1],`.repeat(150)}1]`, /^It holds far more entries than a programme can/],
    ['a list', '[]', /list of something/],
    ['a number', '17', /text of another kind/],
    ['null', 'null', /text of another kind/],
    ['a letter', 'Dear Anna, the pears are ripe.', /text of another kind/],
    ['something of another program', '{"format":"tree list","version":1}', /“format”.*orchard-odds programme/],
    ['no format', '{"version":1}', /“format”/],
  ])('refuses %s, in words', (_, source, words) => {
    const reading = readProgramme(source);
    expect(reading.ok).toBe(false);
    expect(problemsOf(reading).map((problem) => sentence(null, problem))).toEqual([expect.stringMatching(words)]);
  });

  it('refuses a newer version clearly, and names both', () => {
    const words = said({ ...small(), version: VERSION + 1 });
    expect(words).toHaveLength(1);
    expect(words[0]).toMatch(new RegExp(`newer.*version ${String(VERSION + 1)}.*up to ${String(VERSION)}.*Nothing was changed`));
    expect(said({ format: FORMAT, version: VERSION + 5, anything: 'of the future' })[0]).toMatch(/newer/);
  });

  it('refuses a version that is none', () => {
    for (const version of [0, -1, 1.5, '1', null, undefined])
      expect(said({ ...small(), version })).toEqual([expect.stringMatching(/^version: .*whole number from 1 to \d/)]);
  });

  it('keeps the line of units, and refuses a file that says it is in other ones', () => {
    const reading = parseProgramme(small());
    if (!reading.ok) throw new Error('refused');
    expect(reading.programme.units).toMatch(/shares from 0 to 1.*years.*months/);
    expect(parseProgramme({ ...small(), units: reading.programme.units })).toEqual(reading);
    expect(said({ ...small(), units: 'shares in percent' })).toEqual([expect.stringMatching(/^units: must be one of: “shares from 0 to 1/)]);
  });

  it('keeps a source from memory, and how sure it is', () => {
    const input = small();
    const source = { kind: 'remembered', note: 'as my teacher said', confidence: 'low' } as const;
    input.crosses![0]!.set = { value: 0.1, source };
    const reading = parseProgramme(input);
    expect(reading.ok && reading.programme.crosses[0]!.set).toEqual({ value: 0.1, source });
    input.crosses![0]!.set = { value: 0.1, source: { ...source, confidence: 'some' as 'low' } };
    expect(said(input).join()).toMatch(/confidence: must be one of: “high”, “middling”, “low”/);
  });

  it('stays short however long a strange key or name is', () => {
    const long = 'x'.repeat(1e6);
    const input = small();
    Object.assign(input, { [long]: 1 });
    Object.assign(input.trees[0]!, { name: long, genes: { [long]: { copies: 9 } } });
    for (const words of said(input)) expect(words.length).toBeLessThan(500);
    expect(said({ ...small(), ...Object.fromEntries(Array.from({ length: 100 }, (_, i) => [`key ${String(i)}`, i])) })[0]).toMatch(/“key 4” and 95 more/);
  });

  it('refuses a file that is far too large before it reads it', () => {
    expect(problemsOf(readProgramme(' '.repeat(MOST_BYTES + 1)))[0]?.message).toMatch(/larger than 5 MB/);
  });

  it('names the place of a problem as a person finds it', () => {
    const input = structuredClone(JSON.parse(text)) as Document;
    input.kinds[0]!.regularity = 1.4;
    input.plans[3]!.generations[0]!.rescue!.month = 36;
    expect(said(input)).toEqual([
      'kinds › “pear” › regularity: must lie between 0 and 1.',
      'plans › “Wide cross, rescue graft” › generations › “Wide cross, grafted” › rescue › month: must be at most 24.',
    ]);
  });

  it.each<[string, (input: Document) => void, RegExp]>([
    ['an unknown key', (input) => Object.assign(input.kinds[0]!, { colour: 'red' }), /kinds › “pear”: does not know “colour”/],
    ['a key of no section', (input) => Object.assign(input, { weathr: {} }), /^does not know “weathr”/],
    ['a missing list', (input) => Reflect.deleteProperty(input, 'trees'), /^trees: is missing/],
    ['a missing number', (input) => Reflect.deleteProperty(input.limits, 'places'), /^limits › places: is missing/],
    ['a text for a number', (input) => Object.assign(input.limits, { places: 'many' }), /^limits › places: must be a number/],
    ['an empty list', (input) => Object.assign(input, { plans: [] }), /^plans: must not be empty/],
    ['too many plans', (input) => Object.assign(input, { plans: Array.from({ length: 9 }, () => input.plans[0]!) }), /^plans: must be at most 8/],
    ['an id that is none', (input) => Object.assign(input.trees[0]!, { id: 'Old Tree' }), /lower-case/],
    ['a choice that is none', (input) => Object.assign(input.plans[0]!.generations[0]!.keep, { rank: 'loudest' }), /must be one of: “first”/],
    ['a range out of order', (input) => Object.assign(input.crosses![0]!, { set: { low: 0.4, likely: 0.3, high: 0.5 } }), /likely.*must not be below “low”/],
    ['more hits than trials', (input) => Object.assign(input.crosses![0]!, { set: { hits: 5, of: 4 } }), /cannot be more than what it is counted out of/],
    ['a count where none can be', (input) => Object.assign(input.trees[0]!, { flowers: { hits: 5, of: 40 } }), /cannot be a count here/],
    ['one alternative', (input) => Object.assign(input.crosses![0]!, { set: { oneOf: [{ value: 0.1, weight: 1 }] } }), /oneOf/],
    [
      'a weight of nothing',
      (input) =>
        Object.assign(input.crosses![0]!, {
          set: {
            oneOf: [
              { value: 0.1, weight: 0 },
              { value: 0.2, weight: 1 },
            ],
          },
        }),
      /weight/,
    ],
    [
      'a share above one among alternatives',
      (input) =>
        Object.assign(input.crosses![0]!, {
          set: {
            oneOf: [
              { value: 0.1, weight: 1 },
              { value: 2, weight: 1 },
            ],
          },
        }),
      /between 0 and 1/,
    ],
    ['seven copies', (input) => Object.assign(input.trees[0]!, { genes: { r: { copies: 7 } } }), /copies.*at most 6/],
    ['a fraction of a seedling', (input) => Object.assign(input.plans[0]!.generations[0]!, { seedlings: 2.5 }), /seedlings/],
    ['a number that is none', (input) => Object.assign(input.limits, { places: Number.NaN }), /places/],
  ])('refuses %s', (_, change, words) => {
    const input = small();
    change(input);
    const list = said(input);
    expect(list.length).toBeGreaterThan(0);
    expect(list.join('\n')).toMatch(words);
    for (const words_ of list) expect(words_).toMatch(/[.!?]$/);
  });

  it('hands over a contradictory document as a draft, so that it can be mended', () => {
    const input = small();
    input.lastYear = input.startYear - 1;
    const reading = parseProgramme(input);
    expect(reading.ok).toBe(false);
    expect(!reading.ok && reading.draft?.lastYear).toBe(input.lastYear);
    Object.assign(input, { title: 7 });
    const broken = parseProgramme(input);
    expect(!broken.ok && broken.draft).toBeUndefined();
  });

  it('says at most fifty things about the form', () => {
    const input = small();
    Object.assign(input, { trees: Array.from({ length: 60 }, () => ({})) });
    expect(said(input).length).toBeLessThanOrEqual(50);
  });

  it('does not follow names that every object has', () => {
    const poisoned = JSON.parse(JSON.stringify(small()).replace('"genes":[', '"__proto__":{"polluted":true},"genes":[')) as unknown;
    const reading = parseProgramme(poisoned);
    expect(Object.prototype).not.toHaveProperty('polluted');
    expect(reading.ok || problemsOf(reading).length > 0).toBe(true);
    const named = small();
    named.trees[0]!.genes = { constructor: { copies: 1 } };
    expect(said(named).join()).toMatch(/there is no “constructor”/);
    const kind = small();
    kind.trees[0]!.kind = 'toString';
    expect(said(kind).join()).toMatch(/there is no “toString”/);
  });
});
