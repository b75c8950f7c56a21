import type { Count } from '../../model/log.ts';
import type { Programme } from '../../model/programme.ts';
import { guessOrder, looksLikeDate, seasonYears, type DayOrder, type SeasonYear } from './cells/date.ts';
import { trimmed } from './cells/cell.ts';
import { guessMark, unitNamed, type DecimalMark } from './cells/number.ts';
import { yesCell } from './cells/words.ts';
import { isOwn, plainHeader, roleOfHeader } from './headers.ts';
import { cutCross, entryNamed, plainName } from './parents.ts';
import { familyOf, once, type Role } from './roles.ts';
import type { Table } from './table.ts';

/** What was decided of a column by hand; what is left out is guessed. */
export interface ColumnChoice {
  readonly role?: Role;
  readonly mark?: DecimalMark;
  readonly order?: DayOrder;
  readonly season?: SeasonYear;
}

/** A column and how its cells are read. */
export interface Column {
  readonly header: string;
  readonly role: Role;
  readonly mark: DecimalMark;
  readonly order: DayOrder;
  readonly season: SeasonYear;
  /** The year that the heading names: “Brix 2021”. */
  readonly year?: number;
  /** The unit that the heading names, where it is not the flower. */
  readonly unit?: NonNullable<Count['unit']>['name'];
}

/** Cells that are looked at to guess what a column is. */
const LOOKED_AT = 400;
const YEAR = /^(1[89]\d\d|20\d\d|21\d\d)$/;

const mostly = (cells: readonly string[], fits: (cell: string) => boolean): boolean => cells.length > 0 && cells.filter(fits).length >= 0.6 * cells.length;
const saysYesOrNo = (cell: string): boolean => !/^\d+$/.test(cell) && yesCell(cell).value !== undefined;

function traitRole(header: string, { traits }: Pick<Programme, 'traits'>): Role | undefined {
  const [, own, named] = /^\s*(seen|measured): (.*)$/s.exec(header) ?? [];
  if (own !== undefined && named !== undefined) {
    const trait = entryNamed(traits, named);
    return trait && (own === 'seen' ? `seen:${trait.id}` : `value:${trait.id}`);
  }
  const bare = plainName(header.replace(/\b(1[89]|20|21)\d\d\b/g, ' ').replace(/\(.*?\)/g, ' '));
  const trait = traits.find(({ name }) => plainName(name.replace(/\(.*?\)/g, ' ')) === bare);
  return trait && (trait.type === 'measured' ? `value:${trait.id}` : `seen:${trait.id}`);
}

/** A heading says one thing, the cells may say another: years under “fruited”, yes and no under “alive”. */
function besides(role: Role, cells: readonly string[]): Role {
  if (role === 'cross' && !mostly(cells, (cell) => cutCross(cell) !== undefined)) return cells.some((cell) => cutCross(cell)) ? 'cross' : 'batch';
  if (!role.startsWith('count:') || cells.length === 0) return role;
  if (role === 'count:fruiting' && mostly(cells, (cell) => YEAR.test(cell))) return 'firstFruit';
  if ((role === 'count:planted' || role === 'count:sown' || role === 'count:grafted') && mostly(cells, (cell) => YEAR.test(cell) || looksLikeDate(cell)))
    return 'keep';
  if (mostly(cells, saysYesOrNo)) return role === 'count:alive' ? 'status' : role === 'count:weak' ? 'weak' : 'keep';
  return mostly(cells, (cell) => /\d/.test(cell) || /^\W*$/.test(cell)) ? role : 'keep';
}

/** By the cells alone. */
function roleOfCells(cells: readonly string[]): Role {
  if (mostly(cells, (cell) => cutCross(cell) !== undefined)) return 'cross';
  if (mostly(cells, (cell) => YEAR.test(cell) || seasonYears(cell) !== undefined)) return 'year';
  return mostly(cells, looksLikeDate) ? 'when' : 'keep';
}

function guessRole(header: string, headed: boolean, cells: readonly string[], programme: Pick<Programme, 'traits'>): Role {
  if (!headed) return roleOfCells(cells);
  const role = traitRole(header, programme) ?? roleOfHeader(header.replace(/ \(\d+\)$/, ''));
  return role === undefined ? roleOfCells(cells) : besides(role, cells);
}

