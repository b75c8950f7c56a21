import { css, html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { shared } from '../../styles/shared.ts';
import { share } from '../../text/share.ts';
import { tell } from '../../text/tell.ts';
import { pageStyles } from '../pages/page.styles.ts';
import { reachOf, type Reach } from '../share/reach.ts';
import { linkWords } from '../share/share.ts';

const styles = css`
  .parts {
    display: grid;
    gap: 10px;
    max-width: 47em;
    margin-top: 8px;
  }
  label {
    display: grid;
    gap: 4px;
    font-size: var(--size-least);
    color: var(--ink2);
  }
  textarea {
    width: 100%;
    height: 5.5em;
    resize: vertical;
    overflow-wrap: anywhere;
    word-break: break-all;
  }
  .said:empty {
    display: none;
  }
  @media print {
    :host {
      display: none;
    }
  }
`;

/** The collaborator’s link: to copy, and to look at as they will see it. */
@customElement('oo-story-share')
export class OoStoryShare extends LitElement {
  static override styles = [...shared, pageStyles, styles];

  /** Null while it is being made, or where others could not use it. */
  @property() link: string | null = null;

  @property() reach: Reach = reachOf(location);

  @state() private said = '';
  @query('textarea') private readonly shown!: HTMLTextAreaElement | null;

  private readonly mark = (): void => this.shown?.select();

  private readonly copy = async (): Promise<void> => {
    if (this.link === null) return;
    try {
      await navigator.clipboard.writeText(this.link);
      this.said = share.copied;
    } catch {
      // Browsers forbid it, or have no clipboard, where the page did not come over a safe line.
      this.said = share.notCopied;
      this.shown?.focus();
      this.mark();
    }
  };

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('link')) this.said = '';
  }

  protected override render(): TemplateResult {
    const { link } = this;
    return html`<h2>${tell.link}</h2>
      <div class="parts">
        <p>${tell.linkLede}</p>
        ${link === null ? html`<p class="quiet">${this.reach === 'file' ? share.fromFile : share.making}</p>` : this.linkParts(link)}
        <p class="said" role="status">${this.said}</p>
      </div>`;
  }

  private linkParts(link: string): TemplateResult {
    return html`<label>${share.link}<textarea readonly spellcheck="false" .value=${link} @focus=${this.mark}></textarea></label>
      <p class="quiet">${linkWords(link, this.reach)}</p>
      <div class="buttons">
        <button type="button" @click=${this.copy}>${share.copy}</button>
        <a class="button" href=${link.slice(link.indexOf('#'))}>${tell.look}</a>
      </div>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-story-share': OoStoryShare;
  }
}
