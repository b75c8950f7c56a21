import { sBook } from '../incompatibility/trees.ts';
import type { Path, Problem } from '../problem.ts';
import type { Cross, Father, Generation, Programme, Tree } from '../programme.ts';
import { pairsReached, type ReachedPair } from '../reach.ts';

const stop = (path: Path, message: string, fix: string): Problem => ({ path, message, fix, stops: true });

/** Generations that can never have seed: only their own pollen reaches their seed parents, or none of it ever sets fruit. */
export function checkParents(programme: Programme): Problem[] {
  return programme.plans.flatMap((plan, p) => {
    const pairs = pairsReached(programme, plan);
    return plan.generations.flatMap((generation, g) => {
      const path: Path = ['plans', p, 'generations', g];
      if (generation.pollen === 'open') return openly(programme, generation, path);
      const own = byHand(programme, generation, path);
      return own.length > 0
        ? own
        : barren(
            programme,
            pairs.filter((pair) => pair.generation === g),
            path,
          );
    });
  });
}

const treeOf = (programme: Programme, parent: Father): Tree | undefined =>
  'tree' in parent ? programme.trees.find(({ id }) => id === parent.tree) : undefined;
const takesOwn = (programme: Programme, tree: Tree): boolean => sBook(programme).takesOwn(tree);

const isNone = (estimate: Cross['set']): boolean => {
  if (typeof estimate === 'number') return estimate === 0;
  if ('value' in estimate) return estimate.value === 0;
  return 'high' in estimate && estimate.high === 0;
};

/** Every pair has a parent whose kind never sets fruit in that part, and no stray pollen helps out. */
function barren(programme: Programme, pairs: readonly ReachedPair[], path: Path): Problem[] {
  const reasons = pairs.map(({ seed, pollen, stray }) => {
    const [mother, father] = [seed, pollen].map((id) => programme.kinds.find((kind) => kind.id === id));
    if (stray || !mother || !father) return undefined;
    if (isNone(father.fertilityAsPollenParent)) return `${father.name}, whose pollen sets no fruit`;
    return isNone(mother.fertilityAsSeedParent) ? `${mother.name} as seed parent, which sets no fruit` : undefined;
  });
  const [reason] = reasons;
  if (reason === undefined || reasons.includes(undefined)) return [];
  return [stop([...path, 'pollen'], `relies on ${reason}`, 'Choose another parent, or mend the fertility of its kind.')];
}

/** Picks may be many; only one and the same named tree on both sides is surely left without a partner. */
function byHand(programme: Programme, { seedParents, pollen, selfs }: Generation, path: Path): Problem[] {
  if (pollen === 'self') return [];
  const parents = [...seedParents, ...(Array.isArray(pollen) ? pollen : [])];
  const [tree] = parents.map((parent) => treeOf(programme, parent));
  if (!tree || parents.some((parent) => treeOf(programme, parent) !== tree)) return [];
  const own = takesOwn(programme, tree);
  if (own && selfs) return [];
  return [
    stop(
      [...path, 'pollen'],
      own ? `crosses ${tree.name} with itself, and a cross leaves selfs out` : `crosses ${tree.name} with itself, which sets no fruit with its own pollen`,
      own ? 'Choose its own pollen, or another pollen parent.' : 'Choose another pollen parent.',
    ),
  ];
}

function openly(programme: Programme, { seedParents, pool: chosen }: Generation, path: Path): Problem[] {
  const pool = programme.pools.find(({ id }) => id === (chosen ?? programme.defaultPool));
  if (!pool || (pool.background && pool.background.weight > 0)) return [];
  const inAir = new Set(pool.trees.filter(({ weight }) => weight > 0).map(({ tree }) => tree));
  if (inAir.size === 0)
    return [stop([...path, 'pool'], `is openly pollinated, but “${pool.name}” has no pollen in it`, 'Give a tree or the neighbours a weight.')];
  const [tree] = seedParents.map((parent) => treeOf(programme, parent));
  const alone = tree && inAir.size === 1 && inAir.has(tree.id) && seedParents.every((parent) => treeOf(programme, parent) === tree);
  if (!alone || takesOwn(programme, tree)) return [];
  return [
    stop(
      [...path, 'pool'],
      `is openly pollinated, but all the pollen in “${pool.name}” is ${tree.name}’s own, with which it sets no fruit`,
      'Add another tree or neighbours to the pollen in the air.',
    ),
  ];
}
