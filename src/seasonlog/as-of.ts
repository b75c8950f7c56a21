import type { Batch, LoggedTree } from '../model/log.ts';
import type { Programme } from '../model/programme.ts';

/**
 * A batch as the log knew it before the spring of a year: what is dated in that year or later is left out. Null: it was not pollinated yet.
 * Own derivation. A count without a date, and a status without a year, hold from the start.
 */
export function asOf(batch: Batch, year: number): Batch | null {
  if (batch.year >= year) return null;
  return {
    ...batch,
    counts: batch.counts.filter(({ when }) => when === undefined || yearOf(when) < year),
    trees: batch.trees.map((tree) => treeAsOf(tree, year)),
  };
}

export const yearOf = (when: string): number => Number(when.slice(0, 4));

function treeAsOf(tree: LoggedTree, year: number): LoggedTree {
  const { firstFruit, statusSince, lookedUntil, ...rest } = tree;
  const later = statusSince !== undefined && statusSince >= year;
  return {
    ...rest,
    status: later && tree.status !== 'labelLost' ? 'alive' : tree.status,
    seasons: tree.seasons.filter((season) => season.year < year),
    ...(firstFruit !== undefined && firstFruit < year ? { firstFruit } : {}),
    ...(statusSince !== undefined && !later ? { statusSince } : {}),
    ...(lookedUntil === undefined ? {} : { lookedUntil: Math.min(lookedUntil, year - 1) }),
  };
}

/** Years of which the log says something: blooms, dated counts and events, fruit, seasons, looks and changes of status. */
function yearsNoted(batch: Batch): number[] {
  return [
    batch.year,
    ...[...batch.counts, ...batch.events].flatMap(({ when }) => (when === undefined ? [] : [yearOf(when)])),
    ...batch.trees.flatMap(({ firstFruit, statusSince, lookedUntil, seasons }) => [
      ...[firstFruit, statusSince, lookedUntil].flatMap((year) => year ?? []),
      ...seasons.map(({ year }) => year),
    ]),
  ];
}

/** The first spring of which the log says nothing yet: the year after the last that it speaks of. Null for an empty log. */
export function firstUnnoted(batches: readonly Batch[]): number | null {
  const years = batches.flatMap(yearsNoted);
  return years.length === 0 ? null : Math.max(...years) + 1;
}

/** How many batches, dated counts, seasons and changes speak of that year or later. */
export function notedFrom(batches: readonly Batch[], year: number): number {
  return batches.flatMap(yearsNoted).filter((noted) => noted >= year).length;
}

/** The same programme, forecast from a spring; null: from its first, as if nothing stood. */
export function forecastFrom(programme: Programme, year: number | null): Programme {
  const { forecastFrom: _before, ...log } = programme.log;
  return { ...programme, log: year === null ? log : { ...log, forecastFrom: year } };
}
