import type { GenotypeRule } from './genome.ts';
import { together } from './polysomic.ts';

/**
 * Returns the share of the seedlings of a test cross that qualify under a rule. The tester carries the wanted copy on every set: half of a
 * full set comes from it, the rest from the tree.
 * @param rule genes by number
 * @param half sets/2 of the tree, whole
 * @param gamete shares of the tree's gametes with 0, 1 … copies of a gene
 *
 * **Source:** own derivation from the gametes; genes are taken as free of each other, which they are on average where it is not known which
 * copies lie on one chromosome.
 */
export function testCrossShare({ mode, genes, copies, total }: GenotypeRule, half: number, gamete: (gene: number) => readonly number[]): number {
  if (mode === 2) return tail(genes.map(gamete).reduce(together, [1]), total - half * genes.length);
  // Of a gene named twice the stricter need counts for all, the weaker for any: it is looked at once.
  let all = 1;
  let none = 1;
  genes.forEach((gene, i) => {
    if (genes.indexOf(gene) !== i) return;
    const needs = genes.flatMap((other, k) => (other === gene ? [copies[k] ?? 0] : []));
    const share = tail(gamete(gene), (mode === 0 ? Math.max(...needs) : Math.min(...needs)) - half);
    all *= share;
    none *= 1 - share;
  });
  return mode === 0 ? all : 1 - none;
}

const tail = (shares: readonly number[], least: number): number => shares.reduce((sum, share, n) => (n >= least ? sum + share : sum), 0);
