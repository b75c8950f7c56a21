import { describe, expect, it } from 'vitest';
import { sharesOf, type GraftMap } from '../../src/decisions/graft-map.ts';
import { graft } from '../../src/decisions/graft.ts';
import { inlineFutures } from '../../src/decisions/inline.ts';
import { differenceOf, outcomeOf } from '../../src/decisions/outcome.ts';
import { mainSite, rescueSites } from '../../src/decisions/rescue-sites.ts';
import { rootsVariants } from '../../src/decisions/roots-line.ts';
import { onlyPlan, withStock } from '../../src/decisions/variants.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import type { Programme } from '../../src/model/programme.ts';
import { atLeast as binomialAtLeast } from '../../src/statistics/binomial.ts';
import { aliveAt } from '../../src/statistics/graft.ts';
import { expectShare } from '../engine/agreement.ts';
import { cross, document, generation, plans, read, stock } from '../engine/programmes.ts';
import { oneWeak, PC7, redPear, told } from './samples.ts';

const PLAN = { plan: 'plan-0' };

describe('which generations a rescue could serve', () => {
  it('those whose wanted seedlings can be weak, with their own rescue or one that could be', () => {
    const sites = rescueSites(redPear, redPear.plans[3]!);
    expect(sites.map(({ generation: { id }, entries, stands }) => [id, entries.map((entry) => entry.id), stands])).toEqual([
      ['d1', ['wide'], 'weak'],
      ['d2', ['back'], 'none'],
    ]);
    expect(sites[0]!.rescue).toBe(redPear.plans[3]!.generations[0]!.rescue);
    expect(sites[1]!.rescue).toMatchObject({ who: 'weak', stock: 'field-pear', scions: 1 });
    expect(sites[1]!.rescue.month).toBeGreaterThanOrEqual(2);
    expect(mainSite(sites)).toBe(sites[0]);
    expect(mainSite(rescueSites(redPear, redPear.plans[2]!))?.generation.id).toBe('c1');
  });

  it('or why there is none', async () => {
    const ask = (programme: Programme, plan: string) => graft.ask(programme, { plan }, inlineFutures(), () => undefined);
    expect(await ask(redPear, 'nobody')).toMatchObject({ cannotSay: 'noPlan' });
    expect(await ask(redPear, 'brother-sister')).toMatchObject({ cannotSay: 'nothingWeak' });
    expect(await ask({ ...oneWeak(1, {}, null), stocks: [] }, 'plan-0')).toMatchObject({ cannotSay: 'noStock' });
    expect(await ask(read(document({ plans: plans([generation('g', 1)]) })), 'plan-0')).toMatchObject({ cannotSay: 'nothingWeak' });
  });
});

