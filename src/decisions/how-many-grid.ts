import { log, power, wholePower } from '../random/elementary.ts';

/** Numbers that a person would count to, in every power of ten. */
const ROUND = [1, 1.2, 1.5, 2, 2.5, 3, 4, 5, 6, 8] as const;
/** A number and its neighbours are to lie this far apart at most, as a ratio: an eighth to eight times the present one. */
const REACH = 8;
/** A number nearer to the present one than this, as a ratio, tells nothing of its own. */
const NEAR = 1.15;
/** Numbers tried, about. */
const TRIED = 9;

/** The number of `ROUND` (times a power of ten, whole) nearest to x by ratio. */
export function roundCount(x: number): number {
  const tens = wholePower(10, String(Math.floor(Math.max(1, x))).length - 1);
  const candidates = [...ROUND, 10].map((factor) => factor * tens).filter((value) => Number.isInteger(value));
  return candidates.reduce((best, value) => (Math.abs(log(value / x)) < Math.abs(log(best / x)) ? value : best));
}

/**
 * Counts from an eighth to eight times the present one, evenly spread by ratio and rounded as a person would.
 * @param present at least 0; 0 counts from 1 up. Numbers next to it are left out; it is to be added if it is no round one itself
 * @param most the highest that makes sense: it is tried itself if it ends the list early
 */
export function countsAround(present: number, least: number, most: number): readonly number[] {
  const from = Math.max(least, 1, present / REACH);
  const to = Math.max(from, Math.min(most, Math.max(present, 1) * REACH));
  const steps = Array.from({ length: TRIED }, (_, i) => roundCount(from * power(to / from, i / (TRIED - 1))));
  const ends = to === most && Number.isInteger(most) ? [...steps, most] : steps;
  const apart = (value: number) => value === present || Math.max(value / present, present / value) > NEAR;
  return [...new Set(ends)].filter((value) => value >= least && value <= most && apart(value)).sort((a, b) => a - b);
}

const SMALL = [0, 1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40, 50, 60, 80, 100] as const;

/** Small whole numbers round the present one, up to about three times it and at least 6. */
export function wholeAround(present: number, least: number, most: number): readonly number[] {
  const to = Math.min(most, Math.max(6, 3 * present));
  const from = present <= 10 ? least : Math.max(least, Math.floor(present / REACH));
  const all = SMALL.filter((value) => value >= from && value <= to);
  if (all.length <= TRIED + 1) return all;
  // Every other one of the larger numbers.
  const few = all.slice(0, 4);
  const rest = all.slice(4);
  return [...few, ...rest.filter((_, i) => (rest.length - 1 - i) % Math.ceil(rest.length / (TRIED - 4)) === 0)];
}
