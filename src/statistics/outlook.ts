import type { Columns } from '../results/columns.ts';
import type { Frame, GenerationFrame } from '../results/frame.ts';
import {
  FAILURES,
  STAGES,
  type Comparison,
  type Failure,
  type GenerationOutlook,
  type OriginOutlook,
  type Interval,
  type PlanOutlook,
  type Spread,
  type Stage,
  type YearSpread,
} from '../results/outlook.ts';
import { comparePaired } from './compare.ts';
import { chanceGivenFacts } from './ignorance.ts';
import { wilson } from './interval.ts';
import { spread, yearSpread } from './order.ts';

/** Second pass of one plan: in how many of `futures` a tree was proven by each year, set by set (see Simulator.factSets). */
export interface FactSets {
  readonly provenBy: Int32Array;
  readonly sets: number;
  readonly futures: number;
}

const NEVER = -1;

/** Summarises the columns of plan p. Pure; cost grows with the number of runs × columns. */
export function planOutlook(frame: Frame, p: number, columns: Columns, factSets: FactSets | null): PlanOutlook {
  const plan = frame.plans[p];
  if (!plan) throw new RangeError('There is no such plan.');
  const { runs } = columns;
  const proven = columns.run('yearProven');
  const succeeded = count(proven, (year) => year !== NEVER);
  const calendar = (years: YearSpread): YearSpread => ({ p10: inYears(frame, years.p10), p50: inYears(frame, years.p50), p90: inYears(frame, years.p90) });
  const run = (name: Parameters<Columns['run']>[0]) => spread(columns.run(name));
  const busiest = columns.amount('busiestHours');
  const provenTrees = sum(columns.run('proven'));
  return {
    id: plan.id,
    mark: plan.mark,
    name: plan.name,
    runs,
    chance: wilson(succeeded, runs),
    guesses: factSets ? guesses(factSets, frame.years) : null,
    trulyGood: provenTrees > 0 ? wilson(sum(columns.run('trulyGood')), provenTrees) : null,
    shortfall: frame.measured.flatMap(({ name, unit, inGoal }, t) =>
      inGoal && provenTrees > 0 ? [{ trait: name, unit, mean: sum(columns.shortfall(t)) / provenTrees }] : [],
    ),
    byRule: frame.shown.flatMap(({ name, rules }, t) =>
      rules.length < 2 ? [] : rules.map((rule, r) => ({ trait: name, rule, ...chanceWhere(proven, columns.rule(t), r) })),
    ),
    byFact: frame.facts.flatMap(({ name }, f) =>
      name === '' ? [] : [1, 0].map((holds) => ({ fact: name, holds: holds === 1, ...chanceWhere(proven, columns.fact(f), holds) })),
    ),
    chanceByYear: Array.from({ length: frame.years }, (_, y) => ({
      year: frame.startYear + y,
      ...wilson(
        count(proven, (year) => year !== NEVER && year <= y),
        runs,
      ),
    })),
    guessesByYear: factSets ? Array.from({ length: frame.years }, (_, y) => ({ year: frame.startYear + y, ...middleHalf(factSets, frame.years, y) })) : null,
    yearProven: calendar(yearSpread(proven, NEVER, runs)),
    whenItWorks: calendar(yearSpread(proven, NEVER, succeeded)),
    seedlings: run('seedlings'),
    planted: run('planted'),
    fruiting: run('fruiting'),
    judgings: run('judgings'),
    treeYears: spread(columns.amount('treeYears')),
    mostPlaces: spread(columns.amount('mostPlaces')),
    busiestHours: spread(busiest),
    totalHours: spread(columns.amount('totalHours')),
    grafts: run('grafts'),
    weakSaved: run('weakSaved'),
    flowers: run('flowers'),
    noRoom: run('noRoom'),
    overHours: over(busiest, frame.hoursLimit),
    overMoney: over(columns.amount('busiestMoney'), frame.moneyLimit),
    failures: failures(columns.run('failure')),
    generations: plan.generations.map((generation, g) => generationOutlook(frame, generation, g, columns)),
  };
}

