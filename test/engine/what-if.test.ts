import { describe, expect, it } from 'vitest';
import { inlineFutures } from '../../src/decisions/inline.ts';
import { poolFutures } from '../../src/decisions/pool.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import { NOTHING, type WhatIf } from '../../src/engine/what-if.ts';
import type { Programme } from '../../src/model/programme.ts';
import type { Columns } from '../../src/results/columns.ts';
import { inlineThread } from '../../src/workers/inline.ts';
import { poolRunner } from '../../src/workers/runner.ts';
import { bytesOf } from '../contract/bytes.ts';
import { redPear } from '../decisions/samples.ts';
import { count, expectShare } from './agreement.ts';
import { document, generation, kind, picksOf, plans, read, START, stock, tree, cross, type Document } from './programmes.ts';

const RUNS = 60;
const run = (programme: Programme, whatIf?: WhatIf, runs = RUNS): Columns => new Simulator(programme, whatIf).runs([0], 0, runs)[0]!;
const years = (columns: Columns) => Array.from(columns.run('yearProven'));
const home = [{ id: 'home', name: 'home', yearlyLoss: 0 }];
const two = [...home, { id: 'hill', name: 'hill', yearlyLoss: 0 }];

/** Everything succeeds: pollinated in the first spring, up in the next, in fruit in season 5. */
const sure = (changes: Partial<Document> = {}) => read(document({ plans: plans([generation('g', 6)]), ...withRed, ...changes }));
const withRed: Partial<Document> = { trees: ['a', 'b'].map((id) => tree(id, { genes: { r: { copies: 2 } } })) };
const PROVEN = years(run(sure()))[0]!;

describe('a what-if that states nothing, or only what never comes', () => {
  const late = redPear.lastYear + 1;
  const withHome = { ...redPear, gardens: home };
  const all = (programme: Programme, whatIf?: WhatIf) => bytesOf(new Simulator(programme, whatIf).runs([0, 1, 2, 3], 0, RUNS));
  const stands = all(redPear);

  it.each<[string, WhatIf]>([
    ['nothing', NOTHING],
    ['a frost after the last year', { frost: { year: late, falls: true } }],
    ['hands after the last year', { hands: { from: late, until: late + 3, times: 2 } }],
    ['hands once what they are', { hands: { from: redPear.startYear, until: late, times: 1 } }],
    ['beginning in the first spring', { begins: redPear.startYear }],
    ['a pair left out after the last year', { leaves: { year: late, generation: 'd1', seed: 'old-hedgerow', pollen: 'mill-quince' } }],
    ['no graft after the last year', { graftless: { year: late, generation: 'd1' } }],
    ['a test of a generation without one', { tests: { from: redPear.startYear + 5, generations: ['d1'] } }],
  ])('%s: the same bytes', (_, whatIf) => {
    expect(all(redPear, whatIf)).toEqual(stands);
  });

  it('land lost after the last year, or before the first: the same bytes', () => {
    for (const year of [late, redPear.startYear]) expect(all(withHome, { land: { year, gardens: ['home'] } })).toEqual(stands);
    expect(all(withHome, { land: { year: redPear.startYear + 9, gardens: ['home'] } })).not.toEqual(stands);
  });

  it('a leaf test from after the last year: the same bytes as none', () => {
    const test = { gene: 'red', copies: 1, falsePositive: 0.1, falseNegative: 0.1, cull: true };
    const tested: Programme = {
      ...redPear,
      plans: redPear.plans.map((plan) => ({ ...plan, generations: plan.generations.map((entry) => ({ ...entry, test })) })),
    };
    const generations = tested.plans.flatMap((plan) => plan.generations.map(({ id }) => id));
    expect(all(tested, { tests: { from: late, generations } })).toEqual(stands);
    expect(all(tested)).not.toEqual(stands);
  });

  it('an unknown garden, tree or generation is refused', () => {
    expect(() => run(redPear, { land: { year: 2030, gardens: ['nowhere'] } })).toThrow(RangeError);
    expect(() => run(redPear, { leaves: { year: 2027, generation: 'a1', seed: 'nobody', pollen: null } })).toThrow(RangeError);
    expect(() => run(redPear, { graftless: { year: 2027, generation: 'none' } })).toThrow(RangeError);
    expect(() => run(redPear, { tests: { from: 2027, generations: ['none'] } })).toThrow(RangeError);
  });
});

