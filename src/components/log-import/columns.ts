import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import { trimmed } from '../../seasonlog/import/cells/cell.ts';
import { asks, type Column, type ColumnChoice } from '../../seasonlog/import/columns.ts';
import type { Import } from '../../seasonlog/import/import.ts';
import { roleNamed, type Role } from '../../seasonlog/import/roles.ts';
import { logImport as words, roles } from '../../text/log-import.ts';

interface Trait {
  readonly id: string;
  readonly name: string;
}

/** How a choice among few is drawn. */
interface Pick<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly (readonly [T, string])[];
  /** Nothing is settled yet, and cells wait for it. */
  readonly open?: boolean;
  readonly kind?: string;
  readonly chosen: (value: T) => void;
}

/** A closed list of words is text to a template. */
const plain = (text: string): string => text;

/** A list to unfold, named for those who do not see what stands beside it. */
export function picker<T extends string>({ label, value, options, open = false, kind = '', chosen }: Pick<T>): TemplateResult {
  return html`<select
    class="${kind} ${open ? 'open' : ''}"
    aria-label=${label}
    .value=${live(plain(value))}
    @change=${({ target }: Event) => {
      const found = target instanceof HTMLSelectElement && options[target.selectedIndex];
      if (found) chosen(found[0]);
    }}
  >
    ${options.map(([option, text]) => html`<option value=${plain(option)} ?selected=${option === value}>${text}</option>`)}
  </select>`;
}

function rolePicker({ header, role }: Column, traits: readonly Trait[], chosen: (role: Role) => void): TemplateResult {
  const option = ([value, text]: readonly [string, string]): TemplateResult => html`<option value=${value} ?selected=${value === role}>${text}</option>`;
  return html`<select
    class="role"
    aria-label=${words.isFor(header)}
    .value=${live<string>(role)}
    @change=${({ target }: Event) => {
      const found = target instanceof HTMLSelectElement ? roleNamed(target.value) : undefined;
      if (found) chosen(found);
    }}
  >
    ${roles.map(({ group, of }) => html`<optgroup label=${group}>${Object.entries(of).map(option)}</optgroup>`)}
    <optgroup label=${words.traits}>
      ${traits.flatMap(({ id, name }) => [option([`seen:${id}`, words.seen(name)]), option([`value:${id}`, words.value(name)])])}
    </optgroup>
  </select>`;
}

/** Examples of a column: the first cells that are not empty. */
function examples(cells: readonly string[]): string[] {
  const found = new Set<string>();
  for (const cell of cells) {
    if (trimmed(cell) !== '') found.add(trimmed(cell).slice(0, 40));
    if (found.size === 3) break;
  }
  return [...found];
}

/** Matching of columns: what each is, and what its figures and days mean, as far as that is open. */
export function columnList({ table, columns, read }: Import, traits: readonly Trait[], choose: (column: number, choice: ColumnChoice) => void): TemplateResult {
  const waiting = new Set([...read.flags].filter(([, { level }]) => level === 'open').map(([key]) => Number(key.split(',')[1])));
  return html`<ul class="columns">
    ${columns.map((column, c) => {
      const cells = table.rows.map((row) => row[c] ?? '');
      const asked = asks(column, cells);
      const { header, mark, order, season } = column;
      const open = waiting.has(c);
      return html`<li>
        <div><b>${header}</b><small>${words.example(examples(cells))}</small></div>
        <div class="choices">
          ${rolePicker(column, traits, (role) => choose(c, { role }))}
          ${
            asked.mark
              ? picker({
                  label: words.mark.label(header),
                  value: mark ?? 'none',
                  open: open && mark === null,
                  options: [
                    ['none', words.mark.none],
                    ['comma', words.mark.comma],
                    ['point', words.mark.point],
                  ],
                  chosen: (value) => choose(c, { mark: value === 'none' ? null : value }),
                })
              : nothing
          }
          ${
            asked.order
              ? picker({
                  label: words.order.label(header),
                  value: order ?? 'none',
                  open: open && order === null,
                  options: [
                    ['none', words.order.none],
                    ['dayFirst', words.order.dayFirst],
                    ['monthFirst', words.order.monthFirst],
                  ],
                  chosen: (value) => choose(c, { order: value === 'none' ? null : value }),
                })
              : nothing
          }
          ${
            asked.season
              ? picker({
                  label: words.season.label(header),
                  value: season,
                  options: [
                    ['first', words.season.first],
                    ['second', words.season.second],
                  ],
                  chosen: (value) => choose(c, { season: value }),
                })
              : nothing
          }
        </div>
      </li>`;
    })}
  </ul>`;
}
