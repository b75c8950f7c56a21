import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { shared } from '../../styles/shared.ts';
import { examples } from '../../text/app.ts';

/** The invented programmes that come with the app; each is fetched from our own files when it is opened. */
const FILES = import.meta.glob<{ default: unknown }>('../../../sims/examples/*.json');

/** Asks the page to open a document as a programme of its own. */
export type OpenEvent = CustomEvent<{ readonly document: unknown; readonly name: string }>;

const styles = css`
  ul {
    list-style: none;
    margin: 14px 0 0;
    padding: 0;
  }
  li {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 4px 22px;
    padding: 6px 0;
    border-top: 1px solid var(--rule);
  }
  li p {
    flex: 1 1 24em;
    color: var(--ink2);
  }
`;

/** A list of the examples, each with what it teaches. Opening one makes a programme of its own. */
@customElement('oo-examples')
export class Examples extends LitElement {
  static override styles = [...shared, styles];

  protected override render(): TemplateResult {
    const entries = Object.keys(FILES).map((path) => ({ path, id: path.replace(/^.*\/|\.json$/g, '') }));
    return html`<h2>${examples.title}</h2>
      <p class="quiet">${examples.intro}</p>
      <ul>
        ${entries.map(({ path, id }) => {
          const words = examples.list[id];
          return html`<li>
            <button @click=${() => void this.open(path, words?.name ?? id)}>${words?.name ?? id}</button>
            <p>${words?.teaches ?? ''}</p>
          </li>`;
        })}
      </ul>`;
  }

  private async open(path: string, name: string): Promise<void> {
    const loaded = await FILES[path]?.();
    if (loaded)
      this.dispatchEvent(new CustomEvent('oo-open', { detail: { document: loaded.default, name }, bubbles: true, composed: true }) satisfies OpenEvent);
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-examples': Examples;
  }
  interface HTMLElementEventMap {
    'oo-open': OpenEvent;
  }
}
