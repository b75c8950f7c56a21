import type { EstimateTable } from './estimates.ts';

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
  readonly pools: readonly CompiledPool[];
  readonly goal: CompiledGoal;
  readonly plans: readonly CompiledPlan[];
  /** Words per homologue: one for the genes, one for each measured trait. */
  readonly words: number;
  readonly whatIf: CompiledWhatIf;
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

/** Genes stand in bits 0…n−1, ordered by linkage group and position. */
export interface CompiledGenes {
  readonly count: number;
  readonly linked: boolean;
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

export interface CompiledTree {
  readonly key: number;
  readonly kind: number;
  readonly flowersAt: number;
  readonly copies: number;
  readonly gardens: readonly number[];
  readonly lossAt: number;
  /** Year index from which it bears, 0 if it bears already. */
  readonly bearsFrom: number;
  /** Per gene: copies known 0…2, or −1: drawn at the frequency in `frequencyAt`. */
  readonly copiesOf: readonly number[];
  readonly frequencyAt: readonly number[];
  readonly homologueOf: readonly (0 | 1 | -1)[];
  /** Per measured trait: slot of the stated value, −1 for a random reference tree. */
  readonly valueAt: readonly number[];
  /** What has been seen, by position of the shown trait. */
  readonly seen: readonly { readonly trait: number; readonly source: boolean; readonly showed: number; readonly seasons: number }[];
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

/** A named tree (its handle) or the picks of a generation (its position). */
export interface CompiledParent {
  readonly tree: number;
  readonly picksOf: number;
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
