import { describe, expect, it } from 'vitest';
import { addressOf, askedFor, linkInApp, nameOf, render } from '../../src/components/pages/guide/render.ts';
import type { GuidePart } from '../../src/text/guide.ts';
import { exists, read } from '../repo/files.ts';

const PARTS = { guide: 'docs/guide.md', answers: 'docs/answers.md', model: 'docs/model.md' } as const satisfies Record<GuidePart, string>;
const parts = Object.keys(PARTS) as GuidePart[];
const pictures = Object.fromEntries([...read(PARTS.guide).matchAll(/pictures\/([\w-]+\.png)/g)].map(([path, name = '']) => [name, path]));
const rendered = Object.fromEntries(parts.map((part) => [part, render(read(PARTS[part]), part, pictures).markup]));
const idsOf = (part: GuidePart) => [...(rendered[part] ?? '').matchAll(/ id="([^"]+)"/g)].map(([, id = '']) => id);

describe('the guide in the app', () => {
  it('gives headings the names that they have where the files are shown as they are', () => {
    // As GitHub’s own renderer does: small letters, signs other than - and _ left out, each gap a dash (github-slugger’s documented behaviour; from memory).
    expect(nameOf('4. How many flowers must I pollinate?')).toBe('4-how-many-flowers-must-i-pollinate');
    expect(nameOf('“Own” – count')).toBe('own--count');
    expect(render('## Same\n\n## Same\n', 'guide', {}).headings.map(({ id }) => id)).toEqual(['same', 'same-1']);
  });

  it.each(parts)('%s: every heading has a name of its own, and every link within the guide leads to one', (part) => {
    const ids = idsOf(part);
    expect(ids.length).toBeGreaterThan(5);
    expect(new Set(ids).size).toBe(ids.length);
    const links = [...(rendered[part] ?? '').matchAll(/<a href="([^"]+)"/g)].map(([, href = '']) => href);
    const lost = links.filter((href) => {
      const { part: to, heading } = askedFor(href);
      return !href.startsWith('#/guide') || (heading !== '' && !idsOf(to).includes(heading));
    });
    expect(lost).toEqual([]);
  });

  it('has links to look at: the answers name each of their questions on top', () => {
    expect((rendered['answers'] ?? '').match(/href="#\/guide\/answers\/\d+-/g)).toHaveLength(20);
  });

  it('leads to its parts, leaves other files alone, and reads its own addresses', () => {
    expect(linkInApp('answers.md#3-x', 'guide')).toBe('#/guide/answers/3-x');
    expect(linkInApp('#words', 'guide')).toBe('#/guide/guide/words');
    expect(linkInApp('#/pay', 'guide')).toBe('#/pay');
    expect(linkInApp('decisions/0002-keyed-streams.md', 'model')).toBeNull();
    for (const part of parts) expect(askedFor(addressOf(part, 'here'))).toEqual({ part, heading: 'here' });
    expect(askedFor('#/guide')).toEqual({ part: 'guide', heading: '' });
    expect(askedFor('#/guide/nowhere/x')).toEqual({ part: 'guide', heading: '' });
  });

  it('shows every picture of the guide, each with words for those who do not see it', () => {
    expect(Object.keys(pictures).length).toBeGreaterThan(2);
    for (const name of Object.keys(pictures)) expect(exists(`docs/pictures/${name}`), name).toBe(true);
    const shown = [...(rendered['guide'] ?? '').matchAll(/<img [^>]*alt="([^"]*)"/g)].map(([, words = '']) => words);
    expect(shown).toHaveLength(Object.keys(pictures).length);
    expect(shown.filter((words) => words.length < 15)).toEqual([]);
    // What the app takes in is found by this beginning of the name.
    expect(Object.keys(pictures).filter((name) => !name.startsWith('guide-'))).toEqual([]);
  });
});
