import type { Batch, Count, Log, LoggedTree } from '../model/log.ts';
import { freshId } from '../model/plans.ts';

/*
 * Edits of the season log: plain data in, plain data out. Nothing is changed in place, nothing is mended, and no edit takes a tree away.
 * An edit that finds no batch, no tree or no room left returns the very log it was given.
 */

export type LogEvent = Batch['events'][number];
export type Season = LoggedTree['seasons'][number];
export type Copy = LoggedTree['copies'][number];
export type Status = LoggedTree['status'];
/** A batch before it has an id and anything that befell it. */
export type NewBatch = Pick<Batch, 'name' | 'year' | 'seed' | 'pollen'> & Partial<Pick<Batch, 'seedKind' | 'pollenKind' | 'generation' | 'note'>>;

/** How much a log holds; the schema’s own bounds. */
export const MOST = { batches: 400, counts: 200, events: 50, trees: 2000, seasons: 60, copies: 20 } as const;

const has = (log: Log, id: string): boolean => log.batches.some((batch) => batch.id === id);

/** Returns the log with one batch changed; the same log if there is no such batch or the change left it as it was. */
function inBatch(log: Log, id: string, change: (batch: Batch) => Batch): Log {
  const at = log.batches.findIndex((batch) => batch.id === id);
  const before = log.batches[at];
  if (!before) return log;
  const after = change(before);
  return after === before ? log : { ...log, batches: log.batches.with(at, after) };
}

/** Returns the log with one tree changed, by its place in the batch: tags may stand on two trees. */
function inTree(log: Log, id: string, place: number, change: (tree: LoggedTree) => LoggedTree): Log {
  return inBatch(log, id, (batch) => {
    const before = batch.trees[place];
    if (!before) return batch;
    const after = change(before);
    return after === before ? batch : { ...batch, trees: batch.trees.with(place, after) };
  });
}

const without = <T>(list: readonly T[], place: number): T[] => list.filter((_, i) => i !== place);

/**
 * Puts a batch at the end, under an id that no other has.
 * @returns the log and the id; the same log and null if it is full
 */
export function addBatch(log: Log, batch: NewBatch, trees: readonly LoggedTree[] = []): { readonly log: Log; readonly id: string | null } {
  if (log.batches.length >= MOST.batches) return { log, id: null };
  const id = freshId(
    batch.name,
    log.batches.map((each) => each.id),
  );
  const entry: Batch = { ...batch, id, apart: false, counts: [], events: [], trees: trees.slice(0, MOST.trees) };
  return { log: { ...log, batches: [...log.batches, entry] }, id };
}

/** Notes a count at the end of a batch’s counts: the total so far, in the unit it was counted in. */
export const noteCount = (log: Log, id: string, count: Count): Log =>
  inBatch(log, id, (batch) => (batch.counts.length < MOST.counts ? { ...batch, counts: [...batch.counts, count] } : batch));

/** Takes a mistaken count out. */
export const takeOutCount = (log: Log, id: string, place: number): Log =>
  inBatch(log, id, (batch) => (batch.counts[place] ? { ...batch, counts: without(batch.counts, place) } : batch));

/** Notes what befell a batch; it stays apart from its rates. */
export const noteEvent = (log: Log, id: string, event: LogEvent): Log =>
  inBatch(log, id, (batch) => (batch.events.length < MOST.events ? { ...batch, events: [...batch.events, event] } : batch));

export const takeOutEvent = (log: Log, id: string, place: number): Log =>
  inBatch(log, id, (batch) => (batch.events[place] ? { ...batch, events: without(batch.events, place) } : batch));

/** Says how the seedlings of a batch were grafted; undefined: they were not. */
export const setGrafting = (log: Log, id: string, grafting: Batch['grafting']): Log =>
  inBatch(log, id, ({ grafting: _, ...batch }) => (grafting ? { ...batch, grafting } : batch));

/** Adds trees after those that stand in the batch; as many as there is room for. */
export const addTrees = (log: Log, id: string, trees: readonly LoggedTree[]): Log =>
  inBatch(log, id, (batch) => {
    const room = MOST.trees - batch.trees.length;
    return trees.length === 0 || room <= 0 ? batch : { ...batch, trees: [...batch.trees, ...trees.slice(0, room)] };
  });

/** @param since year; left out where it is not known, and for a tree that is alive */
export const setStatus = (log: Log, id: string, place: number, status: Status, since?: number): Log =>
  inTree(log, id, place, ({ statusSince: _, ...tree }) => ({ ...tree, status, ...(since === undefined || status === 'alive' ? {} : { statusSince: since }) }));

