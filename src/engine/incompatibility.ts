import { rejects } from '../genetics/incompatibility-words.ts';
import { alleleBook } from '../model/incompatibility/alleles.ts';
import { readSAlleles } from '../model/incompatibility/reading.ts';
import type { Programme, Tree } from '../model/programme.ts';
import { gameteSizes } from '../model/sets.ts';
import type { CompiledIncompatibility } from './compiled-genome.ts';
import type { Orchard } from './orchard.ts';

/** S alleles of a programme as numbers; 0 is one that is not known. */
export interface CompiledAlleles {
  /** Null where no style rejects or no allele is stated. */
  readonly incompatibility: CompiledIncompatibility | null;
  /** Numbers of a tree's alleles, as many as its kind has sets. */
  readonly of: (tree: Tree, sets: number) => number[];
}

/** @param word of each homologue, where the number of its allele stands */
export function compileAlleles(programme: Programme, word: number): CompiledAlleles {
  const written = new Map(
    programme.trees.map((tree) => {
      const reading = readSAlleles(tree.s ?? '');
      return [tree.id, reading.ok ? reading.alleles : []];
    }),
  );
  const names = [...new Set([...written.values()].flat())].filter((name) => name !== null);
  if (names.length === 0 || !programme.kinds.some(({ pollenRejection }) => pollenRejection === 'gametophytic')) return { incompatibility: null, of: () => [] };
  const lookUp = alleleBook(programme.incompatibility?.alleles ?? []);
  const alleles = names.map(lookUp);
  const likes = alleles.map((allele) => allele?.like ?? '');
  const works = (side: 'pollenWorks' | 'styleWorks') => Uint8Array.from([0, ...alleles.map((allele) => +(allele?.[side] ?? false))]);
  return {
    incompatibility: {
      word,
      halfSet: programme.incompatibility?.halfSet ?? 1,
      like: Int32Array.from([0, ...likes.map((like) => 1 + likes.indexOf(like))]),
      pollenWorks: works('pollenWorks'),
      styleWorks: works('styleWorks'),
    },
    of: (tree, sets) => {
      const own = written.get(tree.id) ?? [];
      return Array.from({ length: sets }, (_, set) => {
        const name = own[set] ?? null;
        return name === null ? 0 : 1 + names.indexOf(name);
      });
    },
  };
}

/** How much of the pollen of a tree works on another: none, part or all. */
export const WORKS = { none: 0, part: 1, all: 2 } as const;
export type Works = (typeof WORKS)[keyof typeof WORKS];

/**
 * How much of the father's pollen works on the mother. One copy that is matched spoils a grain, so some grain works if the father has
 * as many copies that are not matched as a grain carries.
 *
 * A tree's own pollen: what is not known of its alleles is as its kind says, since an ordinary allele rejects itself.
 */
export function pollenWorks(orchard: Orchard, mother: number, father: number): Works {
  const { compiled, stand } = orchard;
  const { incompatibility, words } = compiled;
  const kind = compiled.kinds[orchard.kindOf(mother)]!;
  if (mother === father && (!incompatibility || !kind.gametophytic)) return kind.selfCompatible ? WORKS.all : WORKS.none;
  if (!incompatibility || !kind.gametophytic) return WORKS.all;
  const fatherSets = compiled.kinds[orchard.kindOf(father)]!.sets;
  const style = stand.offset(mother) + incompatibility.word;
  const from = stand.offset(father) + incompatibility.word;
  let free = 0;
  let unknown = 0;
  for (let set = 0; set < fatherSets; set += 1) {
    const allele = stand.genome[from + set * words]!;
    if (allele === 0) unknown += 1;
    else if (!rejects(incompatibility, stand.genome, style, kind.sets, words, allele)) free += 1;
  }
  const needed = Math.max(...gameteSizes(fatherSets));
  if (mother === father && unknown > 0) {
    if (free >= needed) return WORKS.part;
    return kind.selfCompatible ? WORKS.all : WORKS.none;
  }
  free += unknown;
  return free === fatherSets ? WORKS.all : free >= needed ? WORKS.part : WORKS.none;
}

/** Set of a pair, of full set: S alleles, and parents with an odd number of sets of which no seedling is any use. */
export function compatibility(orchard: Orchard, mother: number, father: number, cross: number): number {
  const { compiled } = orchard;
  const { kinds, crosses, incompatibility } = compiled;
  if ((kinds[orchard.kindOf(mother)]!.odd || kinds[orchard.kindOf(father)]!.odd) && (crosses[cross]?.usableAt ?? -1) < 0) return 0;
  const works = pollenWorks(orchard, mother, father);
  return works === WORKS.part ? (incompatibility?.halfSet ?? 1) : works === WORKS.all ? 1 : 0;
}
