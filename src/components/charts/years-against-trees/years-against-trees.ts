import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shortName } from '../../../charts/marks.ts';
import { drawClouds } from '../../../charts/years-against-trees/draw.ts';
import { cloudLayout, type CloudLayout, type Futures } from '../../../charts/years-against-trees/layout.ts';
import { cloudPlaces, type CloudPlace } from '../../../charts/years-against-trees/places.ts';
import type { Outlook } from '../../../results/outlook.ts';
import { chanceText, common, percentNumber } from '../../../text/charts.ts';
import { cloudText } from '../../../text/charts-more.ts';
import { readText } from '../../../text/charts-read.ts';
import { PlaceElement } from '../place-element.ts';

/** How far from a place the pointer still reads it, px, where it points at no plan. */
const NEAR = 60;

/** Year of a proven tree against seedlings raised: a cloud per plan, and a strip for the futures that got none. */
@customElement('oo-years-against-trees')
export class YearsAgainstTrees extends PlaceElement<CloudPlace> {
  /** Every future of every plan. */
  @property({ attribute: false }) futures: readonly Futures[] = [];

  private layout: CloudLayout | null = null;

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    const { outlook, futures, width } = this;
    // The clouds take a while: they are laid out anew only when what they show has changed.
    if (!outlook || width === 0 || futures.length === 0) this.layout = null;
    else if (this.laysOut(changed)) this.layout = cloudLayout(outlook, futures, { width, measure: this.measure, words: this.words });
    this.places = this.layout ? cloudPlaces(this.layout, (id) => outlook?.plans.find((plan) => plan.id === id)?.name ?? id) : [];
  }

  protected override render(): TemplateResult | typeof nothing {
    const { outlook, layout } = this;
    if (!outlook || this.width === 0) return nothing;
    if (!layout) return html`<section aria-label=${cloudText.name}>${this.head(cloudText.title, cloudText.missing)}</section>`;
    const named = layout.clouds.map((cloud) => {
      const plan = outlook.plans.find(({ id }) => id === cloud.plan);
      return { cloud, name: plan ? shortName(plan, this.words) : cloud.plan };
    });
    const summary = cloudText.summary(named.map(({ name, cloud }) => ({ name, year: cloud.median?.year ?? null, seedlings: cloud.median?.seedlings ?? null })));
    return html`<section aria-label=${cloudText.name} aria-describedby="summary">
      ${this.head(cloudText.title, layout.dropped ? `${cloudText.intro} ${chanceText.starts(layout.calendar.firstYear)}` : cloudText.intro)}
      <p class="visually-hidden" id="summary">${summary}</p>
      <div class="picture" @pointermove=${this.onPointer} @pointerdown=${this.onPointer} @pointerleave=${this.onLeave}>
        <svg aria-hidden="true" @pointerover=${this.liftUnder} @pointerout=${() => this.lift(null)}></svg>
        ${this.placeSlider(readText.cloudSlider)}
      </div>
      ${this.saidWords(readText.keys)}
      ${
        layout.labels.length > 0
          ? nothing
          : html`<ul class="plans">
              ${named.map(
                ({ name, cloud }) =>
                  html`<li data-mark=${cloud.mark}>
                    <span class="mark" aria-hidden="true">${cloud.mark}</span
                    ><span
                      ><b>${name}</b>: ${cloud.median ? cloudText.half(cloud.median.year, cloud.median.seedlings) : cloudText.few};
                      ${cloudText.noTree(cloud.noTree)}</span
                    >
                  </li>`,
              )}
            </ul>`
      }
      ${this.data(this.table(outlook, layout))}
    </section>`;
  }

  private table({ plans }: Outlook, { clouds }: CloudLayout): TemplateResult {
    return html`<table>
      <thead>
        <tr>
          ${cloudText.heads.map((head) => html`<th scope="col">${head}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${clouds.map(
          ({ plan, mark, median, failedSeedlings, noTree }) =>
            html`<tr>
              <th scope="row">${mark} ${plans.find(({ id }) => id === plan)?.name}</th>
              <td>${percentNumber(1 - noTree)}</td>
              <td>${median?.year ?? common.noValue}</td>
              <td>${median?.seedlings ?? common.noValue}</td>
              <td>${failedSeedlings ?? common.noValue}</td>
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    const picture = this.renderRoot.querySelector<SVGSVGElement>('.picture svg');
    if (picture && this.layout) drawClouds(picture, this.layout, { lifted: this.lifted, place: this.place });
  }

  /** What the pointer is on: the nearest place of the plan it points at, else the nearest of all. */
  protected override placeAt({ clientX, clientY }: PointerEvent): number | null {
    const picture = this.renderRoot.querySelector('.picture svg')?.getBoundingClientRect();
    if (!picture) return null;
    const pointed = this.shadowRoot?.elementsFromPoint(clientX, clientY).map((part) => part.getAttribute('data-plan')) ?? [];
    const plan = pointed.find((id) => id !== null);
    return this.nearest(
      ({ plan: own, x, y }) => (plan === undefined || plan === own ? Math.hypot(picture.left + x - clientX, picture.top + y - clientY) : Infinity),
      plan === undefined ? NEAR : Number.MAX_VALUE,
    );
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-years-against-trees': YearsAgainstTrees;
  }
}
