/** One future of one plan, year by year, as a breeder would write it down. Generations are positions in the plan; years calendar years. */
export interface Diary {
  readonly run: number;
  /** What was true in this future and not known: the rule of each trait that has several, and the yes/no facts. */
  readonly rules: readonly { readonly trait: string; readonly rule: string }[];
  readonly facts: readonly { readonly fact: string; readonly holds: boolean }[];
  readonly years: readonly DiaryYear[];
  readonly proven: boolean;
}

export interface DiaryYear {
  readonly year: number;
  readonly frost: boolean;
  /** Names of founding trees and gardens lost in the winter before. */
  readonly lost: readonly string[];
  readonly generations: readonly DiaryGeneration[];
  readonly proven: number;
}

/** What happened in one generation in one year; a generation in which nothing did is left out. */
export interface DiaryGeneration {
  readonly generation: number;
  readonly flowers: number;
  readonly fruits: number;
  readonly seedlings: number;
  readonly grafted: number;
  readonly fruiting: number;
  readonly judged: number;
  readonly kept: number;
  readonly picksLost: number;
  readonly wentOn: boolean;
  /** Seedlings and trees of the generation that stand at the end of the year. */
  readonly standing: number;
  /** Of the trees kept this year, where that is followed: how much of the genome is not of the kind that most of it is of. */
  readonly origin?: DiaryOrigin;
}

export interface DiaryOrigin {
  /** The kind of which most of the rest is. */
  readonly kind: string;
  /** Mean share of that kind, 0–1. */
  readonly share: number;
  /** Mean length (cM) of what came with the selected gene; null where no gene is named. */
  readonly around: number | null;
}
