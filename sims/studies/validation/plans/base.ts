import type { z } from 'zod';
import { Simulator } from '../../../../src/engine/simulate.ts';
import { sentence } from '../../../../src/model/problem.ts';
import { FORMAT, VERSION, type Programme, type programmeSchema } from '../../../../src/model/programme.ts';
import { parseProgramme } from '../../../../src/model/read.ts';
import type { Columns } from '../../../../src/results/columns.ts';

/** A programme as it is written in a file, before defaults are filled in. */
export type Document = z.input<typeof programmeSchema>;
export type Kind = Partial<Document['kinds'][number]>;
export type Generation = Partial<Document['plans'][number]['generations'][number]>;
export type Shown = Partial<Extract<Document['traits'][number], { type: 'shown' }>>;

const START = 2000;

/** Goal that no tree is proven for within the years, so that every future goes on to the end. */
const NEVER = { conditions: [{ type: 'shown' as const, trait: 'red', atLeast: 1 }], crops: 20 };

/** One document of one plan with everything switched off: no luck of the spring, no frost, no losses; room, hands and flowers without end. */
export interface Parts {
  readonly generations: readonly Generation[];
  readonly kind?: Kind;
  /** Show the trait with two copies unless said. */
  readonly trait?: Shown;
  /** Allele r: a stated number of copies, or drawn; tree a has two and b none unless said. */
  readonly trees?: readonly Partial<Document['trees'][number]>[];
  readonly cross?: Partial<NonNullable<Document['crosses']>[number]>;
  readonly stock?: Partial<NonNullable<Document['stocks']>[number]>;
  readonly years?: number;
  readonly rest?: Partial<Document>;
}

export function documentOf(word: string, { generations, kind, trait, trees = [], cross, stock, years = 30, rest }: Parts): Document {
  return {
    format: FORMAT,
    version: VERSION,
    title: 'Validation',
    startYear: START,
    lastYear: START + years,
    shuffleWord: `validation/${word}`.slice(0, 40),
    runs: 1000,
    goal: NEVER,
    limits: { places: 1e6, bloomDays: 366, hoursADay: 24, flowersAnHour: 10_000 },
    weather: { frostChance: 0, springLuckSet: 0, springLuckGermination: 0 },
    genes: [{ id: 'r', name: 'r' }],
    traits: [
      {
        type: 'shown',
        id: 'red',
        name: 'red flesh',
        rules: [{ name: 'two copies', weight: 1, needs: { needs: 'all', of: [{ gene: 'r', copies: 2 }] } }],
        sharedSeason: 0,
        ...trait,
      },
    ],
    kinds: [{ id: 'pear', name: 'pear', firstFruit: { years: 5 }, familySpread: 0, flowers: 1e6, yearsToFullBloom: 1, nurseryShare: 0, ...kind }],
    trees: ['a', 'b'].map((id, i) => ({ id, name: id, kind: 'pear', flowers: 1e6, genes: { r: { copies: 2 - 2 * i } }, ...trees[i] })),
    crosses: [{ id: 'within', name: 'pear × pear', seed: 'pear', pollen: 'pear', gives: 'pear', set: 1, germination: 1, ...cross }],
    ...(stock ? { stocks: [{ id: 'stock', name: 'seedling pear', takeTender: 1, takeRipe: 1, ...stock }] } : {}),
    plans: [
      {
        id: 'plan',
        mark: 'A',
        name: 'plan',
        generations: generations.map((generation, i) => ({
          id: `g${String(i)}`,
          name: `generation ${String(i)}`,
          seedParents: [{ tree: 'a' }],
          pollen: [{ tree: 'b' }],
          flowers: generation.seedlings ?? 1,
          seedlings: 1,
          springs: 1,
          judge: 1,
          keep: { howMany: 100 },
          ...generation,
        })),
      },
    ],
    ...rest,
  };
}

/** Reads a document as the app would. Throws with the problems in words. */
export function read(input: Document): Programme {
  const reading = parseProgramme(input);
  if (!reading.ok) throw new Error(reading.problems.map((problem) => sentence(input, problem)).join('\n'));
  return reading.programme;
}

/** Futures 0 … runs − 1 of the one plan. */
export function futureOf(word: string, parts: Parts, runs: number): Columns {
  const [columns] = new Simulator(read(documentOf(word, parts))).runs([0], 0, runs);
  if (!columns) throw new Error('A plan gave no results.');
  return columns;
}

/** rr × RR, then brother × sister: a quarter of the second generation has two copies of r. */
export const brotherSister = (seedlings: number, judge: number, needed: number): Parts => {
  const conditions = [{ type: 'shown' as const, trait: 'red', atLeast: needed }];
  return {
    generations: [
      { seedlings: 10, judge: 0, keep: { howMany: 2 }, goOn: { when: 'enough', count: 2 } },
      { seedlings, judge, seedParents: [{ picksOf: 'g0' }], pollen: [{ picksOf: 'g0' }], keep: { conditions, howMany: 100 } },
    ],
    rest: { goal: { conditions, crops: judge } },
  };
};
