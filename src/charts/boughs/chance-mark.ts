import { scaleLinear } from 'd3';
import type { PlanOutlook } from '../../results/outlook.ts';

/** The scale from 0 to 10 in 10 at a lane's end: numbers in px. Chance and ignorance are two marks, never one band. */
export interface ChanceMark {
  readonly width: number;
  readonly height: number;
  readonly y: number;
  readonly ticks: readonly number[];
  /** What the guesses allow; null until it is known. */
  readonly guesses: { readonly x: number; readonly width: number } | null;
  /** The chance with its sampling error. */
  readonly chance: { readonly x: number; readonly width: number };
}

const LEAST_WIDTH = 6;

/** Lays out the chance scale of a plan. */
export function chanceMark({ chance, guesses }: Pick<PlanOutlook, 'chance' | 'guesses'>, width: number): ChanceMark {
  const x = scaleLinear([0, 1], [1, width - 1]);
  const from = x(chance.low);
  const wide = Math.max(LEAST_WIDTH, x(chance.high) - from);
  const middle = (from + x(chance.high)) / 2;
  return {
    width,
    height: 22,
    y: 11,
    ticks: [x(0), x(0.5), x(1)],
    guesses: guesses && { x: x(guesses.low), width: Math.max(2, x(guesses.high) - x(guesses.low)) },
    chance: { x: Math.min(Math.max(0, middle - wide / 2), width - wide), width: wide },
  };
}
