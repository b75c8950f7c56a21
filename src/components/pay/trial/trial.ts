import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { TrialAnswer } from '../../../decisions/trial.ts';
import { NEVER_ASKED } from '../../../state/answers-store.ts';
import type { Piece } from '../../../text/headline.ts';
import { changesNotes, costNotes, trialFinding, trialText, whenNotes } from '../../../text/pay-trial.ts';
import { saveRow } from '../../charts/data-table.ts';
import { amountCell, chanceCell, differenceCell, halfByCell, trulyGoodCell } from '../cells.ts';
import { SiteElement } from '../site-element.ts';
import type { TrialPicture } from './trial-picture.ts';
import './trial-picture.ts';

/** What is it worth to graft some of the first seedlings, leave as many, and look? */
@customElement('oo-pay-trial')
export class PayTrial extends SiteElement<'trial'> {
  protected override readonly question = 'trial';
  protected override readonly words = trialText;

  /** What was asked last, so that another plan or generation is seen to be asked. */
  private askedFor = '';

  /** Once it has been asked for, choosing another plan or generation asks for that; a changed document waits for the button. */
  protected override updated(changed: PropertyValues): void {
    super.updated(changed);
    const { answer, asking } = this.answers.state.get(this.question) ?? NEVER_ASKED;
    if (answer === null && !asking) return;
    const options = this.options();
    const wanted = JSON.stringify(options);
    if (this.askedFor !== '' && this.askedFor !== wanted) this.answers.ask(this.question, options, false);
    this.askedFor = wanted;
  }

  protected override finding(answer: TrialAnswer): readonly Piece[] {
    return trialFinding(answer);
  }

  protected override body(answer: TrialAnswer, stale: boolean): TemplateResult {
    const { plan, watched } = answer;
    const notes = (title: string, words: readonly string[]) =>
      words.length === 0
        ? nothing
        : html`<h3>${title}</h3>
            ${words.map((line) => html`<p>${line}</p>`)}`;
    return html`<div class="with-notes">
        <oo-trial-picture .answer=${{ watched } satisfies TrialPicture} .mark=${this.markOf(plan)} ?stale=${stale}></oo-trial-picture>
        <div class="notes">
          ${notes(trialText.changesTitle, changesNotes(answer))} ${notes(trialText.whenTitle, whenNotes(answer))}
          ${notes(trialText.costsTitle, [...costNotes(answer), trialText.caution])}
        </div>
      </div>
      ${this.decisions(answer)}`;
  }

  private decisions({ decisions, best }: TrialAnswer): TemplateResult {
    const { lastYear } = this.programme;
    return html`<h3 class="inner">${trialText.nowTitle}</h3>
      <div class="scroll" tabindex="0" role="group" aria-label=${trialText.nowTitle}>
        <table>
          <thead>
            <tr>
              ${trialText.nowHeads.map((head) => html`<th scope="col">${head}</th>`)}
            </tr>
          </thead>
          <tbody>
            ${decisions.map(
              ({ who, outcome, minusOwnRoots }) =>
                html`<tr>
                  <th scope="row">${trialText.ways[who]}${who === best ? html`<small>${trialText.now}</small>` : nothing}</th>
                  ${chanceCell(outcome)} ${trulyGoodCell(outcome)} ${halfByCell(outcome, lastYear)} ${amountCell(outcome.totalHours)}
                  ${differenceCell(minusOwnRoots)}
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
    'oo-pay-trial': PayTrial;
  }
}
