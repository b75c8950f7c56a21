import { readFileSync } from 'node:fs';
import { z } from 'zod';
import { frameOf } from '../../src/engine/frame.ts';
import { Simulator } from '../../src/engine/simulate.ts';
import type { Programme } from '../../src/model/programme.ts';
import type { Columns } from '../../src/results/columns.ts';
import { FAILURES, type Failure } from '../../src/results/outlook.ts';
import { errorOfMean, mean, total } from '../engine/agreement.ts';
import { read } from '../engine/programmes.ts';

const share = z.strictObject({ hits: z.int(), of: z.int() });
const amount = z.strictObject({ mean: z.number(), se: z.number() });
const figure = z.union([share, amount]);
export type Figure = z.infer<typeof figure>;
export type Figures = Readonly<Record<string, Figure>>;
const opinion = z.strictObject({
  made: z.string(),
  runs: z.int(),
  plans: z.array(z.strictObject({ plan: z.string(), columns: z.record(z.string(), figure) })),
});

const json = (path: string): unknown => JSON.parse(readFileSync(new URL(path, import.meta.url), 'utf8'));
export const secondOpinion = (name: string) => opinion.parse(json(`./${name}.json`));
export const programmeOf = (path: string): Programme => read(json(path));

/** Reasons in the words of the figures. */
export const REASONS: Readonly<Record<Failure, string>> = {
  onlyTreeLost: 'only tree lost',
  stillWaiting: 'still waiting',
  noFruit: 'no fruit',
  noSeedling: 'no seedling',
  noRoom: 'no room',
  seedlingsDied: 'seedlings died',
  noneGoodEnough: 'none good enough',
};

/** Deadlines, in years, at which the chance so far is compared. */
export const DEADLINES = [5, 8, 10, 12, 14, 16, 18, 20, 25, 30, 40];

/** Everything that one plan's columns say, under the names of the second opinion. */
function figuresOf(programme: Programme, columns: Columns, deadlines: readonly number[]): Figures {
  const found: Record<string, Figure> = {};
  const { runs } = columns;
  const say = (name: string, values: ArrayLike<number>) => (found[name] = { mean: mean(values), se: errorOfMean(values) });
  const share = (name: string, column: ArrayLike<number>, test: (value: number) => boolean) =>
    (found[name] = { hits: Array.from(column).filter(test).length, of: column.length });
  const ratio = (name: string, top: ArrayLike<number>, bottom: ArrayLike<number>) => {
    const all = total(top) / total(bottom);
    found[name] = { mean: all, se: errorOfMean(Array.from(top, (value, i) => value - all * bottom[i]!)) / mean(bottom) };
  };
  const years = columns.run('yearProven');
  share('proven', years, (year) => year >= 0);
  for (const deadline of deadlines) share(`proven within ${String(deadline)} years`, years, (year) => year >= 0 && year <= deadline);
  share('stood', columns.run('yearStood'), (year) => year >= 0);
  for (const name of ['flowers', 'fruits', 'seedlings', 'planted', 'grafts', 'tests', 'noRoom'] as const) say(name, columns.run(name));
  say('bearing', columns.run('fruiting'));
  say('judged', columns.run('judgings'));
  say('weakGrafted', columns.run('weakSaved'));
  for (const name of ['treeYears', 'mostPlaces', 'busiestHours'] as const) say(name, columns.amount(name));
  say('hours', columns.amount('totalHours'));
  share('overHours', columns.amount('busiestHours'), (hours) => hours > (programme.limits.hoursPerYear ?? Infinity));
  const generations = Array.from({ length: columns.shape.generations }, (_, g) => g);
  say(
    'seeds',
    Array.from({ length: runs }, (_, run) => generations.reduce((sum, g) => sum + columns.generation(g, 'seeds')[run]!, 0)),
  );
  for (const g of generations) {
    const name = `generation ${String(g + 1)}`;
    const first = columns.generation(g, 'firstPollination');
    share(`${name}: reached`, first, (year) => year >= 0);
    say(
      `${name}: first year`,
      Array.from(first, (year) => Math.max(0, year)),
    );
    for (const stage of ['fruits', 'seeds', 'seedlings'] as const) say(`${name}: ${stage}`, columns.generation(g, stage));
    say(`${name}: bore`, columns.generation(g, 'fruiting'));
  }
  FAILURES.forEach((failure, code) => share(`why: ${REASONS[failure]}`, columns.run('failure'), (value) => value === code));
  const given = (name: string, column: Int32Array, value: number) =>
    share(
      `proven if ${name}`,
      Array.from(years).filter((_, run) => column[run] === value),
      (year) => year >= 0,
    );
  const frame = frameOf(programme);
  frame.shown.forEach(({ name, rules }, t) => rules.forEach((rule, r) => given(`rule ${name}: ${rule}`, columns.rule(t), r)));
  frame.facts.forEach(({ name }, f) => [0, 1].forEach((holds) => given(`fact ${name}: ${String(holds === 1)}`, columns.fact(f), holds)));
  ratio('truly good', columns.run('trulyGood'), columns.run('proven'));
  frame.measured.forEach(({ name }, t) => ratio(`shortfall of ${name}`, columns.shortfall(t), columns.run('proven')));
  return found;
}

/** Our own figures of plans of a programme, all unless told which. */
export function ourFigures(
  programme: Programme,
  runs: number,
  deadlines: readonly number[] = DEADLINES,
  plans: readonly number[] = programme.plans.map((_, p) => p),
): Figures[] {
  return new Simulator(programme).runs(plans, 0, runs).map((columns) => figuresOf(programme, columns, deadlines));
}

/**
 * Difference in standard errors of it. Shares: the usual two-sample error with the pooled share, which holds for rare events too.
 * Equal figures without error differ by none.
 */
export function difference(ours: Figure, theirs: Figure): number {
  if ('hits' in ours && 'hits' in theirs) {
    const pooled = (ours.hits + theirs.hits) / (ours.of + theirs.of);
    const error = Math.sqrt(pooled * (1 - pooled) * (1 / ours.of + 1 / theirs.of));
    return error > 0 ? (ours.hits / ours.of - theirs.hits / theirs.of) / error : 0;
  }
  if ('hits' in ours || 'hits' in theirs) throw new TypeError('A share against an amount.');
  const error = Math.hypot(ours.se, theirs.se);
  if (error > 0) return (ours.mean - theirs.mean) / error;
  return Math.abs(ours.mean - theirs.mean) < 1e-6 * Math.max(1, Math.abs(theirs.mean)) ? 0 : Infinity;
}
