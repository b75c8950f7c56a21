import type { Batch, Log, LoggedTree } from '../../model/log.ts';
import { freshId } from '../../model/plans.ts';
import { MOST } from '../edits.ts';
import type { ReadBatch } from './drafts.ts';

/** What an import would add; the log it was given stays as it is. */
export interface Additions {
  /** The log with everything added: one step of undo. */
  readonly log: Log;
  readonly newBatches: number;
  /** Batches that were there and get something more. */
  readonly grown: number;
  readonly newTrees: number;
  /** Rows of the file of which everything is there already. */
  readonly rowsThere: number;
  readonly rows: number;
  /** What is there already but otherwise; the log keeps its own. */
  readonly differs: readonly { readonly rows: readonly number[]; readonly batch: string; readonly tag: string | null }[];
  /** Batches for which the log has no room. */
  readonly noRoom: number;
}

/** Equal as JSON, whatever the order of the keys. */
function same(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null || Array.isArray(a) !== Array.isArray(b)) return false;
  const of = (value: object) => Object.entries(value).filter(([, each]) => each !== undefined);
  const [left, right] = [of(a), new Map(of(b))];
  return left.length === right.size && left.every(([key, value]) => right.has(key) && same(value, right.get(key)));
}

/** Those of a list that another has not, one for one. */
function beyond<T>(list: readonly T[], there: readonly T[]): T[] {
  const left = [...there];
  return list.filter((each) => {
    const at = left.findIndex((other) => same(other, each));
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
}

const isSame = ({ batch }: ReadBatch, there: Batch): boolean => there.year === batch.year && same(there.seed, batch.seed) && same(there.pollen, batch.pollen);

const season = (tree: LoggedTree): LoggedTree['seasons'] => tree.seasons;

/** A tree that is there under the tag: seasons and copies it has not are added, the rest stays as it is. */
function grownTree(there: LoggedTree, read: LoggedTree): { readonly tree: LoggedTree; readonly differs: boolean } {
  const years = new Set(season(there).map(({ year }) => year));
  const seasons = season(read).filter(({ year }) => !years.has(year));
  const copies = beyond(read.copies, there.copies);
  const clash = season(read).some((each) => years.has(each.year) && !season(there).some((other) => same(other, each)));
  const rest = ({ seasons: _s, copies: _c, ...tree }: LoggedTree) => tree;
  const differs = clash || !same(rest(there), rest(read));
  if (seasons.length === 0 && copies.length === 0) return { tree: there, differs };
  const joined = [...there.seasons, ...seasons].sort((a, b) => a.year - b.year);
  return { tree: { ...there, seasons: joined.slice(0, MOST.seasons), copies: [...there.copies, ...copies].slice(0, MOST.copies) }, differs };
}

interface Grown {
  readonly batch: Batch;
  readonly trees: number;
  readonly differs: readonly (string | null)[];
}

/** A batch with what a reading has beyond it. */
function grown(there: Batch, { batch: read }: ReadBatch): Grown {
  const differs: (string | null)[] = [];
  const trees = [...there.trees];
  // By tag: a log of thousands is not searched anew for each row.
  const places = new Map<string, number[]>();
  there.trees.forEach(({ tag }, t) => places.set(tag, [...(places.get(tag) ?? []), t]));
  const fresh = read.trees.filter((tree) => {
    const open = places.get(tree.tag) ?? [];
    const exact = open.find((t) => same(there.trees[t], tree)) ?? open[0];
    if (exact === undefined) return true;
    places.set(
      tree.tag,
      open.filter((t) => t !== exact),
    );
    const before = there.trees[exact];
    if (!before) return true;
    const after = grownTree(before, tree);
    trees[exact] = after.tree;
    if (after.differs) differs.push(tree.tag);
    return false;
  });
  const counts = beyond(read.counts, there.counts);
  const events = beyond(read.events, there.events);
  if (read.note !== undefined && read.note !== there.note) differs.push(null);
  const room = MOST.trees - trees.length;
  const changed = fresh.length > 0 || counts.length > 0 || events.length > 0 || trees.some((tree, t) => tree !== there.trees[t]);
  if (!changed) return { batch: there, trees: 0, differs };
  return {
    batch: {
      ...there,
      counts: [...there.counts, ...counts].slice(0, MOST.counts),
      events: [...there.events, ...events].slice(0, MOST.events),
      trees: [...trees, ...fresh.slice(0, room)],
    },
    trees: Math.min(fresh.length, room),
    differs,
  };
}

/**
 * Adds what was read to a log. A batch that is there (by id, else by name; with the same year and parents) gets the counts, events, trees and
 * seasons it has not; nothing that stands is changed or taken away. The same file a second time adds nothing.
 */
export function additionsTo(log: Log, read: readonly ReadBatch[], rows: number): Additions {
  const batches = [...log.batches];
  const ids = new Set(batches.map(({ id }) => id));
  const claimed = new Set<number>();
  const differs: Additions['differs'][number][] = [];
  const rowsThere = new Set<number>();
  const busy = new Set<number>();
  let [newBatches, newTrees, grownBatches, noRoom] = [0, 0, 0, 0];
  for (const each of read) {
    const byId = each.id === undefined ? -1 : batches.findIndex((batch) => batch.id === each.id && isSame(each, batch));
    const at =
      byId >= 0 ? byId : batches.findIndex((batch, b) => b < log.batches.length && !claimed.has(b) && batch.name === each.batch.name && isSame(each, batch));
    const there = batches[at];
    if (there) {
      claimed.add(at);
      const after = grown(there, each);
      batches[at] = after.batch;
      newTrees += after.trees;
      if (after.batch === there) for (const row of each.rows) rowsThere.add(row);
      else {
        grownBatches += 1;
        for (const row of each.rows) busy.add(row);
      }
      differs.push(...after.differs.map((tag) => ({ rows: each.rows, batch: there.name, tag })));
      continue;
    }
    for (const row of each.rows) busy.add(row);
    if (batches.length >= MOST.batches) {
      noRoom += 1;
      continue;
    }
    const id = each.id !== undefined && !ids.has(each.id) ? each.id : freshId(each.batch.name, ids);
    ids.add(id);
    batches.push({ id, ...each.batch });
    newBatches += 1;
    newTrees += each.batch.trees.length;
  }
  const there = [...rowsThere].filter((row) => !busy.has(row)).length;
  return {
    log: newBatches + grownBatches === 0 ? log : { ...log, batches },
    newBatches,
    grown: grownBatches,
    newTrees,
    rowsThere: there,
    rows,
    differs,
    noRoom,
  };
}
