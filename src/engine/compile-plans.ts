import type { Condition, Father, Generation, Programme } from '../model/programme.ts';
import type { CompiledCondition, CompiledGeneration, CompiledParent } from './compiled.ts';
import { at, type Ids } from './positions.ts';

export function compileCondition(condition: Condition, ids: Ids): CompiledCondition {
  if (condition.type === 'test') return { type: 2, of: at(ids.genes, condition.gene), grade: 0, atLeast: 1, atMost: Infinity };
  const bounds = { atLeast: condition.atLeast ?? -Infinity, atMost: condition.atMost ?? Infinity };
  if (condition.type === 'measured') return { type: 1, of: at(ids.measured, condition.trait), grade: 0, ...bounds };
  return { type: 0, of: at(ids.shown, condition.trait), grade: condition.grade === 'any' ? 0 : condition.grade === 'full' ? 1 : 2, ...bounds };
}

/** Repeats become rounds: each later round takes its picks from the round before; later generations mean the last round. */
export function compileGenerations(
  generations: readonly Generation[],
  programme: Programme,
  ids: Ids,
  goal: readonly CompiledCondition[],
): CompiledGeneration[] {
  const out: CompiledGeneration[] = [];
  const lastRound = new Map<string, number>();
  generations.forEach((generation) => {
    for (let round = 1; round <= generation.repeat; round += 1) {
      const previous = out.length - 1;
      const before = (of: string) => (round > 1 ? previous : at(lastRound, of));
      const parent = (source: Father): CompiledParent => ({
        tree: 'tree' in source ? at(ids.trees, source.tree) : -1,
        picksOf: 'picksOf' in source ? before(source.picksOf) : -1,
        siresOf: 'sires' in source ? before(source.sires) : -1,
        best: 'sires' in source ? source.best : 0,
      });
      const after = round > 1 ? previous : generation.after === undefined ? previous : at(lastRound, generation.after);
      out.push(compileGeneration(generation, round, after, parent, programme, ids, goal));
    }
    lastRound.set(generation.id, out.length - 1);
  });
  return out;
}

function compileGeneration(
  generation: Generation,
  round: number,
  after: number,
  parent: (source: Father) => CompiledParent,
  programme: Programme,
  ids: Ids,
  goal: readonly CompiledCondition[],
): CompiledGeneration {
  const { keep, goOn, pollen, rescue, test, look, backup } = generation;
  const conditions = keep.conditions.map((source) => compileCondition(source, ids));
  const weights = Float64Array.from([...ids.measured.keys()], (trait) => keep.weights[trait] ?? 0);
  const looked = [...conditions, ...goal];
  const ranked = keep.rank === 'index' || keep.bestLeft;
  const positions = (type: 0 | 1) => new Set(looked.filter((c) => c.type === type).map((c) => c.of));
  const judgedMeasured = positions(1);
  weights.forEach((weight, i) => {
    if (ranked && weight !== 0) judgedMeasured.add(i);
  });
  return {
    id: generation.id,
    name: generation.name,
    round,
    seedParents: generation.seedParents.map(parent),
    pollenParents: Array.isArray(pollen) ? pollen.map(parent) : [],
    pollination: pollen === 'open' ? 1 : pollen === 'self' ? 2 : 0,
    reciprocal: generation.reciprocal,
    selfs: generation.selfs,
    pool: at(ids.pools, generation.pool ?? programme.defaultPool),
    cross: at(ids.crosses, generation.cross),
    route: generation.route ?? '',
    cover: generation.cover,
    flowers: generation.flowers,
    seedlings: generation.seedlings,
    springs: generation.springs,
    after,
    garden: generation.garden === undefined ? (programme.gardens.length > 0 ? 0 : -1) : at(ids.gardens, generation.garden),
    judge: generation.judge,
    test: test ? { ...test, gene: at(ids.genes, test.gene) } : null,
    testFrom: 0,
    look: look ? { ...look, trait: at(ids.shown, look.trait) } : null,
    rescue:
      rescue && rescue.who !== 'none'
        ? { every: rescue.who === 'every', month: rescue.month, stock: at(ids.stocks, rescue.stock), scions: rescue.scions, keepOwnRoots: rescue.keepOwnRoots }
        : null,
    keep: {
      conditions,
      rank: keep.rank === 'first' ? 0 : keep.rank === 'earliest' ? 1 : 2,
      weights,
      howMany: keep.howMany,
      males: keep.males,
      bestLeft: keep.bestLeft,
    },
    goOn: { when: goOn.when === 'firstPick' ? 0 : goOn.when === 'enough' ? 1 : 2, count: goOn.count ?? keep.howMany, atLatest: goOn.atLatest ?? Infinity },
    backup: backup
      ? {
          copies: backup.copies,
          stock: at(ids.stocks, backup.stock),
          garden: backup.garden === undefined ? (programme.gardens.length > 0 ? 0 : -1) : at(ids.gardens, backup.garden),
        }
      : null,
    judgedShown: [...positions(0)],
    judgedMeasured: [...judgedMeasured],
  };
}
