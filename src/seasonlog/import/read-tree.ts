import type { LoggedTree } from '../../model/log.ts';
import type { Programme } from '../../model/programme.ts';
import type { Copy, Season } from '../edits.ts';
import { flagOf, trimmed, unguarded, type Cell } from './cells/cell.ts';
import { yearCell } from './cells/date.ts';
import { numberCell, wholeCell } from './cells/number.ts';
import { positionCell, seenCell, statusCell, yesCell } from './cells/words.ts';
import type { TreeDraft } from './drafts.ts';
import { entryNamed } from './parents.ts';
import type { Role } from './roles.ts';
import type { Row } from './row.ts';

const year = (row: Row, role: Role): number | undefined => row.read(role, (raw, { order, season }) => yearCell(raw, order, season));

function placeOf(row: Row): LoggedTree['place'] {
  const [block, line, tree] = [row.text('block', 20), row.text('row', 20), row.text('tree', 20)];
  if (block !== undefined || line !== undefined || tree !== undefined) {
    row.columns.forEach(({ role }, c) => {
      if (role === 'position') row.keep(c);
    });
    return { block: block ?? '', row: line ?? '', tree: tree ?? '' };
  }
  return row.read('position', positionCell);
}

/** A tree from its first row. @param line of the file, for a tree without a tag */
export function treeOf(row: Row, line: number, programme: Pick<Programme, 'stocks'>): TreeDraft['tree'] {
  const place = placeOf(row);
  let tag = row.text('tag', 60);
  if (tag === undefined) {
    const where = place ? [place.block, place.row, place.tree].filter((part) => part !== '').join('-') : '';
    tag = where === '' ? `line ${String(line)}` : where.slice(0, 60);
    row.flag('tag', flagOf('read', 'noTag', row.raw('tag'), tag));
  }
  const state = row.read('status', statusCell);
  const since = year(row, 'statusSince') ?? state?.since;
  const weak = row.read('weak', yesCell) ?? false;
  const picked = row.read('picked', yesCell) ?? false;
  const stock = row.entry('stock', (text) => entryNamed(programme.stocks, text));
  const [firstFruit, lookedUntil] = [year(row, 'firstFruit'), year(row, 'lookedUntil')];
  return {
    tag,
    ...(place ? { place } : {}),
    status: state?.status ?? 'alive',
    ...(since === undefined ? {} : { statusSince: since }),
    weak,
    ...(stock === undefined ? {} : { stock }),
    ...(firstFruit === undefined ? {} : { firstFruit }),
    ...(lookedUntil === undefined ? {} : { lookedUntil }),
    picked,
  };
}

/** Roles that say something of the tree itself and may be repeated on its further rows. */
export const TREE_ROLES: readonly Role[] = [
  'block',
  'row',
  'tree',
  'position',
  'status',
  'statusSince',
  'weak',
  'stock',
  'firstFruit',
  'lookedUntil',
  'picked',
  'note',
];

/** What was taken, as a cell would say it. */
const wordsOf = (said: unknown): string =>
  typeof said === 'object' && said !== null && 'showed' in said && 'cut' in said ? `${String(said.showed)} of ${String(said.cut)}` : String(said);

/** What a row says of seasons: that of its own column, and those that stand in headings (“Brix 2021”). */
export function seasonsOf(row: Row): Season[] {
  const own = year(row, 'season');
  const found = new Map<number, Season>();
  const seasonAt = (c: number): Season | undefined => {
    const at = row.columns[c]?.year ?? own;
    if (at === undefined) return undefined;
    const season = found.get(at) ?? { year: at, seen: {}, values: {} };
    found.set(at, season);
    return season;
  };
  if (own !== undefined) found.set(own, { year: own, seen: {}, values: {} });
  // Seen and measured without a season stand in the note: a season that nobody gave is not made up.
  type Kept<T> = (season: Season) => Record<string, T>;
  const put = <T>(c: number, trait: string, read: (raw: string, mark: 'comma' | 'point' | null) => Cell<T>, within: Kept<T>): void => {
    const season = row.columns[c]?.year ?? own;
    const value = row.cellAt(c, (raw, { mark }): Cell<T> => {
      const cell = read(raw, mark);
      if (cell.value === undefined) return cell;
      if (season === undefined) return { flag: flagOf('kept', 'noSeason', raw) };
      // Two columns of one trait and season: the first stands.
      const before = found.get(season);
      const said = before && within(before)[trait];
      return said === undefined || JSON.stringify(said) === JSON.stringify(cell.value) ? cell : { flag: flagOf('kept', 'differs', raw, wordsOf(said)) };
    });
    const at = value === undefined ? undefined : seasonAt(c);
    if (value !== undefined && at) within(at)[trait] = value;
  };
  row.each('seen', (c, trait) => {
    put(c, trait, seenCell, ({ seen }) => seen);
  });
  row.each('value', (c, trait) => {
    put(
      c,
      trait,
      (raw, mark) => {
        const cell = numberCell(raw, mark);
        return cell.value !== undefined && Math.abs(cell.value) > 1e6 ? { flag: flagOf('kept', 'outside', raw, '-1000000', '1000000') } : cell;
      },
      ({ values }) => values,
    );
  });
  const note = row.note('seasonNote');
  const noted = own === undefined ? undefined : found.get(own);
  if (note !== '' && noted && own !== undefined) found.set(own, { ...noted, note });
  else if (note !== '')
    row.columns.forEach(({ role }, c) => {
      if (role === 'seasonNote') row.keep(c);
    });
  return [...found.values()];
}

/** A copy of the tree elsewhere. */
export function copyOf(row: Row): Copy | undefined {
  const where = row.text('copyWhere', 80);
  if (where === undefined) {
    row.each('copyWhose', (c) => row.keep(c));
    row.each('copyNumber', (c) => row.keep(c));
    return undefined;
  }
  const whose = row.text('copyWhose', 80) ?? '';
  const number = row.read('copyNumber', (raw, { mark }) => wholeCell(raw, mark, 1, 100)) ?? 1;
  return { where, whose, number };
}

export const plainCell = (raw: string): string => trimmed(unguarded(raw));
