import type { Kind } from './programme.ts';

/** Homologues that are followed: with subgenomes that pair apart a gene is inherited as with two sets, whatever the ploidy. */
export const setsOf = ({ inheritance, ploidy }: Pick<Kind, 'inheritance' | 'ploidy'>): number => (inheritance === 'disomic' ? 2 : ploidy);

/** Copies that a gamete of so many sets can carry: half of them; of an odd number one fewer or one more. */
export const gameteSizes = (sets: number): readonly number[] => (sets % 2 === 0 ? [sets / 2] : [(sets - 1) / 2, (sets + 1) / 2]);

/**
 * Copies that each side of a cross gives to its seedlings.
 * @returns null where they cannot add up to the sets of the seedlings
 */
export function sidesOf(seed: number, pollen: number, gives: number): { readonly seed: number; readonly pollen: number } | null {
  // Of two odd parents the larger half comes from the seed parent where either would do.
  for (const fromPollen of gameteSizes(pollen)) {
    const fromSeed = gives - fromPollen;
    if (gameteSizes(seed).includes(fromSeed)) return { seed: fromSeed, pollen: fromPollen };
  }
  return null;
}
