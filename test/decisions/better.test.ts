import { describe, expect, it } from 'vitest';
import { askAll } from '../../sims/run/ask.ts';
import { candidate, changesOf, keyOf, startsOf } from '../../src/decisions/better/candidate.ts';
import { choicesOf } from '../../src/decisions/better/choices.ts';
import { SAME } from '../../src/decisions/better/final.ts';
import { OVER_AT_MOST, yearsOf } from '../../src/decisions/better/look.ts';
import { STEPS } from '../../src/decisions/better/search.ts';
import { named, shortName } from '../../src/decisions/better/words.ts';
import { better, type BetterAnswer } from '../../src/decisions/better.ts';
import type { Futures } from '../../src/decisions/futures.ts';
import { inlineFutures } from '../../src/decisions/inline.ts';
import { poolFutures } from '../../src/decisions/pool.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import { withPlan } from '../../src/model/plans.ts';
import type { Plan, Programme } from '../../src/model/programme.ts';
import { parseProgramme } from '../../src/model/read.ts';
import { aliveAt } from '../../src/statistics/graft.ts';
import { inlineThread } from '../../src/workers/inline.ts';
import { GivenUp, poolRunner } from '../../src/workers/runner.ts';
import { errorOfMean, mean } from '../engine/agreement.ts';
import { cross, document, generation, kind, plans, read, stock, tree } from '../engine/programmes.ts';
import { redPear, told } from './samples.ts';

const ANY = { plan: 'open-seed' };
const planOf = (programme: Programme, id: string): Plan => programme.plans.find((plan) => plan.id === id)!;
const wordsOf = (programme: Programme, id: string, kindOf: string, generationId: string) =>
  choicesOf(programme, planOf(programme, id))
    .filter((choice) => choice.kind === kindOf && choice.generation === generationId)
    .flatMap(({ alternatives }) => alternatives.map(({ words }) => words));

/** Notes every piece of work that is asked for. */
function noted(of: Futures = inlineFutures()): Futures & { readonly work: { readonly programme: Programme; readonly from: number; readonly runs: number }[] } {
  const work: { programme: Programme; from: number; runs: number }[] = [];
  return {
    ...of,
    work,
    run: (programme, positions, from, runs) => {
      work.push({ programme, from, runs });
      return of.run(programme, positions, from, runs);
    },
  };
}

