import { describe, expect, it } from 'vitest';
import { planKeys } from '../../src/state/plan-keys.ts';
import { sentence } from '../../src/model/problem.ts';
import { parseProgramme } from '../../src/model/read.ts';
import { document, generation, plans } from '../engine/programmes.ts';

type Entry = Readonly<Record<string, unknown>>;
const here = document({ plans: plans([generation('f1', 5)]) });
const base = { id: 'b1', name: 'First wide cross', year: 2003, seed: { tree: 'a' }, pollen: { tree: 'b' } };
const withLog = (...batches: readonly Entry[]) => ({ ...here, log: { batches } }) as unknown;
const said = (...batches: readonly Entry[]) => {
  const programme = withLog(...batches);
  const reading = parseProgramme(programme);
  const problems = reading.ok ? reading.notes : reading.problems;
  return problems.map((problem) => ({ stops: problem.stops, words: sentence(programme, problem) }));
};
const counts = (...list: readonly (readonly [string, number, Entry?])[]) => list.map(([stage, count, more]) => ({ stage, count, ...more }));

describe('the season log', () => {
  it('is empty in a programme that has none, and changes no future', () => {
    const reading = parseProgramme(here);
    const logged = parseProgramme(withLog({ ...base, counts: counts(['flowers', 20]) }));
    if (!reading.ok || !logged.ok) throw new Error('cannot be read');
    expect(reading.programme.log).toEqual({ batches: [] });
    expect(planKeys(logged.programme)).toEqual(planKeys(reading.programme));
  });

  it('keeps what was entered, letter for letter', () => {
    const tags = ['235,2', '1106.1', '001', '2019-8-1', 'Q×3 (2)'];
    const reading = parseProgramme(withLog({ ...base, trees: tags.map((tag) => ({ tag })), counts: counts(['flowers', 240, { when: '2003-05' }]) }));
    if (!reading.ok) throw new Error('cannot be read');
    expect(reading.programme.log.batches[0]?.trees.map(({ tag }) => tag)).toEqual(tags);
    expect(reading.programme.log.batches[0]?.counts[0]).toMatchObject({ count: 240, when: '2003-05' });
  });

  it('flags numbers that do not add up, and goes on', () => {
    expect(said({ ...base, counts: counts(['flowers', 20], ['fruits', 24]) })).toEqual([
      { stops: false, words: expect.stringMatching(/24 fruits of 20 flowers does not add up\. It is kept as it was entered/) as unknown },
    ]);
    expect(said({ ...base, counts: counts(['flowers', 8, { unit: { name: 'cluster', flowers: 5 } }], ['fruits', 24]) })).toEqual([]);
    expect(said({ ...base, counts: counts(['cameUp', 10], ['weak', 6], ['grafted', 6], ['took', 7]) })).toMatchObject([{ stops: false }]);
  });

  it.each<[string, Entry, RegExp]>([
    ['a count before the bloom', { counts: counts(['flowers', 5, { when: '2002-05-14' }]) }, /when: is before the bloom of 2003/],
    ['fruit before it was sown', { trees: [{ tag: '1', firstFruit: 2003 }] }, /is not after the bloom of 2003/],
    ['a tag on two trees', { trees: [{ tag: '7' }, { tag: '7' }] }, /“7” is written on two trees/],
    [
      'more fruits that showed it than were cut',
      { trees: [{ tag: '1', seasons: [{ year: 2009, seen: { red: { showed: 4, cut: 3 } } }] }] },
      /4 fruits .* of 3 cut/,
    ],
    ['a kind that is not said', { seed: { tag: '12' } }, /seedKind: is not said, so its counts teach no rate/],
  ])('flags %s, and goes on', (_, more, words) => {
    expect(said({ ...base, ...more })).toEqual([{ stops: false, words: expect.stringMatching(words) as unknown }]);
  });

  it.each<[string, Entry, RegExp]>([
    ['a tree', { seed: { tree: 'nowhere' } }, /there is no “nowhere” among the trees/],
    ['a trait', { trees: [{ tag: '1', seasons: [{ year: 2009, values: { nothing: 3 } }] }] }, /no “nothing” among the traits/],
    ['a stock', { grafting: { who: 'weak', month: 3, stock: 'none' } }, /no “none” among the stocks/],
    ['a generation', { generation: 'zz' }, /no generation “zz”/],
  ])('stops at a reference to %s that is not there', (_, more, words) => {
    expect(said({ ...base, ...more })).toEqual([{ stops: true, words: expect.stringMatching(words) as unknown }]);
  });

  it('refuses a day that is none, in words', () => {
    expect(said({ ...base, counts: counts(['flowers', 5, { when: '14.5.2003' }]) })[0]?.words).toMatch(/when: must be a year, a month as 2031-05/);
  });
});
