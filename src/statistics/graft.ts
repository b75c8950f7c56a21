import { exp, log } from '../random/elementary.ts';

/** How weak seedlings die and how grafts take. Months count from germination; shares are 0 … 1. */
export interface WeakSeedlings {
  /** Months in which a weak seedling looks sound. */
  readonly onset: number;
  /** Months after the onset by which half are dead. */
  readonly halfLife: number;
}

export interface ScionWood {
  /** Share of grafts that take with wood of one month or less. */
  readonly takeTender: number;
  /** Share that take from `ripeMonths` on. */
  readonly takeRipe: number;
  /** Months, above 1. */
  readonly ripeMonths: number;
}

export interface BestGraft {
  readonly month: number;
  /** Share of the weak that are alive in that month. */
  readonly aliveAtBest: number;
  /** Of ten weak seedlings, those alive in that month whose graft takes (one scion each). */
  readonly savedOutOfTen: number;
}

/** Youngest and oldest age, in months, at which a plan can graft. */
export const GRAFT_FROM = 0.5;
export const GRAFT_UNTIL = 24;

/**
 * Returns the share of weak seedlings on their own roots alive at an age, ordinary losses apart: 1 until the onset, then halved every half-life.
 *
 * **Source:** docs/model.md §7.
 */
export function aliveAt(month: number, onset: number, halfLife: number): number {
  return month <= onset ? 1 : exp((-(month - onset) / halfLife) * Math.LN2);
}

/**
 * Returns the share of grafts that take with wood of an age: evenly from `tender` at one month and before to `ripe` at `ripeMonths` and after.
 *
 * **Source:** docs/model.md §7.
 */
export function takeAt(month: number, tender: number, ripe: number, ripeMonths: number): number {
  if (month <= 1) return tender;
  return month >= ripeMonths ? ripe : tender + ((ripe - tender) * (month - 1)) / (ripeMonths - 1);
}

/**
 * Returns the month in which alive × take of weak seedlings is largest, not before the onset and not after 24 months (the onset itself, if
 * that is later still: then no plan can graft the weak ones by sight).
 *
 * Between one month and ripe wood the take is a₀ + slope·month, and the product peaks at m* = halfLife/ln 2 − a₀/slope, clipped to
 * [max(onset, 1), ripeMonths]. Before one month the take does not fall while the weak die, so younger would only be better: `earliest` is where
 * the search starts, one month unless the caller says that younger seedlings can be handled; then that age is weighed against m*.
 * @param weak onset and half-life, months
 * @param wood take of tender and of ripe wood
 * @param earliest youngest age looked at, months, 0.5 … 24
 *
 * **Source:** docs/model.md §7; own derivation (the logarithm of the product is concave in the month).
 */
export function bestGraftMonth({ onset, halfLife, takeTender, takeRipe, ripeMonths }: WeakSeedlings & ScionWood, earliest = 1): BestGraft {
  const saved = (month: number): number => aliveAt(month, onset, halfLife) * takeAt(month, takeTender, takeRipe, ripeMonths);
  const inReach = (month: number): number => Math.max(onset, Math.min(GRAFT_UNTIL, Math.max(month, earliest, GRAFT_FROM)));
  const slope = (takeRipe - takeTender) / (ripeMonths - 1);
  const peak = slope > 0 ? halfLife / Math.LN2 - (takeTender - slope) / slope : 1;
  const candidates = [inReach(0), inReach(Math.min(ripeMonths, Math.max(1, peak)))];
  const month = candidates.reduce((best, next) => (saved(next) > saved(best) ? next : best));
  return { month, aliveAtBest: aliveAt(month, onset, halfLife), savedOutOfTen: 10 * saved(month) };
}

/** A count of living seedlings at an age. */
export interface Survivors {
  /** Share of all seedlings of the cross that is weak. */
  readonly weakShare: number;
  /** Share of all seedlings alive at the count. */
  readonly alive: number;
  /** Age at the count, years. */
  readonly atYears: number;
  /** Share of sound seedlings alive at that age, by the ordinary losses. */
  readonly ordinarySurvival: number;
  /** Months. */
  readonly onset: number;
}

/**
 * Returns the share of the weak that a count says is left, ordinary losses apart: at or below 0 more died than were weak, at or above 1 none of
 * the weak did; NaN when none are weak.
 *
 * **Source:** docs/model.md §7, alive = S·((1 − w) + w·share).
 */
export function weakLeft({ weakShare, alive, ordinarySurvival }: Pick<Survivors, 'weakShare' | 'alive' | 'ordinarySurvival'>): number {
  return (alive / ordinarySurvival - (1 - weakShare)) / weakShare;
}

/**
 * Returns the half-life in months, counted from the onset, that a count of survivors implies; null where no half-life does (see `weakLeft`, or
 * counted before the onset).
 *
 * **Source:** docs/model.md §7, solved for the half-life.
 */
export function halfLifeFromSurvivors(count: Survivors): number | null {
  const left = weakLeft(count);
  const months = 12 * count.atYears - count.onset;
  return left > 0 && left < 1 && months > 0 ? (-months * Math.LN2) / log(left) : null;
}