describe('graft or not, against exact answers (check PC7 of the project’s exact answers for whole plans)', () => {
  it('chances of every way, in steps that end with all futures', async () => {
    const { answer, reports } = await told(graft, oneWeak(0.6), { ...PLAN, runs: 4000, withoutMap: true });
    const [site] = answer.sites;
    const chance = Object.fromEntries(site!.ways.map(({ who, outcome }) => [who, outcome.chance.value]));
    // One draw for the cross: cured in 0.6 of the futures, dead but for 2.7 in 100,000 in the others.
    const grafted = 0.6 * 0.3855852918263674 + 0.4 * 2.703376406445311e-5;
    expectShare(Math.round(4000 * chance['weak']!), 4000, grafted);
    expectShare(Math.round(4000 * chance['none']!), 4000, 6.103515625e-5);
    // All seedlings are weak: every seedling is the weak ones, future by future.
    expect(chance['every']).toBe(chance['weak']);
    expect(site).toMatchObject({ stands: 'weak', best: 'weak', clear: true, month: PC7.month });
    expect(answer).toMatchObject({ clear: true, done: true, futures: 4000 });
    expect([...new Set(reports.map(({ futures }) => futures))]).toEqual([100, 1000, 4000]);
    expect(reports.map(({ done }) => done)).toEqual(reports.map((_, i) => i === reports.length - 1));
  });

  it('what is gained against the chance that weakness sits in the roots: a line with its break-even', async () => {
    // Nearly sound on their own roots (half dead by 200 months), so that an uncured graft loses.
    const slow = { share: 1, onset: 2, course: { halfLife: 200 }, rootBorne: { chance: 0.5 } };
    const programme = oneWeak(0.5, { crosses: [cross({ weakness: slow })], stocks: [stock({ takeTender: 0.9, takeRipe: 0.9, yearlyLoss: 0.01 })] });
    const { answer } = await told(graft, programme, { ...PLAN, runs: 1000, withoutMap: true });
    const alive = aliveAt(3, 2, 200);
    const own = aliveAt(72, 2, 200);
    const [ifRoots, ifTop] = [alive * 0.9 * 0.99 ** 6 - own, own * 0.9 * 0.99 ** 6 - own];
    const { points, breakEven } = answer.roots!;
    for (const { rootChance, difference } of points) {
      const exact = rootChance * ifRoots + (1 - rootChance) * ifTop;
      // A 95 % half-width is 1.96 standard errors.
      expect(Math.abs(difference.value - exact)).toBeLessThan((4 / 1.96) * ((difference.high - difference.low) / 2));
    }
    const exactBreakEven = -ifTop / (ifRoots - ifTop);
    expect(exactBreakEven).toBeGreaterThan(0.2);
    expect(Math.abs(breakEven!.value - exactBreakEven)).toBeLessThan((4 / 1.96) * ((breakEven!.high - breakEven!.low) / 2));
    expect(breakEven!.low).toBeLessThan(breakEven!.value);
    expect(breakEven!.high).toBeGreaterThan(breakEven!.value);
  });

  it('the share that truly is good stands beside the chances of that line, and at its ends is that of the futures there', async () => {
    const { answer } = await told(graft, { ...redPear, runs: 200 }, { plan: 'wide-rescue', withoutMap: true });
    const { points } = answer.roots!;
    const site = rescueSites(
      redPear,
      redPear.plans.find(({ id }) => id === 'wide-rescue')!,
    )[0]!;
    const [grafted, own] = rootsVariants(onlyPlan(redPear, 'wide-rescue'), site);
    for (const [variant, share] of [
      [grafted!, points.at(-1)!.trulyGood.grafted],
      [own!, points.at(-1)!.trulyGood.own],
    ] as const) {
      const [columns] = await inlineFutures().run(variant.programme, [0], 0, 200);
      expect(share).toEqual(outcomeOf(columns!, 0).trulyGood);
    }
    const [low, middle, high] = [points[0]!, points[10]!, points.at(-1)!].map(({ trulyGood }) => trulyGood.grafted!.value);
    expect(middle).toBeGreaterThanOrEqual(Math.min(low!, high!));
    expect(middle).toBeLessThanOrEqual(Math.max(low!, high!));
  });

  it('two ways that are the same make no clear difference', async () => {
    const sound = oneWeak(0.6, { crosses: [cross({ weakness: { share: 0, onset: 2, course: { halfLife: 5 }, rootBorne: { chance: 0.5 } } })] });
    const { answer } = await told(graft, sound, { ...PLAN, runs: 300, withoutMap: true });
    const weak = answer.sites[0]!.ways.find(({ who }) => who === 'weak')!;
    expect(weak.minusOwnRoots).toMatchObject({ clear: false, chance: { value: 0 }, totalHours: { value: 0, low: 0, high: 0 } });
    expect(answer.sites[0]!.best).toBe('none');
    // Grafting every sound seedling loses half of them: that is clear; grafting none of none is not.
    expect(answer.sites[0]!.ways.find(({ who }) => who === 'every')!.minusOwnRoots!.clear).toBe(true);
    expect(answer.clear).toBe(false);
  });
});

