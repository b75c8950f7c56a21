import { html, nothing, type CSSResultGroup, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { BetterAnswer } from '../../../decisions/better.ts';
import type { BetterPlan } from '../../../decisions/better/final.ts';
import { freeMark, freshId, freshName, withPlan } from '../../../model/plans.ts';
import { common } from '../../../text/charts.ts';
import { planText } from '../../../text/charts-plan.ts';
import type { Piece } from '../../../text/headline.ts';
import { chanceLines } from '../../../text/pay-figures.ts';
import {
  againstLines,
  betterFinding,
  betterText,
  countsInWords,
  meanYearLines,
  numberOf,
  standingInWords,
  sureInWords,
  treesLines,
} from '../../../text/pay-better.ts';
import { saveRow } from '../../charts/data-table.ts';
import { AnswerElement } from '../answer-element.ts';
import { amountCell, trulyGoodCell } from '../cells.ts';
import './better-picture.ts';
import { betterStyles } from './better.styles.ts';

const two = ([figure, range]: readonly [string, string]): TemplateResult => html`${figure}<small>${range}</small>`;

/** Better plans within the limits: looked for at a button, each one ready to become a plan of the programme. */
@customElement('oo-pay-better')
export class PayBetter extends AnswerElement<'better'> {
  static override styles: CSSResultGroup = [AnswerElement.styles, betterStyles];

  protected override readonly question = 'better';
  protected override readonly words = betterText;

  /** Plans that found ones became, by the id of the found one. */
  @state() private added: ReadonlyMap<string, string> = new Map();
  /** The found plan whose new link takes the focus of the button that it stands for. */
  private linkWanted: string | null = null;

  protected override finding(answer: BetterAnswer): readonly Piece[] {
    return betterFinding(answer);
  }

  protected override updated(changed: PropertyValues): void {
    super.updated(changed);
    if (this.linkWanted === null) return;
    this.renderRoot.querySelector<HTMLElement>(`a[data-found='${this.linkWanted}']`)?.focus();
    this.linkWanted = null;
  }

  protected override body(answer: BetterAnswer, stale: boolean): TemplateResult {
    const notes = (title: string, lines: readonly string[]) =>
      html`<h3>${title}</h3>
        ${lines.map((words) => html`<p>${words}</p>`)}`;
    return html`<div class="with-notes">
        <div>
          <oo-better-picture .answer=${answer} ?stale=${stale}></oo-better-picture>
          <p class="legend">${betterText.legend}</p>
        </div>
        <div class="notes">${notes(betterText.howSure, sureInWords(answer))} ${notes(betterText.whatCounts, countsInWords(answer))}</div>
      </div>
      ${answer.plans.length > 0 ? this.table(answer) : nothing}`;
  }

  private table(answer: BetterAnswer): TemplateResult {
    const { plans, lastYear } = answer;
    const found = plans.filter(({ own }) => !own);
    return html`<div class="scroll" tabindex="0" role="group" aria-label=${betterText.table}>
        <table>
          <thead>
            <tr>
              ${betterText.headsWith(lastYear).map((head) => html`<th scope="col">${head}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${plans.filter(({ own }) => own).map((plan) => this.row(plan, answer))}
          </tbody>
          <tbody class="found">
            ${found.map((plan) => this.row(plan, answer))}
          </tbody>
        </table>
      </div>
      ${saveRow({})} ${found.length === 0 ? html`<p class="cannot">${betterText.nothingFound}</p>` : nothing}
      ${freeMark(this.programmes.state.programme) === null && found.length > 0 ? html`<p class="quiet">${planText.full}</p>` : nothing}`;
  }

  private row(plan: BetterPlan, { plans, soonest }: BetterAnswer): TemplateResult {
    const { own, mark, name, outcome, years, trees, lowerChance } = plan;
    const against = againstLines(plan);
    return html`<tr>
      <th scope="row" data-mark=${mark}>
        <span class="who">
          ${own ? html`<span class="mark">${mark}</span>` : html`<span class="number">${numberOf(plan, plans)}</span>`}
          <span class="name">${own ? this.ownName(plan) : name.replace(/^plan/, 'Plan')}</span>
          <small>${standingInWords(plan, plans, soonest?.id ?? null)}</small>
        </span>
      </th>
      <td class="act">${own ? betterText.asItStands : this.deed(plan, numberOf(plan, plans))}</td>
      <td>${two(meanYearLines(years))}</td>
      <td>${two(treesLines(trees))}</td>
      <td>${two(chanceLines(outcome.chance))} ${lowerChance ? html`<small class="under">${betterText.lowerChance(this.surest(plans))}</small>` : nothing}</td>
      ${trulyGoodCell(outcome)} ${amountCell(outcome.busiestHours)}
      <td class="against">${own ? common.noValue : against.map((lines) => html`<div>${two(lines)}</div>`)}</td>
    </tr>`;
  }

  private ownName({ from }: BetterPlan): string {
    return this.programme.plans.find(({ id }) => id === from)?.name ?? '';
  }

  /** Letter of the user's plan with the highest chance. */
  private surest(plans: readonly BetterPlan[]): string {
    const own = plans.filter((plan) => plan.own);
    return own.reduce(
      (best, plan) => (plan.outcome.chance.value > best.outcome.chance.value ? plan : best),
      own[0] ?? { mark: '', outcome: { chance: { value: 0 } } },
    ).mark;
  }

  private deed(plan: BetterPlan, number: number): TemplateResult {
    const { programme } = this.programmes.state;
    const became = programme.plans.find(({ id }) => id === this.added.get(plan.id));
    if (became)
      return html`<span role="status">${betterText.added(became.mark)}</span>:
        <a href="#/do" data-found=${plan.id} aria-label=${betterText.seeNamed(became.mark)}>${betterText.see}</a>`;
    return html`<button ?disabled=${freeMark(programme) === null} aria-label=${betterText.addNamed(String(number))} @click=${() => this.add(plan)}>
      ${betterText.add}
    </button>`;
  }

  /** One step of undo: the found plan under a free letter, an id and a name of its own. */
  private add({ id: found, document }: BetterPlan): void {
    const { programme } = this.programmes.state;
    const mark = freeMark(programme);
    if (!mark) return;
    const id = freshId(
      document.id,
      programme.plans.map((plan) => plan.id),
    );
    const next = withPlan(programme, { ...document, id, mark, name: freshName(document.name, programme) });
    if (this.programmes.edit(next, betterText.addStep(mark)).length > 0) return;
    this.added = new Map(this.added).set(found, id);
    this.linkWanted = found;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-pay-better': PayBetter;
  }
}
