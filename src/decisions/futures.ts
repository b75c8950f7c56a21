import type { FactMix } from '../engine/fact-mix.ts';
import type { WhatIf } from '../engine/what-if.ts';
import type { Programme } from '../model/programme.ts';
import type { Columns } from '../results/columns.ts';

/**
 * Runs futures of any programme: all that a question needs of the engine. Programmes with the same shuffle word live through the
 * same luck in future n, so variants of a plan are compared on the same futures.
 */
export interface Futures {
  /** How many tasks run at once: a question cuts its work into at least so many pieces. */
  readonly threads: number;
  /**
   * Futures from … from + runs − 1 of the plans (positions) of a checked programme, in the order of `plans`.
   * @param whatIf what happens for sure in all of them
   * @throws GivenUp when the question has been cancelled
   */
  run(programme: Programme, plans: readonly number[], from: number, runs: number, whatIf?: WhatIf): Promise<readonly Columns[]>;
  /**
   * Futures whose facts are taken from several sets, with a luck of their own. Returns the year in which each plan had its proven tree, as an
   * index from the start year, at [plan · rows + row]; −1 for never.
   * @throws GivenUp when the question has been cancelled
   */
  mixed(programme: Programme, plans: readonly number[], mix: FactMix): Promise<Int32Array>;
}
