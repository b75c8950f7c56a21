import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import type { WhenAnswer } from '../../../decisions/when.ts';
import type { Piece } from '../../../text/headline.ts';
import { tooEarlyTooLate, wholePlan, whenFinding, whenRests, whenText } from '../../../text/pay-when.ts';
import { SiteElement } from '../site-element.ts';
import './when-picture.ts';

/** At which age should weak seedlings be grafted? */
@customElement('oo-pay-when')
export class PayWhen extends SiteElement<'when'> {
  protected override readonly question = 'when';
  protected override readonly words = whenText;

  protected override finding(answer: WhenAnswer): readonly Piece[] {
    return whenFinding(answer);
  }

  protected override body(answer: WhenAnswer, stale: boolean): TemplateResult {
    const { lastYear } = this.programme;
    const sides = tooEarlyTooLate(answer);
    return html`<div class="with-notes">
      <oo-when-to-graft .answer=${answer} .mark=${this.markOf(answer.plan)} .lastYear=${lastYear} ?stale=${stale}></oo-when-to-graft>
      <div class="notes">
        <h3>${whenText.plan}</h3>
        ${wholePlan(answer, lastYear).map((words) => html`<p>${words}</p>`)} ${sides.length > 0 ? html`<h3>${whenText.early}</h3>` : nothing}
        ${sides.map((words) => html`<p>${words}</p>`)}
        <h3>${whenText.rests}</h3>
        ${whenRests(answer).map((words) => html`<p>${words}</p>`)}
      </div>
    </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-pay-when': PayWhen;
  }
}
