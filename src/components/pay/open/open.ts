import { html, nothing, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import type { OpenAnswer, OpenSite, OpenWay } from '../../../decisions/open.ts';
import { common } from '../../../text/charts.ts';
import type { Piece } from '../../../text/headline.ts';
import { mainSiteOf, missingWords, openFinding, openText, parentsWords, rateWords, wayNotes, yearsLines } from '../../../text/pay-open.ts';
import { saveRow } from '../../charts/data-table.ts';
import { AnswerElement } from '../answer-element.ts';
import { amountCell, chanceCell, differenceCell, halfByCell, trulyGoodCell } from '../cells.ts';
import { choice } from '../choice.ts';
import type { OpenPicture } from './open-picture.ts';
import './open-picture.ts';

/** Open or crossed by hand; and if crossed, which tree is the mother? */
@customElement('oo-pay-open')
export class PayOpen extends AnswerElement<'open'> {
  protected override readonly question = 'open';
  protected override readonly words = openText;

  /** Generation that is shown: the first if it is none of the answer's. */
  @state() private generation = '';

  protected override finding(answer: OpenAnswer): readonly Piece[] {
    return openFinding(mainSiteOf(answer, this.generation));
  }

  protected override body(answer: OpenAnswer, stale: boolean): TemplateResult {
    const site = mainSiteOf(answer, this.generation);
    if (!site) return html``;
    const { startYear, lastYear } = this.programme;
    const notes = wayNotes(site);
    return html`${this.which(answer, site)}
      <div class="with-notes">
        <oo-open-picture
          .answer=${{ ways: site.ways, startYear, lastYear } satisfies OpenPicture}
          .mark=${this.markOf(answer.plan)}
          ?stale=${stale}
        ></oo-open-picture>
        <div class="notes">
          <h3>${openText.differTitle}</h3>
          ${notes.map((words) => html`<p>${words}</p>`)}
          ${
            site.missing.length === 0
              ? nothing
              : html`<h3>${openText.missingTitle}</h3>
                  ${site.missing.map((way) => html`<p>${missingWords(way)}</p>`)}`
          }
        </div>
      </div>
      ${this.table(site)}`;
  }

  private which({ sites }: OpenAnswer, { generation }: OpenSite): TemplateResult | typeof nothing {
    if (sites.length < 2) return nothing;
    return html`<div class="choices">
      ${choice(
        openText.choice,
        sites.map((site) => ({ id: site.generation, name: site.name })),
        generation,
        (id) => (this.generation = id),
      )}
    </div>`;
  }

  private table({ ways }: OpenSite): TemplateResult {
    const { lastYear } = this.programme;
    const years = ({ yearsForHours }: OpenWay) => {
      if (!yearsForHours)
        return html`<td>${common.noValue}</td>
          <td>${common.noValue}</td>`;
      const [sooner, range] = yearsLines(yearsForHours.yearsGained, yearsForHours.verdict);
      return html`<td>${sooner}<small>${range}</small></td>
        <td>${rateWords(yearsForHours)}</td>`;
    };
    return html`<div class="scroll" tabindex="0" role="group" aria-label=${openText.asking}>
        <table>
          <thead>
            <tr>
              ${openText.heads.map((head) => html`<th scope="col">${head}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${ways.map(
              (way) =>
                html`<tr>
                  <th scope="row">${openText.how[way.how]}<small>${way.asItStands ? openText.asItStands : parentsWords(way)}</small></th>
                  ${chanceCell(way.outcome)} ${trulyGoodCell(way.outcome)} ${halfByCell(way.outcome, lastYear)} ${amountCell(way.outcome.seedlings)}
                  ${amountCell(way.outcome.totalHours)} ${differenceCell(way.minusAsItStands)} ${years(way)}
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
    'oo-pay-open': PayOpen;
  }
}
