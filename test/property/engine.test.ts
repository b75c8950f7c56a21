import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frameOf } from '../../src/engine/frame.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import type { Programme } from '../../src/model/programme.ts';
import { parseProgramme } from '../../src/model/read.ts';
import { GENERATION_COLUMNS, RUN_COLUMNS, type Columns, type GenerationColumn } from '../../src/results/columns.ts';
import { FAILURES } from '../../src/results/outlook.ts';
import { compareAll, planOutlook } from '../../src/statistics/outlook.ts';
import { total } from '../engine/agreement.ts';
import { bytesOf } from '../contract/bytes.ts';
import { programmes } from './arbitrary.ts';

const RUNS = 12;
/** Float32 keeps seven digits. */
const near = (a: number, b: number) => Math.abs(a - b) <= 1e-4 * Math.max(1, Math.abs(b));

/** Every complaint about the columns of one plan, in words: none are expected. */
function complaints(programme: Programme, p: number, columns: Columns): string[] {
  const found: string[] = [];
  const plan = programme.plans[p]!;
  const rounds = plan.generations.flatMap((generation) => Array.from({ length: generation.repeat }, () => generation));
  const years = programme.lastYear - programme.startYear;
  const { places, bloomDays, hoursADay, flowersAnHour } = programme.limits;
  const most = Math.max(...programme.crosses.map(({ seedsAtMost }) => seedsAtMost ?? 1), ...programme.kinds.map(({ seedsAtMost }) => seedsAtMost));
  if (columns.shape.generations !== rounds.length) found.push('rounds');
  for (let run = 0; run < columns.runs; run += 1) {
    const of = (name: (typeof RUN_COLUMNS)[number]) => columns.run(name)[run]!;
    const at = (g: number, name: GenerationColumn) => columns.generation(g, name)[run]!;
    const amount = (name: Parameters<Columns['amount']>[0]) => columns.amount(name)[run]!;
    const holds = (claim: boolean, what: string) => {
      if (!claim) found.push(`run ${String(run)}: ${what}`);
    };
    const sum = (name: GenerationColumn) => rounds.reduce((all, _, g) => all + at(g, name), 0);
    for (const name of RUN_COLUMNS) holds(of(name) >= (name.startsWith('year') || name === 'failure' ? -1 : 0), `${name} is below its floor`);
    for (const name of ['flowers', 'fruits', 'seedlings', 'fruiting'] as const)
      holds(of(name) === sum(name), `${name} of the run is not that of its generations`);
    holds(of('trulyGood') <= of('proven'), 'more truly good than proven');
    holds(of('yearProven') >= 0 === of('proven') >= programme.goal.trees, 'proven year and proven trees disagree');
    holds(of('yearProven') >= 0 === (of('failure') === -1), 'a reason with success, or none without');
    holds(of('failure') < FAILURES.length, 'unknown reason');
    holds(of('trulyGood') === 0 || of('yearStood') >= 0, 'a truly good tree that never bore');
    holds(of('yearProven') <= years && of('yearStood') <= years, 'a year after the horizon');
    holds(of('planted') + of('noRoom') <= of('seedlings'), 'more planted and without room than raised');
    holds(of('fruiting') === 0 || of('seedlings') > 0, 'fruit without seedlings');
    holds(of('weakSaved') <= of('grafts'), 'more saved than grafted');
    holds(of('judgings') === 0 || of('fruiting') > 0, 'judged without fruit');
    holds(amount('mostPlaces') <= places + 1e-9, `${String(amount('mostPlaces'))} places of ${String(places)}`);
    holds(amount('treeYears') <= places * (years + 1) + 1e-6, 'more tree-years than places × years');
    holds(amount('busiestHours') <= amount('totalHours') + 1e-9 && amount('busiestMoney') <= amount('totalMoney') + 1e-9, 'a busiest year above the sum');
    const year = (name: 'hours' | 'places' | 'flowers') => Array.from({ length: years + 1 }, (_, y) => columns.year(name, y)[run]!);
    holds(
      near(
        year('hours').reduce((a, b) => a + b, 0),
        amount('totalHours'),
      ),
      'hours by year do not add up',
    );
    holds(near(Math.max(...year('hours')), amount('busiestHours')), 'busiest year is none of the years');
    holds(near(Math.max(...year('places')), amount('mostPlaces')), 'most places in none of the years');
    holds(Math.max(...year('flowers')) <= bloomDays * hoursADay * flowersAnHour + 1e-6, 'more flowers in a spring than hands can do');
    rounds.forEach((generation, g) => {
      const says = (claim: boolean, what: string) => holds(claim, `generation ${String(g)}: ${what}`);
      for (const name of GENERATION_COLUMNS) says(at(g, name) >= -1, `${name} below −1`);
      if (generation.pollen !== 'open') says(at(g, 'fruits') <= at(g, 'flowers'), 'more fruits than flowers');
      else says(at(g, 'flowers') === 0, 'open fruit took flowers');
      says(at(g, 'seeds') <= most * at(g, 'fruits'), 'more seeds than the fruits hold');
      says(at(g, 'seedlings') <= at(g, 'seeds'), 'more seedlings than seeds');
      says(at(g, 'seedlings') <= generation.seedlings, 'more seedlings than wanted');
      says(at(g, 'aliveAtGraft') <= at(g, 'seedlings'), 'more grafted than raised');
      says(at(g, 'fruiting') <= at(g, 'seedlings'), 'more in fruit than raised');
      says(at(g, 'showing') <= at(g, 'fruiting'), 'more show than fruit');
      says(at(g, 'kept') <= at(g, 'fruiting'), 'more kept than fruited');
      says(generation.judge > 0 || at(g, 'showing') === 0, 'shows without judging');
      const steps = (['firstPollination', 'firstSeedling', 'firstFruit', 'firstPick'] as const).map((name) => at(g, name));
      steps.forEach((step, i) => {
        says(step <= years, 'a milestone after the horizon');
        if (i > 0 && step >= 0)
          says(
            steps[i - 1]! >= 0 && steps[i - 1]! <= step - (i < 3 ? 1 : 0),
            `milestone ${String(i)} (${String(step)}) before the one before (${String(steps[i - 1])})`,
          );
      });
      says(at(g, 'lastWork') >= Math.max(...steps), 'milestone after the last work');
      says(at(g, 'kept') > 0 === steps[3]! >= 0, 'a pick without a year');
      says(at(g, 'fruiting') > 0 === steps[2]! >= 0, 'fruit without a year');
      says(at(g, 'seedlings') > 0 === steps[1]! >= 0, 'seedlings without a year');
      if (g > 0 && steps[0]! >= 0 && generation.repeat === 1 && generation.after === undefined)
        says(at(g - 1, 'kept') > 0 || at(g - 1, 'firstPollination') >= 0, 'began before the one before');
    });
  }
  return found;
}