describe('what can be chosen', () => {
  it('offers the methods for which there are cross entries, and rescue where something weak is raised', () => {
    expect(wordsOf(redPear, 'wide-rescue', 'method', 'd1')).toEqual(['openly pollinated', 'pollen of Saffron Bell']);
    expect(wordsOf(redPear, 'brother-sister', 'method', 'b2')).toEqual([
      'openly pollinated',
      'picks × Old Hedgerow',
      'picks × Saffron Bell',
      'picks × Mill Quince',
    ]);
    expect(wordsOf(redPear, 'brother-sister', 'rescue', 'b1')).toEqual([]);
    expect(wordsOf(redPear, 'wide-rescue', 'rescue', 'd1')[0]).toBe('no rescue graft');
    // The weak cannot be told before two months: the cross entry says so.
    expect(wordsOf(redPear, 'wide-rescue', 'rescue', 'd1')).not.toContain('weak ones grafted at 1 month');
    expect(wordsOf(redPear, 'wide-rescue', 'rescue', 'd1')).not.toContain('weak ones grafted at 3 months');
    // By one of its methods, picks × quince, it would raise weak ones.
    expect(wordsOf(redPear, 'brother-sister', 'rescue', 'b2')).toContain('weak ones grafted at 3 months');
  });

  it('never more flowers than there are hands for in the days of bloom', () => {
    const { bloomDays, hoursADay, flowersAnHour } = redPear.limits;
    for (const plan of redPear.plans)
      for (const { kind: which, alternatives } of choicesOf(redPear, plan, ['flowers'])) {
        expect(which).toBe('flowers');
        const numbers = alternatives.map(({ words }) => Number.parseInt(words, 10));
        expect(Math.max(...numbers)).toBe(bloomDays * hoursADay * flowersAnHour);
        expect(numbers).toEqual([...new Set(numbers)]);
      }
  });

  it('lets the last generation neither go unjudged nor go on', () => {
    expect(wordsOf(redPear, 'wide-rescue', 'judge', 'd2')).toEqual(['1 season judged', '2 seasons judged']);
    expect(wordsOf(redPear, 'wide-rescue', 'judge', 'd1')).toEqual(['not judged', '2 seasons judged', '3 seasons judged']);
    expect(wordsOf(redPear, 'wide-rescue', 'goOn', 'd2')).toEqual([]);
  });

  it('is a pure edit of the plan that it starts from', () => {
    const before = JSON.stringify(redPear);
    const starts = startsOf(redPear);
    starts.forEach(({ plan, choices }, s) => {
      if (plan.id === 'open-seed' || plan.id === 'wide-own-roots') return;
      choices.forEach((choice, c) => {
        choice.alternatives.forEach((alternative, a) => {
          const taken = choices.map((_, at) => (at === c ? a : -1));
          const made = candidate(redPear, starts, s, taken);
          if (!made) return;
          expect(made.plan.id).toBe(plan.id);
          expect(made.plan.generations.map(({ id }) => id)).toEqual(plan.generations.map(({ id }) => id));
          expect(changesOf(made, starts).flatMap(({ words }) => words)).toEqual([alternative.words]);
          expect(parseProgramme(made.programme).ok).toBe(true);
        });
      });
    });
    expect(JSON.stringify(redPear)).toBe(before);
  });

  it('takes a graft of weak ones where nothing weak is raised for no change', () => {
    const starts = startsOf(redPear);
    const s = redPear.plans.findIndex(({ id }) => id === 'brother-sister');
    const { choices } = starts[s]!;
    const at = choices.findIndex((choice) => choice.kind === 'rescue' && choice.generation === 'b2');
    const take = (alternative: number) =>
      candidate(
        redPear,
        starts,
        s,
        choices.map((_, c) => (c === at ? alternative : -1)),
      )!;
    const weak = choices[at]!.alternatives.findIndex(({ words }) => words.startsWith('weak'));
    const every = choices[at]!.alternatives.findIndex(({ words }) => words.startsWith('all'));
    expect(keyOf(take(weak))).toBe(keyOf(take(-1)));
    expect(keyOf(take(every))).not.toBe(keyOf(take(-1)));
  });

  it('has names in words, short enough for the document', () => {
    const changes = [
      { position: 0, words: ['600 flowers', 'weak ones grafted at 8 months'] },
      { position: 1, words: ['2 seasons judged'] },
    ];
    expect(named('D', changes, 2)).toBe('plan D, with first generation 600 flowers, weak ones grafted at 8 months; second generation 2 seasons judged');
    expect(named('D', changes.slice(0, 1), 1)).toBe('plan D, with 600 flowers, weak ones grafted at 8 months');
    expect(named('D', [], 2)).toBe('plan D');
    expect(shortName('D', changes)).toBe('Plan D, with 600 flowers, weak ones grafted at 8 months, 2 seasons judged');
    expect(shortName('D', [{ position: 0, words: ['x'.repeat(40), 'y'.repeat(40)] }])).toBe(`Plan D, with ${'x'.repeat(40)} …`);
    expect(shortName('D', [{ position: 0, words: ['x'.repeat(90)] }])).toBe('Plan D, varied');
  });
});

/**
 * Everything weak, and proven if it comes to fruit: the year is 2007 if any of n grafts takes in time, and 2031 stands for never. With pollen
 * of the third tree nothing ever shows.
 */
