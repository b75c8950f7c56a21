/**
 * What the analysis of a programme says: plain data, the same for the screen, the handout and the command line.
 * Years are calendar years. Shares are 0–1. A "future" is one run.
 */

/** A share with its Wilson 95 % interval (Monte Carlo error only). */
export interface Interval {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** Mean and quantiles of a count or amount over the futures named beside it. */
export interface Spread {
  readonly mean: number;
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/** Years reached by 10, 50 and 90 % of the futures named beside it; null where that share is never reached. */
export interface YearSpread {
  readonly p10: number | null;
  readonly p50: number | null;
  readonly p90: number | null;
}

export const STAGES = ['flowers', 'fruits', 'seeds', 'seedlings', 'aliveAtGraft', 'fruiting', 'showing', 'kept'] as const;
export type Stage = (typeof STAGES)[number];

export const FAILURES = ['onlyTreeLost', 'stillWaiting', 'noFruit', 'noSeedling', 'noRoom', 'seedlingsDied', 'noneGoodEnough'] as const;
export type Failure = (typeof FAILURES)[number];

/** One generation (a repeated generation has one entry per round), over the futures that reached it. */
export interface GenerationOutlook {
  readonly id: string;
  /** 1 for the first or only round. */
  readonly round: number;
  readonly name: string;
  /** Generation whose picks this one uses, as an index into the plan's list; null when it uses none. */
  readonly grownFrom: number | null;
  /** Share of all futures in which it pollinated (or gathered seed) at least once. */
  readonly reached: number;
  /** Share of all futures that kept at least one pick of it. */
  readonly picked: number;
  readonly firstPollination: YearSpread;
  readonly firstSeedling: YearSpread;
  readonly firstFruit: YearSpread;
  /** Of the futures that kept one. */
  readonly firstPick: YearSpread;
  /** Year in which its last tree was judged, picked or lost. */
  readonly lastJudged: YearSpread;
  /** Share of ALL futures in which the generation is at work in each calendar year, from startYear to lastYear: the thickness of its bough. */
  readonly going: readonly number[];
  readonly stages: Readonly<Record<Stage, Spread>>;
  /** Where the genomes of its picks come from; left out where that is not followed. */
  readonly origin?: OriginOutlook;
}

/** Means over a generation's picks, over the futures that kept one. */
export interface OriginOutlook {
  readonly kinds: readonly { readonly kind: string; readonly share: Spread }[];
  /** Length (cM) of what came with the gene; null where no gene is named. */
  readonly around: { readonly gene: string; readonly length: Spread } | null;
}

export interface PlanOutlook {
  readonly id: string;
  readonly mark: string;
  readonly name: string;
  readonly runs: number;
  readonly chance: Interval;
  /** 10–90 % range of the chance given the facts; null until the second pass has run. */
  readonly guesses: { readonly low: number; readonly high: number } | null;
  /** Of the trees proven, the share that truly is what was seen; null when none was proven. */
  readonly trulyGood: Interval | null;
  /** Per measured goal trait: how far true values fall short of what was seen, on average. */
  readonly shortfall: readonly { readonly trait: string; readonly unit: string; readonly mean: number }[];
  readonly byRule: readonly { readonly trait: string; readonly rule: string; readonly runs: number; readonly chance: Interval }[];
  readonly byFact: readonly { readonly fact: string; readonly holds: boolean; readonly runs: number; readonly chance: Interval }[];
  readonly chanceByYear: readonly ({ readonly year: number } & Interval)[];
  /** Middle half of the chance given the facts, by year; null until the second pass has run. */
  readonly guessesByYear: readonly { readonly year: number; readonly low: number; readonly high: number }[] | null;
  /** Over all futures. */
  readonly yearProven: YearSpread;
  /** Over the futures that succeed. */
  readonly whenItWorks: YearSpread;
  readonly seedlings: Spread;
  readonly planted: Spread;
  readonly fruiting: Spread;
  readonly judgings: Spread;
  readonly treeYears: Spread;
  readonly mostPlaces: Spread;
  readonly busiestHours: Spread;
  readonly totalHours: Spread;
  readonly grafts: Spread;
  readonly weakSaved: Spread;
  readonly flowers: Spread;
  readonly noRoom: Spread;
  /** Share of futures that go over the hours limit in some year; null when no limit is stated. */
  readonly overHours: Interval | null;
  readonly overMoney: Interval | null;
  /** Share of all futures, by reason; they and the chance sum to 1. */
  readonly failures: Readonly<Record<Failure, number>>;
  readonly generations: readonly GenerationOutlook[];
}

/** Two plans on the same futures: which has its proven tree in an earlier year. */
export interface Comparison {
  readonly a: string;
  readonly b: string;
  readonly aSooner: Interval;
  readonly bSooner: Interval;
  readonly tied: Interval;
  /** Chance of a minus chance of b, paired by future, with its 95 % interval. */
  readonly chanceDifference: Interval;
}

export interface Outlook {
  readonly engine: string;
  readonly word: string;
  readonly runs: number;
  /** Hash of the programme the figures belong to. */
  readonly programme: string;
  readonly startYear: number;
  readonly lastYear: number;
  readonly plans: readonly PlanOutlook[];
  readonly comparisons: readonly Comparison[];
}