describe('land that is lost', () => {
  it('with everything on it: what is proven before is all, future by future, and the rest is never proven', () => {
    const programme = { ...redPear, gardens: home };
    const [alone] = [new Simulator(programme).runs([3], 0, 300)[0]!];
    for (const year of [2035, 2043, 2050]) {
      const lost = new Simulator(programme, { land: { year, gardens: ['home'] } }).runs([3], 0, 300)[0]!;
      expect(years(lost)).toEqual(years(alone).map((proven) => (proven >= 0 && proven < year - redPear.startYear ? proven : -1)));
    }
  });

  it('with the founding trees elsewhere: the plan begins again in that spring, with all its springs', () => {
    const programme = sure({ gardens: two, trees: ['a', 'b'].map((id) => tree(id, { gardens: ['hill'], genes: { r: { copies: 2 } } })) });
    expect(years(run(programme)).every((year) => year === PROVEN)).toBe(true);
    for (let lost = 1; lost <= PROVEN; lost += 1) {
      const columns = run(programme, { land: { year: START + lost, gardens: ['home'] } }, 5);
      expect(years(columns), `lost in ${String(lost)}`).toEqual(Array.from({ length: 5 }, () => lost + PROVEN));
      expect(Array.from(columns.run('seedlings'))).toEqual([...Array.from({ length: 5 }, () => (lost === 1 ? 6 : 12))]);
    }
    expect(years(run(programme, { land: { year: START + PROVEN + 1, gardens: ['home'] } }))).toEqual(years(run(programme)));
  });

  it('with copies of the picks elsewhere: the next generation goes on from them', () => {
    const backed = (garden: string) =>
      sure({
        gardens: two,
        stocks: [stock()],
        plans: plans([
          generation('one', 4, { backup: { copies: 1, stock: 'stock', garden } }),
          generation('next', 4, { seedParents: picksOf('one'), pollen: picksOf('one'), flowers: 8 }),
        ]),
        goal: { conditions: [{ type: 'shown', trait: 'red', atLeast: 3 }], crops: 3 },
      });
    const lost = (programme: Programme, year: number) => years(run(programme, { land: { year: START + year, gardens: ['home'] } }, 20));
    // Picks have their first crop with their first fruit, and their copies the winter after.
    const picked = run(backed('hill')).generation(0, 'firstPick')[0]!;
    expect(lost(backed('home'), picked + 2)).toEqual(Array.from({ length: 20 }, () => -1));
    for (const year of lost(backed('hill'), picked + 2)) expect(year).toBeGreaterThan(picked);
  });

  it('one garden of two takes only what stands in it', () => {
    const programme = sure({ gardens: two, plans: plans([generation('g', 6, { garden: 'hill' })]) });
    const lost = (garden: string) => years(run(programme, { land: { year: START + 3, gardens: [garden] } }, 5));
    expect(lost('home')).toEqual(Array.from({ length: 5 }, () => PROVEN));
    expect(lost('hill')).toEqual(Array.from({ length: 5 }, () => PROVEN + 3));
  });
});

describe('a frost for sure', () => {
  const frosty = sure({ weather: { frostChance: 0.3, frostTakes: 1 }, plans: plans([generation('g', 6, { springs: 1 })]) });

  it('is one of the two ways a spring can go: each future is one of them, as often as stated', () => {
    const runs = 2000;
    const [stands, falls, spares] = [undefined, true, false].map((is) => run(frosty, is === undefined ? NOTHING : { frost: { year: START, falls: is } }, runs));
    expect(total(falls!, 'fruits')).toBe(0);
    expect(Array.from(spares!.run('fruits')).every((fruits) => fruits === 6)).toBe(true);
    const fruitless = count(stands!.run('fruits'), (fruits) => fruits === 0);
    expectShare(fruitless, runs, 0.3);
    for (let i = 0; i < runs; i += 1) {
      const as = stands!.run('fruits')[i] === 0 ? falls! : spares!;
      expect(stands!.run('yearProven')[i]).toBe(as.run('yearProven')[i]);
    }
  });

  it('never raises the fruit of the first cross, future by future', () => {
    const [stands, falls, spares] = [NOTHING, { frost: { year: 2027, falls: true } }, { frost: { year: 2027, falls: false } }].map(
      (whatIf) => new Simulator(redPear, whatIf).runs([3], 0, 400)[0]!,
    );
    // The wide cross has one spring only.
    for (let i = 0; i < 400; i += 1) {
      const fruits = (columns: Columns) => columns.generation(0, 'fruits')[i]!;
      expect(fruits(falls!)).toBeLessThanOrEqual(fruits(stands!));
      expect(fruits(stands!)).toBeLessThanOrEqual(fruits(spares!));
    }
    expect(total(falls!, 'fruits')).toBeLessThan(total(spares!, 'fruits'));
  });
});

