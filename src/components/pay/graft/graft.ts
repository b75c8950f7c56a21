import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { GraftAnswer } from '../../../decisions/graft.ts';
import type { GraftSite } from '../../../decisions/graft-ways.ts';
import type { StockUse } from '../../../decisions/stock-order.ts';
import type { Spread } from '../../../results/outlook.ts';
import { common } from '../../../text/charts.ts';
import type { Piece } from '../../../text/headline.ts';
import { decimals, monthsInWords } from '../../../text/pay-figures.ts';
import { graftFinding, graftText, graftTrust, rootsNotes, rootsText, siteAsked, standsInWords, stocksInWords, turnsInWords } from '../../../text/pay-graft.ts';
import { saveRow } from '../../charts/data-table.ts';
import { SiteElement } from '../site-element.ts';
import { amountCell, chanceCell, differenceCell, halfByCell, trulyGoodCell } from '../cells.ts';
import type { MapAnswer } from './graft-map.ts';
import type { RootsAnswer } from './graft-roots.ts';
import './graft-map.ts';
import './graft-roots.ts';

/** Graft weak seedlings, every one, or none? */
@customElement('oo-pay-graft')
export class PayGraft extends SiteElement<'graft'> {
  protected override readonly question = 'graft';
  protected override readonly words = graftText;
  protected override readonly atOnce = true;

  protected override finding(answer: GraftAnswer): readonly Piece[] {
    return graftFinding(answer);
  }

  protected override body(answer: GraftAnswer, stale: boolean): TemplateResult {
    const site = siteAsked(answer);
    return html`${site ? this.ways(site) : nothing} ${this.map(answer, stale)} ${this.roots(answer, stale)} ${stocksOf(answer.stocks)}`;
  }

  private ways({ ways, stands }: GraftSite): TemplateResult {
    const { lastYear } = this.programme;
    return html`<div class="scroll" tabindex="0" role="group" aria-label=${graftText.asking}>
        <table>
          <thead>
            <tr>
              ${graftText.heads.map((head) => html`<th scope="col">${head}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${ways.map(
              ({ who, outcome, minusStands }) =>
                html`<tr>
                  <th scope="row">${graftText.ways[who]}${who === stands ? html`<small>${graftText.asItStands}</small>` : nothing}</th>
                  ${chanceCell(outcome)} ${trulyGoodCell(outcome)} ${halfByCell(outcome, lastYear)} ${amountCell(outcome.seedlings)}
                  ${amountCell(outcome.grafts)} ${amountCell(outcome.totalHours)} ${differenceCell(minusStands)}
                </tr>`,
            )}
          </tbody>
        </table>
      </div>
      ${saveRow({})}`;
  }

  private map(answer: GraftAnswer, stale: boolean): TemplateResult {
    const { plan, map, standing } = answer;
    return html`<h3 class="inner">${graftText.mapTitle}</h3>
      <p class="about">${graftText.mapAbout}</p>
      <div class="with-notes">
        ${
          map
            ? html`<oo-graft-map .answer=${{ plan, map, standing } satisfies MapAnswer} .mark=${this.markOf(plan)} ?stale=${stale}></oo-graft-map>`
            : html`<p class="quiet coming">${graftText.mapComing}</p>`
        }
        <div class="notes">
          <h3>${graftText.stands}</h3>
          ${standsInWords(answer).map((words) => html`<p>${words}</p>`)}
          ${
            map
              ? html`<h3>${graftText.turns}</h3>
                  <dl>
                    ${turnsInWords(answer).map(
                      ({ when, then }) =>
                        html`<dt>${when}</dt>
                          <dd>${then}</dd>`,
                    )}
                  </dl>`
              : nothing
          }
        </div>
      </div>`;
  }

  private roots(answer: GraftAnswer, stale: boolean): TemplateResult {
    const { plan, roots, rootChance } = answer;
    const words = roots ? [...rootsNotes(roots, rootChance), graftTrust(answer)] : [];
    return html`<h3 class="inner">${rootsText.title}</h3>
      <p class="about">${rootsText.about}</p>
      <div class="with-notes">
        ${
          roots
            ? html`<oo-graft-roots .answer=${{ roots, rootChance } satisfies RootsAnswer} .mark=${this.markOf(plan)} ?stale=${stale}></oo-graft-roots>`
            : html`<p class="quiet coming">${rootsText.coming}</p>`
        }
        <div class="notes">${words.map((line) => html`<p>${line}</p>`)}</div>
      </div>`;
  }
}

/** Whom to graft first, in a sentence and a table. */
function stocksOf(stocks: readonly StockUse[]): TemplateResult | typeof nothing {
  if (stocks.length === 0) return nothing;
  const share = ({ mean, p10, p90 }: Spread) => html`<td class="figure">${tenths(mean)}<small>${tenths(p10)}–${tenths(p90)}</small></td>`;
  const figure = ({ mean, p10, p90 }: Spread, say = decimals) =>
    html`<td class="figure">${say(mean)}<small>${graftText.range(say(p10), say(p90))}</small></td>`;
  return html`<h3 class="inner">${graftText.stocksTitle}</h3>
    <p class="said">${stocksInWords(stocks)}</p>
    <div class="scroll" tabindex="0" role="group" aria-label=${graftText.stocksTitle}>
      <table>
        <thead>
          <tr>
            ${graftText.stocksHeads.map((head) => html`<th scope="col">${head}</th>`)}
          </tr>
        </thead>
        <tbody>
          ${stocks.map(
            (use) =>
              html`<tr>
                <th scope="row">${graftText.batches[use.batch]}<small>${graftText.namedAt(use.name, monthsInWords(use.month))}</small></th>
                ${share(use.grafted)} ${share(use.ownRoots)} ${figure(use.gain, tenths)}
                ${use.picksByTen === null ? html`<td class="figure">${common.noValue}</td>` : figure(use.picksByTen)}
              </tr>`,
          )}
        </tbody>
      </table>
    </div>
    ${saveRow({})}
    <p class="about">${graftText.stocksNote}</p>`;
}

/** A share as so many of ten: "2.8". */
const tenths = (share: number): string => decimals(10 * share);

declare global {
  interface HTMLElementTagNameMap {
    'oo-pay-graft': PayGraft;
  }
}
