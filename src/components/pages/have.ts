import { html, nothing, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { tallySources } from '../../model/sources.ts';
import { shared } from '../../styles/shared.ts';
import { have } from '../../text/app.ts';
import { StoreElement } from '../store-element.ts';
import type { FromCatalogue, ToCatalogueEvent } from './catalogue/from-catalogue.ts';
import { pageStyles } from './page.styles.ts';
import { care, pieces, problemList } from './parts.ts';
import '../carriers/carriers.ts';
import '../compatibility/compatibility.ts';
import { pairTable } from '../compatibility/pairs.ts';
import '../fields/form.ts';
import '../tray/tray.ts';
import './catalogue/from-catalogue.ts';
import './examples.ts';
import './orchard-panel.ts';

/** “What have I got?”: every number of the programme, where a breeder would look for it. */
@customElement('oo-have')
export class Have extends StoreElement {
  static override styles = [...shared, pageStyles];

  private readonly toCatalogue = ({ detail }: ToCatalogueEvent): void => {
    void this.renderRoot.querySelector<FromCatalogue>('oo-from-catalogue')?.show(detail);
  };

  protected override render(): TemplateResult {
    const { programme, problems } = this.programmes.state;
    return html`
      <h1>${pieces(have.headline(programme.trees.length, programme.kinds.length, tallySources(programme)))}</h1>
      <p class="lede">${have.lede}</p>
      ${programme.note === undefined ? nothing : html`<p class="quiet">${programme.note}</p>`} ${problemList(programme, problems)}
      <section class="part">
        <oo-orchard-panel .programme=${programme} .problems=${problems} .start=${['trees']} catalogue @oo-to-catalogue=${this.toCatalogue}></oo-orchard-panel>
      </section>
      <section class="part"><oo-from-catalogue .programme=${programme}></oo-from-catalogue></section>
      <section class="part"><oo-tray .programme=${programme}></oo-tray></section>
      ${pairTable(programme) ? html`<oo-compatibility class="part" .programme=${programme}></oo-compatibility>` : nothing}
      <oo-carriers class="part" .programme=${programme}></oo-carriers>
      <section class="part"><oo-examples></oo-examples></section>
      ${care(programme, this.runs.engine)}
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-have': Have;
  }
}
