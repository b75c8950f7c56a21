import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { z } from 'zod';
import { siresSchema } from '../../model/inheritance.ts';
import { isRecord, type Path } from '../../model/walk.ts';
import { shared } from '../../styles/shared.ts';
import { fieldText } from '../../text/fields.ts';
import { emitChange } from './change.ts';
import { choiceOptions, keyOf, lengthAllowed, type ChoiceOptions, type Option } from './choice-options.ts';
import { keepFocus } from './keep-focus.ts';
import './field.ts';
import { row } from './row.styles.ts';

const choicesStyles = css`
  .choices {
    display: grid;
    justify-items: end;
    gap: 6px;
    min-width: 0;
  }
  .choices > div {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: flex-end;
    gap: 4px 8px;
    min-width: 0;
  }
  select {
    padding-right: 6px;
    min-width: 0;
  }
  @container (max-width: 23em) {
    .choices,
    .choices > div {
      justify-items: start;
      justify-content: flex-start;
    }
  }
`;

/**
 * Chooses several entries of the document, one below the other: seed parents, gardens, genes; or a word instead of the list, as for pollen.
 * @fires oo-change with the whole list
 */
@customElement('oo-choices')
export class OoChoices extends LitElement {
  static override styles = [...shared, row, choicesStyles];

  @property({ attribute: false }) schema: z.ZodType = z.array(z.string());
  @property({ attribute: false }) value: unknown = undefined;
  @property({ attribute: false }) path: Path = [];
  @property({ attribute: false }) programme: unknown = undefined;
  @property() label = '';
  @property() add = '';
  @property() help = '';
  @property() problem = '';
  /** Worth knowing, but nothing wrong. */
  @property() remark = '';

  private get chosen(): readonly unknown[] {
    const { value } = this;
    const list: readonly unknown[] = Array.isArray(value) ? value : value === undefined ? [] : [value];
    return list;
  }

  /** Taken out with its own button: the focus goes to the choice that has moved up, or to the one before it. */
  private takeOut(place: number): void {
    this.send(this.chosen.filter((_, i) => i !== place));
    keepFocus(this, () => {
      const selects = [...this.renderRoot.querySelectorAll('select')];
      return selects.at(Math.min(place, selects.length - 1)) ?? this;
    });
  }

  private send(value: unknown): void {
    emitChange(this, { path: this.path, value, label: this.label });
  }

  override focus(options?: FocusOptions): void {
    this.renderRoot.querySelector<HTMLElement>('select, button')?.focus(options);
  }

  override render(): TemplateResult {
    const options = choiceOptions(this.schema, this.programme, this.path);
    if (!options) return html``;
    const { chosen } = this;
    const word = options.instead.find((option) => option.value === this.value);
    const [first] = options.options;
    const canAdd = first !== undefined && word === undefined && lengthAllowed(options.list, chosen.length + 1, first.value);
    const canRemove = word === undefined && lengthAllowed(options.list, chosen.length - 1, first?.value);
    const another = html`<button
      type="button"
      class="plain"
      aria-label=${`${this.label}: ${this.add}`}
      @click=${() => this.send([...chosen, ...(first ? [first.value] : [])])}
    >
      ${this.add}
    </button>`;
    return html`<div class="row">
      <span class="name" id="name">${this.label}</span>
      <div class="choices" role="group" aria-labelledby="name" aria-describedby=${this.remark ? 'remark problem' : 'problem'}>
        ${chosen.map((entry, place) => html`<div>${this.one(options, word?.key ?? keyOf(entry), place, canRemove)}${canAdd && place === chosen.length - 1 ? another : nothing}</div>`)}
        ${chosen.length === 0 ? html`<div>${first === undefined ? html`<span class="quiet">${fieldText.noEntries}</span>` : another}</div>` : nothing}
      </div>
      ${this.help ? html`<div class="below">${this.help}</div>` : nothing} ${this.remark ? html`<p class="remark" id="remark">${this.remark}</p>` : nothing}
      <p class="problem" id="problem" aria-live="polite">${this.problem}</p>
    </div>`;
  }

  private one({ options, instead }: ChoiceOptions, key: string, place: number, canRemove: boolean): TemplateResult {
    const { chosen } = this;
    const all = [...instead, ...options];
    const onChange = (event: Event): void => {
      const { target } = event;
      const option = target instanceof HTMLSelectElement ? all.find((each) => each.key === target.value) : undefined;
      if (option) this.send(instead.includes(option) ? option.value : this.isWord ? [option.value] : chosen.with(place, option.value));
    };
    const draw = (option: Option): TemplateResult =>
      html`<option value=${option.key} ?selected=${option.key === key} .selected=${live(option.key === key)}>${option.name}</option>`;
    const label = chosen.length === 1 ? this.label : fieldText.place(this.label, place + 1);
    return html`<select aria-label=${label} @change=${onChange}>
        ${all.some((option) => option.key === key) ? nothing : html`<option value=${key} .selected=${live(true)}>${fieldText.gone(key)}</option>`}
        ${chosen.length === 1 ? instead.map(draw) : nothing} ${options.map(draw)}
      </select>
      ${this.howMany(place)}
      ${canRemove ? html`<button type="button" class="plain" aria-label=${fieldText.removeThat(label)} @click=${() => this.takeOut(place)}>${fieldText.remove}</button>` : nothing}`;
  }

  /** Of fathers chosen by their seedlings: how many of the best. */
  private howMany(place: number): TemplateResult | typeof nothing {
    const entry = this.chosen[place];
    if (!isRecord(entry) || !('best' in entry)) return nothing;
    return html`<oo-field class="best" compact .schema=${siresSchema.shape.best} .value=${entry['best']} .path=${[...this.path, place, 'best']}></oo-field>`;
  }

  private get isWord(): boolean {
    return !Array.isArray(this.value);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-choices': OoChoices;
  }
}
