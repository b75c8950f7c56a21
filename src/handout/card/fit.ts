import type { Job } from '../../results/season.ts';
import { cardText, jobWords, MONTH_NAMES } from '../../text/card.ts';
import { sansMeasure } from '../widths.ts';

/** A cross of the season as it stands on the card. */
export interface CrossLine {
  /** Begin of the numbers of its seedlings' tags. */
  readonly tag: string;
  readonly cross: string;
  /** Boxes to tick, each for ten flowers; 0 where nothing is pollinated by hand. */
  readonly boxes: number;
}

/** More boxes do not fit two lines. */
const MOST_BOXES = 40;
const FLOWERS_A_BOX = 10;

/** Crosses that are made or gathered in a season, numbered in the order of their jobs; a cross that two jobs name comes once. */
export function crossesOn(jobs: readonly Job[], year: number): readonly CrossLine[] {
  const boxes = new Map<string, number>();
  for (const { kind, crosses, amount } of jobs) {
    if (kind !== 'pollinate' && kind !== 'gatherOpen') continue;
    const each = kind === 'pollinate' ? Math.min(MOST_BOXES, Math.max(1, Math.ceil((amount ?? 0) / FLOWERS_A_BOX))) : 0;
    for (const cross of crosses) boxes.set(cross, Math.max(each, boxes.get(cross) ?? 0));
  }
  return [...boxes].map(([cross, count], at) => ({ tag: `${String(year)}-${String(at + 1)}-…`, cross, boxes: count }));
}

/** Millimetres of the papers (ISO 216), and of the margin on each side. */
export const PAPERS = { A6: { width: 105, height: 148, margin: 6 }, A5: { width: 148, height: 210, margin: 9 } } as const;

/** Sizes of letters to choose from, points: the largest that fits is taken. On A6 the least is still as large as a seed catalogue's. */
const SIZES = { A6: [9, 8.5, 8, 7.5, 7, 6.5], A5: [11.5, 11, 10.5, 10, 9.5, 9, 8.5, 8] } as const;

/** Heights and widths of the card's parts, in letters of its size; src/handout/card/card-style.ts draws by them. */
export const EM = {
  line: 1.28,
  row: 0.26,
  title: 1.9,
  heading: 1.75,
  box: 1.1,
  boxGap: 0.28,
  blank: 1.85,
  ruled: 1.85,
  small: 0.82,
  often: 1.6,
  gap: 0.55,
} as const;
/** Lines to write on that are left at least. */
const LEAST_RULED = 3;
const POINTS_A_MM = 72 / 25.4;

/** What fits the paper. */
export interface FittedCard {
  /** Size of letters, points. */
  readonly points: number;
  readonly jobs: readonly Job[];
  /** Jobs that are left out: those that come up in the fewest futures. */
  readonly left: number;
}

/** Chooses the size of letters and, where even the least is too large, leaves out what is least likely to be needed. */
export function fittedCard(jobs: readonly Job[], year: number, paper: keyof typeof PAPERS): FittedCard {
  const sizes = SIZES[paper];
  const least = sizes.at(-1) ?? 8;
  const crosses = crossesOn(jobs, year);
  const order = [...jobs].sort((a, b) => b.share - a.share);
  for (let count = jobs.length; count >= Math.min(1, jobs.length); count -= 1) {
    const kept = new Set(order.slice(0, count));
    const shown = jobs.filter((job) => kept.has(job));
    const points = sizes.find((size) => heightOf(shown, crosses, size, paper) <= roomOf(paper).height);
    if (points !== undefined) return { points, jobs: shown, left: jobs.length - count };
  }
  return { points: least, jobs: order.slice(0, 1), left: Math.max(0, jobs.length - 1) };
}

/** Room inside the margins, points. */
const roomOf = (paper: keyof typeof PAPERS) => {
  const { width, height, margin } = PAPERS[paper];
  return { width: (width - 2 * margin) * POINTS_A_MM, height: (height - 2 * margin) * POINTS_A_MM };
};

/** Lines that a text takes. */
function linesOf(text: string, room: number, size: number): number {
  return text.split(' ').reduce(
    ({ lines, used }, word) => {
      const wide = sansMeasure(`${word} `, size);
      return used + wide > room && used > 0 ? { lines: lines + 1, used: wide } : { lines, used: used + wide };
    },
    { lines: 1, used: 0 },
  ).lines;
}

/** Widest name of a month. */
const LONGEST_MONTH = MONTH_NAMES.reduce((long, name) => (name.length > long.length ? name : long), '');
/** Letters of the reader's device may be wider than ours. */
const SAFE = 0.96;

function heightOf(jobs: readonly Job[], crosses: readonly CrossLine[], size: number, paper: keyof typeof PAPERS): number {
  const width = roomOf(paper).width * SAFE;
  const what = width - sansMeasure(LONGEST_MONTH, size, true) - (EM.box + EM.often + 2.2) * size;
  const ofJobs = jobs.reduce((sum, job) => sum + linesOf(jobWords(job), what, size) * EM.line + EM.row, 0);
  const aLine = Math.max(1, Math.floor(width / ((EM.box + EM.boxGap) * size)));
  const ofCrosses = crosses.reduce(
    (sum, { tag, cross, boxes }) => sum + linesOf(`${tag} ${cross}`, width, size) * EM.line + Math.ceil(boxes / aLine) * 1.4 + EM.blank + 0.3,
    0,
  );
  const small = (text: string) => linesOf(text, width, EM.small * size) * EM.line * EM.small;
  const parts = [
    EM.title + EM.line + EM.gap,
    jobs.length === 0 ? EM.line : EM.heading + ofJobs,
    crosses.length === 0 ? 0 : EM.heading + small(cardText.tagsHow) + ofCrosses,
    EM.heading + EM.line + LEAST_RULED * EM.ruled,
    EM.gap + small(cardText.care) + EM.line,
  ];
  return parts.reduce((sum, part) => sum + part, 0) * size;
}
