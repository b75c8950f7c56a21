import type { Programme } from '../model/programme.ts';
import { freshId } from '../model/plans.ts';
import type { Interval } from '../results/outlook.ts';
import { clearlyDifferent, pairedDifference } from '../statistics/compare.ts';
import { breakEvens, type BreakEven } from './break-even.ts';
import type { Futures } from './futures.ts';
import { withChoice, type RescueSite } from './rescue-sites.ts';
import { runOne } from './steps.ts';
import { withGeneration, withHalfDeadBy, withStock } from './variants.ts';

/** Columns and rows of the finished map; the quick look has one cell for each block of 3 × 3 and the same middles. */
const CELLS = 15;
const BLOCK = 3;
const LOOK_FUTURES = 100;
const MAP_FUTURES = 300;
/** Months by which half of the weak are dead: the map reaches so far unless the guesses reach further. */
const SHORTEST = 1;
const LONGEST = 96;

export interface MapCell {
  /** Chance with grafting minus chance on own roots, on the same futures. */
  readonly difference: Interval;
  /** Null: no clear difference. */
  readonly wins: 'graft' | 'own' | null;
  readonly futures: number;
}

/** Which choice wins, over “half are dead by” and take, all else as the programme says. */
export interface GraftMap {
  /** Ends of the axis of months, and middles of its columns: evenly spaced in the logarithm. */
  readonly from: number;
  readonly to: number;
  readonly halfLives: readonly number[];
  /** Middles of the rows, from low to high, of an axis from 0 to 1. */
  readonly takes: readonly number[];
  /** Row by row: cells[take · halfLives.length + halfLife]. A cell not yet run at all has its neighbour's figures. */
  readonly cells: readonly MapCell[];
  /** One for each column. Coarse or half-done maps have it as well. */
  readonly line: readonly BreakEven[];
}

/** Ends of the months axis: wide enough for what the guesses allow. */
export function monthsAxis(halfLives: readonly number[]): readonly [number, number] {
  const finite = halfLives.filter((months) => Number.isFinite(months) && months > 0);
  return [Math.min(SHORTEST, ...finite), Math.min(1200, Math.max(LONGEST, ...finite))];
}

/** What the graft gains in each future, cell by cell; grows as futures are run. */
export class MapRun {
  private readonly halfLives: readonly number[];
  private readonly takes = Array.from({ length: CELLS }, (_, i) => (i + 0.5) / CELLS);
  private readonly own: Int8Array[] = Array.from({ length: CELLS }, () => new Int8Array());
  private readonly grafted: Int8Array[] = Array.from({ length: CELLS * CELLS }, () => new Int8Array());

  /**
   * @param programme with the plan alone in it
   * @param axis ends of the months axis
   */
  constructor(
    private readonly programme: Programme,
    private readonly site: RescueSite,
    private readonly axis: readonly [number, number],
    private readonly futures: Futures,
  ) {
    const [from, to] = axis;
    this.halfLives = Array.from({ length: CELLS }, (_, i) => from * (to / from) ** ((i + 0.5) / CELLS));
  }

  /** A quick look: a cell for each block. */
  async look(): Promise<GraftMap> {
    const middles = Array.from({ length: CELLS / BLOCK }, (_, i) => i * BLOCK + (BLOCK - 1) / 2);
    await Promise.all(middles.map((column) => this.extend(column, middles, LOOK_FUTURES)));
    return this.map(middles);
  }

  /** All cells, first with as many futures as the look had, then with all. Call after `look`. */
  async refine(report: (map: GraftMap) => void): Promise<GraftMap> {
    const all = Array.from({ length: CELLS }, (_, i) => i);
    for (const upTo of [LOOK_FUTURES, MAP_FUTURES]) {
      // Three columns at once keep the threads busy, and the picture sharpens from left to right.
      for (let column = 0; column < CELLS; column += BLOCK) {
        await Promise.all(all.slice(column, column + BLOCK).map((c) => this.extend(c, all, upTo)));
        if (column + BLOCK < CELLS || upTo < MAP_FUTURES) report(this.map(all));
      }
    }
    return this.map(all);
  }

  private async extend(column: number, rows: readonly number[], upTo: number): Promise<void> {
    const months = this.halfLives[column] ?? SHORTEST;
    const weak = this.site.entries.reduce((edited, { id }) => withHalfDeadBy(edited, id, months), this.programme);
    await Promise.all([
      this.add(this.own, column, withChoice(weak, this.site, 'none'), upTo),
      ...rows.map((row) => this.add(this.grafted, row * CELLS + column, graftedAt(weak, this.site, this.takes[row] ?? 0), upTo)),
    ]);
  }

