import { bin, max, median, quantile, quantileSorted, range, scaleLinear, ticks, tickStep } from 'd3';
import type { Outlook, PlanOutlook } from '../../results/outlook.ts';
import { cloudText } from '../../text/charts-more.ts';
import { apart } from '../apart.ts';
import { calendar, roomFor, type Calendar } from '../calendar.ts';
import { firstProven } from '../chance-by-year/crossing.ts';
import type { Letter } from '../letter.ts';
import { shortName, type WordsByPlan } from '../marks.ts';
import { wrap, type Measure } from '../measure.ts';
import { spread } from '../spread.ts';
import { outlines, type Outline } from './density.ts';

/** Every future of one plan. */
export interface Futures {
  readonly plan: string;
  /** Calendar year of the proven tree; 0 for none. */
  readonly yearProven: Int16Array;
  /** Seedlings raised, as long as `yearProven`. */
  readonly seedlings: Int32Array;
}

interface Cloud {
  readonly plan: string;
  readonly mark: string;
  readonly outlines: readonly Outline[];
  /** 0–1: a plan that seldom succeeds stands back. */
  readonly strength: number;
  readonly median: { readonly year: number; readonly seedlings: number } | null;
  /** Year and seedlings that a tenth, half and nine tenths of the successes stay within; empty without success. */
  readonly steps: readonly { readonly year: number; readonly seedlings: number }[];
  /** Middle seedlings of the futures that fail. */
  readonly failedSeedlings: number | null;
  readonly noTree: number;
}

interface CloudLabel {
  readonly plan: string;
  readonly x: number;
  readonly y: number;
  readonly name: string;
  readonly text: string;
  readonly toX: number;
  readonly toY: number;
}

export interface Strip {
  readonly plan: string;
  readonly mark: string;
  readonly x: number;
  readonly text: string;
  readonly points: readonly { readonly y: number; readonly half: number }[];
}

export interface CloudLayout {
  readonly width: number;
  readonly height: number;
  readonly calendar: Calendar;
  readonly dropped: boolean;
  readonly plot: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
  readonly counts: readonly { readonly y: number; readonly text: string; readonly x: number; readonly textY: number; readonly anchor: 'start' | 'end' }[];
  readonly clouds: readonly Cloud[];
  readonly letters: readonly Letter[];
  /** Words with leaders; empty where they stand under the picture. */
  readonly labels: readonly CloudLabel[];
  readonly strips: readonly Strip[];
  /** px of a number of seedlings. */
  readonly y: (seedlings: number) => number;
  readonly stripHead: readonly { readonly x: number; readonly y: number; readonly text: string }[];
  readonly stripLetters: readonly Letter[];
}

export interface CloudOptions {
  readonly width: number;
  readonly measure: Measure;
  readonly words: WordsByPlan;
}

const SHARES = [0.85, 0.5] as const;
/** Steps that a cloud is read at; the letter sits on the middle one. */
const STEPS = [0.1, 0.5, 0.9] as const;
const MIDDLE = 1;
/** Fewer successes than this make an outline that only shows the smoothing. */
const LEAST_SUCCESSES = 30;
/** Most futures that the smoothing looks at, evenly taken: more change nothing one could see. */
const MOST_SPOTS = 4000;
const LABEL_SIZE = 17;

