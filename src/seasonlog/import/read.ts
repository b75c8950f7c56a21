import type { Programme } from '../../model/programme.ts';
import { flagOf } from './cells/cell.ts';
import type { Column } from './columns.ts';
import { beyondRoom, finished, flagKey, overfull, type BatchDraft, type Flags, type ReadBatch, type TreeDraft } from './drafts.ts';
import { isOwn } from './headers.ts';
import type { Pollen, Seed } from './parents.ts';
import { aboutBatch, countsOf, eventOf, parentsOf, yearOf } from './read-batch.ts';
import { copyOf, plainCell, seasonsOf, treeOf, TREE_ROLES } from './read-tree.ts';
import type { Role } from './roles.ts';
import { Row, type KindChoices } from './row.ts';
import type { Table } from './table.ts';

/** What is decided for the whole table. */
export interface ReadOptions {
  /** The year of bloom of rows that give none. */
  readonly yearForRest: number;
  readonly kinds: KindChoices;
  /** A name for a batch that the file does not name. */
  readonly nameOf: (parents: { readonly seed: Seed; readonly pollen: Pollen }, year: number) => string;
}

/** One row per tree where a column holds tags; else one row per batch. */
export const isOfTrees = (columns: readonly Column[]): boolean => columns.some(({ role }) => role === 'tag');

const BATCH_ROLES: readonly Role[] = ['seedKind', 'pollenKind', 'route', 'generation', 'graftedWho', 'graftedMonth', 'graftedOnto', 'apart'];
const ID = /^[a-z0-9][a-z0-9-]{0,63}$/;

interface Reading {
  readonly table: Table;
  readonly columns: readonly Column[];
  readonly programme: Programme;
  readonly options: ReadOptions;
  readonly flags: Flags;
  readonly drafts: Map<string, BatchDraft>;
  /** The table is one that this project wrote. */
  readonly own: boolean;
  /** The batch of the row before. */
  last?: BatchDraft;
  /** Rows that gave no year. */
  withoutYear: number;
}

/** Notes of a further row that says something else than the first one did; nothing is overwritten. */
function compare(row: Row, said: ReadonlyMap<string, string>, roles: readonly Role[], columns: readonly Column[]): void {
  columns.forEach(({ role }, c) => {
    if (!roles.includes(role)) return;
    const text = plainCell(row.raw(role));
    if (text === '' || text === said.get(role)) return;
    row.flag(role, flagOf('kept', 'differs', row.raw(role), said.get(role) ?? ''));
    row.keep(c);
  });
}

const saidOf = (row: Row, roles: readonly Role[]): Map<string, string> => new Map(roles.map((role) => [role, plainCell(row.raw(role))]));

function batchOf(reading: Reading, row: Row, at: number, trees: boolean): BatchDraft {
  const { drafts, programme, options } = reading;
  const id = plainCell(row.raw('id'));
  const known = id === '' ? undefined : drafts.get(`id ${id}`);
  if (known) {
    known.rows.push(at);
    compare(row, known.said, [...BATCH_ROLES, 'year', 'seed', 'pollen', 'cross', 'batch'], reading.columns);
    return known;
  }
  const parents = parentsOf(row, programme);
  const yearSaid = yearOf(row);
  const year = yearSaid ?? options.yearForRest;
  if (yearSaid === undefined) {
    reading.withoutYear += 1;
    if (reading.columns.some(({ role }) => role === 'year') && !row.has('year')) row.flag('year', flagOf('read', 'yearAssumed', row.raw('year'), String(year)));
  }
  const name = row.text('batch', 80);
  const same = trees || name !== undefined;
  const key = id !== '' ? `id ${id}` : same ? JSON.stringify([name ?? '', year, parents]) : `row ${String(at)}`;
  const before = drafts.get(key);
  if (before) {
    before.rows.push(at);
    compare(row, before.said, BATCH_ROLES, reading.columns);
    return before;
  }
  const draft: BatchDraft = {
    key,
    ...(ID.test(id) ? { id } : {}),
    rows: [at],
    named: name !== undefined,
    yearSaid,
    batch: { name: name ?? options.nameOf(parents, year), year, ...aboutBatch(row, parents, programme, options.kinds) },
    counts: [],
    events: [],
    trees: [],
    treeOf: new Map(),
    notes: [],
    said: saidOf(row, [...BATCH_ROLES, 'year', 'seed', 'pollen', 'cross', 'batch']),
  };
  // An id that is none is kept as what it was called.
  if (id !== '' && draft.id === undefined) draft.notes.push(`${reading.columns.find(({ role }) => role === 'id')?.header ?? ''}: ${id}`);
  drafts.set(key, draft);
  return draft;
}

