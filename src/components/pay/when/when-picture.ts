import { html, nothing, type CSSResultGroup, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { drawWhen } from '../../../charts/when-to-graft/draw.ts';
import { ageNear, whenLayout, type WhenLayout } from '../../../charts/when-to-graft/layout.ts';
import { yearAfter, type Press } from '../../../charts/reading.ts';
import type { ChanceAt, WhenAnswer } from '../../../decisions/when.ts';
import { common, percent, percentRange } from '../../../text/charts.ts';
import { decimals, differenceInWords, differenceRange } from '../../../text/pay-figures.ts';
import { ageHead, ageWords, whenText } from '../../../text/pay-when.ts';
import { AnswerPicture, pictured } from '../answer-picture.ts';
import { panelStyles } from '../panel.styles.ts';

/** What is saved of ten weak seedlings, and what the plan comes to, by age at grafting. */
@customElement('oo-when-to-graft')
export class WhenToGraft extends AnswerPicture<WhenAnswer, WhenLayout> {
  static override styles: CSSResultGroup = [AnswerPicture.styles, panelStyles];

  @property(pictured) override answer: WhenAnswer | null = null;

  @property({ type: Number }) lastYear = 0;

  protected override layoutOf(answer: WhenAnswer, width: number): WhenLayout {
    return whenLayout(answer, { width, measure: this.measure, mark: this.mark, lastYear: this.lastYear });
  }

  protected override drawLayout(svg: SVGSVGElement, layout: WhenLayout): void {
    drawWhen(svg, layout, this.age);
  }

  private get age(): ChanceAt | null {
    return this.reading === null ? null : (this.answer?.chances[this.reading] ?? null);
  }

  protected override render(): TemplateResult | typeof nothing {
    const { answer, layout, age } = this;
    if (!answer || !layout) return nothing;
    const words = age ? ageWords(answer, age) : whenText.none;
    return html`<div data-mark=${this.mark}>
      <div class="picture">
        <svg aria-hidden="true"></svg>
        ${this.overtaken()} ${this.slider({ label: whenText.slider, from: 1, to: answer.chances.length, words, plot: layout.plot })}
      </div>
      <p class="read" aria-hidden="true">${age ? words : html`<span class="keys">${whenText.keys}</span>`}</p>
      ${this.data(this.table(answer))}
    </div>`;
  }

  private table({ chances, curve }: WhenAnswer): TemplateResult {
    return html`<table>
      <thead>
        <tr>
          ${whenText.heads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${chances.map(({ month, outcome: { chance, trulyGood }, minusBest }) => {
          const saved = curve.reduce((near, point) => (Math.abs(point.month - month) < Math.abs(near.month - month) ? point : near));
          return html`<tr>
            <th scope="row">${ageHead(month)}</th>
            <td>${decimals(10 * saved.alive.mean)} (${decimals(10 * saved.alive.p10)}–${decimals(10 * saved.alive.p90)})</td>
            <td>${decimals(10 * saved.take.mean)} (${decimals(10 * saved.take.p10)}–${decimals(10 * saved.take.p90)})</td>
            <td>${decimals(saved.saved.mean)} (${decimals(saved.saved.p10)}–${decimals(saved.saved.p90)})</td>
            <td>${percent(chance.value)} (${percentRange(chance.low, chance.high)})</td>
            <td>${trulyGood ? `${percent(trulyGood.value)} (${percentRange(trulyGood.low, trulyGood.high)})` : common.noValue}</td>
            <td>${minusBest ? `${differenceInWords(minusBest.chance, minusBest.clear)} (${differenceRange(minusBest.chance)})` : common.noValue}</td>
          </tr>`;
        })}
      </tbody>
    </table>`;
  }

  protected override get valueNow(): number {
    return (this.reading ?? 0) + 1;
  }

  protected override get reading(): number | null {
    const { chosen, answer } = this;
    return !answer || chosen === null || chosen === undefined ? null : Math.min(chosen, answer.chances.length - 1);
  }

  protected override placeFor(press: Press): number | null | undefined {
    return this.answer ? yearAfter(press, this.reading, 0, this.answer.chances.length - 1) : undefined;
  }

  protected override placeAt({ clientX }: PointerEvent): number | null {
    const picture = this.renderRoot.querySelector('.picture svg')?.getBoundingClientRect();
    return picture && this.layout && this.answer ? ageNear(this.answer, this.layout.monthAt(clientX - picture.left)) : null;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-when-to-graft': WhenToGraft;
  }
}
