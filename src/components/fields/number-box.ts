import { html, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Draft } from './draft.ts';
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
  /** Called after the draft has taken what was done; `good` if there is a new value to send. */
  readonly onDone: (good: boolean) => void;
}

const typed = (event: Event): string => (event.target instanceof HTMLInputElement ? event.target.value : '');

/** A text box for one number: comma or point, arrow keys step (with Shift ten times as far), bad text stays as it was typed. */
export function numberBox({ draft, rules, id, labelledBy, describedBy, bad = false, onDone }: NumberBox): TemplateResult {
  const onInput = (event: Event): void => {
    const text = typed(event);
    onDone(draft.type(text, readBox(text, rules)));
  };
  const onKey = (event: KeyboardEvent): void => {
    const value = arrowed(event, draft.value, rules);
    if (value === undefined) return;
    event.preventDefault();
    onDone(draft.pick(value));
  };
  const onChange = (): void => {
    draft.tidy();
    onDone(false);
  };
  return html`<input
    type="text"
    class="number"
    inputmode=${rules.whole ? 'numeric' : 'decimal'}
    autocomplete="off"
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
