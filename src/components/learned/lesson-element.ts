import { consume } from '@lit/context';
import { css, html, nothing, type CSSResultGroup, type TemplateResult } from 'lit';
import { property, state } from 'lit/decorators.js';
import type { Programme } from '../../model/programme.ts';
import type { Put } from '../../seasonlog/learned-types.ts';
import { withPuts } from '../../seasonlog/puts.ts';
import type { LessonsState, LessonsStore } from '../../state/lessons/lessons-store.ts';
import { shared } from '../../styles/shared.ts';
import { lessons as words } from '../../text/log-lessons.ts';
import { lessonsContext } from '../contexts.ts';
import { emitChange } from '../fields/change.ts';
import { StoreController } from '../store-controller.ts';
import { StoreElement } from '../store-element.ts';

const lessonStyles = css`
  :host {
    display: block;
  }
  h3 {
    margin-top: 36px;
  }
  .finding {
    font-size: var(--size-lede);
    line-height: 1.45;
    max-width: 44em;
    margin-top: 8px;
    text-wrap: pretty;
  }
  .intro {
    max-width: var(--measure);
    margin: 8px 0 14px;
  }
  .state {
    min-height: 28px;
  }
  .buttons {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: 8px 14px;
    min-height: var(--target);
    margin: 14px 0;
  }
  .problem {
    color: var(--warn);
  }
  .verdict {
    border-left: 3px solid var(--ink);
    padding-left: 14px;
    font-family: var(--serif);
    font-size: var(--size-subhead);
    line-height: 1.4;
    max-width: 36em;
    margin: 22px 0;
  }
  ul {
    margin: 8px 0 0;
    padding-left: 22px;
    max-width: var(--measure);
  }
  li + li {
    margin-top: 4px;
  }
  details.more {
    margin-top: 14px;
    max-width: var(--measure);
  }
  details.more > summary {
    min-height: var(--target);
    display: list-item;
    align-content: center;
    cursor: pointer;
  }
  .scroll {
    overflow-x: auto;
  }
  @media print {
    .buttons button {
      display: none;
    }
  }
`;

/** A part of the page about what the log teaches: looks at the lessons while it stands on the page, and edits the document they were learned from. */
export abstract class LessonElement extends StoreElement {
  static override styles: CSSResultGroup = [...shared, lessonStyles];

  @consume({ context: lessonsContext, subscribe: true })
  @state()
  protected store!: LessonsStore;

  @property({ attribute: false }) programme!: Programme;

  private ends: (() => void) | null = null;

  constructor() {
    super();
    new StoreController(this, () => this.store);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.ends?.();
    this.ends = null;
  }

  protected override updated(): void {
    if (this.isConnected) this.ends ??= this.store.look();
  }

  protected get said(): LessonsState {
    return this.store.state;
  }

  /** The lessons are about another state of the document than the one on the page: nothing of them goes into it. */
  protected get overtaken(): boolean {
    return this.said.stale || this.said.of !== this.programme;
  }

  /** Puts learned numbers into the document: one step of undo, under the name given. */
  protected put(puts: readonly Put[], label: string): void {
    if (this.overtaken || puts.length === 0) return;
    emitChange(this, { path: [], value: withPuts(this.programme, puts), label });
  }

  /** How far the reading of the log is, or what went wrong. */
  protected stateWords(): TemplateResult {
    const { failure, learning, lessons } = this.said;
    const line =
      failure !== null
        ? html`<p class="problem">${words.failed(failure)} <button type="button" @click=${() => this.store.retry()}>${words.retry}</button></p>`
        : learning
          ? html`<p class="quiet">${lessons ? words.again : words.working}</p>`
          : lessons && this.overtaken
            ? html`<p class="quiet">${words.stale}</p>`
            : nothing;
    return html`<div class="state" role="status">${line}</div>`;
  }
}
