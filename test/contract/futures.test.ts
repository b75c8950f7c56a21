import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { Simulator } from '../../src/engine/simulate.ts';
import type { Programme } from '../../src/model/programme.ts';
import { GENERATION_COLUMNS, type Columns } from '../../src/results/columns.ts';
import { document, generation, kind, neverProven, picksOf, plans, read, shown, stock, tree, type Document } from '../engine/programmes.ts';
import { programmeOf } from '../oracle/figures.ts';
import { bytesOf } from './bytes.ts';

const text = readFileSync(new URL('../../sims/examples/red-pear.json', import.meta.url), 'utf8');
const redPear = read(JSON.parse(text));
const examples: readonly Programme[] = [redPear, ...['quick-peach', 'graded-nectarine', 'slow-walnut'].map((name) => programmeOf(`./${name}.programme.json`))];
const all = (programme: Programme) => programme.plans.map((_, p) => p);
const runsOf = (programme: Programme, runs = 200) => bytesOf(new Simulator(programme).runs(all(programme), 0, runs));

describe('futures stand for themselves (docs/model.md §2, §13)', () => {
  it.each(examples)('$title: in two parts as in one, and again after other work', (programme) => {
    const simulator = new Simulator(programme);
    const whole = simulator.runs(all(programme), 0, 200);
    const parts = [simulator.runs(all(programme), 100, 100), simulator.runs(all(programme), 0, 100)];
    whole.forEach((columns, p) => {
      expect(bytesOf([columns.first(100)])).toEqual(bytesOf([parts[1]![p]!]));
      const joined = columns.first(100);
      expect(joined.runs).toBe(100);
      for (const name of GENERATION_COLUMNS) expect(columns.generation(0, name).subarray(100)).toEqual(parts[0]![p]!.generation(0, name));
      expect(columns.run('yearProven').subarray(100)).toEqual(parts[0]![p]!.run('yearProven'));
      expect(columns.amount('totalHours').subarray(100)).toEqual(parts[0]![p]!.amount('totalHours'));
    });
    simulator.factSets([0], 0, 2, 5);
    simulator.diary(0, 3);
    expect(bytesOf(simulator.runs(all(programme), 0, 200))).toEqual(bytesOf(whole));
  });

  it.each(examples)('$title: a plan’s results do not depend on the other plans', (programme) => {
    const together = runsOf(programme);
    const simulator = new Simulator(programme);
    all(programme).forEach((p) => {
      expect(bytesOf(simulator.runs([p], 0, 200))[0], 'asked for alone').toBe(together[p]);
      expect(runsOf({ ...programme, plans: [programme.plans[p]!] })[0], 'alone in the programme').toBe(together[p]);
    });
    const turned = all(programme).reverse();
    expect(bytesOf(simulator.runs(turned, 0, 200))).toEqual([...together].reverse());
    const sets = simulator.factSets(turned, 3, 4, 10);
    const years = programme.lastYear - programme.startYear + 1;
    turned.forEach((p, i) => expect(simulator.factSets([p], 3, 4, 10)).toEqual(sets.slice(i * 4 * years, (i + 1) * 4 * years)));
  });

  it('another shuffle word gives other futures, the same word the same', () => {
    expect(runsOf(redPear)).toEqual(runsOf(read(JSON.parse(text))));
    expect(runsOf({ ...redPear, shuffleWord: 'blue' })).not.toEqual(runsOf(redPear));
  });

  it.each(examples)('$title: names and notes change nothing', (programme) => {
    const rename = <T extends { name: string }>(list: readonly T[]): T[] => list.map((entry, i) => ({ ...entry, name: `renamed ${String(i)}` }));
    const renamed: Programme = {
      ...programme,
      title: 'Renamed',
      trees: rename(programme.trees),
      kinds: rename(programme.kinds),
      crosses: rename(programme.crosses),
      stocks: rename(programme.stocks),
      pools: rename(programme.pools),
      facts: rename(programme.facts),
      genes: rename(programme.genes),
      plans: rename(programme.plans).map((plan) => ({ ...plan, generations: rename(plan.generations) })),
    };
    expect(runsOf(renamed)).toEqual(runsOf(programme));
  });

  for (const section of ['trees', 'kinds', 'crosses', 'stocks', 'pools', 'facts'] as const)
    it.each(examples)(`$title: turning the list of ${section} round changes nothing, ids being kept`, (programme) => {
      expect(runsOf({ ...programme, [section]: [...programme[section]].reverse() })).toEqual(runsOf(programme));
    });

  it.each(examples)('$title: turning the plans round turns the results round', (programme) => {
    expect(runsOf({ ...programme, plans: [...programme.plans].reverse() })).toEqual([...runsOf(programme)].reverse());
  });
});

/** Columns of generation g from flowers to seedlings, and everything of the ones before it. */
const upTo = (columns: Columns, g: number) => ({
  before: Array.from({ length: g }, (_, i) => GENERATION_COLUMNS.filter((name) => name !== 'lastWork').map((name) => Array.from(columns.generation(i, name)))),
  sown: (['firstPollination', 'firstSeedling', 'flowers', 'fruits', 'seeds', 'seedlings'] as const).map((name) => Array.from(columns.generation(g, name))),
});

