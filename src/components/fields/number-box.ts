import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { EstimateForm } from '../../model/estimate.ts';
import { typedText } from '../../text/typed.ts';
import type { Choice, Draft } from './draft.ts';
import { arrowed, readBox, type NumberRules } from './number-reading.ts';

export interface NumberBox {
  readonly draft: Draft<number | undefined>;
  readonly rules: NumberRules;
  readonly id: string;
  /** Ids, in the same shadow root, of what names and describes the box. */
  readonly labelledBy: string;
  readonly describedBy: string;
  /** Marked for a reason that lies outside of the box. */
  readonly bad?: boolean;
  /** Forms of an estimate that a text in the box may be in; left out, one number. */
  readonly takes?: readonly EstimateForm[] | undefined;
  /** Opens the keyboard with letters on a phone, for “18 of 240” and “about 8”. */
  readonly letters?: boolean | undefined;
  /** Called after the draft has taken what was done; `good` if there is a new value to send. */
  readonly onDone: (good: boolean) => void;
  /** Called when the typing is over: Enter, or the box was left. */
  readonly onLeave?: (() => void) | undefined;
}

const typed = (event: Event): string => (event.target instanceof HTMLInputElement ? event.target.value : '');

/** A text box for one number: comma or point, arrow keys step (with Shift ten times as far), bad text stays as it was typed. */
export function numberBox({ draft, rules, id, labelledBy, describedBy, bad = false, takes, letters = false, onDone, onLeave }: NumberBox): TemplateResult {
  const onInput = (event: Event): void => {
    const text = typed(event);
    onDone(draft.type(text, readBox(text, rules, takes)));
  };
  const onChange = (): void => {
    draft.tidy();
    if (onLeave) onLeave();
    else onDone(false);
  };
  const onKey = (event: KeyboardEvent): void => {
    // Not every browser tells of a change on Enter where the text was set while typing.
    if (event.key === 'Enter' && !draft.good) onChange();
    const value = arrowed(event, draft.value, rules);
    if (value === undefined) return;
    event.preventDefault();
    onDone(draft.pick(value));
  };
  return html`<input
    type="text"
    class="number"
    inputmode=${letters ? 'text' : rules.whole ? 'numeric' : 'decimal'}
    autocomplete="off"
    autocapitalize="off"
    spellcheck="false"
    id=${id}
    style=${`--letters: ${String(draft.text.length)}`}
    aria-labelledby=${labelledBy}
    aria-describedby=${describedBy}
    aria-invalid=${draft.problem !== '' || bad ? 'true' : 'false'}
    .value=${live(draft.text)}
    @input=${onInput}
    @keydown=${onKey}
    @change=${onChange}
  />`;
}

/** The two things that a text could mean, as buttons: neither is taken before it is pressed. */
export function choiceButtons(draft: Draft<number | undefined>, onChoose: (choice: Choice<number | undefined>) => void): TemplateResult | typeof nothing {
  if (draft.choices.length === 0) return nothing;
  return html`<div class="choose" role="group" aria-label=${typedText.choose(draft.text.trim())}>
    ${draft.choices.map((choice) => html`<button type="button" @click=${() => onChoose(choice)}>${choice.words}</button>`)}
  </div>`;
}
