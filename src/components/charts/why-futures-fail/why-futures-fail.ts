import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { drawFailures } from '../../../charts/why-futures-fail/draw.ts';
import { failLayout, type FailLayout } from '../../../charts/why-futures-fail/layout.ts';
import { failPlaces, type FailPlace } from '../../../charts/why-futures-fail/places.ts';
import { FAILURES, type Outlook } from '../../../results/outlook.ts';
import { common } from '../../../text/charts.ts';
import { failText } from '../../../text/charts-more.ts';
import { readText } from '../../../text/charts-read.ts';
import { PlaceElement } from '../place-element.ts';

/** One stacked bar per plan: a proven tree, and why not. */
@customElement('oo-why-futures-fail')
export class WhyFuturesFail extends PlaceElement<FailPlace> {
  private layout: FailLayout | null = null;

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    const { outlook, width } = this;
    if (!outlook || width === 0) this.layout = null;
    else if (this.laysOut(changed)) this.layout = failLayout(outlook, { width, measure: this.measure, words: this.words });
    this.places = this.layout ? failPlaces(this.layout, (id) => outlook?.plans.find((plan) => plan.id === id)?.name ?? id) : [];
  }

  protected override render(): TemplateResult | typeof nothing {
    const { outlook } = this;
    if (!outlook || this.width === 0) return nothing;
    const summary = failText.summary(
      outlook.plans.map(({ name, chance, failures }) => {
        const worst = [...FAILURES].sort((a, b) => failures[b] - failures[a])[0];
        return {
          name,
          chance: chance.value,
          reason: worst !== undefined && failures[worst] > 0 ? worst : null,
          share: worst === undefined ? 0 : failures[worst],
        };
      }),
    );
    return html`<section aria-label=${failText.name} aria-describedby="summary">
      ${this.head(failText.title, failText.intro)}
      <p class="visually-hidden" id="summary">${summary}</p>
      <div class="picture" @pointermove=${this.onPointer} @pointerdown=${this.onPointer} @pointerleave=${this.onLeave}>
        <svg aria-hidden="true" @pointerover=${this.liftUnder} @pointerout=${() => this.lift(null)}></svg>
        ${this.placeSlider(readText.failSlider)}
      </div>
      ${this.saidWords(readText.keys)} ${this.data(this.table(outlook))}
    </section>`;
  }

  private table({ plans }: Outlook): TemplateResult {
    const reasons = FAILURES.filter((reason) => plans.some(({ failures }) => failures[reason] > 0));
    return html`<table>
      <thead>
        <tr>
          <th scope="col">${common.planHead}</th>
          <th scope="col">${failText.success.long}</th>
          ${reasons.map((reason) => html`<th scope="col">${failText.failure(reason).long}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${plans.map(
          ({ mark, name, chance, failures }) =>
            html`<tr>
              <th scope="row">${mark} ${name}</th>
              <td>${failText.percent(chance.value)}</td>
              ${reasons.map((reason) => html`<td>${failText.percent(failures[reason])}</td>`)}
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    const picture = this.renderRoot.querySelector<SVGSVGElement>('.picture svg');
    if (picture && this.layout) drawFailures(picture, this.layout, { lifted: this.lifted, place: this.place });
  }

  /** The segment under the pointer, on a bar; a thin one gives way to none, so the nearest is taken. */
  protected override placeAt({ clientX, clientY }: PointerEvent): number | null {
    const picture = this.renderRoot.querySelector('.picture svg')?.getBoundingClientRect();
    if (!picture) return null;
    const [px, py] = [clientX - picture.left, clientY - picture.top];
    const off = (at: number, from: number, size: number) => Math.max(0, from - at, at - from - size);
    return this.nearest(({ x, y, width, height }) => (off(py, y, height) > 0 ? Infinity : off(px, x, width)), Number.MAX_VALUE);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-why-futures-fail': WhyFuturesFail;
  }
}
