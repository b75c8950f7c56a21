import { scaleLinear } from 'd3';
import { chanceText } from '../text/charts.ts';

export interface ShareTick {
  readonly y: number;
  readonly text: string;
  readonly textX: number;
  readonly textY: number;
  readonly anchor: 'start' | 'end';
}

export interface ShareAxis {
  /** px of a share. */
  readonly y: (share: number) => number;
  readonly ticks: readonly ShareTick[];
}

/** Highest share on an axis, and its steps: a picture of small chances is not pressed to the floor. */
const STEPS = [
  { top: 0.1, step: 0.02 },
  { top: 0.2, step: 0.05 },
  { top: 0.5, step: 0.1 },
  { top: 1, step: 0.2 },
] as const;

/** Lays out an axis of shares that has room for the highest one. On a phone its words stand on their hairlines. */
export function shareAxis(most: number, plot: { readonly left: number; readonly top: number; readonly bottom: number }, phone: boolean): ShareAxis {
  // Where nothing is to be held every chance beside the picture reads "0 in 10": so do the steps.
  const { top, step } = (most > 0 ? STEPS.find((axis) => most <= axis.top * 0.9) : null) ?? STEPS[3];
  const scale = scaleLinear([0, top], [plot.bottom, plot.top]);
  const y = (share: number) => scale(share);
  const count = Math.round(top / step);
  const ticks = Array.from({ length: count + 1 }, (_, index): ShareTick => {
    const share = index * step;
    const at = y(share);
    const words = step >= 0.1 ? chanceText.tenths(Math.round(share * 10)) : chanceText.hundredths(Math.round(share * 100));
    const text = index === count ? chanceText.ofFutures(words) : words;
    return {
      y: at,
      text: phone && index === 0 ? '' : text,
      textX: phone ? 0 : plot.left - 20,
      textY: phone ? (index === count ? at + 18 : at - 5) : at + 6,
      anchor: phone ? 'start' : 'end',
    };
  });
  return { y, ticks };
}
