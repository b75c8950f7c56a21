import type { Batch, Count, CountedStage } from '../../model/log.ts';
import type { Programme } from '../../model/programme.ts';
import type { LogEvent } from '../edits.ts';
import { flagOf, kept, trimmed, unguarded, type Cell } from './cells/cell.ts';
import { dateCell, yearCell } from './cells/date.ts';
import { countCell, numberCell, wholeCell } from './cells/number.ts';
import { eventCell, yesCell } from './cells/words.ts';
import { datedCount } from './drafts.ts';
import { cutCross, entryNamed, pollenOf, seedOf, type Pollen, type Seed } from './parents.ts';
import { stageOf, type Role } from './roles.ts';
import { kindFor, type KindChoices, type Row } from './row.ts';

const LONGEST_PARENT = 60;

/** Seed parent and pollen of a row, from their own columns or from a cross. */
export function parentsOf(row: Row, programme: Pick<Programme, 'trees'>): { readonly seed: Seed; readonly pollen: Pollen } {
  const cut = row.read('cross', (raw): Cell<readonly [string, string]> => {
    const parts = cutCross(raw);
    if (parts)
      return parts.some((part) => part.length > LONGEST_PARENT)
        ? { value: parts, flag: flagOf('read', 'tooLong', raw, String(LONGEST_PARENT)) }
        : { value: parts };
    return trimmed(raw) === '' ? {} : kept('notKnown', raw);
  });
  const parent = (role: 'seed' | 'pollen', part: string | undefined): string =>
    row.read(role, (raw): Cell<string> => {
      const text = trimmed(unguarded(raw));
      const flag = text.length > LONGEST_PARENT + ' [tag]'.length ? flagOf('read', 'tooLong', raw, String(LONGEST_PARENT)) : undefined;
      const value = role === 'seed' && seedOf(raw, programme) === 'unknown' && !/^(|\?+|-+|–|unknown|not known)$/i.test(text) ? undefined : raw;
      if (value === undefined) return kept('notKnown', raw);
      return flag
        ? { value, flag }
        : raw === text || text === ''
          ? { value }
          : { value, flag: flagOf('read', raw.startsWith("'") ? 'apostrophe' : 'spaces', raw, text) };
    }) ??
    part ??
    '';
  return { seed: seedOf(parent('seed', cut?.[0]), programme), pollen: pollenOf(parent('pollen', cut?.[1]), programme) };
}

/** The year of bloom; where no cell says it, the year of a date, else undefined. */
export function yearOf(row: Row): number | undefined {
  const said = row.read('year', (raw, { order, season }) => yearCell(raw, order, season, true));
  if (said !== undefined) return said;
  for (const role of ['countWhen:flowers', 'when'] as const) {
    const { value } = yearCell(row.raw(role), null, 'first');
    if (value !== undefined) return value;
  }
  return undefined;
}

type About = Omit<Batch, 'id' | 'name' | 'year' | 'counts' | 'events' | 'trees' | 'note'>;

/** Everything of a batch that is said once. */
export function aboutBatch(row: Row, parents: { readonly seed: Seed; readonly pollen: Pollen }, programme: Programme, kinds: KindChoices): About {
  const kindOf = (which: 'seed' | 'pollen'): string | undefined => {
    const role: Role = `${which}Kind`;
    if (row.columns.some((column) => column.role === role)) return row.entry(role, (text) => entryNamed(programme.kinds, text));
    return kindFor(parents[which], which, kinds, programme);
  };
  const [seedKind, pollenKind] = [kindOf('seed'), kindOf('pollen')];
  const routes = programme.crosses.flatMap((cross) => cross.routes);
  const generations = programme.plans.flatMap((plan) => plan.generations);
  const route = row.entry('route', (text) => routes.find(({ id }) => id === text));
  const generation = row.entry('generation', (text) => generations.find(({ id }) => id === text));
  const grafting = graftingOf(row, programme);
  const apart = row.read('apart', yesCell) ?? false;
  return {
    ...parents,
    ...(seedKind === undefined ? {} : { seedKind }),
    ...(pollenKind === undefined ? {} : { pollenKind }),
    ...(route === undefined ? {} : { route }),
    ...(generation === undefined ? {} : { generation }),
    ...(grafting ? { grafting } : {}),
    apart,
  };
}

