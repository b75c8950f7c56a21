import { css, html, nothing, type CSSResultGroup, type PropertyValues, type TemplateResult } from 'lit';
import { property } from 'lit/decorators.js';
import { common } from '../../text/charts.ts';
import { otherText } from '../charts/chart-element.ts';
import { ReadElement } from '../charts/read-element.ts';

/** An answer as a property: another one only if it says something else. */
export const pictured = {
  attribute: false,
  hasChanged: (now: unknown, before: unknown): boolean => now !== before && otherText(now, before),
} as const;

/**
 * The picture of an answer: laid out again when the answer or the width changes, drawn after each update. The `outlook` of other pictures
 * stays empty here.
 */
export abstract class AnswerPicture<A, Layout> extends ReadElement {
  static override styles: CSSResultGroup = [
    ReadElement.styles,
    css`
      .overtaken {
        position: absolute;
        right: 0;
        top: 0;
        background: var(--paper);
      }
    `,
  ];

  /** What is drawn; declared by each picture with its own type, as `@property(pictured)`. */
  abstract answer: A | null;
  /** Letter of the plan that was asked about: its colour. */
  @property() mark = 'A';

  protected layout: Layout | null = null;

  protected abstract layoutOf(answer: A, width: number): Layout;
  /** Draws into the element's `.picture svg`. */
  protected abstract drawLayout(svg: SVGSVGElement, layout: Layout): void;

  /** Goes into `.picture`: says over its corner that it is overtaken, so that nothing below moves. */
  protected overtaken(): TemplateResult | typeof nothing {
    return this.stale ? html`<p class="stale-words overtaken">${common.stale}</p>` : nothing;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    if (!this.laysOut(changed)) return;
    this.layout = this.answer && this.width > 0 ? this.layoutOf(this.answer, this.width) : null;
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    const picture = this.renderRoot.querySelector<SVGSVGElement>('.picture svg');
    if (picture && this.layout) this.drawLayout(picture, this.layout);
  }
}
