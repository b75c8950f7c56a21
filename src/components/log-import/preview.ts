import { html, nothing, type TemplateResult } from 'lit';
import { flagKey } from '../../seasonlog/import/drafts.ts';
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

/** Doubtful cells with what is doubtful, those first that wait for a choice. */
export function doubts({ table, read }: Import, shown: number, more: () => void): TemplateResult {
  const all = LEVELS.flatMap((level) => [...read.flags].filter(([, flag]) => flag.level === level));
  if (all.length === 0)
    return html`<h3>${words.doubts(0)}</h3>
      <p class="quiet">${words.noFlags}</p>`;
  const waiting = all.filter(([, { level }]) => level === 'open').length;
  return html`<h3>${words.doubts(all.length)}</h3>
    ${waiting > 0 ? html`<p>${words.waits(waiting)}</p>` : nothing}
    <ul class="doubts">
      ${all.slice(0, shown).map(([key, flag]) => {
        const [r = 0, c = 0] = key.split(',').map(Number);
        return html`<li class=${flag.level}>
          <span>${words.at(table.lines[r] ?? r + 1, table.headers[c] ?? '')}</span> ${flags[flag.code](flag.raw, flag.readings)}
        </li>`;
      })}
    </ul>
    ${all.length > shown ? html`<button type="button" class="plain" @click=${more}>${words.more(Math.min(MORE, all.length - shown))}</button>` : nothing}`;
}

/** How many more doubtful cells are shown at a time. */
export const MORE = 20;
