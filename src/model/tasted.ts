import { evenRange, trueValue, type TrueValue } from '../statistics/tasted.ts';
import type { Estimate } from './estimate.ts';
import { meanOf } from './mean.ts';
import { printNumber } from './numbers.ts';
import type { MeasuredTrait } from './programme.ts';

export interface Tasted {
  readonly estimate: Estimate;
  readonly found: TrueValue;
}

/** To the third digit of the trait's spread: a hand writes no more, and the range keeps its width. */
function rounder(sd: number): (value: number) => number {
  const step = 10 ** Math.floor(Math.log10(sd) - 2);
  return (value) => Number((Math.round(value / step) * step).toPrecision(12));
}

/**
 * Turns a tasted mean into the estimate of a tree's true value: drawn towards the reference mean, with its standard error as the spread of
 * a range. The numbers of the trait are taken at their means.
 * @param tasted mean of the seasons, in the trait's unit
 * @param seasons judged, at least 1
 * @param note says where the number came from, in words; the source is the breeder's own count
 */
export function tastedEstimate(tasted: number, seasons: number, trait: MeasuredTrait, note: (tasted: string, mean: string) => string): Tasted {
  const sd = meanOf(trait.sd);
  const found = trueValue(tasted, seasons, {
    mean: trait.mean,
    sd,
    heritability: meanOf(trait.heritability),
    repeatability: meanOf(trait.repeatability),
  });
  const { low, likely, high } = evenRange(found.value, found.error);
  const round = rounder(sd);
  const source = { kind: 'counted' as const, note: note(printNumber(tasted), printNumber(trait.mean)) };
  const ends = { low: round(low), likely: round(likely), high: round(high) };
  return { found, estimate: ends.low === ends.high ? { value: ends.likely, source } : { ...ends, source } };
}
