import { crossFrom, type PairFigures } from './build.ts';
import { backcrossesOf, guessedPair, hybridOf } from './hybrid.ts';
import { kinds } from './kinds/all.ts';
import { pairs } from './pairs/all.ts';
import type { CatalogueCross, CatalogueKind } from './types.ts';

export { kinds };
export type { CatalogueCross, CatalogueKind, CatalogueTrait } from './types.ts';

/** The kind of that id, if the catalogue has it. */
export const kindOf = (id: string): CatalogueKind | undefined => kinds.find((kind) => kind.id === id);

function mustHave(id: string): CatalogueKind {
  const kind = kindOf(id);
  if (!kind) throw new RangeError(`The catalogue has no kind “${id}”; ask kindOf first.`);
  return kind;
}

const pairOf = (seed: string, pollen: string): PairFigures | undefined => pairs.find((pair) => pair.seed === seed && pair.pollen === pollen);

/**
 * What is known of the seed kind pollinated by the pollen kind; of a pair nobody counted, wide guesses marked as such.
 * The hybrid is one kind for both ways round.
 * @throws RangeError for an id that is not in the catalogue
 */
export function crossBetween(seedKindId: string, pollenKindId: string): CatalogueCross {
  const [seed, pollen] = [mustHave(seedKindId), mustHave(pollenKindId)];
  const figures = pairOf(seed.id, pollen.id) ?? guessedPair(seed.id, pollen.id);
  const entry = (gives: string) => ({ cross: crossFrom(figures, { seed: seed.name, pollen: pollen.name }, gives), basis: basisOf(figures) });
  if (seed.id === pollen.id) return { ...entry(seed.id), backcrosses: [] };
  const [first, second] = kinds.indexOf(seed) < kinds.indexOf(pollen) ? [seed, pollen] : [pollen, seed];
  const hybrid = hybridOf(first, second, pairOf(first.id, second.id)?.hybrid ?? pairOf(second.id, first.id)?.hybrid);
  return { ...entry(hybrid.id), hybrid, backcrosses: backcrossesOf(hybrid, first, second) };
}

/** Whether anything of the pair itself was printed. Stray pollen does not count: it says nothing of the pair. */
function basisOf({ set, germination, emptyFruit, seedsPerFruit, weakness }: PairFigures): CatalogueCross['basis'] {
  const course = weakness && ('alive' in weakness.course ? weakness.course.alive : weakness.course.halfLife);
  const figures = [set, germination, emptyFruit, seedsPerFruit, weakness?.share, weakness?.onset, course];
  return figures.some((figure) => typeof figure === 'object' && figure.source?.kind === 'published') ? 'published' : 'guess';
}
