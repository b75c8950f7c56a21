import type { Father, Generation, Plan, Programme, Tree } from '../programme.ts';
import { workingShare } from './pollen.ts';
import { gathered, progenyOf, type SClass } from './progeny.ts';
import { sBook } from './trees.ts';

/** Chances that a pair of parents sets nothing, and that only part of the pollen works. */
export interface PairChances {
  readonly none: number;
  readonly part: number;
}

/** More classes than this are not followed: the seedlings are then taken as not known. */
const MOST_CLASSES = 60;

/** S alleles that the seedlings of a plan may have: by generation id, null where they are not followed. */
type Followed = ReadonlyMap<string, readonly SClass[] | null>;

/**
 * Follows S alleles through a plan, as if every class of seedlings were as likely to be kept, and tells how pairs of a generation suit
 * each other. Open pollination, fathers chosen later and kinds with an odd number of sets are not followed.
 * @returns by position of the generation; null where nothing can be said, or both sides are named trees
 */
export function pairChances(programme: Programme, plan: Plan): readonly (PairChances | null)[] {
  const book = sBook(programme);
  if (!programme.kinds.some(({ id }) => book.rejects(id))) return plan.generations.map(() => null);
  const followed = new Map<string, readonly SClass[] | null>();
  return plan.generations.map((generation) => {
    const [seed, pollen] = sidesOf(programme, generation, followed);
    followed.set(generation.id, seed && pollen && generation.repeat === 1 ? seedlings(seed, pollen, isSelfed(generation)) : null);
    if (!seed || !pollen || isSelfed(generation) || isNamed(generation)) return null;
    const chances = { none: 0, part: 0 };
    for (const mother of seed)
      for (const father of pollen) {
        const works = workingShare(mother.alleles, father.alleles);
        if (works < 1) chances[works > 0 ? 'part' : 'none'] += mother.share * father.share;
      }
    return chances;
  });
}

const isSelfed = ({ pollen }: Generation) => pollen === 'self';
const isNamed = ({ seedParents, pollen }: Generation) => [...seedParents, ...(Array.isArray(pollen) ? pollen : [])].every((parent) => 'tree' in parent);

function sidesOf(programme: Programme, { seedParents, pollen, reciprocal }: Generation, followed: Followed): (readonly SClass[] | null)[] {
  const seed = side(programme, seedParents, followed);
  if (pollen === 'open') return [seed, null];
  if (pollen === 'self') return [seed, seed];
  const fathers = side(programme, pollen, followed);
  if (!reciprocal || !seed || !fathers) return [seed, fathers];
  const both = gathered([...halved(seed), ...halved(fathers)]);
  return [both, both];
}

const halved = (classes: readonly SClass[]) => classes.map(({ alleles, share }) => ({ alleles, share: share / 2 }));

/** Alleles of a side’s parents, each parent weighing as much. */
function side(programme: Programme, parents: readonly Father[], followed: Followed): readonly SClass[] | null {
  const book = sBook(programme);
  const classes: SClass[] = [];
  for (const parent of parents) {
    const own = 'tree' in parent ? treeClass(programme.trees.find(({ id }) => id === parent.tree)) : 'picksOf' in parent ? followed.get(parent.picksOf) : null;
    if (!own) return null;
    classes.push(...own.map(({ alleles, share }) => ({ alleles, share: share / parents.length })));
  }
  return gathered(classes);

  function treeClass(tree: Tree | undefined): SClass[] | null {
    const alleles = tree && book.rejects(tree.kind) ? book.allelesOf(tree) : [];
    return alleles.length % 2 === 0 && alleles.some((allele) => allele !== null) ? [{ alleles, share: 1 }] : null;
  }
}

/** Classes of the seedlings, every pair that sets anything weighing as much. */
function seedlings(seed: readonly SClass[], pollen: readonly SClass[], selfed: boolean): readonly SClass[] | null {
  const members: SClass[] = [];
  let all = 0;
  const pairs = selfed ? seed.map((own) => [own, own] as const) : seed.flatMap((mother) => pollen.map((father) => [mother, father] as const));
  if (pairs.length > MOST_CLASSES ** 2) return null;
  for (const [mother, father] of pairs) {
    const weight = selfed ? mother.share : mother.share * father.share;
    const progeny = progenyOf(mother.alleles, father.alleles);
    if (progeny.length > 0) all += weight;
    members.push(...progeny.map(({ alleles, share }) => ({ alleles, share: share * weight })));
  }
  const classes = gathered(members.map(({ alleles, share }) => ({ alleles, share: share / all })));
  return classes.length > 0 && classes.length <= MOST_CLASSES ? classes : null;
}
