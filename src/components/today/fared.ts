import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Programme } from '../../model/programme.ts';
import type { Fared, FaredCount, FaredYear, Verdict } from '../../results/fared.ts';
import { forecastGeneration, readForecast, type Forecast, type ForecastGeneration } from '../../results/forecast.ts';
import { hashOf } from '../../results/hash.ts';
import type { Outlook } from '../../results/outlook.ts';
import { roundsOf } from '../../seasonlog/rounds.ts';
import { fared } from '../../seasonlog/today-fared.ts';
import type { Today } from '../../seasonlog/today-types.ts';
import { shared } from '../../styles/shared.ts';
import { longDate } from '../../text/handout.ts';
import { sealed } from '../../text/tell.ts';
import { faredSentence, faredText as words } from '../../text/today.ts';
import { saveRow } from '../charts/data-table.ts';
import { chooseFile } from '../files.ts';
import { pageStyles } from '../pages/page.styles.ts';
import { choice } from '../pay/choice.ts';
import './fared-picture.ts';
import { todayStyles } from './today.styles.ts';

/** What one forecast said of a plan, and from which spring. */
interface Said {
  readonly generations: readonly ForecastGeneration[];
  readonly firstYear: number;
  readonly lastYear: number;
}

const FIRST = 'first';
const missed = (verdict: Verdict) => verdict === 'before' || verdict === 'after' || verdict === 'overdue';

/** What an earlier forecast said of each stage, beside what the log says; a sealed one can be opened. */
@customElement('oo-fared')
export class OoFared extends LitElement {
  static override styles = [...shared, pageStyles, todayStyles];

  @property({ attribute: false }) programme!: Programme;
  @property({ attribute: false }) today!: Today;
  /** The first forecast, counted again; null until it is there. */
  @property({ attribute: false }) first: Outlook | null = null;
  @property({ type: Boolean }) stale = false;

  @state() private plan = '';
  @state() private opened: { readonly forecast: Forecast; readonly same: boolean } | null = null;
  @state() private which = FIRST;
  @state() private said: readonly string[] = [];

  private readonly open = async (file: File): Promise<void> => {
    const reading = await readForecast(new Uint8Array(await file.arrayBuffer()));
    if (!reading.ok) {
      const { fault } = reading;
      this.said = [words.refused(file.name), fault.kind === 'newer' ? sealed.damaged.newer(fault.version) : sealed.damaged[fault.kind]];
      return;
    }
    const same = await hashOf(this.programme).then(
      (hash) => hash === reading.forecast.programme,
      () => false,
    );
    this.said = [];
    this.opened = { forecast: reading.forecast, same };
    this.which = reading.forecast.seal;
  };

  protected override render(): TemplateResult {
    const { programme, opened, which } = this;
    // The plan of which the log knows most, until another is chosen.
    const known = (id: string) => this.today.plans.find(({ plan }) => plan === id)?.trees.length ?? 0;
    const fullest = [...programme.plans].sort((a, b) => known(b.id) - known(a.id))[0];
    const plan = programme.plans.find(({ id }) => id === this.plan) ?? fullest;
    const forecasts = [
      { id: FIRST, name: words.first(programme.startYear) },
      ...(opened ? [{ id: opened.forecast.seal, name: words.sealed(longDate(opened.forecast.sealed)) }] : []),
    ];
    return html`<section class="fared" aria-labelledby="fared-title">
      <h2 id="fared-title">${words.title}</h2>
      <p class="intro">${words.intro}</p>
      <div class="choices">
        ${choice(
          words.plan,
          programme.plans.map(({ id, mark, name }) => ({ id, name: `${mark} ${name}` })),
          plan?.id ?? '',
          (id) => (this.plan = id),
        )}
        ${choice(words.which, forecasts, which, (id) => (this.which = id))}
        <div class="buttons">
          <button type="button" @click=${() => chooseFile((file) => void this.open(file))}>${words.open}</button>
        </div>
      </div>
      <div role="alert">${this.said.length > 0 ? html`<div class="problems">${this.said.map((line) => html`<p>${line}</p>`)}</div>` : nothing}</div>
      ${plan ? this.told(plan) : nothing}
    </section>`;
  }

