import { isRejected } from '../../model/incompatibility/pollen.ts';
import { sBook } from '../../model/incompatibility/trees.ts';
import type { Programme, Tree } from '../../model/programme.ts';
import { gameteSizes, setsOf } from '../../model/sets.ts';
import { Gametes } from './gametes.ts';
import { placeGenes, type PlacedGene } from './linkage.ts';
import { statesOf, type Parent, type Ruling } from './parent.ts';

/** Stands among genes for “the style rejects this copy of S”; no gene can have this id. */
const REJECTED = '';

/** One way in which the sets of the seedlings come together, and its share; the only one but where both parents have an odd number. */
export interface Way {
  readonly share: number;
  readonly eggs: Gametes;
  readonly pollen: Gametes;
}

/** How a pair of trees passes some genes on. */
export interface Passage {
  /** As the bits of homologues stand for them: those asked for, and the mark of rejection where there is one. */
  readonly genes: readonly PlacedGene[];
  /** Genes that were asked for, in order of linkage. */
  readonly ids: readonly string[];
  readonly ways: readonly Way[];
  /** Sets of the seedlings. */
  readonly sets: number;
  readonly seedSets: number;
  readonly pollenSets: number;
  /** What each parent may be under some rules. For its own pollen the two are one and the same. */
  readonly motherUnder: (rulings: readonly Ruling[]) => Parent;
  readonly fatherUnder: (rulings: readonly Ruling[]) => Parent;
}

/** Homologues that are followed in a tree. */
export function setsOfTree({ kinds }: Pick<Programme, 'kinds'>, tree: Tree): number {
  const kind = kinds.find(({ id }) => id === tree.kind);
  return kind ? setsOf(kind) : 2;
}

/** Numbers of homologues that egg and pollen grain can bring, and what the seedlings then have; as the cross entry says, if there is one. */
export function sizesOf(programme: Programme, mother: Tree, father: Tree): { readonly seed: number; readonly pollen: number }[] {
  const entry = programme.crosses.find(({ seed, pollen }) => seed === mother.kind && pollen === father.kind);
  const gives = programme.kinds.find(({ id }) => id === entry?.gives);
  const [seeds, pollens] = [mother, father].map((tree) => gameteSizes(setsOfTree(programme, tree)));
  const every = (seeds ?? []).flatMap((seed) => (pollens ?? []).map((pollen) => ({ seed, pollen })));
  return gives ? every.filter(({ seed, pollen }) => seed + pollen === setsOf(gives)) : every.slice(0, 1);
}

/** The S gene as one more gene of the father, where it is linked to one that is asked for: 1 for a copy that the style rejects. */
function rejection(programme: Programme, mother: Tree, father: Tree, ids: readonly string[]): readonly boolean[] | null {
  const book = sBook(programme);
  const { group, position } = programme.incompatibility ?? {};
  const linked = programme.genes.some((gene) => ids.includes(gene.id) && gene.position !== undefined && gene.group === group);
  if (!book.rejects(mother.kind) || group === undefined || position === undefined || !linked) return null;
  const style = book.allelesOf(mother);
  const flags = book.allelesOf(father).map((allele) => isRejected([allele], style));
  return flags.some(Boolean) ? flags : null;
}

/**
 * Works out how two trees pass some genes on: their sets of chromosomes, linkage, double reduction, genes that one side alone passes on, and
 * pollen that the style rejects, which takes what is linked to it along.
 * @param ids genes to look at, each once
 * @throws RangeError where the sets of the parents and the seedlings do not add up
 *
 * **Source:** docs/model.md §§ 3, 6.
 */
export function passageOf(programme: Programme, mother: Tree, father: Tree, ids: readonly string[]): Passage {
  const sizes = sizesOf(programme, mother, father);
  const [first] = sizes;
  if (!first) throw new RangeError('The sets of the parents do not add up to those of the seedlings.');
  const flags = rejection(programme, mother, father, ids);
  const { group, position } = programme.incompatibility ?? {};
  const genes = flags ? placeGenes({ genes: [...programme.genes, { id: REJECTED, group, position }] }, [...ids, REJECTED]) : placeGenes(programme, ids);
  const rejected = genes.findIndex(({ id }) => id === REJECTED);
  const geneOf = (id: string) => programme.genes.find((gene) => gene.id === id);
  const alphaOf = ({ id }: PlacedGene) =>
    (id === REJECTED ? programme.genes.find((gene) => gene.group === group && gene.position !== undefined) : geneOf(id))?.doubleReduction ?? 0;
  const withheld = (side: 'seed' | 'pollen') => genes.reduce((bits, { id }, g) => (geneOf(id)?.passes === side ? bits | (1 << g) : bits), 0);
  const [seedSets, pollenSets] = [setsOfTree(programme, mother), setsOfTree(programme, father)];
  const common = { genes, doubleReduction: genes.map(alphaOf), rejected };
  const under = (tree: Tree, sets: number, own: readonly boolean[] | null) => (rulings: readonly Ruling[]) =>
    statesOf(tree, sets, genes, rulings, own && { gene: rejected, on: own });
  return {
    genes,
    ids: genes.filter((_, g) => g !== rejected).map(({ id }) => id),
    sets: first.seed + first.pollen,
    seedSets,
    pollenSets,
    ways: sizes.map(({ seed, pollen }) => ({
      share: 1 / sizes.length,
      eggs: new Gametes({ ...common, sets: seedSets, take: seed, withheld: withheld('pollen'), isPollen: false }),
      pollen: new Gametes({ ...common, sets: pollenSets, take: pollen, withheld: withheld('seed'), isPollen: true }),
    })),
    motherUnder: under(mother, seedSets, mother.id === father.id ? flags : null),
    fatherUnder: under(father, pollenSets, flags),
  };
}
