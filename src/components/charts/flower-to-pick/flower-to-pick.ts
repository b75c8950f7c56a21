import { css, html, nothing, type CSSResultGroup, type PropertyValues, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { rowNames } from '../../../charts/boughs/lane.ts';
import { drawFunnel } from '../../../charts/flower-to-pick/draw.ts';
import { funnelLayout, marginsOf, mostOf, stepsOf, type FunnelLayout } from '../../../charts/flower-to-pick/layout.ts';
import { stepPlaces, type StepPlace } from '../../../charts/flower-to-pick/places.ts';
import type { GenerationOutlook, Outlook, PlanOutlook } from '../../../results/outlook.ts';
import { funnelText } from '../../../text/charts-more.ts';
import { readText } from '../../../text/charts-read.ts';
import { PlaceElement } from '../place-element.ts';

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
export class FlowerToPick extends PlaceElement<StepPlace> {
  static override styles: CSSResultGroup = [PlaceElement.styles, styles];

  private layouts: readonly FunnelLayout[] = [];

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    if (this.laysOut(changed)) this.places = this.outlook ? stepPlaces(this.outlook) : [];
  }

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
      <div class="picture" @pointermove=${this.onPointer} @pointerdown=${this.onPointer} @pointerleave=${this.onLeave}>
        ${outlook.plans.map((plan) => this.plan(plan))} ${this.placeSlider(readText.funnelSlider)}
      </div>
      ${this.saidWords(readText.keysGeneration)} ${this.data(table(outlook))}
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
          <div class="funnel"><svg aria-hidden="true"></svg></div>
        </div>`;
      })}
    </div>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    const { outlook, place } = this;
    if (!outlook) return;
    const pictures = [...this.renderRoot.querySelectorAll<HTMLElement>('.funnel')];
    if (this.laysOut(changed)) this.layouts = this.layOut(outlook, pictures);
    this.layouts.forEach((layout, panel) => {
      const picture = pictures[panel]?.querySelector('svg');
      if (picture) drawFunnel(picture, layout, place?.panel === panel ? place.step : null);
    });
  }

  /** The panels share one scale; their widths are known only once they stand. */
  private layOut(outlook: Outlook, pictures: readonly HTMLElement[]): FunnelLayout[] {
    const { measure } = this;
    const [most, margins] = [mostOf(outlook), marginsOf(outlook, measure)];
    const widths = pictures.map((picture) => Math.floor(picture.getBoundingClientRect().width));
    return outlook.plans
      .flatMap(({ generations }) => generations)
      .map((generation, index) => funnelLayout(generation, { width: widths[index] ?? 300, most, margins, measure }));
  }

  /** The step at the height of the pointer, on the panel it is on. */
  protected override placeAt({ clientX, clientY }: PointerEvent): number | null {
    const boxes = [...this.renderRoot.querySelectorAll('.funnel')].map((picture) => picture.getBoundingClientRect());
    const panel = boxes.findIndex(({ left, right, top, bottom }) => clientX >= left && clientX <= right && clientY >= top && clientY <= bottom);
    const steps = this.layouts[panel]?.steps ?? [];
    const y = clientY - (boxes[panel]?.top ?? 0);
    return this.nearest((place) => (place.panel === panel ? Math.abs((steps[place.step]?.y ?? 0) - y) : Infinity), Number.MAX_VALUE);
  }
}

/** "280 flowers", "64 seedlings" …, middle values. */
const wordsOf = (generation: GenerationOutlook | undefined): string[] =>
  generation ? stepsOf(generation).map((stage) => funnelText.amount(stage, Math.round(generation.stages[stage].p50))) : [];

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
