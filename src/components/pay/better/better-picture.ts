import { html, nothing, type CSSResultGroup, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { drawBetter } from '../../../charts/better/draw.ts';
import { betterLayout, type BetterLayout } from '../../../charts/better/layout.ts';
import { yearAfter, type Press } from '../../../charts/reading.ts';
import type { BetterAnswer } from '../../../decisions/better.ts';
import type { BetterPlan } from '../../../decisions/better/final.ts';
import { betterText, planWordsRead } from '../../../text/pay-better.ts';
import { AnswerPicture, pictured } from '../answer-picture.ts';
import { betterPictureStyles } from './better-picture.styles.ts';

/** How far from a plan's place a finger or a mouse still means it, px. */
const REACH = 28;

/** Mean year of the tree against seedlings raised: the user's plans, those found, and the front that nothing beats. */
@customElement('oo-better-picture')
export class BetterPicture extends AnswerPicture<BetterAnswer, BetterLayout> {
  static override styles: CSSResultGroup = [AnswerPicture.styles, betterPictureStyles];

  @property(pictured) override answer: BetterAnswer | null = null;

  protected override layoutOf(answer: BetterAnswer, width: number): BetterLayout {
    return betterLayout(answer, { width, measure: this.measure });
  }

  protected override drawLayout(svg: SVGSVGElement, layout: BetterLayout): void {
    drawBetter(svg, layout, { plan: this.plan?.id ?? null });
  }

  private get plan(): BetterPlan | null {
    const id = this.reading === null ? undefined : this.layout?.order[this.reading];
    return this.answer?.plans.find((plan) => plan.id === id) ?? null;
  }

  protected override render(): TemplateResult | typeof nothing {
    const { answer, layout, plan } = this;
    if (!answer || !layout) return nothing;
    const words = plan ? planWordsRead(plan, answer.plans, answer.lastYear) : betterText.none;
    const slider = { label: betterText.slider, from: 1, to: Math.max(1, layout.order.length), words, plot: layout.plot };
    return html`<div>
      <div class="picture">
        <svg aria-hidden="true"></svg>
        ${layout.order.length > 0 ? this.slider(slider) : nothing}
      </div>
      <p class="read" aria-hidden="true">${plan ? words : html`<span class="keys">${betterText.keys}</span>`}</p>
      ${this.saves()}
    </div>`;
  }

  protected override get valueNow(): number {
    return (this.reading ?? 0) + 1;
  }

  protected override get reading(): number | null {
    const { chosen, layout } = this;
    return !layout || layout.order.length === 0 || chosen === null || chosen === undefined ? null : Math.min(chosen, layout.order.length - 1);
  }

  protected override placeFor(press: Press): number | null | undefined {
    return this.layout && this.layout.order.length > 0 ? yearAfter(press, this.reading, 0, this.layout.order.length - 1) : undefined;
  }

  protected override placeAt({ clientX, clientY }: PointerEvent): number | null {
    const picture = this.renderRoot.querySelector('.picture svg')?.getBoundingClientRect();
    const { layout } = this;
    if (!picture || !layout) return null;
    const places = layout.crosses.map(({ id, x, y }) => {
      // A letter that was pushed aside is pointed at where it stands.
      const { x: left, y: top } = layout.letters.find(({ plan }) => plan === id) ?? { x, y };
      return { id, far: Math.hypot(left - (clientX - picture.left), top - (clientY - picture.top)) };
    });
    const nearest = places.reduce<(typeof places)[number] | null>((near, one) => (near === null || one.far < near.far ? one : near), null);
    return nearest && nearest.far <= REACH ? layout.order.indexOf(nearest.id) : null;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-better-picture': BetterPicture;
  }
}
