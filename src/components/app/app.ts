import { provide } from '@lit/context';
import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { ifDefined } from 'lit/directives/if-defined.js';
import { sentence } from '../../model/problem.ts';
import { describeEdit, setAt } from '../../model/edits.ts';
import { valueAt } from '../../model/walk.ts';
import type { AnswersStore } from '../../state/answers-store.ts';
import type { Keeper, Opened } from '../../state/keeper.ts';
import { documentOf } from '../../state/keeping.ts';
import type { LessonsStore } from '../../state/lessons/lessons-store.ts';
import type { Library } from '../../state/library.ts';
import type { ProgrammeStore } from '../../state/programme-store.ts';
import type { RunsStore } from '../../state/runs-store.ts';
import { readFile } from '../../storage/file.ts';
import { readLink } from '../../storage/link.ts';
import { shared } from '../../styles/shared.ts';
import { app } from '../../text/app.ts';
import { groupLabels } from '../../text/fields.ts';
import { guide } from '../../text/guide.ts';
import { library, opening } from '../../text/library.ts';
import { offline } from '../../text/offline.ts';
import { problemInWords } from '../../text/place.ts';
import { answersContext, lessonsContext, programmeContext, runsContext } from '../contexts.ts';
import type { OoChange } from '../fields/change.ts';
import { StoreController } from '../store-controller.ts';
import { appStyles } from './app.styles.ts';
import { chooseFile, saveProgramme } from '../files.ts';
import { FocusGuard } from './focus-guard.ts';
import { headerOf } from './header.ts';
import './newer.ts';
import type { LinkChoiceEvent } from './opened-link.ts';
import { fetchPlace, PAGES, placeOf, type Place } from './pages.ts';
import { saidBy } from './said-by.ts';
import type { WayOutEvent } from './trouble.ts';
import './trouble.ts';
import { isTypedIn } from './typing.ts';

/** Something that would take the place of a document that is not saved. */
interface Held {
  readonly name: string;
  readonly anyway: () => Promise<void>;
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

  @provide({ context: answersContext })
  @property({ attribute: false })
  answers!: AnswersStore;

  @provide({ context: lessonsContext })
  @property({ attribute: false })
  lessons!: LessonsStore;

  @property({ attribute: false }) keeper!: Keeper;
  @property({ attribute: false }) library!: Library;
  /** Something that everybody must read, said when the page opens. */
  @property({ attribute: false }) notice: readonly string[] = [];

  /** Changes to a newer version of the page; null while there is none. */
  @property({ attribute: false }) newer: (() => void) | null = null;

  @state() private message: readonly string[] = [];
  /** What the last step did: opened, undone. Said beside the state of saving until the next edit. */
  @state() private happened = '';
  /** What the keeper said last. */
  private noticed = '';
  @state() private held: Held | null = null;
  @state() private dropping = false;
  /** Whether files and questions are shown on a narrow page; on a wide one they always are. */
  @state() private menuOpen = false;
  @state() private place: Place = placeOf(location.hash);
  private readonly guard = new FocusGuard(this, () => this.renderRoot.querySelector('main'));