const total = (columns: Columns, name: 'fruits' | 'tests' | 'grafts' | 'flowers') => columns.run(name).reduce((sum, one) => sum + one, 0);

describe('hands, springs, pairs, tests and grafts', () => {
  const several = (changes: object = {}) =>
    sure({
      crosses: [cross({ set: 0 })],
      plans: plans([generation('g', 40, { springs: 4, ...changes })]),
      limits: { places: 1e6, bloomDays: 1, hoursADay: 1, flowersAnHour: 30 },
    });
  const flowers = (columns: Columns) => [0, 1, 2, 3, 4].map((year) => columns.year('flowers', year)[0]!);

  it('twice the hands in the springs that are named, and twice the flowers wanted', () => {
    expect(flowers(run(several()))).toEqual([30, 30, 30, 30, 0]);
    expect(flowers(run(several(), { hands: { from: START + 1, until: START + 2, times: 2 } }))).toEqual([30, 60, 60, 30, 0]);
    expect(flowers(run(several({ flowers: 10 }), { hands: { from: START + 3, until: START + 9, times: 2 } }))).toEqual([10, 10, 10, 20, 0]);
  });

  it('a plan that begins later pollinates nothing before, and keeps its springs', () => {
    expect(flowers(run(several({ springs: 2 }), { begins: START + 2 }))).toEqual([0, 0, 30, 30, 0]);
    expect(years(run(sure(), { begins: START + 7 }))).toEqual(years(run(sure())).map((year) => year + 7));
  });

  it('a pair left out is left out in that spring only; the others keep their share', () => {
    const pair = several({ pollen: [{ tree: 'a' }, { tree: 'b' }], seedParents: [{ tree: 'a' }, { tree: 'b' }], flowers: 20 });
    const leaves = { year: START + 1, generation: 'g', seed: 'a', pollen: 'b' };
    expect(flowers(run(pair))).toEqual([20, 20, 20, 20, 0]);
    expect(flowers(run(pair, { leaves }))).toEqual([20, 10, 20, 20, 0]);
    expect(flowers(run(pair, { leaves: { ...leaves, seed: 'b' } }))).toEqual([20, 20, 20, 20, 0]);
  });

  it('leaf tests read the seedlings that are planted out from that year on', () => {
    const test = { gene: 'r', copies: 1, falsePositive: 0, falseNegative: 0 } as const;
    const programme = sure({ kinds: [kind({ plantOutAge: 2 })], plans: plans([generation('g', 6, { test })]) });
    // Up in spring 1, planted out in the winter before spring 3.
    const tested = (from: number) => run(programme, { tests: { from: START + from, generations: ['g'] } }, 3).run('tests')[0];
    expect([0, 3, 4].map(tested)).toEqual([6, 6, 0]);
  });

  it('no rescue graft is made in that year', () => {
    const weak = { share: 1, onset: 0, course: { halfLife: 1200 }, rootBorne: { chance: 1 } };
    const programme = sure({
      crosses: [cross({ weakness: weak })],
      stocks: [stock()],
      plans: plans([generation('g', 6, { rescue: { who: 'every', month: 3, stock: 'stock' } })]),
    });
    const grafts = (year: number) => run(programme, { graftless: { year: START + year, generation: 'g' } }, 3).run('grafts')[0];
    expect([0, 1, 2].map(grafts)).toEqual([6, 0, 6]);
  });
});

describe('what-ifs on other threads', () => {
  it('give the same bytes as here, and are never taken for one another', async () => {
    const runner = poolRunner(() => inlineThread(true), 2);
    const ifs: (WhatIf | undefined)[] = [undefined, ...[2027, 2030, 2033].map((begins): WhatIf => ({ begins })), { frost: { year: 2027, falls: true } }];
    for (const futures of [poolFutures(runner), inlineFutures()])
      for (let turn = 0; turn < 2; turn += 1) {
        const columns = await Promise.all(ifs.map((whatIf) => futures.run(redPear, [3], 0, 150, whatIf)));
        columns.forEach((one, i) => expect(bytesOf(one)).toEqual(bytesOf(new Simulator(redPear, ifs[i]).runs([3], 0, 150))));
      }
    runner.end();
  });
});
