import { workingShare } from '../../model/incompatibility/pollen.ts';
import { namesOf } from '../../model/incompatibility/progeny.ts';
import { sBook } from '../../model/incompatibility/trees.ts';
import type { Programme, Tree } from '../../model/programme.ts';
import type { Match } from '../../text/inheritance.ts';

/** A tree and its S alleles as they are understood; empty where none is stated. */
export interface STree {
  readonly tree: Tree;
  readonly alleles: string;
}

export interface Pair {
  readonly match: Match;
  /** Share of the pollen that works, in [0, 1]. */
  readonly share: number;
  /** Rests on an allele that is not known, which counts as compatible. */
  readonly unsure: boolean;
}

export interface PairTable {
  readonly mothers: readonly STree[];
  readonly fathers: readonly STree[];
  /** By seed parent, then pollen parent. */
  readonly pairs: readonly (readonly Pair[])[];
}

/**
 * Lists how the trees of a programme whose kinds reject pollen suit each other by their S alleles; males stand as pollen parents only, females as
 * seed parents only. Null where no S allele is stated, or none of them rejects.
 */
export function pairTable(programme: Programme): PairTable | null {
  const book = sBook(programme);
  const trees = programme.trees.filter(({ kind }) => book.rejects(kind));
  if (trees.length === 0) return null;
  const named = (tree: Tree): STree => {
    const alleles = book.allelesOf(tree);
    return { tree, alleles: alleles.every((allele) => allele === null) ? '' : namesOf({ alleles }).join('') };
  };
  const mothers = trees.filter(({ sex }) => sex !== 'male').map(named);
  const fathers = trees.filter(({ sex }) => sex !== 'female').map(named);
  const pair = (mother: Tree, father: Tree): Pair => {
    const [style, pollen] = [book.allelesOf(mother), book.allelesOf(father)];
    const share = book.works(mother, father) === 0 ? 0 : workingShare(style, pollen);
    return {
      share,
      match: share === 0 ? 'none' : share < 1 ? 'part' : 'full',
      unsure: share > 0 && [...style, ...pollen].includes(null),
    };
  };
  return { mothers, fathers, pairs: mothers.map(({ tree: mother }) => fathers.map(({ tree: father }) => pair(mother, father))) };
}

/** How many pairs of two different trees suit in full, in part, not at all. */
export function countPairs({ mothers, fathers, pairs }: PairTable): Readonly<Record<Match, number>> {
  const counts = { full: 0, part: 0, none: 0 };
  pairs.forEach((row, m) => {
    row.forEach(({ match }, f) => {
      if (mothers[m]?.tree.id !== fathers[f]?.tree.id) counts[match] += 1;
    });
  });
  return counts;
}
