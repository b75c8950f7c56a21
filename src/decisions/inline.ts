import { Simulator } from '../engine/simulate.ts';
import { NOTHING, type WhatIf } from '../engine/what-if.ts';
import type { Programme } from '../model/programme.ts';
import { GivenUp } from '../workers/runner.ts';
import type { Futures } from './futures.ts';

/** Programmes kept compiled, by identity of programme and what-if: a question comes back to a variant for more futures. */
const KEPT = 8;

/**
 * Runs futures on the calling thread: for tests and for places without threads. Same bytes as `poolFutures`.
 * @param ended aborted by whoever no longer wants the answer; looked at before each piece of work
 */
export function inlineFutures(ended?: AbortSignal): Futures {
  let kept: readonly { readonly programme: Programme; readonly whatIf: WhatIf; readonly simulator: Simulator }[] = [];
  const simulatorOf = async (programme: Programme, whatIf: WhatIf = NOTHING): Promise<Simulator> => {
    // Later, as on another thread: whoever asks for many pieces hears of the first before the last is run.
    await Promise.resolve();
    if (ended?.aborted === true) throw new GivenUp('The question is no longer asked.');
    const found = kept.find((entry) => entry.programme === programme && entry.whatIf === whatIf);
    const used = found ?? { programme, whatIf, simulator: new Simulator(programme, whatIf) };
    kept = [...kept.filter((entry) => entry !== found), used].slice(-KEPT);
    return used.simulator;
  };
  return {
    threads: 1,
    run: async (programme, plans, from, runs, whatIf) => (await simulatorOf(programme, whatIf)).runs(plans, from, runs),
    mixed: async (programme, plans, mix) => (await simulatorOf(programme)).mixed(plans, mix),
  };
}
