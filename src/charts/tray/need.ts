import { scaleLinear, type ScaleLinear } from 'd3';
import { trayText, type Target } from '../../text/tray.ts';
import type { Measure } from '../measure.ts';

export interface NeedData {
  readonly targets: readonly Target[];
  /** Chance by seedlings raised, in order of n, from `readings`. */
  readonly curve: readonly { readonly n: number; readonly chance: number }[];
  /** What the chance comes to with ever more seedlings. */
  readonly atAll: number;
}

export interface NeedLayout {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
  readonly curve: readonly (readonly [x: number, y: number])[];
  readonly ceiling: number | null;
  readonly levels: readonly { readonly y: number; readonly label: string; readonly raise: string; readonly ring: number | null }[];
  readonly ticks: readonly { readonly x: number; readonly text: string }[];
  readonly axis: string;
}

export interface NeedOptions {
  readonly width: number;
  readonly measure: Measure;
}

const SIZE = 17;
const NOTE = 16;
const PLOT = 236;
const TOP = 14;
const GAP = 12;
/** Points along the curve; more would not show. */
const POINTS = 160;

/** Numbers of seedlings to read the chance at: 0 to `most`, every one if there are few. */
export function readings(most: number): number[] {
  const step = Math.max(1, Math.ceil(most / POINTS));
  return Array.from({ length: Math.ceil(most / step) + 1 }, (_, i) => i * step);
}

/** Lays out the chance against seedlings raised, with the numbers for the chances asked for at its end. */
export function needLayout({ targets, curve, atAll }: NeedData, { width, measure }: NeedOptions): NeedLayout {
  const words = targets.map(({ chance, seedlings }) => ({ label: trayText.need.level(chance), raise: trayText.need.raise(seedlings) }));
  const left = Math.max(0, ...words.map(({ label }) => measure(label, NOTE))) + GAP;
  const right = width - Math.max(0, ...words.map(({ raise }) => measure(raise, SIZE, true))) - GAP;
  const bottom = TOP + PLOT;
  const x = scaleLinear([0, curve.at(-1)?.n ?? 1], [left, right]);
  const y = scaleLinear([0, 1], [bottom, TOP]);
  return {
    width,
    height: bottom + 30,
    left,
    right,
    top: TOP,
    bottom,
    curve: curve.map(({ n, chance }) => [x(n), y(chance)]),
    ceiling: atAll < 1 - 1e-9 ? y(atAll) : null,
    levels: targets.map(({ chance, seedlings }, i) => ({
      y: y(chance),
      label: words[i]?.label ?? '',
      raise: words[i]?.raise ?? '',
      ring: Number.isFinite(seedlings) ? x(seedlings) : null,
    })),
    ...axis(x, left, right, measure),
  };
}

/** As many whole numbers as stand clear of each other and of the name at the end of the axis. */
function axis(x: ScaleLinear<number, number>, left: number, right: number, measure: Measure): Pick<NeedLayout, 'ticks' | 'axis'> {
  const name = trayText.need.axis;
  const room = right - measure(name, NOTE) - GAP;
  const marked = (count: number) =>
    x
      .ticks(count)
      .filter(Number.isInteger)
      .map((n) => ({ x: x(n), text: n.toLocaleString('en') }))
      .map((tick) => ({ ...tick, half: measure(tick.text, SIZE) / 2 }))
      .filter((tick) => tick.x + tick.half <= room);
  for (let count = Math.max(1, Math.floor((right - left) / 50)); count > 1; count -= 1) {
    const ticks = marked(count);
    if (ticks.every((tick, i) => i === 0 || tick.x - tick.half >= (ticks[i - 1]?.x ?? 0) + (ticks[i - 1]?.half ?? 0) + GAP)) return { ticks, axis: name };
  }
  return { ticks: marked(1).slice(0, 1), axis: name };
}
