import { alleleBook, type KnownAllele, type ListedAllele } from '../model/incompatibility/alleles.ts';
import { filledUp, workingShare } from '../model/incompatibility/pollen.ts';
import { gathered, namesOf, progenyOf, workingGrains } from '../model/incompatibility/progeny.ts';
import { readSAlleles } from '../model/incompatibility/reading.ts';

/** How much of the pollen works in a style: all, part (half in diploids), none. */
export type Compatibility = 'full' | 'half' | 'none';

export interface STree {
  /** As the trade writes it. */
  readonly s: string;
  /** Sets of chromosomes that carry the S gene, 2 … 6; 2 if left out. */
  readonly sets?: number;
}

/** One class of seedlings or of pollen: alleles sorted by name, S? for one that is not known. */
export interface NamedClass {
  readonly alleles: readonly string[];
  readonly share: number;
}

/**
 * Alleles of a tree, one a set.
 * @throws RangeError for a text that cannot be read, or more alleles than sets
 */
function allelesOf({ s, sets = 2 }: STree, listed: readonly ListedAllele[]): KnownAllele[] {
  const reading = readSAlleles(s);
  if (!reading.ok) throw new RangeError(reading.message);
  if (reading.alleles.length > sets) throw new RangeError(`${s} names more than ${String(sets)} alleles.`);
  return filledUp(reading.alleles.map(alleleBook(listed)), sets);
}

const named = (classes: readonly { readonly alleles: readonly KnownAllele[]; readonly share: number }[]): NamedClass[] =>
  classes.map((one) => ({ alleles: namesOf(one), share: one.share }));
const compatibilityOf = (working: number): Compatibility => (working <= 0 ? 'none' : working >= 1 ? 'full' : 'half');

/**
 * Tells how a seed parent and a pollen parent suit each other. Ordered: with an allele that lost a function, the reciprocal may differ.
 * @param listed alleles that lost a function or are like another; all others work on both sides
 * @throws RangeError as all functions here for texts that cannot be read, or more alleles than sets
 *
 * **Source:** East & Mangelsdorf (1925) PNAS 11:166–171; de Nettancourt (2001) Incompatibility and Incongruity in Wild and
 * Cultivated Plants (from memory).
 */
export function compatibility(mother: STree, father: STree, listed: readonly ListedAllele[] = []): Compatibility {
  return compatibilityOf(workingShare(allelesOf(mother, listed), allelesOf(father, listed)));
}

/** Kinds of pollen grain of the father that reach the ovules of this mother, with their shares of those that do; none where all are rejected. */
export function grainsThatWork(mother: STree, father: STree, listed: readonly ListedAllele[] = []): NamedClass[] {
  return named(gathered(workingGrains(allelesOf(mother, listed), allelesOf(father, listed))));
}

/** Classes of seedlings of a cross by their S alleles: every egg, and of the pollen what works. An empty list where none does. */
export function sProgeny(mother: STree, father: STree, listed: readonly ListedAllele[] = []): NamedClass[] {
  return named(progenyOf(allelesOf(mother, listed), allelesOf(father, listed)));
}

/**
 * Returns the chances that two seedlings of one cross, one as seed parent and another as pollen parent, are fully compatible, half
 * or not at all; of diploids from two unlike parents a quarter, a half and a quarter at best.
 */
export function sibCompatibility(mother: STree, father: STree, listed: readonly ListedAllele[] = []): Readonly<Record<Compatibility, number>> {
  const sibs = progenyOf(allelesOf(mother, listed), allelesOf(father, listed));
  const chances = { full: 0, half: 0, none: 0 };
  for (const seed of sibs) for (const pollen of sibs) chances[compatibilityOf(workingShare(seed.alleles, pollen.alleles))] += seed.share * pollen.share;
  return chances;
}

/** Share of the seedlings of a cross that set fruit with their own pollen. */
export function selfFertileShare(mother: STree, father: STree, listed: readonly ListedAllele[] = []): number {
  const seedlings = progenyOf(allelesOf(mother, listed), allelesOf(father, listed));
  return seedlings.reduce((sum, { alleles, share }) => sum + (ownPollenWorks(alleles) ? share : 0), 0);
}

/** Whether some grain of a tree works in its own style. An allele that is not known rejects its own pollen: it is taken as ordinary here. */
export function ownPollenWorks(alleles: readonly KnownAllele[]): boolean {
  const certain = alleles.map((allele, i) => allele ?? { name: '', like: `?${String(i)}`, pollenWorks: true, styleWorks: true });
  return workingShare(certain, certain) > 0;
}
