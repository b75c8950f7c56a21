import { consume } from '@lit/context';
import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { isAnswerTo } from '../../../decisions/questions.ts';
import type { Plan, Programme } from '../../../model/programme.ts';
import { NEVER_ASKED, type AnswersStore } from '../../../state/answers-store.ts';
import { shared } from '../../../styles/shared.ts';
import type { Piece } from '../../../text/headline.ts';
import { graftHeadline, graftTrust } from '../../../text/pay-graft.ts';
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
      ${this.opening()}
      <p class="unknown">${pay.unknown}</p>
      ${plan ? this.asked(programme, runnable, plan) : nothing} ${problemList(programme, problems)}
      ${plan ? Object.values(SECTIONS).map((draw) => html`<div class="part">${draw(plan.id)}</div>`) : nothing} ${care(programme, this.runs.engine)}
    `;
  }

  /** The finding of the first question, once there is one; what nothing weak or no stock leaves to say, else. */
  private opening(): TemplateResult {
    const { answer, of, stale } = this.answers.state.get('graft') ?? NEVER_ASKED;
    const plan = of?.plans.find(({ id }) => id === answer?.plan);
    const found = answer && isAnswerTo('graft', answer) ? answer : null;
    const words: readonly Piece[] =
      !answer || !of || !plan
        ? [{ text: pay.question }]
        : found
          ? graftHeadline(found, plan.mark, of.lastYear)
          : [{ text: answer.cannotSay === null ? pay.question : pay.opening(plan.mark, answer.cannotSay) }];
    return html`<h1 class=${answer ? (stale ? 'stale' : '') : 'waiting'}>${pieces(words)}</h1>
      <p class="lede">${found ? `${graftTrust(found)} ` : nothing}${pay.lede}</p>`;
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
