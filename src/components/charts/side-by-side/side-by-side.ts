import { html, nothing, type CSSResultGroup, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Row } from '../../../charts/side-by-side/row.ts';
import { tableRows, type Limits } from '../../../charts/side-by-side/rows.ts';
import type { Outlook, PlanOutlook } from '../../../results/outlook.ts';
import { tableText } from '../../../text/charts-table.ts';
import { ChartElement } from '../chart-element.ts';
import { sideStyles } from './side-by-side.styles.ts';

/** Width of the measures, of one plan and of the last column, px: below their sum the table turns into blocks. */
const COLUMN = { measure: 210, plan: 118, words: 170 } as const;

/** All plans in one table, with a last column in words that ranks nothing the futures cannot tell apart. */
@customElement('oo-side-by-side')
export class SideBySide extends ChartElement {
  static override styles: CSSResultGroup = [ChartElement.styles, sideStyles];

  /** Limits the breeder has stated. */
  @property({ attribute: false }) limits: Limits = { hours: null, places: null };

  protected override render(): TemplateResult | typeof nothing {
    const { outlook } = this;
    if (!outlook || this.width === 0) return nothing;
    const rows = tableRows(outlook, this.limits);
    const fits = this.width >= COLUMN.measure + outlook.plans.length * COLUMN.plan + COLUMN.words;
    const first = rows[0];
    return html`<section aria-label=${tableText.name} aria-describedby="summary">
      ${this.head(tableText.title, tableText.intro(outlook.runs, !fits))}
      <p class="visually-hidden" id="summary">${first ? tableText.summary(first.title, first.verdict.text) : nothing}</p>
      <div class="picture">${fits ? this.table(outlook, rows) : this.blocks(outlook, rows)}</div>
      ${fits ? this.saves(true) : this.data(this.table(outlook, rows))}
    </section>`;
  }

  private table({ plans }: Outlook, rows: readonly Row[]): TemplateResult {
    return html`<table class="sides">
      <thead>
        <tr>
          <td class="first"></td>
          ${plans.map((plan) => html`<th scope="col" data-mark=${plan.mark} class=${this.restingClass(plan)} @pointerenter=${() => this.lift(plan.id)} @pointerleave=${() => this.lift(null)}><span class="mark">${plan.mark}</span>${plan.name}</th>`)}
          <th scope="col" class="words">${tableText.inWords}</th>
        </tr>
      </thead>
      <tbody>
        ${rows.map(
          ({ title, note, cells, verdict }) =>
            html`<tr>
              <th scope="row">${title}${note === '' ? nothing : html`<small>${note}</small>`}</th>
              ${cells.map(({ main, small }, index) => html`<td class=${this.restingClass(plans[index])}><b>${main}</b>${small === '' ? nothing : html`<small>${small}</small>`}</td>`)}
              <td class=${verdict.kind}>${verdict.text}</td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  private blocks({ plans }: Outlook, rows: readonly Row[]): TemplateResult[] {
    return rows.map(
      ({ title, note, cells, verdict }) =>
        html`<div class="block">
          <h3>${title}</h3>
          ${note === '' ? nothing : html`<p class="small">${note}</p>`}
          <ul>
            ${cells.map(({ main, small }, index) => {
              const plan = plans[index];
              return plan
                ? html`<li data-mark=${plan.mark} class=${this.restingClass(plan)}>
                    <span class="mark" aria-hidden="true">${plan.mark}</span><span class="visually-hidden">${plan.name}: </span
                    ><span><b>${main}</b> <span class="quiet">${small}</span></span>
                  </li>`
                : nothing;
            })}
          </ul>
          <p class=${verdict.kind}>${verdict.text}</p>
        </div>`,
    );
  }

  private restingClass(plan: PlanOutlook | undefined): string {
    return this.lifted !== null && plan !== undefined && plan.id !== this.lifted ? 'resting' : '';
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-side-by-side': SideBySide;
  }
}
