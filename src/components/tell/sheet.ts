import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { unsafeHTML } from 'lit/directives/unsafe-html.js';
import type { Handout } from '../../handout/handout.ts';
import { pageRule, sheetStyle } from '../../handout/sheet-style.ts';
import { sheetMarkup } from '../../handout/sheet.ts';

const styles = css`
  :host {
    display: block;
  }
  /* In the ink of the sheet, which is white in every theme. */
  a:focus-visible {
    outline: 3px solid currentColor;
    outline-offset: 2px;
  }
`;

/** The sheet as it goes to paper: the very markup of the file. While it is on the page, the page prints on the paper chosen for it. */
@customElement('oo-sheet')
export class OoSheet extends LitElement {
  static override styles = styles;

  @property({ attribute: false }) handout: Handout | null = null;

  private readonly paper = new CSSStyleSheet();

  override connectedCallback(): void {
    super.connectedCallback();
    document.adoptedStyleSheets = [...document.adoptedStyleSheets, this.paper];
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== this.paper);
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('handout') && this.handout) this.paper.replaceSync(pageRule(this.handout.paper));
  }

  /** The picture as it is drawn for paper; null while there is none. */
  get picture(): SVGSVGElement | null {
    return this.renderRoot.querySelector<SVGSVGElement>('.picture .wide svg');
  }

  protected override render(): TemplateResult | typeof nothing {
    const { handout } = this;
    if (!handout) return nothing;
    // Everything in the markup that people wrote has been escaped where it was put in.
    return html`${unsafeHTML(`<style>${sheetStyle(handout.paper)}</style>${sheetMarkup(handout)}`)}`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-sheet': OoSheet;
  }
}
