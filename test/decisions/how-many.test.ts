import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countsAround, roundCount, wholeAround } from '../../src/decisions/how-many-grid.ts';
import { LEVERS, levers, leverSites, triedAt, type LeverId } from '../../src/decisions/how-many-levers.ts';
import { howMany, READ_AT, type HowManyAnswer, type HowManyOptions } from '../../src/decisions/how-many.ts';
import { inlineFutures } from '../../src/decisions/inline.ts';
import { differenceOf } from '../../src/decisions/outcome.ts';
import { runOne } from '../../src/decisions/steps.ts';
import { onlyPlan } from '../../src/decisions/variants.ts';
import { checkProgramme } from '../../src/model/check.ts';
import type { Programme } from '../../src/model/programme.ts';
import { GivenUp } from '../../src/workers/runner.ts';
import { cross, document, generation, kind, plans, read, shown, stock, tree } from '../engine/programmes.ts';
import { redPear, told } from './samples.ts';

const PLAN = { plan: 'plan-0' };
const ask = async (programme: Programme, options: HowManyOptions): Promise<HowManyAnswer> => (await told(howMany, programme, options)).answer;
/** One gene, one in four of the seedlings of a × b, one spring. */
const quarter = (flowers: number, seedlings: number, more: Parameters<typeof document>[0] | object = {}) =>
  read(
    document({
      lastYear: 2010,
      trees: ['a', 'b'].map((id) => tree(id, { genes: { r: { copies: 1 } } })),
      plans: plans([generation('g', seedlings, { flowers })]),
      ...more,
    }),
  );

describe('numbers that can be asked about', () => {
  it('are tried around the present one, as a person counts', () => {
    expect(countsAround(40, 1, 300)).toEqual([5, 8, 15, 25, 40, 60, 100, 200, 300]);
    expect([13, 140, 7, 999, 0.4].map(roundCount)).toEqual([12, 150, 8, 1000, 1]);
    expect(wholeAround(2, 1, 100)).toEqual([1, 2, 3, 4, 5, 6]);
    expect(wholeAround(1, 0, 20)).toEqual([0, 1, 2, 3, 4, 5, 6]);
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 100_000 }), fc.integer({ min: 1, max: 1_000_000 }), (present, most) => {
        const counts = countsAround(present, 1, Math.max(present, most));
        expect(counts.every((n, i) => Number.isInteger(n) && n >= 1 && n <= Math.max(present, most, 1) && (i === 0 || n > counts[i - 1]!))).toBe(true);
        expect(counts.length).toBeLessThanOrEqual(10);
      }),
    );
  });

  it('change that number alone, keep the programme runnable, and give it back where it is the present one', () => {
    const graded = shown(1, { grade: { mean: 0.5, sd: 0.2, fruitsCut: 5 } });
    const programme = read(
      document({
        traits: [graded],
        stocks: [stock()],
        trees: ['a', 'b', 'c', 'd'].map((id) => tree(id, { genes: { r: { copies: 1 } } })),
        plans: plans([
          generation('g', 20, { seedParents: [{ tree: 'a' }, { tree: 'b' }, { tree: 'c' }], pollen: [{ tree: 'd' }], goOn: { when: 'enough', count: 3 } }),
          generation('h', 20, { seedParents: [{ picksOf: 'g' }], pollen: [{ picksOf: 'g' }], backup: { copies: 2, stock: 'stock' } }),
        ]),
      }),
    );
    const [plan] = programme.plans;
    const sites = leverSites(programme, plan!);
    expect(new Set(sites.map(({ lever }) => lever))).toEqual(new Set(LEVERS));
    // The crosses of picks with each other are as many as there are picks.
    expect(sites.filter(({ lever }) => lever === 'crosses').map(({ generation: id, present }) => [id, present])).toEqual([['g', 3]]);
    expect(sites.find(({ lever }) => lever === 'fruitsCut')).toMatchObject({ generation: null, present: 5 });
    const path: Readonly<Record<LeverId, (entry: Programme, g: number) => unknown>> = {
      flowers: ({ plans: [one] }, g) => one!.generations[g]!.flowers,
      seedlings: ({ plans: [one] }, g) => one!.generations[g]!.seedlings,
      crosses: ({ plans: [one] }, g) => one!.generations[g]!.seedParents.length,
      picks: ({ plans: [one] }, g) => one!.generations[g]!.keep.howMany,
      seasons: ({ plans: [one] }, g) => one!.generations[g]!.judge,
      fruitsCut: ({ traits: [trait] }) => (trait?.type === 'shown' ? trait.grade?.fruitsCut : null),
      backups: ({ plans: [one] }, g) => one!.generations[g]!.backup?.copies ?? 0,
    };
    for (const site of sites) {
      const tried = triedAt(programme, plan!, site);
      expect(tried.length, site.lever).toBeGreaterThan(2);
      for (const { value, asItStands, programme: changed } of tried) {
        expect(path[site.lever](changed, site.position)).toBe(value);
        expect(checkProgramme(changed).filter(({ stops }) => stops)).toEqual([]);
        if (asItStands) expect(changed).toBe(programme);
        // Setting it back gives the document back, so nothing else was touched (fewer parents or picks cannot be set back).
        else if (!['crosses', 'picks'].includes(site.lever))
          expect(levers[site.lever].set(changed, 'plan-0', plan!.generations[site.position]!.id, site.present)).toEqual(programme);
        else expect({ ...changed, plans: [] }).toEqual({ ...programme, plans: [] });
      }
    }
  });

  it('leave flowers out where pollen comes by itself, and seasons with which the plan could not run', () => {
    const [open] = redPear.plans;
    expect(
      leverSites(redPear, open!)
        .filter(({ lever }) => lever === 'flowers')
        .map(({ generation: id }) => id),
    ).toEqual(['a2']);
    const alone = onlyPlan(redPear, 'brother-sister');
    const [plan] = alone.plans;
    const seasons = leverSites(alone, plan!).find(({ lever, generation: id }) => lever === 'seasons' && id === 'b2');
    // Its keepers must have shown red flesh in two crops: judged in one, none could.
    const values = triedAt(alone, plan!, seasons!).map(({ value }) => value);
    expect(values).toContain(3);
    expect(values).not.toContain(0);
  });
});