describe('the map', () => {
  // Sure cure, no loss on the stock: a cell's chances are known.
  const programme = oneWeak(1, { stocks: [stock({ takeTender: 0.5, takeRipe: 0.5 })] });
  const exact = (halfLife: number, take: number) => aliveAt(3, 2, halfLife) * take - aliveAt(72, 2, halfLife);
  const asked = told(graft, programme, { ...PLAN, runs: 100 });

  it('is there coarse first, then sharper, then whole', async () => {
    const { reports, answer } = await asked;
    const sizes = reports.flatMap(({ map }) =>
      map ? [`${String(map.halfLives.length)} × ${String(Math.min(...map.cells.map(({ futures }) => futures)))}`] : [],
    );
    expect(sizes[0]).toBe('5 × 100');
    expect([...new Set(sizes)]).toEqual(['5 × 100', '15 × 100', '15 × 300']);
    expect(answer.map!.cells).toHaveLength(225);
    const coarse = reports.find(({ map }) => map)!.map!;
    expect(coarse.halfLives).toEqual([1, 4, 7, 10, 13].map((i) => answer.map!.halfLives[i]));
  });

  it('has the exact gain in its cells, within 4 standard errors each', async () => {
    const { map } = (await asked).answer;
    const { halfLives, takes, cells } = map!;
    takes.forEach((take, row) =>
      halfLives.forEach((halfLife, column) => {
        const { difference, wins } = cells[row * halfLives.length + column]!;
        const gain = exact(halfLife, take);
        // 225 cells of 300 futures: 4 errors of the adjusted interval, whose half-width is 1.96 of them.
        expect(Math.abs(difference.value - gain), `${String(halfLife)} months, ${String(take)}`).toBeLessThan(
          (4 / 1.96) * ((difference.high - difference.low) / 2),
        );
        expect(wins).toBe(difference.low > 0 ? 'graft' : difference.high < 0 ? 'own' : null);
      }),
    );
  });

  it('has its break-even where the exact one lies: no more columns miss it than 95 % intervals may', async () => {
    const { map } = (await asked).answer;
    const held = map!.line.filter(({ low, high }, column) => {
      const halfLife = map!.halfLives[column]!;
      const take = Math.min(1, aliveAt(72, 2, halfLife) / aliveAt(3, 2, halfLife));
      // Below the lowest row looked at, the line is at its edge.
      return take < map!.takes[0]! ? low <= map!.takes[0]! : low - 1 / 30 <= take && take <= high + 1 / 30;
    });
    // One-sided chance of 4 standard errors, were the columns independent.
    expect(binomialAtLeast(map!.line.length - held.length, map!.line.length, 0.05)).toBeGreaterThan(3.167e-5);
  });

  it('says where the guesses lie: all on the cell of a programme that knows everything', async () => {
    const { answer } = await asked;
    expect(answer.standing.middle.halfLife).toBeCloseTo(5, 10);
    expect(answer.standing.middle.take).toBeCloseTo(0.5, 10);
    expect(answer.guesses).toEqual({ graft: 1, own: 0, neither: 0 });
  });

  it('shares points out by the cell they fall in', () => {
    const cell = (wins: 'graft' | 'own' | null) => ({ difference: { value: 0, low: 0, high: 0 }, wins, futures: 1 });
    const map: GraftMap = {
      from: 1,
      to: 100,
      halfLives: [3, 30],
      takes: [0.25, 0.75],
      cells: [cell(null), cell('own'), cell('graft'), cell('graft')],
      line: [],
    };
    const points = [
      { halfLife: 9, take: 0.4 },
      { halfLife: 11, take: 0.4 },
      { halfLife: 11, take: 0.6 },
      { halfLife: 1000, take: 1 },
    ];
    expect(sharesOf(map, points)).toEqual({ graft: 0.5, own: 0.25, neither: 0.25 });
  });

  it('leaves backups on the same stock alone: their take is not the map’s', async () => {
    const backed = (take: number) =>
      oneWeak(1, {
        stocks: [stock({ takeTender: take, takeRipe: take })],
        plans: plans([
          generation('g', 1, { rescue: { who: 'weak', month: 3, stock: 'stock' }, backup: { copies: 1, stock: 'stock' } }),
          generation('h', 1, { seedParents: [{ picksOf: 'g' }] }),
        ]),
      });
    const { answer } = await told(graft, backed(0.5), { ...PLAN, runs: 100 });
    expect(answer.map!.cells).toHaveLength(225);
    expect(answer.map!.cells.some(({ wins }) => wins === 'graft')).toBe(true);
  });
});

