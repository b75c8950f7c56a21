import { outlookOf, simulate } from '../../sims/run/results.ts';
import type { Programme } from '../../src/model/programme.ts';
import { readProgramme } from '../../src/model/read.ts';
import type { Outlook } from '../../src/results/outlook.ts';
import { inlineThread } from '../../src/workers/inline.ts';
import { poolRunner } from '../../src/workers/runner.ts';
import { textOf } from '../damage/damages.ts';

export function exampleOf(name: string): Programme {
  const reading = readProgramme(textOf(name));
  if (!reading.ok) throw new Error(`${name} was refused`);
  return reading.programme;
}

/** The outlook of a programme from so many futures of each plan, in this process; with what the guesses allow only if asked. */
export async function outlookFor(programme: Programme, runs: number, secondPass = false): Promise<Outlook> {
  const runner = poolRunner(() => inlineThread(), 1);
  const asked = { ...programme, runs };
  const plans = programme.plans.map((_, at) => at);
  return outlookOf(await simulate(runner, asked, plans, secondPass, () => undefined), asked, programme);
}
