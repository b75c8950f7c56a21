import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Estimate } from '../../model/estimate.ts';
import { numbersOf } from './estimate-slots.ts';
import { printNumber } from '../../model/numbers.ts';
import type { MeasuredTrait } from '../../model/programme.ts';
import { tastedEstimate, type Tasted } from '../../model/tasted.ts';
import { shared } from '../../styles/shared.ts';
import { tastedText } from '../../text/tasted.ts';
import { keepFocus } from './keep-focus.ts';
import { choiceButtons, numberBox } from './number-box.ts';
import { numberDraft, type NumberRules } from './number-reading.ts';
import { row } from './row.styles.ts';

const tastedStyles = css`
  .panel {
    margin: 2px 0 12px;
    padding: 10px 14px 12px;
    border: 1px solid var(--rule);
    background: var(--paper);
    min-width: 0;
  }
  legend {
    float: left;
    width: 100%;
    padding: 0;
    font-weight: 600;
  }
  .why,
  .row {
    clear: both;
  }
  .why,
  .found {
    font-size: var(--size-note);
    color: var(--ink2);
    padding: 2px 0;
  }
  .found {
    color: var(--ink);
    padding: 8px 0;
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    gap: 8px;
  }
  .ask {
    display: flex;
    justify-content: flex-end;
  }
  .ask button {
    font-size: var(--size-note);
    color: var(--ink2);
  }
`;

const SEASONS: NumberRules = { scale: 'count', min: 1, max: 100, whole: true, needed: true, unit: tastedText.seasonsUnit };

declare global {
  interface HTMLElementEventMap {
    'oo-tasted': CustomEvent<Estimate>;
  }
}

/**
 * Offers to work out a tree's true value from what was tasted: a button, then two numbers and what follows from them.
 * @fires oo-tasted with the estimate, once it is to be used
 */
@customElement('oo-tasted')
export class OoTasted extends LitElement {
  static override styles = [...shared, row, tastedStyles];

  @property({ attribute: false }) trait!: MeasuredTrait;
  @state() private open = false;

  private tasted = numberDraft('number');
  private seasons = numberDraft('count');

  private get rules(): NumberRules {
    return { scale: 'number', min: -1e6, max: 1e6, whole: false, needed: true, unit: this.trait.unit };
  }

  private get worked(): Tasted | undefined {
    const { tasted, seasons, trait } = this;
    const [mean, many] = [tasted.value, seasons.value];
    if (mean === undefined || many === undefined || !tasted.good || !seasons.good) return undefined;
    return tastedEstimate(mean, many, trait, (text, reference) => tastedText.note(text, trait.unit, many, reference));
  }

  private readonly toggle = (): void => {
    this.open = !this.open;
    void this.updateComplete.then(() => this.renderRoot.querySelector<HTMLElement>(this.open ? 'input' : 'button')?.focus());
  };

  private readonly onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape') return;
    // The row around it closes on Escape too; this one was for the panel.
    event.stopPropagation();
    this.toggle();
  };

  private readonly use = (): void => {
    const { worked } = this;
    if (!worked) return;
    this.open = false;
    this.dispatchEvent(new CustomEvent('oo-tasted', { detail: worked.estimate }));
    keepFocus(this, () => this.renderRoot.querySelector('button'));
  };

  override render(): TemplateResult {
    const { trait } = this;
    if (!this.open)
      return html`<div class="ask">
        <button type="button" class="plain" aria-expanded="false" aria-label=${`${trait.name}: ${tastedText.open}`} @click=${this.toggle}>
          ${tastedText.open}
        </button>
      </div>`;
    const { worked } = this;
    return html`<fieldset class="panel" @keydown=${this.onKey}>
      <legend>${tastedText.legend(trait.name)}</legend>
      <p class="why">${tastedText.why}</p>
      ${this.line('mean', tastedText.mean, this.tasted, this.rules)} ${this.line('seasons', tastedText.seasons, this.seasons, SEASONS)}
      <p class="found" aria-live="polite">${worked ? this.foundIn(worked) : nothing}</p>
      <div class="buttons">
        <button type="button" class="main" ?disabled=${!worked} @click=${this.use}>${tastedText.use}</button>
        <button type="button" @click=${this.toggle}>${tastedText.cancel}</button>
      </div>
    </fieldset>`;
  }

  private foundIn({ found, estimate }: Tasted): string {
    const numbers = [...numbersOf(estimate).values()].map((value) => printNumber(value));
    const [low = '', likely = low, high = low] = numbers;
    return tastedText.found(String(Math.round(100 * found.kept)), likely, low, high, this.trait.unit);
  }

  private line(id: string, label: string, draft: ReturnType<typeof numberDraft>, rules: NumberRules): TemplateResult {
    // A box that is being taken away tells of its change once more.
    const onDone = (): void => (this.open ? this.requestUpdate() : undefined);
    return html`<div class="row">
      <label class="name" id="${id}-name" for=${id}>${label}</label>
      <div class="boxes">
        ${numberBox({ draft, rules, id, labelledBy: `${id}-name`, describedBy: `${id}-unit ${id}-problem`, onDone })}
        <span class="unit" id="${id}-unit">${rules.unit}</span>
      </div>
      <p class="problem" id="${id}-problem" aria-live="polite">${draft.problem}</p>
      ${choiceButtons(draft, (choice) => {
        if ('value' in choice) draft.pick(choice.value);
        this.requestUpdate();
        keepFocus(this, () => this.renderRoot.querySelector(`#${id}`));
      })}
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-tasted': OoTasted;
  }
}
