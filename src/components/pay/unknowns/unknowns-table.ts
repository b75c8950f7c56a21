import { html, nothing, type CSSResultGroup, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { drawBar, drawScale } from '../../../charts/unknowns/draw.ts';
import { barsLayout, type BarsLayout } from '../../../charts/unknowns/layout.ts';
import type { RankedFact } from '../../../decisions/unknowns.ts';
import { learnWords, factLabel, restsWords, shareRange, shareWords, unknownsText, wayWords } from '../../../text/pay-unknowns.ts';
import { ChartElement, otherText } from '../../charts/chart-element.ts';
import { badgeStyles } from '../../fields/badge.styles.ts';
import { unknownsTableStyles } from './unknowns-table.styles.ts';

/** From this width on the bars stand in a column of their own, px; below, rows are blocks. */
const COLUMNS_FROM = 900;

/** What matters, most first: a table with its bars drawn in it. The bars say nothing that the words beside them do not. */
@customElement('oo-unknowns-table')
export class UnknownsTable extends ChartElement {
  static override styles: CSSResultGroup = [ChartElement.styles, badgeStyles, unknownsTableStyles];

  @property({ attribute: false, hasChanged: otherText }) facts: readonly RankedFact[] = [];
  /** Letter of the plan that was asked about: its colour. */
  @property() mark = 'A';

  private barWidth = 0;

  protected override render(): TemplateResult | typeof nothing {
    const { facts } = this;
    if (facts.length === 0) return nothing;
    const { heads } = unknownsText;
    return html`<div data-mark=${this.mark}>
      <table class="ranked">
        <caption>
          ${unknownsText.axis}
        </caption>
        <colgroup>
          <col class="what" />
          <col class="matters" />
          <col class="way" />
          <col class="rests" />
          <col />
        </colgroup>
        <thead>
          <tr>
            <th scope="col">${heads.what}</th>
            <th scope="col" class="matters">${heads.matters}<svg class="scale" aria-hidden="true"></svg></th>
            <th scope="col">${heads.way}</th>
            <th scope="col">${heads.rests}</th>
            <th scope="col">${heads.learn}</th>
          </tr>
        </thead>
        <tbody>
          ${facts.map((fact) => this.row(fact))}
        </tbody>
      </table>
      ${this.saves(true)}
    </div>`;
  }

  private row(fact: RankedFact): TemplateResult {
    const { what, takes } = learnWords(fact);
    const { heads, alone, together } = unknownsText;
    return html`<tr>
      <th scope="row">${factLabel(fact)}</th>
      <td class="matters">
        <svg class="bar" aria-hidden="true"></svg>
        <span class="share"
          ><b>${shareWords(fact.first)}</b><small>${shareRange(fact.first)} ${alone}</small>${
            fact.total ? html`<small>${shareWords(fact.total)} (${shareRange(fact.total)}) ${together}</small>` : nothing
          }</span
        >
      </td>
      <td class="way">${wayWords(fact).map(({ way, range }) => html`<p>${way}<small>${range}</small></p>`)}</td>
      <td class="rests">
        <span class="phone-only">${heads.rests} </span><span class=${fact.restsOn}><span class="badge">${restsWords(fact.restsOn)}</span></span>
      </td>
      <td class="learn"><span class="phone-only">${heads.learn}: </span>${what}${takes === '' ? nothing : html`<small>${takes}</small>`}</td>
    </tr>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    this.draw();
  }

  /** The column’s width is the table’s to give: bars are laid out once it has. */
  private draw(): void {
    const cell = this.renderRoot.querySelector<HTMLElement>('tbody td.matters');
    // A page that was left has no styles, so no widths.
    if (!cell || this.width === 0 || !this.isConnected) return;
    const { paddingRight } = getComputedStyle(cell);
    this.barWidth = Math.max(60, Math.floor(cell.clientWidth - Number.parseFloat(paddingRight)));
    const layout: BarsLayout = barsLayout(this.facts, this.barWidth);
    this.renderRoot.querySelectorAll<SVGSVGElement>('svg.bar').forEach((svg, i) => {
      const row = layout.rows[i];
      if (row) drawBar(svg, layout, row);
    });
    const scale = this.renderRoot.querySelector<SVGSVGElement>('svg.scale');
    if (scale && this.width >= COLUMNS_FROM) drawScale(scale, layout);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-unknowns-table': UnknownsTable;
  }
}
