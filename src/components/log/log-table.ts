import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Batch } from '../../model/log.ts';
import type { Problem } from '../../model/problem.ts';
import type { Programme } from '../../model/programme.ts';
import { shared } from '../../styles/shared.ts';
import { crossWords, events as eventWords, log as words, whenWords } from '../../text/log.ts';
import {
  columnsOf,
  flaggedStages,
  flaggedTrees,
  flagsOf,
  kindUnsaid,
  lostTo,
  sumsOf,
  yearsOf,
  type Cell,
  type Column,
  type Sum,
  type Year,
} from './columns.ts';
import { logStyles } from './log.styles.ts';
import { tableStyles } from './log-table.styles.ts';
import './batch.ts';

const number = (value: number): string => value.toLocaleString('en');

/**
 * The season log: one line a batch, a column for each stage that was counted; on a narrow screen one block a batch. A batch opens under its line.
 * @fires oo-open-batch with the id of the batch, or null to close it
 */
@customElement('oo-log-table')
export class LogTable extends LitElement {
  static override styles = [...shared, logStyles, tableStyles];

  @property({ attribute: false }) programme!: Programme;
  @property({ attribute: false }) problems: readonly Problem[] = [];
  @property() today = '';
  /** Id of the batch that is open. */
  @property() open = '';

  private toggle(id: string): void {
    this.dispatchEvent(new CustomEvent('oo-open-batch', { detail: id === this.open ? null : id }));
  }

  /** Puts the focus on the line of a batch. */
  async focusBatch(id: string): Promise<void> {
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>(`[data-batch="${id}"]`)?.focus();
  }

  protected override render(): TemplateResult | typeof nothing {
    const { programme } = this;
    if (programme.log.batches.length === 0) return nothing;
    const columns = columnsOf(programme);
    const lost = [...lostTo(programme)].map(([what, all]) => words.lost(all, eventWords[what]));
    return html`<table role="table" aria-label=${words.title}>
        <thead>
          <tr role="row">
            <th role="columnheader" scope="col">${words.table.batch}</th>
            ${columns.map(({ head }) => html`<th role="columnheader" scope="col" class="number">${head}</th>`)}
          </tr>
        </thead>
        ${yearsOf(programme).map((year) => this.year(year, columns))} ${this.sums(sumsOf(programme, columns), columns)}
      </table>
      ${lost.length === 0 ? nothing : html`<p class="quiet lost">${words.lostTail(lost)}</p>`}`;
  }

  private year({ year, batches, events }: Year, columns: readonly Column[]): TemplateResult {
    return html`<tbody>
      <tr role="row" class="year">
        <th role="rowheader" scope="rowgroup" colspan=${columns.length + 1}>
          <span class="date">${String(year)}</span>
          <span class="quiet">${events.map(({ what, when }) => words.table.event(eventWords[what], whenWords(when))).join('; ')}</span>
        </th>
      </tr>
      ${repeat(
        batches,
        ({ batch }) => batch.id,
        ({ batch, at }) => this.batch(batch, at, columns),
      )}
    </tbody>`;
  }

  private batch(batch: Batch, at: number, columns: readonly Column[]): TemplateResult {
    const { programme, problems } = this;
    const open = batch.id === this.open;
    const plan = programme.plans.find(({ generations }) => generations.some(({ id }) => id === batch.generation));
    const flagged = flaggedStages(batch, at, problems);
    const trees = flaggedTrees(at, problems);
    const flags = [...flagsOf(at, problems), ...(trees === 0 ? [] : [words.table.flaggedTrees(trees)])];
    const unsaid = kindUnsaid(at, problems);
    const cross = crossWords(batch, programme);
    return html`<tr role="row" class="batch ${open ? 'open' : ''}">
        <th role="rowheader" scope="row">
          <button type="button" class="plain" data-batch=${batch.id} aria-expanded=${open ? 'true' : 'false'} @click=${() => this.toggle(batch.id)}>
            ${batch.name}
          </button>
          <small
            >${plan ? html`<span class="mark" data-mark=${plan.mark} title=${plan.name}>${plan.mark}</span>` : nothing}${batch.name.startsWith(cross) ? '' : cross}
            ${batch.apart ? html`<span class="apart">${words.table.apart}</span>` : nothing}</small
          >
        </th>
        ${columns.map(({ key, head, cell }) => this.cell(head, cell(batch), flagged.has(key)))}
      </tr>
      ${
        flags.length === 0 && !unsaid
          ? nothing
          : html`<tr role="row" class="flags">
              <td role="cell" colspan=${columns.length + 1}>
                ${flags.map((flag) => html`<p class="flag">${flag}</p>`)} ${unsaid ? html`<p class="unsaid">${words.table.kindUnsaid}</p>` : nothing}
              </td>
            </tr>`
      }
      ${
        open
          ? html`<tr role="row" class="inside">
              <td role="cell" colspan=${columns.length + 1}>
                <oo-log-batch .programme=${programme} .batch=${batch} .problems=${problems} .today=${this.today}></oo-log-batch>
              </td>
            </tr>`
          : nothing
      }`;
  }

  private cell(head: string, cell: Cell | null, flagged: boolean): TemplateResult {
    if (!cell)
      return html`<td role="cell" class="number none"><span class="visually-hidden">${words.table.notCounted}</span><span aria-hidden="true">–</span></td>`;
    return html`<td role="cell" class="number ${flagged ? 'flagged' : ''}">
      <span class="head" aria-hidden="true">${head}</span><b>${number(cell.number)}</b>${cell.small === '' ? nothing : html`<small>${cell.small}</small>`}
    </td>`;
  }

  private sums(sums: readonly Sum[], columns: readonly Column[]): TemplateResult | typeof nothing {
    if (sums.length === 0) return nothing;
    return html`<tbody class="sums">
      ${sums.map(
        ({ cross, cells, without }) =>
          html`<tr role="row" class="batch">
            <th role="rowheader" scope="row">${words.table.all(cross)}${without ? html`<small>${words.table.withoutApart}</small>` : nothing}</th>
            ${cells.map((value, i) => this.cell(columns[i]?.head ?? '', value === null ? null : { number: value, small: '', singles: value }, false))}
          </tr>`,
      )}
    </tbody>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-log-table': LogTable;
  }
  interface HTMLElementEventMap {
    'oo-open-batch': CustomEvent<string | null>;
  }
}
