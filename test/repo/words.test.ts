import { describe, expect, it } from 'vitest';
import { documents, files, read } from './files.ts';
import { takeApart } from './markdown.ts';

/** Written in pieces, so that this file does not find itself. */
const word = (...pieces: string[]) => pieces.join('');
const SOURCES = files.filter((file) => /\.(ts|mjs|cjs|js|json|md|css|html)$/.test(file) && file !== 'package-lock.json');

/** Words of how the work was handed out say nothing to a reader of the code. Zod's own names of a finding are no such words. */
const FORBIDDEN: readonly { readonly what: string; readonly in: RegExp; readonly exceptIn?: RegExp }[] = [
  { what: 'a document the work began with', in: new RegExp(word('seed', '[ -]doc', 'ument'), 'i') },
  { what: 'stand-ins', in: new RegExp(word('\\bmo', 'ck'), 'i') },
  {
    what: 'numbered pieces of work',
    in: new RegExp(word('\\b(?:this|that|the|a later|later|next|each|closing) iss', 'ues?\\b|\\biss', 'ues? #?\\d'), 'i'),
  },
];

describe('words that do not belong here', () => {
  it('are looked for in all sources', () => {
    expect(SOURCES.length).toBeGreaterThan(150);
    expect(SOURCES).toContain('README.md');
  });

  it.each(FORBIDDEN)('$what: in no file and no name', ({ in: pattern }) => {
    expect(files.filter((file) => pattern.test(file))).toEqual([]);
    const found = SOURCES.flatMap((file) =>
      read(file)
        .split('\n')
        .flatMap((line, i) => (pattern.test(line) ? [`${file}:${String(i + 1)}: ${line.trim()}`] : [])),
    );
    expect(found).toEqual([]);
  });

  it.each([
    [0, word('the seed', ' doc', 'ument')],
    [1, word('mo', 'ck-up')],
    [2, word('in a later', ' issue')],
    [2, word('see issue', ' #12')],
  ])('would be found: %s %s', (at, text) => {
    expect(FORBIDDEN[at]?.in.test(text)).toBe(true);
  });
});

/** A word that shouts; “n!” in a formula of one letter does not. */
const SHOUT = /\p{L}{2}!(?!\p{L})/u;

describe('the tone of the documents', () => {
  it.each(documents)('%s does not shout', (document) => {
    expect(
      takeApart(read(document))
        .prose.split('\n')
        .filter((line) => SHOUT.test(line)),
    ).toEqual([]);
  });

  it('would hear a shout', () => expect(SHOUT.test('Try it now!')).toBe(true));
});
