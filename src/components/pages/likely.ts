import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { Limits } from '../../charts/side-by-side/rows.ts';
import type { Programme } from '../../model/programme.ts';
import type { Outlook } from '../../results/outlook.ts';
import { outlookOf } from '../../state/outlook.ts';
import { shared } from '../../styles/shared.ts';
import { likely } from '../../text/app.ts';
import { headline, lede, mostFails, outOfReach } from '../../text/headline.ts';
import { whichForecast } from '../../text/which-forecast.ts';
import type { LiftEvent } from '../charts/chart-element.ts';
import '../charts/chance-by-year/chance-by-year.ts';
import '../charts/side-by-side/side-by-side.ts';
import { StoreElement } from '../store-element.ts';
import { holdPlace } from './hold-place.ts';
import { pageStyles } from './page.styles.ts';
import { care, pieces, problemList, progress } from './parts.ts';
import './more-pictures.ts';
import './orchard-panel.ts';
import { planWords } from './plan-lanes.ts';

const limitsKnown = new WeakMap<Programme['limits'], Limits>();
/** The same object as long as the limits are the same, so that the table redraws only for its own figures. */
function limitsOf(limits: Programme['limits']): Limits {
  const known = limitsKnown.get(limits) ?? { hours: limits.hoursPerYear ?? null, places: limits.places };
  limitsKnown.set(limits, known);
  return known;
}

/** “What is likely?”: the answer in a sentence, the plans as boughs, the chance by year, and all plans side by side. */
@customElement('oo-likely')
export class Likely extends StoreElement {
  static override styles = [...shared, pageStyles];

  @state() private lifted: string | null = null;

  constructor() {
    super();
    this.addEventListener('oo-lift', (event) => {
      this.lifted = (event as LiftEvent).detail.plan;
    });
  }

  /** Marks for the benchmark: from an edit to the first picture that belongs to it. */
  protected override updated(_changed: PropertyValues): void {
    const { stale, done } = this.runs.state;
    if (stale.size > 0 || done === 0 || performance.getEntriesByName('oo-edit').length === 0) return;
    requestAnimationFrame(() => {
      if (performance.getEntriesByName('oo-edit').length === 0) return;
      performance.mark('oo-painted');
      performance.measure('oo-edit-to-paint', 'oo-edit', 'oo-painted');
      performance.clearMarks('oo-edit');
    });
  }

  protected override update(changed: PropertyValues): void {
    holdPlace(this, () => super.update(changed));
  }

  protected override render(): TemplateResult {
    const { programme, problems, runnable } = this.programmes.state;
    const outlook = outlookOf(runnable, this.runs.state);
    const stale = this.runs.state.stale.size > 0 || runnable !== programme;
    return html`
      ${outlook ? this.answer(outlook) : html`<h1>${likely.waiting}</h1>`} ${progress(this.runs.state)} ${problemList(programme, problems)}
      ${outlook ? this.pictures(outlook, stale) : nothing}
      <section class="part screen-only">
        <h2>${likely.rests}</h2>
        <p class="quiet">${likely.restsIntro}</p>
        <oo-orchard-panel .programme=${programme} .problems=${problems}></oo-orchard-panel>
      </section>
      ${care(programme, this.runs.engine)}
    `;
  }

  private answer({ plans, comparisons, lastYear }: Outlook): TemplateResult {
    const from = this.programmes.state.runnable.log.forecastFrom;
    const fails = mostFails(plans);
    return html`<h1>${pieces(headline(plans, comparisons, lastYear))}</h1>
      <p class="lede">${pieces(lede(plans))}</p>
      ${fails === '' ? nothing : html`<p class="lede">${fails}</p>`}
      ${from === undefined ? nothing : html`<p class="quiet">${whichForecast.today(from)} <a href="#/happened">${whichForecast.change}</a></p>`}
      ${outOfReach(plans).map((line) => html`<p class="problems notes">${line}</p>`)}`;
  }

  private pictures(outlook: Outlook, stale: boolean): TemplateResult {
    const { programme, runnable } = this.programmes.state;
    const words = planWords(programme);
    const limits = limitsOf(runnable.limits);
    return html`<section class="part">
        <oo-plan-lanes .outlook=${outlook} .lifted=${this.lifted} ?stale=${stale}></oo-plan-lanes>
      </section>
      <section class="part">
        <oo-chance-by-year .outlook=${outlook} .words=${words} .lifted=${this.lifted} ?stale=${stale}></oo-chance-by-year>
      </section>
      <section class="part">
        <oo-side-by-side .outlook=${outlook} .words=${words} .lifted=${this.lifted} .limits=${limits} ?stale=${stale}></oo-side-by-side>
      </section>
      <section class="part">
        <oo-more-pictures .outlook=${outlook} .lifted=${this.lifted} ?stale=${stale}></oo-more-pictures>
      </section>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-likely': Likely;
  }
}
