import type { Rule } from '../model/programme.ts';

/** What a genotype must carry to qualify for a trait. */
export type Needs = Rule['needs'];

/** Copies (0, 1 or 2) of the counted allele, by gene id. */
export type Copies = Readonly<Record<string, number>>;

/** One genotype of a family and its share of the family. */
export interface FamilyMember {
  readonly copies: Copies;
  readonly share: number;
}

/** Twelve free genes can make half a million genotypes; more would stall the page. */
const MOST_GENES = 12;

function copiesOf(tree: Copies, gene: string): number {
  const copies = tree[gene] ?? 0;
  if (copies !== 0 && copies !== 1 && copies !== 2) throw new RangeError(`A diploid tree carries 0, 1 or 2 copies of ${gene}, not ${String(copies)}.`);
  return copies;
}

/**
 * Returns the shares of offspring with 0, 1 and 2 copies of one gene's counted allele.
 * @param mother chance that her gamete carries the allele, in [0, 1] (half her copies)
 * @param father the same of the father, or the allele's frequency in the pollen
 *
 * **Source:** Mendel, G. (1866) Verh. naturforsch. Ver. Brünn 4:3–47.
 */
export function offspringShares(mother: number, father: number): readonly [number, number, number] {
  return [(1 - mother) * (1 - father), mother * (1 - father) + father * (1 - mother), mother * father];
}

/**
 * Enumerates the family of two diploid trees over genes that segregate freely.
 * @param mother copies by gene; a gene not named counts as 0
 * @param father copies by gene; the mother herself for a selfed family
 * @param genes ids to look at, at most 12, each once
 * @returns every genotype that can occur; shares are exact (whole multiples of a power of ¼) and sum to 1
 * @throws RangeError for more genes or copies other than 0, 1, 2
 *
 * **Source:** Mendel (1866), independent assortment.
 */
export function family(mother: Copies, father: Copies, genes: readonly string[]): FamilyMember[] {
  if (genes.length > MOST_GENES) throw new RangeError(`A family can be listed for at most ${String(MOST_GENES)} genes.`);
  let members: FamilyMember[] = [{ copies: {}, share: 1 }];
  for (const gene of genes) {
    const shares = offspringShares(copiesOf(mother, gene) / 2, copiesOf(father, gene) / 2);
    members = members.flatMap((member) =>
      shares.flatMap((share, copies) => (share > 0 ? [{ copies: { ...member.copies, [gene]: copies }, share: member.share * share }] : [])),
    );
  }
  return members;
}

/**
 * Tells whether a genotype qualifies under a rule.
 *
 * **Source:** docs/model.md §9.
 */
export function qualifies(copies: Copies, rule: Needs): boolean {
  if (rule.needs === 'total') return rule.genes.reduce((total, gene) => total + (copies[gene] ?? 0), 0) >= rule.copies;
  const enough = (need: { gene: string; copies: number }): boolean => (copies[need.gene] ?? 0) >= need.copies;
  return rule.needs === 'all' ? rule.of.every(enough) : rule.of.some(enough);
}

/** Returns the ids of the genes that a rule rests on, each once. */
export function genesOf(rule: Needs): string[] {
  return [...new Set(rule.needs === 'total' ? rule.genes : rule.of.map((need) => need.gene))];
}

/**
 * Returns the share of a family in each phenotype.
 * @param members a family (see `family`)
 * @param phenotypes rules in order; a genotype belongs to the first it qualifies under
 * @returns one share for each rule, then that of genotypes that qualify under none
 *
 * **Source:** docs/model.md §9.
 */
export function phenotypeShares(members: readonly FamilyMember[], phenotypes: readonly Needs[]): number[] {
  const shares = new Array<number>(phenotypes.length + 1).fill(0);
  for (const { copies, share } of members) {
    const found = phenotypes.findIndex((rule) => qualifies(copies, rule));
    const place = found < 0 ? phenotypes.length : found;
    shares[place] = (shares[place] ?? 0) + share;
  }
  return shares;
}

/**
 * Returns the share of a cross's seedlings that qualify under a rule, free genes and diploids assumed.
 * @param mother copies by gene
 * @param father copies by gene
 * @param rule what a seedling must carry
 * @throws RangeError as `family`
 *
 * **Source:** Mendel (1866); docs/model.md §9.
 */
export function shareQualifying(mother: Copies, father: Copies, rule: Needs): number {
  return phenotypeShares(family(mother, father, genesOf(rule)), [rule])[0] ?? 0;
}
