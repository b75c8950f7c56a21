import { workingShare } from '../../model/incompatibility/pollen.ts';
import { gathered, namesOf, progenyOf, workingGrains } from '../../model/incompatibility/progeny.ts';
import { sBook } from '../../model/incompatibility/trees.ts';
import type { Programme, Tree } from '../../model/programme.ts';
import { ownPollenWorks } from '../incompatibility.ts';

/** What the S alleles of a pair make of its pollen and its seedlings. */
export interface PollenWorks {
  /** Share of the pollen that works, in [0, 1]. */
  readonly share: number;
  /** Set of this pair, of full set; 0 where none works. */
  readonly set: number;
  /** Alleles of the pollen that works, one entry a sort of grain. */
  readonly grains: readonly string[];
  /** Seedlings by their alleles, the most frequent first; empty where none works or nothing is known of one parent. */
  readonly seedlings: readonly { readonly alleles: string; readonly share: number }[];
  /** Share of the seedlings that set fruit with their own pollen. */
  readonly takeOwn: number;
  /** Genes on the chromosome of the S gene, which go with the allele that works where only part of the pollen does. */
  readonly linked: readonly string[];
}

/** Returns what the S alleles of a pair come to, or null where the seed parent rejects no pollen or nothing is stated of the two. */
export function pollenOf(programme: Programme, mother: Tree, father: Tree): PollenWorks | null {
  const book = sBook(programme);
  const [style, pollen] = [book.allelesOf(mother), book.allelesOf(father)];
  if (!book.rejects(mother.kind) || [...style, ...pollen].every((allele) => allele === null)) return null;
  const share = workingShare(style, pollen);
  const known = [style, pollen].every((alleles) => alleles.some((allele) => allele !== null));
  const { group, halfSet = 1 } = programme.incompatibility ?? {};
  const family = share > 0 && known ? progenyOf(style, pollen) : [];
  const part = share > 0 && share < 1;
  return {
    share,
    set: share === 0 ? 0 : part ? halfSet : 1,
    grains: gathered(workingGrains(style, pollen)).map((grain) => namesOf(grain).join('')),
    seedlings: family.map((one) => ({ alleles: namesOf(one).join(''), share: one.share })).sort((a, b) => b.share - a.share),
    takeOwn: family.reduce((sum, { alleles, share: own }) => sum + (ownPollenWorks(alleles) ? own : 0), 0),
    linked: part && group !== undefined ? programme.genes.filter((gene) => gene.group === group).map(({ name }) => name) : [],
  };
}
