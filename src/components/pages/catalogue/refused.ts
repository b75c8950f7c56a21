import { html, type TemplateResult } from 'lit';
import { sentence } from '../../../model/problem.ts';
import type { Programme } from '../../../model/programme.ts';
import type { Merged } from '../../../start/merge.ts';
import { catalogueText } from '../../../text/catalogue.ts';

/** Why something cannot be added, in words. */
export function refused(programme: Programme, answer: Extract<Merged, { ok: false }>): TemplateResult {
  if (answer.why === 'room') return html`<p class="refused" id="refused">${catalogueText.noRoom(answer.section, answer.most, answer.wanted)}</p>`;
  return html`<div class="refused" id="refused">
    <p>${catalogueText.contradicts}</p>
    <ul>
      ${answer.problems.map((problem) => html`<li>${sentence(programme, problem)}</li>`)}
    </ul>
  </div>`;
}
