import type { GenomeLayout } from '../genetics/meiosis.ts';
import type { CompiledGenes, CompiledIncompatibility, CompiledOrigin, CompiledRule } from './compiled-genome.ts';
import type { EstimateTable } from './estimates.ts';
import type { CompiledToday } from './today.ts';

/**
 * A programme ready to run: ids resolved to positions, estimates to slots of one table. Numbers named `…At` are slots
 * (positions in `estimates.values`); −1 means “none”.
 */
export interface Compiled {
  readonly estimates: EstimateTable;
  readonly startYear: number;
  /** Number of years, the first and the last included. */
  readonly years: number;
  readonly placeUnits: number;
  readonly handFlowers: number;
  readonly hoursLimit: number;
  readonly moneyLimit: number;
  readonly hours: Work;
  readonly money: Work;
  readonly frostChanceAt: number;
  readonly frostTakesAt: number;
  readonly luckSet: number;
  readonly luckGermination: number;
  readonly facts: readonly CompiledFact[];
  readonly genes: CompiledGenes;
  readonly shown: readonly CompiledShown[];
  readonly measured: readonly CompiledMeasured[];
  readonly kinds: readonly CompiledKind[];
  readonly crosses: readonly CompiledCross[];
  /** crossOf[seedKind · kinds + pollenKind]: position of the entry for the ordered pair, −1 where there is none. */
  readonly crossOf: Int32Array;
  readonly stocks: readonly CompiledStock[];
  readonly gardens: readonly { readonly key: number; readonly lossAt: number }[];
  readonly trees: readonly CompiledTree[];
  /** S alleles and how they meet; null where the document states none. */
  readonly incompatibility: CompiledIncompatibility | null;
  readonly pools: readonly CompiledPool[];
  readonly goal: CompiledGoal;
  readonly plans: readonly CompiledPlan[];
  /** Words per homologue: one for the genes, one for each measured trait, one for the S allele if any is stated, those of the markers of origin. */
  readonly words: number;
  /** Most homologues that any tree has. */
  readonly sets: number;
  /** How genomes pass on; null where two homologues with genes and measured traits are all there is. */
  readonly layout: GenomeLayout | null;
  readonly origin: CompiledOrigin | null;
  readonly whatIf: CompiledWhatIf;
  /** What stands where the season log is forecast from a later spring than the first; null: nothing stands yet. */
  readonly today: CompiledToday | null;
}

/** What happens for sure (see what-if.ts), by year index; neutral where nothing is stated. */
export interface CompiledWhatIf {
  /** Spring before which land is lost, −1 for none; the same by garden. */
  readonly landLostIn: number;
  readonly gardenLostIn: Int32Array;
  /** Spring whose frost is fixed, −1 for none. */
  readonly frostIn: number;
  readonly frostFalls: 0 | 1;
  /** By year: hands in bloom, and flowers pollinated, times this. */
  readonly handsTimes: Float64Array;
  /** First spring in which anything is pollinated. */
  readonly begins: number;
  /** A pair (handles; father −1: open) that a generation, by plan id, leaves out. */
  readonly leaves: { readonly year: number; readonly generations: ReadonlyMap<string, number>; readonly mother: number; readonly father: number } | null;
  readonly graftless: { readonly year: number; readonly generations: ReadonlyMap<string, number> } | null;
}

export interface Work {
  readonly perFlower: number;
  readonly perFruit: number;
  readonly perSeedling: number;
  readonly perGraft: number;
  readonly perTest: number;
  readonly perLook: number;
  readonly perPlaceYear: number;
  readonly perJudging: number;
}

export interface CompiledFact {
  readonly id: string;
  readonly key: number;
  readonly chanceAt: number;
}

export interface CompiledShown {
  readonly id: string;
  readonly key: number;
  readonly rules: readonly CompiledRule[];
  readonly canShowAt: number;
  readonly seasonsAt: number;
  readonly falseShowAt: number;
  readonly sharedSeason: number;
  readonly graded: boolean;
  readonly gradeMean: number;
  readonly gradeSd: number;
  readonly fruitsCut: number;
  readonly emptyIfShownAt: number;
}