describe('how many', () => {
  const wideRescue = told(howMany, redPear, { plan: 'wide-rescue', runs: 1200 });

  it('asks by itself about flowers of the generation with fewest seedlings, or about what it is told', async () => {
    expect(await ask(redPear, { plan: 'wide-rescue', runs: 20 })).toMatchObject({ lever: 'flowers', generation: 'd1', present: 40 });
    expect(await ask(redPear, { plan: 'wide-rescue', generation: 'd2', runs: 20 })).toMatchObject({ lever: 'flowers', generation: 'd2', present: 240 });
    const seasons = await ask(redPear, { plan: 'wide-rescue', generation: 'd2', lever: 'seasons', chance: 0.5, runs: 20 });
    expect(seasons).toMatchObject({ lever: 'seasons', generation: 'd2', present: 3, backwards: { wanted: 0.5 } });
    const nobody = await howMany.ask(redPear, { plan: 'none' }, inlineFutures(), () => undefined);
    expect(nobody).toMatchObject({ cannotSay: 'noPlan' });
  });

  it('tells the reckoned answer first, then pictures that sharpen; plain data throughout', async () => {
    const { answer, reports } = await wideRescue;
    expect(reports.map(({ futures, done }) => [futures, done])).toEqual([
      [0, false],
      [100, false],
      [1000, false],
      [1200, true],
    ]);
    expect(reports[0]).toMatchObject({ points: [], readOffs: [], exact: { generation: 'd1' } });
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
    expect(answer.points.find(({ asItStands }) => asItStands)).toMatchObject({ value: 40, minusPresent: null });
    expect(answer.limits).toEqual({ hands: 960, offered: 300, hours: 160 });
    for (const { chances, outcome } of answer.points) {
      expect(chances).toHaveLength(answer.years.length);
      expect(chances.at(-1)).toEqual(outcome.chance);
      for (const { value, low, high } of chances) expect(low <= value && value <= high).toBe(true);
    }
  });

  it('answers for trees crossed and fruits cut: one copy in one of three fathers, half of the fruit to be red', async () => {
    const programme = read(
      document({
        lastYear: 2010,
        traits: [shown(1, { grade: { mean: 0.5, sd: 0.1, fruitsCut: 4 } })],
        goal: { conditions: [{ type: 'shown', trait: 'red', grade: 'full', atLeast: 1 }], crops: 1 },
        trees: [tree('a', { genes: { r: { copies: 0 } } }), ...['b', 'c', 'd'].map((id) => tree(id, { genes: { r: { copies: id === 'd' ? 2 : 0 } } }))],
        plans: plans([generation('g', 12, { flowers: 12, pollen: ['b', 'c', 'd'].map((id) => ({ tree: id })) })]),
      }),
    );
    const crosses = await ask(programme, { ...PLAN, lever: 'crosses', runs: 400 });
    // Only the third father has the allele: without him nothing can show.
    expect(crosses.points.map(({ value, outcome }) => [value, outcome.chance.value > 0])).toEqual([
      [1, false],
      [2, false],
      [3, true],
    ]);
    const cut = await ask(programme, { ...PLAN, lever: 'fruitsCut', runs: 400 });
    expect(cut).toMatchObject({ generation: null, present: 4, best: 1 });
    // The more fruits are cut, the seldomer all of them are red: one cut is red half of the time, so 1 − 0.5⁴ with four right seedlings.
    const one = cut.points[0]!.outcome.chance;
    expect(one.value - 2 * (one.value - one.low)).toBeLessThan(0.9375);
    expect(one.value + 2 * (one.high - one.value)).toBeGreaterThan(0.9375);
    expect(cut.rises).toBe(false);
  });

  it('gives up when it is no longer asked', async () => {
    const ended = new AbortController();
    const asked = howMany.ask(redPear, { plan: 'wide-rescue' }, inlineFutures(ended.signal), () => ended.abort());
    await expect(asked).rejects.toThrow(GivenUp);
  });

  it('looks at the last judging year, and at those by which half and a quarter of its chance are there', async () => {
    const { years, points } = (await wideRescue).answer;
    const present = points.find(({ asItStands }) => asItStands)!;
    expect(years).toHaveLength(3);
    expect(years[2]).toBe(2057);
    const [quarterOf, half, all] = present.chances.map(({ value }) => value);
    expect(half!).toBeGreaterThanOrEqual(all! / 2);
    expect(quarterOf!).toBeGreaterThanOrEqual(all! / 4);
    // A year earlier it was not there yet: one spring brings less than that.
    expect(half!).toBeLessThan(0.75 * all!);
    expect(quarterOf!).toBeLessThan(half!);
  });

  it('reads off what reaches each chance; “not reached” and “already there” are said', async () => {
    const { readOffs, points, years, rises } = (await wideRescue).answer;
    expect(rises).toBe(true);
    expect(readOffs.map(({ year, chance }) => [year, chance])).toEqual(years.flatMap((year) => READ_AT.map((chance) => [year, chance])));
    const half = readOffs.find(({ year, chance }) => year === 2057 && chance === 0.5)!;
    const [below, above] = [points.findLast(({ value }) => value <= half.at!)!, points.find(({ value }) => value >= half.at!)!];
    expect(below.outcome.chance.value).toBeLessThanOrEqual(0.5);
    expect(above.outcome.chance.value).toBeGreaterThanOrEqual(0.5);
    expect(half.low!).toBeLessThan(half.at!);
    expect(half.high!).toBeGreaterThan(half.at!);
    expect(readOffs.find(({ year, chance }) => year === 2057 && chance === 0.95)).toMatchObject({ at: null, already: false, high: null });
    const sure = await ask(quarter(400, 400), { ...PLAN, runs: 200 });
    // 50 flowers and a quarter of them right: 1 − 0.75⁵⁰ is past 95 % at the first number tried.
    expect(sure.readOffs.every(({ already, at }) => already && at === sure.points[0]!.value)).toBe(true);
  });

  it('says past which number more buys little, and what holds back there', async () => {
    const { enough, clear, heldBack, points } = await ask(quarter(32, 8), { ...PLAN, runs: 600 });
    // Of 8 seedlings at most, every flower past the eighth is wasted; 6 and 12 are the numbers tried round it.
    expect(points.map(({ value }) => value).slice(0, 4)).toEqual([4, 6, 12, 20]);
    expect(enough).toBe(12);
    expect(clear).toBe(false);
    expect(points.find(({ value }) => value === enough)!.allRaised!.value).toBe(1);
    expect(heldBack).toMatchObject({ failure: 'noneGoodEnough', generation: 'g' });
    expect(heldBack!.share.value).toBeCloseTo(1 - points.find(({ value }) => value === enough)!.outcome.chance.value, 12);
    const more = await ask(quarter(2, 1000, { crosses: [cross({ set: 0.3 })] }), { ...PLAN, runs: 600 });
    expect(more.clear).toBe(true);
    expect(more.best).toBe(15);
    expect(more.heldBack).toBeNull();
  });

  it('works backwards through the steps to the narrowest', async () => {
    const changes = { kinds: [kind({ firstYearLoss: 0.5 })] };
    const backwards = async (set: number, germination: number) =>
      (await ask(quarter(60, 100_000, { ...changes, crosses: [cross({ set, germination })] }), { ...PLAN, runs: 600 })).backwards!;
    const germination = await backwards(0.6, 0.1);
    expect(germination.chain.map(({ stage }) => stage)).toEqual(['flowers', 'fruits', 'seeds', 'seedlings', 'fruiting', 'showing', 'kept']);
    expect(germination.narrowest).toMatchObject({ stage: 'seedlings' });
    expect(germination.narrowest!.gain).toBeCloseTo(1 + (0.1 * (1 - germination.narrowest!.pass.value)) / germination.narrowest!.pass.value, 12);
    // Within its 95 % interval, doubled for four standard errors.
    const { value, high, low } = germination.narrowest!.pass;
    expect(Math.abs(value - 0.1)).toBeLessThan(high - low);
    expect((await backwards(0.1, 0.6)).narrowest).toMatchObject({ stage: 'fruits' });
    // With set and germination good, the right genes are in one of four.
    expect((await backwards(0.6, 0.6)).narrowest).toMatchObject({ stage: 'showing' });
    // 1 − (1 − p)ⁿ = 0.8 at a flower’s p = 0.6 · 0.1 · 0.5 · 0.25: 213 flowers. Twice its 95 % interval is four standard errors.
    const { at, low: least, high: most } = germination.needed;
    expect(at! - 2 * (at! - least!)).toBeLessThan(213.8);
    expect(at! + 2 * (most! - at!)).toBeGreaterThan(213.8);
    expect(germination.at).toBe(germination.needed.at);
  });

  it('does not call a step narrow at which only what nobody wants is lost', async () => {
    // One seed in twenty comes up, but 4 is all that is wanted and thousands of flowers are at hand: 1 − 0.75⁴ = 0.68.
    const { backwards } = await ask(quarter(5000, 4, { crosses: [cross({ germination: 0.05 })] }), { ...PLAN, runs: 300 });
    expect(backwards!.chain.find(({ stage }) => stage === 'seedlings')!.full).toBe(true);
    expect(backwards!.narrowest).toMatchObject({ stage: 'showing' });
  });
});

