import { html, type TemplateResult } from 'lit';
import { common } from '../../text/charts.ts';

/** The figures of a picture, as a table to unfold. */
export const dataTable = (table: TemplateResult): TemplateResult =>
  html`<details class="data">
    <summary>${common.asTable}</summary>
    <div class="scroll" tabindex="0" role="group" aria-label=${common.asTable}>${table}</div>
  </details>`;