  constructor() {
    super();
    new StoreController(
      this,
      () => this.programmes,
      () => this.guard.watch(),
    );
    // A lane that had the focus goes when the futures of the change are there.
    new StoreController(
      this,
      () => this.runs,
      () => this.guard.watch(),
    );
    new StoreController(
      this,
      () => this.keeper,
      () => this.guard.watch(),
    );
    this.addEventListener('oo-change', this.onChange);
    this.addEventListener('oo-open', ({ detail }) => void this.openDocument(detail.document, detail.name));
    // Whoever leaves a field, or takes hold of one, has ended the edit before. Focus events do not leave a form whose fields they join.
    this.addEventListener('pointerdown', () => this.programmes.settle());
    this.addEventListener('keydown', ({ key }) => {
      if (key === 'Tab' || key === 'Enter') this.programmes.settle();
    });
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

  protected override willUpdate(changed: PropertyValues): void {
    if (changed.has('notice')) this.message = this.notice;
    const { notice } = this.keeper;
    // What another window did is news after what was said here.
    if (notice !== this.noticed) {
      this.noticed = notice;
      if (notice !== '') this.happened = '';
    }
    if (changed.has('place')) fetchPlace(this.place).catch(() => (this.message = [offline.notHere]));
  }

  protected override updated(): void {
    this.guard.watch();
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
    this.place = placeOf(location.hash);
    this.leaveMenu();
    // From one link to another the place stays and its address does not.
    this.requestUpdate();
    window.scrollTo(0, 0);
  };

  /** The link that led away is hidden with the menu: the focus goes to the page it led to. */
  private leaveMenu(): void {
    if (!this.menuOpen) return;
    this.menuOpen = false;
    void this.updateComplete.then(() => this.renderRoot.querySelector('main')?.focus({ preventScroll: true }));
  }

  private readonly onKey = (event: KeyboardEvent): void => {
    if (event.key === 'Escape' && this.menuOpen && !event.defaultPrevented && !this.renderRoot.querySelector('oo-share')?.isOpen) {
      this.menuOpen = false;
      this.renderRoot.querySelector<HTMLElement>('button.menu')?.focus();
      return;
    }
    if (!(event.ctrlKey || event.metaKey) || event.altKey || event.composedPath().some(isTypedIn)) return;
    const key = event.key.toLowerCase();
    if (key === 'z' && !event.shiftKey) this.undo();
    else if (key === 'y' || (key === 'z' && event.shiftKey)) this.redo();
    else return;
    event.preventDefault();
  };

  private undo(): void {
    const step = this.programmes.state.undo.at(-1);
    this.programmes.undo();
    if (step) this.happened = opening.undone(step.named);
  }

  private redo(): void {
    const [step] = this.programmes.state.redo;
    this.programmes.redo();
    if (step) this.happened = opening.redone(step.named);
  }

  private readonly onChange = (event: CustomEvent<OoChange>): void => {
    const { path, value, label } = event.detail;
    performance.mark('oo-edit');
    this.happened = '';
    const { programme } = this.programmes.state;
    const problems = this.programmes.edit(setAt(programme, path, value), label, path.join('/'), (before) => this.named(event.detail, before));
    this.message = problems.map((problem) => problemInWords(this.programmes.state.programme, problem));
  };

  /** An edit as undo says it: from what stood there when this step began, and in which plan. */
  private named({ path, value, label }: OoChange, before: unknown): string {
    const { programme } = this.programmes.state;
    const was = valueAt(before, path);
    // What changes in several places at once has a name of its own.
    const isValue = path.length > 0 && was !== undefined && value !== undefined && !Array.isArray(value);
    const words = isValue ? describeEdit(path, was, value, programme, groupLabels) : label;
    const [section, at] = path;
    const plan = section === 'plans' && typeof at === 'number' ? programme.plans[at] : undefined;
    return plan ? app.inPlan(words, plan.mark) : words;
  }

  private async openFile(file: File): Promise<void> {
    const reading = await readFile(file);
    const programme = documentOf(reading);
    if (programme) await this.openDocument(programme, file.name, 'keep');
    else if (!reading.ok) {
      const document = await saidBy(file);
      this.refuse(
        file.name,
        reading.problems.slice(0, 5).map((problem) => sentence(document, problem)),
      );
    }
  }

  private refuse(name: string, why: readonly string[]): void {
    this.message = [app.cannotOpen(name), ...why];
  }

  /** Opens a document as a programme of its own and goes to the answer; what stands here is kept, or asked about. */
  private async openDocument(document: unknown, name: string, how: 'keep' | 'look' = 'keep', force = false): Promise<void> {
    const outcome = await this.keeper.open(document, how, force);
    this.settle(outcome, name, () => this.openDocument(document, name, how, true));
  }

  private async openEntry(id: string, name: string, force = false): Promise<void> {
    const outcome = await this.keeper.openEntry(id, force);
    this.settle(outcome, name, () => this.openEntry(id, name, true));
  }

  private settle(outcome: Opened, name: string, anyway: () => Promise<void>): void {
    this.held = null;
    if (outcome === 'held') {
      this.held = { name, anyway };
      return;
    }
    if (outcome === 'refused') {
      this.refuse(name, []);
      return;
    }
    this.message = [];
    this.happened = outcome === 'opened' ? opening.opened(name) : outcome === 'again' ? opening.again(name) : opening.lookedAt(name);
    location.hash = '#/likely';
  }

  private readonly onLinkChoice = ({ detail: { document, name, how } }: LinkChoiceEvent): void => {
    void this.openDocument(document, name, how);
  };

  private readonly saveCopy = (): void => {
    this.menuOpen = false;
    this.happened = opening.handed(saveProgramme(this.programmes.state.programme));
  };

  private readonly onWayOut = ({ detail: way }: WayOutEvent): void => {
    const { keeper } = this;
    if (way === 'copy') this.saveCopy();
    else if (way === 'retry') void keeper.retry();
    else if (way === 'theirs') void keeper.takeTheirs();
    else if (way === 'again') void keeper.keepAgain();
    else keeper.keepMine();
  };

  protected override render(): TemplateResult {
    // A story is read without the tools of the own programme around it.
    if (this.place === 'story') return html`${this.held ? this.holding(this.held) : nothing}${this.page()}`;
    const { state: kept, notice } = this.keeper;
    return html`
      ${headerOf(this.programmes.state, kept, this.happened || notice, this.menuOpen, {
        menu: () => (this.menuOpen = !this.menuOpen),
        skip: this.toAnswer,
        undo: () => this.undo(),
        redo: () => this.redo(),
        open: () => {
          this.menuOpen = false;
          chooseFile((file) => void this.openFile(file));
        },
        save: this.saveCopy,
      })}
      ${kept.trouble ? html`<oo-trouble .trouble=${kept.trouble} @oo-way-out=${this.onWayOut}></oo-trouble>` : nothing}
      ${this.newer ? html`<oo-newer @oo-take=${() => void this.takeNewer()} @oo-later=${() => (this.newer = null)}></oo-newer>` : nothing}
      ${this.held ? this.holding(this.held) : nothing}
      ${
        this.message.length > 0
          ? html`<div class="message" role="alert">
              <div>${this.message.map((line) => html`<p>${line}</p>`)}</div>
              <button @click=${() => (this.message = [])}>${app.close}</button>
            </div>`
          : nothing
      }
      <div class="body">
        <nav id="questions" class=${this.menuOpen ? 'open' : ''} aria-label=${app.questions}>
          <ol>
            ${Object.entries(PAGES).map(([name, { question }]) => html`<li>${this.linkTo(name, question)}</li>`)}
          </ol>
          <ul>
            <li>${this.linkTo('mine', library.title)}</li>
            <li>${this.linkTo('start', library.startOwn)}</li>
            <li>${this.linkTo('guide', guide.title)}</li>
          </ul>
        </nav>
        <main id="answer" tabindex="-1">${this.page()}</main>
      </div>
      ${this.dropping ? html`<div class="drop" aria-hidden="true">${app.dropHere}</div>` : nothing}
    `;
  }

  private linkTo(name: string, words: string): TemplateResult {
    return html`<a href="#/${name}" aria-current=${ifDefined(name === this.place ? 'page' : undefined)}>${words}</a>`;
  }

  private page(): TemplateResult {
    switch (this.place) {
      case 'mine':
        return html`<oo-mine
          .keeper=${this.keeper}
          .library=${this.library}
          @oo-open-entry=${({ detail }: CustomEvent<{ id: string; name: string }>) => void this.openEntry(detail.id, detail.name)}
        ></oo-mine>`;
      case 'start':
        return html`<oo-start></oo-start>`;
      case 'guide':
        return html`<oo-guide></oo-guide>`;
      case 'story':
        return html`<oo-story .fragment=${location.hash} .read=${readLink} @oo-link-choice=${this.onLinkChoice}></oo-story>`;
      case 'open':
        return html`<oo-opened-link .fragment=${location.hash} .read=${readLink} @oo-link-choice=${this.onLinkChoice}></oo-opened-link>`;
      default:
        return PAGES[this.place].draw();
    }
  }

  private holding({ name, anyway }: Held): TemplateResult {
    return html`<div class="message">
      <p role="alert">${opening.held(name)}</p>
      <div class="tools">
        <button class="main" @click=${this.saveCopy}>${opening.holdSave}</button>
        <button @click=${() => void anyway()}>${opening.holdOpen}</button>
        <button @click=${() => (this.held = null)}>${opening.holdStay}</button>
      </div>
    </div>`;
  }

  /** Says something beside the state of saving, until the next edit. */
  say(words: string): void {
    this.happened = words;
  }

  private readonly takeNewer = async (): Promise<void> => {
    if (await this.keeper.flush()) this.newer?.();
    else this.message = [offline.notSaved];
  };

  private readonly toAnswer = (): void => {
    this.renderRoot.querySelector('main')?.focus();
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-app': App;
  }
}
