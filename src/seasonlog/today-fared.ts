import { COUNTED, type Fared, type FaredCount, type FaredStage, type FaredYear, type Verdict } from '../results/fared.ts';
import { REACHED, type ForecastGeneration } from '../results/forecast.ts';
import type { GenerationToday, PlanToday } from './today-types.ts';

/**
 * Sets what a plan was forecast to come to beside what the log says, stage by stage. Own derivation: a year or a finished count outside the
 * 10–90 % range of the futures is said to be outside; of true ranges about 2 in 10 are.
 * @param wanted springs and seedlings of each round, as the plan has them: a generation that may still raise more is not finished
 * @param firstYear first spring forecast: what came before it was no forecast
 * @param year the first spring of which the log says nothing
 */
export function fared(
  generations: readonly ForecastGeneration[],
  today: PlanToday,
  wanted: readonly { readonly springs: number; readonly seedlings: number }[],
  firstYear: number,
  year: number,
): Fared {
  const years: FaredYear[] = [];
  const counts: FaredCount[] = [];
  generations.forEach((forecast, g) => {
    const came = today.generations[g];
    const plan = wanted[g];
    if (!came || !plan || forecast.reached === 0) return;
    const head = { generation: g, name: forecast.name, round: forecast.round };
    for (const what of REACHED) {
      const range = forecast[what];
      const at = came[what];
      if ((range.p10 === null && at === null) || (at !== null && at < firstYear)) continue;
      years.push({ ...head, what, ...range, came: at, verdict: yearVerdict(range, at, year) });
    }
    if (came.firstPollination === null) return;
    const raisedAll = came.goneOn || came.springs >= plan.springs || came.raised >= plan.seedlings;
    const inGround = today.inGround.some(({ generation }) => generation === g);
    const waiting = inGround || today.seedlings.some(({ generation }) => generation === g);
    for (const what of COUNTED) {
      const { p10, p50, p90 } = forecast.stages[what];
      const n = countOf(came, what);
      if (p90 === 0 && n === 0) continue;
      const finished = raisedAll && !(what === 'fruiting' || what === 'kept' ? waiting : what !== 'flowers' && inGround);
      counts.push({ ...head, what, p10, p50, p90, came: n, verdict: n > p90 ? 'after' : !finished ? 'open' : n < p10 ? 'before' : 'inside' });
    }
  });
  return { years, counts };
}

function yearVerdict({ p10, p90 }: { readonly p10: number | null; readonly p90: number | null }, came: number | null, year: number): Verdict {
  if (came === null) return p90 !== null && p90 < year ? 'overdue' : 'open';
  if (p10 === null || came < p10) return 'before';
  return p90 !== null && came > p90 ? 'after' : 'inside';
}

const countOf = (came: GenerationToday, what: FaredStage): number => (what === 'fruiting' || what === 'kept' ? came[what] : came.counted[what]);
