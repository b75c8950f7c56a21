import { describe, expect, it } from 'vitest';
import { inlineFutures } from '../../src/decisions/inline.ts';
import { ratioOfMeans, yearsForHours, yearsWaited } from '../../src/decisions/open-rate.ts';
import { pollenSites } from '../../src/decisions/open-ways.ts';
import { open } from '../../src/decisions/open.ts';
import { onlyPlan } from '../../src/decisions/variants.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import { checkProgramme } from '../../src/model/check.ts';
import type { Programme } from '../../src/model/programme.ts';
import { rootOf, Stream } from '../../src/random/stream.ts';
import { normalFrom } from '../../src/random/draws.ts';
import { atLeast } from '../../src/statistics/binomial.ts';
import { expectMean, expectShare } from '../engine/agreement.ts';
import { cross, document, generation, kind, picksOf, plans, read, tree, type Document, type GenerationDocument } from '../engine/programmes.ts';
import { redPear, told } from './samples.ts';

/**
 * Two copies are needed. The mother has two, the father one: half of the seedlings by hand. In the air are the father (weight 1) and a tree
 * without any (weight 3), so that by open pollen one in eight is.
 */
const red = (changes: Partial<Document> = {}, first: Partial<GenerationDocument> = {}): Programme =>
  read(
    document({
      lastYear: 2012,
      trees: [tree('a', { genes: { r: { copies: 2 } } }), tree('b', { genes: { r: { copies: 1 } } }), tree('c', { genes: { r: { copies: 0 } } })],
      pools: [
        {
          id: 'air',
          name: 'lane',
          trees: [
            { tree: 'b', weight: 1 },
            { tree: 'c', weight: 3 },
          ],
        },
      ],
      defaultPool: 'air',
      hours: { perFlower: 2, perSeedling: 3 },
      plans: plans([generation('g', 1, first)]),
      ...changes,
    }),
  );
const ask = async (programme: Programme, runs = 2000, plan = 'plan-0') => (await told(open, programme, { plan, runs })).answer;

describe('open or crossed, against exact shares', () => {
  it('one seedling by hand is half the time what is wanted, by open pollen one time in eight; a flower by hand is two hours more', async () => {
    const { sites, clear } = await ask(red());
    const [hand, swapped, openly] = sites[0]!.ways;
    expect(sites[0]!.ways.map(({ how, asItStands }) => [how, asItStands])).toEqual([
      ['hand', true],
      ['swapped', false],
      ['open', false],
    ]);
    expectShare(Math.round(2000 * hand!.outcome.chance.value), 2000, 1 / 2);
    expectShare(Math.round(2000 * swapped!.outcome.chance.value), 2000, 1 / 2);
    expectShare(Math.round(2000 * openly!.outcome.chance.value), 2000, 1 / 8);
    expect(clear).toBe(true);
    expect(openly!.minusAsItStands!.chance.high).toBeLessThan(0);
    expect(openly!.yearsForHours).toMatchObject({ verdict: 'saves', moreHours: { value: -2, low: -2, high: -2 } });
    expect([hand!.flowers, openly!.flowers, openly!.air]).toEqual([1, null, 'lane']);
    expect(hand!.outcome.totalHours.mean).toBe(5);
  });

  it('hours for each year gained: two hours over the years between, as the shares and the first fruit say', async () => {
    const { sites } = await ask(red(), 4000);
    const { hoursPerYear, yearsGained } = sites[0]!.ways[2]!.yearsForHours!;
    // Proven in year 6 (up in 1, fruit in season 5) of the 13 from 2000 to 2012, or never: 3/8 of 7 years sooner by hand.
    const exact = (3 / 8) * 7;
    expect(Math.abs(yearsGained.value + exact)).toBeLessThan((4 / 1.96) * ((yearsGained.high - yearsGained.low) / 2));
    expect(hoursPerYear!.value).toBeCloseTo(2 / -yearsGained.value, 10);
    expect(hoursPerYear!.low).toBeLessThan(2 / exact);
    expect(hoursPerYear!.high).toBeGreaterThan(2 / exact);
  });

  it('crossed both ways round, each way alone; a plan that gathers seed is crossed as another plan crosses the tree, or with a tree of the air', async () => {
    const both = await ask(red({}, { reciprocal: true }), 100);
    expect(both.sites[0]!.ways.map(({ how }) => how)).toEqual(['bothWays', 'hand', 'swapped', 'open']);
    const gathered = { pollen: 'open', flowers: 0 } as const;
    const known = red({ plans: plans([generation('g', 4, gathered)], [generation('h', 9, { pollen: [{ tree: 'c' }], flowers: 7 })]) });
    expect((await ask(known, 100)).sites[0]!.ways[1]).toMatchObject({
      how: 'hand',
      fathers: [{ name: 'c', picks: false }],
      flowers: 7,
      flowersReckoned: false,
    });
    const alone = red({ crosses: [cross({ set: 0.5, germination: 0.25 })], plans: plans([generation('g', 4, { ...gathered, springs: 2 })]) });
    // Four seedlings in two springs, an eighth of a seedling to a flower.
    expect((await ask(alone, 100)).sites[0]!.ways[1]).toMatchObject({ how: 'hand', fathers: [{ name: 'b' }], flowers: 16, flowersReckoned: true });
  });
});

