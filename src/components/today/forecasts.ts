import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { shared } from '../../styles/shared.ts';
import { today as words } from '../../text/today.ts';
import { pageStyles } from '../pages/page.styles.ts';
import './fared.ts';
import { TodayElement } from './today-element.ts';
import './today-picture.ts';
import { todayStyles } from './today.styles.ts';

/** Chance by year from today with the first forecast behind it, plan by plan; and how earlier forecasts fared. */
@customElement('oo-forecasts')
export class OoForecasts extends TodayElement {
  static override styles = [...shared, pageStyles, todayStyles];

  protected override render(): TemplateResult | typeof nothing {
    const { runnable } = this.programmes.state;
    if (runnable.log.batches.length === 0) return nothing;
    const { now, first, year } = this.runs.today.state;
    return html`${
        now && year !== null
          ? html`<section aria-labelledby="by-year-title">
              <h2 id="by-year-title">${words.byYear}</h2>
              <p class="intro">${words.byYearIntro}</p>
              <div class="pictures">
                ${now.plans.map(
                  (plan, p) =>
                    html`<div>
                      <h3><span class="mark" data-mark=${plan.mark}>${plan.mark}</span><span>${plan.name}</span></h3>
                      <oo-today-picture
                        .answer=${{ now: plan, first: first?.plans[p] ?? null, year }}
                        .mark=${plan.mark}
                        ?stale=${this.overtaken}
                      ></oo-today-picture>
                    </div>`,
                )}
              </div>
            </section>`
          : nothing
      } <oo-fared .programme=${runnable} .today=${this.standing()} .first=${first} ?stale=${this.overtaken}></oo-fared>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-forecasts': OoForecasts;
  }
}
