import {
  cross,
  document,
  generation,
  kind,
  measured,
  picksOf,
  plans,
  shown,
  stock,
  tree,
  type Document,
  type GenerationDocument,
} from '../engine/programmes.ts';

/** A programme without a flaw that uses every section, so that one change at a time can break it. */
export const flawless = (): Document =>
  document({
    traits: [shown(2), measured({ genes: [{ gene: 'r', half: 1 }] })],
    facts: [{ id: 'roots', name: 'in the roots', chance: 0.5 }],
    gardens: [{ id: 'home', name: 'home', yearlyLoss: 0.01 }],
    kinds: [
      kind(),
      kind({ id: 'quince', name: 'quince' }),
      kind({ id: 'hybrid', name: 'hybrid', firstFruit: { between: { seed: 'pear', pollen: 'quince' } } }),
    ],
    trees: [
      tree('a', { genes: { r: { frequency: 0.3 } }, values: { size: 1 }, seen: { red: { source: true } } }),
      tree('b', { gardens: ['home'] }),
      tree('q', { kind: 'quince' }),
    ],
    pools: [
      {
        id: 'air',
        name: 'air',
        trees: [{ tree: 'b', weight: 1 }],
        background: { trees: 5, weight: 1, kind: 'pear', genes: { r: 0.1 }, values: { size: 0 }, spread: { size: 0.5 } },
      },
    ],
    defaultPool: 'air',
    crosses: [
      cross({ routes: [{ id: 'out', name: 'taken out', germination: 0.8 }] }),
      cross({
        id: 'wide',
        name: 'wide',
        pollen: 'quince',
        gives: 'hybrid',
        weakness: { share: 0.9, onset: 2, course: { alive: 0.3, atYears: 5 }, rootBorne: { fact: 'roots' } },
      }),
      cross({ id: 'back', name: 'back', pollen: 'hybrid', gives: 'hybrid' }),
    ],
    stocks: [stock()],
    plans: plans(
      [
        generation('f1', 4, { judge: 0, keep: { howMany: 2 } }),
        generation('f2', 4, {
          seedParents: picksOf('f1'),
          pollen: picksOf('f1'),
          test: { gene: 'r', copies: 1 },
          route: 'out',
          keep: { howMany: 2, conditions: [{ type: 'test', gene: 'r' }] },
        }),
      ],
      [
        generation('w1', 4, {
          pollen: [{ tree: 'q' }],
          rescue: { who: 'weak', month: 3, stock: 'stock' },
          backup: { copies: 1, stock: 'stock', garden: 'home' },
          look: { trait: 'red' },
        }),
        generation('w2', 4, { seedParents: [{ tree: 'a' }], pollen: picksOf('w1'), after: 'w1', keep: { howMany: 1, rank: 'index', weights: { size: 1 } } }),
      ],
      [generation('o', 4, { pollen: 'open', flowers: 0 })],
    ),
  });

export const first = (input: Document): GenerationDocument => input.plans[0]!.generations[0]!;
export const second = (input: Document): GenerationDocument => input.plans[0]!.generations[1]!;
export const wide = (input: Document): GenerationDocument => input.plans[1]!.generations[0]!;

export interface Case {
  readonly name: string;
  readonly change: (input: Document) => unknown;
  readonly path: string;
  readonly says: RegExp;
  /** A note: it runs. */
  readonly note?: true;
}
