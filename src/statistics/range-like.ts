import { betaQuantile } from './beta.ts';

/** PERT range: ends and peak. */
export interface RangeLike {
  readonly low: number;
  readonly likely: number;
  readonly high: number;
}

/** Mean and 10 and 90 % points of a PERT beta on [0, 1] with its peak at a place. */
function standard(peak: number): { mean: number; low: number; high: number } {
  const [a, b] = [1 + 4 * peak, 5 - 4 * peak];
  return { mean: a / 6, low: betaQuantile(0.1, a, b), high: betaQuantile(0.9, a, b) };
}

/** The place in [0, 1] at which a falling or rising function comes nearest to a value. */
function solve(of: (peak: number) => number, target: number): number {
  const rising = of(1) > of(0);
  let [low, high] = [0, 1];
  for (let round = 0; round < 40; round += 1) {
    const middle = (low + high) / 2;
    if (of(middle) < target === rising) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Returns the PERT range (weight 4) with a given mean and a given 10–90 % range. Where that range would leave the bounds, its end stands at
 * the bound, and mean and width are kept; where a belief is more lopsided than a PERT can be, mean and width are kept too.
 * @param belief low < mean < high for a range with width, else a range of no width
 * @param bounds of the field
 *
 * **Source:** own derivation on the PERT beta of Malcolm et al. (1959) Operations Research 7:646–669.
 */
export function rangeLike(
  belief: { readonly mean: number; readonly low: number; readonly high: number },
  bounds: { readonly min: number; readonly max: number },
): RangeLike {
  const { mean } = belief;
  const width = belief.high - belief.low;
  if (!(width > 0)) return { low: mean, likely: mean, high: mean };
  const lean = solve(
    (peak) => {
      const { mean: middle, low, high } = standard(peak);
      return (middle - low) / (high - low);
    },
    (mean - belief.low) / width,
  );
  let made = fromPeak(mean, width, lean);
  // Against one bound, the peak is what is left to choose; the width follows from the mean.
  const room = { below: mean - bounds.min, above: bounds.max - mean };
  if (made.low < bounds.min)
    made = against(
      solve(
        share((peak) => room.below / standard(peak).mean),
        width,
      ),
      room.below,
      1,
      bounds.min,
    );
  else if (made.high > bounds.max)
    made = against(
      solve(
        share((peak) => room.above / (1 - standard(peak).mean)),
        width,
      ),
      room.above,
      -1,
      bounds.max,
    );
  return { low: Math.max(bounds.min, made.low), likely: Math.min(bounds.max, Math.max(bounds.min, made.likely)), high: Math.min(bounds.max, made.high) };
}

/** 10–90 % width of a range of a given whole width. */
const share =
  (whole: (peak: number) => number) =>
  (peak: number): number => {
    const { low, high } = standard(peak);
    return whole(peak) * (high - low);
  };

function fromPeak(mean: number, width: number, peak: number): RangeLike {
  const unit = standard(peak);
  const whole = width / (unit.high - unit.low);
  const low = mean - whole * unit.mean;
  return { low, likely: low + whole * peak, high: low + whole };
}

function against(peak: number, room: number, direction: 1 | -1, end: number): RangeLike {
  const middle = standard(peak).mean;
  const whole = room / (direction === 1 ? middle : 1 - middle);
  const low = direction === 1 ? end : end - whole;
  return { low, likely: low + whole * peak, high: low + whole };
}
