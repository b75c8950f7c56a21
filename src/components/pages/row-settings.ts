import { html, LitElement, css, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import type { Programme } from '../../model/programme.ts';
import type { Problem } from '../../model/problem.ts';
import { pairsReached } from '../../model/reach.ts';
import type { Effect } from '../../state/outlook.ts';
import { shared } from '../../styles/shared.ts';
import { app, likely } from '../../text/app.ts';
import { planText } from '../../text/charts-plan.ts';
import { focused } from '../fields/keep-focus.ts';
import { graftAdvice } from './graft-advice.ts';
import type { FormKey, FormSection } from '../fields/form.ts';

const styles = css`
  :host {
    display: block;
    background: var(--raise);
    border: 1px solid var(--ink);
    border-top: 0;
  }
  .fields {
    padding: 14px 26px 26px;
  }
  .bar {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: 10px 22px;
    padding: 14px 26px;
    background: var(--paper2);
    border-top: 1px solid var(--ink);
    position: sticky;
    bottom: 0;
  }
  .bar p {
    min-width: 12em;
    flex: 1;
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
  }
  .fields > .buttons {
    margin-top: 22px;
  }
  .jumps {
    display: none;
  }
  .why {
    margin-top: 8px;
    font-size: var(--size-note);
  }
  @media (max-width: 700px) {
    .fields,
    .bar {
      padding: 14px;
    }
    .bar {
      padding-block: 8px;
    }
    .jumps {
      display: flex;
      flex-wrap: wrap;
      gap: 0 14px;
      margin-bottom: 8px;
    }
  }
  @media print {
    :host {
      display: none;
    }
  }
`;

/** Between what has the focus and the bar, px: its outline and some air. */
const ROOM_AT_BAR = 10;

/** The settings of one generation, with the rates of the cross it makes beside them, and what the last change did. */
@customElement('oo-row-settings')
export class RowSettings extends LitElement {
  static override styles = [...shared, styles];

  @property({ attribute: false }) programme!: Programme;
  @property({ attribute: false }) problems: readonly Problem[] = [];
  @property({ type: Number }) plan = 0;
  @property({ type: Number }) generation = 0;
  /** Name of the last change made here, and what it did once that is known. */
  @property({ attribute: false }) change: { readonly label: string; readonly effect: Effect | null; readonly stop: string | null } | null = null;
  @property({ type: Boolean }) canUndo = false;
  @property({ type: Boolean }) canCopy = false;

  private tell(name: 'oo-close-row' | 'oo-undo' | 'oo-copy-plan' | 'oo-add-generation' | 'oo-remove-generation'): void {
    this.dispatchEvent(new CustomEvent(name, { bubbles: true, composed: true }));
  }

  /** The bar stays at the lower edge of the window: what Tab leads to must not lie behind it. */
  private readonly onTab = (event: KeyboardEvent): void => {
    const [reached] = event.composedPath();
    if (event.key === 'Tab' && reached instanceof Element) this.keepInSight(reached);
  };

  private keepInSight(shown: Element): void {
    const bar = this.renderRoot.querySelector('.bar');
    if (!bar) return;
    const hidden = shown.getBoundingClientRect().bottom + ROOM_AT_BAR - bar.getBoundingClientRect().top;
    if (hidden > 0) window.scrollBy(0, hidden);
  }

  /** Nor what is wrong with the number that is being typed, which is said under its box. */
  protected override updated(changed: PropertyValues<this>): void {
    if (!changed.has('problems') || this.problems.length === 0) return;
    requestAnimationFrame(() => {
      const root = focused()?.getRootNode();
      if (this.isConnected && root instanceof ShadowRoot && this.shadowRoot?.activeElement) this.keepInSight(root.host);
    });
  }

  private sections(): FormSection[] {
    const { programme } = this;
    const plan = programme.plans[this.plan];
    const generation = plan?.generations[this.generation];
    if (!plan || !generation) return [];
    const entries = [
      ...new Set(pairsReached(programme, plan).flatMap((pair) => (pair.generation === this.generation && !pair.stray && pair.entry ? [pair.entry] : []))),
    ];
    const crosses = entries.map((entry): FormSection => {
      const at = programme.crosses.indexOf(entry);
      // What few crosses have stands here where it is stated; it is put in under the entry itself.
      const stated = {
        seedsPerFruit: entry.seedsPerFruit,
        usableSeedlings: entry.usableSeedlings,
        motherClones: entry.motherClones || undefined,
        necrosis: entry.necrosis,
      };
      const rare = Object.entries(stated).flatMap(([key, value]) => (value === undefined ? [] : [key]));
      const keys = [
        'set',
        'straySet',
        'emptyFruit',
        ...rare.filter((key) => key === 'seedsPerFruit'),
        'germination',
        'weakness',
        ...rare.filter((key) => key !== 'seedsPerFruit'),
      ];
      return { title: `${likely.raise}: ${entry.name}`, keys: keys.map((key): FormKey => ({ at: ['crosses', at, key] })), column: 1 };
    });
    const advice = graftAdvice(programme, generation, entries);
    const kinds = [...new Set(entries.map(({ gives }) => gives))].map((id) => programme.kinds.findIndex((kind) => kind.id === id)).filter((at) => at >= 0);
    const seasons = kinds.flatMap((at): FormKey[] => ['firstFruit', 'neverFruits', 'regularity'].map((key) => ({ at: ['kinds', at, key] })));
    const stock = generation.rescue && generation.rescue.who !== 'none' ? programme.stocks.findIndex(({ id }) => id === generation.rescue?.stock) : -1;
    const take: FormKey[] = stock < 0 ? [] : ['takeTender', 'takeRipe', 'precocity'].map((key) => ({ at: ['stocks', stock, key] }));
    return [
      {
        title: likely.pollinate,
        keys: ['name', 'seedParents', 'pollen', ...(generation.pollen === 'open' ? ['pool'] : ['flowers', 'cover']), 'springs', 'seedlings'],
        column: 1,
      },
      ...crosses,
      { title: likely.rescue, keys: [advice === null ? 'rescue' : { key: 'rescue', help: advice }, ...take], column: 2 },
      { title: likely.judge, keys: [...seasons, 'judge', 'keep', 'goOn', 'backup'], column: 2 },
      {
        title: likely.further,
        keys: [
          'repeat',
          ...(generation.pollen === 'open' ? [] : ['reciprocal', 'selfs']),
          'after',
          'cross',
          ...(entries.some(({ routes }) => routes.length > 0) ? ['route'] : []),
          'garden',
          'test',
          'look',
        ],
        column: 1,
      },
    ];
  }

  protected override render(): TemplateResult {
    const rounds = this.programme.plans[this.plan]?.generations.length ?? 1;
    const sections = this.sections();
    return html`
      <div class="fields" @keyup=${this.onTab}>
        ${this.jumps(sections)}
        <oo-form
          .path=${['plans', this.plan, 'generations', this.generation]}
          .programme=${this.programme}
          .problems=${this.problems}
          .sections=${sections}
        ></oo-form>
        <div class="buttons">
          <button @click=${() => this.tell('oo-add-generation')}>${likely.addGeneration}</button>
          ${rounds > 1 ? html`<button @click=${() => this.tell('oo-remove-generation')}>${likely.removeGeneration}</button>` : nothing}
          <button ?disabled=${!this.canCopy} @click=${() => this.tell('oo-copy-plan')}>${likely.copyPlan}</button>
        </div>
        ${this.canCopy ? nothing : html`<p class="why quiet">${planText.full}</p>`}
      </div>
      <div class="bar">
        <p role="status">${this.change ? this.told(this.change) : nothing}</p>
        <div class="buttons">
          <button ?disabled=${!this.canUndo} @click=${() => this.tell('oo-undo')}>${app.undo}</button>
          <button class="main" @click=${() => this.tell('oo-close-row')}>${likely.done}</button>
        </div>
      </div>
    `;
  }

  /** On a phone the parts stand far below each other. */
  private jumps(sections: readonly FormSection[]): TemplateResult {
    return html`<div class="jumps" role="group" aria-label=${likely.jumps}>
      ${sections.map(({ title }) => html`<button class="plain" @click=${() => this.jump(title)}>${title}</button>`)}
    </div>`;
  }

  private jump(title: string): void {
    const legends = this.renderRoot.querySelector('oo-form')?.shadowRoot?.querySelectorAll('legend') ?? [];
    const part = [...legends].find((legend) => legend.textContent === title)?.closest('fieldset');
    part?.scrollIntoView();
    part?.querySelector<HTMLElement>('oo-field, oo-estimate, oo-choices, input, select, button')?.focus({ preventScroll: true });
  }

  private told({ label, effect, stop }: NonNullable<RowSettings['change']>): TemplateResult {
    const words = { better: likely.better, worse: likely.worse, 'no difference': likely.noDifference } as const;
    const whole = (share: number) => String(Math.round(share * 100));
    return html`<b>${likely.change(label)}</b>
      ${stop !== null ? html`<i>${likely.cannotRun(stop)}</i>` : effect ? html`${likely.effect(whole(effect.before), whole(effect.after))} <i>${words[effect.verdict]}</i>` : html`<i>${likely.counting}</i>`}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-row-settings': RowSettings;
  }
}