const HALF_LIFE = 5;
const take = (month: number) => (month <= 1 ? 0.3 : month >= 12 ? 0.85 : 0.3 + (0.55 * (month - 1)) / 11);
const small = (seedlings: number, pollen: string, rescue: object | null): Programme =>
  read(
    document({
      kinds: [kind({ firstFruit: { years: 6 } })],
      trees: [tree('a', { genes: { r: { copies: 2 } } }), tree('b', { genes: { r: { copies: 2 } } }), tree('c', { genes: { r: { copies: 0 } } })],
      crosses: [cross({ weakness: { share: 1, onset: 0, course: { halfLife: HALF_LIFE }, rootBorne: { chance: 1 } } })],
      stocks: [stock({ takeTender: 0.3, takeRipe: 0.85, ripeMonths: 12 })],
      plans: plans([generation('g', seedlings, { flowers: 100, pollen: [{ tree: pollen }], ...(rescue === null ? {} : { rescue: rescue as never }) })]),
    }),
  );

describe('a small problem, solved by trying everything', () => {
  const NUMBERS = [1, 2, 3, 4, 6, 8, 16];
  const AGES = [1, 2, 3, 5, 8, 12, 18];
  const FUTURES = 1000;
  const KINDS = ['method', 'rescue', 'seedlings'] as const;
  const ways = [null, ...AGES.flatMap((month) => (['weak', 'every'] as const).map((who) => ({ who, month, stock: 'stock' })))];
  const everything = NUMBERS.flatMap((seedlings) =>
    ['b', 'c'].flatMap((pollen) =>
      ways.map((rescue) => {
        const programme = small(seedlings, pollen, rescue);
        const [columns] = new Simulator(programme).runs([0], 50_000, FUTURES);
        const years = yearsOf(programme, columns!);
        return { seedlings, pollen, rescue, programme, years, mean: mean(years), trees: mean(columns!.run('seedlings')) };
      }),
    ),
  );
  const best = NUMBERS.map((seedlings) => {
    const all = everything.filter((one) => one.seedlings === seedlings);
    return all.reduce((soonest, one) => (one.mean < soonest.mean ? one : soonest));
  });

  it('agrees with the closed form for every way (4 standard errors)', () => {
    for (const { seedlings, pollen, rescue, years, trees } of everything) {
      expect(trees).toBe(seedlings);
      const saved = rescue === null || pollen === 'c' ? 0 : aliveAt(rescue.month, 0, HALF_LIFE) * take(rescue.month);
      const never = (1 - saved) ** seedlings;
      const error = Math.max(errorOfMean(years), (24 * Math.sqrt(never * (1 - never))) / Math.sqrt(FUTURES));
      expect(Math.abs(mean(years) - (2007 * (1 - never) + 2031 * never))).toBeLessThanOrEqual(4 * error + 1e-9);
    }
  });

  it('the search finds the same front, though it looks at less than half of the plans', async () => {
    const stands = small(4, 'c', null);
    const looks = 75;
    // Two methods, eleven ways of grafting, seven numbers.
    const [start] = startsOf(stands, KINDS);
    expect(start!.choices.reduce((all, { alternatives }) => all * (alternatives.length + 1), 1)).toBeGreaterThan(2 * looks);
    const futures = noted();
    const answer = await better.ask(stands, { plan: 'plan-0', runs: 2000, looks, kinds: KINDS }, futures, () => undefined);
    if (answer.cannotSay !== null) throw new Error(answer.cannotSay);
    // Halving: each step of futures is lived through by fewer.
    const at = STEPS.map((_, s) => futures.work.filter(({ from }) => from === (STEPS[s - 1] ?? 0)).length);
    expect(at).toEqual(at.toSorted((a, b) => b - a));
    expect(at[0]).toBe(answer.looked);
    expect(at.at(-1)).toBeLessThan(0.7 * answer.looked);
    expect(answer.looked).toBeLessThanOrEqual(looks);
    const front = answer.plans.filter(({ own, standing }) => !own && standing === 'front');
    // By trying everything: one plan for each number of seedlings, all of them on the front.
    for (const { seedlings, mean: soonest, years } of best) {
      const found = answer.plans.find(({ own, trees }) => !own && trees.value === seedlings);
      expect(found, `${String(seedlings)} seedlings`).toBeDefined();
      const error = Math.hypot(errorOfMean(years), (found!.years.high - found!.years.value) / 1.96);
      expect(found!.years.value - soonest, `${String(seedlings)} seedlings`).toBeLessThanOrEqual(SAME.years + 4 * error);
    }
    expect(front.map(({ trees }) => trees.value)).toEqual(NUMBERS.toReversed());
    // Never a tree and four seedlings for it: beaten, and every found plan says so.
    expect(answer.plans[0]).toMatchObject({ own: true, standing: 'beaten', mayBeSoonest: false });
    expect(answer.clear).toBe(true);
    expect(answer.soonest!.id).toBe(front[0]!.id);
    expect(answer.plans.filter(({ mayBeSoonest }) => mayBeSoonest).map(({ id }) => id)).toEqual([answer.soonest!.id]);
  });
});

