import { PLAIN_CROSS, PLAIN_KIND } from '../model/plain.ts';
import type { Cross, Kind } from '../model/programme.ts';
import { EMPTY, NEVER, NORMAL, STRAY } from './ordinary.ts';
import type { CatalogueKind, Figure } from './types.ts';

/** What a data file says of a kind; the rest is ordinary. */
export interface KindFigures {
  readonly id: string;
  readonly name: string;
  readonly firstFruit: Kind['firstFruit'];
  readonly familySpread: Figure;
  readonly regularity: Figure;
  readonly firstYearLoss: Figure;
  readonly yearlyLoss: Figure;
  readonly frostShare: Figure;
  readonly flowers: Figure;
  readonly seedsPerFruit: Figure;
  readonly seedsAtMost: number;
  readonly selfCompatible: boolean;
  /** Sets of chromosomes and how they pair: two, unless said. */
  readonly ploidy?: number;
  readonly inheritance?: Kind['inheritance'];
  /** Of kinds that reject pollen by its S allele. Without alleles stated of the trees it changes nothing. */
  readonly pollenRejection?: Kind['pollenRejection'];
  readonly maleShare?: Figure;
  readonly yearsToFullBloom: number;
  readonly neverFruits?: Figure;
  readonly fertilityAsSeedParent?: Figure;
  readonly fertilityAsPollenParent?: Figure;
  readonly nurseryShare?: number;
  readonly waitYears?: number;
  readonly note?: string;
}

export function kindFrom(figures: KindFigures): Kind {
  return {
    neverFruits: NEVER,
    fertilityAsSeedParent: NORMAL,
    fertilityAsPollenParent: NORMAL,
    nurseryShare: 0.05,
    plantOutAge: 1,
    waitYears: 1,
    ...PLAIN_KIND,
    ...figures,
  };
}

/** What a data file says of an ordered pair. */
export interface PairFigures {
  readonly seed: string;
  readonly pollen: string;
  readonly set: Figure;
  readonly germination: Figure;
  readonly straySet?: Figure;
  readonly emptyFruit?: Figure;
  readonly seedsPerFruit?: Figure;
  readonly seedsAtMost?: number;
  readonly routes?: Cross['routes'];
  readonly weakness?: Cross['weakness'];
  readonly motherClones?: Figure;
  readonly usableSeedlings?: Figure;
  readonly hybrid?: HybridFigures;
  readonly note?: string;
}

/** What a data file says of the hybrid of a pair; the rest is guessed. */
export interface HybridFigures {
  readonly fertilityAsSeedParent?: Figure;
  readonly fertilityAsPollenParent?: Figure;
  readonly neverFruits?: Figure;
  readonly flowers?: Figure;
  readonly selfCompatible?: boolean;
  readonly note?: string;
}

/** The cross entry of a pair. Stray and empty fruit are ordinary guesses where the pair says nothing. */
export function crossFrom({ hybrid: _, ...figures }: PairFigures, names: { readonly seed: string; readonly pollen: string }, gives: string): Cross {
  return {
    // A kind with itself is named once: a long name twice would make an id longer than a document allows.
    id: figures.seed === figures.pollen ? `${figures.seed}-itself` : `${figures.seed}-by-${figures.pollen}`,
    name: `${names.seed} × ${names.pollen}`,
    gives,
    straySet: STRAY,
    emptyFruit: EMPTY,
    routes: [],
    dormancy: 0,
    ...PLAIN_CROSS,
    ...figures,
  };
}

/** What a data file says of a whole entry: figures of the kind, and what stands beside it. */
export interface EntryFigures extends Omit<CatalogueKind, 'kind' | 'notes' | 'traits' | 'tree'> {
  readonly figures: Omit<KindFigures, 'id' | 'name'>;
  readonly traits?: CatalogueKind['traits'];
  readonly notes?: readonly string[];
}

export function entryFrom({ figures, traits = [], notes = [], ...entry }: EntryFigures): CatalogueKind {
  return { ...entry, traits, notes, tree: { flowers: figures.flowers }, kind: kindFrom({ id: entry.id, name: entry.name, ...figures }) };
}
