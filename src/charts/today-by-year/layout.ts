import { scaleLinear } from 'd3';
import type { PlanOutlook } from '../../results/outlook.ts';
import { inTenWords } from '../../text/charts.ts';
import { today as words } from '../../text/today.ts';
import { calendar } from '../calendar.ts';
import type { Measure } from '../measure.ts';
import { DASHED, endWords, type Panel } from '../panel/layout.ts';

/** One plan: its chance by year from what stands, with the first forecast behind it. */
export interface TodayPlan {
  readonly now: PlanOutlook;
  /** Null where the first forecast has no such plan. */
  readonly first: PlanOutlook | null;
  /** First spring that was played through. */
  readonly year: number;
}

export interface TodayLayout {
  readonly width: number;
  readonly height: number;
  readonly panel: Panel;
  readonly firstYear: number;
  readonly lastYear: number;
  readonly x: (year: number) => number;
  readonly y: (share: number) => number;
  readonly yearAt: (x: number) => number;
}

const PHONE = 440;
const HEIGHT = 200;
const SHARES = [0, 0.5, 1] as const;
const KEY_LINE = 30;

/** Lays out the two forecasts of a plan over the same years. */
export function todayLayout({ now, first, year }: TodayPlan, { width, measure }: { readonly width: number; readonly measure: Measure }): TodayLayout {
  const phone = width < PHONE;
  const names = [words.now, words.first];
  const beside = Math.max(...names.map((name) => measure(name, 17, true))) + 16;
  const plot = { left: 66, right: phone ? width - 8 : width - beside, top: 14, bottom: 14 + HEIGHT };
  const startYear = now.chanceByYear[0]?.year ?? year;
  const lastYear = now.chanceByYear.at(-1)?.year ?? year;
  const years = calendar({ startYear, lastYear, width, left: plot.left, right: width - plot.right });
  const x = (at: number) => years.x(at + 0.5);
  const y = scaleLinear([0, 1], [plot.bottom, plot.top]);
  const line = (plan: PlanOutlook, from: number) =>
    plan.chanceByYear.filter((point) => point.year >= from).map((point) => ({ x: x(point.year), y: y(point.value) }));
  const ends = [
    { id: 'now', of: 'plan' as const, name: words.now, value: inTenWords(now.chance.value), y: y(now.chance.value) },
    ...(first ? [{ id: 'first', of: 'ink' as const, name: words.first, value: inTenWords(first.chance.value), y: y(first.chance.value) }] : []),
  ];
  return {
    width,
    height: plot.bottom + (phone ? 42 + 26 * ends.length : 34),
    firstYear: startYear,
    lastYear,
    x,
    y: (share) => y(share),
    yearAt: (px) => Math.min(lastYear, Math.max(startYear, Math.round(years.yearAt(px) - 0.5))),
    panel: {
      plot,
      across: ticksWithin(years.ticks, lastYear, x(lastYear)),
      up: SHARES.map((share) => ({ y: y(share), text: share === 0 ? '0' : inTenWords(share) })),
      stretches: [],
      bands: [
        {
          id: 'now',
          of: 'plan',
          points: now.chanceByYear.filter((point) => point.year >= year - 1).map(({ year: at, low, high }) => ({ x: x(at), low: y(low), high: y(high) })),
        },
      ],
      curves: [
        ...(first ? [{ id: 'first', of: 'ink' as const, width: 2, dash: DASHED, points: line(first, startYear) }] : []),
        { id: 'now', of: 'plan', width: 3.5, dash: null, points: line(now, year - 1) },
      ],
      rules: [{ x: years.x(year), from: plot.top, to: plot.bottom, kind: 'level' }],
      rings: [],
      words: [],
      ends: phone
        ? ends.map((end, i) => ({
            ...end,
            name: `${end.name}: ${end.value}`,
            value: null,
            x: plot.left + KEY_LINE + 10,
            y: plot.bottom + 56 + 26 * i,
            lineX: plot.left + KEY_LINE,
            lineY: plot.bottom + 50 + 26 * i,
          }))
        : endWords(ends, { plot, gap: 10 }),
    },
  };
}

/** The years written on the axis, and the last one; those too near the last are left out. */
function ticksWithin(ticks: readonly { readonly year: number; readonly x: number }[], lastYear: number, end: number): Panel['across'] {
  const inner = ticks.filter(({ x }) => x < end - 62).map(({ year, x }) => ({ x, text: String(year), anchor: 'middle' as const }));
  return [...inner, { x: end, text: String(lastYear), anchor: 'end' }];
}

/** Pieces of line before the names under the picture; none where the names stand beside their lines. */
export function keyLines({ panel: { ends, curves, plot } }: TodayLayout): readonly {
  readonly id: string;
  readonly of: 'plan' | 'ink';
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly dash: string | null;
}[] {
  return ends.flatMap(({ id, x, lineY }) => {
    const curve = curves.find((one) => one.id === id);
    return curve && x < plot.right ? [{ id, of: curve.of, x: x - 10 - KEY_LINE, y: lineY, width: curve.width, dash: curve.dash }] : [];
  });
}
