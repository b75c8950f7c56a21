import type { GenerationOutlook, PlanOutlook } from '../../results/outlook.ts';
import { laneText } from '../../text/charts.ts';
import type { Calendar, Tick } from '../calendar.ts';
import type { Measure } from '../measure.ts';
import { bough, type Bough } from './bough.ts';
import { chainLines, chainSpans, type ChainLine, type Span } from './chain.ts';

/** Heights inside a row, px. A bough of all futures is `full` thick. */
interface RowSizes {
  readonly full: number;
  /** Above the bough. */
  readonly above: number;
  /** From the bough's lower edge to the row's end, with and without a chain of counts. */
  readonly below: number;
  readonly chain: number;
  /** Extra height above a bough that carries the year of a proven tree. */
  readonly year: number;
  readonly text: number;
}

const SIZES: Readonly<Record<'wide' | 'compact' | 'phone', RowSizes>> = {
  wide: { full: 38, above: 6, below: 12, chain: 26, year: 10, text: 16.5 },
  compact: { full: 22, above: 5, below: 7, chain: 0, year: 17, text: 16.5 },
  phone: { full: 28, above: 27, below: 8, chain: 24, year: 0, text: 16 },
};

/** Left end of the row labels and of the first chain, px. */
const LABEL_LEFT = { phone: 0, middle: 36, wide: 36 } as const;
const LINE_HEIGHT = 21;
/** What stands beside a row's name on a phone, with space to the next word, and half of a written year, px. */
const LABEL_BESIDE = 30;
const YEAR_HALF = 20;
/** Height of the line of a proven tree, and of its words above it on a phone, px. */
const PROVEN_LINE = 32;
const PROVEN_WORDS = 28;
/** Extra space above an open row and above the row after its settings. */
const OPEN_SPACE = 10;
const RING = 7;
const DOT = 9;

