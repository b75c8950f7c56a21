import { describe, expect, it } from 'vitest';
import { Asking } from '../../src/decisions/asking/asking.ts';
import { inlineAsking } from '../../src/decisions/asking/inline.ts';
import { poolFutures } from '../../src/decisions/pool.ts';
import { inlineFutures } from '../../src/decisions/inline.ts';
import type { Answer } from '../../src/decisions/question.ts';
import { unknownFacts } from '../../src/decisions/unknown-facts.ts';
import { wayToLearn } from '../../src/decisions/unknown-ways.ts';
import { unknowns, type UnknownsAnswer } from '../../src/decisions/unknowns.ts';
import type { FactMix } from '../../src/engine/fact-mix.ts';
import { FactReader } from '../../src/engine/fact-reader.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import type { Programme } from '../../src/model/programme.ts';
import { inlineThread } from '../../src/workers/inline.ts';
import { GivenUp, poolRunner } from '../../src/workers/runner.ts';
import { expectShare } from '../engine/agreement.ts';
import { cross, document, generation, plans, read, shown, stock, tree } from '../engine/programmes.ts';
import { programmeOf } from '../oracle/figures.ts';
import { redPear, told } from './samples.ts';

const PLAN = { plan: 'plan-0' };
const rule = (name: string, weight: number, copies: 1 | 2) => ({ name, weight, needs: { needs: 'all' as const, of: [{ gene: 'r', copies }] } });

/**
 * Two facts and nothing else: whether the flowers of the cross set at all (chance SETS), and whether one copy is enough (chance ONE). The only
 * seedling has one copy, so a tree is proven if both hold and, by luck alone, its seed comes up.
 */
const SETS = 0.7;
const ONE = 0.4;
const twoFacts = (germination: number): Programme =>
  read(
    document({
      lastYear: 2010,
      traits: [shown(1, { rules: [rule('one', ONE, 1), rule('two', 1 - ONE, 2)] })],
      trees: [tree('a', { genes: { r: { copies: 2 } } }), tree('b', { genes: { r: { copies: 0 } } })],
      crosses: [
        cross({
          set: {
            oneOf: [
              { value: 0, weight: 1 - SETS },
              { value: 1, weight: SETS },
            ],
          },
          germination,
        }),
      ],
      weather: { springLuckGermination: 0, springLuckSet: 0 },
      plans: plans([generation('g', 1)]),
    }),
  );

/** By enumeration of the four combinations: f = c where both hold, 0 elsewhere. */
function enumerated(c: number) {
  const cells = [0, 1].flatMap((sets) => [0, 1].map((one) => ({ sets, one, weight: (sets ? SETS : 1 - SETS) * (one ? ONE : 1 - ONE), f: c * sets * one })));
  const mean = cells.reduce((sum, { weight, f }) => sum + weight * f, 0);
  const variance = (of: (cell: (typeof cells)[number]) => number) => cells.reduce((sum, cell) => sum + cell.weight * (of(cell) - mean) ** 2, 0);
  const given = (key: 'sets' | 'one') => (cell: (typeof cells)[number]) => {
    const same = cells.filter((other) => other[key] === cell[key]);
    return same.reduce((sum, { weight, f }) => sum + weight * f, 0) / same.reduce((sum, { weight }) => sum + weight, 0);
  };
  const all = variance(({ f }) => f);
  const [sets, one] = [variance(given('sets')), variance(given('one'))];
  return {
    mean,
    luck: 1 - all / (mean * (1 - mean)),
    sets: { first: sets / all, total: 1 - one / all },
    one: { first: one / all, total: 1 - sets / all },
  };
}

const factOf = ({ facts }: UnknownsAnswer, id: string) => facts.find((fact) => fact.id === id)!;
/** A 95 % interval by resampling is about ± 1.96 standard errors; the exact figure lies within four. */
function expectWithin(exact: number, { value, low, high }: { value: number; low: number; high: number }, what: string) {
  const error = (exact < value ? value - low : high - value) / 1.96;
  expect(Math.abs(value - exact), `${what}: ${String(value)} (${String(low)} … ${String(high)}) against ${String(exact)}`).toBeLessThan(4 * error + 1e-9);
}

