import { scaleLinear } from 'd3';
import type { Interval, PlanOutlook } from '../../results/outlook.ts';
import { percent } from '../../text/charts.ts';
import { today as words } from '../../text/today.ts';
import type { Measure } from '../measure.ts';

/** A plan's chance by the last year, now and when the programme began. */
export interface FromTodayPlan {
  readonly now: Pick<PlanOutlook, 'id' | 'mark' | 'name' | 'chance'>;
  readonly first: Interval | null;
}

export interface FromTodayRow {
  readonly plan: string;
  readonly mark: string;
  readonly y: number;
  readonly letterX: number;
  readonly now: { readonly x: number; readonly low: number; readonly high: number };
  readonly first: { readonly x: number; readonly low: number; readonly high: number } | null;
  readonly value: string;
  readonly before: string;
}

export interface FromTodayLayout {
  readonly width: number;
  readonly height: number;
  readonly plot: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  readonly ticks: readonly { readonly x: number; readonly text: string; readonly anchor: 'start' | 'middle' | 'end' }[];
  readonly rows: readonly FromTodayRow[];
  /** px where the words beside a row begin. */
  readonly valueX: number;
  readonly beforeX: number | null;
}

const PHONE = 560;
const ROW = 40;

/** Lays out both chances of every plan on one axis of tenths, a row each. */
export function fromTodayLayout(plans: readonly FromTodayPlan[], { width, measure }: { readonly width: number; readonly measure: Measure }): FromTodayLayout {
  const phone = width < PHONE;
  const befores = plans.map(({ first }) => (first ? words.was(percent(first.value)) : ''));
  const valueRoom = Math.max(0, ...plans.map(({ now }) => measure(percent(now.chance.value), 18, true))) + 14;
  const beforeRoom = phone ? 0 : Math.max(0, ...befores.map((text) => measure(text, 17))) + 14;
  const plot = { left: 48, right: Math.min(width, 900) - 16 - valueRoom - beforeRoom, top: 34, bottom: 34 + ROW * plans.length };
  const x = scaleLinear([0, 1], [plot.left, plot.right]);
  const at = ({ value, low, high }: Interval) => ({ x: x(value), low: x(low), high: x(high) });
  // “10 in 10” ends at the last step and must not reach the one before it.
  const steps = x(0.2) - x(0) < measure('10 in 10', 17) + 16 ? [0, 5, 10] : [0, 2, 4, 6, 8, 10];
  return {
    width,
    height: plot.bottom + 8,
    plot,
    ticks: steps.map((n) => ({ x: x(n / 10), text: n === 10 ? '10 in 10' : String(n), anchor: n === 10 ? 'end' : 'middle' })),
    rows: plans.map(({ now, first }, p) => ({
      plan: now.id,
      mark: now.mark,
      y: plot.top + ROW * (p + 0.5),
      letterX: 16,
      now: at(now.chance),
      first: first && at(first),
      value: percent(now.chance.value),
      before: befores[p] ?? '',
    })),
    valueX: plot.right + 16,
    beforeX: phone ? null : plot.right + 16 + valueRoom,
  };
}
