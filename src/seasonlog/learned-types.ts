import type { Estimate } from '../model/estimate.ts';
import type { Path } from '../model/problem.ts';
import type { Belief } from '../statistics/weighed.ts';
import type { LeftOut } from './batches.ts';
import type { Stated } from './priors.ts';
import type { LateWave } from './survival.ts';

/** Estimates that the season log can teach; the keys of their words. */
export const LEARNABLE = [
  'set',
  'germination',
  'weakShare',
  'halfDeadBy',
  'takeTender',
  'takeRipe',
  'firstWinter',
  'laterWinters',
  'halfFruitBy',
  'ninetyFruitBy',
  'neverFruits',
  'luckOfSet',
  'luckOfGermination',
] as const;
export type Learnable = (typeof LEARNABLE)[number];

/** An edit of the document: this value at this place. */
export interface Put {
  readonly path: Path;
  readonly value: unknown;
}

/** Belief of one number before and after counting, as curves over one axis that begins at 0: value and density per unit of the value. */
export interface LearnedCurves {
  /** End of the axis. */
  readonly to: number;
  /** Null where the programme states it in a way that has no curve. */
  readonly before: readonly (readonly [value: number, density: number])[] | null;
  readonly after: readonly (readonly [value: number, density: number])[];
}

/** One estimate of the programme beside what the log says of it. */
export interface Learned {
  /** Place of the estimate, as one text: tells rows apart. */
  readonly id: string;
  readonly path: Path;
  /** The programme has its number from these counts already; then they were not learned from twice. */
  readonly used: boolean;
  /** It was taken from fewer seasons than there are counts of now. */
  readonly newer: boolean;
  readonly what: Learnable;
  /** The cross entry, kind or stock that it belongs to. */
  readonly of: { readonly section: 'crosses' | 'kinds' | 'stocks' | 'weather'; readonly id: string; readonly name: string; readonly route?: string };
  readonly scale: 'share' | 'months' | 'years';
  /** What the programme says now; null where it says it in another way. */
  readonly before: Stated | null;
  readonly after: Pick<Belief, 'mean' | 'sd' | 'low' | 'high'> & { /** 9 in 10 lie between. */ readonly nine: { readonly low: number; readonly high: number } };
  readonly curves: LearnedCurves;
  /** The rate of another spring, where springs differ. */
  readonly nextSpring?: { readonly low: number; readonly high: number };
  /** How alike one spring's trials look, ρ. */
  readonly luck?: { readonly mean: number; readonly low: number; readonly high: number };
  /** What was counted, in the unit it was counted in; `hits` and `of` of all lots together. */
  readonly counts: {
    readonly hits: number;
    readonly of: number;
    readonly springs: number;
    readonly from: number;
    readonly to: number;
    readonly batches: readonly string[];
  };
  /** The estimate that says the same: mean and 10–90 % range as `after`. */
  readonly estimate: Estimate;
  /** All edits of one click; first fruit is put as a whole. */
  readonly puts: readonly Put[];
  readonly wave?: LateWave;
}

export interface LearnedRates {
  readonly rates: Learned[];
  readonly leftOut: LeftOut[];
}

/** Words that go into the document with a learned number: the note of its source. */
export type CountsNote = (from: number, to: number) => string;
