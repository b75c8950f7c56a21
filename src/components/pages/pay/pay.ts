import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { shared } from '../../../styles/shared.ts';
import { pay } from '../../../text/pay.ts';
import { SECTIONS } from '../../pay/sections.ts';
import { StoreElement } from '../../store-element.ts';
import { pageStyles } from '../page.styles.ts';
import { care, problemList } from '../parts.ts';
import { firstAsked } from './first-asked.ts';
import { payStyles } from './pay.styles.ts';

/** “Would it pay to…?”: questions asked of one plan, each with its answer in a sentence, a picture and a table. */
@customElement('oo-pay')
export class Pay extends StoreElement {
  static override styles = [...shared, pageStyles, payStyles];

  /** Id of the plan chosen; empty until somebody chooses. */
  @state() private chosen = '';

  private readonly choose = (event: Event): void => {
    if (event.target instanceof HTMLSelectElement) this.chosen = event.target.value;
  };

  protected override render(): TemplateResult {
    const { programme, problems, runnable } = this.programmes.state;
    const plan = runnable.plans.find(({ id }) => id === this.chosen) ?? firstAsked(runnable);
    return html`
      <h1>${pay.question}</h1>
      <p class="lede">${pay.lede}</p>
      <p class="unknown">${pay.unknown}</p>
      ${
        plan
          ? html`<label class="asked-of"
              ><span>${pay.askedOf}</span>
              <select @change=${this.choose}>
                ${runnable.plans.map(({ id, mark, name }) => html`<option value=${id} ?selected=${id === plan.id}>${pay.plan(mark, name)}</option>`)}
              </select></label
            >`
          : nothing
      }
      ${problemList(programme, problems)} ${plan ? Object.values(SECTIONS).map((draw) => html`<div class="part">${draw(plan.id)}</div>`) : nothing}
      ${care(programme, this.runs.engine)}
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-pay': Pay;
  }
}