describe('more of a good thing, on the same futures', () => {
  const runOf = (programme: Programme) => new Simulator(onlyPlan(programme, 'wide-rescue')).runs([0], 0, 1000)[0]!;
  const steps = [0.1, 0.3, 0.5, 0.7, 0.9];
  it.each([
    ['more take', (x: number) => withStock(redPear, 'field-pear', (entry) => ({ ...entry, takeTender: x, takeRipe: x }))],
    ['less loss on the stock', (x: number) => withStock(redPear, 'field-pear', (entry) => ({ ...entry, yearlyLoss: 0.3 * (1 - x) }))],
  ])('%s never lowers the chance by more than the paired error', (_, variant) => {
    const columns = steps.map((x) => runOf(variant(x)));
    columns.slice(1).forEach((better, i) => expect(differenceOf(better, columns[i]!).chance.high).toBeGreaterThan(0));
    expect(differenceOf(columns.at(-1)!, columns[0]!)).toMatchObject({ clear: true });
  });
});

describe('only so many stocks', () => {
  it('the weak before the sound, by the gain of a stock as reckoned (check PC7)', async () => {
    const mixed = oneWeak(1, {
      crosses: [cross({ weakness: { share: 0.5, onset: PC7.onset, course: { halfLife: PC7.halfLife }, rootBorne: { chance: 1 } } })],
    });
    const { answer } = await told(graft, mixed, { ...PLAN, runs: 400, withoutMap: true });
    const [first, second] = answer.stocks;
    expect([first!.batch, second!.batch]).toEqual(['weak', 'sound']);
    expect(first!.gain.mean).toBeCloseTo((0.3855852918263674 - 6.103515625e-5) / 0.8705505632961241, 12);
    expect(second!.gain.mean).toBeCloseTo(PC7.take * 0.98 ** 6 - 1, 12);
    expect(first!.first).toBe(1);
    expect(first!.kept).toBe(1);
    expect(first!.picksByTen!.mean).toBeCloseTo(10 * first!.gain.mean, 12);
  });

  it('in what is gained, as the engine has it: trees brought to fruit by the stocks used', async () => {
    const programme = oneWeak(1);
    const { answer } = await told(graft, programme, { ...PLAN, runs: 4000, withoutMap: true });
    const weak = answer.sites[0]!.ways.find(({ who }) => who === 'weak')!;
    const [use] = answer.stocks;
    const stocks = weak.outcome.grafts.mean * 4000;
    const gained = (weak.outcome.fruiting.mean - answer.sites[0]!.ways[0]!.outcome.fruiting.mean) * 4000;
    expectShare(Math.round(gained), Math.round(stocks), use!.gain.mean);
  });

  it('any of them, before the weakness shows', async () => {
    const early = oneWeak(
      1,
      { crosses: [cross({ weakness: { share: 0.5, onset: 6, course: { halfLife: 5 }, rootBorne: { chance: 1 } } })] },
      { who: 'every', month: 3, stock: 'stock' },
    );
    const { answer } = await told(graft, early, { ...PLAN, runs: 200, withoutMap: true });
    expect(answer.stocks.map(({ batch }) => batch)).toEqual(['any']);
    expect(answer.sites[0]!.ways.map(({ who }) => who)).toEqual(['none', 'every']);
    const own = 0.5 * aliveAt(72, 6, 5) + 0.5;
    expect(answer.stocks[0]!.gain.mean).toBeCloseTo(PC7.take * 0.98 ** 6 - own, 12);
  });
});
