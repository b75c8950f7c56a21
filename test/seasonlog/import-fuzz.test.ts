import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { COUNTED, logSchema } from '../../src/model/log.ts';
import { batchesCsv, treesCsv } from '../../src/seasonlog/export.ts';
import { importOf, type ImportChoices } from '../../src/seasonlog/import/import.ts';
import { plainCell } from '../../src/seasonlog/import/read-tree.ts';
import { PLAIN_ROLES, type Role } from '../../src/seasonlog/import/roles.ts';
import { batchName, crossWords } from '../../src/text/log.ts';
import { orchardNamed } from './import-orchard.ts';

/* Any cells under any roles: nothing breaks, and the same table a second time adds nothing. */

const programme = orchardNamed();
const look = (text: string, choices: ImportChoices, log = programme.log) =>
  importOf(text, programme, choices, (parents, year) => batchName(crossWords(parents, programme), year), log);

const cell = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.constantFrom(
      '',
      ' ',
      '-',
      '?',
      '12',
      '1,500',
      '1.500',
      '~140',
      '10–12',
      '>12',
      '3 of 6',
      '0',
      '1e3',
      '12 %',
      '½',
      '2004/05',
      '3/4/2019',
      '13/4',
      '1975----',
    ),
  },
  {
    weight: 2,
    arbitrary: fc.constantFrom(
      'Old Hedgerow',
      'K80-2',
      'A × B',
      '(A x B) x OP',
      'open',
      'dead 2019',
      'missing',
      'yes',
      'no',
      'frost',
      'Total',
      'stock',
      'B-2-7',
      'pear',
    ),
  },
  {
    weight: 1,
    arbitrary: fc.constantFrom(
      '=1+1',
      "'=x",
      '235,2',
      '001',
      'a "b" c',
      'two\nlines',
      'x'.repeat(90),
      '\ud83c\udf50',
      'a;b',
      '\u00a0x\u00a0',
      '\u0000',
      '|',
      '---',
    ),
  },
  { weight: 1, arbitrary: fc.string({ unit: 'grapheme', maxLength: 8 }) },
);
const roles: readonly Role[] = [
  ...PLAIN_ROLES,
  ...COUNTED.flatMap((stage): Role[] => [`count:${stage}`, `countWhen:${stage}`, `countNote:${stage}`]),
  'seen:red',
  'value:brix',
  'value:nothing-of-the-sort',
];
const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
const tables = fc.integer({ min: 1, max: 7 }).chain((width) =>
  fc.record({
    separator: fc.constantFrom(',', ';', '\t'),
    roles: fc.array(fc.option(fc.constantFrom(...roles), { nil: undefined }), { minLength: width, maxLength: width }),
    rows: fc.array(fc.array(cell, { minLength: 1, maxLength: width + 1 }), { minLength: 1, maxLength: 7 }),
  }),
);

describe('any table, whatever its columns are taken for', () => {
  it('gives a log that can be kept, and the same table again adds nothing', () => {
    fc.assert(
      fc.property(tables, ({ separator, roles: chosen, rows }) => {
        const text = [chosen.map((_, c) => `h${String(c)}`), ...rows].map((row) => row.map(quoted).join(separator)).join('\n');
        const choices: ImportChoices = { headed: true, columns: Object.fromEntries(chosen.flatMap((role, c) => (role ? [[c, { role }]] : []))) };
        const { additions, read, columns } = look(text, choices);
        // A cell that gave no value stands in a note as it was written.
        const all = JSON.stringify(additions.log);
        for (const [at, { level, code, raw }] of read.flags) {
          const role = columns[Number(at.split(',')[1])]?.role;
          if (level !== 'read' && code !== 'nothing' && role !== 'leave') expect(all).toContain(JSON.stringify(plainCell(raw)).slice(1, -1));
        }
        expect(logSchema.parse(additions.log)).toEqual(additions.log);
        expect(look(text, choices, additions.log).additions.log).toBe(additions.log);
        // What came in by whatever way goes out and comes back.
        const batches = look(batchesCsv(additions.log, programme), {}, { batches: [] }).additions.log;
        expect(look(treesCsv(additions.log, programme), {}, batches).additions.log).toEqual(additions.log);
      }),
      { numRuns: 150, seed: 20261125 },
    );
  }, 60_000);
});
