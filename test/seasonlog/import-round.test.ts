import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import example from '../../sims/examples/red-pear-ten-seasons.json';
import { COUNTED, logSchema, type Log } from '../../src/model/log.ts';
import { programmeSchema, type Programme } from '../../src/model/programme.ts';
import { batchesCsv, treesCsv } from '../../src/seasonlog/export.ts';
import { importOf } from '../../src/seasonlog/import/import.ts';
import { bare } from './orchard.ts';
import { read } from '../engine/programmes.ts';

const orchard = (): Programme => read(bare());
const nameOf = () => 'a batch';

/** Both tables of a log, read one after the other into an empty one. */
function around(log: Log, programme: Programme): Log {
  const empty: Log = { batches: [] };
  const batches = importOf(batchesCsv(log, programme), programme, {}, nameOf, empty).additions.log;
  return importOf(treesCsv(log, programme), programme, {}, nameOf, batches).additions.log;
}

/** Text that a spreadsheet would run, defused text, labels, crosses, quotes, line breaks, and anything else. */
const nasty = fc.constantFrom(
  '=1+1',
  "'=1+1",
  "''=x",
  '+1',
  '-2',
  '@a',
  '235,2',
  '1106.1',
  '001',
  'a;b',
  'a,"b"',
  'Old × New',
  '“x”',
  '2019-8-1',
  "O'Neal",
  'unknown',
  'OP',
  'hedgerow',
  'x [tag]',
  '#N/A',
  'TRUE',
  '1e5',
);
const words = (most: number) =>
  fc
    .oneof(nasty, fc.string({ unit: 'grapheme', minLength: 1, maxLength: 14 }))
    .map((text) => text.trim().slice(0, most).trim())
    .filter((text) => text !== '' && !/[\u200b\ufeff\u2060]/.test(text));
const notes = fc.option(
  fc.oneof(
    nasty,
    fc.string({ unit: 'grapheme', minLength: 1, maxLength: 30 }),
    fc.constantFrom('two\nlines', 'two\r\nlines', ' spaces ', 'tab\there', '"', '\t=1'),
  ),
  { nil: undefined },
);
const noted = <T extends object>(value: T, note: string | undefined) => (note === undefined ? value : { ...value, note });
const maybe = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: undefined });
const when = fc.constantFrom('2031', '2031-05', '2031-05-14', '2032-02-29');
const count = fc
  .record({
    stage: fc.constantFrom(...COUNTED),
    count: fc.nat(10_000),
    unit: maybe(fc.record({ name: fc.constantFrom('cluster', 'bag', 'bur', 'branch'), flowers: fc.integer({ min: 1, max: 1000 }) })),
    when: maybe(when),
    note: notes,
  })
  .map(({ note, ...rest }) => noted(rest, note));
const event = fc
  .record({ what: fc.constantFrom('frost', 'drought', 'waterlogging', 'rodents', 'disease', 'moved', 'other'), when, lost: fc.nat(500), note: notes })
  .map(({ note, ...rest }) => noted(rest, note));
const season = (year: number) =>
  fc
    .record({
      showed: maybe(fc.nat(9)),
      value: maybe(
        fc.oneof(
          fc.double({ min: -1e6, max: 1e6, noNaN: true }).map((value) => value + 0),
          fc.constantFrom(6.125, 1.5, -1.234, 1500, 1e-7),
        ),
      ),
      note: notes,
    })
    .map(({ showed, value, note }) =>
      noted({ year, seen: showed === undefined ? {} : { red: { showed, cut: 9 } }, values: value === undefined ? {} : { red: value } }, note),
    );
const tree = fc
  .record({
    tag: words(60),
    place: maybe(fc.record({ block: words(20), row: words(20), tree: words(20) })),
    status: fc.constantFrom('alive', 'dead', 'culled', 'labelLost'),
    statusSince: maybe(fc.integer({ min: 1500, max: 3000 })),
    weak: fc.boolean(),
    stock: maybe(fc.constant('stock')),
    firstFruit: maybe(fc.integer({ min: 1900, max: 2100 })),
    lookedUntil: maybe(fc.integer({ min: 1900, max: 2100 })),
    seasons: fc.uniqueArray(fc.integer({ min: 2030, max: 2040 }), { maxLength: 3 }).chain((years) => fc.tuple(...years.map(season))),
    picked: fc.boolean(),
    copies: fc.array(fc.record({ where: words(80), whose: fc.oneof(fc.constant(''), words(80)), number: fc.integer({ min: 1, max: 100 }) }), { maxLength: 2 }),
    note: notes,
  })
  .map(({ note, ...rest }) => noted(rest, note));
const known = fc.oneof(
  fc.constantFrom('hedgerow', 'bell', 'mill').map((id) => ({ tree: id })),
  words(60).map((tag) => ({ tag })),
);
const batch = fc
  .record({
    name: words(80),
    year: fc.integer({ min: 1500, max: 3000 }),
    seed: fc.oneof(fc.constant('unknown'), known),
    pollen: fc.oneof(fc.constantFrom('open', 'self', 'mixed', 'unknown'), known),
    seedKind: maybe(fc.constantFrom('pear', 'quince', 'pear-quince')),
    pollenKind: maybe(fc.constantFrom('pear', 'quince')),
    generation: maybe(fc.constant('one')),
    grafting: maybe(fc.record({ who: fc.constantFrom('weak', 'every', 'some'), month: fc.constantFrom(0.5, 3, 12.25, 240), stock: fc.constant('stock') })),
    apart: fc.boolean(),
    counts: fc.array(count, { maxLength: 5 }),
    events: fc.array(event, { maxLength: 2 }),
    trees: fc.array(tree, { maxLength: 4 }),
    note: notes,
  })
  .map(({ note, ...rest }) => noted(rest, note));
const logs = fc
  .array(batch, { maxLength: 4 })
  .map((batches) => logSchema.parse(JSON.parse(JSON.stringify({ batches: batches.map((each, b) => ({ id: `b${String(b)}`, ...each })) }))));

describe('a log that is written and read again', () => {
  it('is the same, whatever stands in it', () => {
    const programme = orchard();
    fc.assert(
      fc.property(logs, (log) => {
        expect(around(log, programme)).toEqual(log);
      }),
      { numRuns: 400, seed: 20261125 },
    );
  }, 60_000);

  it('is the same for ten invented seasons', () => {
    const programme = programmeSchema.parse(example);
    expect(programme.log.batches.length).toBeGreaterThan(5);
    expect(around(programme.log, programme)).toEqual(programme.log);
    // Into the log it came from it adds nothing.
    const again = importOf(treesCsv(programme.log, programme), programme, {}, nameOf);
    expect(again.additions.log).toBe(programme.log);
    expect(again.additions.rowsThere).toBe(again.table.rows.length);
  });

  it('never hands a spreadsheet text to run', () => {
    const programme = orchard();
    fc.assert(
      fc.property(logs, (log) => {
        // Cut by a library of others: what each cell of the file begins with.
        for (const text of [batchesCsv(log, programme), treesCsv(log, programme)])
          for (const cell of Papa.parse<string[]>(text.slice(1)).data.flat()) expect(/^[=+@\t\r]|^-(?!\d+(\.\d+)?(e-?\d+)?$)/.test(cell)).toBe(false);
      }),
      { numRuns: 100, seed: 7 },
    );
  });
});
