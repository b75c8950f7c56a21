import { describe, expect, it } from 'vitest';
import { readArguments } from '../../sims/run/arguments.ts';
import { learnedDocument, learnedJson, learnedReport } from '../../sims/run/learn.ts';
import { tenSeasons, withLog } from '../seasonlog/orchard.ts';

describe('the runner, asked what the season log teaches', () => {
  const document = learnedDocument(tenSeasons());

  it('writes every rate, what was left out, and the inheritance, for programs to read', () => {
    const read: unknown = JSON.parse(learnedJson(document));
    // Nothing is lost on the way: no function, no NaN and no undefined stands in it.
    expect(read).toEqual(JSON.parse(JSON.stringify(document)));
    expect(learnedJson(document)).not.toContain('null,\n      "after"');
    expect(read).toMatchObject({ format: 'orchard-odds learned', version: 1, title: 'Check' });
    expect(document.rates.map(({ id }) => id)).toContain('crosses/0/set');
    expect(learnedJson(learnedDocument(tenSeasons()))).toBe(learnedJson(document));
  });

  it('says it in the words of the page', () => {
    const text = learnedReport(document);
    expect(text).toContain('  pear × pear, Fruit set\n    the programme says 22 %; with your counts 18 % (8 times in 10 between 13 % and 23 %)\n');
    expect(text).toContain('    73 of 610, counted 5 times, my counts 2027–2031\n');
    expect(text).toContain('  wrong: does not add up (set: 32 of 20)\n');
    expect(text).toMatch(/Cannot tell yet[:,]/);
    expect(text).toMatch(/carries it \d times in 10/);
    expect(text).not.toMatch(/NaN|undefined|null|Infinity/);
    expect(text).not.toMatch(/probabilit|posterior|prior\b|likelihood|credible|significan|penetrance|half-life/i);
  });

  it('says so where there is no log', () => {
    expect(learnedReport(learnedDocument(withLog([])))).toContain('The log holds no counts that a rate can be learned from.');
  });

  it('is a way of its own on the command line', () => {
    expect(readArguments(['a.json', '--learn', '--format', 'json'])).toMatchObject({ kind: 'run', options: { learn: true, format: 'json' } });
    for (const more of [
      ['--ask', 'grafting'],
      ['--format', 'csv'],
      ['--handout', 'b.html'],
    ])
      expect(readArguments(['a.json', '--learn', ...more]).kind, more.join(' ')).toBe('refused');
  });
});
