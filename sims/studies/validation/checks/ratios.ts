import { family, phenotypeShares, type Copies, type Needs } from '../../../../src/genetics/family.ts';

/** A cross of known parents and the classes that its seedlings fall into. Genes are single letters, which name the counted allele. */
export interface Ratio {
  readonly mother: Copies;
  readonly father: Copies;
  /** A seedling belongs to the first class it qualifies under; one that qualifies under none makes a last class. */
  readonly classes: readonly Needs[];
  /** Seedlings that the published ratio counts. */
  readonly of: number;
  /** Places of our classes in the order of the published ratio; left out: as they are. */
  readonly order?: readonly number[];
}

const letters = (genes: string): string[] => Array.from(genes);
const of = (genes: string, copies = 1): { gene: string; copies: number }[] => letters(genes).map((gene) => ({ gene, copies }));
/** At least one copy of each gene named. */
const has = (genes: string): Needs => ({ needs: 'all', of: of(genes) });
const two = (gene: string): Needs => ({ needs: 'all', of: of(gene, 2) });
const one = (genes: string, copies = 1): Copies => Object.fromEntries(letters(genes).map((gene) => [gene, copies]));

/** Second generation of a hybrid with one copy of each gene. */
const selfed = (genes: string, classes: readonly Needs[], order?: readonly number[]): Ratio => ({
  mother: one(genes),
  father: one(genes),
  classes,
  of: 4 ** genes.length,
  ...(order ? { order } : {}),
});

/** By the id of the published entry. */
export const RATIOS: Readonly<Record<string, Ratio>> = {
  'mendel-1to2to1': selfed('A', [two('A'), has('A')]),
  'apple-rvi6': selfed('A', [two('A'), has('A')]),
  'mendel-9331': selfed('AB', [has('AB'), has('A'), has('B')]),
  'mendel-testcross1': { mother: one('A'), father: {}, classes: [has('A')], of: 2 },
  'mendel-trihybrid': selfed('ABC', [has('ABC'), has('AB'), has('AC'), has('A'), has('BC'), has('B'), has('C')]),
  'epistasis-9-7': selfed('AB', [has('AB')]),
  'epistasis-9-3-4': selfed('AB', [has('AB'), has('A')], [0, 2, 1]),
  'epistasis-12-3-1': selfed('AB', [has('A'), has('B')]),
  // The allele counted at the first locus is the recessive one, which alone lets the second show.
  'epistasis-13-3': selfed('aB', [{ needs: 'all', of: [...of('a', 2), ...of('B')] }], [1, 0]),
  'epistasis-9-6-1': selfed('AB', [has('AB'), { needs: 'any', of: of('AB') }]),
  'allo6-15': selfed('AB', [{ needs: 'any', of: of('AB') }]),
  'allo6-63': selfed('ABD', [{ needs: 'any', of: of('ABD') }]),
  'allo6-7-1': { mother: one('ABD'), father: {}, classes: [{ needs: 'any', of: of('ABD') }], of: 8 },
};

/** Brings our classes into the published order. */
export const ordered = (classes: readonly number[], { order }: Ratio): number[] => (order ? order.map((place) => classes[place] ?? NaN) : [...classes]);

/** Genes of a cross, in order of their letters. */
export const genesOf = ({ mother, father }: Ratio): string[] => [...new Set([...Object.keys(mother), ...Object.keys(father)])].sort();

/** The ratio as the family enumeration gives it. */
export function worked(ratio: Ratio): number[] {
  const members = family(ratio.mother, ratio.father, genesOf(ratio));
  return ordered(
    phenotypeShares(members, ratio.classes).map((share) => share * ratio.of),
    ratio,
  );
}