export interface CompiledMeasured {
  readonly id: string;
  readonly key: number;
  readonly unit: string;
  readonly mean: number;
  readonly sdAt: number;
  readonly heritabilityAt: number;
  readonly repeatabilityAt: number;
  readonly travelsAt: number;
  readonly yearShareAt: number;
  readonly inbreedingAt: number;
  readonly genes: readonly { readonly gene: number; readonly half: number; readonly dominance: number }[];
}

export interface CompiledKind {
  readonly key: number;
  /** 0: one number, 1: three seasons, 2: between two kinds, seed parent two to one. */
  readonly firstFruitForm: 0 | 1 | 2;
  readonly earliestAt: number;
  readonly halfAt: number;
  readonly ninetyAt: number;
  readonly betweenSeed: number;
  readonly betweenPollen: number;
  readonly familySpreadAt: number;
  readonly neverFruitsAt: number;
  readonly regularityAt: number;
  readonly firstYearLossAt: number;
  readonly yearlyLossAt: number;
  readonly frostShareAt: number;
  readonly flowersAt: number;
  readonly yearsToFullBloom: number;
  readonly fertilitySeedAt: number;
  readonly fertilityPollenAt: number;
  readonly selfCompatible: boolean;
  /** Homologues of each chromosome that are followed: 2 where the sets pair two by two. */
  readonly sets: number;
  /** Whether its styles reject pollen by S alleles. */
  readonly gametophytic: boolean;
  /** An odd number of sets: sterile unless a cross says what share of the seedlings is any use. */
  readonly odd: boolean;
  /** Seedlings that are male, −1 where the sexes are not apart. */
  readonly maleShareAt: number;
  readonly nurseryUnits: number;
  readonly plantOutAge: number;
  readonly waitYears: number;
}

export interface CompiledCross {
  readonly key: number;
  readonly gives: number;
  readonly setAt: number;
  readonly strayAt: number;
  readonly emptyAt: number;
  readonly seedsAt: number;
  readonly seedsAtMost: number;
  readonly germinationAt: number;
  readonly routes: readonly { readonly id: string; readonly germinationAt: number; readonly hoursPerSeed: number; readonly moneyPerSeed: number }[];
  readonly dormancy: number;
  readonly weakShareAt: number;
  readonly onsetAt: number;
  readonly halfLifeAt: number;
  readonly aliveAt: number;
  readonly aliveYears: number;
  /** Position in `facts`; entries with a chance of their own have a fact of their own. */
  readonly rootFact: number;
  /** Shares of the seedlings that are any use, and that are copies of the seed parent; −1: all, none. */
  readonly usableAt: number;
  readonly clonesAt: number;
  /** Share that dies at an age in months whatever it stands on, −1 for none. */
  readonly necrosisShareAt: number;
  readonly necrosisMonthsAt: number;
}

export interface CompiledStock {
  readonly lossAt: number;
  readonly placeUnits: number;
  readonly precocityAt: number;
  readonly takeTenderAt: number;
  readonly takeRipeAt: number;
  readonly ripeMonths: number;
  readonly fertilityAt: number;
}

/** 0: gives pollen and bears fruit, 1: male, 2: female. */
export type Sex = 0 | 1 | 2;

export interface CompiledTree {
  readonly key: number;
  readonly kind: number;
  readonly flowersAt: number;
  readonly copies: number;
  readonly gardens: readonly number[];
  readonly lossAt: number;
  /** Year index from which it bears, 0 if it bears already. */
  readonly bearsFrom: number;
  /** Per gene: copies known 0 … sets, or −1: drawn at the frequency in `frequencyAt`. */
  readonly copiesOf: readonly number[];
  readonly frequencyAt: readonly number[];
  readonly homologueOf: readonly (0 | 1 | -1)[];
  /** Per measured trait: slot of the stated value, −1 for a random reference tree. */
  readonly valueAt: readonly number[];
  readonly sex: Sex;
  /** Numbers of its S alleles, as many as sets; 0 for one that is not known. */
  readonly s: readonly number[];
  /** What has been seen, by position of the shown trait. */
  readonly seen: readonly { readonly trait: number; readonly source: boolean; readonly showed: number; readonly seasons: number }[];
  /** Test crosses by position of the shown trait: seedlings that showed it, of those looked at. */
  readonly testCrosses: readonly { readonly trait: number; readonly showed: number; readonly of: number }[];
}