describe('more flowers', () => {
  const share = fc.double({ min: 0.05, max: 1, noNaN: true });
  const paired = async (programme: Programme, flowers: readonly number[], runs: number) => {
    const futures = inlineFutures();
    const [plan] = programme.plans;
    const columns = await Promise.all(
      flowers.map((n) => runOne(futures, { programme: levers.flowers.set(programme, plan!.id, plan!.generations[0]!.id, n), plan: 0 }, 0, runs)),
    );
    return columns.slice(1).map((more, i) => differenceOf(more, columns[i]!).chance);
  };

  it('never lower the chance by more than its paired error on the same futures, where there is room (4 standard errors)', async () => {
    await fc.assert(
      fc.asyncProperty(
        share,
        share,
        share,
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: 5, max: 60 }),
        async (set, germination, lives, springs, seedlings) => {
          const programme = quarter(10, seedlings, {
            lastYear: 2016,
            weather: { frostChance: 0.2, springLuckSet: 0.1, springLuckGermination: 0.1 },
            kinds: [kind({ firstYearLoss: 1 - lives })],
            crosses: [cross({ set, germination })],
            plans: plans([generation('g', seedlings, { flowers: 10, springs })]),
          });
          for (const { value, high } of await paired(programme, [3, 6, 12, 25, 50, 100], 200)) expect(value + 2 * (high - value)).toBeGreaterThanOrEqual(0);
        },
      ),
      { numRuns: 25 },
    );
  });

  it('nor in the whole example', async () => {
    for (const id of ['brother-sister', 'wide-rescue'])
      for (const { value, high } of await paired(onlyPlan(redPear, id), [5, 15, 40, 120, 300], 500))
        expect(value + 2 * (high - value), id).toBeGreaterThanOrEqual(0);
  });
});
