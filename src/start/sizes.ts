import { meanOf } from '../model/mean.ts';
import type { Programme } from '../model/programme.ts';

/** Flowers one pair of hands pollinates in an hour: a guess from "a flower every minute and a half". */
export const FLOWERS_AN_HOUR = 40;

/** How large the generations of the first plans are, from ground, hands and the tree itself. Whole numbers, at least 1. */
export interface Sizes {
  /** Flowers a spring. */
  readonly few: number;
  readonly many: number;
  /** Seedlings: of a first generation, of the one that is judged for good, and of a single large one. */
  readonly first: number;
  readonly last: number;
  readonly all: number;
}

/** Hours that a seedling costs in a full year of its life, judging included: a place, and a share of raising and tasting it. */
const HOURS_A_TREE = 1.5;
const MOST_SEEDLINGS = 400;

/** A number a hand would write: below 20 as it is, else in steps of 5, from 100 on of 20. */
export function handy(value: number): number {
  const step = value < 20 ? 1 : value < 100 ? 5 : 20;
  return Math.max(1, Math.floor(value / step) * step);
}

const clamp = (low: number, value: number, high: number): number => Math.min(high, Math.max(low, value));

/**
 * Sizes that ground and hands can carry: as many trees as there are places, and as hours a year allow at an hour and a half each; flowers as
 * many as the tree offers and hands reach in bloom. Own derivation: a start to change, not an optimum.
 */
export function sizesFor({ limits, trees }: Pick<Programme, 'limits' | 'trees'>): Sizes {
  const hands = limits.bloomDays * limits.hoursADay * limits.flowersAnHour;
  const flowers = Math.max(1, Math.min(hands, meanOf(trees[0]?.flowers ?? 1)));
  const room = clamp(4, Math.min(limits.places, (limits.hoursPerYear ?? Infinity) / HOURS_A_TREE), MOST_SEEDLINGS);
  return {
    few: handy(flowers / 4),
    many: handy(flowers),
    first: handy(clamp(3, room / 5, 30)),
    last: handy(clamp(3, (room * 4) / 5, MOST_SEEDLINGS)),
    all: handy(room),
  };
}
