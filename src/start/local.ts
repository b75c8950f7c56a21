import { kindOf, kinds, type CatalogueKind } from '../catalogue/catalogue.ts';
import { freshId } from '../model/plans.ts';
import type { Kind, Programme } from '../model/programme.ts';

export const sameName = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

/**
 * The programme’s own entry of a kind of the catalogue: the one of its name, else the one of its id, unless that is named like another
 * kind of the catalogue.
 * @param id of a kind of the catalogue
 */
export function localKind({ kinds: own }: Pick<Programme, 'kinds'>, id: string): Kind | undefined {
  const entry = kindOf(id);
  const named = entry && own.find(({ name }) => sameName(name, entry.name));
  if (named) return named;
  const kept = own.find((kind) => kind.id === id);
  return kept && kinds.some(({ name }) => sameName(name, kept.name)) ? undefined : kept;
}

/** The kinds of the catalogue that a programme has, each with the programme’s own entry. */
export function sharedKinds(programme: Pick<Programme, 'kinds'>): readonly { readonly entry: CatalogueKind; readonly own: Kind }[] {
  return kinds.flatMap((entry) => {
    const own = localKind(programme, entry.id);
    return own ? [{ entry, own }] : [];
  });
}

/** Gives ids that are not taken yet, and takes them. An id that is free stays as it is. */
export function idGiver(used: Iterable<string>): (wanted: string) => string {
  const taken = new Set(used);
  return (wanted) => {
    const id = taken.has(wanted) ? freshId(wanted, taken) : wanted;
    taken.add(id);
    return id;
  };
}
