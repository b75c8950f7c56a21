import { isRecord, valueAt } from '../../model/walk.ts';
import { fieldText } from '../../text/fields.ts';

/** Of what the rows of a table are, by the table’s key. */
const ROWS: Readonly<Record<string, { readonly section: string; readonly type?: string }>> = {
  genes: { section: 'genes' },
  values: { section: 'traits', type: 'measured' },
  spread: { section: 'traits', type: 'measured' },
  weights: { section: 'traits', type: 'measured' },
  seen: { section: 'traits', type: 'shown' },
  testCrosses: { section: 'traits', type: 'shown' },
};

export interface TableRow {
  readonly id: string;
  readonly name: string;
}

/** One row per gene or trait of the programme, named with its unit; what the table holds for others comes last. */
export function tableRows(key: string, table: unknown, programme: unknown): readonly TableRow[] {
  const { section, type } = ROWS[key] ?? { section: '' };
  const entries: unknown = valueAt(programme, [section]);
  const known = (Array.isArray(entries) ? entries : []).flatMap((entry: unknown): TableRow[] => {
    if (!isRecord(entry) || typeof entry['id'] !== 'string' || typeof entry['name'] !== 'string') return [];
    if (type !== undefined && entry['type'] !== type) return [];
    return [{ id: entry['id'], name: typeof entry['unit'] === 'string' ? `${entry['name']} (${entry['unit']})` : entry['name'] }];
  });
  const stale = Object.keys(isRecord(table) ? table : {}).filter((id) => !known.some((row) => row.id === id));
  return [...known, ...stale.map((id) => ({ id, name: fieldText.gone(id) }))];
}
