import { expect } from 'vitest';
import type { Programme } from '../../src/model/programme.ts';
import { importOf, type Import, type ImportChoices } from '../../src/seasonlog/import/import.ts';
import { textOf } from '../../src/seasonlog/import/bytes.ts';
import { learnRates } from '../../src/seasonlog/learned.ts';
import type { Learnable, Learned, LearnedRates } from '../../src/seasonlog/learned-types.ts';
import { betaQuantile } from '../../src/statistics/beta.ts';
import { jeffreys } from '../../src/statistics/interval.ts';
import { batchName, crossWords } from '../../src/text/log.ts';
import { myCounts } from '../../src/text/log-learned.ts';
import {
  cross,
  document,
  generation,
  kind,
  neverProven,
  plans,
  read,
  tree,
  type CrossDocument,
  type Document,
  type KindDocument,
  type TreeDocument,
} from '../engine/programmes.ts';
import type { OutOfScope } from './case.ts';

/** A table as somebody keeps it, read by the real import. */
export interface Kept {
  readonly table: string | Uint8Array;
  readonly choices?: ImportChoices;
}

/** A case as records of the season log. */
export interface Recorded {
  readonly id: string;
  readonly what: string;
  /** Computed: a rate or an inheritance that the report states comes out of the log. Entered: it stands in the log, and what is doubtful is flagged. */
  readonly verdict: 'computed' | 'entered';
  readonly programme: () => Programme;
  /** Tables one after the other, or a log built by edits. */
  readonly kept: readonly Kept[] | ((programme: Programme) => Programme['log']);
  /** Sorts of flags that its cells get, and no other. */
  readonly flags?: readonly string[];
  /** Words that must stand somewhere in the log as they were written. */
  readonly stands?: readonly string[];
  /** What the document flags of it once it is in: numbers that do not add up, kinds that are not said. */
  readonly noted?: readonly string[];
  readonly holds: (programme: Programme, imports: readonly Import[]) => void;
  readonly beyond?: string;
}

export type RecordCase = Recorded | OutOfScope;

export const recorded = (id: string, verdict: Recorded['verdict'], what: string, parts: Omit<Recorded, 'id' | 'what' | 'verdict'>): Recorded => ({
  id,
  verdict,
  what,
  ...parts,
});

/** One table read into the log of a programme. */
export function looked(programme: Programme, { table, choices = {} }: Kept): Import {
  const text = typeof table === 'string' ? table : textOf(table).text;
  return importOf(text, programme, choices, (parents, year) => batchName(crossWords(parents, programme), year));
}

/** All tables of a case in their order, each into the log that the one before left. */
export function filled(entry: Recorded): { readonly programme: Programme; readonly imports: readonly Import[] } {
  let programme = entry.programme();
  if (typeof entry.kept === 'function') return { programme: { ...programme, log: entry.kept(programme) }, imports: [] };
  const imports = entry.kept.map((kept) => {
    const found = looked(programme, kept);
    programme = { ...programme, log: found.additions.log };
    return found;
  });
  return { programme, imports };
}

/** Kinds, trees and cross entries of a case; shares of 0 state nothing, so Jeffreys' beta stands for them and the printed intervals come back. */
export function orchard(
  kinds: readonly KindDocument[],
  trees: readonly TreeDocument[],
  crosses: readonly Partial<CrossDocument>[],
  rest: Partial<Document> = {},
): Programme {
  return read(
    document({
      goal: neverProven(),
      plans: plans([generation('g', 10, { seedParents: [{ tree: 'a' }], pollen: [{ tree: 'b' }] })]),
      kinds: [kind(), ...kinds],
      trees: [tree('a'), tree('b'), ...trees],
      crosses: [cross(), ...crosses.map((each) => cross({ set: 0, germination: 0, ...each }))],
      ...rest,
    }),
  );
}

/** Kinds by their names, each with one tree of the same name unless others are given. */
export const kindsNamed = (...names: readonly string[]): KindDocument[] => names.map((name, i) => kind({ id: `k${String(i)}`, name }));

export const learned = (programme: Programme): LearnedRates => learnRates(programme, myCounts);

export function rateOf(programme: Programme, what: Learnable, id?: string): Learned {
  const found = learned(programme).rates.find((rate) => rate.what === what && (id === undefined || rate.of.id === id));
  if (!found) throw new Error(`Nothing was learned of ${what}.`);
  return found;
}

/**
 * The learned share is that of so many of so many: mean (hits + ½)/(of + 1), and the middle nine in ten of the same beta, to one step of the
 * grid that it was reckoned on.
 * @param steps of the grid over what has belief; a share alone has 200, one of two that are learned together 50
 *
 * **Source:** Jeffreys (1946).
 */
export function expectLearned({ after, counts }: Learned, hits: number, of: number, steps = 100): void {
  expect([counts.hits, counts.of]).toEqual([hits, of]);
  const { alpha, beta } = jeffreys(hits, of);
  const [low, high] = [betaQuantile(0.05, alpha, beta), betaQuantile(0.95, alpha, beta)];
  const step = (high - low) / steps;
  expect(Math.abs(after.mean - (hits + 0.5) / (of + 1)), 'mean').toBeLessThan(step);
  expect(Math.abs(after.nine.low - low), 'low').toBeLessThan(step);
  expect(Math.abs(after.nine.high - high), 'high').toBeLessThan(step);
}

/** Letters below 256, one byte each: Windows-1252, as of Latin-1. */
export const latin = (text: string): Uint8Array => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

export const lines = (...rows: readonly string[]): string => `${rows.join('\n')}\n`;
