import type { Programme } from '../../model/programme.ts';
import { flagOf, isDefused, kept, saysNothing, textCell, trimmed, unguarded, type Cell, type Flag } from './cells/cell.ts';
import type { Column } from './columns.ts';
import { flagKey, type Flags } from './drafts.ts';
import { plainName, type Pollen, type Seed } from './parents.ts';
import { familyOf, type Role } from './roles.ts';

/** What is taken and still stands in the note as it was written: the log would not show it otherwise. */
const NOTED: ReadonlySet<Flag['code']> = new Set(['about', 'tooLong', 'notKnown', 'dayLeft', 'timeLeft', 'seasonName']);
const LONGEST_KEPT = 1900;
/** The longest note; the schema’s own bound. */
const NOTE = 2000;

/** One row while it is read: hands out its cells by role, gathers flags, and the parts of a note that no field can hold. */
export class Row {
  readonly notes: string[] = [];
  private readonly places = new Map<Role, number>();

  constructor(
    private readonly at: number,
    private readonly cells: readonly string[],
    readonly columns: readonly Column[],
    private readonly flags: Flags,
  ) {
    columns.forEach(({ role }, c) => {
      if (!this.places.has(role)) this.places.set(role, c);
    });
  }

  /** Text of a role as it stands in the file; empty if there is no such column. */
  raw(role: Role): string {
    return this.cells[this.places.get(role) ?? -1] ?? '';
  }

  has(role: Role): boolean {
    return trimmed(this.raw(role)) !== '';
  }

  flag(role: Role, flag: Flag): void {
    const c = this.places.get(role) ?? 0;
    this.flags.set(flagKey(this.at, c), flag);
  }

  /** Reads the cell of a column; what gives no value, or is uncertain, goes into the note with its heading. */
  cellAt<T>(c: number, read: (raw: string, column: Column) => Cell<T>): T | undefined {
    const column = this.columns[c];
    const raw = this.cells[c] ?? '';
    if (!column || raw === '') return undefined;
    const { value, flag } = read(raw, column);
    if (flag) this.flags.set(flagKey(this.at, c), flag);
    if (flag && flag.code !== 'nothing' && (value === undefined || NOTED.has(flag.code))) this.keep(c);
    return value;
  }

  read<T>(role: Role, read: (raw: string, column: Column) => Cell<T>): T | undefined {
    const c = this.places.get(role);
    return c === undefined ? undefined : this.cellAt(c, read);
  }

  /** Puts a cell into the note. */
  keep(c: number): void {
    const text = trimmed(unguarded(this.cells[c] ?? ''));
    if (text === '') return;
    if (text.length > LONGEST_KEPT) this.flags.set(flagKey(this.at, c), flagOf('read', 'tooLong', this.cells[c] ?? '', '2000'));
    this.notes.push(`${this.columns[c]?.header ?? ''}: ${text}`);
  }

  /** Every column of a family, with what it speaks of. */
  each(family: string, then: (c: number, of: string) => void): void {
    this.columns.forEach(({ role }, c) => {
      const found = familyOf(role);
      if (found.family === family) then(c, found.of);
    });
  }

  text(role: Role, most: number): string | undefined {
    return this.read(role, (raw) => textCell(raw, most));
  }

  /** A note, letter for letter but for the apostrophe that a spreadsheet asks for. */
  note(role: Role): string {
    const raw = this.raw(role);
    if (raw.length > NOTE) this.flag(role, flagOf('read', 'tooLong', raw, String(NOTE)));
    else if (isDefused(raw)) this.flag(role, flagOf('read', 'apostrophe', raw, unguarded(raw)));
    return unguarded(raw);
  }

  /** An entry of the programme by its name or id; another name goes into the note. */
  entry(role: Role, find: (text: string) => { readonly id: string } | undefined): string | undefined {
    return this.read(role, (raw): Cell<string> => {
      const text = trimmed(unguarded(raw));
      if (text === '' || saysNothing(text)) return {};
      const found = find(text);
      return found ? { value: found.id } : kept('notHere', raw);
    });
  }
}

/** Kinds by the plain name of the parent that they were chosen for; the empty name is a parent that is not known. */
export type KindChoices = Readonly<Record<string, string>>;

/** The name under which a kind is asked for; undefined where there is nothing to ask. */
export function askedKind(parent: Seed | Pollen, which: 'seed' | 'pollen'): string | undefined {
  if (typeof parent === 'object') return 'tag' in parent ? plainName(parent.tag) : undefined;
  return parent === 'unknown' || which === 'seed' ? '' : undefined;
}

/** The kind of a parent that is no tree of the programme: as chosen, or the only one there is. */
export function kindFor(parent: Seed | Pollen, which: 'seed' | 'pollen', choices: KindChoices, { kinds }: Pick<Programme, 'kinds'>): string | undefined {
  const name = askedKind(parent, which);
  if (name === undefined) return undefined;
  const chosen = choices[name] ?? (kinds.length === 1 ? kinds[0]?.id : undefined);
  return kinds.some(({ id }) => id === chosen) ? chosen : undefined;
}