describe('a programme of two facts, against its enumerated indices', () => {
  it.each([1, 0.6])('a seed comes up with chance %d', async (germination) => {
    const exact = enumerated(germination);
    const { answer, reports } = await told(unknowns, twoFacts(germination), { ...PLAN, runs: 2000 });
    expectWithin(exact.mean, answer.chance, 'chance');
    if (germination === 1) expect(answer.luck.value).toBeCloseTo(0, 10);
    else expectWithin(exact.luck, answer.luck, 'luck');
    const [sets, one] = [factOf(answer, 'crosses/within/set'), factOf(answer, 'traits/red/rules')];
    expectWithin(exact.sets.first, sets.first, 'set, first');
    expectWithin(exact.sets.total, sets.total!, 'set, total');
    expectWithin(exact.one.first, one.first, 'rule, first');
    expectWithin(exact.one.total, one.total!, 'rule, total');
    expect(answer).toMatchObject({ measurable: true, done: true, clear: true, worth: one.id });
    // The rule matters more: 0.4 is further from 0.7’s near-certainty. What the plan does not touch has no part at all.
    expect(answer.facts[0]).toBe(one);
    for (const id of ['trees/a', 'trees/b', 'families']) expect(factOf(answer, id)).toMatchObject({ clear: false, changed: { changed: 0 } });
    expect(reports.map(({ done }) => done)).toEqual([false, false, false, false, false, true]);
  });

  it('says which way a fact goes, and what the chance is under each rule', async () => {
    const { answer } = await told(unknowns, twoFacts(0.6), { ...PLAN, runs: 2000 });
    const { more } = factOf(answer, 'crosses/within/set');
    expect(more!.way).toBe('up');
    // Chance where it sets minus where it does not: 0.6·ONE − 0.
    expectWithin(0.6 * ONE, more!.difference, 'set');
    const [one, two] = factOf(answer, 'traits/red/rules').alternatives;
    expect(one).toMatchObject({ name: 'one', belief: ONE, trulyGood: { value: 1 } });
    expectShare(Math.round(1000 * one!.chance.value), 1000, 0.6 * SETS);
    expect(two).toMatchObject({ name: 'two', chance: { value: 0 }, trulyGood: null });
  });

  it('says that nothing can be measured where no fact matters', async () => {
    const settled = read(document({ lastYear: 2010, crosses: [cross({ germination: 0.5, set: 1 })], plans: plans([generation('g', 1)]) }));
    const { answer } = await told(unknowns, settled, { ...PLAN, runs: 1000 });
    expect(answer).toMatchObject({ measurable: false, clear: false, worth: null, flips: [] });
    expect(answer.facts.every(({ clear }) => !clear)).toBe(true);
    expect(answer.luck.high).toBe(1);
  });

  it('has no answer for a plan that is not there', async () => {
    expect(await unknowns.ask(redPear, { plan: 'nobody' }, inlineFutures(), () => undefined)).toMatchObject({ cannotSay: 'noPlan' });
  });
});

describe('plans that change places', () => {
  // One plan selfs the source: proven under either rule in a quarter or more; the other needs one copy, and has many seedlings.
  const two = (weights: readonly [number, number]) =>
    read(
      document({
        lastYear: 2010,
        traits: [shown(1, { rules: [rule('one', weights[0], 1), rule('two', weights[1], 2)] })],
        trees: [tree('a', { genes: { r: { copies: 2 } } }), tree('b', { genes: { r: { copies: 0 } } }), tree('c', { genes: { r: { copies: 1 } } })],
        crosses: [cross()],
        plans: plans([generation('g', 1)], [generation('h', 1, { pollen: [{ tree: 'c' }] })]),
      }),
    );

  it('a × b is proven for certain if one copy is enough and never if not; a × c for certain, or half the time', async () => {
    const { answer } = await told(unknowns, two([1, 1]), { ...PLAN, runs: 400 });
    // No flip: under “one” both are certain, under “two” the second is ahead.
    expect(answer.flips).toEqual([]);
  });

  it('are said to change places, with the chances, where a rule turns them round', async () => {
    const programme = turned([1, 1]);
    const { answer } = await told(unknowns, programme, { ...PLAN, runs: 400 });
    expect(answer.flips).toHaveLength(1);
    const [flip] = answer.flips;
    expect(flip).toMatchObject({ fact: 'traits/red/rules', plans: ['plan-0', 'plan-1'] });
    expect(flip!.under.map(({ alternative }) => alternative)).toEqual(['one', 'two']);
    expect(flip!.under[0]).toMatchObject({ chances: [{ value: 1 }, { value: expect.any(Number) as number }] });
    // Under “one”: certain against a seed that comes up in half; under “two”: never against a half of that half.
    expectShare(Math.round(400 * flip!.under[0].chances[1].value), 400, 0.5);
    expect(flip!.under[1].chances[0].value).toBe(0);
    expectShare(Math.round(400 * flip!.under[1].chances[1].value), 400, 0.25);
  });

  it('not by a rule that hardly anyone believes in', async () => {
    const { answer } = await told(unknowns, turned([97, 3]), { ...PLAN, runs: 400 });
    expect(answer.flips).toEqual([]);
  });

  /** The second plan raises its seed by a slower route: half of it comes up. */
  function turned(weights: readonly [number, number]): Programme {
    const programme = two(weights);
    const [within] = programme.crosses;
    const other = { ...within!, id: 'other', name: 'other', germination: 0.5 };
    const [first, second] = programme.plans;
    const generations = second!.generations.map((entry) => ({ ...entry, cross: 'other' }));
    return {
      ...programme,
      weather: { ...programme.weather, springLuckGermination: 0 },
      crosses: [...programme.crosses, other],
      plans: [first!, { ...second!, generations }],
    };
  }
});