/** Names and numbers of rows that no heading explains: tags where the table is of trees, else batches. */
function settleNames(roles: Role[], headers: readonly string[]): void {
  const counts = roles.some((role) => role.startsWith('count:'));
  headers.forEach((header, c) => {
    if (roles[c] === 'keep' && /^(id|no|nr|number|#|name)$/i.test(plainHeader(header) || header.trim()) && !roles.includes(counts ? 'batch' : 'tag'))
      roles[c] = counts ? 'batch' : 'tag';
  });
  // “Tree” is the place in the row where there is a row; alone it is the tag.
  if (!roles.includes('tag') && !roles.includes('row') && !counts) {
    const at = roles.indexOf('tree');
    if (at >= 0) roles[at] = 'tag';
  }
  const tag = roles.includes('tag');
  const judged = roles.some((role) => role.startsWith('seen:') || role.startsWith('value:'));
  // A season in a table of batches is that of their bloom.
  const season = roles.indexOf('season');
  if (season >= 0 && !roles.includes('year') && !(tag || judged)) roles[season] = 'year';
  // The seed and the pollen stand in columns of their own: a third one repeats them.
  if (roles.includes('seed') && roles.includes('cross')) roles[roles.indexOf('cross')] = roles.includes('batch') ? 'keep' : 'batch';
}

/** Which columns a table has and how each is read; every guess gives way to a choice. */
export function columnsOf(table: Table, programme: Pick<Programme, 'traits'>, choices: Readonly<Record<number, ColumnChoice>> = {}): Column[] {
  const cells = table.headers.map((_, c) =>
    table.rows
      .slice(0, LOOKED_AT)
      .map((row) => trimmed(row[c] ?? ''))
      .filter((cell) => cell !== ''),
  );
  // A table that this project wrote says in its headings what its cells are.
  const own = table.headed && isOwn(table.headers);
  const roles = table.headers.map((header, c): Role =>
    own ? (traitRole(header, programme) ?? roleOfHeader(header) ?? 'keep') : guessRole(header, table.headed, cells[c] ?? [], programme),
  );
  if (!own) settleNames(roles, table.headers);
  const used = new Set<Role>(Object.values(choices).flatMap(({ role }) => (role ? [role] : [])));
  const settled = roles.map((role, c) => {
    const chosen = choices[c]?.role;
    if (chosen) return chosen;
    const free = !once(role) || !used.has(role);
    used.add(role);
    return free ? role : 'keep';
  });
  // What holds for one column of dates or counts holds for the table, unless another says otherwise.
  const whole = (role: Role): boolean => role.startsWith('count:') || role === 'eventLost' || role === 'copyNumber';
  const numeric = (role: Role): boolean => whole(role) || role.startsWith('value:') || role === 'graftedMonth';
  const dated = (role: Role): boolean => ['when', 'countWhen', 'eventWhen', 'year'].includes(familyOf(role).family);
  const all = (c: number): string[] => table.rows.map((row) => row[c] ?? '');
  const marks = settled.map((role, c) => (numeric(role) ? guessMark(all(c), whole(role)) : null));
  const orders = settled.map((role, c) => (dated(role) ? guessOrder(all(c)) : null));
  const agreed = <T>(list: readonly (T | null)[]): T | null => {
    const said = new Set(list.filter((each) => each !== null));
    const [only = null] = said;
    return said.size === 1 ? only : null;
  };
  const [mark, order] = [agreed(marks), agreed(orders)];
  return table.headers.map((header, c): Column => {
    const role = settled[c] ?? 'keep';
    const choice = choices[c] ?? {};
    const year = own ? undefined : /\b((?:1[89]|20|21)\d\d)\b/.exec(header)?.[1];
    const unit =
      role === 'count:flowers'
        ? plainHeader(header)
            .split(' ')
            .map(unitNamed)
            .find((each) => each !== undefined)
        : undefined;
    return {
      header,
      role,
      mark: choice.mark ?? marks[c] ?? mark,
      order: choice.order ?? orders[c] ?? order,
      // Flowers of a southern spring open in the first year of the season; its fruit is ripe in the second.
      season: choice.season ?? (role === 'year' ? 'first' : 'second'),
      ...(year === undefined ? {} : { year: Number(year) }),
      ...(unit ? { unit } : {}),
    };
  });
}

/** What can be decided of a column, so that only that is asked. */
export function asks({ role }: Column, cells: readonly string[]): { readonly mark: boolean; readonly order: boolean; readonly season: boolean } {
  const { family } = familyOf(role);
  const numeric = family === 'count' || family === 'value';
  const dates = ['when', 'countWhen', 'eventWhen'].includes(family);
  const years = ['year', 'season', 'firstFruit', 'lookedUntil', 'statusSince'].includes(family);
  return {
    mark: numeric && cells.some((cell) => /\d[.,]\d/.test(cell)),
    order: dates && cells.some((cell) => /^\D*\d{1,2}\s?[/-]\s?\d{1,2}\b/.test(trimmed(cell))),
    season: years && cells.some((cell) => seasonYears(trimmed(cell)) !== undefined),
  };
}
