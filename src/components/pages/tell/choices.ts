import { html, nothing, type TemplateResult } from 'lit';
import type { Choices, LeaveOut, Paper } from '../../../handout/choices.ts';
import { leavesLog } from '../../../handout/leave-out.ts';
import type { Programme } from '../../../model/programme.ts';
import { tell } from '../../../text/tell.ts';

/** As long as a sentence on top of the sheet may be, letters. */
const MOST_WANTED = 160;
const PAPERS: readonly Paper[] = ['A4', 'Letter'];
const PARTS = ['trees', 'gardens', 'notes', 'title', 'log'] as const satisfies readonly (keyof LeaveOut)[];

const valueOf = ({ target }: Event): string => (target instanceof HTMLInputElement || target instanceof HTMLSelectElement ? target.value : '');
const isChecked = ({ target }: Event): boolean => target instanceof HTMLInputElement && target.checked;

/** The form of what the sheet says and what it keeps back. */
export function choicesForm({ plans, gardens, log }: Programme, choices: Choices, wanted: string, change: (next: Choices) => void): TemplateResult {
  const { leaveOut } = choices;
  const leave = (part: Partial<LeaveOut>) => change({ ...choices, leaveOut: { ...leaveOut, ...part } });
  const told = plans.filter(({ id }) => !leaveOut.plans.includes(id));
  const parts = PARTS.filter((part) => (part !== 'gardens' || gardens.length > 0) && (part !== 'log' || log.batches.length > 0));
  return html`<div class="choices">
    <div>
      <label class="field">
        <span>${tell.wanted}</span>
        <input
          type="text"
          name="wanted"
          maxlength=${MOST_WANTED}
          placeholder=${wanted}
          .value=${choices.wanted}
          @input=${(event: Event) => change({ ...choices, wanted: valueOf(event) })}
        />
        <small>${tell.wantedHelp}</small>
      </label>
      <fieldset>
        <legend>${tell.leaveOut}</legend>
        <div class="checks">
          ${parts.map(
            (part) =>
              html`<label
                ><input type="checkbox" name=${part} .checked=${leaveOut[part]} @change=${(event: Event) => leave({ [part]: isChecked(event) })} />
                ${tell[part]}</label
              >`,
          )}
        </div>
        <small>${tell.leaveOutHelp}${log.forecastFrom !== undefined && leavesLog(leaveOut) ? ` ${tell.withoutLog}` : ''}</small>
      </fieldset>
    </div>
    <div>
      <label class="field">
        <span>${tell.lead}</span>
        <select name="lead" @change=${(event: Event) => change({ ...choices, lead: valueOf(event) === '' ? null : valueOf(event) })}>
          <option value="" ?selected=${choices.lead === null}>${tell.surest}</option>
          ${told.map(({ id, mark, name }) => html`<option value=${id} ?selected=${choices.lead === id}>${mark} · ${name}</option>`)}
        </select>
      </label>
      ${plans.length > 1 ? plansField(plans, leaveOut, (ids) => leave({ plans: ids })) : nothing}
      <fieldset>
        <legend>${tell.paper}</legend>
        <div class="checks">
          ${PAPERS.map(
            (paper) =>
              html`<label
                ><input type="radio" name="paper" value=${paper} .checked=${choices.paper === paper} @change=${() => change({ ...choices, paper })} />
                ${tell.papers[paper]}</label
              >`,
          )}
        </div>
      </fieldset>
    </div>
  </div>`;
}

function plansField(plans: Programme['plans'], { plans: hidden }: LeaveOut, change: (ids: readonly string[]) => void): TemplateResult {
  const shown = plans.length - plans.filter(({ id }) => hidden.includes(id)).length;
  return html`<fieldset>
    <legend>${tell.plans}</legend>
    <div class="checks">
      ${plans.map(({ id, mark, name }) => {
        const on = !hidden.includes(id);
        // One way at least is told.
        return html`<label title=${name}
          ><input
            type="checkbox"
            name="plan"
            value=${id}
            .checked=${on}
            ?disabled=${on && shown === 1}
            @change=${(event: Event) => change(isChecked(event) ? hidden.filter((other) => other !== id) : [...hidden, id])}
          />
          <span class="mark" data-mark=${mark}>${mark}</span><span class="visually-hidden">${name}</span></label
        >`;
      })}
    </div>
  </fieldset>`;
}
