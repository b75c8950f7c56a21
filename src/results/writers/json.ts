import type { Comparison, GenerationOutlook, Outlook, PlanOutlook, Spread, Stage, YearSpread } from '../outlook.ts';

export const RESULTS_FORMAT = 'orchard-odds results';
export const RESULTS_VERSION = 1;

/** One generation: years over the futures that reached it, and counts by stage. */
export type JsonStage = Pick<GenerationOutlook, 'id' | 'round' | 'name' | 'reached' | 'picked' | 'origin'> & {
  readonly [milestone in 'firstPollination' | 'firstFruit' | 'firstPick']: YearSpread;
} & Readonly<Record<Stage, Spread>>;

export type JsonPlan = Omit<PlanOutlook, 'generations'> & { readonly stages: readonly JsonStage[] };

/** The results as other programs read them. Shares 0–1, calendar years, null for never or not known. */
export interface ResultsDocument {
  readonly format: typeof RESULTS_FORMAT;
  readonly version: typeof RESULTS_VERSION;
  readonly engine: string;
  readonly word: string;
  readonly runs: number;
  /** True when the middle of every range and count was used. */
  readonly guessesAsTheyStand: boolean;
  /** SHA-256 of the programme as its file says; word, runs and guessesAsTheyStand above may have been set on the command line. */
  readonly programme: string;
  readonly title: string;
  readonly startYear: number;
  readonly lastYear: number;
  readonly plans: readonly JsonPlan[];
  readonly comparisons: readonly Comparison[];
}

function jsonPlan({ generations, ...plan }: PlanOutlook): JsonPlan {
  return {
    ...plan,
    stages: generations.map(({ id, round, name, reached, picked, firstPollination, firstFruit, firstPick, stages, origin }) => ({
      id,
      round,
      name,
      reached,
      picked,
      firstPollination,
      firstFruit,
      firstPick,
      ...stages,
      ...(origin ? { origin } : {}),
    })),
  };
}

/** Arranges an outlook as plain data for other programs. */
export function resultsDocument(
  outlook: Outlook,
  { title, guessesAsTheyStand }: { readonly title: string; readonly guessesAsTheyStand: boolean },
): ResultsDocument {
  const { engine, word, runs, programme, startYear, lastYear, plans, comparisons } = outlook;
  return {
    format: RESULTS_FORMAT,
    version: RESULTS_VERSION,
    engine,
    word,
    runs,
    guessesAsTheyStand,
    programme,
    title,
    startYear,
    lastYear,
    plans: plans.map(jsonPlan),
    comparisons,
  };
}

/** The document as readable JSON with a line end; the same bytes for the same results. */
export function resultsJson(document: ResultsDocument): string {
  return `${JSON.stringify(document, null, 2)}\n`;
}
