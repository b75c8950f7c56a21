import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import pear from '../../sims/examples/red-pear.json';
import { COUNTED, type Log, type LoggedTree } from '../../src/model/log.ts';
import { programmeSchema } from '../../src/model/programme.ts';
import { parseProgramme } from '../../src/model/read.ts';
import {
  addBatch,
  addCopy,
  addTrees,
  hasRoomFor,
  lookedInVain,
  MOST,
  newTree,
  nextTag,
  noteCount,
  noteEvent,
  noteSeason,
  rowOfTrees,
  setFirstFruit,
  setGrafting,
  setPicked,
  setStatus,
  tagAfter,
  takeOutCopy,
  takeOutCount,
  takeOutEvent,
  takeOutSeason,
  type NewBatch,
} from '../../src/seasonlog/edits.ts';

const programme = programmeSchema.parse(pear);
const EMPTY: Log = { batches: [] };
const wide: NewBatch = { name: 'First wide cross', year: 2027, seed: { tree: 'old-hedgerow' }, pollen: { tree: 'mill-quince' } };

/** A log with one batch of so many trees. */
function logOf(trees: number): { log: Log; id: string } {
  const { log, id } = addBatch(EMPTY, wide, rowOfTrees({ number: trees, firstTag: '2027-1-1', block: 'B', row: '1', firstPlace: '1' }));
  if (id === null) throw new Error('no room');
  return { log, id };
}
const treesOf = (log: Log): readonly LoggedTree[] => log.batches[0]?.trees ?? [];

