import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Futures } from '../../charts/years-against-trees/layout.ts';
import type { Columns } from '../../results/columns.ts';
import type { Outlook } from '../../results/outlook.ts';
import { shared } from '../../styles/shared.ts';
import { likely } from '../../text/app.ts';
import { offline } from '../../text/offline.ts';
import type { BusyLimits } from '../charts/busiest-years/busiest-years.ts';
import { StoreElement } from '../store-element.ts';
import { pageStyles } from './page.styles.ts';
import { planWords } from './plan-lanes.ts';

/** Pictures that need a moment’s learning, folded away at first; nothing of them is worked out before they are opened. */
@customElement('oo-more-pictures')
export class MorePictures extends StoreElement {
  static override styles = [...shared, pageStyles];

  @property({ attribute: false }) outlook: Outlook | null = null;
  @property({ type: Boolean }) stale = false;
  @property({ attribute: false }) lifted: string | null = null;

  @state() private open = false;
  /** Whether the pictures' code is here; `null` when it could not be had. */
  @state() private fetched: boolean | null = false;
  private shown: readonly Columns[] = [];
  private futures: readonly Futures[] = [];

  protected override willUpdate(_changed: PropertyValues): void {
    const { plans, columns } = this.runs.state;
    if (!this.open || columns === this.shown) return;
    this.shown = columns;
    const { startYear } = this.programmes.state.runnable;
    this.futures = columns.map((column, i) => ({
      plan: plans[i]?.id ?? '',
      yearProven: Int16Array.from(column.run('yearProven'), (year) => (year < 0 ? 0 : startYear + year)),
      seedlings: column.run('seedlings'),
    }));
  }

  protected override render(): TemplateResult {
    return html`<details class="more" @toggle=${this.toggled}>
      <summary>${likely.more}</summary>
      ${this.unfolded()}
    </details>`;
  }

  private readonly toggled = (event: Event): void => {
    if (!(event.target instanceof HTMLDetailsElement)) return;
    this.open = event.target.open;
    if (!this.open || this.fetched) return;
    void import('./further-pictures.ts').then(
      () => (this.fetched = true),
      () => (this.fetched = null),
    );
  };

  private unfolded(): TemplateResult | typeof nothing {
    if (!this.open || !this.outlook) return nothing;
    if (this.fetched === null) return html`<p role="alert">${offline.notHere}</p>`;
    return this.fetched ? this.pictures(this.outlook) : nothing;
  }

  private get limits(): BusyLimits {
    const { hoursPerYear, places, bloomDays, hoursADay, flowersAnHour } = this.programmes.state.runnable.limits;
    return { hours: hoursPerYear ?? null, places, bloomDays, flowersPerDay: hoursADay * flowersAnHour };
  }

  private pictures(outlook: Outlook): TemplateResult {
    const words = planWords(this.programmes.state.programme);
    const { lifted, stale } = this;
    return html`
      <section class="part">
        <oo-years-against-trees .outlook=${outlook} .words=${words} .lifted=${lifted} .futures=${this.futures} ?stale=${stale}></oo-years-against-trees>
      </section>
      <section class="part"><oo-why-futures-fail .outlook=${outlook} .words=${words} .lifted=${lifted} ?stale=${stale}></oo-why-futures-fail></section>
      <section class="part"><oo-flower-to-pick .outlook=${outlook} .words=${words} .lifted=${lifted} ?stale=${stale}></oo-flower-to-pick></section>
      <section class="part">
        <oo-busiest-years
          .outlook=${outlook}
          .words=${words}
          .lifted=${lifted}
          .columns=${this.shown}
          .limits=${this.limits}
          ?stale=${stale}
        ></oo-busiest-years>
      </section>
      <section class="part"><oo-last-spring .outlook=${outlook} .words=${words} .lifted=${lifted} ?stale=${stale}></oo-last-spring></section>
      <section class="part"><oo-diary .outlook=${outlook} .columns=${this.shown}></oo-diary></section>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-more-pictures': MorePictures;
  }
}
