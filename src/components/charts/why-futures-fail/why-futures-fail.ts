import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { drawFailures } from '../../../charts/why-futures-fail/draw.ts';
import { failLayout } from '../../../charts/why-futures-fail/layout.ts';
import { FAILURES, type Outlook } from '../../../results/outlook.ts';
import { common } from '../../../text/charts.ts';
import { failText } from '../../../text/charts-more.ts';
import { ChartElement } from '../chart-element.ts';

/** One stacked bar per plan: a proven tree, and why not. */
@customElement('oo-why-futures-fail')
export class WhyFuturesFail extends ChartElement {
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
    return html`<section aria-label=${failText.name}>
      ${this.head(failText.title, failText.intro)}
      <div class="picture" role="img" aria-label=${summary}><svg @pointerover=${this.liftUnder} @pointerout=${() => this.lift(null)}></svg></div>
      ${this.data(this.table(outlook))}
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
    if (picture && this.outlook)
      drawFailures(picture, failLayout(this.outlook, { width: this.width, measure: this.measure, words: this.words }), { lifted: this.lifted });
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-why-futures-fail': WhyFuturesFail;
  }
}
