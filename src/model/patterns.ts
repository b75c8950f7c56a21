import { freeMark, freshId, freshName } from './plans.ts';
import type { Condition, Generation, Plan, Programme, Tree } from './programme.ts';

/** A plan to start from, filled with the programme's own trees; or why it cannot be. */
export type Started = { readonly ok: true; readonly plan: Plan } | { readonly ok: false; readonly why: string };

export interface Pattern {
  readonly id: string;
  readonly name: string;
  start(programme: Programme): Started;
}

/** The tree the programme is about: the source of a trait, or the first one. */
const source = ({ trees }: Programme): Tree | undefined => trees.find(({ seen }) => Object.values(seen).some((entry) => 'source' in entry)) ?? trees[0];
const crosses = (programme: Programme, seed: string, pollen: string) => programme.crosses.find((cross) => cross.seed === seed && cross.pollen === pollen);
const picks = (generation: string) => [{ picksOf: generation }];
const named = (tree: Tree) => [{ tree: tree.id }];

/** What the goal asks, as a rule for keeping. */
const goalConditions = ({ goal }: Programme): Condition[] => goal.conditions.filter(({ type }) => type !== 'test');

/** Measured conditions of the goal: what can be seen in a first generation that does not show the trait yet. */
const measuredOnly = (programme: Programme): Condition[] => goalConditions(programme).filter(({ type }) => type === 'measured');

function generation(id: string, name: string, parts: Partial<Generation> & Pick<Generation, 'seedParents' | 'pollen' | 'keep'>): Generation {
  return {
    id,
    name,
    flowers: 100,
    seedlings: 40,
    springs: 3,
    judge: 1,
    reciprocal: false,
    selfs: false,
    cover: 1,
    repeat: 1,
    goOn: { when: 'firstPick' },
    ...parts,
  };
}

const keep = (howMany: number, conditions: Condition[] = [], rank: Generation['keep']['rank'] = 'first'): Generation['keep'] => ({
  conditions,
  rank,
  weights: {},
  howMany,
  males: 0,
  bestLeft: false,
});

/** The last generation: judged for as many crops as the goal asks, kept by the goal itself. */
function last(programme: Programme, name: string, parts: Partial<Generation> & Pick<Generation, 'seedParents' | 'pollen'>): Generation {
  return generation('last', name, {
    seedlings: 80,
    flowers: 160,
    judge: programme.goal.crops,
    keep: keep(programme.goal.trees, goalConditions(programme)),
    ...parts,
  });
}

function finish(programme: Programme, name: string, note: string, generations: Generation[]): Started {
  const mark = freeMark(programme);
  if (!mark) return { ok: false, why: 'All eight letters are given; remove a plan first.' };
  const id = freshId(
    name,
    programme.plans.map((plan) => plan.id),
  );
  return { ok: true, plan: { id, mark, name: freshName(name, programme), note, clearDiscards: true, generations } };
}

const no = (why: string): Started => ({ ok: false, why });

/** A partner of the same kind that is not the tree itself. */
const partner = ({ trees }: Programme, tree: Tree) => trees.find((entry) => entry.id !== tree.id && entry.kind === tree.kind);
/** A partner of another kind with a cross entry, and a way back to the tree's kind. */
const widePartner = (programme: Programme, tree: Tree) =>
  programme.trees.find((entry) => entry.kind !== tree.kind && crosses(programme, tree.kind, entry.kind));