describe('edits of the season log', () => {
  it('give every batch an id of its own, whatever it is called', () => {
    const names = ['Wide', 'Wide', 'wide', '…', '×', 'Wide-2', 'Größe'];
    const log = names.reduce((all, name) => addBatch(all, { ...wide, name }).log, EMPTY);
    expect(log.batches.map(({ name }) => name)).toEqual(names);
    expect(new Set(log.batches.map(({ id }) => id)).size).toBe(names.length);
  });

  it('change nothing in place, and share what they do not touch', () => {
    const first = logOf(2);
    const { log } = addBatch(first.log, { ...wide, name: 'Second' });
    const frozen = JSON.stringify(log);
    const next = noteCount(log, first.id, { stage: 'fruits', count: 18 });
    expect(JSON.stringify(log)).toBe(frozen);
    expect(next.batches[0]?.counts).toEqual([{ stage: 'fruits', count: 18 }]);
    expect(next.batches[1]).toBe(log.batches[1]);
    expect(next.batches[0]?.trees).toBe(log.batches[0]?.trees);
  });

  it('leave the log as it is where there is no such batch, tree or room', () => {
    const { log, id } = logOf(1);
    expect(noteCount(log, 'nowhere', { stage: 'fruits', count: 1 })).toBe(log);
    expect(setStatus(log, id, 5, 'dead')).toBe(log);
    expect(takeOutCount(log, id, 0)).toBe(log);
    const full = Array.from({ length: MOST.counts }).reduce<Log>((all) => noteCount(all, id, { stage: 'alive', count: 1 }), log);
    expect(noteCount(full, id, { stage: 'alive', count: 1 })).toBe(full);
    const many = addTrees(log, id, rowOfTrees({ number: MOST.trees, firstTag: '1', block: '', row: '', firstPlace: '' }));
    expect(treesOf(many)).toHaveLength(MOST.trees);
    expect(hasRoomFor(many, id, 1)).toBe(false);
    expect(addTrees(many, id, [newTree('x')])).toBe(many);
  });

  it('never take a tree away: a dead one stays, with its year, and lives again if that was a mistake', () => {
    const { log, id } = logOf(3);
    const dead = setStatus(log, id, 1, 'dead', 2031);
    expect(treesOf(dead).map(({ status, statusSince }) => [status, statusSince])).toEqual([
      ['alive', undefined],
      ['dead', 2031],
      ['alive', undefined],
    ]);
    expect(setStatus(dead, id, 1, 'alive', 2032)).toEqual(log);
  });

  it('say of all that stand and have not borne that they were looked at, and of no other', () => {
    const { log: five, id } = logOf(5);
    const log = setFirstFruit(setStatus(setStatus(five, id, 0, 'dead', 2030), id, 1, 'labelLost', 2030), id, 2, 2034);
    const looked = lookedInVain(log, id, 2036);
    expect(treesOf(looked).map(({ lookedUntil }) => lookedUntil)).toEqual([undefined, 2036, undefined, 2036, 2036]);
    expect(lookedInVain(looked, id, 2036)).toBe(looked);
    expect(lookedInVain(looked, id, 2035)).toBe(looked);
  });

  it('join what was seen in one season, and keep seasons in order', () => {
    const { log, id } = logOf(1);
    const once = noteSeason(log, id, 0, { year: 2035, seen: { 'red-flesh': { showed: 1, cut: 5 } }, values: {} });
    const twice = noteSeason(once, id, 0, { year: 2035, seen: {}, values: { 'keeping-weeks': 9 } });
    const before = noteSeason(twice, id, 0, { year: 2034, seen: { 'red-flesh': { showed: 0, cut: 4 } }, values: {} });
    expect(treesOf(before)[0]?.seasons).toEqual([
      { year: 2034, seen: { 'red-flesh': { showed: 0, cut: 4 } }, values: {} },
      { year: 2035, seen: { 'red-flesh': { showed: 1, cut: 5 } }, values: { 'keeping-weeks': 9 } },
    ]);
    expect(treesOf(takeOutSeason(before, id, 0, 2034))[0]?.seasons.map(({ year }) => year)).toEqual([2035]);
  });

  it.each([
    ['2031-1-1', 11, '2031-1-12'],
    ['001', 9, '010'],
    ['999', 1, '1000'],
    ['235,2', 1, '235,3'],
    ['A7b', 3, 'A10b'],
    ['Hedge', 1, 'Hedge-2'],
    ['Hedge', 0, 'Hedge'],
  ])('count the tag %s on by %i to %s', (first, by, tag) => expect(tagAfter(first, by)).toBe(tag));

  it('say the tag that would follow, and write a row as it was told', () => {
    const { log } = logOf(12);
    expect(treesOf(log).at(-1)).toMatchObject({ tag: '2027-1-12', place: { block: 'B', row: '1', tree: '12' } });
    expect(log.batches.map(nextTag)).toEqual(['2027-1-13']);
    expect(rowOfTrees({ number: 1, firstTag: '7', block: '', row: '', firstPlace: '' })).toEqual([newTree('7')]);
  });
});

/** One edit, drawn with whatever batch and place it falls on. */
type Edit = (log: Log) => Log;

