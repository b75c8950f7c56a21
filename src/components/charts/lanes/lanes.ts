import { html, nothing, svg, type CSSResultGroup, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { classMap } from 'lit/directives/class-map.js';
import { repeat } from 'lit/directives/repeat.js';
import { drawAxis } from '../../../charts/axis.ts';
import { chainWords } from '../../../charts/boughs/chain.ts';
import { chanceMark } from '../../../charts/boughs/chance-mark.ts';
import { drawKey } from '../../../charts/boughs/draw-key.ts';
import { drawChanceMark, drawLane } from '../../../charts/boughs/draw.ts';
import { keyLayout } from '../../../charts/boughs/key.ts';
import { laneLayout, rowNames } from '../../../charts/boughs/lane.ts';
import { calendar, type Calendar } from '../../../charts/calendar.ts';
import type { GenerationOutlook, Outlook, PlanOutlook } from '../../../results/outlook.ts';
import { calendarText, keyText, laneText, tied, yearRange } from '../../../text/charts.ts';
import { ChartElement } from '../chart-element.ts';
import { laneStyles } from './lanes.styles.ts';
import { chanceEnd, shortChance } from './lane-chance.ts';
import { laneTable } from './lane-table.ts';

/** A row: generation (or one round of it) of a plan. */
export interface RowKey {
  readonly plan: string;
  readonly generation: string;
  /** Round of a repeated generation; the first where it is left out. */
  readonly round?: number;
}
export type RowEvent = CustomEvent<RowKey & { readonly open: boolean }>;
export type PlanEvent = CustomEvent<{ readonly plan: string }>;
export type MoveEvent = CustomEvent<{ readonly plan: string; readonly by: -1 | 1 }>;

const SCALE_WIDTH = 198;
const GAP_TO_END = 22;
/** From the top of a lane to the chance at its end, and from there to the frame of an open row, px. */
const UNDER_END = 16;
/** Parts whose heights the drawing follows. */
const MEASURED = '.head, .form, .end';

/**
 * The plans as lanes on one calendar, each generation a bough. Rows are buttons: the page opens settings under one by setting `open`.
 *
 * @fires oo-row - RowEvent: a row was chosen; `open` says whether it should be open now
 * @fires oo-plan - PlanEvent: a plan's name was chosen
 * @fires oo-move - MoveEvent: Alt and an arrow asks to move a plan up or down
 * @slot settings - What stands under the open row
 * @slot plan-ID - Controls of the plan of that id
 */
@customElement('oo-lanes')
export class Lanes extends ChartElement {
  static override styles: CSSResultGroup = [ChartElement.styles, laneStyles];

  @property({ attribute: false }) open: RowKey | null = null;
  /** Small boughs without counts; the open row is drawn in full. */
  @property({ type: Boolean }) compact = false;
  /** Nothing to choose: for paper, and for pages that only show. */
  @property({ type: Boolean }) still = false;
  /** Without the key: where it stands elsewhere on the page. */
  @property({ type: Boolean, attribute: 'no-key' }) noKey = false;

  /** Parts whose sizes are watched: watching one again would report it again. */
  private watched = new WeakSet<Element>();
  /** Heights at the last drawing. */
  private drawn = '';

  override connectedCallback(): void {
    super.connectedCallback();
    this.watched = new WeakSet();
    if (this.hasUpdated) this.requestUpdate();
  }

  protected override resized(): void {
    super.resized();
    // A form or a head that grew moves the rows below it, without any change of a property.
    if (this.hasUpdated && !this.isUpdatePending && this.heights() !== this.drawn) this.draw();
  }

  /** Heights of all that the drawing follows, px. */
  private heights(): string {
    return [...this.renderRoot.querySelectorAll<HTMLElement>(MEASURED)].map((part) => part.offsetHeight).join();
  }

  /** A lane that takes another place is lifted out of the page for a moment, which would lose the focus. */
  protected override update(changed: PropertyValues<this>): void {
    const focused = this.shadowRoot?.activeElement;
    super.update(changed);
    if (focused instanceof HTMLElement && focused.isConnected && this.shadowRoot?.activeElement !== focused) focused.focus({ preventScroll: true });
  }

  protected override render(): TemplateResult | typeof nothing {
    const { outlook } = this;
    if (!outlook || this.width === 0) return nothing;
    const years = this.calendar(outlook);
    const classes = { picture: true, compact: this.compact, [years.room]: true };
    return html`<section aria-labelledby=${this.bare ? nothing : 'title'} aria-describedby="summary">
      ${this.head(laneText.title(outlook.plans.length), years.room === 'phone' ? laneText.introPhone : laneText.intro)}
      <p class="visually-hidden" id="summary">
        ${laneText.summary(
          outlook.plans.map(({ name, chance }) => ({ name, chance: chance.value })),
          outlook.lastYear,
        )}
      </p>
      <div class=${classMap(classes)}>
        ${this.key(years)}
        <div class="axis" aria-hidden="true"><svg></svg></div>
        <ol aria-label=${laneText.list} @keydown=${this.onKey}>
          ${repeat(
            outlook.plans,
            ({ id }) => id,
            (plan) => this.lane(plan, outlook, years),
          )}
        </ol>
      </div>
      ${this.data(laneTable(outlook))}
    </section>`;
  }

  private key(years: Calendar) {
    if (this.noKey || this.compact) return nothing;
    const picture = html`<div
      class="key"
      role="img"
      aria-label="${keyText.name}: ${keyText.nursery}, ${keyText.waiting}, ${keyText.judging}, ${keyText.pick}; ${keyText.proven}, ${keyText.bar}; ${keyText.chance}, ${keyText.guesses}"
    >
      <svg></svg>
    </div>`;
    return this.still || keyLayout(years).oneLine
      ? picture
      : html`<details class="how" @toggle=${() => this.draw()}>
          <summary>${keyText.name}</summary>
          ${picture}
        </details>`;
  }

  private lane(plan: PlanOutlook, outlook: Outlook, years: Calendar) {
    const phone = years.room === 'phone';
    const note = this.words[plan.id]?.note;
    const narrower = phone ? '' : `max-width: ${String(Math.round(years.horizon - 16))}px`;
    const name = html`<span class="visually-hidden">${laneText.plan}</span><span class="mark">${plan.mark}</span
      ><span>${phone && this.width < 345 ? (this.words[plan.id]?.short ?? plan.name) : tied(plan.name)}</span>`;
    const names = rowNames(plan.generations);
    return html`<li
      class=${classMap({ lane: true, resting: this.lifted !== null && this.lifted !== plan.id })}
      data-mark=${plan.mark}
      data-plan=${plan.id}
      @pointerenter=${() => this.lift(plan.id)}
      @pointerleave=${() => this.lift(null)}
      @focusin=${() => this.lift(plan.id)}
      @focusout=${() => this.lift(null)}
    >
      <svg class="lane-picture" aria-hidden="true"></svg>
      <div class="head" style=${narrower}>
        <h3>
          ${
            this.still
              ? html`<span class="plan-name">${name}</span>`
              : html`<button class="plan-name" @click=${() => this.tell('oo-plan', { plan: plan.id })}>${name}</button>`
          }
        </h3>
        ${phone ? shortChance(plan) : nothing} ${note && !this.compact ? html`<p class="note"><span>${note}</span></p>` : nothing}
        <div class="actions"><slot name="plan-${plan.id}"></slot></div>
      </div>
      ${phone ? nothing : chanceEnd(plan, years.horizon + GAP_TO_END, this.compact)}
      <div class="rows">${plan.generations.map((generation, index) => this.row(plan, generation, index, names[index] ?? '', outlook, years))}</div>
    </li>`;
  }

  private row(plan: PlanOutlook, generation: GenerationOutlook, index: number, name: string, outlook: Outlook, years: Calendar) {
    const open = index === this.openIndex(plan);
    const last = index === plan.generations.length - 1;
    const listened = html`<span class="visually-hidden"
      >, ${laneText.rowState(index + 1, plan.generations.length, plan.mark)}:
      ${chainWords(generation)}${generation.firstPick.p50 === null ? nothing : `, ${laneText.pickBy(generation.firstPick.p50)}`}${
        last
          ? `, ${plan.whenItWorks.p50 === null ? laneText.noneProven : laneText.provenBy(plan.whenItWorks.p50, yearRange(plan.whenItWorks.p10, plan.whenItWorks.p90, outlook.lastYear))}`
          : nothing
      }</span
    >`;
    if (this.still) return html`<div class="row" data-row><span class="label">${name}</span>${listened}</div>`;
    const width = years.room === 'phone' || open ? '' : `width: ${String(Math.round(years.horizon))}px`;
    const key: RowKey = { plan: plan.id, generation: generation.id, round: generation.round };
    return html`<button
        class="row"
        data-row
        style=${width}
        aria-expanded=${open ? 'true' : 'false'}
        aria-controls=${open ? `form-${plan.id}` : nothing}
        @click=${() => this.tell('oo-row', { ...key, open: !open })}
      >
        <svg class="turn" viewBox="0 0 10 10" aria-hidden="true">${svg`<path d="M2,0 L9,5 L2,10 Z" />`}</svg><span class="label">${name}</span>${listened}
      </button>
      ${open ? html`<div class="form" id="form-${plan.id}" @keydown=${(event: KeyboardEvent) => this.onFormKey(event, key)}><slot name="settings"></slot></div>` : nothing}`;
  }

  private calendar({ startYear, lastYear }: Outlook): Calendar {
    return calendar({ startYear, lastYear, width: this.width });
  }

  private openIndex(plan: PlanOutlook): number | null {
    const { open } = this;
    if (open?.plan !== plan.id) return null;
    const index = plan.generations.findIndex(({ id, round }) => id === open.generation && (open.round === undefined || open.round === round));
    return index < 0 ? null : index;
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    for (const part of this.renderRoot.querySelectorAll(MEASURED)) {
      if (this.watched.has(part)) continue;
      this.watched.add(part);
      this.sizes.observe(part);
    }
    if (this.laysOut(changed)) this.draw();
  }

  /** Draws all that is not text: heads and forms are measured as they stand, so the picture follows in the same frame. */
  private draw(): void {
    const { outlook, width } = this;
    if (!outlook || width === 0) return;
    const years = this.calendar(outlook);
    const axis = this.renderRoot.querySelector<SVGSVGElement>('.axis svg');
    if (axis) drawAxis(axis, years, calendarText.horizon);
    const key = this.renderRoot.querySelector<SVGSVGElement>('.key svg');
    if (key) drawKey(key, keyLayout(years));
    this.renderRoot.querySelectorAll<HTMLElement>('.lane').forEach((lane, index) => {
      const plan = outlook.plans[index];
      if (plan) this.drawPlan(lane, plan, outlook, years, `lane${String(index)}`);
    });
    this.drawn = this.heights();
  }

  private drawPlan(lane: HTMLElement, plan: PlanOutlook, outlook: Outlook, years: Calendar, id: string): void {
    const heightOf = (part: string) => lane.querySelector<HTMLElement>(part)?.offsetHeight ?? 0;
    const endHeight = heightOf('.end');
    // The frame of an open first row goes as far as the chance does: it begins under it.
    const head = lane.querySelector<HTMLElement>('.head');
    if (head) head.style.minHeight = this.openIndex(plan) === 0 && endHeight > 0 ? `${String(endHeight + UNDER_END)}px` : '';
    const layout = laneLayout(plan, {
      startYear: outlook.startYear,
      calendar: years,
      measure: this.measure,
      headHeight: heightOf('.head'),
      open: this.openIndex(plan),
      formHeight: heightOf('.form'),
      compact: this.compact,
      leastTop: this.compact || endHeight === 0 ? 0 : endHeight + 12,
    });
    lane.querySelectorAll<HTMLElement>('[data-row]').forEach((row, index) => {
      const place = layout.rows[index];
      if (!place) return;
      row.style.height = `${String(place.height)}px`;
      // On a phone labels stand over their boughs, where the page's own rules put them: nothing of a wider drawing may stay.
      const top = years.room === 'phone' ? '' : `${String(place.y - place.top)}px`;
      for (const part of row.querySelectorAll<HTMLElement | SVGElement>('.label, .turn')) part.style.top = top;
    });
    lane.style.paddingBottom = `${String(layout.proven?.height ?? 0)}px`;
    const picture = lane.querySelector<SVGSVGElement>('.lane-picture');
    if (picture) drawLane(picture, { ...layout, height: Math.max(layout.height, lane.clientHeight) }, id);
    const scale = lane.querySelector<SVGSVGElement>('.scale-picture');
    if (scale) drawChanceMark(scale, chanceMark(plan, Math.min(SCALE_WIDTH, this.width - years.horizon - GAP_TO_END - 4)));
  }

  private tell(type: 'oo-row' | 'oo-plan' | 'oo-move', detail: unknown): void {
    this.dispatchEvent(new CustomEvent(type, { detail, bubbles: true, composed: true }));
  }

  /** Up and down go from row to row; with Alt they ask to move the plan. */
  private readonly onKey = (event: KeyboardEvent): void => {
    const by = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    const at = event.target;
    if (by === 0 || !(at instanceof HTMLElement) || !at.matches('button.row, button.plan-name')) return;
    event.preventDefault();
    const plan = at.closest<HTMLElement>('.lane')?.dataset['plan'];
    if (event.altKey) {
      if (plan !== undefined) this.tell('oo-move', { plan, by });
      return;
    }
    const rows = [...this.renderRoot.querySelectorAll<HTMLElement>(at.matches('.row') ? 'button.row' : 'button.plan-name')];
    rows[rows.indexOf(at) + by]?.focus();
  };

  /** Escape leaves the settings and goes back to their row. */
  private onFormKey(event: KeyboardEvent, row: RowKey): void {
    if (event.key !== 'Escape' || event.defaultPrevented) return;
    event.stopPropagation();
    this.tell('oo-row', { ...row, open: false });
    void this.updateComplete.then(() => this.focusRow(row));
  }

  /** Puts the focus on a plan's name. */
  focusPlan(plan: string): void {
    this.renderRoot.querySelector<HTMLElement>(`[data-plan="${CSS.escape(plan)}"] button.plan-name`)?.focus();
  }

  /** Puts the focus on a row; false where it does not stand yet. */
  focusRow({ plan, generation, round = 1 }: RowKey): boolean {
    const index = this.outlook?.plans.find(({ id }) => id === plan)?.generations.findIndex((row) => row.id === generation && row.round === round) ?? -1;
    const row = this.renderRoot.querySelector(`[data-plan="${CSS.escape(plan)}"]`)?.querySelectorAll<HTMLElement>('button.row')[index];
    row?.focus();
    return row !== undefined;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-lanes': Lanes;
  }
}
