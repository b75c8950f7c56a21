import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { ENGINE } from '../../src/engine/version.ts';
import { sentence } from '../../src/model/problem.ts';
import { VERSION } from '../../src/model/programme.ts';
import { parseProgramme } from '../../src/model/read.ts';
import { documents, exists, files, read } from './files.ts';
import { linkedFrom, takeApart } from './markdown.ts';

const project = z.object({ version: z.string(), scripts: z.record(z.string(), z.string()) }).parse(JSON.parse(read('package.json')));

/** Paths named in `code`: they begin with a folder of the project, and hold no placeholder (written in capitals). */
const pathsIn = (code: readonly string[]): string[] =>
  code.flatMap((text) => text.match(/(?<![\w/.])(?:src|sims|test|docs|\.ci)\/[\w./-]*\w/g) ?? []).filter((path) => !/[A-Z]{3}/.test(path) || exists(path));

/** Scripts named in `code`: “npm run NAME”, “npm start”, “npm test”. */
function scriptsIn(code: readonly string[]): string[] {
  return code.flatMap((text) => [...text.matchAll(/\bnpm (?:run (?:--silent )?([\w:]+)|(start|test)\b)/g)].map(([, named = '', short = '']) => named || short));
}

describe('what the documents name', () => {
  it('is looked for in more than a handful of documents', () => {
    expect(documents).toEqual(
      expect.arrayContaining(['README.md', 'DEVELOPERS.md', 'docs/model.md', 'docs/guide.md', 'docs/architecture.md', 'docs/changelog.md']),
    );
  });

  it.each(documents)('%s: every link leads to a file', (document) => {
    const { links } = takeApart(read(document));
    expect(links.map((address) => linkedFrom(document, address)).filter((path) => !exists(path))).toEqual([]);
  });

  it.each(documents)('%s: every path is there', (document) => {
    expect(pathsIn(takeApart(read(document)).code).filter((path) => !exists(path))).toEqual([]);
  });

  it.each(documents)('%s: every npm script is there', (document) => {
    expect(scriptsIn(takeApart(read(document)).code).filter((script) => !(script in project.scripts))).toEqual([]);
  });

  it('README.md: the two lines that a newcomer types stand alone on their lines', () => {
    const lines = read('README.md').split('\n');
    expect(lines).toContain('npm ci && npm start');
    expect(lines).toContain('npm ci && npm test');
  });

  it('README.md names every example', () => {
    const examples = files.filter((file) => /^sims\/examples\/[^/]+\.json$/.test(file));
    expect(examples.length).toBeGreaterThan(0);
    expect(examples.filter((example) => !read('README.md').includes(example))).toEqual([]);
  });

  it('DEVELOPERS.md names every script of package.json, and every folder of src', () => {
    const { code } = takeApart(read('DEVELOPERS.md'));
    const named = new Set(scriptsIn(code));
    expect(Object.keys(project.scripts).filter((script) => !named.has(script))).toEqual([]);
    const folders = [...new Set(files.flatMap((file) => /^src\/[\w-]+(?=\/)/.exec(file) ?? []))];
    expect(folders.length).toBeGreaterThan(10);
    expect(folders.filter((folder) => !code.includes(folder))).toEqual([]);
  });
});

describe('the checks themselves', () => {
  it('see a link, a path and a script that are not there', () => {
    const { links, code, prose } = takeApart(
      'See [here](../no.md#part), `src/no/such.ts` and `npm run nothing`.\n\n```sh\nnpm run --silent none -- test/gone\n```\n',
    );
    expect(links.map((address) => linkedFrom('docs/decisions/x.md', address))).toEqual(['docs/no.md']);
    expect(pathsIn(code)).toEqual(['test/gone', 'src/no/such.ts']);
    expect(scriptsIn(code)).toEqual(['none', 'nothing']);
    expect(prose.trim()).toBe('See here,  and .');
    expect(exists('docs/no.md')).toBe(false);
    expect(exists('docs')).toBe(true);
  });
});

describe('records of decisions', () => {
  const records = files.filter((file) => file.startsWith('docs/decisions/'));

  it('are numbered one after the other', () => {
    const numbers = records.map((file) => /^docs\/decisions\/(\d{4})-[a-z0-9-]+\.md$/.exec(file)?.[1]);
    expect(numbers).toEqual(records.map((_, i) => String(i + 1).padStart(4, '0')));
    expect(records.length).toBeGreaterThan(5);
  });

  it('are all linked from docs/architecture.md', () => {
    const linked = takeApart(read('docs/architecture.md')).links.map((address) => linkedFrom('docs/architecture.md', address));
    expect(records.filter((record) => !linked.includes(record))).toEqual([]);
  });

  it.each(records)('%s begins with its number and a date', (record) => {
    const [title = '', , date = ''] = read(record).split('\n');
    expect(title).toMatch(new RegExp(`^# ${record.slice('docs/decisions/'.length, 'docs/decisions/0000'.length)} \\S`));
    expect(date).toMatch(/^Date: \d{4}-\d{2}-\d{2}\./);
  });
});

describe('docs/model.md', () => {
  const model = read('docs/model.md');

  it('has every section that code and tests refer to', () => {
    const sections = new Set([...model.matchAll(/^## (\d+)\. /gm)].map(([, number]) => number));
    const referring = files.filter((file) => /^(src|sims|test)\/.*\.(ts|json)$/.test(file));
    const wanted = referring.flatMap((file) =>
      [...read(file).matchAll(/docs\/model\.md §+ ?([\d, ]*\d)/g)].flatMap(([, list = '']) => list.split(/[, ]+/).map((number) => ({ file, number }))),
    );
    expect(wanted.length).toBeGreaterThan(20);
    expect(wanted.filter(({ number }) => !sections.has(number))).toEqual([]);
  });

  it('names the versions it describes', () => {
    expect(model).toContain(`engine "${ENGINE}"`);
    expect(model).toContain(`documents of version ${String(VERSION)}`);
  });
});

describe('docs/changelog.md', () => {
  it('opens with this version, and answers for its engine whether the same word gives the same result', () => {
    const [, newest = ''] = read('docs/changelog.md').split(/^(?=## )/m);
    expect(newest).toMatch(new RegExp(`^## ${project.version.replaceAll('.', '\\.')}\\n`));
    expect(newest).toContain('**Same word, same result?**');
    expect(newest).toContain(`engine "${ENGINE}"`);
  });
});

describe('examples', () => {
  it.each(files.filter((file) => file.startsWith('sims/examples/')))('%s opens, can run, and says that it is invented', (file) => {
    const document: unknown = JSON.parse(read(file));
    const reading = parseProgramme(document);
    if (!reading.ok) throw new Error(reading.problems.map((problem) => sentence(document, problem)).join('\n'));
    expect(reading.programme.example).toBe(true);
    expect(reading.programme.note).toMatch(/invented/);
  });
});
