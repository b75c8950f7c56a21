import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { z } from 'zod';
import { estimateBounds, formOf, share, type Estimate, type EstimateBounds, type EstimateForm, type Source } from '../../model/estimate.ts';
import { readEstimate, sourceOf, toForm, withoutSource, withSource } from '../../model/estimate-forms.ts';
import { spreadOf } from '../../model/estimate-spread.ts';
import type { Understood } from '../../model/typed-estimate.ts';
import { printNumber } from '../../model/numbers.ts';
import { bare, type Path } from '../../model/walk.ts';
import { shared } from '../../styles/shared.ts';
import { amountInWords, countWords, estimateForms, fieldText, problems, shareInWords } from '../../text/fields.ts';
import { emitChange } from './change.ts';
import { dragSteps } from './drag.ts';
import type { Choice } from './draft.ts';
import { estimateBoxes } from './estimate-boxes.ts';
import { estimateFrom, takenLine, waitingLine, type Taken } from './estimate-typed.ts';
import { estimateStyles } from './estimate.styles.ts';
import { clashIn, inClusters, numbersOf, shapeOf, slotsOf, withAlternative, withNumbers, type Clash, type Slot } from './estimate-slots.ts';
import { keepFocus } from './keep-focus.ts';
import { choiceButtons } from './number-box.ts';
import { steppedBy, unitOf } from './number-reading.ts';
import { quietChoice, row } from './row.styles.ts';
import { sketch } from './sketch.ts';
import { inBadge } from './source.ts';

const samePath = (a: Path, b: Path | undefined): boolean => b !== undefined && a.join('/') === b.join('/');
const UNBOUNDED: EstimateBounds = { min: -Infinity, max: Infinity, forms: ['known', 'ranged', 'alternatives'] };

/**
 * Edits an estimate in any of its four forms, with a sketch of what it says, its source, and a choice of the form.
 * A whole estimate leaves it whenever every box can be read and the numbers agree; else it stays as typed and is marked in words.
 * @fires oo-change
 */
@customElement('oo-estimate')
export class OoEstimate extends LitElement {
  static override styles = [...shared, row, quietChoice, estimateStyles];

  /** Schema of the estimate: its words, bounds and the forms it may have. */
  @property({ attribute: false }) schema: z.ZodType = share({ label: '' });
  @property({ attribute: false }) value: unknown = undefined;
  @property({ attribute: false }) path: Path = [];
  @property() problem = '';
  /** Worth knowing, but nothing wrong. */
  @property() remark = '';
  @property() label = '';
  @property() help = '';
  /** For a count of fruit set or of seeds that come up: how alike flowers of one spring are, 0–1. Undefined hides the lots. */
  @property({ attribute: false }) springLuck: number | undefined = undefined;
  /** A count may have been made in clusters of flowers. */
  @property({ type: Boolean }) clusters = false;

  private slots: readonly Slot[] = [];
  /** The boxes are to be made anew although they are the same ones. */
  private renew = false;
  private shape = '';
  private clash: Clash | undefined = undefined;
  /** The last text that was taken for a whole estimate, until something else is typed. */
  private taken: Taken | undefined = undefined;

  private get words(): string {
    return this.label || (bare(this.schema).meta?.label ?? '');
  }

  private get bounds(): EstimateBounds {
    return estimateBounds.get(bare(this.schema).schema) ?? UNBOUNDED;
  }

  /** What the document says, or the default of the schema. */
  private get estimate(): Estimate {
    return readEstimate(this.value) ?? readEstimate(bare(this.schema).fallback) ?? Math.min(this.bounds.max, Math.max(this.bounds.min, 0));
  }

  private get isShare(): boolean {
    return bare(this.schema).meta?.scale === 'share';
  }

