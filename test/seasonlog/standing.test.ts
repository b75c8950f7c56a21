import { describe, expect, it } from 'vitest';
import pear from '../../sims/examples/red-pear.json';
import { programmeSchema, type Programme } from '../../src/model/programme.ts';
import { addBatch, newTree, noteCount, noteSeason, setFirstFruit, setStatus } from '../../src/seasonlog/edits.ts';
import { earliestYears, fruitedIn, kindOfBatch, latestCount, showedIn, standingIn, standingToday } from '../../src/seasonlog/standing.ts';

const programme = programmeSchema.parse(pear);
const wide = { name: 'Wide', year: 2027, seed: { tree: 'old-hedgerow' }, pollen: { tree: 'mill-quince' } };
const withLog = (log: Programme['log']): Programme => ({ ...programme, log });
const start = addBatch({ batches: [] }, wide).log;
const first = (log: Programme['log']) => log.batches[0]!;

describe('what stands today', () => {
  it('is nothing while nothing is noted', () => {
    expect(standingToday(withLog({ batches: [] }))).toEqual({ batches: 0, flowers: null, standing: 0, fruited: 0, mayBearFrom: null, shown: null });
  });

  it('adds flowers over batches, clusters times what is in one, and takes the latest count of a stage', () => {
    let { log } = addBatch(start, { ...wide, name: 'Second' });
    log = noteCount(log, 'wide', { stage: 'flowers', count: 400, when: '2027-05-02' });
    log = noteCount(log, 'wide', { stage: 'flowers', count: 200, when: '2027-04-30' });
    log = noteCount(log, 'second', { stage: 'flowers', count: 4, unit: { name: 'cluster', flowers: 3 } });
    expect(latestCount(first(log), 'flowers')?.place).toBe(0);
    expect(standingToday(withLog(log))).toMatchObject({ batches: 2, flowers: 412 });
  });

  it('counts trees where they are listed, whatever the counts say; a lost label stands, a culled tree does not', () => {
    let log = noteCount(start, 'wide', { stage: 'alive', count: 9 });
    expect(standingIn(first(log))).toBe(9);
    log = addBatch(
      { batches: [] },
      wide,
      ['1', '2', '3', '4'].map((tag) => newTree(tag)),
    ).log;
    log = setStatus(setStatus(setStatus(log, 'wide', 0, 'labelLost'), 'wide', 1, 'culled'), 'wide', 2, 'dead');
    expect(standingIn(first(log))).toBe(2);
    expect(standingIn(first(start))).toBeNull();
  });

  it('says when the oldest may bear: up the spring after the bloom, then the fewest years of its kind', () => {
    // Pear × quince of the example: earliest at 4 years, so 2027 + 1 + 4. Two kinds: (2·6 + 3)/3 = 5 years.
    const { log } = addBatch({ batches: [] }, wide, [newTree('1')]);
    expect(kindOfBatch(programme, first(log))).toBe('pear-quince');
    expect(standingToday(withLog(log)).mayBearFrom).toBe(2032);
    const between = programme.kinds.map((kind) =>
      kind.id === 'pear-quince' ? { ...kind, firstFruit: { between: { seed: 'pear', pollen: 'quince' } } } : kind,
    );
    expect(earliestYears({ kinds: between }, 'pear-quince')).toBe(5);
    // One that bears waits for nothing.
    expect(standingToday(withLog(setFirstFruit(log, 'wide', 0, 2033))).mayBearFrom).toBeNull();
  });

  it('tells who has borne and who has shown the trait, in any season', () => {
    let { log } = addBatch(
      { batches: [] },
      wide,
      ['1', '2', '3'].map((tag) => newTree(tag)),
    );
    log = setFirstFruit(log, 'wide', 0, 2033);
    log = noteSeason(log, 'wide', 0, { year: 2033, seen: { 'red-flesh': { showed: 0, cut: 5 } }, values: {} });
    log = noteSeason(log, 'wide', 0, { year: 2034, seen: { 'red-flesh': { showed: 1, cut: 5 } }, values: {} });
    log = noteSeason(log, 'wide', 1, { year: 2034, seen: { 'red-flesh': { showed: 0, cut: 2 } }, values: {} });
    expect(fruitedIn(first(log))).toBe(1);
    expect(showedIn(first(log), 'red-flesh')).toEqual({ judged: 2, showed: 1 });
    expect(standingToday(withLog(log)).shown).toEqual({ trait: 'red-flesh', name: 'red flesh', showed: 1, judged: 2 });
    expect(showedIn(first(start), 'red-flesh')).toBeNull();
  });
});