  /** What the chosen forecast said of a plan; a sentence where it says nothing. */
  private forecastOf({ id, mark }: Programme['plans'][number]): Said | string | null {
    const { opened, which, first, programme } = this;
    if (which === FIRST || !opened) {
      const found = first?.plans.find((plan) => plan.id === id);
      return found ? { generations: found.generations.map(forecastGeneration), firstYear: programme.startYear, lastYear: programme.lastYear } : null;
    }
    const { forecast } = opened;
    const found = forecast.plans.find((plan) => plan.id === id && plan.mark === mark);
    if (!found) return words.gone;
    if (!found.generations) return words.old;
    return { generations: found.generations, firstYear: forecast.from ?? forecast.startYear, lastYear: forecast.lastYear };
  }

  private told(plan: Programme['plans'][number]): TemplateResult | typeof nothing {
    const forecast = this.forecastOf(plan);
    const stands = this.today.plans.find((one) => one.plan === plan.id);
    if (forecast === null || !stands) return nothing;
    if (typeof forecast === 'string') return html`<p class="problems notes">${forecast}</p>`;
    const wanted = roundsOf(plan).map(({ generation }) => generation);
    const found = fared(forecast.generations, stands, wanted, forecast.firstYear, this.today.year);
    const [head, ...missedLines] = faredSentence(found.years, found.counts, forecast.lastYear);
    const { opened, which } = this;
    return html`<p class="told">${head}</p>
      ${
        missedLines.length > 0
          ? html`<ul class="missed">
              ${missedLines.map((line) => html`<li>${line}</li>`)}
            </ul>`
          : nothing
      }
      ${
        opened && which !== FIRST
          ? html`<p class="quiet">
              ${opened.same ? nothing : words.other} ${opened.forecast.from === undefined ? nothing : words.fromLater(opened.forecast.from)}
            </p>`
          : nothing
      }
      <p class="quiet ground">${words.ground}</p>
      ${
        found.years.length > 0
          ? html`<oo-fared-picture
              .answer=${{ name: plan.name, years: found.years, startYear: Math.min(forecast.firstYear, this.programme.startYear), lastYear: forecast.lastYear, today: this.today.year }}
              .mark=${plan.mark}
              ?stale=${this.stale}
            ></oo-fared-picture>`
          : nothing
      }
      ${this.table(found, forecast.lastYear)}`;
  }

  private table({ years, counts }: Fared, last: number): TemplateResult | typeof nothing {
    if (years.length + counts.length === 0) return nothing;
    const head = html`<thead>
      <tr>
        ${words.heads.map((text, i) => html`<th scope="col" class=${i >= 2 && i <= 4 ? 'number' : ''}>${text}</th>`)}
      </tr>
    </thead>`;
    return html`<div class="scroll" tabindex="0" role="region" aria-label=${words.years}>
        <table>
          <caption>
            ${words.years}
          </caption>
          ${head}
          <tbody>
            ${years.map((row) => this.yearRow(row, last))}
          </tbody>
        </table>
      </div>
      ${
        counts.length === 0
          ? saveRow({})
          : html`<div class="scroll" tabindex="0" role="region" aria-label=${words.counts}>
                <table>
                  <caption>
                    ${words.counts}. ${words.countsNote}
                  </caption>
                  ${head}
                  <tbody>
                    ${counts.map((row) => this.countRow(row))}
                  </tbody>
                </table>
              </div>
              ${saveRow({})}`
      }`;
  }

  private yearRow(row: FaredYear, last: number): TemplateResult {
    return html`<tr>
      <th scope="row">${words.generation(row)}</th>
      <td>${words.reached(row.what)}</td>
      <td class="number">${words.range(row.p10, row.p90, last)}</td>
      <td class="number">${row.p50 ?? words.never(last)}</td>
      <td class="number">${row.came ?? words.notYet}</td>
      <td class=${missed(row.verdict) ? 'missed' : ''}>${words.yearVerdict(row.verdict)}</td>
    </tr>`;
  }

  private countRow(row: FaredCount): TemplateResult {
    return html`<tr>
      <th scope="row">${words.generation(row)}</th>
      <td>${words.counted(row.what)}</td>
      <td class="number">${words.countRange(row.p10, row.p90)}</td>
      <td class="number">${words.count(row.p50)}</td>
      <td class="number">${words.count(row.came)}</td>
      <td class=${missed(row.verdict) ? 'missed' : ''}>${words.countVerdict(row.verdict)}</td>
    </tr>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-fared': OoFared;
  }
}
