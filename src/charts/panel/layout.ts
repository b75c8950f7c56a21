import type { Box } from '../boxes.ts';
import { spread } from '../spread.ts';

/** A plot with lines over one axis: what the pictures of several questions are put together from. All places in px. */
export interface Panel {
  readonly plot: Box;
  readonly across: readonly AcrossTick[];
  readonly up: readonly UpTick[];
  /** Stretches of the axis that stand out, from x to x. */
  readonly stretches: readonly { readonly from: number; readonly to: number }[];
  readonly bands: readonly PanelBand[];
  readonly curves: readonly PanelCurve[];
  readonly rules: readonly { readonly x: number; readonly from: number; readonly to: number; readonly kind: 'place' | 'level' }[];
  readonly rings: readonly { readonly x: number; readonly y: number }[];
  readonly words: readonly PanelWords[];
  readonly ends: readonly EndWords[];
}

export interface AcrossTick {
  readonly x: number;
  readonly text: string;
  readonly anchor: 'start' | 'middle' | 'end';
}

export interface UpTick {
  readonly y: number;
  readonly text: string;
}

/** Whose a line is: the plan’s colour, or ink. */
export type Of = 'plan' | 'ink';

export interface PanelCurve {
  readonly id: string;
  readonly of: Of;
  readonly width: number;
  readonly dash: string | null;
  readonly points: readonly { readonly x: number; readonly y: number }[];
}

export interface PanelBand {
  readonly id: string;
  readonly of: Of;
  readonly points: readonly { readonly x: number; readonly low: number; readonly high: number }[];
}

export interface PanelWords {
  readonly kind: 'strong' | 'plain' | 'aside' | 'caption';
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** Words at the end of a line: a name, and under it a figure. */
export interface EndWords {
  readonly id: string;
  readonly of: Of;
  readonly name: string;
  readonly value: string | null;
  readonly x: number;
  /** Baseline of the name. */
  readonly y: number;
  /** Where the line ends: a leader goes there when the words had to move. */
  readonly lineX: number;
  readonly lineY: number;
}

/** Dashes of lines that are told apart by more than colour. */
export const DOTTED = '2 5';
export const DASHED = '9 5';

const NAME = 22;
const VALUE = 20;

/** Puts words at the ends of lines so that none covers another. */
export function endWords(
  ends: readonly { readonly id: string; readonly of: Of; readonly name: string; readonly value: string | null; readonly y: number }[],
  { plot, gap }: { readonly plot: Box; readonly gap: number },
): readonly EndWords[] {
  const heights = ends.map(({ value }) => NAME + (value === null ? 0 : VALUE));
  // Words with a figure under them reach further down, but stay in the order of the lines.
  const wishes = ends.map(
    ({ y, value }) =>
      Math.max(...ends.filter((other) => other.y <= y).map((other) => other.y + (other.value === null ? 0 : VALUE / 2)), y + (value === null ? 0 : VALUE / 2)) +
      y / 1e6,
  );
  const middles = spread(
    wishes.map((at, i) => ({ at, height: heights[i] ?? NAME })),
    plot.top - NAME / 2,
    plot.bottom + NAME / 2 + 4,
  );
  return ends.map(({ y, ...end }, i) => {
    const top = (middles[i] ?? y) - (heights[i] ?? NAME) / 2;
    return { ...end, x: plot.right + gap, y: top + 17, lineX: plot.right, lineY: y };
  });
}

/** Shares that an axis is marked at, from the highest step that is not above `least` to the lowest that is not under `most`. */
export function shareSteps(least: number, most: number): readonly number[] {
  const range = Math.max(0.02, most - least);
  const step = [0.02, 0.05, 0.1, 0.2].find((size) => range / size <= 4.5) ?? 0.2;
  const from = Math.max(0, Math.floor(least / step + 1e-9));
  const to = Math.min(Math.round(1 / step), Math.max(from + 1, Math.ceil(most / step - 1e-9)));
  return Array.from({ length: to - from + 1 }, (_, i) => Math.round((from + i) * step * 1000) / 1000);
}