describe('mother or father', () => {
  const wide = (entries: NonNullable<Document['crosses']>): Programme =>
    read(
      document({
        lastYear: 2012,
        kinds: [kind(), kind({ id: 'quince', name: 'quince' })],
        trees: [tree('a', { genes: { r: { copies: 2 } } }), tree('q', { kind: 'quince', genes: { r: { copies: 2 } } })],
        crosses: entries,
        plans: plans([generation('g', 1, { pollen: [{ tree: 'q' }] })]),
      }),
    );

  const there = cross({ id: 'there', seed: 'pear', pollen: 'quince', set: 0.25 });
  const back = cross({ id: 'back', seed: 'quince', pollen: 'pear', set: 0.75 });

  it('each way round with its own entry', async () => {
    const { sites } = await ask(wide([there, back]));
    const [hand, swapped] = sites[0]!.ways;
    expectShare(Math.round(2000 * hand!.outcome.chance.value), 2000, 0.25);
    expectShare(Math.round(2000 * swapped!.outcome.chance.value), 2000, 0.75);
    expect(swapped).toMatchObject({ how: 'swapped', mothers: [{ name: 'q' }], fathers: [{ name: 'a' }], sameFigures: false });
    // No hours are counted here, so that the years cost none.
    expect(swapped!.yearsForHours!.verdict).toBe('better');
  });

  it('says which entry is missing where the other way round is not known, and that no pollen in the air is described', async () => {
    const { sites } = await ask(wide([there]), 100);
    expect(sites[0]!.ways.map(({ how }) => how)).toEqual(['hand']);
    expect(sites[0]!.missing).toMatchObject([
      { how: 'swapped', entry: { seed: 'quince', pollen: 'pear' }, noPool: false },
      { how: 'open', entry: null, noPool: true },
    ]);
  });

  it('one entry for a kind with itself says nothing of the way round; picks with each other have no way round', async () => {
    const programme = red({ plans: plans([generation('g', 6), generation('h', 1, { seedParents: picksOf('g'), pollen: picksOf('g') })]) });
    const { sites } = await ask(programme, 100);
    expect(sites[0]!.ways[1]).toMatchObject({ how: 'swapped', sameFigures: true });
    expect(sites[1]!.ways.map(({ how }) => how)).toEqual(['hand', 'open']);
    expect(sites[1]!.ways[0]!.mothers).toEqual([{ name: 'g', picks: true }]);
  });
});

describe('variants', () => {
  it('every one is a programme that runs, and the plan as it stands is the same futures as ever', async () => {
    for (const plan of redPear.plans)
      for (const { ways } of pollenSites(onlyPlan(redPear, plan.id), redPear, plan))
        for (const { programme } of ways) expect(checkProgramme(programme).filter(({ stops }) => stops)).toEqual([]);
    const { sites, futures } = await ask(redPear, 300, 'wide-rescue');
    const columns = new Simulator(redPear).runs([3], 0, 300)[0]!;
    expect(futures).toBe(300);
    expect(sites[0]!.ways[0]!.outcome.chance.value * 300).toBeCloseTo(columns.run('yearProven').filter((year) => year >= 0).length, 8);
    expect(sites[0]!.missing).toMatchObject([{ how: 'swapped', entry: { seed: 'quince', pollen: 'pear' } }]);
  });

  it('only the generation asked for', async () => {
    const { answer } = await told(open, redPear, { plan: 'wide-rescue', runs: 100, generation: 'd2' });
    expect(answer.sites.map((site) => site.generation)).toEqual(['d2']);
  });

  it('or no answer', async () => {
    expect(await open.ask(redPear, { plan: 'nobody' }, inlineFutures(), () => undefined)).toMatchObject({ cannotSay: 'noPlan' });
  });
});

describe('hours for years', () => {
  it('counts a future without a proven tree to the end of the last judging year', () => {
    const columns = new Simulator(red()).runs([0], 0, 500)[0]!;
    const proven = columns.run('yearProven');
    yearsWaited(columns).forEach((years, r) => expect(years).toBe(proven[r]! < 0 ? 13 : proven[r]));
    expectMean(yearsWaited(columns), (6 + 13) / 2);
    expect(yearsForHours(columns, columns)).toEqual({
      yearsGained: { value: 0, low: 0, high: 0 },
      moreHours: { value: 0, low: 0, high: 0 },
      verdict: 'unclear',
      hoursPerYear: null,
    });
  });

  it('a ratio of means holds the true one 95 times in 100, and has no interval where the years could be none (Fieller 1954)', () => {
    const stream = new Stream(rootOf('ratio'));
    const sample = (s: number) => {
      const years = new Float64Array(60);
      const hours = years.map((_, r) => {
        stream.future(s, r).key(1);
        const shared = normalFrom(stream.uniform());
        years[r] = 2 + shared;
        return 10 + 3 * shared + 4 * normalFrom(stream.uniform());
      });
      return ratioOfMeans(hours, years)!;
    };
    const missed = Array.from({ length: 600 }, (_, s) => sample(s)).filter(({ low, high }) => low > 5 || high < 5).length;
    expect(atLeast(missed, 600, 0.05)).toBeGreaterThan(3.167e-5);
    expect(atLeast(600 - missed, 600, 0.95)).toBeGreaterThan(3.167e-5);
    expect(ratioOfMeans([1, 2, 3, 4], [1, -1, 1, -1])).toBeNull();
    // By hand: a is twice b without error.
    const exact = ratioOfMeans([2, 4, 6], [1, 2, 3]);
    expect(exact!.value).toBeCloseTo(2, 12);
    expect(exact!.low).toBeCloseTo(2, 6);
    expect(exact!.high).toBeCloseTo(2, 6);
  });
});
