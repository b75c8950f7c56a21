import { css, html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { sentence } from '../../model/problem.ts';
import type { Reading } from '../../model/read.ts';
import { documentOf } from '../../state/keeping.ts';
import { shared } from '../../styles/shared.ts';
import { link } from '../../text/library.ts';
import { pageStyles } from '../pages/page.styles.ts';

/** What to do with a programme that came with a link. */
export type LinkChoiceEvent = CustomEvent<{ readonly document: unknown; readonly name: string; readonly how: 'keep' | 'look' }>;

const styles = css`
  .buttons {
    margin-top: 22px;
  }
  .note {
    margin-top: 14px;
    max-width: 46em;
    color: var(--ink2);
  }
`;

/** Somebody’s programme out of a link: told about before anything is done with it. The document on the page stays as it is. */
@customElement('oo-opened-link')
export class OpenedLink extends LitElement {
  static override styles = [...shared, pageStyles, styles];

  /** The address after “#”. */
  @property() fragment = '';
  @property({ attribute: false }) read: ((fragment: string) => Promise<Reading>) | null = null;

  @state() private reading: Reading | null = null;

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!changed.has('fragment') || !this.read) return;
    const { fragment } = this;
    this.reading = null;
    void this.read(fragment).then((reading) => {
      if (fragment === this.fragment) this.reading = reading;
    });
  }

  protected override render(): TemplateResult {
    const { reading } = this;
    if (!reading) return html`<div role="status"><h1>${link.reading}</h1></div>`;
    const programme = documentOf(reading);
    if (!programme)
      return html`<div role="alert">
          <h1>${link.damaged}</h1>
          ${reading.ok ? nothing : reading.problems.slice(0, 3).map((problem) => html`<p class="note">${sentence(null, problem)}</p>`)}
          <p class="note">${link.ask}</p>
        </div>
        <div class="buttons"><a class="button main" href="#/likely">${link.back}</a></div>`;
    return html`<div role="status"><h1>${link.whose(programme.title)}</h1></div>
      <p class="lede">${link.what(programme.plans.length)} ${reading.ok ? nothing : link.toMend}</p>
      ${programme.note === undefined ? nothing : html`<p class="note">${programme.note}</p>`}
      <div class="buttons">
        <button class="main" @click=${() => this.choose('keep')}>${link.keep}</button>
        <button @click=${() => this.choose('look')}>${link.look}</button>
        <a class="button" href="#/likely">${link.back}</a>
      </div>`;
  }

  private choose(how: 'keep' | 'look'): void {
    const programme = this.reading && documentOf(this.reading);
    if (!programme) return;
    this.dispatchEvent(new CustomEvent('oo-link-choice', { detail: { document: programme, name: programme.title, how } }) satisfies LinkChoiceEvent);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-opened-link': OpenedLink;
  }
  interface HTMLElementEventMap {
    'oo-link-choice': LinkChoiceEvent;
  }
}
