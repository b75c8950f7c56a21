import type { z } from 'zod';
import type { batchSchema, loggedTreeSchema } from '../../src/model/log.ts';
import type { Programme } from '../../src/model/programme.ts';
import { cross, document, generation, kind, plans, read, shown, stock, tree, type Document } from '../engine/programmes.ts';

export type BatchDocument = z.input<typeof batchSchema>;
export type LoggedDocument = z.input<typeof loggedTreeSchema>;
type Counts = NonNullable<BatchDocument['counts']>;

/** Counts without a date, by stage. */
export const counts = (numbers: Partial<Record<Counts[number]['stage'], number>>): Counts =>
  Object.entries(numbers).map(([stage, count]) => ({ stage, count }) as Counts[number]);

export const alive = (when: string, count: number): Counts[number] => ({ stage: 'alive', count, when });

/** A tree that was looked at for red flesh in so many seasons from `first` on, and showed it in the first `showed` of them. */
export const judged = (tag: string, first: number, showed: number, seasons: number, changes: Partial<LoggedDocument> = {}): LoggedDocument => ({
  tag,
  firstFruit: first,
  lookedUntil: first + seasons - 1,
  seasons: Array.from({ length: seasons }, (_, i) => ({ year: first + i, seen: { red: { showed: i < showed ? 4 : 0, cut: 5 } } })),
  ...changes,
});

export const batch = (id: string, year: number, changes: Partial<BatchDocument> = {}): BatchDocument => ({
  id,
  name: id,
  year,
  seed: { tree: 'hedgerow' },
  pollen: { tree: 'bell' },
  ...changes,
});

const RULES: NonNullable<ReturnType<typeof shown>['rules']> = [
  { name: 'one copy is enough', weight: 5, needs: { needs: 'all', of: [{ gene: 'r', copies: 1 }] } },
  {
    name: 'two genes, one copy of each',
    weight: 3,
    needs: {
      needs: 'all',
      of: [
        { gene: 'r', copies: 1 },
        { gene: 'd', copies: 1 },
      ],
    },
  },
  { name: 'two copies needed', weight: 2, needs: { needs: 'all', of: [{ gene: 'r', copies: 2 }] } },
];

/** An invented orchard of two pears and a quince, nothing in its log. */
export function bare(changes: Partial<Document> = {}): Document {
  return document({
    plans: plans([generation('one', 10, { seedParents: [{ tree: 'hedgerow' }], pollen: [{ tree: 'bell' }] })]),
    startYear: 2027,
    lastYear: 2057,
    weather: { springLuckSet: 0.1, springLuckGermination: 0.1 },
    genes: [
      { id: 'r', name: 'red' },
      { id: 'd', name: 'deep' },
    ],
    traits: [
      shown(1, {
        rules: RULES,
        canShow: { low: 0.7, likely: 0.9, high: 1 },
        seasonsShown: { low: 0.6, likely: 0.8, high: 0.95 },
        falseShow: 0.01,
        sharedSeason: 0.3,
      }),
    ],
    kinds: [
      kind({
        firstFruit: { earliest: 4, half: { low: 5, likely: 7, high: 10 }, ninety: { low: 8, likely: 10, high: 14 } },
        familySpread: 0.15,
        neverFruits: 0.03,
        firstYearLoss: { low: 0.02, likely: 0.1, high: 0.25 },
        yearlyLoss: { low: 0.01, likely: 0.03, high: 0.08 },
      }),
      kind({ id: 'quince', name: 'quince' }),
      kind({ id: 'pear-quince', name: 'pear × quince', firstFruit: { between: { seed: 'pear', pollen: 'quince' } } }),
    ],
    trees: [
      tree('hedgerow', { genes: { r: { frequency: 0.1 }, d: { frequency: 0.3 } }, seen: { red: { source: true } } }),
      tree('bell', { genes: { r: { frequency: 0.1 }, d: { frequency: 0.3 } }, seen: { red: { showed: 0, seasons: 12 } } }),
      tree('mill', { kind: 'quince', genes: { r: { copies: 0 }, d: { frequency: 0.3 } } }),
    ],
    pools: [{ id: 'air', name: 'neighbours', background: { trees: 20, weight: 1, kind: 'pear', genes: { r: 0.1, d: 0.3 } } }],
    defaultPool: 'air',
    crosses: [
      cross({
        set: { low: 0.1, likely: 0.2, high: 0.4 },
        germination: { low: 0.5, likely: 0.7, high: 0.85 },
        straySet: 0.01,
        seedsPerFruit: 5,
        seedsAtMost: 10,
      }),
      cross({
        id: 'wide',
        name: 'pear × quince',
        pollen: 'quince',
        gives: 'pear-quince',
        set: { hits: 23, of: 60 },
        germination: { hits: 47, of: 97 },
        weakness: { share: { low: 0.6, likely: 0.8, high: 0.95 }, onset: 2, course: { halfLife: { low: 3, likely: 5, high: 9 } }, rootBorne: { chance: 0.65 } },
      }),
    ],
    stocks: [stock({ takeTender: { low: 0.2, likely: 0.4, high: 0.7 }, takeRipe: { low: 0.7, likely: 0.85, high: 0.95 } })],
    ...changes,
  });
}

