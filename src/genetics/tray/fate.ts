import { sBook } from '../../model/incompatibility/trees.ts';
import { meanOf } from '../../model/mean.ts';
import type { Cross, Kind, Programme, Tree } from '../../model/programme.ts';
import { sizesOf } from './passage.ts';

/** Shares of the seedlings that come up but bear no fruit of their own kind, whatever they carry for a trait. */
export interface Fate {
  /** They give pollen and never fruit. */
  readonly male: number;
  /** Copies of the seed parent: seed made without a father. */
  readonly copy: number;
  /** Dead of what both parents gave them, whatever they are grafted on. */
  readonly dies: number;
  /** No use: of a parent with an odd number of sets. */
  readonly useless: number;
}

/** Share of the seedlings that are new trees and bear fruit; 1 exactly where nothing else can come up. */
export const grownOf = ({ male, copy, dies, useless }: Fate): number => 1 - male - copy - dies - useless;

const entryOf = ({ crosses }: Programme, mother: Tree, father: Tree): Cross | undefined =>
  crosses.find(({ seed, pollen }) => seed === mother.kind && pollen === father.kind);
const kindOf = ({ kinds }: Programme, id: string | undefined): Kind | undefined => kinds.find((kind) => kind.id === id);

/**
 * Returns what the seedlings of a pair come to, by its cross entry and the kind they are; estimates at their means. Copies are told first, of the
 * others what is of use, of these what dies, of the rest the males.
 *
 * **Source:** docs/model.md §§ 6, 7.
 */
export function fateOf(programme: Programme, mother: Tree, father: Tree): Fate {
  const entry = entryOf(programme, mother, father);
  if (!entry) return { male: 0, copy: 0, dies: 0, useless: 0 };
  const copy = meanOf(entry.motherClones);
  const usable = (1 - copy) * (entry.usableSeedlings === undefined ? 1 : meanOf(entry.usableSeedlings));
  const dies = usable * (entry.necrosis ? meanOf(entry.necrosis.share) : 0);
  return { male: (usable - dies) * meanOf(kindOf(programme, entry.gives)?.maleShare ?? 0), copy, dies, useless: 1 - copy - usable };
}

/** Why a pair sets no fruit, or gives no seedling. */
export type Barren =
  | { readonly why: 'rejects'; readonly own: boolean }
  | { readonly why: 'sex'; readonly tree: Tree }
  | { readonly why: 'odd'; readonly kind: Kind; readonly entry: Cross }
  | { readonly why: 'sets'; readonly entry: Cross };

/** Tells why nothing comes of a pair; null where something may, as far as is known. */
export function barrenOf(programme: Programme, mother: Tree, father: Tree): Barren | null {
  const own = mother.id === father.id;
  if (mother.sex === 'male' || (own && mother.sex !== 'both')) return { why: 'sex', tree: mother };
  if (father.sex === 'female') return { why: 'sex', tree: father };
  const book = sBook(programme);
  if (book.rejects(mother.kind) && book.works(mother, father) === 0) return { why: 'rejects', own };
  const entry = entryOf(programme, mother, father);
  if (!entry) return null;
  const odd = [mother, father].map((tree) => kindOf(programme, tree.kind)).find((kind) => kind !== undefined && kind.ploidy % 2 === 1);
  if (odd && entry.usableSeedlings === undefined) return { why: 'odd', kind: odd, entry };
  return sizesOf(programme, mother, father).length === 0 ? { why: 'sets', entry } : null;
}