interface Mark {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

export interface RowLayout {
  readonly id: string;
  readonly round: number;
  readonly top: number;
  readonly height: number;
  /** Middle line of the bough. */
  readonly y: number;
  readonly open: boolean;
  readonly bough: Bough | null;
  readonly ring: Mark | null;
  readonly dot: Dot | null;
  readonly chain: readonly (ChainLine & { readonly y: number })[];
  readonly textSize: number;
}

/** A dot for half, a bar for 8 in 10, and the year in figures. */
type Dot = Mark & { readonly from: number; readonly to: number; readonly year: number; readonly yearX: number; readonly yearY: number };

interface Proven {
  readonly height: number;
  readonly dot: Dot;
  readonly label: { readonly x: number; readonly y: number; readonly text: string };
}

export interface Descent {
  readonly from: number;
  readonly to: number;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly width: number;
}

export interface LaneLayout {
  readonly width: number;
  readonly height: number;
  readonly rows: readonly RowLayout[];
  readonly lines: readonly Descent[];
  /** Where the year of a proven tree stands under all rows, because it belongs to no single one. */
  readonly proven: Proven | null;
  readonly ticks: readonly Tick[];
  readonly ticksFrom: number;
  readonly horizon: number;
}

export interface LaneOptions {
  readonly startYear: number;
  readonly calendar: Calendar;
  readonly measure: Measure;
  /** Height of what stands above the first row, px. */
  readonly headHeight: number;
  /** The row that is open, as an index; its settings take `formHeight` px under it. */
  readonly open?: number | null;
  readonly formHeight?: number;
  /** Small boughs without counts, for pages about something else. */
  readonly compact?: boolean;
  /** Least height of head and first row together, so that the chance beside them has room. */
  readonly leastTop?: number;
}

/** Names of a plan's rows, with the round where a generation is repeated. */
export function rowNames(generations: readonly GenerationOutlook[]): string[] {
  return generations.map(({ id, name, round }) => laneText.round(name, round, generations.filter((other) => other.id === id).length));
}

/** Lays out the picture of one plan: rows, boughs, lines of descent, marks and counts. */
export function laneLayout(plan: PlanOutlook, options: LaneOptions): LaneLayout {
  const { calendar, headHeight, open = null, formHeight = 0, leastTop = 0 } = options;
  const names = rowNames(plan.generations);
  const used = new Set(plan.generations.map(({ grownFrom }) => grownFrom));
  let top = headHeight;
  const rows = plan.generations.map((generation, index) => {
    const row = rowLayout(generation, {
      ...options,
      index,
      name: names[index] ?? '',
      used: used.has(index),
      plan,
      top,
      last: index === plan.generations.length - 1,
    });
    const height = index === 0 ? Math.max(row.height, leastTop - headHeight) : row.height;
    top += height + (open === index ? formHeight : 0);
    return { ...row, height };
  });
  const proven = ownLine(plan) ? provenLine(plan, top, options) : null;
  return {
    width: calendar.width,
    height: top + (proven?.height ?? 0),
    rows,
    proven,
    lines: descents(plan.generations, rows, calendar),
    ticks: calendar.ticks,
    ticksFrom: headHeight,
    horizon: calendar.horizon,
  };
}

interface RowOptions extends LaneOptions {
  readonly plan: PlanOutlook;
  readonly index: number;
  readonly name: string;
  readonly used: boolean;
  readonly last: boolean;
  readonly top: number;
}

function rowLayout(generation: GenerationOutlook, options: RowOptions): RowLayout {
  const { calendar, measure, index, top, used, last, plan, startYear } = options;
  const open = options.open === index;
  const small = options.compact === true && !open;
  const phone = calendar.room === 'phone';
  const sizes = SIZES[phone ? 'phone' : small ? 'compact' : 'wide'];
  const proven = last && !ownLine(plan) ? plan.whenItWorks : null;
  const labelWidth = phone ? measure(options.name, sizes.text, true) : 0;
  // On a phone the name of the row stands where the year would: if they meet, the year gets a line of its own.
  const yearX = proven?.p50 == null ? null : Math.min(calendar.x(proven.p50), calendar.horizon - 22);
  const yearLine = yearX !== null && phone && labelWidth + LABEL_BESIDE > yearX - YEAR_HALF ? LINE_HEIGHT : 0;
  const apart = open || (index > 0 && options.open === index - 1) ? OPEN_SPACE : 0;
  const above = sizes.above + apart + (proven?.p50 == null ? 0 : sizes.year + yearLine);
  // On a phone an open row is framed: its words keep off the frame.
  const inset = phone && open ? 9 : 0;
  const least = LABEL_LEFT[calendar.room] + inset;
  const y = top + above + sizes.full / 2;
  const shape = bough(generation, startYear, calendar, sizes.full);
  const ringX = used && generation.firstPick.p50 !== null ? calendar.x(generation.firstPick.p50) : null;
  const spans: Span[] =
    last && generation.reached > 0 && plan.whenItWorks.p50 === null
      ? [...chainSpans(generation), { text: laneText.noneProven, kind: 'reached' }]
      : chainSpans(generation);
  const lines =
    shape === null
      ? chainLines([{ text: laneText.never, kind: 'reached' }], {
          start: Math.max(least, calendar.left),
          least,
          limit: calendar.horizon - 6,
          crossing: null,
          size: sizes.text,
          measure,
        })
      : sizes.chain === 0
        ? []
        : chainLines(spans, {
            start: index === 0 ? least : Math.max(least, begins(generation, shape, calendar)),
            least,
            limit: calendar.horizon - (phone ? 6 : 10),
            crossing: ringX,
            size: sizes.text,
            measure,
          });
  // Where there is no bough, its words stand in its place.
  const chainTop = shape === null ? y + 6 : y + sizes.full / 2 + 19;
  const extra = Math.max(0, ...lines.map(({ line }) => line)) * LINE_HEIGHT;
  return {
    id: generation.id,
    round: generation.round,
    top,
    height: above + sizes.full + sizes.chain + extra + sizes.below,
    y,
    open,
    bough: shape,
    ring: ringX === null ? null : { x: ringX, y, r: RING },
    dot:
      proven?.p50 == null || yearX === null
        ? null
        : {
            x: calendar.x(proven.p50),
            y,
            r: small || phone ? DOT - 1 : DOT,
            from: calendar.x(proven.p10 ?? proven.p50),
            to: Math.min(calendar.x(proven.p90 ?? options.calendar.lastYear), calendar.horizon),
            year: proven.p50,
            yearX,
            yearY: y - sizes.full / 2 - 7,
          },
    chain: lines.map((line) => ({ ...line, y: chainTop + line.line * LINE_HEIGHT })),
    textSize: sizes.text,
  };
}

/** A tree may be proven in an earlier row too: then half may be there before half have picked in the last row, and the dot cannot stand on it. */
function ownLine({ whenItWorks, generations }: PlanOutlook): boolean {
  const pick = generations.at(-1)?.firstPick.p50 ?? null;
  return whenItWorks.p50 !== null && generations.length > 1 && (pick === null || whenItWorks.p50 < pick);
}

function provenLine({ whenItWorks: { p10, p50, p90 } }: PlanOutlook, top: number, { calendar, compact }: LaneOptions): Proven | null {
  if (p50 === null) return null;
  const phone = calendar.room === 'phone';
  const words = phone ? PROVEN_WORDS : 0;
  const y = top + words + PROVEN_LINE / 2 - 4;
  const from = calendar.x(p10 ?? p50);
  const to = Math.min(calendar.x(p90 ?? calendar.lastYear), calendar.horizon);
  const after = to + 8 + YEAR_HALF;
  const yearX = after + YEAR_HALF <= calendar.horizon - 4 ? after : from - 8 - YEAR_HALF;
  return {
    height: PROVEN_LINE + words,
    dot: { x: calendar.x(p50), y, r: compact === true || phone ? DOT - 1 : DOT, from, to, year: p50, yearX, yearY: y + 6 },
    label: { x: LABEL_LEFT[calendar.room], y: phone ? top + 20 : y + 6, text: laneText.provenAny },
  };
}

/** Where a bough is seen to begin: before a tenth of the futures have started it is a wisp. */
const begins = ({ firstPollination }: GenerationOutlook, shape: Bough, { x }: Calendar) =>
  firstPollination.p10 === null ? shape.from : Math.max(shape.from, x(firstPollination.p10) - 4);

/** Widest line of descent, px, for a pick that every future takes; the narrowest that is still seen. */
const WIDEST = 5;
const NARROWEST = 1.6;

function descents(generations: readonly GenerationOutlook[], rows: readonly RowLayout[], calendar: Calendar): Descent[] {
  return generations.flatMap((generation, to) => {
    const from = generation.grownFrom;
    const parent = from === null ? undefined : rows[from];
    const child = rows[to];
    if (from === null || !parent?.ring || !child?.bough) return [];
    const middle = generation.firstPollination.p50 === null ? child.bough.from : calendar.x(generation.firstPollination.p50);
    const x2 = Math.min(Math.max(middle + 9, parent.ring.x + 30), child.bough.to);
    return [{ from, to, x1: parent.ring.x, y1: parent.y, x2, y2: child.y, width: Math.max(NARROWEST, WIDEST * generation.reached) }];
  });
}
