import type { Batch, Count, CountedStage, LoggedTree } from '../../model/log.ts';
import type { Flag } from './cells/cell.ts';
import { MOST, type LogEvent, type Season } from '../edits.ts';

/** A tree while its rows are read. */
export interface TreeDraft {
  readonly tree: Omit<LoggedTree, 'seasons' | 'copies' | 'note'>;
  readonly seasons: Season[];
  readonly copies: LoggedTree['copies'];
  /** Parts of its note, each on a line. */
  readonly notes: string[];
  /** By role, the cell that was taken, to compare further rows with. */
  readonly said: Map<string, string>;
}

/** A batch while its rows are read. */
export interface BatchDraft {
  readonly key: string;
  /** The id that the file gives it, if it gives one. */
  readonly id?: string;
  /** Rows of the table, by place. */
  readonly rows: number[];
  readonly named: boolean;
  /** The year that the file gives; undefined where it was assumed. */
  readonly yearSaid: number | undefined;
  readonly batch: Omit<Batch, 'id' | 'counts' | 'events' | 'trees' | 'note'>;
  readonly counts: Count[];
  readonly events: LogEvent[];
  readonly trees: TreeDraft[];
  readonly treeOf: Map<string, TreeDraft>;
  readonly notes: string[];
  readonly said: Map<string, string>;
}

/** A batch that was read, before it has an id in the log. */
export interface ReadBatch {
  readonly id?: string;
  readonly batch: Omit<Batch, 'id'>;
  readonly rows: readonly number[];
}

/** Flags by row and column. */
export type Flags = Map<string, Flag>;
export const flagKey = (row: number, column: number): string => `${String(row)},${String(column)}`;

/** How long a note may be; the schema’s own bound. */
const NOTE = 2000;

const noteLength = (parts: readonly string[]): number => parts.filter((part) => part !== '').join('\n').length;

/** Whether parts are more than a note holds. */
export const overfull = (parts: readonly string[]): boolean => noteLength(parts) > NOTE;

/** The most letters that each part may have for all to fit; parts that are shorter stay whole. */
function fittingLength(parts: readonly string[]): number {
  let left = NOTE - (parts.length - 1);
  const lengths = parts.map((part) => part.length).sort((a, b) => a - b);
  for (const [i, length] of lengths.entries()) {
    const each = Math.floor(left / (lengths.length - i));
    if (length > each) return each;
    left -= length;
  }
  return NOTE;
}

/** Parts of a note joined; where they are more than a note holds, the longest give way, and show it. */
export function noteOf(parts: readonly string[]): { readonly note?: string } {
  const all = parts.filter((part) => part !== '');
  const most = overfull(all) ? fittingLength(all) : NOTE;
  const note = all
    .map((part) => (part.length > most ? `${part.slice(0, Math.max(0, most - 1))}…` : part))
    .join('\n')
    .slice(0, NOTE);
  return note === '' ? {} : { note };
}

const finishedTree = ({ tree, seasons, copies, notes }: TreeDraft): LoggedTree => ({
  ...tree,
  seasons: seasons.slice(0, MOST.seasons),
  copies: copies.slice(0, MOST.copies),
  ...noteOf(notes),
});

/** Counts, events, seasons and copies beyond what a batch and a tree hold. */
export const beyondRoom = ({ counts, events, trees }: BatchDraft): number =>
  Math.max(0, counts.length - MOST.counts) +
  Math.max(0, events.length - MOST.events) +
  trees.reduce((sum, { seasons, copies }) => sum + Math.max(0, seasons.length - MOST.seasons) + Math.max(0, copies.length - MOST.copies), 0);

/** A draft as one batch, or as several where it has more trees than one batch holds. */
export function finished(draft: BatchDraft, name: string): ReadBatch[] {
  const { id, rows, batch, counts, events, trees, notes } = draft;
  const parts = Array.from({ length: Math.max(1, Math.ceil(trees.length / MOST.trees)) }, (_, i) => trees.slice(i * MOST.trees, (i + 1) * MOST.trees));
  return parts.map((part, i) => ({
    ...(id !== undefined && i === 0 ? { id } : {}),
    rows,
    batch: {
      ...batch,
      name: i === 0 ? name : `${name.slice(0, 74)} (${String(i + 1)})`,
      counts: i === 0 ? counts.slice(0, MOST.counts) : [],
      events: i === 0 ? events.slice(0, MOST.events) : [],
      trees: part.map(finishedTree),
      ...(i === 0 ? noteOf(notes) : {}),
    },
  }));
}

/** Which count of a row a date without a stage belongs to: that of the flowers, or the only one. */
export function datedCount(stages: readonly CountedStage[]): CountedStage | undefined {
  if (stages.includes('flowers')) return 'flowers';
  return stages.length === 1 ? stages[0] : undefined;
}
