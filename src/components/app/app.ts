import { provide } from '@lit/context';
import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { ifDefined } from 'lit/directives/if-defined.js';
import { sentence } from '../../model/problem.ts';
import { setAt } from '../../model/edits.ts';
import type { ProgrammeStore } from '../../state/programme-store.ts';
import type { RunsStore } from '../../state/runs-store.ts';
import { fileName, programmeText, readFile } from '../../storage/file.ts';
import { shared } from '../../styles/shared.ts';
import { app, could, have, likely } from '../../text/app.ts';
import { programmeContext, runsContext } from '../contexts.ts';
import type { OoChange } from '../fields/change.ts';
import { StoreController } from '../store-controller.ts';
import { appStyles } from './app.styles.ts';
import '../pages/do.ts';
import '../pages/have.ts';
import '../pages/likely.ts';

/** The pages, by their address after “#/”. */
const PAGES = {
  have: { question: have.question, draw: () => html`<oo-have></oo-have>` },
  do: { question: could.question, draw: () => html`<oo-do></oo-do>` },
  likely: { question: likely.question, draw: () => html`<oo-likely></oo-likely>` },
} as const;
type PageName = keyof typeof PAGES;
const isPage = (name: string): name is PageName => Object.hasOwn(PAGES, name);
const pageNow = (): PageName => {
  const name = location.hash.replace(/^#\//, '');
  return isPage(name) ? name : 'likely';
};

/** What the header says of saving. */
export interface SaveState {
  readonly text: string;
  readonly bad: boolean;
}

/**
 * The whole page: header with the document's title, undo and files, the questions, and the page that answers one.
 * Edits of every field on it arrive here as `oo-change` and go to the store.
 */
@customElement('oo-app')
export class App extends LitElement {
  static override styles = [...shared, appStyles];

  @provide({ context: programmeContext })
  @property({ attribute: false })
  programmes!: ProgrammeStore;

  @provide({ context: runsContext })
  @property({ attribute: false })
  runs!: RunsStore;

  @property({ attribute: false }) saved: SaveState = { text: '', bad: false };
  /** Something that everybody must read, said when the page opens. */
  @property({ attribute: false }) notice: readonly string[] = [];

  @state() private message: readonly string[] = [];
  @state() private dropping = false;
  @state() private page: PageName = pageNow();

  constructor() {
    super();
    new StoreController(this, () => this.programmes);
    this.addEventListener('oo-change', this.onChange);
    this.addEventListener('oo-open', ({ detail }) => {
      this.programmes.edit(detail.document, app.opened(detail.name));
      location.hash = '#/likely';
    });
    this.addEventListener('focusout', () => this.programmes.settle());
    this.addEventListener('dragover', (event) => {
      event.preventDefault();
      this.dropping = true;
    });
    this.addEventListener('dragleave', (event) => {
      if (event.relatedTarget === null) this.dropping = false;
    });
    this.addEventListener('drop', (event) => {
      event.preventDefault();
      this.dropping = false;
      const file = event.dataTransfer?.files[0];
      if (file) void this.openFile(file);
    });
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('notice')) this.message = this.notice;
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('keydown', this.onKey);
    window.addEventListener('hashchange', this.onAddress);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('keydown', this.onKey);
    window.removeEventListener('hashchange', this.onAddress);
  }

  private readonly onAddress = (): void => {
    this.page = pageNow();
    window.scrollTo(0, 0);
  };

  private readonly onKey = (event: KeyboardEvent): void => {
    const inField = event.composedPath().some((target) => target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement);
    if (!(event.ctrlKey || event.metaKey) || event.altKey || inField) return;
    const key = event.key.toLowerCase();
    if (key === 'z' && !event.shiftKey) this.programmes.undo();
    else if (key === 'y' || (key === 'z' && event.shiftKey)) this.programmes.redo();
    else return;
    event.preventDefault();
  };

  private readonly onChange = (event: CustomEvent<OoChange>): void => {
    const { path, value, label } = event.detail;
    performance.mark('oo-edit');
    const problems = this.programmes.edit(setAt(this.programmes.state.programme, path, value), label, path.join('/'));
    this.message = problems.map((problem) => sentence(this.programmes.state.programme, problem));
  };

  private async openFile(file: File): Promise<void> {
    const reading = await readFile(file);
    const programme = reading.ok ? reading.programme : reading.draft;
    if (programme) {
      this.programmes.edit(programme, app.opened(file.name));
      this.message = [];
      return;
    }
    if (!reading.ok) this.message = [app.cannotOpen(file.name), ...reading.problems.slice(0, 5).map((problem) => sentence(null, problem))];
  }

  private readonly chooseFile = (): void => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.json,application/json';
    input.addEventListener('change', () => {
      const file = input.files?.[0];
      if (file) void this.openFile(file);
    });
    input.click();
  };

  private readonly saveCopy = (): void => {
    const { programme } = this.programmes.state;
    const link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([programmeText(programme)], { type: 'application/json' }));
    link.download = fileName(programme);
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
  };

  protected override render(): TemplateResult {
    const { programme, undo, redo } = this.programmes.state;
    const last = undo.at(-1)?.label;
    const next = redo[0]?.label;
    return html`
      <header>
        <button class="skip" @click=${this.toAnswer}>${app.skip}</button>
        <div class="title"><strong>${programme.title}</strong>${programme.example ? html`<span class="quiet">${app.example}</span>` : nothing}</div>
        <div class="tools">
          <span class="saved ${this.saved.bad ? 'problem' : 'quiet'}" role="status">${this.saved.text}</span>
          <button class="plain" ?disabled=${last === undefined} title=${last === undefined ? '' : app.undoThat(last)} @click=${() => this.programmes.undo()}>
            ${app.undo}
          </button>
          <button class="plain" ?disabled=${next === undefined} title=${next === undefined ? '' : app.redoThat(next)} @click=${() => this.programmes.redo()}>
            ${app.redo}
          </button>
          <button @click=${this.chooseFile}>${app.open}</button>
          <button @click=${this.saveCopy}>${app.save}</button>
          <button @click=${() => window.print()}>${app.print}</button>
        </div>
      </header>
      ${
        this.message.length > 0
          ? html`<div class="message" role="alert">
              <div>${this.message.map((line) => html`<p>${line}</p>`)}</div>
              <button @click=${() => (this.message = [])}>${app.close}</button>
            </div>`
          : nothing
      }
      <div class="body">
        <nav aria-label=${app.questions}>
          <ol>
            ${Object.entries(PAGES).map(
              ([name, { question }]) => html`<li><a href="#/${name}" aria-current=${ifDefined(name === this.page ? 'page' : undefined)}>${question}</a></li>`,
            )}
          </ol>
        </nav>
        <main id="answer" tabindex="-1">${PAGES[this.page].draw()}</main>
      </div>
      ${this.dropping ? html`<div class="drop" aria-hidden="true">${app.dropHere}</div>` : nothing}
    `;
  }

  private readonly toAnswer = (): void => {
    this.renderRoot.querySelector('main')?.focus();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-app': App;
  }
}
