import { scaleLinear } from 'd3';
import type { Measure } from '../measure.ts';

/** A measured trait of a family: values in the trait's unit, texts as they are to stand. */
export interface ValueData {
  readonly mean: number;
  /** SD within the family. */
  readonly within: number;
  /** SD of the mean for want of knowing the parents. */
  readonly between: number;
  readonly parents: readonly { readonly value: number; readonly text: string }[];
  readonly goals: readonly { readonly value: number; readonly text: string }[];
  readonly print: (value: number) => string;
}

interface Mark {
  readonly x: number;
  readonly text: string;
  readonly textX: number;
  readonly textY: number;
}

export interface ValueLayout {
  readonly width: number;
  readonly height: number;
  readonly base: number;
  readonly hill: readonly (readonly [x: number, y: number])[];
  readonly mean: number;
  /** Where the mean itself may lie, 8 in 10; null if it is known. */
  readonly meanRange: readonly [number, number] | null;
  /** Between these lie 8 in 10 seedlings of one family. */
  readonly middle: readonly [number, number];
  readonly parents: readonly Mark[];
  readonly goals: readonly Mark[];
  readonly ticks: readonly { readonly x: number; readonly text: string }[];
  readonly from: number;
  readonly to: number;
}

export interface ValueOptions {
  readonly width: number;
  readonly measure: Measure;
}

const SIZE = 16;
const ROW = 24;
const HILL = 92;
const SIDE = 6;
/** Standard deviations drawn to either side, and those between which 8 in 10 lie. */
const REACH = 3;
export const EIGHT_IN_TEN = 1.2815515655446004;

interface Label {
  readonly x: number;
  readonly half: number;
  readonly textX: number;
  readonly row: number;
}

/** Puts labels into as few rows as they need, taken in an order; the first row is the top one. */
function stacked(labels: readonly Omit<Label, 'row'>[], order: readonly number[]): Label[] {
  const rows: [number, number][][] = [];
  const placed = new Map<number, number>();
  for (const index of order) {
    const label = labels[index];
    if (!label) continue;
    const [from, to] = [label.textX - label.half - 6, label.textX + label.half + 6];
    const free = rows.findIndex((taken) => taken.every(([a, b]) => to <= a || from >= b));
    const row = free < 0 ? rows.push([]) - 1 : free;
    rows[row]?.push([from, to]);
    placed.set(index, row);
  }
  return labels.map((label, index) => ({ ...label, row: placed.get(index) ?? 0 }));
}

/** How many leaders run through a label of a lower row. */
const crossed = (labels: readonly Label[]): number =>
  labels.flatMap(({ x, row }) => labels.filter((other) => other.row > row && Math.abs(other.textX - x) < other.half + 3)).length;

/** Labels above the hill, each over its mark as far as the edges let it; stacked from the left or from the right, whichever is clearer. */
function labelsOf(marks: readonly { readonly x: number; readonly text: string }[], width: number, measure: Measure): Label[] {
  const labels = marks.map(({ x, text }) => {
    const half = measure(text, SIZE) / 2;
    return { x, half, textX: Math.max(half, Math.min(width - half, x)) };
  });
  const order = [...labels.keys()].sort((a, b) => (labels[a]?.x ?? 0) - (labels[b]?.x ?? 0));
  const [left, right] = [stacked(labels, order), stacked(labels, order.toReversed())];
  return crossed(right) < crossed(left) ? right : left;
}

/** Lays out a family's hill over its scale, with its parents as rings on the scale and what the goal asks as rules. */
export function valueLayout({ mean, within, between, parents, goals, print }: ValueData, { width, measure }: ValueOptions): ValueLayout {
  const spread = Math.max(within, 1e-9);
  const ends = [mean - REACH * spread, mean + REACH * spread, mean - EIGHT_IN_TEN * between, mean + EIGHT_IN_TEN * between];
  const all = [...ends, ...parents.map(({ value }) => value), ...goals.map(({ value }) => value)];
  const x = scaleLinear([Math.min(...all), Math.max(...all)], [SIDE, width - SIDE]);
  const named = [...parents, ...goals].map(({ value, text }) => ({ x: x(value), text }));
  const labels = labelsOf(named, width, measure);
  const rows = 1 + Math.max(-1, ...labels.map(({ row }) => row));
  const base = rows * ROW + 10 + HILL;
  const marks = named.map(({ x: at, text }, index): Mark => ({ x: at, text, textX: labels[index]?.textX ?? at, textY: (labels[index]?.row ?? 0) * ROW + 17 }));
  const steps = 60;
  const hill = Array.from({ length: steps + 1 }, (_, i): [number, number] => {
    const z = -REACH + (2 * REACH * i) / steps;
    return [x(mean + z * spread), base - HILL * Math.exp((-z * z) / 2)];
  });
  return {
    width,
    height: base + 28,
    base,
    hill,
    mean: x(mean),
    meanRange: between > 0 ? [x(mean - EIGHT_IN_TEN * between), x(mean + EIGHT_IN_TEN * between)] : null,
    middle: [x(mean - EIGHT_IN_TEN * spread), x(mean + EIGHT_IN_TEN * spread)],
    parents: marks.slice(0, parents.length),
    goals: marks.slice(parents.length),
    ticks: tickMarks(x, width, print, measure),
    from: SIDE,
    to: width - SIDE,
  };
}

function tickMarks(x: ReturnType<typeof scaleLinear<number, number>>, width: number, print: (value: number) => string, measure: Measure) {
  const ticks = x.ticks(Math.max(2, Math.floor(width / 90))).map((value) => ({ x: x(value), text: print(value) }));
  return ticks.filter((tick) => tick.x - measure(tick.text, SIZE) / 2 >= 0 && tick.x + measure(tick.text, SIZE) / 2 <= width);
}
