import type { Kind, Programme, Tree } from '../programme.ts';
import { setsOf } from '../sets.ts';
import { alleleBook, type KnownAllele } from './alleles.ts';
import { filledUp, workingShare } from './pollen.ts';
import { readSAlleles } from './reading.ts';

/** What the named trees of a programme do with each other’s pollen, by their S alleles. */
export interface SBook {
  /** Whether styles of this kind reject pollen: the kind does, and some tree has S alleles stated. */
  readonly rejects: (kind: string) => boolean;
  /** One entry a set; all null where nothing is stated or the text cannot be read. */
  readonly allelesOf: (tree: Tree) => readonly KnownAllele[];
  /** Share of the father’s pollen that works on the mother, in [0, 1]. */
  readonly works: (mother: Tree, father: Tree) => number;
  /** Whether a tree sets fruit with its own pollen: by its S alleles where they are known, else as its kind does. */
  readonly takesOwn: (tree: Tree) => boolean;
}

export function sBook({ trees, kinds, incompatibility }: Programme): SBook {
  const lookUp = alleleBook(incompatibility?.alleles ?? []);
  const kindOf = (id: string): Kind | undefined => kinds.find((kind) => kind.id === id);
  const alleles = new Map(
    trees.map((tree) => {
      const reading = readSAlleles(tree.s ?? '');
      const kind = kindOf(tree.kind);
      return [tree.id, filledUp(reading.ok ? reading.alleles.map(lookUp) : [], kind ? setsOf(kind) : 2)];
    }),
  );
  const stated = [...alleles.values()].some((own) => own.some((allele) => allele !== null));
  const rejects = (kind: string) => stated && kindOf(kind)?.pollenRejection === 'gametophytic';
  const allelesOf = (tree: Tree) => alleles.get(tree.id) ?? [];
  const takesOwn = (tree: Tree) => {
    const byKind = kindOf(tree.kind)?.selfCompatible ?? false;
    if (!rejects(tree.kind)) return byKind;
    const own = allelesOf(tree);
    // An allele that is not known is taken as an ordinary one, which rejects its own pollen.
    const certain = own.map((allele, i) => allele ?? { name: '', like: `?${String(i)}`, pollenWorks: true, styleWorks: true });
    return workingShare(certain, certain) > 0 || (own.includes(null) && byKind);
  };
  return {
    rejects,
    allelesOf,
    takesOwn,
    works: (mother, father) => {
      if (mother.id === father.id) return takesOwn(mother) ? 1 : 0;
      return rejects(mother.kind) ? workingShare(allelesOf(mother), allelesOf(father)) : 1;
    },
  };
}
