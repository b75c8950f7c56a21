import { css, html, nothing, type CSSResultGroup, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { drawFromToday } from '../../charts/from-today/draw.ts';
import { fromTodayLayout, type FromTodayLayout, type FromTodayPlan } from '../../charts/from-today/layout.ts';
import { percent, percentRange } from '../../text/charts.ts';
import { today as words } from '../../text/today.ts';
import { pictured } from '../pay/answer-picture.ts';
import { ChartElement } from '../charts/chart-element.ts';
import type { PropertyValues } from 'lit';

/** Both chances of every plan on one axis: a ring when the programme began, a full mark from today. */
@customElement('oo-from-today-picture')
export class FromTodayPicture extends ChartElement {
  static override styles: CSSResultGroup = [
    ChartElement.styles,
    css`
      svg .move {
        stroke: var(--plan);
        stroke-width: 2;
        stroke-dasharray: 2 5;
        stroke-linecap: round;
      }
      svg .span {
        stroke: var(--plan);
        stroke-width: 5;
        opacity: 0.45;
      }
      svg .before {
        fill: var(--paper);
        stroke: var(--plan);
        stroke-width: 2.5;
      }
      svg .now {
        fill: var(--plan);
      }
      svg .across,
      svg .was {
        fill: var(--ink2);
      }
      svg .value {
        font-weight: 700;
      }
      @media (forced-colors: active) {
        svg .now {
          fill: CanvasText;
        }
        svg .move,
        svg .span,
        svg .before {
          stroke: CanvasText;
        }
      }
    `,
  ];

  @property(pictured) plans: readonly FromTodayPlan[] = [];

  private layout: FromTodayLayout | null = null;

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    if (this.laysOut(changed))
      this.layout = this.plans.length > 0 && this.width > 0 ? fromTodayLayout(this.plans, { width: this.width, measure: this.measure }) : null;
  }

  protected override render(): TemplateResult | typeof nothing {
    if (!this.layout) return nothing;
    return html`<section aria-label=${words.chances}>
      <div class="picture"><svg aria-hidden="true"></svg></div>
      <p class="quiet">${words.key}</p>
      ${this.data(
        html`<table>
          <thead>
            <tr>
              ${words.chanceHeads.map((head) => html`<th scope="col">${head}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${this.plans.map(
              ({ now, first }) =>
                html`<tr>
                  <th scope="row">${now.mark} ${now.name}</th>
                  <td>${percent(now.chance.value)} (${percentRange(now.chance.low, now.chance.high)})</td>
                  <td>${first ? `${percent(first.value)} (${percentRange(first.low, first.high)})` : nothing}</td>
                </tr>`,
            )}
          </tbody>
        </table>`,
      )}
    </section>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    const picture = this.renderRoot.querySelector<SVGSVGElement>('.picture svg');
    if (picture && this.layout) drawFromToday(picture, this.layout);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-from-today-picture': FromTodayPicture;
  }
}
