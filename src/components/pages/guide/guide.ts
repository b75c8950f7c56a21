import { html, LitElement, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, state } from 'lit/decorators.js';
import { ifDefined } from 'lit/directives/if-defined.js';
import { unsafeHTML } from 'lit/directives/unsafe-html.js';
import answers from '../../../../docs/answers.md?raw';
import walk from '../../../../docs/guide.md?raw';
import model from '../../../../docs/model.md?raw';
import { shared } from '../../../styles/shared.ts';
import { guide, type GuidePart } from '../../../text/guide.ts';
import { pageStyles } from '../page.styles.ts';
import { guideStyles } from './guide.styles.ts';
import { addressOf, askedFor, isPart, render, type Rendered } from './render.ts';

const TEXTS: Readonly<Record<GuidePart, string>> = { guide: walk, answers, model };
/** Pictures that the documents may show, by file name. They are files of their own, so that the text does not wait for them. */
const PICTURES = Object.fromEntries(
  Object.entries(import.meta.glob<string>('../../../../docs/pictures/guide-*.png', { query: '?url', import: 'default', eager: true })).map(
    ([path, address]) => [path.replace(/^.*\//, ''), address],
  ),
);

/** The documents for breeders as they stand in the project, readable without a connection: the guide, worked answers, and the model. */
@customElement('oo-guide')
export class Guide extends LitElement {
  static override styles = [...shared, pageStyles, guideStyles];

  @state() private shown: GuidePart = 'guide';
  @state() private heading = '';
  /** On a wide screen the list of headings stands beside the text, open. */
  private readonly beside = matchMedia('(min-width: 1300px)').matches;
  private readonly rendered = new Map<GuidePart, Rendered>();

  override connectedCallback(): void {
    super.connectedCallback();
    this.read();
    window.addEventListener('hashchange', this.read);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('hashchange', this.read);
  }

  private readonly read = (): void => {
    const { part, heading } = askedFor(location.hash);
    this.shown = part;
    this.heading = heading;
    // The same heading may be asked for again after the page was moved by hand.
    this.requestUpdate('heading');
  };

  protected override updated(changed: PropertyValues): void {
    if (!changed.has('heading') || this.heading === '') return;
    const at = this.renderRoot.querySelector<HTMLElement>(`.text [id="${CSS.escape(this.heading)}"]`);
    at?.scrollIntoView();
    at?.focus({ preventScroll: true });
  }

  private get text(): Rendered {
    const before = this.rendered.get(this.shown);
    if (before) return before;
    const made = render(TEXTS[this.shown], this.shown, PICTURES);
    this.rendered.set(this.shown, made);
    return made;
  }

  protected override render(): TemplateResult {
    const { markup, headings } = this.text;
    return html`
      <nav aria-label=${guide.partsLabel}>
        <ul class="parts">
          ${Object.entries(guide.parts).map(([part, words]) =>
            isPart(part) ? html`<li><a href=${addressOf(part)} aria-current=${ifDefined(part === this.shown ? 'page' : undefined)}>${words}</a></li>` : '',
          )}
        </ul>
      </nav>
      <div class="sheet">
        <details class="contents-of" ?open=${this.beside}>
          <summary>${guide.onThisPage}</summary>
          <ul class="contents">
            ${headings.map(({ id, words }) => html`<li><a href=${addressOf(this.shown, id)}>${words}</a></li>`)}
          </ul>
        </details>
        <div class="text">${unsafeHTML(markup)}</div>
      </div>
    `;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-guide': Guide;
  }
}