/** The tree of a row: a further row of one that is known, or a new one. */
function treeFor(reading: Reading, draft: BatchDraft, row: Row, at: number, several: boolean): TreeDraft {
  const number = plainCell(row.raw('number'));
  const tag = plainCell(row.raw('tag'));
  const key = number !== '' ? `number ${number}` : several && tag !== '' ? `tag ${tag}` : `row ${String(at)}`;
  const before = draft.treeOf.get(key);
  if (before) {
    compare(row, before.said, TREE_ROLES, reading.columns);
    return before;
  }
  const tree: TreeDraft = {
    tree: treeOf(row, reading.table.lines[at] ?? at + 1, reading.programme),
    seasons: [],
    copies: [],
    notes: [],
    said: saidOf(row, TREE_ROLES),
  };
  tree.notes.push(row.note('note'));
  draft.treeOf.set(key, tree);
  draft.trees.push(tree);
  return tree;
}

/** Rows of one tree belong together where the table has a season or a copy on each. */
const severalRows = (columns: readonly Column[]): boolean => columns.some(({ role }) => role === 'season' || role === 'copyWhere');

const SUM = /^((grand|sub) ?-?)?(totals?|sums?|altogether)\W*$/i;

/** A row of sums under a table is no batch: it would be counted twice. It stands in the note of the batch above it. */
function sumsOf(reading: Reading, row: Row, at: number): boolean {
  const cells = reading.table.rows[at] ?? [];
  const c = cells.findIndex((cell) => plainCell(cell) !== '');
  const above = reading.last;
  if (!above || reading.own || !SUM.test(plainCell(cells[c] ?? ''))) return false;
  reading.flags.set(flagKey(at, c), flagOf('kept', 'sumRow', cells[c] ?? ''));
  cells.forEach((_, each) => {
    row.keep(each);
  });
  above.rows.push(at);
  above.notes.push(row.notes.join('; '));
  return true;
}

function readRow(reading: Reading, at: number, trees: boolean): void {
  const row = new Row(at, reading.table.rows[at] ?? [], reading.columns, reading.flags);
  if (sumsOf(reading, row, at)) return;
  const draft = batchOf(reading, row, at, trees);
  reading.last = draft;
  draft.counts.push(...countsOf(row, draft.yearSaid));
  const event = eventOf(row, draft.batch.year);
  if (event) draft.events.push(event);
  const tree = trees ? treeFor(reading, draft, row, at, severalRows(reading.columns)) : undefined;
  const [seasons, copy] = tree ? [seasonsOf(row), copyOf(row)] : [[], undefined];
  tree?.seasons.push(...seasons);
  if (copy) tree?.copies.push(copy);
  reading.columns.forEach(({ role }, c) => {
    if (role === 'keep') row.keep(c);
    // Of a tree, but the table has no tags: a batch cannot hold it.
    if (
      !tree &&
      (TREE_ROLES.includes(role) || /^(seen|value):/.test(role) || ['season', 'seasonNote', 'number', 'copyWhere'].includes(role)) &&
      role !== 'note'
    )
      row.keep(c);
  });
  const batchNote = [row.note('batchNote'), tree ? '' : row.note('note')].filter((part) => part !== '' && !draft.notes.includes(part));
  draft.notes.push(...batchNote);
  // What no field can hold goes to the tree of the row, or to the batch.
  for (const note of row.notes) (tree?.notes ?? draft.notes).push(note);
}

/** Batches as they were read, and what is uncertain of which cell. */
export interface ReadTable {
  readonly batches: readonly ReadBatch[];
  readonly flags: Flags;
  readonly withoutYear: number;
  /** Notes that would have been longer than a note may be. */
  readonly cutNotes: number;
  /** Counts, events, seasons and copies for which a batch or a tree has no room. */
  readonly noRoom: number;
  readonly ofTrees: boolean;
}

/** Reads every row of a table. Nothing is refused: what fits no field stands in the note of its tree or batch as “heading: cell”. */
export function readTable(table: Table, columns: readonly Column[], programme: Programme, options: ReadOptions): ReadTable {
  const reading: Reading = { table, columns, programme, options, flags: new Map(), drafts: new Map(), own: isOwn(table.headers), withoutYear: 0 };
  const trees = isOfTrees(columns);
  table.rows.forEach((_, at) => {
    readRow(reading, at, trees);
  });
  const [first] = reading.drafts.values();
  first?.notes.push(...table.above);
  const drafts = [...reading.drafts.values()];
  const cutNotes = drafts.flatMap((draft) => [draft.notes, ...draft.trees.map(({ notes }) => notes)]).filter(overfull).length;
  const noRoom = drafts.reduce((sum, draft) => sum + beyondRoom(draft), 0);
  return { batches: named(drafts), flags: reading.flags, withoutYear: reading.withoutYear, cutNotes, noRoom, ofTrees: trees };
}

/** Names of batches that the file does not name are told apart by a number, so that a second import finds each again. */
function named(drafts: readonly BatchDraft[]): ReadBatch[] {
  const used = new Map<string, number>();
  return drafts.flatMap((draft) => {
    if (draft.named) return finished(draft, draft.batch.name);
    const name = draft.batch.name.slice(0, 74);
    const times = (used.get(name) ?? 0) + 1;
    used.set(name, times);
    return finished(draft, times === 1 ? name : `${name} (${String(times)})`);
  });
}
