import type { Interval } from '../../results/outlook.ts';

/** What a bar shows: shares 0–1 of what is not luck. */
export interface Matters {
  readonly id: string;
  readonly first: Interval;
  readonly total: Interval | null;
}

export interface BarRow {
  readonly id: string;
  /** Bars begin at 0, px. */
  readonly first: number;
  /** End of the outline; null where it is not known yet, or lies within the bar: the two are estimated apart. */
  readonly total: number | null;
  readonly whisker: { readonly from: number; readonly to: number };
}

export interface BarsLayout {
  readonly width: number;
  readonly height: number;
  readonly middle: number;
  /** Thickness of the bar and of the outline round it, px. */
  readonly bar: number;
  readonly outline: number;
  /** The same scale for all rows: hairlines at every so many of 100. */
  readonly ticks: readonly { readonly x: number; readonly text: string }[];
  readonly rows: readonly BarRow[];
}

const HEIGHT = 34;
/** Half a line’s width is kept free at either end, px. */
const EDGE = 2;
/** A scale shorter than this would make a small share look large. */
const LEAST_SCALE = 0.2;
const STEPS = [0.05, 0.1, 0.2, 0.25, 0.5] as const;
/** Room that two hairlines want between them, px. */
const TICK_ROOM = 56;

/** Lays out the bars of all rows on one scale that begins at 0 and ends where the longest of them does. */
export function barsLayout(facts: readonly Matters[], width: number): BarsLayout {
  const longest = Math.max(LEAST_SCALE, ...facts.flatMap(({ first, total }) => [first.high, total?.value ?? 0]));
  const step = STEPS.find((one) => (one / longest) * (width - 2 * EDGE) >= TICK_ROOM) ?? 0.5;
  const top = Math.min(1, Math.ceil(longest / step - 1e-9) * step);
  const x = (share: number) => EDGE + (share / top) * (width - 2 * EDGE);
  const count = Math.floor(top / step + 1e-9);
  return {
    width,
    height: HEIGHT,
    middle: HEIGHT / 2,
    bar: 12,
    outline: 20,
    ticks: Array.from({ length: count + 1 }, (_, i) => ({ x: x(i * step), text: String(Math.round(100 * i * step)) })),
    rows: facts.map(({ id, first, total }) => ({
      id,
      first: x(first.value),
      total: total && total.value > first.value ? x(total.value) : null,
      whisker: { from: x(first.low), to: x(first.high) },
    })),
  };
}
