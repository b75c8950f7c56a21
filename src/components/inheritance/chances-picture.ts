import { html, nothing, type CSSResultGroup, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { drawChances } from '../../charts/inheritance/draw.ts';
import { chanceLayout, type ChanceLayout, type ChanceRow } from '../../charts/inheritance/layout.ts';
import { beliefStyles } from '../learned/beliefs.styles.ts';
import { RowsPicture } from '../learned/rows-picture.ts';
import { pictured } from '../pay/answer-picture.ts';
import { lessons } from '../../text/log-lessons.ts';

/** A row of the picture with what is read of it, and its line of the table. */
export interface ShownChance extends ChanceRow {
  readonly words: string;
  readonly cells: readonly string[];
}

/** Chances on a line from never to always, before and now: of explanations, or of trees that are alike. */
@customElement('oo-chances-picture')
export class ChancesPicture extends RowsPicture<ShownChance, ChanceLayout> {
  static override styles: CSSResultGroup = [RowsPicture.styles, beliefStyles];

  @property(pictured) override answer: readonly ShownChance[] | null = null;
  /** What the keys go over. */
  @property() reads = '';
  @property() summary = '';
  @property({ attribute: false }) heads: readonly string[] = [];

  protected override layoutOf(rows: readonly ShownChance[], width: number): ChanceLayout {
    return chanceLayout(rows, { width, measure: this.measure });
  }

  protected override drawLayout(svg: SVGSVGElement, layout: ChanceLayout): void {
    drawChances(svg, layout, this.reading);
  }

  protected override render(): TemplateResult | typeof nothing {
    const { answer, layout, reading } = this;
    if (!answer || !layout) return nothing;
    const read = reading === null ? undefined : answer[reading];
    return html`<section aria-label=${this.summary} aria-describedby="summary">
      <p class="visually-hidden" id="summary">${this.summary}</p>
      <div class="picture">
        <svg aria-hidden="true"></svg>
        ${this.slider({ label: this.reads, from: 1, to: Math.max(1, answer.length), words: read?.words ?? lessons.none })}
      </div>
      ${this.staleLine()}
      ${this.data(
        html`<table>
          <thead>
            <tr>
              ${this.heads.map((head) => html`<th scope="col">${head}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${answer.map(
              ({ cells: [first = '', ...others] }) =>
                html`<tr>
                  <th scope="row">${first}</th>
                  ${others.map((cell) => html`<td>${cell}</td>`)}
                </tr>`,
            )}
          </tbody>
        </table>`,
      )}
    </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-chances-picture': ChancesPicture;
  }
}
