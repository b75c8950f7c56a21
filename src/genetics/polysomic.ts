import { exp } from '../random/elementary.ts';
import { genesOf, phenotypeShares, type Copies, type FamilyMember, type Needs } from './family.ts';

/** A tree as a parent: sets of chromosomes that pair with each other (2, 4 or 6), and copies of the counted allele by gene. */
export interface PolysomicTree {
  readonly sets: number;
  readonly copies: Copies;
}

/** More genotypes than this would stall the page. */
const MOST_GENOTYPES = 200_000;
const MOST_SETS = 12;

/** C(n, k), exact for the small numbers used here. */
function choose(n: number, k: number): number {
  if (k < 0 || k > n) return 0;
  let ways = 1;
  for (let i = 0; i < k; i += 1) ways = (ways * (n - i)) / (i + 1);
  return ways;
}

function mustBeEven(sets: number): void {
  if (!Number.isInteger(sets) || sets < 2 || sets > MOST_SETS || sets % 2 !== 0)
    throw new RangeError(`Gametes are reckoned for an even number of sets from 2 to ${String(MOST_SETS)}, not ${String(sets)}.`);
}

/**
 * Returns the most double reduction that can be: chromatids fully exchanged among all homologues (complete equational segregation).
 * @param sets even; 0 for two sets, 1/6 for four, 3/10 for six
 *
 * **Source:** Mather, K. (1936) J. Genet. 32:287–314 for four sets; the same count for more: both sisters of one copy go to one pole
 * with chance (n/2)(n/2 − 1)/(n(n − 1)) and then into one gamete with ¼, over n copies.
 */
export function mostDoubleReduction(sets: number): number {
  mustBeEven(sets);
  return ((sets / 2) * (sets / 2 - 1)) / (4 * (sets - 1));
}

/**
 * Returns double reduction where a gamete takes sets/2 of the 2 · sets chromatids at random (random chromatid segregation).
 * @param sets 2, 4 or 6; 1/7 for four, 3/11 for six
 *
 * **Source:** Haldane, J. B. S. (1930) J. Genet. 22:359–372; Haynes & Douches (1993) Theor. Appl. Genet. 85:857–862.
 */
export function chromatidDoubleReduction(sets: number): number {
  mustBeEven(sets);
  // A pair of sisters, and the rest from different copies: no more than one pair fits into a gamete of up to three.
  if (sets > 6) throw new RangeError('Gametes of more than three copies can hold two pairs of sisters.');
  const rest = sets / 2 - 2;
  return rest < 0 ? 0 : (sets * choose(sets - 1, rest) * 2 ** rest) / choose(2 * sets, sets / 2);
}

/**
 * Returns double reduction of a place on a chromosome, by its distance from the centromere, where all homologues pair together.
 * @param sets 4 or 6
 * @param morgans distance from the centromere, not negative
 * @param together share of meioses in which homologues pair in one group, in [0, 1]; in pairs there is none
 *
 * **Source:** idea of Mather (1935) J. Genet. 30:53–78; closed form own derivation: partners change at random at every crossover, so
 * α = A(1 − e^(−kd)) with A that of random chromatids and k = 7/3 (four sets), 11/5 (six).
 */
export function doubleReductionAt(sets: 4 | 6, morgans: number, together: number): number {
  const rate = sets === 4 ? 7 / 3 : 11 / 5;
  return together * chromatidDoubleReduction(sets) * (1 - exp(-rate * morgans));
}

/**
 * Returns the shares of gametes with 0 … sets/2 copies of one gene's counted allele: homologues pair at random, and with chance α two
 * of a gamete's copies are the same copy of the parent.
 * @param sets even, 2 to 12
 * @param copies 0 … sets
 * @param alpha double reduction, 0 to `mostDoubleReduction`; of no effect with two sets
 *
 * **Source:** Haldane (1930) without double reduction; with it, Fisher & Mather (1943) Ann. Eugen. 12:1–23 for four sets (from memory).
 */