/** Lays out one cloud per plan, and a strip for the futures without a tree. */
export function cloudLayout(outlook: Outlook, futures: readonly Futures[], { width, measure, words }: CloudOptions): CloudLayout {
  const { plans, startYear, lastYear } = outlook;
  const room = roomFor(width);
  const phone = room === 'phone';
  const begins = firstProven(plans);
  const from = phone && begins !== null ? Math.max(startYear, Math.min(begins - 1, lastYear - 8)) : startYear;
  const stripWidth = phone ? Math.min(24, 96 / Math.max(1, plans.length)) : 0;
  const years = calendar({ startYear, lastYear, width, from, ...(phone ? { right: 14 + stripWidth * plans.length } : {}) });
  const plot = { left: years.left, right: years.horizon, top: phone ? 40 : 72, bottom: (phone ? 40 : 72) + (phone ? 330 : 420) };
  const scaleTo = (most: number) => {
    const scale = scaleLinear([0, most], [plot.bottom, plot.top]);
    return (seedlings: number) => scale(Math.min(most, seedlings));
  };
  const { most, clouds } = withRoom(ceiling(futures), plot, (top) =>
    plans.map((plan) =>
      cloudOf(
        plan,
        futures.find((columns) => columns.plan === plan.id),
        years,
        scaleTo(top),
        phone,
      ),
    ),
  );
  const y = scaleTo(most);
  const letters = apart(
    clouds.flatMap(({ plan, mark, median: middle }) => (middle ? [{ plan, mark, x: years.x(middle.year), y: y(middle.seedlings), r: phone ? 12 : 14 }] : [])),
  );
  const strips = stripsOf(clouds, futures, {
    from: plot.right + (phone ? 8 : 18),
    width: phone ? stripWidth : Math.min(54, (width - plot.right - 22) / Math.max(1, plans.length)),
    y,
    most,
  });
  const head = phone ? [] : wrap(cloudText.none(lastYear), width - plot.right - 18, LABEL_SIZE, measure, true);
  return {
    width,
    height: plot.bottom + 18,
    calendar: years,
    dropped: from > startYear,
    plot,
    counts: countTicks(most, y, plot.left, phone),
    clouds,
    letters,
    labels: room === 'wide' ? labelsOf(clouds, letters, plans, plot, measure, words) : [],
    strips,
    y,
    stripHead: head.map((text, index) => ({ x: plot.right + 18, y: plot.top - 40 - (head.length - 1 - index) * 20, text })),
    stripLetters: strips.map(({ plan, mark, x }) => ({ plan, mark, x, y: phone ? plot.top - 20 : plot.bottom, r: phone ? 11 : 12 })),
  };
}

/** Least room between the outlines and the top of the axis, px, and how often the axis is let grow for it. */
const ROOM = 10;
const TURNS = 8;

/** Raises the top of the axis, to round numbers, until all outlines lie under it: their smoothing carries them beyond the outermost futures. */
function withRoom(first: number, plot: CloudLayout['plot'], draw: (most: number) => Cloud[]): { most: number; clouds: Cloud[] } {
  let drawn = { most: first, clouds: draw(first) };
  for (let turn = 0; turn < TURNS; turn++) {
    const over = plot.top + ROOM - topOf(drawn.clouds);
    if (over <= 0) break;
    const wanted = drawn.most * (1 + over / (plot.bottom - plot.top));
    const step = tickStep(0, wanted, 10);
    const most = Math.ceil(wanted / step) * step;
    drawn = { most, clouds: draw(most) };
  }
  return drawn;
}

const points = ({ outlines: shapes }: Cloud) => shapes.flatMap(({ polygons }) => polygons.flatMap((rings) => rings.flat()));
const topOf = (clouds: readonly Cloud[]): number => clouds.flatMap(points).reduce((top, [, y]) => Math.min(top, y), Infinity);

/** Top of the axis: a round number over nearly all futures; the few above are drawn at the top. */
function ceiling(futures: readonly Futures[]): number {
  const all = futures.flatMap(({ seedlings }) => [...seedlings]).sort((a, b) => a - b);
  const most = quantileSorted(all, 0.995) ?? 10;
  return Math.max(10, ...ticks(0, most * 1.12, 5).slice(-1));
}

function countTicks(most: number, y: (n: number) => number, left: number, phone: boolean): CloudLayout['counts'] {
  const values = ticks(0, most, 5);
  return values.map((n, index) => {
    const last = index === values.length - 1;
    const text = last ? cloudText.seedlings(n) : n === 0 ? '' : cloudText.count(n);
    return { y: y(n), text, x: phone ? 0 : left - 12, textY: phone ? y(n) + (last ? 18 : -5) : y(n) + 6, anchor: phone ? 'start' : 'end' };
  });
}

/** Whole numbers: the share of the futures that has its value there or below. */
const reached = (futures: readonly { readonly year: number; readonly seedlings: number }[], what: 'year' | 'seedlings', share: number): number =>
  Math.round(quantile(futures, share, (future) => future[what]) ?? 0);

