import { css, html, nothing, type CSSResultGroup, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { LeverId, LeverSite } from '../../../decisions/how-many-levers.ts';
import { LEVERS } from '../../../decisions/how-many-levers.ts';
import type { HowManyAnswer, HowManyOptions } from '../../../decisions/how-many.ts';
import { READ_AT } from '../../../decisions/how-many.ts';
import { isAnswerTo } from '../../../decisions/questions.ts';
import { percent } from '../../../text/charts.ts';
import type { Piece } from '../../../text/headline.ts';
import { backwardsWords, chainWords, exactWords, howManyFinding, howManyNotes, howManyText, readOffLines } from '../../../text/pay-how-many.ts';
import { leverWords } from '../../../text/pay-how-many-names.ts';
import { pieces } from '../../pages/parts.ts';
import { saveRow } from '../../charts/data-table.ts';
import { AnswerElement } from '../answer-element.ts';
import { choice } from '../choice.ts';
import './picture.ts';

const howManyStyles = css`
  .read-offs td,
  .read-offs th {
    vertical-align: top;
  }
  .read-offs .not {
    font-style: italic;
    color: var(--ink2);
  }
  .read-offs {
    margin-bottom: 14px;
  }
  .back {
    max-width: 52em;
    margin-top: 22px;
  }
  .back h3 {
    margin-bottom: 4px;
  }
  .chain {
    list-style: none;
    display: flex;
    flex-wrap: wrap;
    gap: 8px 14px;
    margin: 14px 0 0;
    padding: 0;
  }
  .chain li {
    display: grid;
    align-content: start;
  }
  .chain li + li {
    padding-left: 14px;
    border-left: 1px solid var(--rule);
  }
  .chain small {
    font-size: var(--size-least);
    color: var(--ink2);
  }
  .chain .narrowest {
    border-left: 3px solid var(--ink);
    font-weight: 650;
  }
  .chain .narrowest small {
    color: var(--ink);
  }
  .quiet-note {
    color: var(--ink2);
    font-size: var(--size-least);
    margin-top: 8px;
  }
`;

/** How many flowers, seedlings, picks, seasons, fruits or backups? */
@customElement('oo-pay-howmany')
export class PayHowMany extends AnswerElement<'howmany', HowManyOptions> {
  static override styles: CSSResultGroup = [AnswerElement.styles, howManyStyles];

  @state() private lever: LeverId | '' = '';
  @state() private generation = '';
  @state() private chance = '0.8';

  protected override readonly question = 'howmany';
  protected override readonly words = howManyText;

  protected override willUpdate(changed: PropertyValues): void {
    // Another plan has other generations.
    if (changed.has('plan')) this.generation = '';
  }

  protected override get asking(): string {
    return this.lever === '' ? super.asking : leverWords[this.lever].question;
  }

  protected override options(): HowManyOptions {
    const { plan, lever, generation, chance } = this;
    return { plan, ...(lever === '' ? {} : { lever }), ...(generation === '' ? {} : { generation }), ...(chance === '0.8' ? {} : { chance: Number(chance) }) };
  }

  private get found(): HowManyAnswer | null {
    const answer = this.answers.state.get(this.question)?.answer;
    return answer && isAnswerTo('howmany', answer) && answer.plan === this.plan ? answer : null;
  }

  protected override choices(): TemplateResult | typeof nothing {
    const { found } = this;
    if (!found) return nothing;
    const lever = this.lever === '' ? found.lever : this.lever;
    const places = found.sites.filter((site) => site.lever === lever && site.generation !== null);
    return html`<div class="choices">
      ${choice(
        howManyText.lever,
        LEVERS.filter((id) => found.sites.some((site) => site.lever === id)).map((id) => ({ id, name: leverWords[id].choice })),
        lever,
        (id) => this.chooseLever(id, found.sites),
      )}
      ${
        places.length > 1
          ? choice(
              howManyText.generation,
              places.map(({ generation, name }) => ({ id: generation ?? '', name })),
              this.generation === '' ? (found.generation ?? '') : this.generation,
              (id) => (this.generation = id),
            )
          : nothing
      }
      ${choice(howManyText.chance, howManyText.chances, this.chance, (id) => (this.chance = id))}
    </div>`;
  }

  private chooseLever(id: string, sites: readonly LeverSite[]): void {
    const lever = LEVERS.find((one) => one === id);
    if (!lever) return;
    this.lever = lever;
    // The generation that is shown stays, where the number is one of it too.
    const shown = this.generation === '' ? (this.found?.generation ?? '') : this.generation;
    this.generation = sites.some((site) => site.lever === lever && site.generation === shown) ? shown : '';
  }

  protected override finding(answer: HowManyAnswer): readonly Piece[] {
    return howManyFinding(answer);
  }

  protected override body(answer: HowManyAnswer, stale: boolean): TemplateResult {
    return html`
      <div class="with-notes">
        ${
          answer.points.length > 0
            ? html`<div>
                <oo-how-many .answer=${answer} .mark=${this.markOf(answer.plan)} ?stale=${stale}></oo-how-many>
                ${this.backwards(answer)}
              </div>`
            : html`<p class="quiet">${howManyText.coming}</p>`
        }
        <div class="notes">
          ${
            answer.points.length > 0
              ? html`<h3>${howManyText.readOffsOf(answer.lever)}</h3>
                  ${this.readOffs(answer)}`
              : nothing
          }
          ${howManyNotes(answer).map((words) => html`<p>${words}</p>`)}
          ${
            answer.exact
              ? html`<h3>${howManyText.reckoned}</h3>
                  ${exactWords(answer.exact).map((words) => html`<p>${words}</p>`)}`
              : nothing
          }
        </div>
      </div>
    `;
  }

  private readOffs({ readOffs, years }: HowManyAnswer): TemplateResult {
    return html`<table class="read-offs">
        <thead>
          <tr>
            <th scope="col">${howManyText.chanceHead}</th>
            ${years.map((year) => html`<th scope="col">${howManyText.by(year)}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${READ_AT.map(
            (chance) =>
              html`<tr>
                <th scope="row">${percent(chance)}</th>
                ${readOffs
                  .filter((one) => one.chance === chance)
                  .map((one) => {
                    const [number, range] = readOffLines(one);
                    return html`<td class=${one.at === null ? 'not' : ''}>${number}${range === '' ? nothing : html`<small>${range}</small>`}</td>`;
                  })}
              </tr>`,
          )}
        </tbody>
      </table>
      ${saveRow({})}`;
  }

  private backwards(answer: HowManyAnswer): TemplateResult | typeof nothing {
    const { backwards } = answer;
    if (!backwards) return nothing;
    return html`<div class="back">
      <h3>${howManyText.backwards}</h3>
      <p>${pieces(backwardsWords(answer))}</p>
      <ol class="chain">
        ${backwards.chain.map((step) => {
          const { count, pass } = chainWords(step);
          return html`<li class=${step.stage === backwards.narrowest?.stage ? 'narrowest' : ''}>${count}<small>${pass}</small></li>`;
        })}
      </ol>
      <p class="quiet-note">${howManyText.backwardsNote}</p>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-pay-howmany': PayHowMany;
  }
}
