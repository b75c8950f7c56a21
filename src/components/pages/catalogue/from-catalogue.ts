import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Programme } from '../../../model/programme.ts';
import { shared } from '../../../styles/shared.ts';
import { catalogueText } from '../../../text/catalogue.ts';
import { offline } from '../../../text/offline.ts';
import type { AddKind } from './add-kind.ts';
import type { AddTrait } from './add-trait.ts';

export type FromCatalogueTool = 'kind' | 'trait';
/** Asks the page to open a part of the catalogue. */
export type ToCatalogueEvent = CustomEvent<FromCatalogueTool>;
const TOOLS: readonly FromCatalogueTool[] = ['kind', 'trait'];
/** The catalogue is large, and few visits look into it. */
const CODE = { kind: () => import('./add-kind.ts'), trait: () => import('./add-trait.ts') } as const;

const styles = css`
  :host {
    display: block;
  }
  .intro {
    max-width: var(--measure);
    margin: 8px 0 14px;
  }
  details {
    border-top: 1px solid var(--rule);
  }
  details:last-of-type {
    border-bottom: 1px solid var(--rule);
  }
  summary {
    display: flex;
    align-items: center;
    gap: 14px;
    min-height: var(--target);
    cursor: pointer;
    font: 600 var(--size-subhead) / 1.3 var(--serif);
  }
  summary::before {
    content: '▸';
    width: 1em;
    color: var(--ink2);
    font: 400 var(--size-least) / 1 var(--sans);
  }
  details[open] > summary::before {
    content: '▾';
  }
  .inside {
    padding: 4px 0 22px 22px;
  }
  @media (max-width: 700px) {
    .inside {
      padding-left: 0;
    }
  }
  @media print {
    :host {
      display: none;
    }
  }
`;

/** Part of “What have I got?”: what the catalogue can add to the programme that is open. */
@customElement('oo-from-catalogue')
export class FromCatalogue extends LitElement {
  static override styles = [...shared, styles];

  @property({ attribute: false }) programme!: Programme;
  /** A folded tool is not drawn: it looks through the whole catalogue. */
  @state() private opened: ReadonlySet<FromCatalogueTool> = new Set();
  @state() private there: ReadonlySet<FromCatalogueTool> = new Set();
  @state() private trouble = '';

  /** Unfolds a tool and puts the focus on its first choice. */
  async show(tool: FromCatalogueTool): Promise<void> {
    this.opened = new Set([...this.opened, tool]);
    await this.fetch(tool);
    await this.updateComplete;
    const element = this.renderRoot.querySelector<AddKind | AddTrait>(tool === 'kind' ? 'oo-add-kind' : 'oo-add-trait');
    await element?.updateComplete;
    element?.focus();
    element?.scrollIntoView({ block: 'center' });
  }

  private async fetch(tool: FromCatalogueTool): Promise<void> {
    try {
      await CODE[tool]();
      this.there = new Set([...this.there, tool]);
      this.trouble = '';
    } catch {
      this.trouble = offline.notHere;
    }
  }

  private readonly toggled = (tool: FromCatalogueTool) => (event: Event) => {
    const { target } = event;
    if (!(target instanceof HTMLDetailsElement) || target !== event.currentTarget) return;
    const opened = new Set(this.opened);
    if (target.open) {
      opened.add(tool);
      void this.fetch(tool);
    } else opened.delete(tool);
    this.opened = opened;
  };

  protected override render(): TemplateResult {
    return html`<h2>${catalogueText.title}</h2>
      <p class="intro quiet">${catalogueText.intro}</p>
      ${TOOLS.map(
        (tool) =>
          html`<details ?open=${this.opened.has(tool)} @toggle=${this.toggled(tool)}>
            <summary>${catalogueText[tool].open}</summary>
            ${this.opened.has(tool) && this.there.has(tool) ? html`<div class="inside">${this.tool(tool)}</div>` : nothing}
          </details>`,
      )}
      <p role="status">${this.trouble}</p>`;
  }

  private tool(tool: FromCatalogueTool): TemplateResult {
    const { programme } = this;
    return tool === 'kind' ? html`<oo-add-kind .programme=${programme}></oo-add-kind>` : html`<oo-add-trait .programme=${programme}></oo-add-trait>`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-from-catalogue': FromCatalogue;
  }
  interface HTMLElementEventMap {
    'oo-to-catalogue': ToCatalogueEvent;
  }
}