  private async add(proven: Int8Array[], at: number, programme: Programme, upTo: number): Promise<void> {
    const before = proven[at] ?? new Int8Array();
    if (before.length >= upTo) return;
    const years = (await runOne(this.futures, { programme, plan: 0 }, before.length, upTo - before.length)).run('yearProven');
    const after = new Int8Array(upTo);
    after.set(before);
    after.set(
      Int8Array.from(years, (year) => (year < 0 ? 0 : 1)),
      before.length,
    );
    proven[at] = after;
  }

  /** The map of these columns and rows; a cell without futures of its own shows the middle of its block. */
  private map(shown: readonly number[]): GraftMap {
    const columns = shown.map((column) => shown.map((row) => this.gains(row, column)));
    const columnsAtLeast = columns.map((column) => Math.min(...column.map(({ length }) => length)));
    const least = Math.min(...columnsAtLeast);
    const line = breakEvens(
      shown.map((row) => this.takes[row] ?? 0),
      columns.map((column) => column.map((gains) => gains.subarray(0, least))),
      this.programme.shuffleWord,
    );
    const [from, to] = this.axis;
    return {
      from,
      to,
      halfLives: shown.map((column) => this.halfLives[column] ?? 0),
      takes: shown.map((row) => this.takes[row] ?? 0),
      cells: shown.flatMap((_, r) => shown.map((__, c) => cellOf(columns[c]?.[r] ?? new Int8Array()))),
      line,
    };
  }

  private gains(row: number, column: number): Int8Array {
    const middle = (at: number) => at - (at % BLOCK) + (BLOCK - 1) / 2;
    const run = this.grafted[row * CELLS + column];
    const [r, c] = run && run.length > 0 ? [row, column] : [middle(row), middle(column)];
    const own = this.own[c] ?? new Int8Array();
    return (this.grafted[r * CELLS + c] ?? new Int8Array()).map((proven, i) => proven - (own[i] ?? 0));
  }
}

function cellOf(gains: Int8Array): MapCell {
  let onlyGraft = 0;
  let onlyOwn = 0;
  for (const gain of gains) {
    if (gain > 0) onlyGraft += 1;
    if (gain < 0) onlyOwn += 1;
  }
  const difference = pairedDifference(onlyGraft, onlyOwn, gains.length);
  return { difference, wins: !clearlyDifferent(difference) ? null : difference.value > 0 ? 'graft' : 'own', futures: gains.length };
}

/** Grafts at this site with a stated take at any age. Where the plan backs picks up on the same stock, those keep a stock of their own. */
function graftedAt(programme: Programme, site: RescueSite, take: number): Programme {
  const who = site.stands === 'none' ? site.rescue.who : site.stands;
  const chosen = withChoice(programme, site, who);
  const shared = chosen.plans.some(({ generations }) =>
    generations.some(({ id, rescue, backup }) => backup?.stock === site.rescue.stock || (id !== site.generation.id && rescue?.stock === site.rescue.stock)),
  );
  const taking = { takeTender: take, takeRipe: take };
  if (!shared) return withStock(chosen, site.rescue.stock, (stock) => ({ ...stock, ...taking }));
  const stock = chosen.stocks.find(({ id }) => id === site.rescue.stock);
  if (!stock) return chosen;
  const id = freshId(
    `${stock.id} of the map`,
    chosen.stocks.map((entry) => entry.id),
  );
  return withGeneration({ ...chosen, stocks: [...chosen.stocks, { ...stock, ...taking, id }] }, site.plan, site.generation.id, (generation) => ({
    ...generation,
    rescue: { ...site.rescue, who, stock: id },
  }));
}

/** Of points, the shares that lie where grafting wins, where own roots do, and where there is no clear difference: by the nearest cell. */
export function sharesOf(
  { from, to, halfLives, takes, cells }: GraftMap,
  points: readonly { readonly halfLife: number; readonly take: number }[],
): {
  readonly graft: number;
  readonly own: number;
  readonly neither: number;
} {
  const inside = (share: number, of: number) => Math.min(of - 1, Math.max(0, Math.floor(share * of)));
  const wins = points.map(({ halfLife, take }) => {
    const column = inside(Math.log(halfLife / from) / Math.log(to / from), halfLives.length);
    return cells[inside(take, takes.length) * halfLives.length + column]?.wins ?? null;
  });
  const share = (which: MapCell['wins']) => wins.filter((one) => one === which).length / wins.length;
  return { graft: share('graft'), own: share('own'), neither: share(null) };
}
