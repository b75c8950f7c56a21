import { html, nothing, type CSSResultGroup, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { yearAfter, type Press } from '../../../charts/reading.ts';
import { drawTrial } from '../../../charts/trial/draw.ts';
import { trialLayout, type TrialLayout } from '../../../charts/trial/layout.ts';
import type { TrialPoint, TrialWatch } from '../../../decisions/trial.ts';
import { common, whole } from '../../../text/charts.ts';
import { handCount } from '../../../text/sentences.ts';
import { gainWords, pointOf, resultWords, trialText, trialWords, worthRange, worthWords } from '../../../text/pay-trial.ts';
import { AnswerPicture, pictured } from '../answer-picture.ts';
import { panelStyles } from '../panel.styles.ts';
import { trialStyles } from './trial.styles.ts';

export interface TrialPicture {
  readonly watched: readonly TrialWatch[];
}

/** What a trial is worth by its size, counted after one summer and two, with what knowing for sure would be worth. */
@customElement('oo-trial-picture')
export class TrialPictureElement extends AnswerPicture<TrialPicture, TrialLayout> {
  static override styles: CSSResultGroup = [AnswerPicture.styles, panelStyles, trialStyles];

  @property(pictured) override answer: TrialPicture | null = null;

  protected override layoutOf({ watched }: TrialPicture, width: number): TrialLayout {
    return trialLayout(watched, { width, measure: this.measure });
  }

  protected override drawLayout(svg: SVGSVGElement, layout: TrialLayout): void {
    drawTrial(svg, layout, this.reading);
  }

  private get counts(): readonly number[] {
    return this.answer?.watched.at(-1)?.points.map(({ n }) => n) ?? [];
  }

  protected override render(): TemplateResult | typeof nothing {
    const { answer, layout, reading, counts } = this;
    if (!answer || !layout) return nothing;
    const words = reading === null ? trialText.none : trialWords(answer.watched, reading);
    return html`<div data-mark=${this.mark}>
      <div class="picture">
        <svg aria-hidden="true"></svg>
        ${this.slider({ label: trialText.slider, from: counts[0] ?? 0, to: counts.at(-1) ?? 0, words, plot: layout.panel.plot })}
      </div>
      <p class="read" aria-hidden="true">${reading === null ? html`<span class="keys">${trialText.keys}</span>` : words}</p>
      ${this.data(this.table(answer))}
    </div>`;
  }

  private table({ watched }: TrialPicture): TemplateResult {
    const [one, two] = [watched[0], watched.at(-1)];
    const worth = (point: TrialPoint | undefined) =>
      html`<td>${point ? html`${worthWords(point.worth, point.measurable)} (${worthRange(point.worth)})` : nothing}</td>`;
    const gain = (interval: TrialPoint['ifWaiting'] | null) => html`<td>${interval ? gainWords(interval) : common.noValue}</td>`;
    return html`<table>
      <thead>
        <tr>
          ${trialText.tableHeads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${two?.points.map(
          (point) =>
            html`<tr>
              <th scope="row">${String(point.n)} + ${String(point.n)}</th>
              ${worth(one && pointOf(one, point.n))} ${worth(point)} ${gain(point.ifWaiting)} ${gain(point.beside)}
              <td>${point.cost.raised === null ? common.noValue : whole(handCount(point.cost.raised))}</td>
              <td>${point.cost.hours === null ? common.noValue : whole(handCount(point.cost.hours))}</td>
              <td>${point.changes ? `${resultWords(point.changes, point.n)}: ${trialText.ways[point.changes.then]}` : common.noValue}</td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  protected override get reading(): number | null {
    const { chosen } = this;
    return chosen === null || chosen === undefined || this.counts.length === 0 ? null : chosen;
  }

  protected override placeFor(press: Press): number | null | undefined {
    const [first, last] = [this.counts[0], this.counts.at(-1)];
    return first === undefined || last === undefined ? undefined : yearAfter(press, this.reading, first, last);
  }

  protected override placeAt({ clientX }: PointerEvent): number | null {
    const picture = this.renderRoot.querySelector('.picture svg')?.getBoundingClientRect();
    return picture && this.layout ? this.layout.nAt(clientX - picture.left) : null;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-trial-picture': TrialPictureElement;
  }
}