export const withLog = (batches: readonly BatchDocument[], changes: Partial<Document> = {}): Programme =>
  read(bare({ ...changes, log: { batches: [...batches] } }));

const family = (prefix: string, showing: number, not: number, first: number): LoggedDocument[] => [
  ...Array.from({ length: showing }, (_, i) => judged(`${prefix}${String(i + 1)}`, first + (i % 3), 2, 3)),
  ...Array.from({ length: not }, (_, i) => judged(`${prefix}n${String(i + 1)}`, first + (i % 3), 0, 3)),
];

/** Ten seasons: two ordinary ones, a frost, a failed batch, mice that are kept out, a wide cross, and a family nobody expected. */
export const TEN_SEASONS: readonly BatchDocument[] = [
  batch('first', 2027, {
    counts: [...counts({ flowers: 120, fruits: 30, seeds: 140, sown: 100, cameUp: 72, planted: 64 }), alive('2029-06', 66), alive('2032-06', 61)],
    trees: [
      ...family('1.', 7, 9, 2033),
      { tag: '1.w1', lookedUntil: 2036 },
      { tag: '1.w2', lookedUntil: 2036 },
      { tag: '1.d', status: 'dead', statusSince: 2031 },
    ],
  }),
  batch('frost', 2028, { counts: counts({ flowers: 200, fruits: 4, seeds: 18, sown: 18, cameUp: 12 }), events: [{ what: 'frost', when: '2028-04', lost: 0 }] }),
  batch('partly', 2029, {
    counts: counts({ flowers: 150, fruits: 21, seeds: 98, sown: 98, cameUp: 70 }),
    events: [{ what: 'frost', when: '2029-04', lost: 60 }],
  }),
  batch('failed', 2030, { counts: counts({ flowers: 80, fruits: 0 }) }),
  batch('mice', 2030, {
    apart: true,
    counts: counts({ flowers: 90, fruits: 20, seeds: 90, sown: 90, cameUp: 3 }),
    events: [{ what: 'rodents', when: '2031-02', lost: 80 }],
  }),
  batch('wrong', 2031, { counts: counts({ flowers: 20, fruits: 32, seeds: 100, sown: 100, cameUp: 61 }) }),
  batch('clusters', 2031, {
    counts: [{ stage: 'flowers', count: 40, unit: { name: 'cluster', flowers: 3 } }, ...counts({ fruits: 18, seeds: 80, sown: 80, cameUp: 60 })],
  }),
  batch('wide', 2032, {
    pollen: { tree: 'mill' },
    counts: [...counts({ flowers: 60, fruits: 20, seeds: 70, sown: 70, cameUp: 40, weak: 34 }), alive('2033-08', 32), alive('2033-10', 22)],
  }),
  batch('rescued', 2033, {
    pollen: { tree: 'mill' },
    grafting: { who: 'weak', month: 3, stock: 'stock' },
    counts: counts({ flowers: 50, fruits: 15, seeds: 60, sown: 60, cameUp: 31, weak: 24, grafted: 20, took: 9 }),
  }),
  batch('surprise', 2028, { seed: { tree: 'bell' }, pollen: { tree: 'bell' }, trees: family('5.', 1, 11, 2034) }),
  batch('nobody', 2034, { seed: 'unknown', pollen: 'open', counts: counts({ flowers: 10, fruits: 2 }) }),
];

export const tenSeasons = (): Programme => withLog(TEN_SEASONS);
