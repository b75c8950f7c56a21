import type { KnownAllele } from './alleles.ts';
import { grainsOf, isRejected, type Grain } from './pollen.ts';

/** One class of trees by their S alleles, sorted by name, and its share. */
export type SClass = Grain;

const nameOf = (allele: KnownAllele) => allele?.name ?? 'S?';
const collator = new Intl.Collator('en', { numeric: true });

/** Names of the alleles of a class, S? for one that is not known; figures by value. */
export const namesOf = ({ alleles }: Pick<SClass, 'alleles'>): string[] => alleles.map(nameOf);

/** Puts together what reads alike, sorted. */
export function gathered(members: readonly SClass[]): SClass[] {
  const found = new Map<string, SClass>();
  for (const { alleles, share } of members) {
    const sorted = [...alleles].sort((a, b) => collator.compare(nameOf(a), nameOf(b)));
    const key = sorted.map(nameOf).join(' ');
    found.set(key, { alleles: sorted, share: share + (found.get(key)?.share ?? 0) });
  }
  return [...found].sort(([a], [b]) => collator.compare(a, b)).map(([, member]) => member);
}

/** Grains of the father that this style does not reject, with their shares of those; none where all are rejected. */
export function workingGrains(style: readonly KnownAllele[], father: readonly KnownAllele[]): Grain[] {
  const works = grainsOf(father).filter(({ alleles }) => !isRejected(alleles, style));
  const all = works.reduce((sum, { share }) => sum + share, 0);
  return works.map(({ alleles, share }) => ({ alleles, share: share / all }));
}

/**
 * Returns the classes of seedlings of a cross by their S alleles: every egg, and of the pollen what works.
 * @returns shares sum to 1; an empty list where no pollen works
 *
 * **Source:** East & Mangelsdorf (1925) PNAS 11:166–171.
 */
export function progenyOf(mother: readonly KnownAllele[], father: readonly KnownAllele[]): SClass[] {
  const pollen = workingGrains(mother, father);
  return gathered(grainsOf(mother).flatMap((egg) => pollen.map((grain) => ({ alleles: [...egg.alleles, ...grain.alleles], share: egg.share * grain.share }))));
}
