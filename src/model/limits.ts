/** Most sets of chromosomes that are followed. */
export const MOST_SETS = 6;

/** Most genotypes of unknown genes that are weighed for one tree by what was seen of it: those of nine genes with two sets. */
export const MOST_WEIGHED = 3 ** 9;

/** So many unknown genes of a tree with so many sets can be weighed: 9 with two sets, 6 with four, 5 with six. */
export function mostWeighedGenes(sets: number): number {
  let genes = 0;
  for (let genotypes = sets + 1; genotypes <= MOST_WEIGHED; genotypes *= sets + 1) genes += 1;
  return genes;
}
