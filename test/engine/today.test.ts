import { describe, expect, it } from 'vitest';
import { Simulator } from '../../src/engine/simulate.ts';
import type { Columns } from '../../src/results/columns.ts';
import { count, errorOfMean, expectMean, expectShare, mean } from './agreement.ts';
import { document, generation, kind, measured, neverProven, plans, read, shown, START, tree, type Document } from './programmes.ts';

type LogDocument = NonNullable<Document['log']>;
type BatchDocument = NonNullable<LogDocument['batches']>[number];
type TreeDocument = NonNullable<BatchDocument['trees']>[number];

const batch = (changes: Partial<BatchDocument> = {}): BatchDocument => ({
  id: 'b',
  name: 'batch',
  year: START,
  seed: { tree: 'a' },
  pollen: { tree: 'b' },
  generation: 'g',
  ...changes,
});

/** A share of a column’s runs against an exact chance. */
const agrees = (column: Int32Array, test: (value: number) => boolean, exact: number) => expectShare(count(column, test), column.length, exact);

const simulate = (input: Document, runs: number): Columns => new Simulator(read(input)).runs([0], 0, runs)[0]!;
const from = (year: number, input: Document, ...batches: BatchDocument[]): Document => ({ ...input, log: { batches, forecastFrom: year } });

/** Weibull of docs/model.md §8 through “half by 4” and “nine in ten by 6”, earliest 3: x = 2 + Weibull. Own derivation. */
const shape = Math.log(Math.log(10) / Math.log(2)) / Math.log(4 / 2);
const notYet = (age: number) => (age <= 2 ? 1 : Math.exp(-Math.log(2) * ((age - 2) / 2) ** shape));
const waiting = kind({ firstFruit: { earliest: 3, half: 4, ninety: 6 } });

