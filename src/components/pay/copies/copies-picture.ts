import { html, nothing, type CSSResultGroup, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { drawCopies } from '../../../charts/copies/draw.ts';
import { copiesLayout, type CopiesLayout } from '../../../charts/copies/layout.ts';
import { yearAfter, type Press } from '../../../charts/reading.ts';
import type { CopiesAnswer } from '../../../decisions/copies.ts';
import { percent } from '../../../text/charts.ts';
import { copiesText, wayName, yearWords } from '../../../text/pay-copies.ts';
import { AnswerPicture, pictured } from '../answer-picture.ts';
import { panelStyles } from '../panel.styles.ts';

/** The chance that the last copy of a tree is lost, by year. */
@customElement('oo-copies')
export class CopiesPicture extends AnswerPicture<CopiesAnswer, CopiesLayout> {
  static override styles: CSSResultGroup = [AnswerPicture.styles, panelStyles];

  @property(pictured) override answer: CopiesAnswer | null = null;

  protected override layoutOf(answer: CopiesAnswer, width: number): CopiesLayout {
    return copiesLayout(answer, { width, measure: this.measure });
  }

  protected override drawLayout(svg: SVGSVGElement, layout: CopiesLayout): void {
    if (this.answer) drawCopies(svg, layout, this.answer, this.reading);
  }

  private get years(): number {
    return this.answer?.ways[0]?.lostBy.length ?? 0;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { answer, layout, reading } = this;
    if (!answer || !layout) return nothing;
    const words = reading === null ? copiesText.none : yearWords(answer, reading);
    const { startYear } = answer;
    return html`<div data-mark=${this.mark}>
      <div class="picture">
        <svg aria-hidden="true"></svg>
        ${this.overtaken()} ${this.slider({ label: copiesText.slider, from: startYear, to: startYear + this.years - 1, words, plot: layout.panel.plot })}
      </div>
      <p class="read" aria-hidden="true">${reading === null ? html`<span class="keys">${copiesText.keys}</span>` : words}</p>
      ${this.data(this.table(answer))}
    </div>`;
  }

  private table({ ways, startYear }: CopiesAnswer): TemplateResult {
    return html`<table>
      <thead>
        <tr>
          <th scope="col">${copiesText.year}</th>
          ${ways.map((way) => html`<th scope="col">${wayName(way)}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${Array.from(
          { length: this.years },
          (_, winters) =>
            html`<tr>
              <th scope="row">${startYear + winters}</th>
              ${ways.map(({ lostBy }) => html`<td>${percent(lostBy[winters] ?? 0)}</td>`)}
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  protected override get valueNow(): number {
    return (this.answer?.startYear ?? 0) + (this.reading ?? 0);
  }

  protected override get reading(): number | null {
    const { chosen, answer } = this;
    return !answer || chosen === null || chosen === undefined ? null : Math.min(chosen, this.years - 1);
  }

  protected override placeFor(press: Press): number | null | undefined {
    return this.answer ? yearAfter(press, this.reading, 0, this.years - 1) : undefined;
  }

  protected override placeAt({ clientX }: PointerEvent): number | null {
    const picture = this.renderRoot.querySelector('.picture svg')?.getBoundingClientRect();
    return picture && this.layout ? this.layout.wintersAt(clientX - picture.left) : null;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-copies': CopiesPicture;
  }
}
