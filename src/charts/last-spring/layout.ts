import type { LaterBegin } from '../../statistics/last-spring.ts';
import { springText } from '../../text/charts-years.ts';
import { apart } from '../apart.ts';
import { calendar, roomFor, type Calendar } from '../calendar.ts';
import type { Letter } from '../letter.ts';
import { capOf, dashOf } from '../marks.ts';
import { wrap, type Measure } from '../measure.ts';
import { shareAxis, type ShareTick } from '../shares.ts';

/** A plan, and what it comes to when it begins later. */
export interface LaterPlan {
  readonly plan: string;
  readonly mark: string;
  readonly name: string;
  readonly later: LaterBegin;
}

export interface SpringLine {
  readonly plan: string;
  readonly mark: string;
  readonly dash: string | null;
  readonly cap: 'round' | 'butt';
  readonly points: readonly { readonly x: number; readonly y: number }[];
}

export interface SpringLayout {
  readonly width: number;
  readonly height: number;
  readonly calendar: Calendar;
  readonly plot: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  readonly shares: readonly ShareTick[];
  readonly lines: readonly SpringLine[];
  /** Where half of this spring’s chance is left; a letter that had to step aside keeps a leader to its place. */
  readonly letters: readonly (Letter & { readonly toX: number; readonly toY: number })[];
  /** The last spring with any chance. */
  readonly ends: readonly { readonly plan: string; readonly mark: string; readonly x: number; readonly y: number }[];
  /** Where the reading box stands beside the lines; null where it must stand under them. */
  readonly box: { readonly x: number; readonly y: number; readonly width: number } | null;
  readonly y: (share: number) => number;
}

const TOP = 40;
const HEIGHT = { phone: 280, middle: 320, wide: 340 } as const;
/** Reading box: its least width, what stands beside the names, its head, and a line of a name with the least height of a row, px. */
const BOX = { least: 190, beside: 130, head: 84, line: 22, row: 31 } as const;

/** Lays out the chance of every plan by the spring in which it begins. */
export function springLayout(
  plans: readonly LaterPlan[],
  { startYear, lastYear, width, measure }: { readonly startYear: number; readonly lastYear: number; readonly width: number; readonly measure: Measure },
): SpringLayout {
  const room = roomFor(width);
  const phone = room === 'phone';
  const years = calendar({ startYear, lastYear, width });
  const plot = { left: years.left, right: years.horizon, top: TOP, bottom: TOP + HEIGHT[room] };
  const { y, ticks } = shareAxis(Math.max(0, ...plans.map(({ later }) => later.chances[0]?.value ?? 0)), plot, phone);
  const at = ({ later }: LaterPlan, year: number) => ({ x: years.x(year), y: y(later.chances.find((chance) => chance.year === year)?.value ?? 0) });
  const halves = plans.flatMap((plan) =>
    plan.later.half === null ? [] : [{ plan: plan.plan, mark: plan.mark, ...at(plan, plan.later.half), r: phone ? 11 : 12 }],
  );
  return {
    width,
    height: plot.bottom + 14,
    calendar: years,
    plot,
    // The lines begin where a phone has its words on the hairlines, and have fallen at the other end.
    shares: phone ? ticks.map((tick) => ({ ...tick, textX: plot.right - 8, anchor: 'end' as const })) : ticks,
    lines: plans.map((plan) => ({ plan: plan.plan, mark: plan.mark, dash: dashOf(plan.mark), cap: capOf(plan.mark), points: pointsOf(plan, at) })),
    letters: apart(halves).map((letter, index) => ({ ...letter, toX: halves[index]?.x ?? letter.x, toY: halves[index]?.y ?? letter.y })),
    ends: plans.flatMap((plan) => (plan.later.any === null ? [] : [{ plan: plan.plan, mark: plan.mark, ...at(plan, plan.later.any) }])),
    box: boxRoom(plans, width, plot, measure),
    y,
  };
}

/** From this spring to the first in which nothing is left. */
function pointsOf(plan: LaterPlan, at: (plan: LaterPlan, year: number) => { readonly x: number; readonly y: number }): SpringLine['points'] {
  const { chances, any } = plan.later;
  return any === null ? [] : chances.filter(({ year }) => year <= any + 1).map(({ year }) => at(plan, year));
}

function boxRoom(plans: readonly LaterPlan[], width: number, plot: SpringLayout['plot'], measure: Measure): SpringLayout['box'] {
  const x = plot.right + 20;
  const names = width - x - BOX.beside;
  const rows = plans.map(({ name }) => Math.max(BOX.row, wrap(name, names, 17, measure).length * BOX.line + 6));
  const height = BOX.head + rows.reduce((sum, row) => sum + row, 0);
  return width - x >= BOX.least && height <= plot.bottom - plot.top ? { x, y: plot.top, width: width - x } : null;
}

/** Plans by their chance at a spring, highest first. */
export function readSpring(plans: readonly LaterPlan[], year: number): { readonly plan: LaterPlan; readonly value: number }[] {
  return plans.map((plan) => ({ plan, value: plan.later.chances.find((chance) => chance.year === year)?.value ?? 0 })).sort((a, b) => b.value - a.value);
}

/** The finding: how long the likeliest plan can wait, and which waits longer. */
export function springFinding(plans: readonly LaterPlan[], startYear: number): string {
  const [best] = readSpring(plans, startYear);
  if (!best || best.plan.later.half === null || best.plan.later.any === null) return springText.never;
  const { mark, later } = best.plan;
  const half = later.half ?? startYear;
  const share = later.chances.find(({ year }) => year === half)?.value ?? 0;
  const longest = plans.reduce((a, b) => ((b.later.half ?? 0) > (a.later.half ?? 0) ? b : a), best.plan);
  return [
    springText.summary(mark, half, share, later.any ?? half, startYear),
    ...(longest === best.plan ? [] : [springText.waits(longest.mark, longest.later.half ?? startYear)]),
  ].join(' ');
}
