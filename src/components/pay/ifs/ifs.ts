import { html, nothing, type CSSResultGroup, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { IfPicture } from '../../../charts/ifs/layout.ts';
import type { IfsAnswer } from '../../../decisions/ifs.ts';
import type { IfLine } from '../../../decisions/ifs/line.ts';
import { IFS } from '../../../decisions/ifs/registry.ts';
import type { IfId } from '../../../decisions/ifs/way.ts';
import type { Job } from '../../../decisions/ifs/worth.ts';
import type { Piece } from '../../../text/headline.ts';
import {
  besides,
  gainLines,
  hourLines,
  hoursWords,
  ifSentences,
  ifsFinding,
  ifsText,
  ifsTrust,
  jobName,
  jobsInWords,
  lineName,
  shortName,
} from '../../../text/pay-ifs.ts';
import { saveRow } from '../../charts/data-table.ts';
import { AnswerElement } from '../answer-element.ts';
import { amountCell, chanceCell, differenceCell, halfByCell, trulyGoodCell } from '../cells.ts';
import { ifsStyles } from './ifs.styles.ts';
import './if-picture.ts';

/** What if something happens, and which of this spring's jobs is worth most? */
@customElement('oo-pay-ifs')
export class PayIfs extends AnswerElement<'ifs'> {
  static override styles: CSSResultGroup = [AnswerElement.styles, ifsStyles];

  protected override readonly question = 'ifs';
  protected override readonly words = ifsText;

  protected override finding(answer: IfsAnswer): readonly Piece[] {
    return ifsFinding(answer, this.programme);
  }

  protected override body(answer: IfsAnswer, stale: boolean): TemplateResult {
    return html`<p class="trust">${ifsTrust(answer)}</p>
      ${this.jobs(answer.jobs)}
      <div class="rows">${IFS.map(({ id }) => this.row(id, answer, stale))}</div>
      ${this.table(answer)}`;
  }

  private row(id: IfId, answer: IfsAnswer, stale: boolean): TemplateResult | typeof nothing {
    const { programme } = this;
    const why = answer.cannot.find((one) => one.if === id)?.why;
    if (why !== undefined)
      return html`<div class="row">
        <div class="alone">
          <h3>${ifsText.titles[id]}</h3>
          <p class="besides">${ifsText.whyNot[why]}</p>
        </div>
      </div>`;
    const lines = answer.lines.filter((line) => line.if === id);
    if (lines.length === 0) return nothing;
    return html`<div class="row">
      <div>
        <h3>${ifsText.titles[id]}</h3>
        ${ifSentences(lines, programme).map((words) => html`<p>${words}</p>`)} ${besides(lines, answer).map((words) => html`<p class="besides">${words}</p>`)}
      </div>
      ${this.picture(lines, answer, stale)}
    </div>`;
  }

  private picture(lines: readonly IfLine[], { stands, plan }: IfsAnswer, stale: boolean): TemplateResult {
    const drawn = lines.filter(({ curve }) => curve !== null);
    if (drawn.some(({ curve }) => curve?.length === 0)) return html`<p class="quiet coming">${ifsText.coming}</p>`;
    const picture: IfPicture = { lines: drawn, names: drawn.map((line) => shortName(line, this.programme)), stands: stands.chance };
    return html`<oo-if .answer=${picture} .mark=${this.markOf(plan)} ?stale=${stale}></oo-if>`;
  }

  private jobs(jobs: readonly Job[] | null): TemplateResult | typeof nothing {
    if (!jobs) return nothing;
    const { programme } = this;
    const two = ([figure, range]: readonly [string, string]) => html`<td>${figure}<small>${range}</small></td>`;
    return html`<h3 class="inner">${ifsText.jobsTitle}</h3>
      <p class="about">${ifsText.jobsAbout}</p>
      <p class="said">${jobsInWords(jobs, programme)}</p>
      ${
        jobs.length === 0
          ? nothing
          : html`<div class="scroll" tabindex="0" role="group" aria-label=${ifsText.jobsTitle}>
                <table>
                  <thead>
                    <tr>
                      ${ifsText.jobHeads.map((head) => html`<th scope="col">${head}</th>`)}
                    </tr>
                  </thead>
                  <tbody>
                    ${jobs.map(
                      (job) =>
                        html`<tr>
                          <td class="rank">${job.rank}</td>
                          <th scope="row">${jobName(job, programme)}${job.inPlan ? nothing : html`<small>${ifsText.onTop}</small>`}</th>
                          ${two(gainLines(job))}
                          <td>${hoursWords(job)}</td>
                          ${two(hourLines(job))}
                        </tr>`,
                    )}
                  </tbody>
                </table>
              </div>
              ${saveRow({})}`
      }`;
  }

  private table({ lines, lastYear }: IfsAnswer): TemplateResult {
    return html`<h3 class="inner">${ifsText.table}</h3>
      <div class="scroll" tabindex="0" role="group" aria-label=${ifsText.table}>
        <table>
          <thead>
            <tr>
              ${ifsText.heads.map((head) => html`<th scope="col">${head}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${lines.map(
              (line) =>
                html`<tr>
                  <th scope="row">${lineName(line, this.programme)}</th>
                  ${chanceCell(line.outcome)} ${trulyGoodCell(line.outcome)} ${halfByCell(line.outcome, line.form === 'longer' ? line.year : lastYear)}
                  ${amountCell(line.outcome.totalHours)} ${differenceCell(line.minusAsItStands)}
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
    'oo-pay-ifs': PayIfs;
  }
}
