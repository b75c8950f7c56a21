import { css, html, nothing, type CSSResultGroup, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { RankedFact, UnknownsAnswer } from '../../../decisions/unknowns.ts';
import type { Piece } from '../../../text/headline.ts';
import { atMost, factLabel, flipWords, luckNote, restsWords, unknownsFinding, unknownsText, worthWords } from '../../../text/pay-unknowns.ts';
import { badgeStyles } from '../../fields/badge.styles.ts';
import { saveRow } from '../../charts/data-table.ts';
import { AnswerElement } from '../answer-element.ts';
import './unknowns-table.ts';

const styles = css`
  blockquote.worth {
    margin: 22px 0 0;
  }
  details.small {
    margin-top: 14px;
  }
  details.small summary {
    min-height: 44px;
    align-content: center;
    cursor: pointer;
  }
  details.small table {
    max-width: 50em;
  }
  .flips p {
    max-width: 52em;
    margin-top: 6px;
  }
  .practice {
    margin-top: 14px;
    max-width: 52em;
    color: var(--ink2);
  }
`;

/** Which unknown matters most? Luck’s share first, then every fact with its share, its direction and the cheapest way to learn it. */
@customElement('oo-pay-unknowns')
export class PayUnknowns extends AnswerElement<'unknowns'> {
  static override styles: CSSResultGroup = [AnswerElement.styles, badgeStyles, styles];

  protected override readonly question = 'unknowns';
  protected override readonly words = unknownsText;

  protected override finding(answer: UnknownsAnswer): readonly Piece[] {
    return unknownsFinding(answer);
  }

  protected override body(answer: UnknownsAnswer, stale: boolean): TemplateResult {
    const mark = this.markOf(answer.plan);
    const clear = answer.facts.filter(counts);
    const worth = worthWords(answer);
    const grafting = clear.some(({ kind }) => kind === 'roots' || kind === 'take' || kind === 'precocity' || kind === 'travels');
    return html`<p class="said">${luckNote(answer, mark, this.programme.lastYear)}</p>
      <oo-unknowns-table .facts=${clear} .mark=${mark} ?stale=${stale}></oo-unknowns-table>
      ${worth === null ? nothing : html`<blockquote class="worth">${worth}</blockquote>`} ${this.flips(answer)}
      ${smallOnes(answer.facts.filter((fact) => !counts(fact)))}
      ${clear.length === 0 ? nothing : html`<p class="practice">${unknownsText.practice}${grafting ? ` ${unknownsText.caution}` : ''}</p>`}`;
  }

  private flips({ flips, facts }: UnknownsAnswer): TemplateResult | typeof nothing {
    if (flips.length === 0) return nothing;
    return html`<div class="flips">
      <h3 class="inner">${unknownsText.flips}</h3>
      ${flips.map((flip) => {
        const fact = facts.find(({ id }) => id === flip.fact);
        return fact ? html`<p>${flipWords(flip, fact, (plan) => this.markOf(plan))}</p>` : nothing;
      })}
    </div>`;
  }
}

/** Less than this, of 1, nobody acts on. */
const LITTLE = 0.02;
const counts = ({ clear, first, total }: RankedFact): boolean => clear && Math.max(first.value, total?.value ?? 0) >= LITTLE;

/** What matters little, or cannot be told from nothing, with the most that it can be. */
function smallOnes(facts: readonly RankedFact[]): TemplateResult | typeof nothing {
  if (facts.length === 0) return nothing;
  const { what, most, rests } = unknownsText.smallHeads;
  return html`<details class="small">
    <summary>${unknownsText.small(facts.length)}</summary>
    <table>
      <thead>
        <tr>
          <th scope="col">${what}</th>
          <th scope="col">${most}</th>
          <th scope="col">${rests}</th>
        </tr>
      </thead>
      <tbody>
        ${facts.map(
          (fact) =>
            html`<tr>
              <th scope="row">${factLabel(fact)}</th>
              <td>${atMost(fact)}</td>
              <td class=${fact.restsOn}><span class="badge">${restsWords(fact.restsOn)}</span></td>
            </tr>`,
        )}
      </tbody>
    </table>
    ${saveRow({})}
  </details>`;
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-pay-unknowns': PayUnknowns;
  }
}
