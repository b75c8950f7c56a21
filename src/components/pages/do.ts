import { html, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { outlookOf } from '../../state/outlook.ts';
import { shared } from '../../styles/shared.ts';
import { could, likely } from '../../text/app.ts';
import { StoreElement } from '../store-element.ts';
import { holdPlace } from './hold-place.ts';
import { pageStyles } from './page.styles.ts';
import { care, pieces, problemList, progress } from './parts.ts';
import './plan-lanes.ts';

/** “What could I do?”: the plans alone, drawn small, edited in place. */
@customElement('oo-do')
export class Do extends StoreElement {
  static override styles = [...shared, pageStyles];

  protected override update(changed: PropertyValues): void {
    holdPlace(this, () => super.update(changed));
  }

  protected override render(): TemplateResult {
    const { programme, problems, runnable } = this.programmes.state;
    const outlook = outlookOf(runnable, this.runs.state);
    const stale = this.runs.state.stale.size > 0 || runnable !== programme;
    return html`
      <h1>${outlook ? pieces(could.headline(outlook.plans)) : likely.waiting}</h1>
      <p class="lede">${could.lede}</p>
      ${progress(this.runs.state)} ${problemList(programme, problems)}
      ${outlook ? html`<section class="part"><oo-plan-lanes .outlook=${outlook} ?stale=${stale} compact></oo-plan-lanes></section>` : nothing}
      ${care(programme, this.runs.engine)}
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-do': Do;
  }
}