const place = fc.nat(6);
const when = fc.constantFrom('2031', '2031-05', '2031-05-14');
const onBatch = fc.nat(4).map((at) => (log: Log) => log.batches[at % Math.max(1, log.batches.length)]?.id ?? 'none');
const edit: fc.Arbitrary<Edit> = onBatch.chain((id) =>
  fc.oneof<fc.Arbitrary<Edit>[]>(
    fc
      .record({ name: fc.constantFrom('Wide', 'Wide', '×', 'a'.repeat(80)), year: fc.integer({ min: 1500, max: 3000 }) })
      .map((more) => (log) => addBatch(log, { ...wide, ...more, pollen: 'open' }).log),
    fc
      .record({ name: fc.string({ minLength: 1, maxLength: 40 }).filter((text) => text.trim() !== '') })
      .map((more) => (log) => addBatch(log, { ...wide, ...more, seed: { tag: '2027-1-2' }, pollen: 'unknown', seedKind: 'pear' }, [newTree('1')]).log),
    fc.record({ stage: fc.constantFrom(...COUNTED), count: fc.integer({ min: 0, max: 1e7 }), when }).map((count) => (log) => noteCount(log, id(log), count)),
    place.map((at) => (log) => takeOutCount(log, id(log), at)),
    fc.record({ what: fc.constantFrom('frost' as const, 'other' as const), when, lost: fc.nat(500) }).map((event) => (log) => noteEvent(log, id(log), event)),
    place.map((at) => (log) => takeOutEvent(log, id(log), at)),
    fc.constantFrom({ who: 'weak' as const, month: 3, stock: 'field-pear' }, undefined).map((grafting) => (log) => setGrafting(log, id(log), grafting)),
    fc
      .record({ number: fc.integer({ min: 1, max: 8 }), firstTag: fc.constantFrom('2031-1-1', '001', 'Q', '9'.repeat(50)), block: fc.constantFrom('', 'B2') })
      .map((row) => (log) => addTrees(log, id(log), rowOfTrees({ ...row, row: '', firstPlace: row.block === '' ? '' : '1' }))),
    fc
      .tuple(
        place,
        fc.constantFrom('alive' as const, 'dead' as const, 'culled' as const, 'labelLost' as const),
        fc.option(fc.constant(2033), { nil: undefined }),
      )
      .map(
        ([at, status, since]) =>
          (log) =>
            setStatus(log, id(log), at, status, since),
      ),
    fc.tuple(place, fc.constantFrom(2034, undefined)).map(
      ([at, year]) =>
        (log) =>
          setFirstFruit(log, id(log), at, year),
    ),
    fc.tuple(place, fc.integer({ min: 2030, max: 2040 }), fc.nat(9), fc.integer({ min: 1, max: 9 })).map(
      ([at, year, showed, cut]) =>
        (log) =>
          noteSeason(log, id(log), at, { year, seen: { 'red-flesh': { showed, cut } }, values: { 'keeping-weeks': 7.5 } }),
    ),
    fc.tuple(place, fc.integer({ min: 2030, max: 2040 })).map(
      ([at, year]) =>
        (log) =>
          takeOutSeason(log, id(log), at, year),
    ),
    fc.tuple(place, fc.boolean()).map(
      ([at, picked]) =>
        (log) =>
          setPicked(log, id(log), at, picked),
    ),
    fc.integer({ min: 2030, max: 2040 }).map((year) => (log) => lookedInVain(log, id(log), year)),
    place.map((at) => (log) => addCopy(log, id(log), at, { where: 'the gate', whose: '', number: 1 })),
    fc.tuple(place, place).map(
      ([at, copy]) =>
        (log) =>
          takeOutCopy(log, id(log), at, copy),
    ),
  ),
);

describe('any sequence of edits', () => {
  it('gives a document that reads again as it was, with ids that do not clash and no tree gone', () => {
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 30 }), (edits) => {
        let log = EMPTY;
        for (const each of edits) {
          const tags = log.batches.flatMap(({ id, trees }) => trees.map(({ tag }, at) => `${id} ${String(at)} ${tag}`));
          log = each(log);
          const after = new Set(log.batches.flatMap(({ id, trees }) => trees.map(({ tag }, at) => `${id} ${String(at)} ${tag}`)));
          expect(tags.filter((tag) => !after.has(tag))).toEqual([]);
        }
        const reading = parseProgramme(JSON.parse(JSON.stringify({ ...programme, log })));
        if (!reading.ok) throw new Error(reading.problems.map(({ path, message }) => `${path.join('/')}: ${message}`).join('\n'));
        // Names and tags are trimmed by the document, nothing else is touched.
        expect(reading.programme.log.batches.map((batch) => ({ ...batch, name: '' }))).toEqual(log.batches.map((batch) => ({ ...batch, name: '' })));
        expect(new Set(log.batches.map(({ id }) => id)).size).toBe(log.batches.length);
      }),
      { numRuns: 150, seed: 7 },
    );
  });
});
