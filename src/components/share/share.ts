import { html, nothing, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import { linkFragment } from '../../storage/link.ts';
import { shared } from '../../styles/shared.ts';
import { opening } from '../../text/library.ts';
import { share } from '../../text/share.ts';
import { StoreElement } from '../store-element.ts';
import { saveProgramme } from '../files.ts';
import { reachOf, type Reach } from './reach.ts';
import { shareStyles } from './share.styles.ts';

/** Letters of a link that mail programs keep whole, as far as is commonly held; from memory, no standard says so. */
export const MOST_FOR_MAIL = 2000;

/** How far a link of this page can be sent. */
export function linkWords(link: string, reach: Reach): string {
  if (reach !== 'all') return reach === 'file' ? share.fromFile : share.onlyHere;
  return link.length > MOST_FOR_MAIL ? share.long(link.length, MOST_FOR_MAIL) : share.short(link.length);
}

/**
 * A button, and behind it a panel that holds the programme as a link: to copy, with its length, and with the file for where the
 * link is too long. The link is made on this device; nothing is sent.
 */
@customElement('oo-share')
export class OoShare extends StoreElement {
  static override styles = [...shared, shareStyles];

  @property() reach: Reach = reachOf(location);

  /** Null while it is being made. */
  @state() private link: string | null = null;
  @state() private said = '';
  @query('dialog') private readonly dialog!: HTMLDialogElement;
  @query('textarea') private readonly shown!: HTMLTextAreaElement | null;

  /** The panel lies over the page: Escape is for it. */
  get isOpen(): boolean {
    return this.dialog.open;
  }

  private readonly open = (): void => {
    this.link = null;
    this.said = '';
    this.dialog.showModal();
    void this.make();
  };

  private async make(): Promise<void> {
    const { programme } = this.programmes.state;
    try {
      const fragment = await linkFragment(programme);
      this.link = `${location.href.replace(/#.*$/s, '')}${fragment}`;
    } catch {
      this.said = share.failed;
    }
  }

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

  private readonly mark = (): void => this.shown?.select();
  private readonly file = (): void => {
    this.said = opening.handed(saveProgramme(this.programmes.state.programme));
  };
  private readonly close = (): void => this.dialog.close();

  protected override render(): TemplateResult {
    // Where the link would not do, the file is the better way.
    const fileFirst = this.link !== null && (this.link.length > MOST_FOR_MAIL || this.reach !== 'all');
    return html`<button type="button" aria-haspopup="dialog" @click=${this.open}>${share.open}</button>
      <dialog aria-labelledby="title">
        <div class="parts">
          <h2 id="title">${share.title}</h2>
          <p>${share.lede} ${share.everything}</p>
          ${this.linkParts(this.link)}
          <p class="said" role="status">${this.said}</p>
          <div class="buttons">
            <button type="button" class=${fileFirst ? '' : 'main'} ?disabled=${this.link === null} @click=${this.copy}>${share.copy}</button>
            <button type="button" class=${fileFirst ? 'main' : ''} @click=${this.file}>${share.file}</button>
            <button type="button" class="plain last" @click=${this.close}>${share.close}</button>
          </div>
        </div>
      </dialog>`;
  }

  private linkParts(link: string | null): TemplateResult {
    if (link === null) return html`<p class="quiet">${this.said === '' ? share.making : nothing}</p>`;
    return html`<label>${share.link}<textarea readonly spellcheck="false" .value=${link} @focus=${this.mark}></textarea></label>
      <p>${linkWords(link, this.reach)}</p>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-share': OoShare;
  }
}