  override willUpdate(changed: PropertyValues<this>): void {
    const { estimate } = this;
    // The same element may be given another place of the document: what was typed belonged to the old one.
    const shape = `${this.path.join('/')} ${shapeOf(estimate)}`;
    const moved = shape !== this.shape || changed.has('schema');
    if (!changed.has('value') && !moved) return;
    if (this.taken && ((changed.has('path') && !samePath(this.path, changed.get('path'))) || JSON.stringify(estimate) !== JSON.stringify(this.taken.after)))
      this.taken = undefined;
    if (moved || this.renew) {
      this.renew = false;
      this.slots = slotsOf(estimate, this.bounds, bare(this.schema).meta);
      this.shape = shape;
    }
    const numbers = numbersOf(estimate);
    for (const slot of this.slots) slot.draft.show(numbers.get(slot.key));
    this.judge();
  }

  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector<HTMLElement>('input')?.focus(options);
  }

  /** What the boxes say now, if each can be read. */
  private get typed(): Estimate | undefined {
    if (!this.slots.every(({ draft }) => draft.good || draft.aside)) return undefined;
    const numbers = this.slots.flatMap(({ key, draft }) => (draft.value === undefined ? [] : [[key, draft.value] as const]));
    return withNumbers(this.estimate, new Map(numbers));
  }

  private judge(): Estimate | undefined {
    const { typed } = this;
    this.clash = typed === undefined ? undefined : clashIn(typed);
    return this.clash ? undefined : typed;
  }

  private readonly onDone = (good: boolean): void => {
    this.taken = undefined;
    const estimate = this.judge();
    this.requestUpdate();
    if (good && estimate !== undefined && this.schema.safeParse(estimate).success) this.send(estimate);
  };

  private readonly onLeave = (slot: Slot): void => {
    // A box that is being taken away tells of its change once more.
    if (!this.slots.includes(slot)) return;
    this.requestUpdate();
    const { whole } = slot.draft;
    if (whole) this.take(whole, slot);
  };

  /** A text that says a whole estimate takes the place of all boxes. */
  private take(understood: Understood, { key, draft }: Slot): void {
    const text = draft.text.trim();
    const before = withNumbers(this.estimate, new Map(draft.before === undefined ? [] : [[key, draft.before]]));
    const after = readEstimate(estimateFrom(understood, text, before));
    if (after === undefined || !this.schema.safeParse(after).success) return;
    draft.whole = undefined;
    this.replace(after);
    this.taken = { text, understood, before, after };
  }

  /** Other boxes, or other text in the same ones: nothing that was typed before may stay in them, nor the focus be lost. */
  private replace(estimate: Estimate): void {
    this.renew = true;
    this.reshape(estimate);
    keepFocus(this);
  }

  private choose(slot: Slot, choice: Choice<number | undefined>): void {
    if ('whole' in choice) this.take(choice.whole, slot);
    else this.onDone(slot.draft.pick(choice.value));
    keepFocus(this);
  }

  private send(estimate: Estimate): void {
    emitChange(this, { path: this.path, value: estimate, label: this.words });
  }

  /** A change of the boxes themselves is shown at once; the document follows. */
  private reshape(estimate: Estimate): void {
    this.value = estimate;
    this.send(estimate);
  }

  private readonly onDrag = dragSteps((steps) => {
    const [slot] = this.slots;
    if (slot) this.onDone(slot.draft.pick(steppedBy(slot.draft.value, steps, slot.rules)));
  });

  private readonly onForm = (event: Event): void => {
    if (!(event.target instanceof HTMLSelectElement)) return;
    const { value } = event.target;
    const form = this.bounds.forms.find((each) => each === value);
    if (form) this.reshape(toForm(this.estimate, form, this.bounds, this.isShare));
  };

  private readonly onSource = (event: CustomEvent<Source | undefined>): void => {
    this.send(event.detail ? withSource(this.estimate, event.detail) : withoutSource(this.estimate));
  };

  private get lastGood(): readonly string[] {
    const numbers = [...numbersOf(this.estimate).values()];
    return this.slots.map(({ rules }, i) => printNumber(numbers[i] ?? 0, rules.scale));
  }

  private get found(): string {
    const own = this.slots.map((slot) => slot.draft.problem).find((problem) => problem !== '') ?? this.clash?.problem ?? '';
    const stands = own === '' ? '' : problems.stands(this.lastGood);
    return [own, stands, this.problem].filter(Boolean).join(' ');
  }

  override render(): TemplateResult {
    const { meta } = bare(this.schema);
    const form = formOf(this.estimate);
    const one = form === 'known';
    const lotsHelp = form === 'counted' && this.springLuck !== undefined ? fieldText.lotsHelp : '';
    const help = [this.help || (meta?.help ?? ''), lotsHelp].filter(Boolean).join(' ');
    const key = this.path.findLast((step) => typeof step === 'string') ?? '';
    return html`<div class="row">
      ${one ? html`<label class="name dragged" id="name" for="value" @pointerdown=${this.onDrag}>${this.words}</label>` : html`<span class="name" id="name">${this.words}</span>`}
      ${estimateBoxes({
        slots: this.slots,
        form,
        unit: this.slots[0]?.rules.unit ?? '',
        words: countWords(key),
        bad: this.clash?.keys ?? (this.problem === '' ? [] : this.slots.map((slot) => slot.key)),
        describedBy: [this.understood === nothing ? '' : 'understood', 'said', help && 'help', this.remark && 'remark', 'problem'].filter(Boolean).join(' '),
        lots: this.springLuck !== undefined,
        clusters: this.clusters,
        onDone: this.onDone,
        onLeave: this.onLeave,
        onClusters: (flowers) => this.reshape(inClusters(this.estimate, flowers)),
        onAlternative: (change) => {
          this.reshape(withAlternative(this.estimate, change));
          keepFocus(this);
        },
      })}
      <p class="problem" id="problem" aria-live="polite">${this.found}</p>
      ${this.slots.map((slot) => choiceButtons(slot.draft, (choice) => this.choose(slot, choice)))}
      <p class="understood" id="understood" aria-live="polite">${this.understood}</p>
      <div class="below">${this.below(form, help)}</div>
      ${this.remark ? html`<p class="remark" id="remark">${this.remark}</p>` : nothing}
    </div>`;
  }

  private get understood(): TemplateResult | string | typeof nothing {
    const { meta } = bare(this.schema);
    const [scale, unit] = [meta?.scale ?? 'number', unitOf(meta)];
    const { taken } = this;
    if (taken) return takenLine(taken, scale, unit, () => this.replace(taken.before));
    const draft = this.slots.map((slot) => slot.draft).find(({ whole, said }) => whole !== undefined || said !== '');
    return waitingLine(draft?.whole, draft?.said ?? '', scale, unit);
  }

  private below(form: EstimateForm, help: string): TemplateResult {
    const { estimate, words } = this;
    const { meta } = bare(this.schema);
    const spread = spreadOf(estimate, this.springLuck ?? 0);
    const source = sourceOf(estimate);
    const note = source && !inBadge(source.note) ? source.note : '';
    const said = spread
      ? this.isShare
        ? shareInWords(spread.mean, spread.low, spread.high)
        : amountInWords(spread.mean, spread.low, spread.high, meta?.scale === 'months' || meta?.scale === 'years' ? meta.scale : (meta?.unit ?? ''))
      : '';
    const helped = help === '' ? nothing : html`<p class="help" id="help">${help}</p>`;
    const lines = [said, note].filter(Boolean).map((each) => html`<div>${each}</div>`);
    return html`${sketch(estimate, spread)}
      <div class="words ${source?.confidence ? 'roomy' : ''}">
        <div id="said">${lines}</div>
        ${lines.length === 0 ? helped : nothing}
      </div>
      <select class="quiet-choice" aria-label=${fieldText.formOf(words)} @change=${this.onForm}>
        ${this.bounds.forms.map((each) => html`<option value=${each} .selected=${live(each === form)}>${estimateForms[each]}</option>`)}
      </select>
      <oo-source .source=${source} .label=${words} @oo-source=${this.onSource}></oo-source>
      ${lines.length === 0 ? nothing : helped}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-estimate': OoEstimate;
  }
}
