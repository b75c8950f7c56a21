import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { ref } from 'lit/directives/ref.js';
import { calendarFile } from '../../handout/card/calendar.ts';
import { cardPage, type CardPaper } from '../../handout/card/card.ts';
import { jobsOf } from '../../handout/card/jobs.ts';
import { workIn } from '../../handout/card/season.ts';
import type { Fonts } from '../../handout/look.ts';
import type { Plan } from '../../model/programme.ts';
import type { Job } from '../../results/season.ts';
import { slug } from '../../storage/file.ts';
import { shared } from '../../styles/shared.ts';
import { cardText, seasonName } from '../../text/card.ts';
import { longDate } from '../../text/handout.ts';
import { saveAsFile } from '../files.ts';
import { StoreElement } from '../store-element.ts';
import { cardStyles } from './card.styles.ts';

/** The card runs nothing and reaches nothing; it is only looked at and printed. Set before the card is put in, for it holds for what comes after. */
const guard = (frame: Element | undefined): void => frame?.setAttribute('sandbox', 'allow-same-origin allow-modals');

/** A card for the pocket with the jobs of one season of one plan, and the same dates for a calendar. */
@customElement('oo-card')
export class Card extends StoreElement {
  static override styles = [...shared, cardStyles];

  /** ISO date of today, for the foot of the card. */
  @property() today = '';

  /** Letter of the plan that others are asked to help with: the card is first of that one. */
  @property() lead = '';

  @state() private plan = '';
  @state() private year: number | null = null;
  @state() private paper: CardPaper = 'A6';
  @state() private fonts: Fonts | null = null;
  @state() private said = '';
  @query('iframe') private readonly sheet!: HTMLIFrameElement | null;

  private readonly choosePlan = ({ target }: Event): void => {
    if (target instanceof HTMLSelectElement) this.plan = target.value;
  };
  private readonly chooseYear = ({ target }: Event): void => {
    if (target instanceof HTMLSelectElement) this.year = Number(target.value);
  };
  private readonly choosePaper = ({ target }: Event): void => {
    if (target instanceof HTMLSelectElement) this.paper = target.value === 'A5' ? 'A5' : 'A6';
  };

  override connectedCallback(): void {
    super.connectedCallback();
    // The card is read before its fonts are here, in those of the device.
    void import('../../handout/fonts.ts').then(
      ({ FONTS }) => (this.fonts = FONTS),
      () => undefined,
    );
  }

  protected override render(): TemplateResult {
    const { runnable } = this.programmes.state;
    const { bloomMonth, ripeAfter } = runnable.limits;
    const plan = runnable.plans.find(({ id }) => id === this.plan) ?? runnable.plans.find(({ mark }) => mark === this.lead) ?? runnable.plans[0];
    const year = Math.min(runnable.lastYear, Math.max(runnable.startYear, this.year ?? runnable.startYear));
    const jobs = plan ? this.jobsIn(plan, year - runnable.startYear) : null;
    return html`<section aria-labelledby="title">
      <h2 id="title">${cardText.heading}</h2>
      <p class="about">${cardText.intro}</p>
      <p class="about">${cardText.climate(bloomMonth, ripeAfter)}<a href="#/have">${cardText.change}</a>.</p>
      <div class="choices">
        <label
          ><span>${cardText.plan}</span>
          <select name="plan" @change=${this.choosePlan}>
            ${runnable.plans.map(({ id, mark, name }) => html`<option value=${id} ?selected=${id === plan?.id}>${mark} ${name}</option>`)}
          </select></label
        >
        <label
          ><span>${cardText.season}</span>
          <select name="season" @change=${this.chooseYear}>
            ${Array.from({ length: runnable.lastYear - runnable.startYear + 1 }, (_, i) => runnable.startYear + i).map(
              (entry) => html`<option value=${entry} ?selected=${entry === year}>${seasonName(entry, bloomMonth)}</option>`,
            )}
          </select></label
        >
        <label
          ><span>${cardText.paper}</span>
          <select name="paper" @change=${this.choosePaper}>
            ${(['A6', 'A5'] as const).map((paper) => html`<option ?selected=${paper === this.paper}>${paper}</option>`)}
          </select></label
        >
      </div>
      ${plan && jobs ? this.card(jobs, year, plan) : html`<p class="quiet">${cardText.waiting}</p>`}
    </section>`;
  }

  /** Jobs of a season; null while the plan's futures belong to an earlier state of the document. */
  private jobsIn(plan: Plan, year: number): readonly Job[] | null {
    const { runnable } = this.programmes.state;
    const { plans, columns, stale } = this.runs.state;
    const found = columns[plans.findIndex(({ id }) => id === plan.id)];
    return found && !stale.has(plan.id) ? jobsOf(runnable, workIn(plan, found, year), runnable.limits) : null;
  }

  private card(jobs: readonly Job[], year: number, plan: Plan): TemplateResult {
    const { runnable } = this.programmes.state;
    const { title, limits } = runnable;
    const { paper, fonts } = this;
    const options = {
      bloomMonth: limits.bloomMonth,
      ripeAfter: limits.ripeAfter,
      paper,
      year,
      mark: plan.mark,
      planName: plan.name,
      date: longDate(this.today),
    };
    const page = cardPage(runnable, jobs, options, fonts);
    const name = `${slug(title)}-${plan.mark.toLowerCase()}-${String(year)}`;
    return html`<div class="tools">
        <button class="main" @click=${() => this.sheet?.contentWindow?.print()}>${cardText.print}</button>
        <button @click=${() => this.save(`${name}.html`, page, 'text/html')}>${cardText.save}</button>
        ${jobs.length > 0 ? html`<button @click=${() => this.saveCalendar(jobs, year, plan.id, name)}>${cardText.calendar}</button>` : nothing}
        <span class="said" role="status">${this.said}</span>
      </div>
      <div class=${`frame ${paper}`}><iframe ${ref(guard)} tabindex="-1" title=${cardText.preview} srcdoc=${page}></iframe></div>`;
  }

  private save(name: string, content: string, type: string): void {
    saveAsFile(name, content, type);
    this.said = cardText.saved(name);
  }

  private saveCalendar(jobs: readonly Job[], year: number, plan: string, name: string): void {
    const { title } = this.programmes.state.runnable;
    // The same plan gives the same names of events, so a calendar that reads a later file changes its own.
    this.save(`${name}.ics`, calendarFile(jobs, { year, key: `${slug(title)}-${plan}`, title, stamp: `${this.today}T00:00:00Z` }), 'text/calendar');
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-card': Card;
  }
}