export function gameteDosages(sets: number, copies: number, alpha = 0): number[] {
  mustBeEven(sets);
  if (!Number.isInteger(copies) || copies < 0 || copies > sets) throw new RangeError(`A tree of ${String(sets)} sets carries 0 to ${String(sets)} copies.`);
  const half = sets / 2;
  if (half > 1 && !(alpha >= 0 && alpha <= mostDoubleReduction(sets) + 1e-12))
    throw new RangeError(`Double reduction is between 0 and ${String(mostDoubleReduction(sets))} with ${String(sets)} sets.`);
  const doubled = half > 1 ? alpha : 0;
  const share = (wanted: number, from: number, others: number, taken: number): number =>
    (choose(from, wanted) * choose(others, taken - wanted)) / choose(from + others, taken);
  return Array.from({ length: half + 1 }, (_, n) => {
    const apart = share(n, copies, sets - copies, half);
    if (doubled === 0) return apart;
    // One copy twice; the rest without that one.
    const twice = (copies / sets) * share(n - 2, copies - 1, sets - copies, half - 2);
    const other = (1 - copies / sets) * share(n, copies, sets - copies - 1, half - 2);
    return (1 - doubled) * apart + doubled * ((copies > 0 ? twice : 0) + (copies < sets ? other : 0));
  });
}

/** Adds two independent counts: shares of 0, 1, 2 … in total. */
export function together(one: readonly number[], other: readonly number[]): number[] {
  const sum = new Array<number>(one.length + other.length - 1).fill(0);
  one.forEach((p, i) => {
    other.forEach((q, j) => (sum[i + j]! += p * q));
  });
  return sum;
}

/**
 * Returns the shares of seedlings with 0, 1, 2 … copies of one gene from two trees, which may have different numbers of sets.
 * @param mother sets and copies of this gene
 * @param father the same; the mother herself for a selfed family
 *
 * **Source:** Haldane (1930): two independent gametes.
 */
export function seedlingDosages(
  mother: { readonly sets: number; readonly copies: number },
  father: { readonly sets: number; readonly copies: number },
  alpha = 0,
): number[] {
  return together(gameteDosages(mother.sets, mother.copies, alpha), gameteDosages(father.sets, father.copies, alpha));
}

/**
 * Enumerates the family of two trees of any even number of sets over genes that segregate freely.
 * @param genes ids to look at, each once; a gene not named by a parent counts as 0 copies
 * @param alpha double reduction by gene; none where left out
 * @throws RangeError for more than 200 000 genotypes, and as `gameteDosages`
 *
 * **Source:** Haldane (1930); independent assortment.
 */
export function polysomicFamily(
  mother: PolysomicTree,
  father: PolysomicTree,
  genes: readonly string[],
  alpha: Readonly<Record<string, number>> = {},
): FamilyMember[] {
  let members: FamilyMember[] = [{ copies: {}, share: 1 }];
  for (const gene of genes) {
    const of = ({ sets, copies }: PolysomicTree) => ({ sets, copies: copies[gene] ?? 0 });
    const shares = seedlingDosages(of(mother), of(father), alpha[gene]);
    if (members.length * shares.length > MOST_GENOTYPES) throw new RangeError(`A family of more than ${String(MOST_GENOTYPES)} genotypes cannot be listed.`);
    members = members.flatMap((member) =>
      shares.flatMap((share, copies) => (share > 0 ? [{ copies: { ...member.copies, [gene]: copies }, share: member.share * share }] : [])),
    );
  }
  return members;
}

/**
 * Returns the share of a cross's seedlings that qualify under a rule by dosage, free genes assumed.
 * @throws RangeError as `polysomicFamily`
 *
 * **Source:** Haldane (1930); docs/model.md §§ 3, 9.
 */
export function polysomicShareQualifying(mother: PolysomicTree, father: PolysomicTree, rule: Needs, alpha: Readonly<Record<string, number>> = {}): number {
  return phenotypeShares(polysomicFamily(mother, father, genesOf(rule), alpha), [rule])[0] ?? 0;
}

/**
 * Returns the shares of a randomly mated population with 0 … sets copies of an allele.
 * @param frequency of the allele, in [0, 1]
 *
 * **Source:** Haldane (1930): without double reduction gametes draw their copies as if one by one from the whole population.
 */
export function dosagesInPopulation(sets: number, frequency: number): number[] {
  return Array.from({ length: sets + 1 }, (_, n) => choose(sets, n) * frequency ** n * (1 - frequency) ** (sets - n));
}
