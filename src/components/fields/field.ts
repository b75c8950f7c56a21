import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { z } from 'zod';
import { estimateBounds, type EstimateForm } from '../../model/estimate.ts';
import { readEstimate } from '../../model/estimate-forms.ts';
import { bare, type Entry, type Path } from '../../model/walk.ts';
import { printNumber, stepOf } from '../../model/numbers.ts';
import { shared } from '../../styles/shared.ts';
import { emptyChoice, fieldText, problems } from '../../text/fields.ts';
import { emitChange } from './change.ts';
import { Draft, type Choice, type Reading } from './draft.ts';
import { dragSteps } from './drag.ts';
import { estimateFrom, waitingLine } from './estimate-typed.ts';
import { fieldKind, optionsOf } from './field-kind.ts';
import { fieldStyles } from './field.styles.ts';
import { keepFocus } from './keep-focus.ts';
import { choiceButtons, numberBox } from './number-box.ts';
import { numberDraft, readBox, rulesOf, steppedBy, unitOf, type NumberRules } from './number-reading.ts';
import { row } from './row.styles.ts';
import { writtenAt } from './written.ts';

const targetValue = (event: Event): string =>
  event.target instanceof HTMLInputElement || event.target instanceof HTMLSelectElement || event.target instanceof HTMLTextAreaElement
    ? event.target.value
    : '';

/**
 * One plain field of the document, drawn from its schema: a number, a text, a tick, a choice of words or of entries.
 * An `oo-change` leaves it on every keystroke that can be read and lies in bounds; anything else stays as typed and is marked in words.
 * @fires oo-change
 */
@customElement('oo-field')
export class OoField extends LitElement {
  static override styles = [...shared, row, fieldStyles];

  /** Schema of the value, with its words registered. */
  @property({ attribute: false }) schema: z.ZodType = z.string();
  @property({ attribute: false }) value: unknown = undefined;
  @property({ attribute: false }) path: Path = [];
  /** What a reference can name. */
  @property({ attribute: false }) entries: readonly Entry[] = [];
  /** In the words of the whole document’s check; shown beside what the field itself finds. */
  @property() problem = '';
  /** Worth knowing, but nothing wrong. */
  @property() remark = '';
  /** Instead of the words of the schema. */
  @property() label = '';
  @property() help = '';
  /** No picture is drawn from it yet: what is said of a last good number must not speak of one. */
  @property({ type: Boolean }) noPicture = false;
  /** A slider beside the number. */
  @property({ type: Boolean }) slider = false;
  /** The unit is read out but not seen: the last of a line of several says it for all. */
  @property({ type: Boolean }) hideUnit = false;
  /** The name above the box, for a line of several. */
  @property({ type: Boolean, reflect: true }) compact = false;

  private place: string | undefined = undefined;
  private numbers = numberDraft('number');
  private letters = new Draft<string | undefined>((value) => value ?? '');

  private get words(): string {
    return this.label || (bare(this.schema).meta?.label ?? '');
  }

  private get rules(): NumberRules {
    const { meta, optional } = bare(this.schema);
    return rulesOf(meta, fieldKind(this.schema) === 'whole', !optional);
  }

  private get current(): unknown {
    return this.value ?? bare(this.schema).fallback;
  }

