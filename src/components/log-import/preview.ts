import { html, nothing, type TemplateResult } from 'lit';
import { flagKey } from '../../seasonlog/import/drafts.ts';
import type { Flag } from '../../seasonlog/import/cells/cell.ts';
import type { Import } from '../../seasonlog/import/import.ts';
import { countWords } from '../../text/log.ts';
import { flags, logImport as words, marks } from '../../text/log-import.ts';

const FIRST_ROWS = 8;
const FIRST_BATCHES = 5;
const LEVELS = ['open', 'kept', 'read'] as const;

/** The first rows as they stand in the file, each doubtful cell with its mark in words. */
export function previewTable({ table, read }: Import): TemplateResult {
  const rows = table.rows.slice(0, FIRST_ROWS);
  return html`<h3>${words.preview}</h3>
    <!-- Wider than a phone: it can be moved by keyboard too. -->
    <div class="scroll" role="region" tabindex="0" aria-label=${words.preview}>
      <table>
        <caption>
          ${words.previewOf(rows.length, table.rows.length)}
        </caption>
        <thead>
          <tr>
            <th scope="col">${words.line}</th>
            ${table.headers.map((header) => html`<th scope="col">${header}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${rows.map(
            (row, r) =>
              html`<tr>
                <th scope="row">${String(table.lines[r] ?? r + 1)}</th>
                ${row.map((cell, c) => {
                  const level = read.flags.get(flagKey(r, c))?.level;
                  const text = cell.length > 120 ? `${cell.slice(0, 120)}…` : cell;
                  return html`<td class=${level === undefined ? '' : `flagged ${level}`}>
                    <span>${text}</span>${level === undefined ? nothing : html`<small>${marks[level]}</small>`}
                  </td>`;
                })}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
}

/** What the first batches become, in a line each. */
export function becomes({ read }: Import): TemplateResult {
  return html`<h3>${words.become}</h3>
    <ul class="becomes">
      ${read.batches.slice(0, FIRST_BATCHES).map(({ batch }) => {
        const counts = batch.counts.slice(0, 6).map(countWords).join(', ');
        return html`<li>${words.becomeBatch(batch.name, batch.year, counts, batch.trees.length)}</li>`;
      })}
    </ul>`;
}

/** Cells of one column that are doubtful in one way. */
interface Alike {
  readonly key: string;
  readonly level: Flag['level'];
  readonly cells: readonly { readonly row: number; readonly column: number; readonly flag: Flag }[];
}

/** Doubts put together by column and sort, those first that wait for a choice: five thousand seasons are one thing to look at. */
function alike(flags: Import['read']['flags']): Alike[] {
  const groups = new Map<string, { level: Flag['level']; cells: Alike['cells'][number][] }>();
  for (const [at, flag] of flags) {
    const [row = 0, column = 0] = at.split(',').map(Number);
    const key = `${String(column)} ${flag.code}`;
    const group = groups.get(key) ?? { level: flag.level, cells: [] };
    group.cells.push({ row, column, flag });
    groups.set(key, group);
  }
  const all = [...groups].map(([key, group]) => ({ key, ...group }));
  return LEVELS.flatMap((level) => all.filter((group) => group.level === level));
}

/**
 * Doubtful cells with what is doubtful.
 * @param shown how many of each sort are shown, by its key; a few where nothing is said
 */
export function doubts({ table, read }: Import, shown: ReadonlyMap<string, number>, more: (key: string, number: number) => void): TemplateResult {
  const all = [...read.flags];
  if (all.length === 0)
    return html`<h3>${words.doubts(0)}</h3>
      <p class="quiet">${words.noFlags}</p>`;
  const waiting = all.filter(([, { level }]) => level === 'open').length;
  return html`<h3>${words.doubts(all.length)}</h3>
    ${waiting > 0 ? html`<p>${words.waits(waiting)}</p>` : nothing}
    <ul class="doubts">
      ${alike(read.flags).map(({ key, level, cells }) => {
        const [first] = cells;
        const drawn = cells.slice(0, shown.get(key) ?? FEW);
        const left = cells.length - drawn.length;
        return html`${drawn.map(
          ({ row, column, flag }) =>
            html`<li class=${level}>
              <span>${words.at(table.lines[row] ?? row + 1, table.headers[column] ?? '')}</span> ${flags[flag.code](flag.raw, flag.readings)}
            </li>`,
        )}
        ${
          left > 0
            ? html`<li class=${level}>
                ${words.alike(left, table.headers[first?.column ?? 0] ?? '')}
                <button type="button" class="plain" @click=${() => more(key, drawn.length + MORE)}>${words.more(Math.min(MORE, left))}</button>
              </li>`
            : nothing
        }`;
      })}
    </ul>`;
}

/** How many doubtful cells of one sort are shown at first. */
const FEW = 3;
/** How many more at a time. */
export const MORE = 20;
