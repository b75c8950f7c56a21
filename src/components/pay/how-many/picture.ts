import { css, html, nothing, type CSSResultGroup, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { drawHowMany } from '../../../charts/how-many/draw.ts';
import { howManyLayout, type HowManyLayout } from '../../../charts/how-many/layout.ts';
import { yearAfter, type Press } from '../../../charts/reading.ts';
import type { HowManyAnswer } from '../../../decisions/how-many.ts';
import { whole } from '../../../text/charts.ts';
import { chanceLines } from '../../../text/pay-figures.ts';
import { howManySummary, howManyText, pointWords } from '../../../text/pay-how-many.ts';
import { leverWords } from '../../../text/pay-how-many-names.ts';
import { AnswerPicture, pictured } from '../answer-picture.ts';
import { amountCell, differenceCell, trulyGoodCell } from '../cells.ts';
import { panelStyles } from '../panel.styles.ts';

const pictureStyles = css`
  svg .read-level {
    stroke: var(--ink2);
    stroke-dasharray: 1 4;
  }
  svg .read-chance {
    font-weight: 600;
  }
  svg .limit-words {
    font-weight: 650;
  }
  svg .end-words[data-of='plan'] .name {
    font-weight: 650;
  }
`;

/** Chance of a proven tree by three years, against a number that the breeder chooses. */
@customElement('oo-how-many')
export class HowManyPicture extends AnswerPicture<HowManyAnswer, HowManyLayout> {
  static override styles: CSSResultGroup = [AnswerPicture.styles, panelStyles, pictureStyles];

  @property(pictured) override answer: HowManyAnswer | null = null;

  protected override layoutOf(answer: HowManyAnswer, width: number): HowManyLayout {
    return howManyLayout(answer, { width, measure: this.measure, mark: this.mark });
  }

  protected override drawLayout(svg: SVGSVGElement, layout: HowManyLayout): void {
    drawHowMany(svg, layout, { reading: this.reading });
  }

  protected override render(): TemplateResult | typeof nothing {
    const { answer, layout, reading } = this;
    if (!answer || !layout || answer.points.length === 0) return nothing;
    const point = reading === null ? undefined : answer.points[reading];
    const words = point ? pointWords(answer, point) : howManyText.none;
    return html`<section data-mark=${this.mark} aria-labelledby="title">
      <h2 id="title" class="visually-hidden">${leverWords[answer.lever].question}</h2>
      <p class="visually-hidden">${howManySummary(answer)}</p>
      <div class="picture">
        <svg aria-hidden="true"></svg>
        ${this.slider({ label: howManyText.slider, from: 1, to: answer.points.length, words, plot: layout.panel.plot })}
      </div>
      <p class="read" aria-hidden="true">${point ? words : html`<span class="keys">${howManyText.keys(this.mark)}</span>`}</p>
      ${this.data(table(answer))}
    </section>`;
  }

  protected override get valueNow(): number {
    return (this.reading ?? 0) + 1;
  }

  protected override get reading(): number | null {
    const { chosen, answer } = this;
    if (!answer || chosen === null || chosen === undefined) return null;
    return Math.min(chosen, answer.points.length - 1);
  }

  protected override placeFor(press: Press): number | null | undefined {
    return this.answer ? yearAfter(press, this.reading, 0, this.answer.points.length - 1) : undefined;
  }

  protected override placeAt({ clientX }: PointerEvent): number | null {
    const picture = this.renderRoot.querySelector('.picture svg')?.getBoundingClientRect();
    if (!picture || !this.layout) return null;
    const at = clientX - picture.left;
    const { places } = this.layout;
    return places.reduce((best, { x }, i) => (Math.abs(x - at) < Math.abs((places[best]?.x ?? Infinity) - at) ? i : best), 0);
  }
}

/** Every figure of the picture, with its interval. */
function table({ lever, years, points }: HowManyAnswer): TemplateResult {
  return html`<table>
    <thead>
      <tr>
        ${howManyText.tableHeads(lever, years).map((head) => html`<th scope="col">${head}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${points.map(
        ({ value, chances, outcome, minusPresent }) =>
          html`<tr>
            <th scope="row">${whole(value)}</th>
            ${chances.map((chance) => {
              const [figure, range] = chanceLines(chance);
              return html`<td>${figure}<small>${range}</small></td>`;
            })}
            ${trulyGoodCell(outcome)} ${amountCell(outcome.seedlings)} ${amountCell(outcome.busiestHours)}
            ${differenceCell(minusPresent, howManyText.asItStands)}
          </tr>`,
      )}
    </tbody>
  </table>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-how-many': HowManyPicture;
  }
}
