import { html, nothing, type TemplateResult } from 'lit';
import { state } from 'lit/decorators.js';
import { mainSite, rescueSites, whyNoSite, type RescueSite } from '../../decisions/rescue-sites.ts';
import type { CannotSay } from '../../decisions/question.ts';
import type { QuestionId } from '../../decisions/questions.ts';
import type { Plan } from '../../model/programme.ts';
import { siteText } from '../../text/pay-graft.ts';
import { AnswerElement } from './answer-element.ts';
import { choice } from './choice.ts';

interface SiteOptions {
  readonly plan: string;
  readonly generation?: string;
}

/** A question about one generation that can be rescued; where a plan has several, one of them is chosen. */
export abstract class SiteElement<Id extends QuestionId> extends AnswerElement<Id, SiteOptions> {
  @state() private generation = '';

  private get askedOf(): Plan | undefined {
    return this.programmes.state.runnable.plans.find(({ id }) => id === this.plan);
  }

  private get sites(): readonly RescueSite[] {
    const { askedOf } = this;
    return askedOf ? rescueSites(this.programmes.state.runnable, askedOf) : [];
  }

  protected override get cannotAsk(): CannotSay | null {
    const { askedOf, sites } = this;
    return askedOf && sites.length === 0 ? whyNoSite(this.programmes.state.runnable, askedOf) : null;
  }

  /** Only a choice that differs from the question's own is part of it. */
  protected override options(): SiteOptions {
    const { plan, generation, sites } = this;
    const other = generation !== mainSite(sites)?.generation.id && sites.some((site) => site.generation.id === generation);
    return other ? { plan, generation } : { plan };
  }

  protected override choices(): TemplateResult | typeof nothing {
    const { sites } = this;
    if (sites.length < 2) return nothing;
    return html`<div class="choices">
      ${choice(
        siteText.choice,
        sites.map(({ generation: { id, name } }) => ({ id, name })),
        this.options().generation ?? mainSite(sites)?.generation.id ?? '',
        (id) => (this.generation = id),
      )}
    </div>`;
  }
}
