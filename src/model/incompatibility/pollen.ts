import { gameteSizes } from '../sets.ts';
import type { KnownAllele } from './alleles.ts';

/** One kind of pollen grain of a tree and its share of the grains. */
export interface Grain {
  readonly alleles: readonly KnownAllele[];
  readonly share: number;
}

/**
 * Tells whether a grain is rejected: some allele that works in it is like one that works in the style. One is enough, whatever else
 * a grain with two or three copies carries.
 *
 * **Source:** East & Mangelsdorf (1925) PNAS 11:166–171; for grains with two copies in sour cherry Hauck et al. (2006)
 * Genetics 172:1191–1198 (from memory).
 */
export function isRejected(grain: readonly KnownAllele[], style: readonly KnownAllele[]): boolean {
  return grain.some((pollen) => pollen?.pollenWorks === true && style.some((own) => own?.styleWorks === true && own.like === pollen.like));
}

/**
 * Lists the grains of a tree. Every choice of copies is as likely; with double reduction α that share of the grains carries one
 * copy twice.
 * @param alleles one entry a set of chromosomes, 2 … 6
 * @param doubleReduction in [0, ½], 0 where grains carry one copy
 * @returns shares that sum to 1; grains that are alike are not put together
 *
 * **Source:** own derivation from the random pairing of the sets (docs/model.md, Genome).
 */
export function grainsOf(alleles: readonly KnownAllele[], doubleReduction = 0): Grain[] {
  const sizes = gameteSizes(alleles.length);
  return sizes.flatMap((size) => {
    const alpha = size > 1 ? doubleReduction : 0;
    const plain = choices(alleles, size);
    const doubled =
      alpha > 0
        ? alleles.flatMap((twice, i) =>
            choices(
              alleles.filter((_, k) => k !== i),
              size - 2,
            ).map((rest) => [twice, twice, ...rest]),
          )
        : [];
    const weigh = (grains: readonly (readonly KnownAllele[])[], weight: number) =>
      grains.map((grain) => ({ alleles: grain, share: weight / grains.length / sizes.length }));
    return [...weigh(plain, 1 - alpha), ...weigh(doubled, alpha)];
  });
}

/** Every way to take so many of a list, in its order. */
function choices<T>(list: readonly T[], size: number): T[][] {
  if (size <= 0) return [[]];
  return list.flatMap((first, i) => choices(list.slice(i + 1), size - 1).map((rest) => [first, ...rest]));
}

/**
 * Returns the share of a tree’s pollen that works in a style, in [0, 1].
 * @param style alleles of the seed parent
 * @param father alleles of the pollen parent
 */
export function workingShare(style: readonly KnownAllele[], father: readonly KnownAllele[], doubleReduction = 0): number {
  const grains = grainsOf(father, doubleReduction);
  const works = grains.filter((grain) => !isRejected(grain.alleles, style));
  // All or none exactly, whatever the shares sum to in floating point.
  if (works.length === grains.length) return 1;
  return works.reduce((sum, { share }) => sum + share, 0);
}

/** Alleles of a tree as many as it has sets: what is not written is not known. */
export const filledUp = (alleles: readonly KnownAllele[], sets: number): KnownAllele[] => Array.from({ length: sets }, (_, set) => alleles[set] ?? null);
