import { css, html, LitElement, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { shared } from '../../styles/shared.ts';
import { offline } from '../../text/offline.ts';

const styles = css`
  .newer {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px 22px;
    padding: 8px 40px 8px 36px;
    background: var(--paper2);
  }
  p {
    max-width: 52em;
  }
`;

/**
 * Says that a newer version is there. It waits: nothing is changed in the middle of an edit.
 *
 * @fires oo-take - the newer version is wanted now
 * @fires oo-later - not now
 */
@customElement('oo-newer')
export class Newer extends LitElement {
  static override styles = [...shared, styles];

  protected override render(): TemplateResult {
    return html`<div class="newer" role="status">
      <p>${offline.newer}</p>
      <button class="main" @click=${this.say('oo-take')}>${offline.take}</button>
      <button @click=${this.say('oo-later')}>${offline.later}</button>
    </div>`;
  }

  private readonly say = (name: string) => (): void => {
    this.dispatchEvent(new CustomEvent(name));
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-newer': Newer;
  }
}
