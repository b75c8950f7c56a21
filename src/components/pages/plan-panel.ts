import { html, nothing, type TemplateResult } from 'lit';
import { freeMark } from '../../model/plans.ts';
import type { Problem } from '../../model/problem.ts';
import type { Plan, Programme } from '../../model/programme.ts';
import { likely } from '../../text/app.ts';
import { planText } from '../../text/charts-plan.ts';

/** What can be done with a whole plan. */
export interface PlanDeeds {
  readonly copy: () => void;
  /** `button` was pressed for it. */
  readonly move: (by: -1 | 1, button: EventTarget | null) => void;
  readonly remove: () => void;
  readonly close: () => void;
}

/** Stands under a plan's name: its own fields, and what can be done with it. Escape closes it. */
export function planPanel(programme: Programme, problems: readonly Problem[], plan: Plan, { copy, move, remove, close }: PlanDeeds): TemplateResult {
  const at = programme.plans.indexOf(plan);
  const full = freeMark(programme) === null;
  const onKey = (event: KeyboardEvent) => {
    if (event.key !== 'Escape' || event.defaultPrevented) return;
    event.stopPropagation();
    close();
  };
  return html`<div slot="plan-${plan.id}" class="plan-panel" @keydown=${onKey}>
    <oo-form
      .path=${['plans', at]}
      .programme=${programme}
      .problems=${problems}
      .sections=${[{ title: '', keys: ['name', 'note', 'clearDiscards'] }]}
      narrow
    ></oo-form>
    <div class="buttons">
      <button ?disabled=${full} aria-label=${likely.copyOf(plan.name)} @click=${copy}>${likely.copy}</button>
      <button ?disabled=${at === 0} aria-label=${likely.upOf(plan.name)} @click=${(event: Event) => move(-1, event.currentTarget)}>${likely.up}</button>
      <button ?disabled=${at === programme.plans.length - 1} aria-label=${likely.downOf(plan.name)} @click=${(event: Event) => move(1, event.currentTarget)}>
        ${likely.down}
      </button>
      <button ?disabled=${programme.plans.length === 1} aria-label=${likely.removeOf(plan.name)} @click=${remove}>${likely.remove}</button>
      <button class="main" @click=${close}>${likely.done}</button>
    </div>
    ${full ? html`<p class="why quiet">${planText.full}</p>` : nothing}
  </div>`;
}
