import { describe, expect, it } from 'vitest';
import { readArguments } from '../../sims/run/arguments.ts';
import { carriersDocument, carriersJson, carriersReport } from '../../sims/run/carriers.ts';
import { programmeSchema } from '../../src/model/programme.ts';
import cherry from '../../sims/examples/cherry-selfing.json';
import kaki from '../../sims/examples/kaki-sweet.json';

describe('the runner, asked which trees may hide a trait', () => {
  const document = carriersDocument(programmeSchema.parse(kaki));

  it('writes every suspect with its test cross, for programs to read', () => {
    const read: unknown = JSON.parse(carriersJson(document));
    expect(read).toEqual(JSON.parse(JSON.stringify(document)));
    expect(document).toMatchObject({ format: 'orchard-odds carriers', version: 1, traits: [{ trait: 'sweet', oneIsEnough: 'no', leftOut: [] }] });
    const [sweet] = document.traits;
    expect(sweet!.trees.map(({ tree }) => tree)).toEqual(['plum-moon', 'brick-barn', 'tall-sexton']);
    for (const { passesOn, leftIfNone, seedlings } of sweet!.trees) {
      expect(leftIfNone).toBeLessThan(passesOn);
      expect(seedlings).toBeGreaterThan(0);
    }
  });

  it('says it in the words of the page', () => {
    const text = carriersReport(document);
    expect(text).toContain(
      'Trees that may hide sweet while hard\n  Plum Moon: can pass it on 9 in 10. Not shown in 8 seasons. Test cross: 3 of 14 seedlings showed it\n',
    );
    expect(text).toMatch(/Cross it with Quiet Lantern or Saltmarsh Gold: \d+ seedlings settle it 9 times in 10/);
    expect(text).not.toMatch(/NaN|undefined|null|Infinity|\u00a0/);
    expect(carriersReport(carriersDocument(programmeSchema.parse(cherry)))).toContain('No tree here may hide a trait');
  });

  it('is a way of its own on the command line', () => {
    expect(readArguments(['a.json', '--carriers', '--format', 'json'])).toMatchObject({ kind: 'run', options: { carriers: true, format: 'json' } });
    for (const more of [['--ask', 'grafting'], ['--format', 'csv'], ['--handout', 'b.html'], ['--learn']])
      expect(readArguments(['a.json', '--carriers', ...more]).kind, more.join(' ')).toBe('refused');
  });
});
