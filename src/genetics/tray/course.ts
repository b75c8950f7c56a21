import { sBook } from '../../model/incompatibility/trees.ts';
import { meanOf } from '../../model/mean.ts';
import type { Cross, Kind, Programme, Tree } from '../../model/programme.ts';
import { strayShareOfFruit } from '../population.ts';
import { fateOf, type Fate } from './fate.ts';
import { pollenOf, type PollenWorks } from './pollen.ts';

/** Seasons from germination to first fruit. */
export interface Seasons {
  readonly earliest: number;
  readonly half: number;
  readonly ninety: number;
}

/** Weak seedlings: months for which they look sound, and then months in which half die, or the share of all seedlings alive at so many years. */
export interface Weak {
  readonly share: number;
  readonly onset: number;
  readonly course: { readonly halfLife: number } | { readonly alive: number; readonly atYears: number };
  /** Chance that the weakness sits in the roots, so that new roots cure it. */
  readonly inRoots: number;
}

/** What becomes of the seed of a pair, by its cross entry and the kind its seedlings are; estimates at their means. */
export interface Course {
  readonly entry: Cross;
  readonly kind: Kind;
  readonly seasons: Seasons;
  /** Share that never fruits. */
  readonly never: number;
  /** First spring in which both parents bear. */
  readonly pollinated: number;
  /** Springs from pollination to germination. */
  readonly toGermination: number;
  readonly emptyFruit: number;
  /** Traits that cost seed: share of the fruit that is empty, besides, on a seed parent that shows them. */
  readonly emptyIfShown: readonly { readonly trait: string; readonly share: number }[];
  /** Share of the fruit that stray pollen sets where nothing keeps it out. */
  readonly stray: number;
  readonly weak: Weak | null;
  /** S alleles, where they are stated. */
  readonly pollen: PollenWorks | null;
  /** The tree's own pollen, which sets no fruit on it. */
  readonly selfSterile: boolean;
  readonly fate: Fate;
  /** Age in months at which what dies of both parents’ genes does. */
  readonly diesAt: number | null;
}

/** A hybrid of hybrids of hybrids: deeper is a circle, which the check refuses. */
const DEEPEST = 4;

/** Three seasons of a kind, in order; a hybrid's follow its parents', the seed parent's weighing two to one (docs/model.md §8). */
function seasonsOf(programme: Programme, { firstFruit }: Kind, depth = 0): Seasons | null {
  if ('years' in firstFruit) {
    const years = meanOf(firstFruit.years);
    return { earliest: years, half: years, ninety: years };
  }
  if ('earliest' in firstFruit) {
    const [earliest = 1, half = 1, ninety = 1] = [firstFruit.earliest, firstFruit.half, firstFruit.ninety].map(meanOf).sort((a, b) => a - b);
    return { earliest, half, ninety };
  }
  const of = (id: string) => {
    const kind = programme.kinds.find((entry) => entry.id === id);
    return kind && depth < DEEPEST ? seasonsOf(programme, kind, depth + 1) : null;
  };
  const [seed, pollen] = [of(firstFruit.between.seed), of(firstFruit.between.pollen)];
  if (!seed || !pollen) return null;
  const mix = (key: keyof Seasons) => (2 * seed[key] + pollen[key]) / 3;
  return { earliest: mix('earliest'), half: mix('half'), ninety: mix('ninety') };
}

/** A tree that first fruits in season ⌈x⌉ can do so from the season that holds `earliest`; shares are reached by the end of a season. */
function wholeSeasons({ earliest, half, ninety }: Seasons): Seasons {
  return earliest === ninety
    ? { earliest: Math.ceil(earliest), half: Math.ceil(earliest), ninety: Math.ceil(earliest) }
    : { earliest: Math.floor(earliest), half: Math.ceil(half), ninety: Math.ceil(ninety) };
}

function weakOf({ weakness }: Cross, programme: Programme): Weak | null {
  if (!weakness) return null;
  const { rootBorne, course } = weakness;
  const fact = 'fact' in rootBorne ? programme.facts.find(({ id }) => id === rootBorne.fact)?.chance : rootBorne.chance;
  return {
    share: meanOf(weakness.share),
    onset: meanOf(weakness.onset),
    course: 'halfLife' in course ? { halfLife: meanOf(course.halfLife) } : { alive: meanOf(course.alive), atYears: course.atYears },
    inRoots: fact === undefined ? 0 : meanOf(fact),
  };
}

/**
 * Returns what becomes of the seed of a pair, or null without a cross entry for the ordered pair of kinds (of several: the first, as in the engine).
 *
 * **Source:** docs/model.md §§ 5–8.
 */
export function courseOf(programme: Programme, mother: Tree, father: Tree): Course | null {
  const entry = programme.crosses.find(({ seed, pollen }) => seed === mother.kind && pollen === father.kind);
  const kindOf = (id: string) => programme.kinds.find((kind) => kind.id === id);
  const kind = entry && kindOf(entry.gives);
  const seasons = kind && seasonsOf(programme, kind);
  if (!entry || !seasons) return null;
  const fertility = meanOf(kindOf(mother.kind)?.fertilityAsSeedParent ?? 1) * meanOf(kindOf(father.kind)?.fertilityAsPollenParent ?? 1);
  const straySet = meanOf(entry.straySet);
  const pollen = pollenOf(programme, mother, father);
  const set = (pollen?.set ?? 1) * Math.min(1, meanOf(entry.set) * fertility);
  return {
    entry,
    kind,
    seasons: wholeSeasons(seasons),
    never: meanOf(kind.neverFruits),
    pollinated: Math.max(programme.startYear, mother.bearsFrom ?? 0, father.bearsFrom ?? 0),
    toGermination: 1 + entry.dormancy,
    emptyFruit: meanOf(entry.emptyFruit),
    emptyIfShown: programme.traits.flatMap((trait) =>
      trait.type === 'shown' && meanOf(trait.emptyIfShown) > 0 ? [{ trait: trait.name, share: meanOf(trait.emptyIfShown) }] : [],
    ),
    stray: straySet > 0 ? strayShareOfFruit(set, straySet) : 0,
    weak: weakOf(entry, programme),
    pollen,
    selfSterile: mother.id === father.id && !sBook(programme).takesOwn(mother),
    fate: fateOf(programme, mother, father),
    diesAt: entry.necrosis ? meanOf(entry.necrosis.months) : null,
  };
}
