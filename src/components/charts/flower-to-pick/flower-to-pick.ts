import { css, html, nothing, type CSSResultGroup, type PropertyValues, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { rowNames } from '../../../charts/boughs/lane.ts';
import { drawFunnel } from '../../../charts/flower-to-pick/draw.ts';
import { funnelLayout, marginsOf, mostOf, stepsOf } from '../../../charts/flower-to-pick/layout.ts';
import type { GenerationOutlook, Outlook, PlanOutlook } from '../../../results/outlook.ts';
import { funnelText } from '../../../text/charts-more.ts';
import { ChartElement } from '../chart-element.ts';

const styles = css`
  .plan {
    display: grid;
    grid-template-columns: repeat(auto-fill, minmax(min(100%, 400px), 1fr));
    gap: 6px 44px;
    border-top: 1px solid var(--rule);
    padding: 12px 0 18px;
    break-inside: avoid;
  }
  .plan:first-child {
    border-top: 0;
  }
  h3 {
    grid-column: 1 / -1;
    display: flex;
    align-items: center;
    gap: 10px;
  }
  h4 {
    margin: 4px 0;
    font: 600 var(--size-label) / 1.3 var(--sans);
  }
  .panel {
    min-width: 0;
  }
`;

/** How many are left from flower to pick, per generation, on a scale of tens. */
@customElement('oo-flower-to-pick')
export class FlowerToPick extends ChartElement {
  static override styles: CSSResultGroup = [ChartElement.styles, styles];

  protected override render(): TemplateResult | typeof nothing {
    const { outlook } = this;
    if (!outlook || this.width === 0) return nothing;
    const summary = funnelText.summary(
      outlook.plans.map(({ name, generations }) => {
        const words = wordsOf(generations.at(-1));
        return { name, first: words[0] ?? '', last: words.at(-1) ?? '' };
      }),
    );
    return html`<section aria-label=${funnelText.name} aria-describedby="summary">
      ${this.head(funnelText.title, funnelText.intro)}
      <p class="visually-hidden" id="summary">${summary}</p>
      <div class="picture">${outlook.plans.map((plan) => this.plan(plan))}</div>
      ${this.data(table(outlook))}
    </section>`;
  }

  private plan(plan: PlanOutlook) {
    const names = rowNames(plan.generations);
    return html`<div
      class="plan ${this.lifted !== null && this.lifted !== plan.id ? 'resting' : ''}"
      data-mark=${plan.mark}
      data-plan=${plan.id}
      @pointerenter=${() => this.lift(plan.id)}
      @pointerleave=${() => this.lift(null)}
    >
      <h3><span class="mark" aria-hidden="true">${plan.mark}</span>${plan.name}</h3>
      ${plan.generations.map((generation, index) => {
        const name = names[index] ?? generation.name;
        return html`<div class="panel">
          <h4>${name}</h4>
          <div class="funnel" role="img" aria-label=${funnelText.panel(name, wordsOf(generation))}><svg></svg></div>
        </div>`;
      })}
    </div>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    const { outlook } = this;
    if (!outlook) return;
    const most = mostOf(outlook);
    const margins = marginsOf(outlook, this.measure);
    const pictures = [...this.renderRoot.querySelectorAll<HTMLElement>('.funnel')];
    const widths = pictures.map((picture) => Math.floor(picture.getBoundingClientRect().width));
    outlook.plans
      .flatMap(({ generations }) => generations)
      .forEach((generation, index) => {
        const picture = pictures[index]?.querySelector('svg');
        if (picture) drawFunnel(picture, funnelLayout(generation, { width: widths[index] ?? 300, most, margins, measure: this.measure }));
      });
  }
}

/** "280 flowers", "64 seedlings" …, middle values. */
const wordsOf = (generation: GenerationOutlook | undefined): string[] =>
  generation ? stepsOf(generation).map((stage) => `${funnelText.tick(Math.round(generation.stages[stage].p50))} ${funnelText.stage(stage)}`) : [];

function table({ plans }: Outlook): TemplateResult {
  return html`<table>
    <thead>
      <tr>
        ${funnelText.heads.map((head) => html`<th scope="col">${head}</th>`)}
      </tr>
    </thead>
    <tbody>
      ${plans.flatMap((plan) => {
        const names = rowNames(plan.generations);
        return plan.generations.flatMap((generation, index) =>
          stepsOf(generation).map((stage) => {
            const { p10, p50, p90 } = generation.stages[stage];
            const { middle, range } = funnelText.count(Math.round(p10), Math.round(p50), Math.round(p90));
            return html`<tr>
              <th scope="row">${plan.mark} ${plan.name}</th>
              <td>${names[index]}</td>
              <td>${funnelText.stage(stage)}</td>
              <td>${middle}</td>
              <td>${range}</td>
            </tr>`;
          }),
        );
      })}
    </tbody>
  </table>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-flower-to-pick': FlowerToPick;
  }
}
