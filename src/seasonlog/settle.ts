import { binomialPmf } from '../statistics/binomial.ts';
import type { FamilyView } from './rule-fit.ts';

/** Further seedlings of one family, and what they would do for telling the rules apart. */
export interface Settling {
  readonly batch: string;
  readonly seedlings: number;
  /** Chance that one rule then stands at nine to one or better against all others. */
  readonly chance: number;
}

/** Numbers of further seedlings that are thought through. */
const STEPS = [5, 10, 20, 30, 40, 60, 80, 120, 160] as const;
/** Settled: this much belief in one rule, nine to one. */
export const SETTLED = 0.9;
/** Good enough to be worth saying: more often than not by a clear margin. */
const WORTH_SAYING = 0.6;

/** Chance that `n` further seedlings of one family settle it, every possible outcome weighed. */
export function chanceToSettle(beliefs: readonly number[], shows: readonly FamilyView['shows'][], n: number): number {
  let settled = 0;
  for (let showing = 0; showing <= n; showing += 1) {
    const joint = beliefs.map((belief, r) => belief * (shows[r] ?? []).reduce((sum, { chance, weight }) => sum + weight * binomialPmf(showing, n, chance), 0));
    const total = joint.reduce((sum, one) => sum + one, 0);
    if (total > 0 && Math.max(...joint) >= SETTLED * total) settled += total;
  }
  return settled;
}

/**
 * Finds the family of which the fewest further seedlings would settle which rule holds, 6 times in 10; where none of the numbers does, the
 * family and the largest number, with the chance they have. Null where one rule is settled or there is only one.
 * @param beliefs of the rules, sum to 1
 * @param views for each rule, its families in one order
 */
export function whatSettles(beliefs: readonly number[], views: readonly (readonly FamilyView[])[]): Settling | null {
  if (beliefs.length < 2 || Math.max(...beliefs) >= SETTLED) return null;
  const families = views[0] ?? [];
  let best: Settling | null = null;
  for (const seedlings of STEPS) {
    for (const { batch } of families) {
      const shows = views.map((view) => view.find((one) => one.batch === batch)?.shows ?? []);
      const chance = chanceToSettle(beliefs, shows, seedlings);
      if (!best || chance > best.chance + 1e-9) best = { batch, seedlings, chance };
    }
    if (best && best.chance >= WORTH_SAYING) return best;
  }
  return best;
}