  override willUpdate(changed: PropertyValues<this>): void {
    // The same element may be given another place of the document: what was typed belonged to the old one.
    const place = this.path.join('/');
    const moved = place !== this.place || changed.has('schema');
    this.place = place;
    if (moved) {
      this.numbers = numberDraft(bare(this.schema).meta?.scale ?? 'number');
      this.letters = new Draft<string | undefined>((value) => value ?? '');
    }
    if (!changed.has('value') && !moved) return;
    const { current } = this;
    this.numbers.show(typeof current === 'number' ? current : undefined);
    this.letters.show(typeof current === 'string' ? current : undefined);
  }

  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector<HTMLElement>('input:not([type=range]), select, textarea')?.focus(options);
  }

  private send(value: unknown): void {
    emitChange(this, { path: this.path, value, label: this.words });
  }

  private done(draft: Draft<number | undefined> | Draft<string | undefined>, good: boolean): void {
    this.requestUpdate();
    if (good) this.send(draft.value);
  }

  private readText(text: string): Reading<string | undefined> {
    const { schema, optional } = bare(this.schema);
    if (text === '' && optional) return { ok: true, value: undefined };
    const said = writtenAt(this.path, text)?.problem ?? '';
    if (said !== '') return { ok: false, problem: said };
    const read = schema.safeParse(text);
    if (read.success) return typeof read.data === 'string' ? { ok: true, value: read.data } : { ok: false, problem: '' };
    const [issue] = read.error.issues;
    if (issue?.code === 'too_small') return { ok: false, problem: problems.needsText };
    if (issue?.code === 'too_big') return { ok: false, problem: problems.tooLong(Number(issue.maximum)) };
    return { ok: false, problem: issue?.message ?? '' };
  }

  /** Ids of what stands around the control; the problem's place is always there, so that it is read out when it fills. */
  private get described(): string {
    const { meta } = bare(this.schema);
    return [unitOf(meta) ? 'unit' : '', this.understood === nothing ? '' : 'understood', this.helped ? 'help' : '', this.remark ? 'remark' : '', 'problem']
      .filter(Boolean)
      .join(' ');
  }

  private get understood(): string | typeof nothing {
    const { whole, said } = this.numbers;
    const written = writtenAt(this.path, this.letters.text)?.understood ?? '';
    if (written !== '') return written;
    return waitingLine(whole, said, this.rules.scale, this.rules.unit);
  }

  private get helped(): string {
    return this.help || (bare(this.schema).meta?.help ?? '');
  }

  private get found(): string {
    const { current } = this;
    const own = this.numbers.problem || this.letters.problem;
    const words = this.noPicture ? problems.standsUnseen : problems.stands;
    const stands = this.numbers.problem !== '' && typeof current === 'number' ? words([printNumber(current, this.rules.scale)]) : '';
    return [own, stands, this.problem].filter(Boolean).join(' ');
  }

  override render(): TemplateResult {
    const kind = fieldKind(this.schema, this.compact);
    const dragged = kind === 'number' || kind === 'whole' ? this.onDrag : undefined;
    const form = kind === 'text' ? 'wide' : kind === 'longText' ? 'tall' : kind === 'yesNo' ? 'ticked' : '';
    const named =
      kind === 'strip'
        ? html`<span class="name" id="name">${this.words}</span>`
        : html`<label class="name ${dragged ? 'dragged' : ''}" id="name" for="box" @pointerdown=${dragged}>${this.words}</label>`;
    return html`<div class="row ${form}">
      ${named}
      <div class="boxes">${this.control(kind)}</div>
      <p class="problem" id="problem" aria-live="polite">${this.found}</p>
      ${choiceButtons(this.numbers, this.onChosen)}
      <p class="understood" id="understood" aria-live="polite">${this.understood}</p>
      ${this.helped ? html`<div class="below"><p id="help">${this.helped}</p></div>` : nothing}
      ${this.remark ? html`<p class="remark" id="remark">${this.remark}</p>` : nothing}
    </div>`;
  }

  private control(kind: ReturnType<typeof fieldKind>): TemplateResult | typeof nothing {
    switch (kind) {
      case 'number':
      case 'whole':
        return this.numberControl();
      case 'text':
        return html`<input
          class="text"
          type="text"
          id="box"
          autocomplete="off"
          aria-describedby=${this.described}
          aria-invalid=${this.found ? 'true' : 'false'}
          .value=${live(this.letters.text)}
          @input=${this.onText}
        />`;
      case 'longText':
        return html`<textarea
          class="text"
          id="box"
          rows="2"
          aria-describedby=${this.described}
          aria-invalid=${this.found ? 'true' : 'false'}
          .value=${live(this.letters.text)}
          @input=${this.onText}
        ></textarea>`;
      case 'yesNo':
        return html`<label class="tick" for="box"
          ><input
            type="checkbox"
            id="box"
            aria-labelledby="name"
            aria-describedby=${this.described}
            .checked=${live(this.current === true)}
            @change=${this.onTick}
        /></label>`;
      case 'strip':
        return this.strip();
      case 'list':
        return this.list(optionsOf(this.schema).map((id) => ({ id, name: bare(this.schema).meta?.words?.[id] ?? id })));
      case 'reference':
        return this.list(this.entries);
      case undefined:
        return nothing;
    }
  }

  private numberControl(): TemplateResult {
    const { rules } = this;
    const onDone = (good: boolean): void => this.done(this.numbers, good);
    const { takes, onLeave } = this;
    const box = numberBox({
      draft: this.numbers,
      rules,
      takes,
      letters: takes !== undefined,
      id: 'box',
      labelledBy: 'name',
      describedBy: this.described,
      bad: this.problem !== '',
      onDone,
      onLeave,
    });
    const unit = unitOf(bare(this.schema).meta);
    return html`${this.slider ? this.sliderControl(rules) : nothing}${box}${unit || !this.compact ? html`<span class=${this.hideUnit ? 'visually-hidden' : 'unit'} id="unit">${unit}</span>` : nothing}`;
  }

  private sliderControl(rules: NumberRules): TemplateResult {
    const value = this.numbers.value ?? rules.min;
    const onInput = (event: Event): void => {
      const reading = readBox(targetValue(event), { ...rules, scale: 'number' });
      if (reading.ok) this.done(this.numbers, this.numbers.pick(reading.value));
    };
    return html`<input
      class="slider"
      type="range"
      aria-label=${fieldText.slider(this.words)}
      aria-valuetext=${`${String(value)} ${rules.unit}`}
      min=${rules.min}
      max=${rules.max}
      step=${stepOf(rules.scale, rules.whole, value)}
      .value=${live(String(value))}
      @input=${onInput}
    />`;
  }

  private strip(): TemplateResult {
    const words = bare(this.schema).meta?.words ?? {};
    return html`<div class="strip" role="radiogroup" aria-labelledby="name" aria-describedby=${this.described}>
      ${optionsOf(this.schema).map(
        (option) =>
          html`<label
            ><input
              type="radio"
              name="choice"
              value=${option}
              .checked=${live(this.current === option)}
              @change=${() => this.send(option)}
            />${words[option] ?? option}</label
          >`,
      )}
    </div>`;
  }

  private list(entries: readonly Entry[]): TemplateResult {
    const { optional } = bare(this.schema);
    const value = typeof this.current === 'string' ? this.current : '';
    const gone = value !== '' && !entries.some((entry) => entry.id === value);
    const first = optional ? emptyChoice(String(this.path.at(-1))) : entries.length === 0 ? fieldText.noEntries : fieldText.choose;
    return html`<select id="box" aria-describedby=${this.described} aria-invalid=${this.found ? 'true' : 'false'} @change=${this.onChoice}>
      ${optional || value === '' ? html`<option value="" .selected=${live(value === '')}>${first}</option>` : nothing}
      ${gone ? html`<option value=${value} .selected=${live(true)}>${fieldText.gone(value)}</option>` : nothing}
      ${entries.map((entry) => html`<option value=${entry.id} .selected=${live(entry.id === value)}>${entry.name}</option>`)}
    </select>`;
  }

  private readonly onDrag = dragSteps((steps) => this.done(this.numbers, this.numbers.pick(steppedBy(this.numbers.value, steps, this.rules))));

  /** One number of an estimate, drawn small beside others: what is typed may be more than one number all the same. */
  private get takes(): readonly EstimateForm[] | undefined {
    return estimateBounds.get(bare(this.schema).schema)?.forms;
  }

  private readonly onLeave = (): void => {
    this.requestUpdate();
    const { whole, text } = this.numbers;
    if (!whole) return;
    // Enter and leaving the box both tell of it: it is sent once.
    this.numbers.whole = undefined;
    this.send(estimateFrom(whole, text.trim(), readEstimate(this.current) ?? 0));
  };

  private readonly onChosen = (choice: Choice<number | undefined>): void => {
    if ('whole' in choice) this.send(estimateFrom(choice.whole, this.numbers.text.trim(), readEstimate(this.current) ?? 0));
    else this.done(this.numbers, this.numbers.pick(choice.value));
    keepFocus(this);
  };

  private readonly onText = (event: Event): void => {
    const text = targetValue(event);
    this.done(this.letters, this.letters.type(text, this.readText(text)));
  };

  private readonly onTick = (event: Event): void => {
    if (event.target instanceof HTMLInputElement) this.send(event.target.checked);
  };

  private readonly onChoice = (event: Event): void => {
    const value = targetValue(event);
    if (value !== '') this.send(value);
    else if (bare(this.schema).optional) this.send(undefined);
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-field': OoField;
  }
}
