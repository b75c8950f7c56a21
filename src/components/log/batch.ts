import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import type { Batch } from '../../model/log.ts';
import type { Problem } from '../../model/problem.ts';
import type { Programme } from '../../model/programme.ts';
import { shared } from '../../styles/shared.ts';
import { log as words } from '../../text/log.ts';
import type { FormSection } from '../fields/form.ts';
import { logStyles } from './log.styles.ts';
import '../fields/form.ts';
import './count-pad.ts';
import './event-pad.ts';
import './trees.ts';

const DONE: readonly FormSection[] = [{ title: '', keys: ['grafting', 'route', 'generation', 'apart'] }];
const EVERYTHING: readonly FormSection[] = [
  { title: words.done.sections.batch, keys: ['name', 'year', 'seed', 'seedKind', 'pollen', 'pollenKind', 'note'], column: 1 },
  { title: words.done.sections.counts, keys: ['counts'], column: 2 },
  { title: words.event.title, keys: ['events'], column: 1 },
];

const batchStyles = css`
  :host {
    padding: 4px 0 22px;
  }
  section {
    padding: 18px 0 4px;
    border-top: 1px solid var(--rule);
  }
  section:first-of-type {
    border-top: 0;
  }
  section + section {
    margin-top: 22px;
  }
`;

/**
 * Inside a batch: counts, what was done, what befell it, its trees.
 * @fires oo-change
 */
@customElement('oo-log-batch')
export class LogBatch extends LitElement {
  static override styles = [...shared, logStyles, batchStyles];

  @property({ attribute: false }) programme!: Programme;
  @property({ attribute: false }) batch!: Batch;
  /** Problems and notes of the whole programme. */
  @property({ attribute: false }) problems: readonly Problem[] = [];
  @property() today = '';

  @state() private everything = false;

  protected override render(): TemplateResult {
    const { programme, batch, today } = this;
    const at = programme.log.batches.findIndex(({ id }) => id === batch.id);
    const own = this.problems.filter(({ path }) => path[0] === 'log' && path[2] === at);
    const ofTrees = own.filter(({ path }) => path[3] === 'trees');
    const path = ['log', 'batches', at];
    return html`
      <section aria-labelledby="count">
        <h3 id="count">${words.count.title}</h3>
        <oo-log-count .programme=${programme} .batch=${batch} .problems=${own} .today=${today}></oo-log-count>
      </section>
      <section aria-labelledby="trees">
        <h3 id="trees">${words.trees.title}</h3>
        <oo-log-trees .programme=${programme} .batch=${batch} .problems=${ofTrees} .today=${today}></oo-log-trees>
      </section>
      <section aria-labelledby="done">
        <h3 id="done">${words.done.title}</h3>
        <oo-form .path=${path} .programme=${programme} .problems=${this.said(own, DONE)} .sections=${DONE} narrow></oo-form>
        ${batch.grafting ? html`<p class="quiet">${words.done.graftCare}</p>` : nothing}
      </section>
      <section aria-labelledby="event">
        <h3 id="event">${words.event.title}</h3>
        <oo-log-event .programme=${programme} .batch=${batch} .today=${today}></oo-log-event>
      </section>
      <details
        @toggle=${({ target, currentTarget }: Event) => {
          if (target === currentTarget && target instanceof HTMLDetailsElement) this.everything = target.open;
        }}
      >
        <summary>${words.done.everything}</summary>
        ${
          this.everything
            ? html`<oo-form .path=${path} .programme=${programme} .problems=${this.said(own, EVERYTHING)} .sections=${EVERYTHING}></oo-form>`
            : nothing
        }
      </details>
    `;
  }

  /** Only what a form can say beside a field of its own: the rest is said where it stands. */
  private said(problems: readonly Problem[], sections: readonly FormSection[]): readonly Problem[] {
    const keys = new Set<unknown>(sections.flatMap((section) => section.keys));
    return problems.filter(({ path }) => keys.has(path[3]));
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-log-batch': LogBatch;
  }
}
