import { html, nothing, type CSSResultGroup, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { drawRoots } from '../../../charts/graft-map/draw-roots.ts';
import { pointNear, rootsLayout, type RootsLayout } from '../../../charts/graft-map/roots.ts';
import { yearAfter, type Press } from '../../../charts/reading.ts';
import type { RootsLine } from '../../../decisions/roots-line.ts';
import { common, percent, percentRange } from '../../../text/charts.ts';
import { differenceInWords, differenceRange, ofTen } from '../../../text/pay-figures.ts';
import { rootsText, rootsWords } from '../../../text/pay-graft.ts';
import { AnswerPicture, pictured } from '../answer-picture.ts';
import { panelStyles } from '../panel.styles.ts';

export interface RootsAnswer {
  readonly roots: RootsLine;
  readonly rootChance: number;
}

/** The chance with and without a graft, by how likely the weakness is to sit in the roots. */
@customElement('oo-graft-roots')
export class GraftRoots extends AnswerPicture<RootsAnswer, RootsLayout> {
  static override styles: CSSResultGroup = [AnswerPicture.styles, panelStyles];

  @property(pictured) override answer: RootsAnswer | null = null;

  protected override layoutOf({ roots, rootChance }: RootsAnswer, width: number): RootsLayout {
    return rootsLayout(roots, rootChance, { width, measure: this.measure });
  }

  protected override drawLayout(svg: SVGSVGElement, layout: RootsLayout): void {
    drawRoots(svg, layout, this.reading === null ? null : (this.answer?.roots.points[this.reading] ?? null));
  }

  protected override render(): TemplateResult | typeof nothing {
    const { answer, layout, reading } = this;
    if (!answer || !layout) return nothing;
    const point = reading === null ? undefined : answer.roots.points[reading];
    const words = point ? rootsWords(point) : rootsText.none;
    return html`<div data-mark=${this.mark}>
      <div class="picture">
        <svg aria-hidden="true"></svg>
        ${this.overtaken()} ${this.slider({ label: rootsText.slider, from: 0, to: answer.roots.points.length - 1, words, plot: layout.panel.plot })}
      </div>
      <p class="read" aria-hidden="true">${point ? words : html`<span class="keys">${rootsText.keys}</span>`}</p>
      ${this.data(this.table(answer.roots))}
    </div>`;
  }

  private table({ points }: RootsLine): TemplateResult {
    const cell = (share: RootsLine['points'][number]['own'] | null) =>
      html`<td>${share ? html`${percent(share.value)} (${percentRange(share.low, share.high)})` : common.noValue}</td>`;
    return html`<table>
      <thead>
        <tr>
          ${rootsText.heads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${points.map(({ rootChance, grafted, own, trulyGood, difference, clear }, i) =>
          i % 2 === 0
            ? html`<tr>
                <th scope="row">${ofTen(rootChance)}</th>
                ${cell(grafted)} ${cell(trulyGood.grafted)} ${cell(own)} ${cell(trulyGood.own)}
                <td>${differenceInWords(difference, clear)} (${differenceRange(difference)})</td>
              </tr>`
            : nothing,
        )}
      </tbody>
    </table>`;
  }

  protected override get reading(): number | null {
    const { chosen, answer } = this;
    return !answer || chosen === null || chosen === undefined ? null : Math.min(chosen, answer.roots.points.length - 1);
  }

  protected override placeFor(press: Press): number | null | undefined {
    return this.answer ? yearAfter(press, this.reading, 0, this.answer.roots.points.length - 1) : undefined;
  }

  protected override placeAt({ clientX }: PointerEvent): number | null {
    const picture = this.renderRoot.querySelector('.picture svg')?.getBoundingClientRect();
    return picture && this.layout && this.answer ? pointNear(this.answer.roots, this.layout.rootChanceAt(clientX - picture.left)) : null;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-graft-roots': GraftRoots;
  }
}
