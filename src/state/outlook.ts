import { ENGINE } from '../engine/version.ts';
import type { Programme } from '../model/programme.ts';
import type { Columns } from '../results/columns.ts';
import type { Outlook } from '../results/outlook.ts';
import { comparePaired } from '../statistics/compare.ts';
import type { RunsState } from './runs-store.ts';

/** One outlook for one state of the results: pictures redraw when it is another object, and only then. */
const outlooks = new WeakMap<RunsState, Outlook>();

/** What the pictures draw; null until every plan has had its first futures. */
export function outlookOf(programme: Programme, state: RunsState): Outlook | null {
  const { plans, comparisons, done } = state;
  if (plans.length === 0) return null;
  const known = outlooks.get(state);
  if (known?.startYear === programme.startYear && known.lastYear === programme.lastYear && known.word === programme.shuffleWord) return known;
  const outlook: Outlook = {
    engine: ENGINE,
    word: programme.shuffleWord,
    runs: done,
    programme: '',
    startYear: programme.startYear,
    lastYear: programme.lastYear,
    plans,
    comparisons,
  };
  outlooks.set(state, outlook);
  return outlook;
}

/** What an edit did to a plan's chance, on the same futures. */
export interface Effect {
  readonly before: number;
  readonly after: number;
  readonly verdict: 'better' | 'worse' | 'no difference';
}

export function effectOf(before: Columns, after: Columns): Effect {
  const runs = Math.min(before.runs, after.runs);
  const years = (columns: Columns) =>
    columns
      .run('yearProven')
      .subarray(0, runs)
      .map((year) => year + 1);
  const [a, b] = [years(before), years(after)];
  const { low, high } = comparePaired(b, a).chanceDifference;
  const chance = (column: Int32Array) => column.reduce((sum, year) => sum + (year > 0 ? 1 : 0), 0) / runs;
  return { before: chance(a), after: chance(b), verdict: low > 0 ? 'better' : high < 0 ? 'worse' : 'no difference' };
}
