import { html, nothing, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import type { Log } from '../../model/log.ts';
import { emitChange } from '../fields/change.ts';

/** The calendar day where the page is read, year-month-day. */
export function todayHere(): string {
  const now = new Date();
  const two = (part: number) => String(part).padStart(2, '0');
  return `${String(now.getFullYear())}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** Tells the page of an edit of the log: one step of undo, under the name given. */
export const emitLog = (host: EventTarget, { batches }: Log, label: string): void => emitChange(host, { path: ['log', 'batches'], value: batches, label });

/** One thing to choose. */
export interface Choice<T extends string> {
  readonly value: T;
  readonly words: string;
}

const plain = (text: string): string => text;

/** Past this many a choice is a list to unfold. */
const MOST_CHIPS = 12;

/**
 * A choice of one, each a button that a thumb finds; a list to unfold where there are many.
 * @param chosen what to do; `byHand` is true for a tap, false for the keys that walk through the choice
 */
export function choiceOf<T extends string>(
  legend: string,
  options: readonly Choice<T>[],
  value: string,
  chosen: (value: T, byHand: boolean) => void,
): TemplateResult {
  const name = legend.replace(/\W+/g, '-').toLowerCase();
  if (options.length > MOST_CHIPS && name !== '')
    return html`<label class="field"
      ><span>${legend}</span
      ><select
        .value=${live(value)}
        @change=${({ target }: Event) => {
          const found = target instanceof HTMLSelectElement && options[target.selectedIndex - 1];
          if (found) chosen(found.value, true);
        }}
      >
        <option value="" ?selected=${value === ''}></option>
        ${options.map((option) => html`<option value=${plain(option.value)} ?selected=${option.value === value}>${option.words}</option>`)}
      </select></label
    >`;
  return html`<fieldset class="choice">
    <legend>${legend}</legend>
    <div class="chips">
      ${options.map(
        (option) =>
          html`<label class="chip"
            ><input
              type="radio"
              name=${name}
              .checked=${live(option.value === value)}
              @click=${({ detail }: MouseEvent) => chosen(option.value, detail > 0)}
            /><span>${option.words}</span></label
          >`,
      )}
    </div>
  </fieldset>`;
}

/** What a small box is for, and how it is typed. */
interface Box {
  readonly label: string;
  readonly value: string;
  readonly mode?: 'numeric' | 'decimal' | 'text' | 'date';
  readonly width?: string;
  readonly name?: string;
  readonly most?: number;
  readonly typed: (value: string) => void;
}

/** A labelled box. Numbers get the number pad of the phone, days its calendar. */
export function box({ label, value, mode = 'text', width, name, most = 80, typed }: Box): TemplateResult {
  const numbers = mode === 'numeric' || mode === 'decimal';
  return html`<label class="field"
    ><span>${label}</span
    ><input
      type=${mode === 'date' ? 'date' : 'text'}
      name=${name ?? ''}
      inputmode=${numbers ? mode : 'text'}
      autocomplete="off"
      maxlength=${numbers ? 9 : most}
      style=${width === undefined ? '' : `width: ${width}`}
      .value=${live(value)}
      @input=${({ target }: Event) => {
        if (target instanceof HTMLInputElement) typed(target.value);
      }}
  /></label>`;
}

/** What is wrong, said beside the button that did not do it; the place stays, so that it is read out. */
export const trouble = (words: string): TemplateResult => html`<p class="problem" role="alert">${words === '' ? nothing : words}</p>`;

/** A whole number within bounds, from typed text with or without separators; null if it is none. */
export function wholeIn(text: string, least: number, most: number): number | null {
  // Figures of an East Asian keyboard are figures.
  const plain = text
    .normalize('NFKC')
    .trim()
    .replace(/[\s,.\u00a0\u202f](?=\d{3}(\D|$))/g, '');
  if (!/^\d{1,9}$/.test(plain)) return null;
  const value = Number(plain);
  return value >= least && value <= most ? value : null;
}

/** Does what a form is for, on its button or on Enter, and keeps the page where it is. */
export const submits = (act: () => void) => (event: Event) => {
  event.preventDefault();
  act();
};
