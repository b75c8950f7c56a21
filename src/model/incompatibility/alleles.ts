import type { NamedAllele } from './reading.ts';

/** An S allele and what of it works. Two alleles that are `like` the same one recognise each other. */
export interface SAllele {
  readonly name: string;
  readonly like: string;
  /** Recognised in pollen: false for a pollen-part mutant, whose pollen is never rejected. */
  readonly pollenWorks: boolean;
  /** Recognises pollen in the style: false for a style-part mutant, which rejects none. */
  readonly styleWorks: boolean;
}

/** An allele out of the ordinary, as the document lists it. */
export interface ListedAllele {
  readonly name: string;
  readonly like?: string | undefined;
  readonly pollenWorks: boolean;
  readonly styleWorks: boolean;
}

/** Null: an allele that is not known, which is taken as compatible on both sides. */
export type KnownAllele = SAllele | null;

/** Name without its primes and spaces, written one way. */
const tidy = (name: string) => name.replace(/[’‘′´`ʹ]/g, "'").trim();

/** Looks up alleles by name. One that is not listed is like itself and works on both sides. */
export function alleleBook(listed: readonly ListedAllele[]): (name: NamedAllele) => KnownAllele {
  const book = new Map(listed.map((entry) => [tidy(entry.name), entry]));
  const likeOf = (name: string): string => {
    // A likeness may lead on to another; a circle ends where it began.
    const seen = new Set<string>();
    let here = name;
    while (!seen.has(here)) {
      seen.add(here);
      const next = book.get(here)?.like;
      if (next === undefined) return here;
      here = tidy(next);
    }
    return [...seen].sort()[0] ?? name;
  };
  return (name) => {
    if (name === null) return null;
    const entry = book.get(tidy(name));
    return { name: tidy(name), like: likeOf(tidy(name)), pollenWorks: entry?.pollenWorks ?? true, styleWorks: entry?.styleWorks ?? true };
  };
}

/** Whether a name says that its allele lost a function: a prime, null, or a mutant’s m. */
export const saysMutant = (name: string): boolean => /'|null|^S[0-9]+s?m[0-9]*$/.test(tidy(name));