describe('changing the graft age (docs/model.md §13)', () => {
  const grafted = (programme: Document, g: number, month: number): Columns => {
    const copy = structuredClone(programme);
    const rescue = copy.plans[0]!.generations[g]!.rescue;
    if (!rescue) throw new Error('Nothing is grafted there.');
    rescue.month = month;
    return new Simulator(read(copy)).runs([0], 0, 400)[0]!;
  };

  it('leaves flowers, fruits, seeds and seedlings of the grafted generation as they were in every run', () => {
    const pear = JSON.parse(text) as Document;
    const wide: Document = { ...pear, plans: [pear.plans[3]!] };
    const reference = upTo(grafted(wide, 0, 3), 0);
    const saved = new Set<string>();
    for (const month of [2, 4, 6, 9, 12, 13.5, 24]) {
      const columns = grafted(wide, 0, month);
      expect(upTo(columns, 0)).toEqual(reference);
      saved.add(Array.from(columns.run('weakSaved')).join());
    }
    expect(saved.size).toBe(7);
  });

  it('and everything of the generations before it; with short room, frost and luck all the same', () => {
    const late = document({
      goal: neverProven(),
      lastYear: 2022,
      weather: { frostChance: 0.3, frostTakes: 0.6, springLuckSet: 0.2, springLuckGermination: 0.2 },
      limits: { places: 12, bloomDays: 1, hoursADay: 4, flowersAnHour: 10 },
      kinds: [
        kind({
          firstFruit: { earliest: 3, half: 4, ninety: 6 },
          familySpread: 0.2,
          firstYearLoss: 0.1,
          yearlyLoss: 0.05,
          regularity: 0.7,
          nurseryShare: 0.05,
          flowers: 20,
        }),
      ],
      crosses: [
        {
          id: 'within',
          name: 'within',
          seed: 'pear',
          pollen: 'pear',
          gives: 'pear',
          set: { low: 0.2, likely: 0.5, high: 0.8 },
          germination: 0.6,
          weakness: { share: 0.6, onset: 1, course: { halfLife: 5 }, rootBorne: { chance: 0.5 } },
        },
      ],
      stocks: [stock({ takeTender: 0.4, takeRipe: 0.9, yearlyLoss: 0.03, precocity: 0.8 })],
      plans: plans([
        generation('f1', 10, { springs: 3, judge: 1, keep: { howMany: 3 } }),
        generation('f2', 15, { seedParents: picksOf('f1'), springs: 3, judge: 1, rescue: { who: 'every', month: 3, stock: 'stock', scions: 2 } }),
        generation('f3', 10, { seedParents: picksOf('f2'), springs: 2, judge: 1 }),
      ]),
    });
    const reference = upTo(grafted(late, 1, 3), 1);
    for (const month of [1, 8, 12, 20]) {
      const { before, sown } = upTo(grafted(late, 1, month), 1);
      expect(before).toEqual(reference.before);
      expect(sown).toEqual(reference.sown);
    }
  });
});

describe('a lenient goal', () => {
  const goal = (atLeast: number): Document =>
    document({
      traits: [shown(2, { canShow: 0.8, seasonsShown: 0.6, falseShow: 0.05 })],
      trees: [tree('a', { genes: { r: { copies: 1 } } }), tree('b', { genes: { r: { copies: 1 } } })],
      goal: { conditions: [{ type: 'shown', trait: 'red', atLeast }], crops: 3 },
      plans: plans([generation('g', 10, { judge: 3 })]),
    });

  it('succeeds in every future in which a stricter one does, no later; and fewer of its trees are truly good', () => {
    const columns = [1, 2, 3].map((atLeast) => new Simulator(read(goal(atLeast))).runs([0], 0, 3000)[0]!);
    const good = columns.map((one) => one.run('trulyGood').reduce((a, b) => a + b, 0) / one.run('proven').reduce((a, b) => a + b, 0));
    // Exact: 0.2 able; shown in at least k of 3 at 0.6, wrongly at 0.05: 0.567…, 0.965…, 0.999….
    expect(good[0]).toBeLessThan(good[1]! - 0.2);
    expect(good[1]).toBeLessThan(good[2]! - 0.01);
    for (const [lenient, strict] of [
      [0, 1],
      [1, 2],
    ] as const) {
      const [a, b] = [columns[lenient]!.run('yearProven'), columns[strict]!.run('yearProven')];
      expect(a.every((year, run) => b[run]! < 0 || (year >= 0 && year <= b[run]!))).toBe(true);
      expect(a.filter((year) => year >= 0).length).toBeGreaterThan(b.filter((year) => year >= 0).length);
    }
  });

  it('on the example: at least 9, 10 or 11 weeks of keeping', () => {
    const wanting = (atLeast: number) =>
      new Simulator({
        ...redPear,
        goal: {
          ...redPear.goal,
          conditions: redPear.goal.conditions.map((condition) => (condition.type === 'measured' ? { ...condition, atLeast } : condition)),
        },
      }).runs(all(redPear), 0, 300);
    const [nine, ten, eleven] = [9, 10, 11].map(wanting);
    for (const [lenient, strict] of [
      [nine!, ten!],
      [ten!, eleven!],
    ] as const)
      lenient.forEach((columns, p) => {
        const years = strict[p]!.run('yearProven');
        expect(columns.run('yearProven').every((year, run) => years[run]! < 0 || (year >= 0 && year <= years[run]!))).toBe(true);
      });
  });
});
