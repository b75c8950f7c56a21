import { STAGES } from './outlook.ts';

/** Whole numbers kept for each run of a plan. Years are indices from the start year, −1 for never. */
export const RUN_COLUMNS = [
  'yearProven',
  'yearStood',
  'proven',
  'trulyGood',
  'failure',
  'flowers',
  'fruits',
  'seedlings',
  'planted',
  'fruiting',
  'judgings',
  'grafts',
  'weakSaved',
  'tests',
  'noRoom',
] as const;
export type RunColumn = (typeof RUN_COLUMNS)[number];

/** Amounts kept for each run of a plan. */
export const AMOUNT_COLUMNS = ['treeYears', 'mostPlaces', 'busiestHours', 'totalHours', 'busiestMoney', 'totalMoney'] as const;
export type AmountColumn = (typeof AMOUNT_COLUMNS)[number];

/** Whole numbers kept for each run and generation: milestones, then counts by stage. */
export const MILESTONES = ['firstPollination', 'firstSeedling', 'firstFruit', 'firstPick', 'lastWork'] as const;
export const GENERATION_COLUMNS = [...MILESTONES, ...STAGES] as const;
export type GenerationColumn = (typeof GENERATION_COLUMNS)[number];

/** Amounts kept for each run and calendar year. Flowers are those pollinated by hand. */
export const YEAR_COLUMNS = ['hours', 'places', 'flowers'] as const;
export type YearColumn = (typeof YEAR_COLUMNS)[number];

/** How many columns a plan has. */
export interface Shape {
  readonly generations: number;
  readonly rules: number;
  readonly facts: number;
  readonly measured: number;
  readonly years: number;
  /** Founding kinds whose share of the genome is followed; left out where none is. */
  readonly origins?: number;
}

/**
 * Results of the runs `from` … `from + runs − 1` of one plan, column by column: quantiles and paired comparisons stay exact.
 * Order of ints: RUN_COLUMNS, the rule drawn for each shown trait, each yes/no fact, then GENERATION_COLUMNS of each
 * generation. Order of amounts: AMOUNT_COLUMNS, then seen minus true value summed over proven trees, by measured trait; where origin is followed,
 * for each generation the mean over its picks of each founding kind's share and of the length around the selected gene, NaN without picks.
 * Order of byYear: YEAR_COLUMNS, each by year; 0 in the years after a future has ended.
 */
export class Columns {
  readonly ints: Int32Array;
  readonly amounts: Float64Array;
  readonly byYear: Float32Array;

  constructor(
    readonly shape: Shape,
    readonly runs: number,
    data?: { readonly ints: Int32Array; readonly amounts: Float64Array; readonly byYear: Float32Array },
  ) {
    this.ints = data?.ints ?? new Int32Array(runs * intColumns(shape));
    this.amounts = data?.amounts ?? new Float64Array(runs * (AMOUNT_COLUMNS.length + shape.measured + originColumns(shape) * shape.generations));
    this.byYear = data?.byYear ?? new Float32Array(runs * YEAR_COLUMNS.length * shape.years);
  }

  private int(column: number): Int32Array {
    return this.ints.subarray(column * this.runs, (column + 1) * this.runs);
  }

  run(name: RunColumn): Int32Array {
    return this.int(RUN_COLUMNS.indexOf(name));
  }

  rule(shownTrait: number): Int32Array {
    return this.int(RUN_COLUMNS.length + shownTrait);
  }

  fact(fact: number): Int32Array {
    return this.int(RUN_COLUMNS.length + this.shape.rules + fact);
  }

  generation(g: number, name: GenerationColumn): Int32Array {
    return this.int(RUN_COLUMNS.length + this.shape.rules + this.shape.facts + g * GENERATION_COLUMNS.length + GENERATION_COLUMNS.indexOf(name));
  }

  amount(name: AmountColumn): Float64Array {
    return this.amountAt(AMOUNT_COLUMNS.indexOf(name));
  }

  shortfall(measuredTrait: number): Float64Array {
    return this.amountAt(AMOUNT_COLUMNS.length + measuredTrait);
  }

  /** Mean share of a founding kind in the genomes of a generation's picks, 0–1; NaN without picks. */
  originShare(g: number, kind: number): Float64Array {
    return this.amountAt(AMOUNT_COLUMNS.length + this.shape.measured + g * originColumns(this.shape) + kind);
  }

  /** Mean length (cM) of what came with the selected gene in a generation's picks; NaN without picks. */
  aroundGene(g: number): Float64Array {
    return this.originShare(g, this.shape.origins ?? 0);
  }

  private amountAt(column: number): Float64Array {
    return this.amounts.subarray(column * this.runs, (column + 1) * this.runs);
  }

  /** A calendar year's amounts, one a run. */
  year(name: YearColumn, year: number): Float32Array {
    const column = YEAR_COLUMNS.indexOf(name) * this.shape.years + year;
    return this.byYear.subarray(column * this.runs, (column + 1) * this.runs);
  }

  /** Copies the runs of a chunk to their place, run `at` onwards. */
  place(chunk: Columns, at: number): void {
    for (const name of ['ints', 'amounts', 'byYear'] as const) {
      const from = chunk[name];
      const to = this[name];
      for (let c = 0; c < to.length / this.runs; c += 1) to.set(from.subarray(c * chunk.runs, (c + 1) * chunk.runs), c * this.runs + at);
    }
  }

  /** The first `runs` runs as columns of their own. */
  first(runs: number): Columns {
    if (runs === this.runs) return this;
    const part = new Columns(this.shape, runs);
    for (const name of ['ints', 'amounts', 'byYear'] as const) {
      const from = this[name];
      const to = part[name];
      for (let c = 0; c < to.length / runs; c += 1) to.set(from.subarray(c * this.runs, c * this.runs + runs), c * runs);
    }
    return part;
  }
}

/** Columns of one generation: its founding kinds, and the length around the gene. */
export const originColumns = ({ origins }: Pick<Shape, 'origins'>): number => (origins === undefined ? 0 : origins + 1);

function intColumns({ rules, facts, generations }: Shape): number {
  return RUN_COLUMNS.length + rules + facts + generations * GENERATION_COLUMNS.length;
}