function cloudOf({ id, mark, chance }: PlanOutlook, columns: Futures | undefined, years: Calendar, y: (n: number) => number, phone: boolean): Cloud {
  const all = columns ? Array.from(columns.yearProven, (year, index) => ({ year, seedlings: columns.seedlings[index] ?? 0 })) : [];
  const won = all.filter(({ year }) => year > 0);
  const lost = all.filter(({ year }) => year <= 0);
  const step = Math.max(1, Math.ceil(won.length / MOST_SPOTS));
  const spots = won
    .filter((_, index) => index % step === 0)
    .map(({ year, seedlings }) => ({ x0: years.x(year - 0.5), x1: years.x(year + 0.5), y: y(seedlings) }));
  const size = { cell: phone ? 3 : 4, bandwidth: phone ? 14 : 25 };
  const steps = won.length === 0 ? [] : STEPS.map((share) => ({ year: reached(won, 'year', share), seedlings: reached(won, 'seedlings', share) }));
  return {
    plan: id,
    mark,
    outlines: won.length < LEAST_SUCCESSES ? [] : outlines(spots, SHARES, size),
    strength: 0.45 + 0.55 * Math.min(1, chance.value / 0.7),
    median: steps[MIDDLE] ?? null,
    steps,
    failedSeedlings: median(lost, ({ seedlings }) => seedlings) ?? null,
    noTree: all.length === 0 ? 1 - chance.value : lost.length / all.length,
  };
}

/** Words stand left of all clouds, each as near to the height of its letter as the others allow. */
function labelsOf(
  clouds: readonly Cloud[],
  letters: readonly Letter[],
  plans: readonly PlanOutlook[],
  plot: CloudLayout['plot'],
  measure: Measure,
  words: WordsByPlan,
): CloudLabel[] {
  const edge = clouds.flatMap(points).reduce((left, [x]) => Math.min(left, x), Math.min(...letters.map(({ x }) => x - 20))) - 26;
  const texts = letters.map((letter) => {
    const plan = plans.find(({ id }) => id === letter.plan);
    const middle = clouds.find((cloud) => cloud.plan === letter.plan)?.median;
    return { name: cloudText.label(plan ? shortName(plan, words) : letter.plan), text: middle ? cloudText.half(middle.year, middle.seedlings) : '' };
  });
  const widest = Math.max(0, ...texts.map(({ name, text }) => measure(name, LABEL_SIZE, true) + measure(text, LABEL_SIZE)));
  if (edge - widest < plot.left + 4) return [];
  const middles = spread(
    letters.map(({ y }) => ({ at: y, height: 44 })),
    plot.top + 8,
    plot.bottom - 8,
  );
  return letters.map((letter, index) => ({
    plan: letter.plan,
    x: edge,
    y: (middles[index] ?? 0) + 6,
    name: texts[index]?.name ?? '',
    text: texts[index]?.text ?? '',
    toX: letter.x,
    toY: letter.y,
  }));
}

interface StripRoom {
  readonly from: number;
  readonly width: number;
  readonly y: (n: number) => number;
  readonly most: number;
}

/** One strip per plan; all share one scale of widths, so that a wider strip means more futures. */
function stripsOf(clouds: readonly Cloud[], futures: readonly Futures[], { from, width, y, most }: StripRoom): Strip[] {
  const bins = bin()
    .domain([0, most])
    .thresholds(range(0, most, most / 26));
  const counted = clouds.map(({ plan }) => {
    const columns = futures.find((other) => other.plan === plan);
    const lost = columns ? [...columns.seedlings].filter((_, index) => (columns.yearProven[index] ?? 0) <= 0) : [];
    const total = Math.max(1, columns?.yearProven.length ?? 1);
    return bins(lost.map((n) => Math.min(n, most))).map((group) => ({ middle: ((group.x0 ?? 0) + (group.x1 ?? 0)) / 2, share: group.length / total }));
  });
  const widest = max(counted.flat(), ({ share }) => share) ?? 0;
  return clouds.map(({ plan, mark, noTree }, index) => ({
    plan,
    mark,
    x: from + width * (index + 0.5),
    text: cloudText.noTreeNumber(noTree),
    points: (counted[index] ?? []).map(({ middle, share }) => ({ y: y(middle), half: widest === 0 ? 0 : (share / widest) * (width / 2 - 3) })),
  }));
}
