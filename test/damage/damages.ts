import { readFileSync } from 'node:fs';

/** A document that no app should open, as the bytes that would lie in a file. */
export interface Damaged {
  readonly name: string;
  readonly bytes: Uint8Array;
}

export const EXAMPLES = ['red-pear', 'backcross-apple', 'slow-walnut', 'half-result', 'peach-quick'] as const;
export const textOf = (name: string): string => readFileSync(new URL(`../../sims/examples/${name}.json`, import.meta.url), 'utf8');

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const written = (name: string, text: string): Damaged => ({ name, bytes: utf8(text) });

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Path = readonly (string | number)[];

function placesOf(value: Json, path: Path = []): Path[] {
  if (value === null || typeof value !== 'object') return [path];
  const inner = Array.isArray(value)
    ? value.map((one, i) => placesOf(one, [...path, i]))
    : Object.entries(value).map(([key, one]) => placesOf(one, [...path, key]));
  return [path, ...inner.flat()];
}

/** The document with one place replaced. */
function withAt(value: Json, [first, ...rest]: Path, put: Json): Json {
  if (first === undefined) return put;
  if (Array.isArray(value)) return value.map((one, i) => (i === first ? withAt(one, rest, put) : one));
  if (value === null || typeof value !== 'object') throw new Error('no such place');
  return { ...value, [first]: withAt(value[first] ?? null, rest, put) };
}

const at = (value: Json, path: Path): Json =>
  path.reduce<Json>((here, key) => (here !== null && typeof here === 'object' ? ((here as Record<string | number, Json>)[key] ?? null) : null), value);

const kindOf = (value: Json): string => (Array.isArray(value) ? 'list' : value === null ? 'null' : typeof value);

/** Every so-manieth place of an example, with something there that cannot be right: a list for an object, an object for a number … */
function wrongKinds(example: string, text: string, apart: number): Damaged[] {
  const document = JSON.parse(text) as Json;
  const wrong: Readonly<Record<string, Json>> = { list: { 0: 'a' }, object: ['a', 'b'], number: { much: true }, string: [7], boolean: 'perhaps', null: [] };
  return placesOf(document)
    .filter((_, i) => i % apart === 0)
    .map((path) =>
      written(
        `${example}: another kind of thing at ${path.join('/')}`,
        JSON.stringify(withAt(document, path, wrong[kindOf(at(document, path))] ?? []), null, 2),
      ),
    );
}

/** Numbers that no field can hold, in place of every so-manieth number. */
function wildNumbers(example: string, text: string): Damaged[] {
  const numbers = [...text.matchAll(/(?<="\w+"): (-?\d[\d.]*)(?=[,\s])/g)];
  const wild = ['1e999', '-1e999', '1e308', 'NaN', 'Infinity', '-Infinity', '0x10', '1e', '+5', '.5', '1_000', '١٢'];
  return wild.map((number, i) => {
    const match = numbers[(i * 7) % numbers.length];
    if (!match) throw new Error('no number');
    return written(`${example}: ${number} for a number`, `${text.slice(0, match.index)}: ${number}${text.slice(match.index + match[0].length)}`);
  });
}

/** Cut off after each tenth. */
const tenths = (example: string, text: string): Damaged[] =>
  Array.from({ length: 10 }, (_, tenth) =>
    written(`${example}: ${String(tenth)} tenths of it`, text.slice(0, Math.floor((text.trimEnd().length * tenth) / 10))),
  );

const EVIL = ['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty', '__defineGetter__', 'then', 'valueOf'];

