import type { GenerationOutlook, YearSpread } from '../../results/outlook.ts';
import type { Calendar } from '../calendar.ts';

export interface Stop {
  /** px */
  readonly x: number;
  readonly opacity: number;
}

/** One generation as a tapering bar: numbers only. */
export interface Bough {
  /** The upper and lower contour: distance from the middle line, px. */
  readonly points: readonly { readonly x: number; readonly half: number }[];
  readonly from: number;
  readonly to: number;
  /** How strongly each texture shows along the bough. */
  readonly nursery: readonly Stop[];
  readonly waiting: readonly Stop[];
  readonly judging: readonly Stop[];
  readonly contour: readonly Stop[];
}

/** Seedlings are counted as nursery stock for two years from germination, which is as long as their ages are told in months. */
const NURSERY_YEARS = 2;
/** A bough thinner than this would not be seen, px from the middle line. */
const THINNEST_HALF = 1.5;
/** Shares below this are not drawn. */
const LEAST_SHARE = 0.002;
/** A bough that begins in the same year in at least this share of its fullest year begins with a straight cut. */
const SUDDEN = 0.7;

type Curve = (year: number) => number;

/** Share at work in a year, 0 outside the years held. */
type Going = (year: number) => number;

/**
 * Lays out one bough.
 * @param generation its `going` starts at `startYear`
 * @param full thickness of all futures, px
 * @returns null when no future gets there
 */
export function bough(generation: GenerationOutlook, startYear: number, calendar: Calendar, full: number): Bough | null {
  const going: Going = (year) => generation.going[year - startYear] ?? 0;
  const years = generation.going
    .map((_, index) => startYear + index)
    .filter((year) => going(year) >= LEAST_SHARE && year <= calendar.lastYear && year >= calendar.firstYear);
  const first = years[0];
  const last = years.at(-1);
  if (first === undefined || last === undefined) return null;
  const half = (year: number) => Math.max(THINNEST_HALF, (full * going(year)) / 2);
  const most = Math.max(...years.map(going));
  const sudden = going(first) >= SUDDEN * most;
  const { x } = calendar;
  const between = Array.from({ length: last - first + 1 }, (_, index) => ({ x: x(first + index), half: half(first + index) }));
  const start = sudden ? [] : [{ x: x(first - 0.5), half: THINNEST_HALF }];
  const end = last === calendar.lastYear ? [{ x: calendar.horizon, half: half(last) }] : [{ x: x(last + 0.5), half: THINNEST_HALF }];
  const points = [...start, ...between, ...end];
  const from = points[0]?.x ?? x(first);
  return { points, from, to: end[0]?.x ?? x(last), ...textures(generation, calendar, sudden) };
}

function textures(
  generation: GenerationOutlook,
  { x, lastYear, firstYear }: Calendar,
  sudden: boolean,
): Pick<Bough, 'nursery' | 'waiting' | 'judging' | 'contour'> {
  const nurseryEnd = later(generation.firstSeedling, NURSERY_YEARS);
  const start = sudden ? () => 1 : rising(soft(generation.firstPollination, lastYear), SOFT_START);
  const end = falling(soft(generation.lastJudged, lastYear), SOFT_END);
  const raised = rising(soft(nurseryEnd, lastYear), HARD);
  const fruited = rising(soft(generation.firstFruit, lastYear), HARD);
  const alive: Curve = (year) => start(year) * end(year);
  const years = breaks([generation.firstPollination, nurseryEnd, generation.firstFruit, generation.lastJudged], firstYear, lastYear);
  const stops = (curve: Curve): Stop[] => years.map((year) => ({ x: x(year), opacity: Math.round(curve(year) * 1000) / 1000 }));
  return {
    nursery: stops((year) => alive(year) * (1 - raised(year))),
    waiting: stops((year) => alive(year) * raised(year) * (1 - fruited(year))),
    judging: stops((year) => alive(year) * fruited(year)),
    contour: stops(alive),
  };
}

/** Opacities at 10, 50 and 90 %. Inside a bough a change of texture follows the share exactly. */
const HARD = [0.1, 0.5, 0.9] as const;
/** Where a bough begins or ends its thickness already carries the share, so the ink only softens. */
const SOFT_START = [0.45, 0.75, 1] as const;
const SOFT_END = [0.22, 0.62, 0.94] as const;

const later = ({ p10, p50, p90 }: YearSpread, years: number): YearSpread => ({
  p10: p10 === null ? null : p10 + years,
  p50: p50 === null ? null : p50 + years,
  p90: p90 === null ? null : p90 + years,
});

/** Years of 10, 50 and 90 %; those never reached lie beyond the last year. At least half a year apart, so that an edge is never a cliff. */
function soft(spread: YearSpread, lastYear: number): readonly [number, number, number] {
  const middle = spread.p50 ?? lastYear + 3;
  return [Math.min(spread.p10 ?? lastYear + 2, middle - 0.5), middle, Math.max(spread.p90 ?? lastYear + 4, middle + 0.5)];
}

function rising([p10, p50, p90]: readonly [number, number, number], [a, b, c]: readonly [number, number, number]): Curve {
  return piecewise([
    [p10 - 0.7, 0],
    [p10, a],
    [p50, b],
    [p90, c],
    [p90 + 0.7, 1],
  ]);
}

function falling(years: readonly [number, number, number], [a, b, c]: readonly [number, number, number]): Curve {
  const up = rising(years, [1 - c, 1 - b, 1 - a]);
  return (year) => 1 - up(year);
}

/** Straight lines through points of rising year; level outside. */
function piecewise(points: readonly (readonly [number, number])[]): Curve {
  return (year) => {
    let value = points[0]?.[1] ?? 0;
    let before = points[0];
    for (const point of points) {
      if (before && point[0] > before[0] && year > before[0])
        value = before[1] + (point[1] - before[1]) * Math.min(1, (year - before[0]) / (point[0] - before[0]));
      before = point;
    }
    return value;
  };
}

/** Years at which any texture bends, and half way between, so that a product of curves stays close to its own shape. */
function breaks(spreads: readonly YearSpread[], firstYear: number, lastYear: number): number[] {
  const bends = spreads.flatMap((spread) => {
    const [p10, p50, p90] = soft(spread, lastYear);
    return [p10 - 0.7, p10, p50, p90, p90 + 0.7];
  });
  const inside = [...new Set([firstYear - 0.5, ...bends, lastYear + 0.5])]
    .filter((year) => year >= firstYear - 0.5 && year <= lastYear + 0.5)
    .sort((a, b) => a - b);
  return inside.flatMap((year, index) => {
    const next = inside[index + 1];
    return next === undefined ? [year] : [year, (year + next) / 2];
  });
}
