import type { Cross, Kind, MeasuredTrait, Programme, ShownTrait, Stock } from '../model/programme.ts';
import type { Estimate, Source } from '../model/estimate.ts';

/** Figures of the catalogue always say where they are from. */
export type Figure = Exclude<Estimate, number> & { readonly source: Source };

/** A trait whose inheritance is known, ready to be put into a programme with its genes. */
export interface CatalogueTrait {
  readonly id: string;
  readonly name: string;
  /** One plain sentence: how it is inherited. */
  readonly summary: string;
  /** Where that is known from, and how sure it is. */
  readonly source: Source;
  readonly genes: Programme['genes'];
  readonly trait: ShownTrait | MeasuredTrait;
}

/** A kind of fruit tree with everything the catalogue knows of it. Units as in the programme: shares 0–1, ages in years. */
export interface CatalogueKind {
  readonly id: string;
  /** Singular, lower case. */
  readonly name: string;
  readonly botanical: string;
  /** Ready for the programme; its id is the id of this entry. */
  readonly kind: Kind;
  /** Days of moist cold the seed needs before it comes up. Shown to the breeder; the futures do not use it. */
  readonly chilling: Figure;
  /** Rootstocks, with the take of the usual ways of grafting. */
  readonly stocks: readonly Stock[];
  readonly traits: readonly CatalogueTrait[];
  /** What one full-grown tree offers. */
  readonly tree: { readonly flowers: Figure };
  /** What no field holds: cautions, where sources disagree. Plain sentences. */
  readonly notes: readonly string[];
}

/** What is known of one ordered pair: seed parent's kind first. */
export interface CatalogueCross {
  readonly cross: Cross;
  /** Kind of the seedlings, when the two kinds differ. */
  readonly hybrid?: Kind;
  /** The hybrid crossed with each parent, both ways round, and with itself. Empty within a kind. */
  readonly backcrosses: readonly Cross[];
  /** 'published': at least one figure of the cross itself was printed. 'guess': nobody counted this pair. */
  readonly basis: 'published' | 'guess';
}
