import { deflateRawSync, deflateSync, inflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import type { Programme } from '../../src/model/programme.ts';
import { parseProgramme, readProgramme, type Reading } from '../../src/model/read.ts';
import { isLink, LINK, linkFragment, readLink } from '../../src/storage/link.ts';
import { EXAMPLES, textOf } from '../damage/damages.ts';
import { expectSentence } from '../damage/sentences.ts';

function read(name: string): Programme {
  const reading = readProgramme(textOf(name));
  if (!reading.ok) throw new Error('refused');
  return reading.programme;
}
const pear = read('red-pear');
/** Packed by Node’s own zlib and Buffer: another maker of the same published forms (RFC 1950, RFC 4648). */
const linkOf = (data: string | Uint8Array): string => `${LINK}${deflateSync(data).toString('base64url')}`;

function refused(reading: Reading, words: RegExp = /./): void {
  expect(reading.ok).toBe(false);
  if (reading.ok) return;
  expect(reading.draft).toBeUndefined();
  expect(reading.problems[0]?.message).toMatch(words);
  for (const problem of reading.problems) expectSentence(problem);
}

describe('a link', () => {
  it.each(EXAMPLES)('holds the whole of %s, and opens as the same', async (name) => {
    const programme = read(name);
    const link = await linkFragment(programme);
    expect(link).toMatch(/^#\/open\/[\w-]+$/);
    expect(isLink(link)).toBe(true);
    const reading = await readLink(link);
    expect(reading.ok && reading.programme).toEqual(programme);
  });

  it('is read by, and reads, another maker of zlib and base64url', async () => {
    const text = inflateSync(Buffer.from((await linkFragment(pear)).slice(LINK.length), 'base64url')).toString('utf8');
    expect(text).not.toMatch(/\n|": /);
    expect(parseProgramme(JSON.parse(text))).toEqual(parseProgramme(pear));
    const reading = await readLink(linkOf(textOf('red-pear')));
    expect(reading.ok && reading.programme).toEqual(pear);
  });

  it('is the same each time, so that two people can compare', async () => expect(await linkFragment(pear)).toBe(await linkFragment(structuredClone(pear))));

  it('keeps letters of every script', async () => {
    const programme = { ...pear, title: 'Груша 梨 نخل 🍐 ñ' };
    const reading = await readLink(await linkFragment(programme));
    expect(reading.ok && reading.programme.title).toBe(programme.title);
  });

  it('asks no server: nothing is fetched to make or read one', async () => {
    const real = globalThis.fetch;
    let asked = 0;
    globalThis.fetch = () => Promise.reject(new Error(`asked ${String(++asked)} times`));
    try {
      const reading = await readLink(await linkFragment(pear));
      expect(reading.ok).toBe(true);
    } finally {
      globalThis.fetch = real;
    }
    expect(asked).toBe(0);
  });

  it('that contradicts itself opens as a draft, as a file does', async () => {
    const reading = await readLink(await linkFragment({ ...pear, lastYear: pear.startYear - 1 }));
    expect(!reading.ok && reading.draft?.lastYear).toBe(pear.startYear - 1);
  });
});

describe('a link that is none', () => {
  it.each<[string, string, RegExp]>([
    ['nothing', '', /no link to a programme/],
    ['another page', '#/likely', /no link to a programme/],
    ['nothing after its beginning', LINK, /damaged/],
    ['spaces', `${LINK}eJ yr`, /damaged/],
    ['letters of plain base64', `${LINK}ab+/`, /damaged/],
    ['one letter too many', `${LINK}abcde`, /damaged/],
    ['percent signs', `${LINK}%7B%7D`, /damaged/],
    ['deflate without its frame', `${LINK}${deflateRawSync(textOf('red-pear')).toString('base64url')}`, /damaged/],
    ['plain text', `${LINK}${Buffer.from(textOf('red-pear')).toString('base64url')}`, /damaged/],
    ['a list', linkOf('[]'), /list of something/],
    ['half a programme', linkOf(textOf('red-pear').slice(0, 3000)), /breaks off on line/],
    ['bytes that are no text', linkOf(Uint8Array.from([0x7b, 0xff, 0x7d])), /UTF-8/],
    ['a programme of a version to come', linkOf(JSON.stringify({ ...pear, version: 900 })), /newer Orchard Odds \(version 900/],
    ['a key that means something to JavaScript', linkOf('{"__proto__":{"polluted":1}}'), /__proto__/],
    ['6 MB of letters', `${LINK}${'A'.repeat(7_000_000)}`, /more than 5 MB/],
  ])('%s: refused in a sentence', async (_, fragment, words) => {
    refused(await readLink(fragment), words);
    expect(Object.prototype).not.toHaveProperty('polluted');
  });

  it('that would unfold to 200 MB is stopped at 5 MB, within a second and without the memory', async () => {
    const bomb = linkOf(Buffer.alloc(200_000_000, 0x20));
    expect(bomb.length).toBeLessThan(300_000);
    const before = process.memoryUsage().arrayBuffers;
    const started = performance.now();
    refused(await readLink(bomb), /unfolds to more than 5 MB/);
    expect(performance.now() - started).toBeLessThan(1000);
    expect(process.memoryUsage().arrayBuffers - before).toBeLessThan(50_000_000);
  });

  it('cut short anywhere is refused', async () => {
    const link = await linkFragment(pear);
    for (let length = LINK.length; length < link.length; length += 41) refused(await readLink(link.slice(0, length)), /damaged/);
  });

  it('with any one letter changed is refused, or is the same programme still', async () => {
    const link = await linkFragment(pear);
    let same = 0;
    for (let at = LINK.length; at < link.length; at += 7) {
      const letter = link.charAt(at) === 'A' ? 'B' : 'A';
      const reading = await readLink(`${link.slice(0, at)}${letter}${link.slice(at + 1)}`);
      if (reading.ok) {
        expect(reading.programme).toEqual(pear);
        same += 1;
      } else refused(reading);
    }
    // Only the spare bits of the very last letter say nothing.
    expect(same).toBeLessThanOrEqual(1);
  });

  it('with any one byte of its inside changed is refused by its check sum: no figure becomes another', async () => {
    const packed = Buffer.from((await linkFragment(pear)).slice(LINK.length), 'base64url');
    for (let at = 0; at < packed.length; at += 5) {
      const changed = Uint8Array.from(packed);
      changed[at] = (changed[at] ?? 0) ^ (1 << (at % 8));
      refused(await readLink(`${LINK}${Buffer.from(changed).toString('base64url')}`));
    }
  });
});