export interface CompiledPool {
  readonly trees: readonly { readonly tree: number; readonly weight: number }[];
  readonly background: CompiledBackground | null;
}

export interface CompiledBackground {
  readonly key: number;
  readonly trees: number;
  readonly weight: number;
  readonly kind: number;
  /** First handle of its anonymous trees. */
  readonly firstHandle: number;
  readonly frequencyAt: readonly number[];
  readonly valueAt: readonly number[];
  /** SD of true values, −1 where none is given. */
  readonly spread: readonly number[];
}

export interface CompiledCondition {
  /** 0: shown, 1: measured, 2: leaf test. */
  readonly type: 0 | 1 | 2;
  /** Position of the shown or measured trait, or of the gene. */
  readonly of: number;
  /** 0: at all, 1: in full, 2: in part. */
  readonly grade: 0 | 1 | 2;
  readonly atLeast: number;
  readonly atMost: number;
}

export interface CompiledGoal {
  readonly conditions: readonly CompiledCondition[];
  readonly crops: number;
  readonly trees: number;
  readonly breedsTrue: boolean;
}

/** A named tree (its handle), the picks of a generation (its position), or the `best` fathers of a generation's seedlings; −1 where it is another. */
export interface CompiledParent {
  readonly tree: number;
  readonly picksOf: number;
  readonly siresOf: number;
  readonly best: number;
}

export interface CompiledGeneration {
  readonly id: string;
  readonly name: string;
  readonly round: number;
  readonly seedParents: readonly CompiledParent[];
  readonly pollenParents: readonly CompiledParent[];
  /** 0: named parents or picks, 1: open, 2: selfing. */
  readonly pollination: 0 | 1 | 2;
  readonly reciprocal: boolean;
  readonly selfs: boolean;
  readonly pool: number;
  /** Cross entry that the generation names, −1: by the two kinds. */
  readonly cross: number;
  readonly route: string;
  readonly cover: number;
  readonly flowers: number;
  readonly seedlings: number;
  readonly springs: number;
  /** Generation it begins after, −1 for none. */
  readonly after: number;
  readonly garden: number;
  readonly judge: number;
  readonly test: {
    readonly gene: number;
    readonly copies: number;
    readonly falsePositive: number;
    readonly falseNegative: number;
    readonly cull: boolean;
  } | null;
  /** Year index from which the test is to be had. */
  readonly testFrom: number;
  readonly look: { readonly trait: number; readonly keepIfShown: boolean; readonly falsePositive: number; readonly falseNegative: number } | null;
  readonly rescue: { readonly every: boolean; readonly month: number; readonly stock: number; readonly scions: number; readonly keepOwnRoots: boolean } | null;
  readonly keep: {
    readonly conditions: readonly CompiledCondition[];
    /** 0: first come, 1: earliest fruit, 2: index. */
    readonly rank: 0 | 1 | 2;
    readonly weights: Float64Array;
    readonly howMany: number;
    /** Males kept as fathers. */
    readonly males: number;
    readonly bestLeft: boolean;
  };
  /** 0: first pick, 1: enough, 2: all judged. */
  readonly goOn: { readonly when: 0 | 1 | 2; readonly count: number; readonly atLatest: number };
  readonly backup: { readonly copies: number; readonly stock: number; readonly garden: number } | null;
  /** Traits that are looked at in this generation's crops. */
  readonly judgedShown: readonly number[];
  readonly judgedMeasured: readonly number[];
}

export interface CompiledPlan {
  readonly id: string;
  readonly clearDiscards: boolean;
  readonly generations: readonly CompiledGeneration[];
}

/** A place is counted in ten-thousandths, so that room is whole numbers. */
export const UNITS_PER_PLACE = 10000;
