import { describe, expect, it } from 'vitest';
import { readArguments } from '../../sims/run/arguments.ts';

const refused = (...argv: string[]) => {
  const asked = readArguments(argv);
  return asked.kind === 'refused' ? asked.message : asked.kind;
};

describe('the command line of the runner', () => {
  it('is read whole', () => {
    expect(readArguments(['a.json', '--plan', 'x', '--plan=y', '--runs', '50', '--word', 'blue', '--means', '--format', 'csv', '--out', 'b.csv'])).toEqual({
      kind: 'run',
      options: { file: 'a.json', plans: ['x', 'y'], runs: 50, word: 'blue', means: true, format: 'csv', out: 'b.csv', threads: null },
    });
    expect(readArguments(['a.json'])).toEqual({
      kind: 'run',
      options: { file: 'a.json', plans: [], runs: null, word: null, means: false, format: 'text', out: null, threads: null },
    });
    expect(readArguments(['--help'])).toEqual({ kind: 'help' });
  });

  it('is refused in a sentence where it cannot be used', () => {
    expect(refused()).toBe('Name the programme file to run.');
    expect(refused('a.json', 'b.json')).toMatch(/“b.json” is too much/);
    expect(refused('a.json', '--speed')).toBe("Unknown option '--speed'.");
    expect(refused('a.json', '--runs')).toMatch(/--runs.*missing\.$/);
    expect(refused('a.json', '--means=yes')).toMatch(/--means/);
    for (const runs of ['0', '-5', '1.5', '1e3', '1000001', '', ' 7', 'many'])
      expect(refused('a.json', `--runs=${runs}`)).toMatch(/--runs must be a whole number from 1 to 1000000/);
    expect(refused('a.json', '--threads', '0')).toMatch(/--threads/);
    expect(refused('a.json', '--format', 'xml')).toBe('--format must be one of text, json, csv, not “xml”.');
    expect(refused('a.json', '--word', '')).toMatch(/--word/);
    expect(refused('a.json', '--out', '')).toMatch(/--out/);
  });

  it('says all of a sheet, or what about it cannot be used', () => {
    const asked = readArguments([
      'a.json',
      '--handout',
      'b.html',
      '--paper',
      'Letter',
      '--date',
      '2026-11-25',
      '--link',
      'https://x.example/#/story/a',
      '--leave-out',
      'title,trees',
    ]);
    expect(asked).toMatchObject({
      kind: 'run',
      options: { handout: { file: 'b.html', paper: 'Letter', date: '2026-11-25', link: 'https://x.example/#/story/a', leave: ['trees', 'title'] }, out: null },
    });
    expect(readArguments(['a.json', '--handout', 'b.html'])).toMatchObject({ options: { handout: { paper: 'A4', date: null, link: null, leave: [] } } });
    const sheet = ['a.json', '--handout', 'b.html'];
    expect(refused('a.json', '--handout', '')).toMatch(/--handout must name a file/);
    for (const more of [
      ['--ask', 'graft'],
      ['--format', 'json'],
      ['--out', 'c'],
    ])
      expect(refused(...sheet, ...more)).toMatch(/a sheet and nothing else|no question/);
    expect(refused(...sheet, '--paper', 'A3')).toMatch(/--paper must be one of A4, Letter, not “A3”/);
    for (const day of ['2026-02-30', '26-11-25', 'today']) expect(refused(...sheet, '--date', day)).toMatch(/--date must be a day/);
    for (const link of ['javascript:alert(1)', 'x.example', 'http://a b']) expect(refused(...sheet, '--link', link)).toMatch(/--link must be an address/);
    expect(refused(...sheet, '--leave-out', 'trees,places')).toMatch(/not “places”/);
    expect(refused('a.json', '--date', '2026-11-25')).toMatch(/name its file with --handout/);
  });
});
