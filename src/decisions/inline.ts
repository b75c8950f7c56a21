import { Simulator } from '../engine/simulate.ts';
import type { Programme } from '../model/programme.ts';
import { GivenUp } from '../workers/runner.ts';
import type { Futures } from './futures.ts';

/** Programmes kept compiled, by identity: a question comes back to a variant for more futures. */
const KEPT = 8;

/**
 * Runs futures on the calling thread: for tests and for places without threads. Same bytes as `poolFutures`.
 * @param ended aborted by whoever no longer wants the answer; looked at before each piece of work
 */
export function inlineFutures(ended?: AbortSignal): Futures {
  const kept = new Map<Programme, Simulator>();
  return {
    threads: 1,
    async run(programme, plans, from, runs) {
      // Later, as on another thread: whoever asks for many pieces hears of the first before the last is run.
      await Promise.resolve();
      if (ended?.aborted === true) throw new GivenUp('The question is no longer asked.');
      const simulator = kept.get(programme) ?? new Simulator(programme);
      kept.delete(programme);
      kept.set(programme, simulator);
      for (const oldest of kept.keys()) if (kept.size > KEPT) kept.delete(oldest);
      return simulator.runs(plans, from, runs);
    },
  };
}
