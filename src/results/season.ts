/** The jobs of one season of a plan: plain data, the same for the card, the calendar file and the command line. */

export const JOB_KINDS = ['cutScions', 'backup', 'sow', 'bags', 'pollinate', 'countSet', 'rescue', 'judge', 'gather', 'gatherOpen', 'layDown'] as const;
export type JobKind = (typeof JOB_KINDS)[number];

/** One job of a season. */
export interface Job {
  readonly kind: JobKind;
  /** 1–12. */
  readonly month: number;
  /** Calendar years after the year of the season's bloom: −1 for the winter before, 0, or 1 for what comes after the turn of the year. */
  readonly yearsOn: -1 | 0 | 1;
  /** Name of the generation, with its round where it has several. */
  readonly generation: string;
  /** Crosses as the trade writes them, seed parent first. */
  readonly crosses: readonly string[];
  /** Flowers a cross, scions a seedling, copies of each pick, or fruits to cut per tree; null where there is no number to say. */
  readonly amount: number | null;
  /** Name of the stock, for grafts. */
  readonly stock: string | null;
  /** Share of futures in which it has to be done. */
  readonly share: number;
}