/** @param year first year with fruit; undefined takes it out again */
export const setFirstFruit = (log: Log, id: string, place: number, year: number | undefined): Log =>
  inTree(log, id, place, ({ firstFruit: _, ...tree }) => ({ ...tree, ...(year === undefined ? {} : { firstFruit: year }) }));

/** True for a tree that stands and has not borne, and that nobody has looked at for fruit since a year. */
const unlooked = ({ status, firstFruit, lookedUntil }: LoggedTree, year: number): boolean =>
  (status === 'alive' || status === 'labelLost') && firstFruit === undefined && (lookedUntil ?? 0) < year;

/** Says of all trees of a batch that stand and have not borne that they were looked at in a year, without fruit. Trees still waiting are evidence too. */
export const lookedInVain = (log: Log, id: string, year: number): Log =>
  inBatch(log, id, (batch) =>
    batch.trees.some((tree) => unlooked(tree, year))
      ? { ...batch, trees: batch.trees.map((tree) => (unlooked(tree, year) ? { ...tree, lookedUntil: year } : tree)) }
      : batch,
  );

/** Notes one season’s look at a tree. What was noted of other traits in that season stays; of the same trait it is replaced. */
export const noteSeason = (log: Log, id: string, place: number, season: Season): Log =>
  inTree(log, id, place, (tree) => {
    const at = tree.seasons.findIndex(({ year }) => year === season.year);
    const before = tree.seasons[at];
    if (before) {
      const joined = { ...before, ...season, seen: { ...before.seen, ...season.seen }, values: { ...before.values, ...season.values } };
      return { ...tree, seasons: tree.seasons.with(at, joined) };
    }
    if (tree.seasons.length >= MOST.seasons) return tree;
    return { ...tree, seasons: [...tree.seasons, season].sort((a, b) => a.year - b.year) };
  });

export const takeOutSeason = (log: Log, id: string, place: number, year: number): Log =>
  inTree(log, id, place, (tree) =>
    tree.seasons.some((season) => season.year === year) ? { ...tree, seasons: tree.seasons.filter((season) => season.year !== year) } : tree,
  );

export const setPicked = (log: Log, id: string, place: number, picked: boolean): Log =>
  inTree(log, id, place, (tree) => (tree.picked === picked ? tree : { ...tree, picked }));

export const addCopy = (log: Log, id: string, place: number, copy: Copy): Log =>
  inTree(log, id, place, (tree) => (tree.copies.length < MOST.copies ? { ...tree, copies: [...tree.copies, copy] } : tree));

export const takeOutCopy = (log: Log, id: string, place: number, copy: number): Log =>
  inTree(log, id, place, (tree) => (tree.copies[copy] ? { ...tree, copies: without(tree.copies, copy) } : tree));

/** A tree of which nothing is known but its tag and where it stands. */
export function newTree(tag: string, place?: LoggedTree['place']): LoggedTree {
  return { tag, status: 'alive', weak: false, seasons: [], picked: false, copies: [], ...(place ? { place } : {}) };
}

/**
 * Counts a tag on by its last number, as tags in a row go: “2031-1-9”, “2031-1-10”; “001”, “002” keep their noughts; a tag without a number
 * gets one after a hyphen from the second tree on.
 * @param by how far, 0 or more
 */
export function tagAfter(first: string, by: number): string {
  if (by === 0) return first;
  const last = /^(.*?)(\d+)(\D*)$/s.exec(first);
  if (!last) return `${first}-${String(by + 1)}`;
  const [, before = '', digits = '', after = ''] = last;
  return `${before}${String(BigInt(digits) + BigInt(by)).padStart(digits.length, '0')}${after}`;
}

/** What a row of new trees is told from. */
export interface RowOfTrees {
  readonly number: number;
  readonly firstTag: string;
  readonly block: string;
  readonly row: string;
  /** Place of the first tree in its row; counted on like a tag. Empty: not said. */
  readonly firstPlace: string;
}

/** Makes a row of trees, their tags and places counted on from the first. */
export function rowOfTrees({ number, firstTag, block, row, firstPlace }: RowOfTrees): LoggedTree[] {
  const placed = [block, row, firstPlace].some((part) => part !== '');
  return Array.from({ length: number }, (_, by) =>
    newTree(tagAfter(firstTag, by), placed ? { block, row, tree: firstPlace === '' ? '' : tagAfter(firstPlace, by) } : undefined),
  );
}

/** The tag that would follow those of a batch; “year-1” for its first tree. */
export function nextTag({ trees, year }: Batch): string {
  const last = trees.at(-1);
  return last ? tagAfter(last.tag, 1) : `${String(year)}-1`;
}

/** True while a batch has room for so many more trees. */
export const hasRoomFor = (log: Log, id: string, trees: number): boolean =>
  has(log, id) && log.batches.every((batch) => batch.id !== id || batch.trees.length + trees <= MOST.trees);
