import { frameOf } from '../../src/engine/frame.ts';
import { ENGINE } from '../../src/engine/version.ts';
import type { Programme } from '../../src/model/programme.ts';
import type { Columns } from '../../src/results/columns.ts';
import type { Frame } from '../../src/results/frame.ts';
import { hashOf } from '../../src/results/hash.ts';
import type { Outlook } from '../../src/results/outlook.ts';
import { compareAll, planOutlook } from '../../src/statistics/outlook.ts';
import { analyse, type Analysis } from '../../src/workers/analysis.ts';
import type { Runner } from '../../src/workers/runner.ts';

/** The plans that were asked for: their frame and columns, in the order of the programme. */
export interface Results {
  readonly frame: Frame;
  readonly columns: readonly Columns[];
  readonly factSets: Analysis['factSets'];
}

/**
 * Runs plans of a programme.
 * @param plans positions of plans, rising
 * @param secondPass also learn how far the chance depends on the guesses
 * @param progress called with the number of futures done, of every plan
 */
export async function simulate(
  runner: Runner,
  programme: Programme,
  plans: readonly number[],
  secondPass: boolean,
  progress: (runs: number) => void,
): Promise<Results> {
  const { columns, factSets } = await analyse(runner, programme, plans, { runs: programme.runs, secondPass }, ({ runs }) => progress(runs));
  const frame = frameOf(programme);
  return { frame: { ...frame, plans: frame.plans.filter((_, p) => plans.includes(p)) }, columns, factSets };
}

/**
 * Summarises results.
 * @param programme as run
 * @param source as its file says: what its hash is taken of
 */
export async function outlookOf({ frame, columns, factSets }: Results, programme: Programme, source: Programme): Promise<Outlook> {
  return {
    engine: ENGINE,
    word: programme.shuffleWord,
    runs: programme.runs,
    programme: await hashOf(source),
    startYear: frame.startYear,
    lastYear: frame.lastYear,
    plans: columns.map((part, p) => planOutlook(frame, p, part, factSets[p] ?? null)),
    comparisons: compareAll(frame, columns),
  };
}
