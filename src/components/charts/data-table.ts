import { html, type TemplateResult } from 'lit';
import { common } from '../../text/charts.ts';
import { saveTable } from './table-file.ts';

/** The table beside a button, and the name of the picture that it belongs to. */
function save(event: Event): void {
  const details = event.currentTarget instanceof HTMLElement ? event.currentTarget.closest('details') : null;
  const table = details?.querySelector('table');
  if (table) saveTable(details?.closest('section')?.querySelector('h2')?.textContent ?? '', table);
}

/** The figures of a picture, as a table to unfold and to save. */
export const dataTable = (table: TemplateResult): TemplateResult =>
  html`<details class="data">
    <summary>${common.asTable}</summary>
    <div class="scroll" tabindex="0" role="group" aria-label=${common.asTable}>${table}</div>
    <button class="save screen-only" @click=${save}>${common.saveTable}</button>
  </details>`;
