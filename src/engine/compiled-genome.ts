import type { Marker } from '../genetics/markers.ts';
import type { OriginWords } from '../genetics/origin.ts';
import type { RejectionTable } from '../genetics/incompatibility-words.ts';

/** Genes stand in bits 0…n−1, ordered by linkage group and position. */
export interface CompiledGenes {
  readonly count: number;
  readonly linked: boolean;
  /** Double reduction by gene. */
  readonly doubleReduction: readonly number[];
  /** Chance of recombination with the gene before it; ½ where it starts a group or is free. */
  readonly recombination: Float64Array;
}

/** What a genotype must carry. 0: every gene, 1: any gene, 2: copies in total. */
export interface CompiledRule {
  readonly name: string;
  readonly weight: number;
  readonly mode: 0 | 1 | 2;
  readonly genes: readonly number[];
  readonly copies: readonly number[];
  readonly total: number;
}

export interface CompiledIncompatibility extends RejectionTable {
  /** Word of each homologue that holds the number of its S allele, before those of the markers of origin. It moves whole. */
  readonly word: number;
  /** Set where part of the pollen works, of full set. */
  readonly halfSet: number;
}

/** Where pieces of the genome come from. */
export interface CompiledOrigin {
  /** Founding kinds, by their number in the marker words: positions in `kinds`. */
  readonly kinds: readonly number[];
  readonly markers: readonly Marker[];
  readonly words: OriginWords;
  /** The gene whose surroundings are looked at, and the marker that stands at it; −1 for none. */
  readonly gene: number;
  readonly marker: number;
}
