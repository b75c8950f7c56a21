import { html, nothing, type CSSResultGroup, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { drawOpen } from '../../../charts/open-or-crossed/draw.ts';
import { openLayout, rowUnder, type OpenLayout } from '../../../charts/open-or-crossed/layout.ts';
import { placeAfter, type Press } from '../../../charts/reading.ts';
import type { OpenWay } from '../../../decisions/open.ts';
import { openText, readWay } from '../../../text/pay-open.ts';
import { AnswerPicture, pictured } from '../answer-picture.ts';
import { openStyles } from './open.styles.ts';

export interface OpenPicture {
  readonly ways: readonly OpenWay[];
  readonly startYear: number;
  readonly lastYear: number;
}

/** The ways to pollinate one generation: the years in which they have a proven tree, on one calendar, and their chances. */
@customElement('oo-open-picture')
export class OpenPictureElement extends AnswerPicture<OpenPicture, OpenLayout> {
  static override styles: CSSResultGroup = [AnswerPicture.styles, openStyles];

  @property(pictured) override answer: OpenPicture | null = null;

  protected override layoutOf({ ways, startYear, lastYear }: OpenPicture, width: number): OpenLayout {
    return openLayout(ways, { startYear, lastYear, width, measure: this.measure });
  }

  protected override drawLayout(svg: SVGSVGElement, layout: OpenLayout): void {
    drawOpen(svg, layout, this.reading);
  }

  protected override render(): TemplateResult | typeof nothing {
    const { answer, layout, reading } = this;
    if (!answer || !layout) return nothing;
    const way = reading === null ? undefined : answer.ways[reading];
    const words = way ? readWay(way, answer.lastYear) : openText.none;
    const plot = { left: 0, top: layout.top, right: layout.width, bottom: layout.bottom };
    return html`<div data-mark=${this.mark}>
      <div class="picture">
        <svg aria-hidden="true"></svg>
        ${this.slider({ label: openText.slider, from: 1, to: answer.ways.length, words, plot })}
      </div>
      <p class="read" aria-hidden="true">${way ? words : html`<span class="keys">${openText.keys}</span>`}</p>
      ${this.saves()}
    </div>`;
  }

  protected override get valueNow(): number {
    return (this.reading ?? 0) + 1;
  }

  protected override get reading(): number | null {
    const { chosen, answer } = this;
    return !answer || chosen === null || chosen === undefined ? null : Math.min(chosen, answer.ways.length - 1);
  }

  protected override placeFor(press: Press): number | null | undefined {
    return placeAfter(press, this.reading, this.answer?.ways.map((_, i) => String(i)) ?? []);
  }

  protected override placeAt({ clientY }: PointerEvent): number | null {
    const picture = this.renderRoot.querySelector('.picture svg')?.getBoundingClientRect();
    return picture && this.layout ? rowUnder(this.layout.rows, clientY - picture.top) : null;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-open-picture': OpenPictureElement;
  }
}
