import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { Programme } from '../../model/programme.ts';
import { shared } from '../../styles/shared.ts';
import { planSentence, today as words } from '../../text/today.ts';
import { emitChange } from '../fields/change.ts';
import { pageStyles } from '../pages/page.styles.ts';
import { pieces } from '../pages/parts.ts';
import { choice } from '../pay/choice.ts';
import './from-today-picture.ts';
import { leftOut } from './left-out.ts';
import { proposed, TodayElement } from './today-element.ts';
import { todayStyles } from './today.styles.ts';

/**
 * The forecast from what stands beside the first one, with the switch that lets all pages count from it.
 * @fires oo-change with the spring from which the programme is forecast
 */
@customElement('oo-today')
export class OoToday extends TodayElement {
  static override styles = [...shared, pageStyles, todayStyles];

  private readonly turn = ({ target }: Event): void => {
    if (!(target instanceof HTMLInputElement)) return;
    const { year } = this;
    emitChange(this, { path: ['log', 'forecastFrom'], value: target.checked ? year : undefined, label: target.checked ? words.on(year) : words.off });
  };

  private readonly choose = (text: string): void => {
    const year = Number(text);
    this.runs.today.choose(year);
    if (this.programmes.state.programme.log.forecastFrom !== undefined) emitChange(this, { path: ['log', 'forecastFrom'], value: year, label: words.on(year) });
  };

  protected override render(): TemplateResult | typeof nothing {
    const { programme, runnable } = this.programmes.state;
    if (programme.log.batches.length === 0) return nothing;
    const { now, first, failure, done, year } = this.runs.today.state;
    const { overtaken } = this;
    return html`<section aria-labelledby="today-title">
      <h2 id="today-title">${words.title}</h2>
      <p class="intro">${words.intro}</p>
      <div role="status">
        ${failure === null ? nothing : html`<p class="problems">${words.failed(failure)}</p>`}
        ${now === null && failure === null ? html`<p class="quiet">${words.waiting}</p>` : nothing}
        ${overtaken && now ? html`<p class="stale-words">${words.stale}</p>` : nothing}
      </div>
      ${
        now && year !== null
          ? html`<ul class="said">
                ${now.plans.map((plan, p) => html`<li><span>${pieces(planSentence(plan, first?.plans[p], now.lastYear, year))}</span></li>`)}
              </ul>
              <oo-from-today-picture
                .plans=${now.plans.map((plan, p) => ({ now: plan, first: first?.plans[p]?.chance ?? null }))}
                ?stale=${overtaken}
              ></oo-from-today-picture>`
          : nothing
      }
      <details class="count-from">
        <summary>${words.everyPage(programme.log.forecastFrom ?? null)}</summary>
        ${this.switch(programme)}
        <p class="quiet ground">${words.rates} ${done > 0 ? words.futures(done) : nothing}</p>
      </details>
      ${leftOut(runnable, this.standing())}
    </section>`;
  }

  private switch({ startYear, lastYear, log }: Programme): TemplateResult {
    const last = Math.min(lastYear, Math.max(this.year, proposed({ ...this.programmes.state.programme })));
    const years = Array.from({ length: last - startYear + 1 }, (_, i) => String(startYear + i));
    return html`<div class="switch">
      <label class="tick"
        ><input type="checkbox" .checked=${live(log.forecastFrom !== undefined)} @change=${this.turn} /><span>${words.switch(this.year)}</span></label
      >
      <p class="quiet">${words.switchNote}</p>
      <div class="year">
        ${choice(
          words.from,
          years.map((id) => ({ id, name: id })),
          String(this.year),
          this.choose,
        )}
        <span class="quiet">${words.fromNote}</span>
      </div>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-today': OoToday;
  }
}