describe('a forecast from what stands', () => {
  it('with nothing noted yet, from the first spring, is the forecast itself, byte for byte', () => {
    const input = document({
      plans: plans([generation('g', 6)]),
      trees: [tree('a', { genes: { r: { frequency: 0.5 } }, yearlyLoss: 0.05 }), tree('b', { genes: { r: { frequency: 0.5 } } })],
      kinds: [waiting],
      weather: { frostChance: 0.2 },
      gardens: [{ id: 'home', name: 'home', yearlyLoss: 0.02 }],
    });
    const [before, after] = [simulate(input, 200), simulate(from(START, input), 200)];
    expect(after.ints).toEqual(before.ints);
    expect(after.amounts).toEqual(before.amounts);
    expect(after.byYear).toEqual(before.byYear);
  });

  it('seedlings of an age that have not borne come into bearing by the hazard of those that wait: closed form', () => {
    // Up in 2001, counted and not bearing at age 4 in 2005; the first of five bears by age 5.
    const input = document({ plans: plans([generation('g', 5, { judge: 1 })]), goal: neverProven(), kinds: [waiting] });
    const counts: BatchDocument['counts'] = [
      { stage: 'cameUp', count: 5, when: '2001' },
      { stage: 'alive', count: 5, when: '2005' },
    ];
    const columns = simulate(from(2006, input, batch({ counts })), 4000);
    const stay = notYet(5) / notYet(4);
    agrees(columns.generation(0, 'firstFruit'), (year) => year === 6, 1 - stay ** 5);
    expect(mean(columns.generation(0, 'seedlings'))).toBe(5);
  });

  it('the longer seedlings have not borne, the more of them never will: Bayes’ rule', () => {
    const input = document({ plans: plans([generation('g', 8)]), goal: neverProven(), kinds: [{ ...waiting, neverFruits: 0.2 }] });
    const columns = simulate(from(2006, input, batch({ counts: [{ stage: 'alive', count: 8, when: '2005' }] })), 2000);
    const never = 0.2 / (0.2 + 0.8 * notYet(4));
    expectMean(columns.generation(0, 'fruiting'), 8 * (1 - never));
  });

  it('agrees with the continuation of simulated futures that stand the same', () => {
    // Six seedlings, first winter 0.4, yearly loss 0.1: four of them planted in 2002, none bearing before age 3. One of them must show.
    const input = document({
      plans: plans([generation('g', 6, { judge: 1 })]),
      trees: [tree('a', { genes: { r: { copies: 1 } } }), tree('b', { genes: { r: { copies: 1 } } })],
      traits: [shown(2, { canShow: 0.7, seasonsShown: 0.6 })],
      kinds: [kind({ firstFruit: { earliest: 3, half: 4, ninety: 6 }, firstYearLoss: 0.4, yearlyLoss: 0.1, plantOutAge: 1, nurseryShare: 0.05 })],
    });
    const all = simulate(input, 6000);
    const alike = Array.from(all.run('planted'), (planted, run) => ({ planted, proven: all.run('yearProven')[run]! })).filter(({ planted }) => planted === 4);
    const today = simulate(
      from(
        2003,
        input,
        batch({
          counts: [
            { stage: 'cameUp', count: 6, when: '2001' },
            { stage: 'alive', count: 4, when: '2002' },
          ],
        }),
      ),
      4000,
    );
    for (const year of [4, 6, 12]) {
      const by = (proven: number) => proven >= 0 && proven <= year;
      const [then, now] = [alike.map(({ proven }) => +by(proven)), Array.from(today.run('yearProven'), (proven) => +by(proven))];
      expect(Math.abs(mean(then) - mean(now))).toBeLessThan(4 * Math.hypot(errorOfMean(then), errorOfMean(now)));
    }
    expect(alike.length).toBeGreaterThan(500);
  });

  const inFruit = (changes: Partial<TreeDocument> = {}): TreeDocument => ({
    tag: '001',
    firstFruit: 2006,
    seasons: [{ year: 2006, seen: { red: { showed: 4, cut: 4 } } }],
    ...changes,
  });

  it('a tree that met the goal in the log is proven in the year in which it did', () => {
    const input = document({ plans: plans([generation('g', 6)]), traits: [shown(2, { falseShow: 0.1 })] });
    const columns = simulate(from(2010, input, batch({ trees: [inFruit()] })), 50);
    expect(new Set(columns.run('yearProven'))).toEqual(new Set([6]));
    expect(new Set(columns.generation(0, 'firstPick'))).toEqual(new Set([6]));
  });

  it('once all are dead, only springs that are left have a chance', () => {
    const dead = batch({ counts: [{ stage: 'cameUp', count: 6, when: '2001' }], trees: [{ tag: '1', status: 'dead', statusSince: 2003 }] });
    const parents = [tree('a', { genes: { r: { copies: 1 } } }), tree('b', { genes: { r: { copies: 1 } } })];
    const of = (springs: number, seedlings: number) =>
      simulate(from(2006, document({ plans: plans([generation('g', seedlings, { springs, flowers: 6 })]), trees: parents }), dead), 2000);
    agrees(of(1, 12).run('yearProven'), (year) => year >= 0, 0);
    // One spring more: six more seedlings, a quarter of them red. Pollinated 2006, up in 2007, judged in 2012.
    agrees(of(2, 12).run('yearProven'), (year) => year === 12, 1 - 0.75 ** 6);
    // As many seedlings as wanted were raised before they died.
    agrees(of(2, 6).run('yearProven'), (year) => year >= 0, 0);
  });

  it('what a tree showed tells its genes, by Bayes’ rule', () => {
    const input = document({
      plans: plans([generation('g', 6)]),
      traits: [shown(2, { seasonsShown: 0.6, falseShow: 0.1 })],
      trees: [tree('a', { genes: { r: { copies: 1 } } }), tree('b', { genes: { r: { copies: 1 } } })],
    });
    const columns = simulate(from(2010, input, batch({ trees: [inFruit()] })), 3000);
    agrees(columns.run('trulyGood'), (good) => good === 1, (0.25 * 0.6) / (0.25 * 0.6 + 0.75 * 0.1));
  });

  it.each([
    { showed: 3, share: 0.5, why: 'not all showed, so it has one copy' },
    // One copy or two at frequency 0.6, against four showing seedlings at ½ each or for sure.
    { showed: 4, share: (0.5 * 0.48 * 0.0625 + 0.36) / (0.48 * 0.0625 + 0.36), why: 'most likely it has two' },
  ])('what its seedlings showed tells the genes of a founding tree: $why', ({ showed, share }) => {
    // The other parent carries none, so half of the seedlings of one copy show, all of two.
    const input = document({
      plans: plans([generation('g', 8, { springs: 2, flowers: 4, judge: 1 })]),
      goal: neverProven(),
      traits: [shown(1)],
      trees: [tree('a', { genes: { r: { frequency: 0.6 } } }), tree('b', { genes: { r: { copies: 0 } } })],
    });
    const trees = ['1', '2', '3', '4'].map((tag): TreeDocument =>
      inFruit({ tag, seasons: [{ year: 2006, seen: { red: { showed: Number(tag) > showed ? 0 : 5, cut: 5 } } }] }),
    );
    const columns = simulate(from(2007, input, batch({ counts: [{ stage: 'cameUp', count: 4, when: '2001' }], trees })), 1000);
    // Four seedlings are still wanted, and come of the next spring.
    expectMean(columns.generation(0, 'showing'), showed + 4 * share);
  });

  it('what was measured is regressed on the genes: within-family variance against the season’s', () => {
    // Heritability ½, no lasting effects: V_G = ½, within a family close to half of it (Falconer & Mackay 1996, ch. 9), noise ½.
    const input = document({
      plans: plans([generation('g', 6)]),
      traits: [measured({ heritability: 0.5, repeatability: 0.5 })],
      genes: [],
      goal: { conditions: [{ type: 'measured', trait: 'size', atLeast: 1 }], crops: 1 },
      trees: [tree('a', { values: { size: 0 } }), tree('b', { values: { size: 0 } })],
    });
    const columns = simulate(from(2010, input, batch({ trees: [{ tag: '1', firstFruit: 2006, seasons: [{ year: 2006, values: { size: 1.2 } }] }] })), 1500);
    // 32 favourable copies placed at random over 64 places: a locus is heterozygous with chance 2·(32/64)·(32/63).
    const within = 0.5 * 2 * 0.5 * (32 / 63);
    expectMean(columns.shortfall(0), 1.2 * (1 - within / (within + 0.5)));
  });
});
