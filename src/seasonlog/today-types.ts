/** What stands today, for one plan: plain data without a draw. Years are calendar years; generations are places in the plan, each round of a repeated one its own. */

/** A parent of logged seedlings: a founding tree, or a logged tree by its place in `PlanToday.trees`. */
export type StandingParent = { readonly tree: string } | { readonly logged: number };
/** Pollen: a parent, whatever was in the air, or the generation's pollen parents in equal parts. */
export type StandingPollen = StandingParent | 'air' | 'mixed';

/** Of one cross and spring; `cross` is the entry of its ordered pair (of the seed parent's own kind where the pollen was open). */
export interface Family {
  readonly batch: string;
  readonly name: string;
  readonly generation: number;
  readonly seed: StandingParent;
  readonly pollen: StandingPollen;
  readonly cross: string;
  readonly pollinated: number;
  /** Spring in which its seed comes up. */
  readonly born: number;
}

/** Seedlings alike that have not borne. */
export interface Seedlings extends Family {
  readonly n: number;
  readonly weak: 'yes' | 'no' | 'unknown';
  readonly grafted: boolean;
  /** Last year in which they were counted; winters since are still drawn. */
  readonly counted: number;
  /** Last season in which somebody could have seen them bear. */
  readonly looked: number;
}

/** One season's look at a tree in fruit. */
export interface SeasonSeen {
  readonly year: number;
  /** By shown trait: 0 not, 1 in part, 2 in full. A trait that was not looked for is left out. */
  readonly shown: Readonly<Record<string, 0 | 1 | 2>>;
  readonly values: Readonly<Record<string, number>>;
}

/** A tree that has borne. */
export interface BearingTree extends Family {
  readonly tag: string;
  readonly bore: number;
  /** Winter before the spring of this year in which it was lost; null: it stands. */
  readonly gone: number | null;
  readonly weak: 'yes' | 'no' | 'unknown';
  readonly grafted: boolean;
  readonly picked: boolean;
  readonly copies: number;
  readonly seasons: readonly SeasonSeen[];
}

/** Seed that is not due yet, by the furthest count. */
export interface InGround extends Family {
  readonly stage: 'seeds' | 'fruits' | 'flowers';
  readonly n: number;
}

export interface GenerationToday {
  readonly springs: number;
  readonly firstPollination: number | null;
  readonly raised: number;
  readonly firstSeedling: number | null;
  readonly firstFruit: number | null;
  /** Year in which the first tree marked as kept had its judged crops; its first fruit where none was asked. */
  readonly firstPick: number | null;
  readonly kept: number;
  readonly fruiting: number;
  /** As noted: flowers, fruits, seeds, seedlings, grafted. */
  readonly counted: { readonly flowers: number; readonly fruits: number; readonly seeds: number; readonly seedlings: number; readonly grafted: number };
  /** A later generation has begun from it. */
  readonly goneOn: boolean;
}

export const NOT_PLACED = [
  'noGeneration',
  'noSeedParent',
  'noPollen',
  'noCross',
  'tagTwice',
  'nothingCounted',
  'neverCameUp',
  'noValues',
  'copiesNotMade',
  'graftsNotMade',
] as const;
export type NotPlacedReason = (typeof NOT_PLACED)[number];

/** What could not be brought in, or only in part, and how many trees (or seeds) it concerns. */
export interface NotPlaced {
  readonly batch: string;
  readonly name: string;
  readonly why: NotPlacedReason;
  readonly about: string;
  readonly n: number;
}

export interface PlanToday {
  readonly plan: string;
  readonly generations: readonly GenerationToday[];
  readonly seedlings: readonly Seedlings[];
  /** A parent comes before its seedlings. */
  readonly trees: readonly BearingTree[];
  readonly inGround: readonly InGround[];
  readonly notPlaced: readonly NotPlaced[];
}

/** What stands before the spring of a year, by plan in the order of the document. */
export interface Today {
  readonly year: number;
  readonly plans: readonly PlanToday[];
}
