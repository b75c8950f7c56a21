import { html, type TemplateResult } from 'lit';
import { ifDefined } from 'lit/directives/if-defined.js';
import { PATTERNS } from '../../model/patterns.ts';
import type { Plan, Programme } from '../../model/programme.ts';
import { likely } from '../../text/app.ts';
import { planText } from '../../text/charts-plan.ts';

/** Starting patterns as buttons; what keeps one from starting stands under them, since a button that cannot be pressed is passed over by the keyboard. */
export function planPatterns(programme: Programme, add: (plan: Plan) => void): TemplateResult {
  const all = PATTERNS.map((pattern) => ({ name: pattern.name, started: pattern.start(programme) }));
  const blocked = all.flatMap(({ name, started }) => (started.ok ? [] : [{ name, why: started.why }]));
  const reasons = [...new Set(blocked.map(({ why }) => why))].map((why) => ({ why, names: blocked.filter((one) => one.why === why).map(({ name }) => name) }));
  return html`<section class="patterns">
    <h2>${likely.addPlan}</h2>
    <div class="buttons">
      ${all.map(
        ({ name, started }) =>
          html`<button
            ?disabled=${!started.ok}
            title=${ifDefined(started.ok ? (started.plan.note ?? '') : undefined)}
            @click=${() => started.ok && add(started.plan)}
          >
            ${name}
          </button>`,
      )}
    </div>
    ${reasons.map(({ why, names }) => html`<p class="why quiet">${planText.blocked(names, why, names.length === all.length)}</p>`)}
  </section>`;
}