describe('any programme (fast-check, fixed seed)', () => {
  it('runs, and conserves flowers, fruit, seed, trees, room and hours', () => {
    let ran = 0;
    let reached = 0;
    fc.assert(
      fc.property(programmes, (document) => {
        const reading = parseProgramme(document);
        fc.pre(reading.ok);
        const { programme } = reading;
        const positions = programme.plans.map((_, p) => p);
        const simulator = new Simulator(programme);
        const columns = simulator.runs(positions, 0, RUNS);
        ran += 1;
        if (columns.some((plan) => total(plan.run('proven')) > 0)) reached += 1;
        expect(columns.flatMap((plan, p) => complaints(programme, p, plan))).toEqual([]);
        const frame = frameOf(programme);
        const years = programme.lastYear - programme.startYear + 1;
        const provenBy = simulator.factSets(positions, 0, 2, 3);
        expect(provenBy).toHaveLength(positions.length * 2 * years);
        columns.forEach((plan, p) => {
          const outlook = planOutlook(frame, p, plan, { provenBy: provenBy.subarray(p * 2 * years, (p + 1) * 2 * years), sets: 2, futures: 3 });
          const reasons = Object.values(outlook.failures);
          expect(reasons.reduce((a, b) => a + b, 0) + outlook.chance.value).toBeCloseTo(1, 12);
          for (const { value, low, high } of [outlook.chance, ...outlook.chanceByYear]) {
            expect(low <= value && value <= high && low >= 0 && high <= 1).toBe(true);
          }
          expect(outlook.chanceByYear.at(-1)?.value).toBe(outlook.chance.value);
          outlook.chanceByYear.forEach(({ value }, y) => expect(value).toBeGreaterThanOrEqual(outlook.chanceByYear[y - 1]?.value ?? 0));
          expect(outlook.byRule.every(({ runs }) => runs <= RUNS)).toBe(true);
          outlook.generations.forEach(({ reached: share, picked, going }) => expect([share, picked, ...going].every((x) => x >= 0 && x <= 1)).toBe(true));
        });
        expect(compareAll(frame, columns)).toHaveLength((positions.length * (positions.length - 1)) / 2);
      }),
      { seed: 20261125, numRuns: 500 },
    );
    // A generator whose programmes are all refused, or never succeed, would test nothing.
    expect(ran).toBe(500);
    expect(reached).toBeGreaterThan(60);
  });

  it('gives the same bytes when its futures are run in pieces, and on a simulator that has run others', () => {
    fc.assert(
      fc.property(programmes, fc.integer({ min: 1, max: RUNS - 1 }), (document, cut) => {
        const reading = parseProgramme(document);
        fc.pre(reading.ok);
        const positions = reading.programme.plans.map((_, p) => p);
        const simulator = new Simulator(reading.programme);
        const whole = simulator.runs(positions, 0, RUNS);
        const [later, first] = [simulator.runs(positions, cut, RUNS - cut), simulator.runs(positions, 0, cut)];
        expect(bytesOf(whole.map((columns) => columns.first(cut)))).toEqual(bytesOf(first));
        whole.forEach((columns, p) => {
          for (const name of RUN_COLUMNS) expect(columns.run(name).subarray(cut)).toEqual(later[p]!.run(name));
          expect(bytesOf(simulator.runs([p], 0, RUNS))).toEqual(bytesOf([columns]));
        });
      }),
      { seed: 7, numRuns: 80 },
    );
  });

  it('tells each future as a diary that ends when the future does', () => {
    fc.assert(
      fc.property(programmes, fc.integer({ min: 0, max: 5 }), (document, run) => {
        const reading = parseProgramme(document);
        fc.pre(reading.ok);
        const simulator = new Simulator(reading.programme);
        expect(simulator.diary(0, run)).toEqual(new Simulator(reading.programme).diary(0, run));
      }),
      { seed: 11, numRuns: 60 },
    );
  });
});
