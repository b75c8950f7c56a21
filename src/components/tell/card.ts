import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { calendarFile } from '../../handout/card/calendar.ts';
import { cardPage } from '../../handout/card/card.ts';
import { jobsOf } from '../../handout/card/jobs.ts';
import { workIn } from '../../handout/card/season.ts';
import type { Plan } from '../../model/programme.ts';
import type { Job } from '../../results/season.ts';
import { slug } from '../../storage/file.ts';
import { shared } from '../../styles/shared.ts';
import { cardText, seasonName } from '../../text/card.ts';
import { saveAsFile } from '../files.ts';
import { StoreElement } from '../store-element.ts';
import { cardStyles } from './card.styles.ts';

/** A card for the pocket with the jobs of one season of one plan, and the same dates for a calendar. */
@customElement('oo-card')
export class Card extends StoreElement {
  static override styles = [...shared, cardStyles];

  /** ISO date of today, for the foot of the card. */
  @property() today = '';

  @state() private plan = '';
  @state() private year: number | null = null;
  @state() private paper: 'A6' | 'A5' = 'A6';
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

  protected override render(): TemplateResult {
    const { runnable } = this.programmes.state;
    const { plans: outlooks, columns, stale } = this.runs.state;
    const plan = runnable.plans.find(({ id }) => id === this.plan) ?? runnable.plans[0];
    const found = columns[outlooks.findIndex(({ id }) => id === plan?.id)];
    const year = Math.min(runnable.lastYear, Math.max(runnable.startYear, this.year ?? runnable.startYear));
    const { bloomMonth, ripeAfter } = runnable.limits;
    const jobs = plan && found && !stale.has(plan.id) ? jobsOf(runnable, workIn(plan, found, year - runnable.startYear), { bloomMonth, ripeAfter }) : null;
    const planName = plan ? `${plan.mark} ${plan.name}` : '';
    return html`<section aria-labelledby="title">
      <h2 id="title">${cardText.heading}</h2>
      <p class="about">${cardText.intro}</p>
      <div class="choices">
        <label
          ><span>${cardText.plan}</span>
          <select @change=${this.choosePlan}>
            ${runnable.plans.map(({ id, mark, name }) => html`<option value=${id} ?selected=${id === plan?.id}>${mark} ${name}</option>`)}
          </select></label
        >
        <label
          ><span>${cardText.season}</span>
          <select @change=${this.chooseYear}>
            ${Array.from({ length: runnable.lastYear - runnable.startYear + 1 }, (_, i) => runnable.startYear + i).map(
              (entry) => html`<option value=${entry} ?selected=${entry === year}>${seasonName(entry, bloomMonth)}</option>`,
            )}
          </select></label
        >
        <label
          ><span>${cardText.paper}</span>
          <select @change=${this.choosePaper}>
            ${(['A6', 'A5'] as const).map((paper) => html`<option ?selected=${paper === this.paper}>${paper}</option>`)}
          </select></label
        >
      </div>
      ${
        jobs === null
          ? html`<p class="quiet">${cardText.waiting}</p>`
          : this.card(cardPage(runnable, jobs, { bloomMonth, ripeAfter, paper: this.paper, year, planName, date: this.today }), jobs, year, plan)
      }
    </section>`;
  }

  private card(page: string, jobs: readonly Job[], year: number, plan: Plan | undefined): TemplateResult {
    const { title } = this.programmes.state.runnable;
    const name = `${slug(title)}-${(plan?.mark ?? '').toLowerCase()}-${String(year)}`;
    return html`<div class="tools">
        <button class="main" @click=${() => this.sheet?.contentWindow?.print()}>${cardText.print}</button>
        <button @click=${() => saveAsFile(`${name}.html`, page, 'text/html')}>${cardText.save}</button>
        ${jobs.length > 0 ? html`<button @click=${() => this.saveCalendar(jobs, year, plan?.id ?? '', name)}>${cardText.calendar}</button>` : nothing}
      </div>
      <iframe class=${this.paper} title=${cardText.preview} sandbox="allow-same-origin allow-modals" srcdoc=${page}></iframe>`;
  }

  private saveCalendar(jobs: readonly Job[], year: number, plan: string, name: string): void {
    const { title } = this.programmes.state.runnable;
    // The same plan gives the same names of events, so a calendar that reads a later file changes its own.
    saveAsFile(`${name}.ics`, calendarFile(jobs, { year, key: `${slug(title)}-${plan}`, title, stamp: `${this.today}T00:00:00Z` }), 'text/calendar');
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-card': Card;
  }
}
