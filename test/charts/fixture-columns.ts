/** A FIXTURE: what each year asks of each future, with invented numbers laid evenly along smooth curves, to go with fixture.ts. */
import { Columns } from '../../src/results/columns.ts';
import type { PlanOutlook } from '../../src/results/outlook.ts';
import { FIXTURE, LAST, START } from './fixture.ts';

const YEARS = LAST - START + 1;
const DRAWN = 1000;

/** Fractions that fill 0–1 evenly: the golden-ratio sequence. */
const even = (index: number, shift: number) => (index * 0.6180339887498949 + shift) % 1;

/** A future is at work in a generation as long as its own fraction is under the share of futures that are. */
function columnsOf({ generations, busiestHours, mostPlaces }: PlanOutlook): Columns {
  const columns = new Columns({ generations: 0, rules: 0, facts: 0, measured: 0, years: YEARS }, DRAWN);
  for (let run = 0; run < DRAWN; run++) {
    const level = (p10: number, p90: number) => p10 + (p90 - p10) * even(run * 7, 0.37);
    const [hours, places] = [level(busiestHours.p10, busiestHours.p90), level(mostPlaces.p10, mostPlaces.p90)];
    generations.forEach(({ going, firstPollination, stages }, g) => {
      const part = g === generations.length - 1 ? 1 : 0.35;
      const begins = Math.round((firstPollination.p10 ?? START) + even(run * 3, 0.2) * ((firstPollination.p90 ?? LAST) - (firstPollination.p10 ?? START)));
      for (let y = 0; y < YEARS; y++) {
        if (even(run * 11, 0.53) >= (going[y] ?? 0)) continue;
        columns.year('hours', y)[run] = Math.max(columns.year('hours', y)[run] ?? 0, hours * part);
        columns.year('places', y)[run] = Math.max(columns.year('places', y)[run] ?? 0, places * part);
        if (START + y >= begins && START + y < begins + 2) columns.year('flowers', y)[run] = stages.flowers.p50;
      }
    });
  }
  return columns;
}

export const FIXTURE_COLUMNS: readonly Columns[] = FIXTURE.plans.map(columnsOf);
