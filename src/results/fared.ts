import type { Reached } from './forecast.ts';
import type { Stage } from './outlook.ts';

/** How what came lies to the range in which 8 of 10 futures lay. `open`: nothing can be said yet. */
export type Verdict = 'inside' | 'before' | 'after' | 'overdue' | 'open';

/** A year that a generation was to reach. */
export interface FaredYear {
  readonly generation: number;
  readonly name: string;
  readonly round: number;
  readonly what: Reached;
  readonly p10: number | null;
  readonly p50: number | null;
  readonly p90: number | null;
  readonly came: number | null;
  readonly verdict: Verdict;
}

/** A count that a generation was to come to in all, against what the log counts so far; `before`: fewer, `after`: more. */
export interface FaredCount {
  readonly generation: number;
  readonly name: string;
  readonly round: number;
  readonly what: FaredStage;
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  readonly came: number;
  readonly verdict: Verdict;
}

/** Stages of which the log counts something. */
export const COUNTED = ['flowers', 'fruits', 'seeds', 'seedlings', 'fruiting', 'kept'] as const satisfies readonly Stage[];
export type FaredStage = (typeof COUNTED)[number];

export interface Fared {
  readonly years: readonly FaredYear[];
  readonly counts: readonly FaredCount[];
}
