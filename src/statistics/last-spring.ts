import type { Interval, PlanOutlook } from '../results/outlook.ts';
import { wilson } from './interval.ts';

/** What a plan comes to when it begins in a later spring. */
export interface LaterBegin {
  /** Chance of a proven tree by the last judging year, by the spring in which the plan begins; the first is this spring. Never rises. */
  readonly chances: readonly ({ readonly year: number } & Interval)[];
  /** Last spring that keeps at least half of this spring’s chance, and the last with any future that ends well; null where none ever does. */
  readonly half: number | null;
  readonly any: number | null;
  /** What skipping this spring takes from the chance, with its Wilson 95 % interval. */
  readonly skipped: Interval;
}

/** Chances are shares of whole futures: this is far below one future of any number that is ever run. */
const ROUNDING = 1e-9;

/**
 * Reads from a plan’s futures what beginning later would leave: a plan that begins k springs later has k years fewer, so that the futures
 * which have a proven tree k years before the last judging year are those that still make it. Holds as far as the trees will stand then as
 * they do now, and springs are as kind.
 * @param plan its `chanceByYear` runs from the start year to the last judging year, one entry a year
 *
 * **Source:** own derivation. The futures lost by skipping a spring are those proven in the very last year: a plain share, so Wilson (1927) holds.
 */
export function laterBegin({ chanceByYear, runs }: Pick<PlanOutlook, 'chanceByYear' | 'runs'>): LaterBegin {
  const first = chanceByYear[0]?.year ?? 0;
  const chances = chanceByYear
    .map(({ value, low, high }) => ({ value, low, high }))
    .reverse()
    .map((chance, later) => ({ year: first + later, ...chance }));
  const now = chances[0]?.value ?? 0;
  const lastWith = (least: number) => (now > 0 ? (chances.findLast(({ value }) => value > 0 && value >= least - ROUNDING)?.year ?? null) : null);
  return { chances, half: lastWith(now / 2), any: lastWith(0), skipped: wilson(Math.round((now - (chances[1]?.value ?? 0)) * runs), runs) };
}