const WHO = [
  [/^(weak|weak ones)$/i, 'weak'],
  [/^(every|all|every seedling)$/i, 'every'],
  [/^(some|some of each)$/i, 'some'],
] as const;

/** How the seedlings were grafted; only where all three parts are said, else they go into the note. */
function graftingOf(row: Row, programme: Programme): Batch['grafting'] {
  if (!row.has('graftedWho') && !row.has('graftedMonth') && !row.has('graftedOnto')) return undefined;
  const who = row.read('graftedWho', (raw) => {
    const found = WHO.find(([words]) => words.test(trimmed(unguarded(raw))))?.[1];
    return found ? { value: found } : kept('notKnown', raw);
  });
  const month = row.read('graftedMonth', (raw, { mark }) => {
    const cell = numberCell(raw, mark);
    return cell.value !== undefined && (cell.value < 0.5 || cell.value > 240) ? kept('outside', raw, '0.5', '240') : cell;
  });
  const stock = row.entry('graftedOnto', (text) => entryNamed(programme.stocks, text));
  if (who !== undefined && month !== undefined && stock !== undefined) return { who, month, stock };
  row.columns.forEach(({ role }, c) => {
    if ((role === 'graftedWho' && who !== undefined) || (role === 'graftedMonth' && month !== undefined) || (role === 'graftedOnto' && stock !== undefined))
      row.keep(c);
  });
  return undefined;
}

/**
 * Counts of a row in the order of its columns, with their dates and notes.
 * @param year of bloom, where the file says one: a day of bloom without a year is of it
 */
export function countsOf(row: Row, year: number | undefined): Count[] {
  const found: { stage: CountedStage; counted: Pick<Count, 'count' | 'unit'> }[] = [];
  row.each('count', (c, of) => {
    const stage = stageOf(of);
    const counted = row.cellAt(c, (raw, { mark, unit }) => countCell(raw, mark, unit));
    if (stage && counted) found.push({ stage, counted });
  });
  const dated = datedCount(found.map(({ stage }) => stage));
  const inBloom = (stage: CountedStage | undefined): number | undefined => (stage === 'flowers' ? year : undefined);
  const shared = row.has('when') ? row.read('when', (raw, { order }) => dateCell(raw, order, inBloom(dated))) : undefined;
  if (shared !== undefined && dated === undefined)
    row.columns.forEach(({ role }, c) => {
      if (role === 'when') row.keep(c);
    });
  const first = new Set<CountedStage>();
  const counts = found.map(({ stage, counted }): Count => {
    // A stage that stands in two columns has its date and note once.
    const again = first.has(stage);
    first.add(stage);
    const own = again ? undefined : row.read(`countWhen:${stage}`, (raw, { order }) => dateCell(raw, order, inBloom(stage)));
    const when = own ?? (stage === dated && !again ? shared : undefined);
    const note = again ? '' : row.note(`countNote:${stage}`);
    return { stage, ...counted, ...(when === undefined ? {} : { when }), ...(note === '' ? {} : { note }) };
  });
  // Dates and notes of a stage that was not counted are kept all the same.
  for (const family of ['countWhen', 'countNote'])
    row.each(family, (c, of) => {
      const stage = stageOf(of);
      if (stage && !first.has(stage)) row.keep(c);
    });
  return counts;
}

/** What befell the batch. An event needs a day, month or year: without one it goes into the note. */
export function eventOf(row: Row, year: number | undefined): LogEvent | undefined {
  if (!row.has('event')) {
    for (const family of ['eventWhen', 'eventLost', 'eventNote']) row.each(family, (c) => row.keep(c));
    return undefined;
  }
  const what = row.read('event', eventCell);
  const when = row.read('eventWhen', (raw, { order }) => dateCell(raw, order)) ?? (year === undefined ? undefined : String(year));
  const lost = row.read('eventLost', (raw, { mark }) => wholeCell(raw, mark, 0, 1e7)) ?? 0;
  const note = row.note('eventNote');
  if (what === undefined || when === undefined) {
    for (const family of ['event', 'eventLost', 'eventNote']) row.each(family, (c) => row.keep(c));
    return undefined;
  }
  return { what, when, lost, ...(note === '' ? {} : { note }) };
}
