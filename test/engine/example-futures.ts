import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { Simulator } from '../../src/engine/simulate.ts';
import { estimateBounds } from '../../src/model/estimate.ts';
import { sentence } from '../../src/model/problem.ts';
import { programmeSchema, type Generation, type Plan, type Programme } from '../../src/model/programme.ts';
import { readProgramme } from '../../src/model/read.ts';
import { bare, isRecord, schemaAt, type Path } from '../../src/model/walk.ts';
import type { Columns } from '../../src/results/columns.ts';
import { errorOfMean, mean, total } from './agreement.ts';

export const FOLDER = new URL('../../sims/examples/', import.meta.url);
const RUNS = 2000;

export const textOf = (name: string): string => readFileSync(new URL(`${name}.json`, FOLDER), 'utf8');

/** Reads an example as the app would; throws its problems in words. Notes of the check count as problems here, but for numbers of a log that were kept as entered and pollen that is rejected in part, which an example is about. */
export function load(name: string): Programme {
  const reading = readProgramme(textOf(name));
  const problems = reading.ok
    ? reading.notes.filter(({ path, message }) => path[0] !== 'log' && !message.startsWith('only part of the pollen works'))
    : reading.problems;
  if (!reading.ok || problems.length > 0) throw new Error(problems.map((problem) => sentence(JSON.parse(textOf(name)), problem)).join('\n'));
  return reading.programme;
}

export function planOf(programme: Programme, id: string): Plan {
  const plan = programme.plans.find((entry) => entry.id === id);
  if (!plan) throw new Error(`There is no plan “${id}”.`);
  return plan;
}
export const lastOf = (plan: Plan): Generation => plan.generations.at(-1)!;

const asWritten = new WeakMap<Programme, Columns[]>();

function run(programme: Programme, ids: readonly string[]): Columns[] {
  const places = ids.map((id) => programme.plans.indexOf(planOf(programme, id)));
  return new Simulator(programme).runs(places, 0, RUNS);
}

/** Futures 0 … 1999 of the plans named, in that order, under the example's own shuffle word; with a change, of a changed copy. */
export function futures(programme: Programme, ids: readonly string[], change?: (programme: Programme) => void): Columns[] {
  if (change) {
    const varied = structuredClone(programme);
    change(varied);
    return run(varied, ids);
  }
  const every = programme.plans.map(({ id }) => id);
  const columns = asWritten.get(programme) ?? run(programme, every);
  asWritten.set(programme, columns);
  return ids.map((id) => columns[programme.plans.indexOf(planOf(programme, id))]!);
}

export const future = (programme: Programme, id: string, change?: (programme: Programme) => void): Columns => futures(programme, [id], change)[0]!;

/** 1 for a future in which a tree was proven, else 0. */
export const won = (columns: Columns): number[] => Array.from(columns.run('yearProven'), (year) => +(year >= 0));

/** Year in which half of the successes are there. */
export function middleYear(columns: Columns): number {
  const years = Array.from(columns.run('yearProven')).filter((year) => year >= 0);
  return years.sort((a, b) => a - b)[Math.floor(years.length / 2)]!;
}

/** Two columns of the same futures: the first is larger by more than 4 standard errors of the paired difference. */
export function expectMore(more: ArrayLike<number>, less: ArrayLike<number>, what: string): void {
  const differences = Array.from(more, (value, i) => value - less[i]!);
  const z = mean(differences) / errorOfMean(differences);
  expect(z, `${what}: ${String(mean(more))} against ${String(mean(less))}, z`).toBeGreaterThan(4);
}

/** Of the trees proven, the share that truly is: larger in the first by more than 4 standard errors of the two shares. */
export function expectTruer(more: Columns, less: Columns, what: string): void {
  const [a, b] = [more, less].map((columns) => {
    const proven = total(columns.run('proven'));
    const share = total(columns.run('trulyGood')) / proven;
    return { share, variance: (share * (1 - share)) / proven };
  });
  const z = (a!.share - b!.share) / Math.sqrt(a!.variance + b!.variance);
  expect(z, `${what}, truly good: ${String(a!.share)} against ${String(b!.share)}, z`).toBeGreaterThan(4);
}

/** Every estimate that a document states, with its path. */
export function estimatesIn(document: unknown, value: unknown = document, path: Path = []): [string, unknown][] {
  const schema = schemaAt(programmeSchema, path, document);
  if (schema && estimateBounds.has(bare(schema).schema)) return [[path.join('/'), value]];
  if (Array.isArray(value)) return value.flatMap((entry: unknown, i) => estimatesIn(document, entry, [...path, i]));
  return isRecord(value) ? Object.entries(value).flatMap(([key, entry]) => estimatesIn(document, entry, [...path, key])) : [];
}
