import { scaleLog } from 'd3';
import { STAGES, type GenerationOutlook, type Outlook, type Spread } from '../../results/outlook.ts';
import { funnelText } from '../../text/charts-more.ts';
import type { Measure } from '../measure.ts';

interface Step {
  readonly stage: string;
  readonly label: string;
  readonly y: number;
  readonly dot: number;
  readonly bar: { readonly x: number; readonly width: number } | null;
  readonly middle: string;
  readonly range: string;
  readonly textX: number;
}

export interface FunnelLayout {
  readonly width: number;
  readonly height: number;
  readonly labelX: number;
  readonly steps: readonly Step[];
  readonly ticks: readonly { readonly x: number; readonly text: string }[];
  readonly top: number;
  readonly bottom: number;
}

export interface FunnelOptions {
  readonly width: number;
  /** Highest count on any panel beside it, so that all share one scale. */
  readonly most: number;
  /** Room for the names of the steps and for the counts, the same on all panels. */
  readonly margins: Margins;
  readonly measure: Measure;
}

export interface Margins {
  readonly left: number;
  readonly right: number;
}

const TOP = 26;
/** Height of a step, px. */
export const ROW = 29;
const SIZE = 16;
/** Room for 0, which a logarithm has not. */
const ZERO = 22;

/** Highest count that any panel must show. */
export const mostOf = ({ plans }: Outlook): number =>
  Math.max(10, ...plans.flatMap(({ generations }) => generations.flatMap(({ stages }) => STAGES.map((stage) => stages[stage].p90))));

/** Steps at which anything happens: grafting, for one, is left out where no seedling is grafted. */
export const stepsOf = ({ stages }: Pick<GenerationOutlook, 'stages'>) => STAGES.filter((stage) => stages[stage].p90 > 0 || stage === 'kept');

/** Widest name of a step and widest counts of all panels. */
export function marginsOf({ plans }: Outlook, measure: Measure): Margins {
  const steps = plans.flatMap(({ generations }) =>
    generations.flatMap((generation) => stepsOf(generation).map((stage) => ({ stage, ...countsOf(generation.stages[stage]) }))),
  );
  return {
    left: Math.max(0, ...steps.map(({ stage }) => measure(funnelText.stage(stage), SIZE))) + 12,
    right: Math.max(0, ...steps.map(({ middle, range }) => measure(middle, SIZE, true) + measure(`  ${range}`, SIZE))) + 18,
  };
}

/** Lays out one generation: a line per step, counts on a scale of tens with a place of its own for 0. */
export function funnelLayout(generation: Pick<GenerationOutlook, 'stages'>, { width, most, margins, measure }: FunnelOptions): FunnelLayout {
  const steps = stepsOf(generation);
  const labels = steps.map((stage) => funnelText.stage(stage));
  const { left } = margins;
  const counts = steps.map((stage) => countsOf(generation.stages[stage]));
  const right = width - margins.right;
  const scale = scaleLog([1, Math.max(10, most)], [left + ZERO, right]);
  const x = (n: number) => (n < 1 ? left + 4 : scale(n));
  const bottom = TOP + steps.length * ROW;
  return {
    width,
    height: bottom + 4,
    labelX: left - 12,
    steps: steps.map((stage, index) => {
      const { p10, p50, p90 } = generation.stages[stage];
      const { middle, range } = counts[index] ?? { middle: '', range: '' };
      return {
        stage,
        label: labels[index] ?? stage,
        y: TOP + (index + 0.5) * ROW,
        dot: x(Math.round(p50)),
        bar: Math.round(p90) > Math.round(p10) ? { x: x(Math.round(p10)), width: x(Math.round(p90)) - x(Math.round(p10)) } : null,
        middle,
        range,
        textX: right + 16,
      };
    }),
    ticks: ticksOf(most, x, right - left, measure),
    top: TOP,
    bottom,
  };
}

const countsOf = ({ p10, p50, p90 }: Spread) => funnelText.count(Math.round(p10), Math.round(p50), Math.round(p90));

/** 0, 1 and the powers of ten; where they stand too close, only some. */
function ticksOf(most: number, x: (n: number) => number, room: number, measure: Measure): FunnelLayout['ticks'] {
  const powers = Array.from({ length: Math.floor(Math.log10(Math.max(10, most))) + 1 }, (_, power) => 10 ** power);
  let end = -Infinity;
  return [0, ...powers].flatMap((n) => {
    const text = funnelText.tick(n);
    const half = measure(text, SIZE) / 2;
    if (room < 40 || x(n) - half < end + 6) return [];
    end = x(n) + half;
    return [{ x: x(n), text }];
  });
}
