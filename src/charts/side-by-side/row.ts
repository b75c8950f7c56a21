import type { Verdict } from './verdicts.ts';

export interface Cell {
  readonly plan: string;
  readonly main: string;
  /** Its interval or the range of 8 in 10 futures, in small print; empty where there is none. */
  readonly small: string;
}

/** One measure, for every plan in order. */
export interface Row {
  readonly id: string;
  readonly title: string;
  readonly note: string;
  readonly cells: readonly Cell[];
  readonly verdict: Verdict;
}