it('is asked once without a browser, however many plans there are', async () => {
  const one = { ...small(4, 'b', { who: 'weak', month: 18, stock: 'stock' }), runs: 100 };
  const two = {
    ...one,
    plans: [
      ...one.plans,
      {
        ...one.plans[0]!,
        id: 'plan-1',
        mark: 'B' as const,
        name: 'plan 1',
        generations: one.plans[0]!.generations.map((entry) => ({ ...entry, seedlings: 6 })),
      },
    ],
  };
  const runner = poolRunner(() => inlineThread(true), 2);
  const { answers } = await askAll(runner, 'better', two, two, [0, 1]);
  runner.end();
  expect(answers).toHaveLength(1);
  expect(answers[0]).toMatchObject({ question: 'better', plan: 'plan-0', done: true, looks: 200 });
});

describe('the search', () => {
  const OPTIONS = { ...ANY, looks: 24, runs: 100 };
  const few: Programme = { ...redPear, plans: redPear.plans.slice(1), runs: 1000 };
  let first: Promise<{ readonly answer: BetterAnswer; readonly work: ReturnType<typeof noted>['work']; readonly reports: readonly BetterAnswer[] }> | undefined;
  const once = () =>
    (first ??= (async () => {
      const futures = noted();
      const reports: BetterAnswer[] = [];
      const answer = await better.ask(few, OPTIONS, futures, (partial) => reports.push(partial));
      if (answer.cannotSay !== null) throw new Error(answer.cannotSay);
      return { answer, work: futures.work, reports };
    })());

  it('chooses on common futures and compares on fresh ones', async () => {
    const { answer, work } = await once();
    const deepest = Math.max(...STEPS);
    const searching = work.filter(({ from }) => from < answer.freshFrom);
    expect(Math.max(...searching.map(({ from, runs }) => from + runs))).toBe(deepest);
    expect(answer.freshFrom).toBe(Math.max(deepest, few.runs));
    const comparing = work.filter(({ from }) => from >= answer.freshFrom);
    expect(new Set(comparing.map(({ from, runs }) => `${String(from)} ${String(runs)}`))).toEqual(new Set([`${String(few.runs)} 100`]));
    expect(answer.futuresRun).toBe(work.reduce((sum, { runs }) => sum + runs, 0));
    expect(searching.filter(({ from }) => from === 0)).toHaveLength(answer.looked);
    expect(answer.looked).toBeLessThanOrEqual(24);
  });

  it('tells how far it is, and ends with the whole answer', async () => {
    const { answer, reports } = await once();
    expect(reports.map(({ looked }) => looked)).toEqual(reports.map(({ looked }) => looked).toSorted((a, b) => a - b));
    expect(reports.filter(({ stage }) => stage === 'looking').length).toBeGreaterThan(3);
    expect(reports.at(-1)).toEqual(answer);
    expect(answer).toMatchObject({ done: true, stage: 'comparing', futures: 100, question: 'better' });
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
  });

  it('gives each found plan whole: added to the programme it runs as it was compared', async () => {
    const { answer } = await once();
    const found = answer.plans.filter(({ own }) => !own);
    expect(found.length).toBeGreaterThan(0);
    for (const { document: plan, outcome, years, from, changes, name } of found) {
      expect(changes.flatMap(({ words }) => words).length).toBeGreaterThan(0);
      expect(name).toContain(`plan ${planOf(few, from).mark}, with `);
      const reading = parseProgramme(withPlan(few, plan));
      expect(reading.ok).toBe(true);
      if (!reading.ok) continue;
      const { programme } = reading;
      const [columns] = new Simulator(programme).runs([programme.plans.length - 1], answer.freshFrom, answer.futures);
      expect(mean(yearsOf(programme, columns!))).toBeCloseTo(years.value, 9);
      expect(mean(columns!.run('seedlings'))).toBeCloseTo(outcome.seedlings.mean, 9);
    }
    expect(new Set(answer.plans.map(({ document: plan }) => plan.id)).size).toBe(answer.plans.length);
    expect(new Set(answer.plans.map(({ document: plan }) => plan.name)).size).toBe(answer.plans.length);
  });

  it('counts a future without a proven tree as the year after the last', async () => {
    const { answer } = await once();
    for (const { own, from, years, outcome } of answer.plans) {
      if (!own) continue;
      const [columns] = new Simulator(few).runs([few.plans.findIndex(({ id }) => id === from)], answer.freshFrom, answer.futures);
      const byHand = Array.from(columns!.run('yearProven'), (year) => (year < 0 ? few.lastYear + 1 : few.startYear + year));
      expect(years.value).toBeCloseTo(mean(byHand), 9);
      expect(outcome.chance.value).toBeCloseTo(byHand.filter((year) => year <= few.lastYear).length / byHand.length, 12);
    }
  });

  it('is the same whichever plan is named, and on one thread or three', async () => {
    const { answer } = await once();
    const runner = poolRunner(() => inlineThread(true), 3);
    const other = await better.ask(few, { ...OPTIONS, plan: 'wide-rescue' }, poolFutures(runner), () => undefined);
    runner.end();
    expect({ ...other, plan: answer.plan }).toEqual(answer);
  });

  it('stops when nobody waits any more', async () => {
    const ended = new AbortController();
    const asked = better.ask(few, OPTIONS, inlineFutures(ended.signal), () => ended.abort());
    await expect(asked).rejects.toBeInstanceOf(GivenUp);
  });

  it('has nothing to say where nothing may be chosen', async () => {
    expect(await better.ask(few, { ...OPTIONS, kinds: [] }, inlineFutures(), () => undefined)).toMatchObject({ cannotSay: 'nothingToAsk' });
  });

  it('keeps the hours: what goes over in more than half of its futures is not offered, and does not beat what keeps them', async () => {
    const tight = read({ ...few, limits: { ...few.limits, hoursPerYear: 30 } });
    const { answer } = await told(better, tight, { ...OPTIONS, looks: 24 });
    const sister = answer.plans.find(({ id }) => id === 'brother-sister')!;
    expect(sister.over!.low).toBeGreaterThan(OVER_AT_MOST);
    expect(sister).toMatchObject({ standing: 'overLimits', behindSoonest: null, mayBeSoonest: false });
    expect(answer.plans.filter(({ own }) => !own).length).toBeGreaterThan(0);
    for (const plan of answer.plans.filter(({ own }) => !own)) {
      expect(plan.over!.value).toBeLessThanOrEqual(OVER_AT_MOST);
      expect(plan.outcome.busiestHours.p50).toBeLessThanOrEqual(30);
    }
    expect(answer.plans.map(({ beatenBy }) => beatenBy)).not.toContain('brother-sister');
  });
});
