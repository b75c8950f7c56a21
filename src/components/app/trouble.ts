import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { shared } from '../../styles/shared.ts';
import { app } from '../../text/app.ts';
import { keeping, library, opening, type KeepingTrouble } from '../../text/library.ts';

export type WayOut = 'copy' | 'retry' | 'theirs' | 'mine' | 'again';
/** A choice that ends a trouble. */
export type WayOutEvent = CustomEvent<WayOut>;

const WAYS: Readonly<Record<KeepingTrouble, readonly WayOut[]>> = {
  full: ['copy', 'retry'],
  closed: ['copy', 'retry'],
  silent: ['copy', 'retry'],
  conflict: ['theirs', 'mine', 'copy'],
  gone: ['again', 'copy'],
  removed: ['again', 'copy'],
};

const styles = css`
  :host,
  section {
    display: contents;
  }
  .head,
  .body {
    padding: 0 40px 0 32px;
    background: var(--raise);
    box-shadow: inset 4px 0 0 var(--warn);
  }
  .head {
    position: sticky;
    top: 0;
    z-index: 2;
    display: flex;
    align-items: center;
    justify-content: space-between;
    gap: 14px;
    min-height: 52px;
    padding-block: 6px;
  }
  .body {
    padding-bottom: 14px;
    border-bottom: 1px solid var(--rule);
  }
  p {
    max-width: 52em;
  }
  strong {
    font-family: var(--serif);
    font-size: var(--size-subhead);
    line-height: 1.25;
    font-weight: 600;
    color: var(--warn);
  }
  .head button {
    flex: none;
  }
  .ways {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px;
    margin-top: 10px;
  }
  @media (max-width: 700px) {
    .head,
    .body {
      padding-inline: 16px;
    }
  }
  @media print {
    .head,
    .body {
      display: none;
    }
  }
`;

/** Room that the bar takes at the top of the window, so that what gets the focus is not scrolled behind it. */
const BAR_PX = '64px';

/** Says why the document is not kept, and offers every way out. Nothing goes on by itself that could overwrite something. */
@customElement('oo-trouble')
export class Trouble extends LitElement {
  static override styles = [...shared, styles];

  @property() trouble: KeepingTrouble | null = null;

  protected override render(): TemplateResult | typeof nothing {
    const { trouble } = this;
    if (!trouble) return nothing;
    return html`<section aria-label=${app.notSavedHead(keeping[trouble].short)}>
      <div class="head">
        <strong>${app.notSavedHead(keeping[trouble].short)}</strong>
        <button class="plain" @click=${this.showWays}>${opening.whatToDo}</button>
      </div>
      <div class="body">
        <p role="alert">${keeping[trouble].what}</p>
        <div class="ways">
          ${WAYS[trouble].map((way, i) => html`<button class=${i === 0 ? 'main' : ''} @click=${() => this.choose(way)}>${this.wordOf(way, trouble)}</button>`)}
          ${trouble === 'full' ? html`<a class="button" href="#/mine">${library.title}</a>` : nothing}
        </div>
      </div>
    </section>`;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    document.documentElement.style.scrollPaddingTop = BAR_PX;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    document.documentElement.style.scrollPaddingTop = '';
  }

  /** The bar stays in sight wherever somebody is typing; this leads from it to the choices. */
  private readonly showWays = (): void => {
    window.scrollTo(0, 0);
    this.renderRoot.querySelector<HTMLElement>('.ways button')?.focus();
  };

  private wordOf(way: WayOut, trouble: KeepingTrouble): string {
    switch (way) {
      case 'copy':
        return opening.holdSave;
      case 'retry':
        return opening.tryAgain;
      case 'theirs':
        return opening.takeTheirs;
      case 'mine':
        return opening.keepMine;
      case 'again':
        return trouble === 'removed' ? opening.bringBack : opening.keepAgain;
    }
  }

  private choose(way: WayOut): void {
    this.dispatchEvent(new CustomEvent('oo-way-out', { detail: way }) satisfies WayOutEvent);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-trouble': Trouble;
  }
  interface HTMLElementEventMap {
    'oo-way-out': WayOutEvent;
  }
}