/** The first example with a gene that is called like something every object has: the right form, but no gene of it is there. */
export const genesThatAreNone = (): Damaged[] =>
  EVIL.slice(1).map((key) => written(key, textOf(EXAMPLES[0]).replace(/"genes": \{/, `"genes": { "${key}": { "copies": 1 },`)));

/** Keys twice, or such as JavaScript gives a meaning of its own. */
function keys(example: string, text: string): Damaged[] {
  const twice = [...text.matchAll(/^ +"(\w+)": .*[^[{]$/gm)].filter((_, i) => i % 15 === 0);
  return [
    ...EVIL.map((key) => written(`${example}: a key “${key}” at the top`, text.replace('{', `{ "${key}": { "polluted": true },`))),
    ...EVIL.map((key) => written(`${example}: a key “${key}” in a tree`, text.replace(/("trees": \[\s*\{)/, `$1 "${key}": { "polluted": true },`))),
    ...twice.map(({ 0: line, 1: key = '', index }) => {
      const comma = line.endsWith(',') ? '' : ',';
      return written(`${example}: “${key}” twice, ${String(index)} letters in`, `${text.slice(0, index)}${line}${comma}\n${text.slice(index)}`);
    }),
  ];
}

const wide = (text: string, bigEnd: boolean, mark: boolean): Uint8Array => {
  const units = mark ? `\uFEFF${text}` : text;
  const bytes = new Uint8Array(units.length * 2);
  const view = new DataView(bytes.buffer);
  for (let i = 0; i < units.length; i++) view.setUint16(i * 2, units.charCodeAt(i), !bigEnd);
  return bytes;
};

/** Written in another way than UTF-8, or with halves of letters in it. */
function encodings(example: string, text: string): Damaged[] {
  const named = text.replace('"title": "', '"title": "Müllers Brüche, ');
  const latin = Uint8Array.from(named.replace(/[^\u0000-\u00ff]/g, '?'), (letter) => letter.charCodeAt(0));
  const [before = '', after = ''] = named.split('Müllers');
  const split = (bytes: readonly number[]) => Uint8Array.from([...utf8(before), ...bytes, ...utf8(after)]);
  return [
    { name: `${example}: UTF-16, little end first, marked`, bytes: wide(text, false, true) },
    { name: `${example}: UTF-16, big end first, marked`, bytes: wide(text, true, true) },
    { name: `${example}: UTF-16, little end first`, bytes: wide(text, false, false) },
    { name: `${example}: UTF-16, big end first`, bytes: wide(text, true, false) },
    { name: `${example}: UTF-16 cut within a letter`, bytes: wide(text, false, true).slice(0, 901) },
    { name: `${example}: Latin-1`, bytes: latin },
    { name: `${example}: half of a pair in UTF-8`, bytes: split([0xed, 0xa0, 0x80]) },
    { name: `${example}: a letter too long for UTF-8`, bytes: split([0xc0, 0xaf]) },
    { name: `${example}: cut within a letter`, bytes: utf8(named).slice(0, utf8(before).length + 2) },
    { name: `${example}: zeros in between`, bytes: split([0, 0]) },
    written(`${example}: half of a pair as an id`, text.replace(/"id": "[^"]+"/, '"id": "\\ud83c"')),
  ];
}

const deep = (open: string, close: string, times: number, core: string) => `${open.repeat(times)}${core}${close.repeat(times)}`;

/** Made to take long, or much, or to fall over. */
function hostile(example: string, text: string): Damaged[] {
  const put = (json: string) => text.replace('{', `{ "extra": ${json},`);
  return [
    written('nothing', ''),
    written('a mark and nothing', '\uFEFF'),
    written('a hundred thousand lists in one another', '['.repeat(100_000)),
    written('the same, closed', deep('[', ']', 100_000, '')),
    written('entries in one another', deep('{"a":', '}', 100_000, '1')),
    written(`${example}: with lists in one another`, put(deep('[', ']', 20_000, ''))),
    written(`${example}: with entries in one another`, put(deep('{"a":', '}', 20_000, '1'))),
    written(`${example}: with 300,000 trees`, text.replace(/"trees": \[/, `"trees": [${'{},'.repeat(300_000)}`)),
    written(
      `${example}: with 1,900 trees of 60 entries`,
      text.replace(/"trees": \[/, `"trees": [${`{${Array.from({ length: 60 }, (_, i) => `"k${String(i)}":[1]`).join()}},`.repeat(1900)}`),
    ),
    written(`${example}: with a note of 4 MB`, put(`"${'pear '.repeat(800_000)}"`)),
    written(`${example}: with a note of 4 MB, escaped`, put(`"${'\\u0041'.repeat(700_000)}"`)),
    written(`${example}: with a number of a million digits`, put('9'.repeat(1e6))),
    written(`${example}: with a name that does not end`, put(`"${'x'.repeat(1e6)}`).slice(0, 1e6)),
    written(
      `${example}: with 1,999 alternatives`,
      text.replace(
        /"trees": \[/,
        `"facts": [{"id":"f","name":"f","chance":{"oneOf":[${'{"value":0.5,"weight":1},'.repeat(1998)}{"value":0.5,"weight":1}]}}], "trees": [`,
      ),
    ),
    written(`${example}: more than 5 MB`, text + ' '.repeat(5_000_000)),
    written(`${example}: twice over`, text + text),
    written(`${example}: of a version to come`, text.replace(/"version": \d+/, '"version": 900')),
    written(`${example}: of no version`, text.replace(/"version": \d+/, '"version": 0')),
    written(`${example}: of another program`, text.replace('orchard-odds programme', 'another programme')),
    written(`${example}: in quotes`, JSON.stringify(text)),
    written(`${example}: with a comment`, text.replace('{', '{ // mine\n')),
    written(`${example}: in single quotes`, text.replaceAll('"', "'")),
    written('a page of the web', '<!doctype html><title>404</title>'),
    written('a table', 'tree,flowers\npear,240\n'),
    { name: 'a picture', bytes: Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 0x0d]) },
    { name: 'an archive', bytes: Uint8Array.from([0x50, 0x4b, 3, 4, 20, 0, 0, 0, 8, 0, 0xff]) },
  ];
}

/** All of them: the same list each time. */
export function damages(): Damaged[] {
  const [first] = EXAMPLES;
  return [
    ...EXAMPLES.flatMap((example) => {
      const text = textOf(example);
      return [...tenths(example, text), ...wildNumbers(example, text), ...encodings(example, text), ...wrongKinds(example, text, 19)];
    }),
    ...keys(first, textOf(first)),
    ...hostile(first, textOf(first)),
  ];
}
