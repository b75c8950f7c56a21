import { expect } from 'vitest';
import { betaQuantile } from '../../src/statistics/beta.ts';
import { jeffreys } from '../../src/statistics/interval.ts';
import {
  cross,
  document,
  generation,
  kind,
  neverProven,
  plans,
  tree,
  START,
  type CrossDocument,
  type Document,
  type GenerationDocument,
  type KindDocument,
} from '../engine/programmes.ts';

const PRINTED = { kind: 'published' as const, note: 'Public report, figures as printed.' };

/** So many of so many, as a report printed them. */
export const count = (hits: number, of: number, unit?: { name: string; flowers: number }) => ({ hits, of, ...(unit ? { unit } : {}), source: PRINTED });
/** A printed figure taken as known: for what a report gives as a mean, or where the figure itself must come back. */
export const known = (value: number) => ({ value, source: PRINTED });

/** Middle of a count as the app takes it. **Source:** Jeffreys (1946): (hits + ½)/(of + 1). */
export const middle = (hits: number, of: number): number => (hits + 0.5) / (of + 1);

/** Percent to so many places, as a report prints it. */
export const percent = (share: number, places = 0): number => Number((100 * share).toFixed(places));

/** The Jeffreys 95 % interval of a count, in percent, is the printed one. */
export function expectInterval(hits: number, of: number, low: number, high: number, places = 0): void {
  const { alpha, beta } = jeffreys(hits, of);
  expect([0.025, 0.975].map((u) => percent(betaQuantile(u, alpha, beta), places))).toEqual([low, high]);
}

/** What differs from a cross of which nothing is lost. */
export interface Wide {
  readonly seed: string;
  readonly pollen: string;
  readonly flowers: number;
  readonly cross?: Partial<CrossDocument>;
  readonly hybrid?: Partial<KindDocument>;
  readonly generation?: Partial<GenerationDocument>;
  readonly rest?: Partial<Document>;
}

/** One spring of one cross between two kinds, followed for a few years after its first fruit. */
export const wide = ({ seed, pollen, flowers, cross: entry, hybrid, generation: changes, rest }: Wide): Document =>
  document({
    title: `${seed} × ${pollen}`,
    goal: neverProven(),
    lastYear: START + 8,
    kinds: [kind({ id: 'seed', name: seed }), kind({ id: 'pollen', name: pollen }), kind({ id: 'hybrid', name: `${seed} × ${pollen}`, ...hybrid })],
    trees: [tree('a', { kind: 'seed', name: seed }), tree('b', { kind: 'pollen', name: pollen })],
    crosses: [cross({ id: 'wide', name: `${seed} × ${pollen}`, seed: 'seed', pollen: 'pollen', gives: 'hybrid', ...entry })],
    plans: plans([generation('wide', 100_000, { flowers, keep: { howMany: 1 }, ...changes })]),
    ...rest,
  });

/** One spring of seedlings of one kind: every flower gives a seedling. */
export const nursery = (seedlings: number, own: Partial<KindDocument>, changes: Partial<GenerationDocument> = {}, rest: Partial<Document> = {}): Document =>
  document({
    goal: neverProven(),
    kinds: [kind(own)],
    plans: plans([generation('raised', seedlings, { keep: { howMany: 1 }, ...changes })]),
    ...rest,
  });
