import type { Programme } from '../../src/model/programme.ts';
import { firstUnnoted, forecastFrom, notedFrom } from '../../src/seasonlog/as-of.ts';
import { standsToday } from '../../src/seasonlog/today.ts';
import { headless, leftOutLines } from '../../src/text/today.ts';

/** The programme forecast from what stands, and what has to be said of it; a sentence where nothing stands. */
export function fromToday(programme: Programme): { readonly programme: Programme; readonly notes: readonly string[] } | string {
  const { log, startYear, lastYear, plans } = programme;
  const unnoted = firstUnnoted(log.batches);
  if (unnoted === null) return headless.empty;
  const year = log.forecastFrom ?? Math.min(lastYear, Math.max(startYear, unnoted));
  const left = standsToday(programme, year).plans.map(({ plan, notPlaced }) => ({ mark: plans.find(({ id }) => id === plan)?.mark ?? '', notPlaced }));
  return { programme: forecastFrom(programme, year), notes: leftOutLines(left, notedFrom(log.batches, year), year) };
}
