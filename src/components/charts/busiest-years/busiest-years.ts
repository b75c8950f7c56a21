import { html, nothing, type CSSResultGroup, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { drawBusy } from '../../../charts/busiest-years/draw.ts';
import { busyLayout, type BusyLayout } from '../../../charts/busiest-years/layout.ts';
import type { BusyLoad, PlanYears } from '../../../charts/busiest-years/load.ts';
import { linesOf, statements } from '../../../charts/busiest-years/reading.ts';
import { shortName } from '../../../charts/marks.ts';
import { yearAfter, type Press } from '../../../charts/reading.ts';
import type { Columns } from '../../../results/columns.ts';
import type { Outlook } from '../../../results/outlook.ts';
import { busiest, busyYears, highest, peakOf } from '../../../statistics/busy.ts';
import { busyText, LOADS, type Load } from '../../../text/charts-years.ts';
import { otherText } from '../chart-element.ts';
import { ReadElement } from '../read-element.ts';
import { busyStyles } from './busiest-years.styles.ts';

/** What a breeder has in a year. */
export interface BusyLimits {
  /** null where no limit is stated. */
  readonly hours: number | null;
  readonly places: number;
  readonly bloomDays: number;
  /** Flowers that hands can pollinate in a day of bloom. */
  readonly flowersPerDay: number;
}

/** Hours, bloom days or places that each calendar year asks for, a strip per plan, against the breeder’s limit. */
@customElement('oo-busiest-years')
export class BusiestYears extends ReadElement {
  static override styles: CSSResultGroup = [ReadElement.styles, busyStyles];

  /** Every future of every plan, in the order of the outlook’s plans. */
  @property({ attribute: false }) columns: readonly Columns[] = [];
  @property({ attribute: false, hasChanged: otherText }) limits: BusyLimits = { hours: null, places: 0, bloomDays: 0, flowersPerDay: 0 };
  @property({ attribute: false }) load: Load = 'hours';

  private plans: readonly PlanYears[] = [];
  private layout: BusyLayout | null = null;

  protected override get reading(): number | null {
    return this.chosen ?? null;
  }

  private get drawn(): BusyLoad {
    const { load, limits } = this;
    const limit = { hours: limits.hours, flowers: limits.bloomDays, places: limits.places }[load];
    return { load, limit, hard: load !== 'hours' };
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    super.willUpdate(changed);
    const { outlook, columns, load, limits, width } = this;
    if (!outlook || columns.length === 0 || width === 0) {
      this.layout = null;
      return;
    }
    // Thousands of futures are sorted year by year: only when they, or what is asked of them, have changed.
    if (this.plans.length === 0 || (['outlook', 'columns', 'load', 'limits', 'words'] as const).some((name) => changed.has(name))) {
      const limit = { ...this.drawn, each: load === 'flowers' ? limits.flowersPerDay : 1 };
      this.plans = outlook.plans.flatMap((plan, index) => {
        const own = columns[index];
        return own ? [{ plan: plan.id, mark: plan.mark, name: shortName(plan, this.words), years: busyYears(own, load, outlook.startYear, limit) }] : [];
      });
    }
    if (this.laysOut(changed))
      this.layout = busyLayout(this.plans, { ...this.drawn, startYear: outlook.startYear, lastYear: outlook.lastYear, width, measure: this.measure });
  }

  protected override render(): TemplateResult | typeof nothing {
    const { outlook, layout } = this;
    if (!outlook || this.width === 0) return nothing;
    if (!layout) return html`<section aria-label=${busyText.name}>${this.head(busyText.title, busyText.missing)}</section>`;
    return html`<section aria-label=${busyText.name} aria-describedby="summary">
      ${this.head(busyText.title, this.intro(layout))}
      <p class="finding" id="summary">${this.finding()}</p>
      <fieldset>
        <legend>${busyText.choose}</legend>
        ${LOADS.map(
          (load) => html`<button aria-pressed=${load === this.load ? 'true' : 'false'} @click=${() => (this.load = load)}>${busyText.load(load)}</button>`,
        )}
      </fieldset>
      <div class="picture">
        <svg aria-hidden="true" @pointerover=${this.liftUnder} @pointerout=${() => this.lift(null)}></svg>
        ${this.strips(outlook, layout)}
      </div>
      ${this.data(this.table(outlook))}
    </section>`;
  }

  private intro({ barShare, far }: BusyLayout): string {
    const { load, limit, hard } = this.drawn;
    return [
      busyText.intro,
      ...(load === 'flowers' && limit !== null ? [busyText.hands(limit)] : []),
      ...(far && limit !== null ? [busyText.far(load, limit)] : []),
      ...(barShare === null ? [] : [busyText.bars(hard, busyText.ofHundred(barShare))]),
    ].join(' ');
  }

  private finding(): string {
    const { load, limit } = this.drawn;
    const years = this.plans.map((plan) => plan.years);
    const peak = busiest(years);
    const worst = highest(years, 'over');
    const mark = (plan: number) => this.plans[plan]?.mark ?? '';
    return busyText.summary(
      load,
      limit,
      peak && { mark: mark(peak.plan), year: peak.at.year, n: peak.at[peak.figure], figure: peak.figure },
      worst && { mark: mark(worst.plan), year: worst.at.year, share: worst.at.over },
    );
  }

  private strips({ startYear, lastYear, plans }: Outlook, { plot }: BusyLayout) {
    const year = this.reading;
    const said = this.plans.map((plan, index) => ({ name: plans[index]?.name ?? plan.name, lines: statements(plan, this.drawn, year) }));
    const words = year === null ? busyText.none : busyText.sliderValue(said);
    return html`<div @pointerleave=${() => this.lift(null)}>${this.slider({ label: busyText.slider, from: startYear, to: lastYear, words, plot })}</div>`;
  }

  private table({ plans }: Outlook): TemplateResult {
    const { load, hard } = this.drawn;
    const over = this.plans.some((plan) => peakOf(plan.years, 'over') !== null);
    const years = this.plans[0]?.years.map(({ year }) => year) ?? [];
    return html`<table>
      <caption>
        ${busyText.caption(load, hard, over)}
      </caption>
      <thead>
        <tr>
          <th scope="col">${busyText.year}</th>
          ${this.plans.map(({ mark, name }, index) => html`<th scope="col">${mark} ${plans[index]?.name ?? name}</th>`)}
        </tr>
      </thead>
      <tbody>
        ${years.map(
          (year, index) =>
            html`<tr>
              <th scope="row">${year}</th>
              ${this.plans.map((plan) => {
                const at = plan.years[index];
                if (!at) return html`<td></td>`;
                return html`<td>${busyText.cell(load, at.p50, at.p90, over ? at.over : null)}</td>`;
              })}
            </tr>`,
        )}
      </tbody>
    </table>`;
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    const picture = this.renderRoot.querySelector<SVGSVGElement>('.picture svg');
    const { layout, reading: year, plans } = this;
    if (!picture || !layout) return;
    drawBusy(picture, layout, {
      reading: year,
      dots: plans.map(({ years }, index) => layout.y(index, years.find((other) => other.year === year)?.p50 ?? 0)),
      words: plans.map((plan) => linesOf(plan, this.drawn, year, layout.wordsRoom, this.measure)),
      lifted: this.lifted,
    });
  }

  protected override placeFor(press: Press): number | null | undefined {
    return this.outlook ? yearAfter(press, this.reading, this.outlook.startYear, this.outlook.lastYear) : undefined;
  }

  protected override placeAt({ clientX, clientY }: PointerEvent): number | null {
    const { layout, outlook } = this;
    const picture = this.renderRoot.querySelector('.picture svg')?.getBoundingClientRect();
    if (!layout || !outlook || !picture) return null;
    this.lift(layout.strips.findLast(({ from }) => from <= clientY - picture.top)?.plan ?? null);
    return Math.min(outlook.lastYear, Math.max(outlook.startYear, Math.round(layout.calendar.yearAt(clientX - picture.left))));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-busiest-years': BusiestYears;
  }
}
