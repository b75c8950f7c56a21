import { consume } from '@lit/context';
import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { MOST_FUTURES } from '../../../decisions/question.ts';
import { isAnswerTo, isQuestionId, type AnswerTo, type QuestionId } from '../../../decisions/questions.ts';
import { rescueSites } from '../../../decisions/rescue-sites.ts';
import type { Plan, Programme } from '../../../model/programme.ts';
import { NEVER_ASKED, type AnswersStore } from '../../../state/answers-store.ts';
import { shared } from '../../../styles/shared.ts';
import type { Piece } from '../../../text/headline.ts';
import { graftHeadline, graftTrust } from '../../../text/pay-graft.ts';
import { howManyFinding, howManyTrust } from '../../../text/pay-how-many.ts';
import { pay } from '../../../text/pay.ts';
import { answersContext } from '../../contexts.ts';
import { emitChange } from '../../fields/change.ts';
import { SECTIONS } from '../../pay/sections.ts';
import { StoreController } from '../../store-controller.ts';
import { StoreElement } from '../../store-element.ts';
import { pageStyles } from '../page.styles.ts';
import { care, pieces, problemList } from '../parts.ts';
import { firstAsked } from './first-asked.ts';
import { payStyles } from './pay.styles.ts';

/** “Would it pay to…?”: questions asked of one plan, each with its answer in a sentence, a picture and a table. */
@customElement('oo-pay')
export class Pay extends StoreElement {
  static override styles = [...shared, pageStyles, payStyles];

  @consume({ context: answersContext, subscribe: true })
  @state()
  private answers!: AnswersStore;

  /** Id of the plan chosen; empty until somebody chooses. */
  @state() private chosen = '';

  private readonly choose = (event: Event): void => {
    if (event.target instanceof HTMLSelectElement) this.chosen = event.target.value;
  };

  constructor() {
    super();
    new StoreController(this, () => this.answers);
  }

  private readonly takeAsTheyStand = (event: Event): void => {
    if (event.target instanceof HTMLInputElement) emitChange(this, { path: ['guessesAsTheyStand'], value: event.target.checked, label: pay.asTheyStand });
  };

  protected override render(): TemplateResult {
    const { programme, problems, runnable } = this.programmes.state;
    const plan = runnable.plans.find(({ id }) => id === this.chosen) ?? firstAsked(runnable);
    return html`
      ${this.opening()} ${plan && rescueSites(runnable, plan).length > 0 ? html`<p class="unknown">${pay.unknown}</p>` : nothing}
      ${programme.runs > MOST_FUTURES ? html`<p class="unknown">${pay.capped(programme.runs, MOST_FUTURES)}</p>` : nothing}
      ${plan ? this.asked(programme, runnable, plan) : nothing} ${problemList(programme, problems)} ${plan ? this.parts(plan) : nothing}
      ${care(programme, this.runs.engine)}
    `;
  }

  /** The questions, and before them a list that leads to each. */
  private parts({ id: plan }: Plan): TemplateResult {
    const ids = Object.keys(SECTIONS).filter(isQuestionId);
    return html`<nav aria-label=${pay.list}>
        <ul class="questions">
          ${ids.map((id) => html`<li><button class="plain" @click=${() => this.lead(id)}>${pay.names[id]}</button></li>`)}
        </ul>
      </nav>
      ${ids.map((id) => html`<div class="part" id=${id} tabindex="-1">${SECTIONS[id]?.(plan)}</div>`)}`;
  }

  private lead(id: QuestionId): void {
    const part = this.renderRoot.querySelector<HTMLElement>(`#${id}`);
    part?.scrollIntoView();
    part?.focus({ preventScroll: true });
  }

  /** The finding of the first question, once there is one; where nothing is weak or there is no stock, that, and how many there should be. */
  private opening(): TemplateResult {
    const { answer, of, stale, asking } = this.answers.state.get('graft') ?? NEVER_ASKED;
    const plan = of?.plans.find(({ id }) => id === answer?.plan);
    const found = answer && isAnswerTo('graft', answer) ? answer : null;
    const many = found ? null : this.howMany(answer?.plan);
    const words: readonly Piece[] =
      !answer || !of || !plan
        ? [{ text: pay.question }]
        : found
          ? graftHeadline(found, plan.mark, of.lastYear, !asking)
          : [{ text: answer.cannotSay === null ? pay.question : `${pay.opening(plan.mark, answer.cannotSay)} ` }, ...(many ? howManyFinding(many) : [])];
    const trust = found ? graftTrust(found) : many ? howManyTrust(many) : '';
    return html`<h1 class=${answer ? (stale ? 'stale' : '') : 'waiting'}>${pieces(words)}</h1>
      <p class="lede">${trust === '' ? nothing : `${trust} `}${pay.lede}</p>`;
  }

  /** How many flowers or seedlings that plan should have, once some futures say so and while they still do. */
  private howMany(plan: string | undefined): AnswerTo<'howmany'> | null {
    const { answer, stale } = this.answers.state.get('howmany') ?? NEVER_ASKED;
    return answer && isAnswerTo('howmany', answer) && !stale && answer.plan === plan && answer.points.length > 0 ? answer : null;
  }

  private asked({ guessesAsTheyStand }: Programme, { plans }: Programme, plan: Plan): TemplateResult {
    return html`<div class="asked">
      <label
        ><span>${pay.askedOf}</span>
        <select @change=${this.choose}>
          ${plans.map(({ id, mark, name }) => html`<option value=${id} ?selected=${id === plan.id}>${pay.plan(mark, name)}</option>`)}
        </select></label
      >
      <label class="tick"><input type="checkbox" .checked=${guessesAsTheyStand} @change=${this.takeAsTheyStand} /><span>${pay.asTheyStand}</span></label>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-pay': Pay;
  }
}
