import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { sourceTree, treesOf, type CopiesAnswer, type CopiesOptions } from '../../../decisions/copies.ts';
import type { Tree } from '../../../model/programme.ts';
import { percent } from '../../../text/charts.ts';
import type { Piece } from '../../../text/headline.ts';
import { copiesFinding, copiesPlan, copiesText, danger, wayName } from '../../../text/pay-copies.ts';
import { saveRow } from '../../charts/data-table.ts';
import { AnswerElement } from '../answer-element.ts';
import { amountCell, chanceCell, differenceCell, halfByCell, trulyGoodCell } from '../cells.ts';
import { choice } from '../choice.ts';
import './copies-picture.ts';

/** What do copies of a source tree save? */
@customElement('oo-pay-copies')
export class PayCopies extends AnswerElement<'copies', CopiesOptions> {
  protected override readonly question = 'copies';
  protected override readonly words = copiesText;

  @state() private tree = '';

  /** Trees that the plan crosses. */
  private get trees(): readonly Tree[] {
    const { runnable } = this.programmes.state;
    const plan = runnable.plans.find(({ id }) => id === this.plan);
    return plan ? treesOf(runnable, plan) : [];
  }

  protected override options(): CopiesOptions {
    const { plan, tree, trees } = this;
    return tree !== '' && tree !== sourceTree(trees)?.id && trees.some(({ id }) => id === tree) ? { plan, tree } : { plan };
  }

  protected override choices(): TemplateResult | typeof nothing {
    const { trees } = this;
    if (trees.length < 2) return nothing;
    return html`<div class="choices">${choice(copiesText.choice, trees, this.options().tree ?? sourceTree(trees)?.id ?? '', (id) => (this.tree = id))}</div>`;
  }

  protected override finding(answer: CopiesAnswer): readonly Piece[] {
    return copiesFinding(answer);
  }

  protected override body(answer: CopiesAnswer, stale: boolean): TemplateResult {
    const { lastYear } = this.programme;
    const mark = this.markOf(answer.plan);
    return html`<h3 class="inner">${copiesText.title}</h3>
      <div class="with-notes">
        <oo-copies .answer=${answer} .mark=${mark} ?stale=${stale}></oo-copies>
        <div class="notes">
          <h3>${copiesText.loses}</h3>
          ${danger(answer, lastYear).map((words) => html`<p>${words}</p>`)}
          ${this.programme.gardens.length === 0 ? html`<p class="quiet">${copiesText.noGarden}</p>` : nothing}
          <h3>${copiesText.plan}</h3>
          ${copiesPlan(answer, mark, lastYear, this.programme.hours.perGraft).map((words) => html`<p>${words}</p>`)}
        </div>
      </div>
      ${this.table(answer)}`;
  }

  private table({ ways }: CopiesAnswer): TemplateResult {
    const { lastYear } = this.programme;
    return html`<div class="scroll" tabindex="0" role="group" aria-label=${copiesText.plan}>
        <table>
          <thead>
            <tr>
              ${copiesText.heads(lastYear).map((head) => html`<th scope="col">${head}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${ways.map(
              (way) =>
                html`<tr>
                  <th scope="row">${wayName(way)}${way.asItStands ? html`<small>${copiesText.asItStands}</small>` : nothing}</th>
                  <td class="figure">${percent(way.lostBy.at(-1) ?? 0)}<small>${copiesText.counted(way.lostCounted.low, way.lostCounted.high)}</small></td>
                  ${chanceCell(way.outcome)} ${trulyGoodCell(way.outcome)} ${halfByCell(way.outcome, lastYear)} ${amountCell(way.outcome.seedlings)}
                  ${amountCell(way.outcome.totalHours)} ${differenceCell(way.minusAsItStands)}
                </tr>`,
            )}
          </tbody>
        </table>
      </div>
      ${saveRow({})}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-pay-copies': PayCopies;
  }
}