describe('futures of mixed facts', () => {
  const reader = new FactReader(twoFacts(1));
  const programme = twoFacts(1);
  const facts = Array.from({ length: 40 }, (_, set) => {
    reader.goTo(set);
    return { sets: reader.estimate('crosses/within/set'), one: new Simulator(programme).runs([0], set, 1)[0]!.rule(0)[0] === 0 };
  });

  it('take each group from its set, and all that no group names from the last', () => {
    const sets = facts.flatMap((_, i) => [i, (i * 7) % 40, (i * 3) % 40]);
    const mix: FactMix = { groups: [['crosses/within/set'], ['trees/a']], sets: Int32Array.from(sets), lucks: Int32Array.from(facts, (_, i) => i) };
    const years = new Simulator(programme).mixed([0], mix);
    const expected = facts.map((_, i) => facts[i]!.sets === 1 && facts[(i * 3) % 40]!.one);
    expect([...years].map((year) => year >= 0)).toEqual(expected);
    expect(new Set(expected).size).toBe(2);
  });

  it.each([redPear, programmeOf('./slow-walnut.programme.json')])(
    '$title: all from one set are the facts of that future, with a luck of its own',
    (example) => {
      const simulator = new Simulator(example);
      const drawn = new FactReader(example).drawn();
      const groups = drawn.map((place) => [place]);
      const all = example.plans.map((_, p) => p);
      const row = (set: number) => Array.from({ length: groups.length + 1 }, () => set);
      const lucks = Int32Array.of(5, 6, 5, 6);
      const apart = simulator.mixed(all, { groups, sets: Int32Array.from([3, 3, 8, 8].flatMap(row)), lucks });
      const together = simulator.mixed(all, { groups: [], sets: Int32Array.of(3, 3, 8, 8), lucks });
      expect(apart).toEqual(together);
      // What ran before makes no difference, nor does an ordinary future afterwards.
      const before = new Simulator(example).runs(all, 3, 2)[0]!.ints;
      expect(simulator.runs(all, 3, 2)[0]!.ints).toEqual(before);
      expect(simulator.mixed(all, { groups: [], sets: Int32Array.of(8), lucks: Int32Array.of(6) })).toEqual(Int32Array.from(all, (p) => together[p * 4 + 3]!));
    },
  );

  it('are the same on threads, cut into tasks', async () => {
    const groups = [['crosses/wide/set'], ['facts/roots']];
    const rows = 230;
    const mix: FactMix = {
      groups,
      sets: Int32Array.from({ length: rows * 3 }, (_, i) => (i * 17) % 50),
      lucks: Int32Array.from({ length: rows }, (_, i) => i % 9),
    };
    const runner = poolRunner(() => inlineThread(true), 2);
    runner.load(redPear);
    const onThreads = await poolFutures(runner).mixed(redPear, [3, 1], mix);
    runner.end();
    expect(onThreads).toEqual(await inlineFutures().mixed(redPear, [3, 1], mix));
    expect(new Set(onThreads).size).toBeGreaterThan(2);
  });
});

describe('on other threads', () => {
  const few = { ...redPear, runs: 60, plans: redPear.plans.slice(2) };

  it('the answer is the same, also where the question is thought about elsewhere', async () => {
    const { answer, reports } = await told(unknowns, few, { plan: 'wide-rescue' });
    const runner = poolRunner(() => inlineThread(true), 2);
    const asking = new Asking(inlineAsking, runner);
    const heard: Answer[] = [];
    const found = await asking.ask('unknowns', few, { plan: 'wide-rescue' }, (partial) => heard.push(partial), new AbortController().signal);
    runner.end();
    expect(JSON.stringify(found)).toBe(JSON.stringify(answer));
    expect(JSON.stringify(heard)).toBe(JSON.stringify(reports));
  });

  it('it ends when it is no longer asked', async () => {
    const end = new AbortController();
    const runner = poolRunner(() => inlineThread(true), 2);
    const reports: UnknownsAnswer[] = [];
    const asked = unknowns.ask(few, { plan: 'wide-rescue' }, poolFutures(runner, end.signal), (partial) => {
      reports.push(partial);
      end.abort();
    });
    await expect(asked).rejects.toBeInstanceOf(GivenUp);
    runner.end();
    expect(reports).toHaveLength(1);
  });
});

