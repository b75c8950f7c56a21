import { html, nothing, type CSSResultGroup, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { drawIf } from '../../../charts/ifs/draw.ts';
import { ifLayout, yearNear, yearsOf, type IfLayout, type IfPicture } from '../../../charts/ifs/layout.ts';
import { yearAfter, type Press } from '../../../charts/reading.ts';
import { common } from '../../../text/charts.ts';
import { ifsText, pointFigures, pointWords } from '../../../text/pay-ifs.ts';
import { AnswerPicture, pictured } from '../answer-picture.ts';
import { panelStyles } from '../panel.styles.ts';

/** The chance of a proven tree by the year in which one thing happens. */
@customElement('oo-if')
export class IfPictureElement extends AnswerPicture<IfPicture, IfLayout> {
  static override styles: CSSResultGroup = [AnswerPicture.styles, panelStyles];

  @property(pictured) override answer: IfPicture | null = null;

  protected override layoutOf(picture: IfPicture, width: number): IfLayout {
    return ifLayout(picture, { width, measure: this.measure });
  }

  protected override drawLayout(svg: SVGSVGElement, layout: IfLayout): void {
    if (this.answer) drawIf(svg, layout, this.answer, this.yearRead);
  }

  private get yearRead(): number | null {
    return this.reading === null || !this.answer ? null : (yearsOf(this.answer.lines)[this.reading] ?? null);
  }

  protected override render(): TemplateResult | typeof nothing {
    const { answer, layout, yearRead } = this;
    const first = answer?.lines[0];
    if (!answer || !layout || !first) return nothing;
    const { years } = layout;
    const words = yearRead === null ? ifsText.none : pointWords(answer, yearRead);
    return html`<div data-mark=${this.mark}>
      <div class="picture">
        <svg aria-hidden="true"></svg>
        ${this.slider({ label: ifsText.slider(first.if), from: years[0] ?? 0, to: years.at(-1) ?? 0, words, plot: layout.panel.plot })}
      </div>
      <p class="read" aria-hidden="true">${yearRead === null ? html`<span class="keys">${ifsText.keys}</span>` : words}</p>
      ${this.data(this.table(answer, years))}
    </div>`;
  }

  private table({ lines, names }: IfPicture, years: readonly number[]): TemplateResult {
    return html`<table>
      <thead>
        <tr>
          <th scope="col">${ifsText.year}</th>
          ${names.map((name) => html`<th scope="col">${name}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${years.map(
          (year) =>
            html`<tr>
              <th scope="row">${year}</th>
              ${lines.map(({ curve }) => {
                const point = curve?.find((one) => one.year === year);
                return html`<td>${point ? pointFigures(point) : common.noValue}</td>`;
              })}
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  protected override get valueNow(): number | null {
    return this.yearRead;
  }

  /** Position among the years; sharper figures keep the place. */
  protected override get reading(): number | null {
    const { chosen, answer } = this;
    return !answer || chosen === null || chosen === undefined ? null : Math.min(chosen, yearsOf(answer.lines).length - 1);
  }

  protected override placeFor(press: Press): number | null | undefined {
    return this.answer ? yearAfter(press, this.reading, 0, yearsOf(this.answer.lines).length - 1) : undefined;
  }

  protected override placeAt({ clientX }: PointerEvent): number | null {
    const picture = this.renderRoot.querySelector('.picture svg')?.getBoundingClientRect();
    return picture && this.layout ? yearNear(this.layout, clientX - picture.left) : null;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-if': IfPictureElement;
  }
}
