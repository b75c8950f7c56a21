import type { z } from 'zod';
import { Simulator } from '../../src/engine/simulate.ts';
import { sentence } from '../../src/model/problem.ts';
import { FORMAT, VERSION, type Programme, type programmeSchema } from '../../src/model/programme.ts';
import { parseProgramme } from '../../src/model/read.ts';
import type { Columns } from '../../src/results/columns.ts';

/** A programme as it is written in a file, before defaults are filled in. */
export type Document = z.input<typeof programmeSchema>;
export type KindDocument = Document['kinds'][number];
export type TreeDocument = Document['trees'][number];
export type CrossDocument = NonNullable<Document['crosses']>[number];
export type StockDocument = NonNullable<Document['stocks']>[number];
export type TraitDocument = Document['traits'][number];
export type PlanDocument = Document['plans'][number];
export type GenerationDocument = PlanDocument['generations'][number];
export type ShownDocument = Extract<TraitDocument, { type: 'shown' }>;
export type MeasuredDocument = Extract<TraitDocument, { type: 'measured' }>;

/** Year 0 of every programme built here. */
export const START = 2000;

/** First fruit in season 5, never lost, bears every year, flowers without end; a fruit has one seed. */
export const kind = (changes: Partial<KindDocument> = {}): KindDocument => ({
  id: 'pear',
  name: 'pear',
  firstFruit: { years: 5 },
  familySpread: 0,
  flowers: 1e6,
  yearsToFullBloom: 1,
  nurseryShare: 0,
  ...changes,
});

export const tree = (id: string, changes: Partial<TreeDocument> = {}): TreeDocument => ({ id, name: id, kind: 'pear', flowers: 1e6, ...changes });

/** Every flower sets, every seed comes up, no stray pollen, no weakness. */
export const cross = (changes: Partial<CrossDocument> = {}): CrossDocument => ({
  id: 'within',
  name: 'pear × pear',
  seed: 'pear',
  pollen: 'pear',
  gives: 'pear',
  set: 1,
  germination: 1,
  ...changes,
});

export const stock = (changes: Partial<StockDocument> = {}): StockDocument => ({ id: 'stock', name: 'seedling pear', takeTender: 1, takeRipe: 1, ...changes });

/** Shown by every tree with at least so many copies of gene r, in every season, never wrongly. */
export const shown = (copies: 1 | 2, changes: Partial<ShownDocument> = {}): ShownDocument => ({
  type: 'shown',
  id: 'red',
  name: 'red flesh',
  rules: [{ name: `${String(copies)} needed`, weight: 1, needs: { needs: 'all', of: [{ gene: 'r', copies }] } }],
  sharedSeason: 0,
  ...changes,
});

/** Mean 0 and variance 1, all of it inherited: what is seen is the genetic value. */
export const measured = (changes: Partial<MeasuredDocument> = {}): MeasuredDocument => ({
  type: 'measured',
  id: 'size',
  name: 'size',
  unit: 'cm',
  mean: 0,
  sd: 1,
  heritability: 1,
  repeatability: 1,
  ...changes,
});

/** One spring, a × b, everything kept after one judged crop. */
export const generation = (id: string, seedlings: number, changes: Partial<GenerationDocument> = {}): GenerationDocument => ({
  id,
  name: id,
  seedParents: [{ tree: 'a' }],
  pollen: [{ tree: 'b' }],
  flowers: seedlings,
  seedlings,
  springs: 1,
  judge: 1,
  keep: { howMany: 100 },
  ...changes,
});

const MARKS = ['A', 'B', 'C', 'D', 'E', 'F', 'G', 'H'] as const;

/** Plans of the generations given, lettered in order; at most eight. */
export const plans = (...lists: readonly (readonly GenerationDocument[])[]): PlanDocument[] =>
  lists.map((generations, p) => ({ id: `plan-${String(p)}`, mark: MARKS[p]!, name: `plan ${String(p)}`, generations: [...generations] }));

/** Picks of an earlier generation, as parents. */
export const picksOf = (id: string): { picksOf: string }[] => [{ picksOf: id }];

/** A goal that no tree can be proven for within the years, so that runs go on to the end: it wants 20 judged crops. */
export const neverProven = (trait = 'red'): Document['goal'] => ({ conditions: [{ type: 'shown', trait, atLeast: 1 }], crops: 20 });

/** A programme with everything switched off: no luck of the spring, no frost, no losses; room, hands and flowers without end. */
export const document = (changes: Partial<Document> & Pick<Document, 'plans'>): Document => ({
  format: FORMAT,
  version: VERSION,
  title: 'Check',
  startYear: START,
  lastYear: START + 30,
  shuffleWord: 'check',
  runs: 1000,
  goal: { conditions: [{ type: 'shown', trait: 'red', atLeast: 1 }], crops: 1 },
  limits: { places: 1e6, bloomDays: 366, hoursADay: 24, flowersAnHour: 10_000 },
  weather: { frostChance: 0, springLuckSet: 0, springLuckGermination: 0 },
  genes: [{ id: 'r', name: 'r' }],
  traits: [shown(2)],
  kinds: [kind()],
  trees: [tree('a', { genes: { r: { copies: 2 } } }), tree('b', { genes: { r: { copies: 0 } } })],
  crosses: [cross()],
  ...changes,
});

/** Reads a document as the app would. Throws with the problems in words. */
export function read(input: unknown): Programme {
  const reading = parseProgramme(input);
  if (!reading.ok) throw new Error(reading.problems.map((problem) => sentence(input, problem)).join('\n'));
  return reading.programme;
}

/** Columns of every plan of a document over the futures 0 … runs − 1. */
export function futures(input: Document, runs: number): Columns[] {
  const programme = read(input);
  return new Simulator(programme).runs(
    programme.plans.map((_, p) => p),
    0,
    runs,
  );
}

/** Columns of a document's only plan. */
export const future = (input: Document, runs: number): Columns => futures(input, runs)[0]!;