describe('what is unknown', () => {
  it.each([redPear, ...['quick-peach', 'graded-nectarine', 'slow-walnut'].map((name) => programmeOf(`./${name}.programme.json`))])(
    '$title: everything drawn is part of just one fact, but for the first fruit of families',
    (programme) => {
      const drawn = new FactReader(programme).drawn();
      const named = unknownFacts(programme, drawn).flatMap(({ places }) => places);
      expect(new Set(named).size).toBe(named.length);
      expect(drawn.filter((place) => !named.includes(place)).map((place) => place.split('/').at(-1))).toEqual(
        drawn.filter((place) => place.endsWith('/familySpread')).map(() => 'familySpread'),
      );
    },
  );

  it('one question is one fact: ages of first fruit, take of tender and ripe wood, a chance and what it is the chance of', () => {
    const programme: Programme = {
      ...redPear,
      facts: redPear.facts.map((fact) => ({ ...fact, chance: { low: 0.2, likely: 0.5, high: 0.8 } })),
      stocks: redPear.stocks.map((entry) => ({ ...entry, takeTender: { low: 0.1, likely: 0.2, high: 0.3 }, takeRipe: { hits: 7, of: 9, lots: 1 } })),
    };
    const facts = unknownFacts(programme, new FactReader(programme).drawn());
    const of = (id: string) => facts.find((fact) => fact.id === id);
    expect(of('facts/roots')).toMatchObject({ kind: 'roots', places: ['facts/roots', 'facts/roots/chance'], numbers: [] });
    expect(of('stocks/field-pear/take')).toMatchObject({
      kind: 'take',
      restsOn: 'unsaid',
      places: ['stocks/field-pear/takeTender', 'stocks/field-pear/takeRipe'],
    });
    expect(of('trees/old-hedgerow')).toMatchObject({ kind: 'treeGenes', name: 'Old Hedgerow', restsOn: 'invented' });
    expect(of('crosses/wide/set')).toMatchObject({ restsOn: 'published' });
    expect(facts.at(-1)).toMatchObject({ kind: 'families', places: [] });
  });
});

describe('the cheapest way to learn it', () => {
  const way = (programme: Programme, id: string) => {
    const fact = unknownFacts(programme, new FactReader(programme).drawn()).find((entry) => entry.id === id)!;
    return wayToLearn(
      programme,
      programme.plans.find((plan) => plan.id === 'wide-rescue')!,
      fact,
    );
  };

  it('goes by the programme’s own speeds', () => {
    // 40 flowers of the plan at 0.03 hours; 15 crops judged at a quarter of an hour; ten grafts at a quarter, two summers at 0.05 places.
    expect(way(redPear, 'crosses/wide/set')).toEqual({ count: 40, hours: 1.2, seasons: 1, trees: 0, afterFruit: false });
    expect(way(redPear, 'traits/red-flesh/rules')).toMatchObject({ count: 15, hours: 3.75, afterFruit: true });
    expect(way(redPear, 'facts/roots')).toMatchObject({ count: 10, hours: 3.5, trees: 10, seasons: 2 });
    expect(way(redPear, 'families').hours).toBeNull();
  });

  it('never asks for more flowers than hands can pollinate', () => {
    const slow = { ...redPear, limits: { ...redPear.limits, flowersAnHour: 1, hoursADay: 1 } };
    expect(way(slow, 'crosses/wide/set').count).toBe(6);
  });
});

it('graft or not: the roots matter most, on a stock that takes', async () => {
  // All weak: cured if it sits in the roots, dead if not. Two halves of all futures, told apart by the fact alone.
  const programme = read(
    document({
      lastYear: 2010,
      trees: ['a', 'b'].map((id) => tree(id, { genes: { r: { copies: 2 } } })),
      crosses: [cross({ weakness: { share: 1, onset: 0, course: { halfLife: 12 }, rootBorne: { chance: 0.5 } } })],
      stocks: [stock()],
      plans: plans([generation('g', 1, { rescue: { who: 'weak', month: 1, stock: 'stock' } })]),
    }),
  );
  const { answer } = await told(unknowns, programme, { ...PLAN, runs: 400 });
  expect(answer.facts[0]).toMatchObject({ id: 'crosses/within/rootBorne', kind: 'roots', clear: true, more: null });
  expect(answer.facts[0]!.alternatives.map(({ name }) => name)).toEqual(['yes', 'no']);
  expect(answer.facts[0]!.first.high).toBe(1);
});
