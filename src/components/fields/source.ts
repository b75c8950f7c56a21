import { html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import { sourceSchema, type Source } from '../../model/estimate.ts';
import { shared } from '../../styles/shared.ts';
import { confidenceWords, fieldText, saidOf, sourceWords } from '../../text/fields.ts';
import { sourceStyles } from './source.styles.ts';

/** A note this short stands in the badge itself: “your count, 2025–26”. */
const SHORT_NOTE = 12;
const KINDS = sourceSchema.shape.kind.options;
const CONFIDENCE = sourceSchema.shape.confidence.unwrap().options;

export const inBadge = (note: string): boolean => note.length > 0 && note.length <= SHORT_NOTE;

declare global {
  interface HTMLElementEventMap {
    'oo-source': CustomEvent<Source | undefined>;
  }
}

/**
 * Says where a number comes from, by the fill and the line of a badge; pressed, it opens two fields to say so.
 * @fires oo-source with the new source, or nothing where it is taken back
 */
@customElement('oo-source')
export class OoSource extends LitElement {
  static override styles = [...shared, sourceStyles];

  @property({ attribute: false }) source: Source | undefined = undefined;
  /** What the number is. */
  @property() label = '';
  @state() private open = false;

  private readonly toggle = (): void => {
    this.open = !this.open;
  };

  private readonly onKey = (event: KeyboardEvent): void => {
    if (event.key !== 'Escape' || !this.open) return;
    // The row around it closes on Escape too; this one was for the panel.
    event.stopPropagation();
    this.close();
  };

  private readonly close = (): void => {
    this.open = false;
    this.renderRoot.querySelector<HTMLElement>('button.open')?.focus();
  };

  private send(source: Source | undefined): void {
    this.dispatchEvent(new CustomEvent('oo-source', { detail: source }));
  }

  private readonly onKind = (event: Event): void => {
    if (!(event.target instanceof HTMLSelectElement)) return;
    const kind = sourceSchema.shape.kind.safeParse(event.target.value);
    this.send(kind.success ? { note: '', ...this.source, kind: kind.data } : undefined);
  };

  private readonly onNote = (event: Event): void => {
    // A note without a kind is a guess until its writer says better.
    if (event.target instanceof HTMLInputElement) this.send({ kind: 'guess', ...this.source, note: event.target.value });
  };

  private readonly onConfidence = (event: Event): void => {
    if (!(event.target instanceof HTMLSelectElement)) return;
    const sure = sourceSchema.shape.confidence.safeParse(event.target.value);
    const { confidence: _old, ...rest } = this.source ?? { kind: 'guess' as const, note: '' };
    this.send(sure.success && sure.data ? { ...rest, confidence: sure.data } : rest);
  };

  override render(): TemplateResult {
    const { source, open, label } = this;
    const words = source ? saidOf(source) : fieldText.noSource;
    const note = source?.note ?? '';
    return html`<button
        type="button"
        class="open ${source?.kind ?? 'unsaid'}"
        aria-expanded=${open ? 'true' : 'false'}
        aria-describedby="what note"
        @click=${this.toggle}
        @keydown=${this.onKey}
      >
        <span class="badge">${inBadge(note) ? `${words}, ${note}` : words}</span>
      </button>
      <span id="what" hidden>${fieldText.sourceOf(label)}</span><span id="note" hidden>${note}</span> ${open ? this.panel(note) : nothing}`;
  }

  private panel(note: string): TemplateResult {
    const kind = this.source?.kind;
    return html`<fieldset class="panel" @keydown=${this.onKey}>
      <legend>${fieldText.sourceOf(this.label)}</legend>
      <label
        >${fieldText.sourceKind}<select @change=${this.onKind}>
          <option value="" .selected=${live(kind === undefined)}>${fieldText.noSource}</option>
          ${KINDS.map((each) => html`<option value=${each} .selected=${live(kind === each)}>${sourceWords[each]}</option>`)}
        </select></label
      >
      <label
        >${fieldText.confidence}<select @change=${this.onConfidence}>
          <option value="" .selected=${live(this.source?.confidence === undefined)}>${fieldText.confidenceUnsaid}</option>
          ${CONFIDENCE.map((each) => html`<option value=${each} .selected=${live(this.source?.confidence === each)}>${confidenceWords[each]}</option>`)}
        </select></label
      >
      <label class="note">${fieldText.sourceNote}<input type="text" maxlength="500" autocomplete="off" .value=${live(note)} @input=${this.onNote} /></label>
      <button type="button" @click=${this.close}>${fieldText.done}</button>
    </fieldset>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-source': OoSource;
  }
}
