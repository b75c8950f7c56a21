/**
 * The engine alone, on the calling thread, behind the smallest door: built from this state of the project and from an older one, so that
 * both can be timed in one process. Imports only what every state has.
 */
import { Simulator } from '../../src/engine/simulate.ts';
import { readProgramme } from '../../src/model/read.ts';

/** Runs futures from … from + futures − 1 of every plan; returns the seedlings they raised. */
export type Work = (from: number, futures: number) => number;

/** @throws Error when this state of the project cannot read the programme */
export function prepare(text: string): Work {
  const reading = readProgramme(text);
  if (!reading.ok) throw new Error(`The programme cannot be read: ${reading.problems.map(({ message }) => message).join('; ')}`);
  const simulator = new Simulator(reading.programme);
  const plans = reading.programme.plans.map((_, p) => p);
  return (from, futures) => simulator.runs(plans, from, futures).reduce((sum, columns) => sum + columns.run('seedlings').reduce((a, b) => a + b, 0), 0);
}