function generationOutlook(frame: Frame, generation: GenerationFrame, g: number, columns: Columns): GenerationOutlook {
  const { runs } = columns;
  const first = columns.generation(g, 'firstPollination');
  const last = columns.generation(g, 'lastWork');
  const picked = columns.generation(g, 'firstPick');
  const reached: number[] = [];
  first.forEach((year, run) => {
    if (year !== NEVER) reached.push(run);
  });
  const of = (column: Int32Array) => reached.map((run) => column[run] ?? 0);
  const years = (column: Int32Array, among: number): YearSpread => {
    const { p10, p50, p90 } = yearSpread(column, NEVER, among);
    return { p10: inYears(frame, p10), p50: inYears(frame, p50), p90: inYears(frame, p90) };
  };
  const pickedRuns = count(picked, (year) => year !== NEVER);
  const stages = Object.fromEntries(STAGES.map((stage) => [stage, spread(of(columns.generation(g, stage)))])) as Record<Stage, Spread>;
  return {
    ...generation,
    reached: reached.length / runs,
    picked: pickedRuns / runs,
    firstPollination: years(first, reached.length),
    firstSeedling: years(columns.generation(g, 'firstSeedling'), reached.length),
    firstFruit: years(columns.generation(g, 'firstFruit'), reached.length),
    firstPick: years(picked, pickedRuns),
    lastJudged: years(last, reached.length),
    going: goingByYear(first, last, frame.years).map((n) => n / runs),
    stages,
    ...(frame.origin ? { origin: originOutlook(frame.origin, g, columns) } : {}),
  };
}

function originOutlook({ kinds, gene }: NonNullable<Frame['origin']>, g: number, columns: Columns): OriginOutlook {
  const ofPicked = (column: Float64Array) => spread(column.filter((value) => !Number.isNaN(value)));
  return {
    kinds: kinds.map((kind, k) => ({ kind, share: ofPicked(columns.originShare(g, k)) })),
    around: gene === null ? null : { gene, length: ofPicked(columns.aroundGene(g)) },
  };
}

/** Runs at work in each year, from first pollination to last work. */
function goingByYear(first: Int32Array, last: Int32Array, years: number): number[] {
  const change = new Int32Array(years + 1);
  first.forEach((year, run) => {
    if (year === NEVER) return;
    change[year] = (change[year] ?? 0) + 1;
    const end = Math.max(year, last[run] ?? year) + 1;
    change[end] = (change[end] ?? 0) - 1;
  });
  let now = 0;
  return Array.from({ length: years }, (_, y) => (now += change[y] ?? 0));
}

/** Pairs of plans on the same futures: the first `runs` runs that all of them have. */
export function compareAll(frame: Frame, columns: readonly Columns[]): Comparison[] {
  const runs = Math.min(...columns.map((c) => c.runs));
  const years = columns.map((c) => Int32Array.from(c.run('yearProven').subarray(0, runs), (year) => (year === NEVER ? 0 : frame.startYear + year)));
  return years.flatMap((a, i) =>
    years.slice(i + 1).map((b, j) => ({ a: frame.plans[i]?.id ?? '', b: frame.plans[i + 1 + j]?.id ?? '', ...comparePaired(a, b) })),
  );
}

function hitsBy({ provenBy, sets }: FactSets, years: number, year: number): Int32Array {
  return Int32Array.from({ length: sets }, (_, set) => provenBy[set * years + year] ?? 0);
}

function guesses(factSets: FactSets, years: number): { low: number; high: number } {
  const { low, high } = chanceGivenFacts(hitsBy(factSets, years, years - 1), factSets.futures);
  return { low, high };
}

function middleHalf(factSets: FactSets, years: number, year: number): { low: number; high: number } {
  const { low, high } = chanceGivenFacts(hitsBy(factSets, years, year), factSets.futures, 0.25, 0.75);
  return { low, high };
}

function chanceWhere(proven: Int32Array, column: Int32Array, value: number): { runs: number; chance: Interval } {
  let runs = 0;
  let hits = 0;
  for (let i = 0; i < proven.length; i += 1) {
    if (column[i] !== value) continue;
    runs += 1;
    if (proven[i] !== NEVER) hits += 1;
  }
  return { runs, chance: wilson(hits, runs) };
}

function failures(column: Int32Array): Record<Failure, number> {
  const shares = FAILURES.map((name, i) => [name, column.length > 0 ? count(column, (code) => code === i) / column.length : 0] as const);
  return Object.fromEntries(shares) as Record<Failure, number>;
}

const over = (column: Float64Array, limit: number | null) =>
  limit === null
    ? null
    : wilson(
        count(column, (value) => value > limit),
        column.length,
      );
const inYears = (frame: Frame, index: number | null) => (index === null ? null : frame.startYear + index);

function count(column: Int32Array | Float64Array, test: (value: number) => boolean): number {
  let n = 0;
  for (const value of column) if (test(value)) n += 1;
  return n;
}

function sum(column: Int32Array | Float64Array): number {
  let total = 0;
  for (const value of column) total += value;
  return total;
}