/** Starting patterns, in the order shown. */
export const PATTERNS: readonly Pattern[] = [
  {
    id: 'open',
    name: 'Open-pollinated seed',
    start(programme) {
      const tree = source(programme);
      if (!tree) return no('There is no tree yet.');
      if (programme.defaultPool === undefined && programme.pools.length === 0) return no('No pollen in the air is described yet: add a pool of neighbours.');
      const pool = programme.defaultPool ?? programme.pools[0]?.id;
      return finish(programme, 'Open-pollinated seed', `Seed gathered under ${tree.name}, the best crossed with each other.`, [
        generation('gathered', 'Gathered seed', {
          seedParents: named(tree),
          pollen: 'open',
          flowers: 0,
          seedlings: 20,
          springs: 2,
          ...(pool === undefined ? {} : { pool }),
          keep: keep(2, measuredOnly(programme)),
          goOn: { when: 'enough', atLatest: 14 },
        }),
        last(programme, 'Pick × pick', { seedParents: picks('gathered'), pollen: picks('gathered') }),
      ]);
    },
  },
  {
    id: 'one-cross',
    name: 'One cross, keep the best',
    start(programme) {
      const tree = source(programme);
      const other = tree && partner(programme, tree);
      if (!tree || !other) return no('It needs two trees of one kind.');
      return finish(programme, 'One cross, keep the best', `${tree.name} × ${other.name}, judged at once.`, [
        last(programme, 'Cross', { seedParents: named(tree), pollen: named(other) }),
      ]);
    },
  },
  {
    id: 'brother-sister',
    name: 'Cross, then brother × sister',
    start(programme) {
      const tree = source(programme);
      const other = tree && partner(programme, tree);
      if (!tree || !other) return no('It needs two trees of one kind.');
      return finish(programme, 'Cross, then brother × sister', `${tree.name} × ${other.name}, then its first seedlings to flower crossed with each other.`, [
        generation('cross', 'Cross', {
          seedParents: named(tree),
          pollen: named(other),
          flowers: 40,
          seedlings: 12,
          springs: 2,
          judge: 0,
          keep: keep(3, [], 'earliest'),
          goOn: { when: 'enough', count: 2, atLatest: 14 },
        }),
        last(programme, 'Brother × sister', { seedParents: picks('cross'), pollen: picks('cross') }),
      ]);
    },
  },
  {
    id: 'backcross',
    name: 'Backcross, several times',
    start(programme) {
      const tree = source(programme);
      const other = tree && partner(programme, tree);
      if (!tree || !other) return no('It needs two trees of one kind.');
      const shown = goalConditions(programme).flatMap((condition): Condition[] => (condition.type === 'shown' ? [{ ...condition, atLeast: 1 }] : []));
      return finish(programme, 'Backcross, several times', `${tree.name} × ${other.name}, then back to ${other.name} twice, keeping what shows the trait.`, [
        generation('cross', 'Cross', {
          seedParents: named(other),
          pollen: named(tree),
          flowers: 40,
          seedlings: 12,
          springs: 2,
          judge: 0,
          keep: keep(3, [], 'earliest'),
        }),
        generation('back', 'Backcross', {
          seedParents: named(other),
          pollen: picks('cross'),
          seedlings: 30,
          repeat: 2,
          keep: keep(2, shown),
          goOn: { when: 'firstPick', atLatest: 16 },
        }),
        last(programme, 'Pick × pick', {
          seedParents: picks('back'),
          pollen: picks('back'),
          selfs: programme.kinds.find(({ id }) => id === tree.kind)?.selfCompatible === true,
        }),
      ]);
    },
  },
  {
    id: 'wide-rescue',
    name: 'Wide cross with rescue',
    start(programme) {
      const tree = source(programme);
      const other = tree && widePartner(programme, tree);
      if (!tree || !other) return no('It needs a tree of another kind, and a cross entry for the two kinds.');
      const entry = crosses(programme, tree.kind, other.kind);
      const stock = programme.stocks[0];
      if (!stock) return no('It needs a rootstock.');
      if (!entry || !crosses(programme, tree.kind, entry.gives)) return no('It needs a cross entry back from the hybrid to the first kind.');
      return finish(
        programme,
        'Wide cross with rescue',
        `${tree.name} × ${other.name}; at 4 months the weak seedlings are grafted on ${stock.name}; then back to ${tree.name}.`,
        [
          generation('wide', 'Wide cross, grafted', {
            seedParents: named(tree),
            pollen: named(other),
            flowers: 60,
            seedlings: 60,
            springs: 2,
            rescue: { who: 'weak', month: 4, stock: stock.id, scions: 1, keepOwnRoots: false },
            keep: keep(2, measuredOnly(programme)),
          }),
          last(programme, `Back to ${tree.name}`, { seedParents: named(tree), pollen: picks('wide'), flowers: 240 }),
        ],
      );
    },
  },
];
