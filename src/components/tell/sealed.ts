import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Programme } from '../../model/programme.ts';
import { forecastText, readForecast, sealedForecast, type Forecast, type ForecastFault } from '../../results/forecast.ts';
import { hashOf } from '../../results/hash.ts';
import type { Outlook, PlanOutlook } from '../../results/outlook.ts';
import { fileName } from '../../storage/file.ts';
import { shared } from '../../styles/shared.ts';
import { longDate } from '../../text/handout.ts';
import { sealed } from '../../text/tell.ts';
import { saveRow } from '../charts/data-table.ts';
import { chooseFile, saveAsFile } from '../files.ts';
import { pageStyles } from '../pages/page.styles.ts';
import { sealedStyles } from './sealed.styles.ts';

interface Opened {
  readonly forecast: Forecast;
  /** Sealed from the programme as it stands. */
  readonly same: boolean;
}

const wordsOf = (fault: ForecastFault): string => (fault.kind === 'newer' ? sealed.damaged.newer(fault.version) : sealed.damaged[fault.kind]);

/** The hash by which a forecast knows its programme; null where the browser offers none. */
async function hashIfAny(programme: Programme): Promise<string | null> {
  try {
    return await hashOf(programme);
  } catch {
    return null;
  }
}

/** Seals today’s forecast into a file, and opens one to compare it with today’s. */
@customElement('oo-sealed')
export class OoSealed extends LitElement {
  static override styles = [...shared, pageStyles, sealedStyles];

  @property({ attribute: false }) programme: Programme | null = null;
  /** Null while not all futures are counted. */
  @property({ attribute: false }) outlook: Outlook | null = null;
  /** Calendar day, year-month-day. */
  @property() today = '';

  @state() private said: readonly string[] = [];
  @state() private opened: Opened | null = null;

  private readonly seal = async (): Promise<void> => {
    const { programme, outlook, today } = this;
    if (!programme || !outlook) return;
    const hash = await hashIfAny(programme);
    if (hash === null) {
      this.said = [sealed.cannotSeal];
      return;
    }
    const name = fileName(programme).replace(/\.json$/, `-${today}.forecast.json`);
    saveAsFile(name, forecastText(await sealedForecast(outlook, programme.title, today, hash, programme.log.forecastFrom)));
    this.said = [];
  };

  private readonly choose = (): void => chooseFile((file) => void this.open(file));

  private async open(file: File): Promise<void> {
    const reading = await readForecast(new Uint8Array(await file.arrayBuffer()));
    if (!reading.ok) {
      this.said = [sealed.refused(file.name), wordsOf(reading.fault)];
      return;
    }
    this.said = [];
    const now = this.programme && (await hashIfAny(this.programme));
    this.opened = { forecast: reading.forecast, same: now === reading.forecast.programme };
  }

  protected override render(): TemplateResult {
    return html`<h2>${sealed.title}</h2>
      <p class="about">${sealed.lede}</p>
      <div class="buttons">
        <button type="button" ?disabled=${this.outlook === null} @click=${this.seal}>${sealed.seal}</button>
        <button type="button" @click=${this.choose}>${sealed.open}</button>
      </div>
      <div class="said" role="alert">
        ${this.said.length > 0 ? html`<div class="problems">${this.said.map((line) => html`<p>${line}</p>`)}</div>` : nothing}
      </div>
      ${this.opened ? this.compared(this.opened) : nothing}`;
  }

  private compared({ forecast, same }: Opened): TemplateResult {
    const plans = this.outlook?.plans ?? [];
    const pairs = forecast.plans.map((then) => ({ then, now: plans.find(({ id, mark }) => id === then.id && mark === then.mark) ?? null }));
    const engine = this.outlook?.engine ?? forecast.engine;
    return html`<div class="opened" role="region" aria-label=${sealed.headline(longDate(forecast.sealed))} tabindex="-1">
      <h3>${sealed.headline(longDate(forecast.sealed))}: ${forecast.title}</h3>
      ${
        pairs.every(({ now }) => now === null)
          ? html`<p>${sealed.noneCommon}</p>`
          : html`<ul>
                ${pairs.map(({ then, now }) => html`<li>${now ? this.change(then, now) : `${then.mark} (${then.name}): ${sealed.gone}.`}</li>`)}
              </ul>
              <p class="quiet">${same ? sealed.same : sealed.other} ${engine === forecast.engine ? nothing : sealed.engines(forecast.engine, engine)}</p>
              ${this.table(forecast, pairs)}`
      }
      <div class="buttons"><button type="button" @click=${() => (this.opened = null)}>${sealed.close}</button></div>
    </div>`;
  }

  /** How the two compare at the last year that both know. */
  private change(then: Forecast['plans'][number], now: PlanOutlook): string {
    const last = Math.min(then.byYear.at(-1)?.year ?? 0, now.chanceByYear.at(-1)?.year ?? 0);
    const [a, b] = [then.byYear.find(({ year }) => year === last), now.chanceByYear.find(({ year }) => year === last)];
    const name = `${then.mark} (${then.name})`;
    return a && b ? sealed.change(name, a, b, last) : name;
  }

  private table({ plans }: Forecast, pairs: readonly { readonly then: Forecast['plans'][number]; readonly now: PlanOutlook | null }[]): TemplateResult {
    const both = pairs.flatMap(({ then, now }) => (now ? [{ then, now }] : []));
    const all = new Set([
      ...plans.flatMap(({ byYear }) => byYear.map(({ year }) => year)),
      ...both.flatMap(({ now }) => now.chanceByYear.map(({ year }) => year)),
    ]);
    const years = [...all].sort((a, b) => a - b);
    return html`<div class="scroll" tabindex="0" role="region" aria-label=${sealed.caption}>
        <table>
          <caption>
            ${sealed.caption}
          </caption>
          <thead>
            <tr>
              <th scope="col" rowspan="2">${sealed.year}</th>
              ${both.map(({ then }) => html`<th scope="colgroup" colspan="2">${then.mark}</th>`)}
            </tr>
            <tr>
              ${both.map(
                () =>
                  html`<th scope="col">${sealed.then}</th>
                    <th scope="col">${sealed.now}</th>`,
              )}
            </tr>
          </thead>
          <tbody>
            ${years.map(
              (year) =>
                html`<tr>
                  <th scope="row">${year}</th>
                  ${both.map(({ then, now }) => [then.byYear, now.chanceByYear].map((list) => html`<td>${this.at(list, year)}</td>`))}
                </tr>`,
            )}
          </tbody>
        </table>
      </div>
      ${saveRow({})}`;
  }

  private at(list: readonly ({ readonly year: number } & Parameters<typeof sealed.share>[0])[], year: number): string {
    const found = list.find((entry) => entry.year === year);
    return found ? sealed.share(found) : sealed.missing;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-sealed': OoSealed;
  }
}
