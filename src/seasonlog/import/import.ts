import type { Log } from '../../model/log.ts';
import type { Programme } from '../../model/programme.ts';
import { additionsTo, type Additions } from './additions.ts';
import { columnsOf, type Column, type ColumnChoice } from './columns.ts';
import { readTable, type ReadOptions, type ReadTable } from './read.ts';
import { askedKind, type KindChoices } from './row.ts';
import { tableOf, type Table, type TableChoices } from './table.ts';

/** What a person decided; the rest is guessed. */
export interface ImportChoices extends TableChoices {
  readonly columns?: Readonly<Record<number, ColumnChoice>>;
  readonly kinds?: KindChoices;
  /** Year of bloom of rows that give none; left out, the first year of the programme. */
  readonly year?: number;
}

/** A parent that is no tree of the programme, for which a kind can be said. */
export interface AskedParent {
  /** Plain name; empty for parents that are not known. */
  readonly key: string;
  /** As it was first written. */
  readonly name: string;
  readonly batches: number;
}

/** Everything that was understood of a text, and what it would add. */
export interface Import {
  readonly table: Table;
  readonly columns: readonly Column[];
  readonly read: ReadTable;
  readonly additions: Additions;
  readonly parents: readonly AskedParent[];
}

/** Parents whose kind is asked for, once each; none where a column of the table says it or there is only one kind. */
function askedParents({ batches }: ReadTable, columns: readonly Column[], { kinds }: Pick<Programme, 'kinds'>): AskedParent[] {
  if (kinds.length < 2) return [];
  const asked = new Map<string, { name: string; batches: number }>();
  for (const { batch } of batches)
    for (const which of ['seed', 'pollen'] as const) {
      const parent = batch[which];
      const key = columns.some(({ role }) => role === `${which}Kind`) ? undefined : askedKind(parent, which);
      if (key === undefined) continue;
      const before = asked.get(key) ?? { name: typeof parent === 'object' && 'tag' in parent ? parent.tag : '', batches: 0 };
      asked.set(key, { ...before, batches: before.batches + 1 });
    }
  return [...asked].map(([key, rest]) => ({ key, ...rest }));
}

/**
 * Reads a text as a table of batches or of trees and says what it would add to the log of a programme. Nothing is refused and nothing is
 * changed: this only looks.
 * @param source text of a file, or pasted
 * @param nameOf gives a name to a batch that the file does not name
 */
export function importOf(source: string, programme: Programme, choices: ImportChoices, nameOf: ReadOptions['nameOf'], log: Log = programme.log): Import {
  const traits = new Set(programme.traits.map(({ name }) => name.toLowerCase()));
  const table = tableOf(source, choices, (header) => traits.has(header.trim().toLowerCase()));
  const columns = columnsOf(table, programme, choices.columns);
  const read = readTable(table, columns, programme, { yearForRest: choices.year ?? programme.startYear, kinds: choices.kinds ?? {}, nameOf });
  return { table, columns, read, additions: additionsTo(log, read.batches, table.rows.length), parents: askedParents(read, columns, programme) };
}
