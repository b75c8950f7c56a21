import { COUNTED, type Batch, type CountedStage } from '../../model/log.ts';
import type { Problem } from '../../model/problem.ts';
import type { Programme } from '../../model/programme.ts';
import { fruitedIn, inSingles, latestCount, showedIn, standingIn } from '../../seasonlog/standing.ts';
import { crossWords, log as words, stages, unitWords } from '../../text/log.ts';

/** A number of the log, as it was entered; what it is counted in, or of how many. */
export interface Cell {
  readonly number: number;
  readonly small: string;
  /** The same in single flowers, seeds or trees, for a sum. */
  readonly singles: number;
}

/** A column of the log, for the stages that some batch has a number of. */
export interface Column {
  readonly key: string;
  readonly head: string;
  readonly cell: (batch: Batch) => Cell | null;
}

const plain = (number: number | null): Cell | null => (number === null ? null : { number, small: '', singles: number });

function stageCell(batch: Batch, stage: CountedStage): Cell | null {
  // Trees that are listed one by one say themselves how many stand and bear.
  if (batch.trees.length > 0 && stage === 'alive') return plain(standingIn(batch));
  if (batch.trees.length > 0 && stage === 'fruiting') return plain(fruitedIn(batch));
  const found = latestCount(batch, stage);
  return found && { number: found.count.count, small: unitWords(found.count), singles: inSingles(found.count) };
}

/** Columns in the order of the season, then one for each trait that was looked for. */
export function columnsOf({ log, traits }: Programme): readonly Column[] {
  const stageColumns = COUNTED.map((stage): Column => ({ key: stage, head: stages[stage].column, cell: (batch) => stageCell(batch, stage) }));
  const traitColumns = traits
    .filter(({ type }) => type === 'shown')
    .map(({ id, name }): Column => ({
      key: `trait ${id}`,
      head: name,
      cell: (batch) => {
        const seen = showedIn(batch, id);
        return seen && { number: seen.showed, small: words.table.of(seen.judged), singles: seen.showed };
      },
    }));
  return [...stageColumns, ...traitColumns].filter(({ cell }) => log.batches.some((batch) => cell(batch) !== null));
}

/** Batches of one year, with what befell any of them in it. */
export interface Year {
  readonly year: number;
  readonly batches: readonly { readonly batch: Batch; readonly at: number }[];
  readonly events: readonly Batch['events'][number][];
}

/** The log by year of bloom, the first year first; within a year as entered. */
export function yearsOf({ log }: Pick<Programme, 'log'>): readonly Year[] {
  const years = [...new Set(log.batches.map(({ year }) => year))].sort((a, b) => a - b);
  return years.map((year) => ({
    year,
    batches: log.batches.map((batch, at) => ({ batch, at })).filter(({ batch }) => batch.year === year),
    events: distinct(log.batches.flatMap(({ events }) => events.filter(({ when }) => when.startsWith(String(year))))),
  }));
}

/** The same frost on three batches is one frost. */
function distinct(events: readonly Batch['events'][number][]): readonly Batch['events'][number][] {
  return events.filter(({ what, when }, i) => events.findIndex((other) => other.what === what && other.when === when) === i);
}

/** Sums over batches of the same parents, where there are several; what is kept apart is left out. */
export interface Sum {
  readonly cross: string;
  readonly cells: readonly (number | null)[];
  readonly without: boolean;
}

export function sumsOf(programme: Programme, columns: readonly Column[]): readonly Sum[] {
  const groups = new Map<string, Batch[]>();
  for (const batch of programme.log.batches) {
    const key = JSON.stringify([batch.seed, batch.pollen]);
    groups.set(key, [...(groups.get(key) ?? []), batch]);
  }
  return [...groups.values()].flatMap((batches): Sum[] => {
    const [first] = batches;
    if (!first || batches.length < 2) return [];
    const used = batches.filter(({ apart }) => !apart);
    const cells = columns.map(({ cell }) => {
      const all = used.flatMap((batch) => cell(batch)?.singles ?? []);
      return all.length === 0 ? null : all.reduce((sum, number) => sum + number, 0);
    });
    return [{ cross: crossWords(first, programme), cells, without: used.length < batches.length }];
  });
}

/** What was lost to events, by what it was lost to, over the whole log. */
export function lostTo({ log }: Pick<Programme, 'log'>): ReadonlyMap<Batch['events'][number]['what'], number> {
  const lost = new Map<Batch['events'][number]['what'], number>();
  for (const { events } of log.batches) for (const event of events) if (event.lost > 0) lost.set(event.what, (lost.get(event.what) ?? 0) + event.lost);
  return lost;
}

/** Stages of a batch whose counts do not add up. */
export function flaggedStages(batch: Batch, at: number, problems: readonly Problem[]): ReadonlySet<string> {
  return new Set(
    problems.flatMap(({ path }) => {
      const [section, , place, key, count] = path;
      return section === 'log' && place === at && key === 'counts' && typeof count === 'number' ? (batch.counts[count]?.stage ?? []) : [];
    }),
  );
}

/** Flags of a batch’s counts and of the batch itself, in words; those of its trees stand beside the trees. */
export function flagsOf(at: number, problems: readonly Problem[]): readonly string[] {
  return problems
    .filter(({ path }) => path[0] === 'log' && path[2] === at && path[3] === 'counts')
    .map(({ path, message }) => words.table.flagged(path[5] === 'when' ? `A day ${message}` : message));
}

/** True if a parent’s kind would have to be said before the counts teach anything. */
export const kindUnsaid = (at: number, problems: readonly Problem[]): boolean =>
  problems.some(({ path }) => path[0] === 'log' && path[2] === at && (path[3] === 'seedKind' || path[3] === 'pollenKind'));

/** How many trees of a batch carry a flag. */
export const flaggedTrees = (at: number, problems: readonly Problem[]): number =>
  new Set(problems.filter(({ path }) => path[0] === 'log' && path[2] === at && path[3] === 'trees').map(({ path }) => path[4])).size;
