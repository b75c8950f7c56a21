import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { repeat } from 'lit/directives/repeat.js';
import type { Keeper } from '../../state/keeper.ts';
import type { Entry } from '../../state/keeping.ts';
import type { Library, List } from '../../state/library.ts';
import { fileName } from '../../storage/file.ts';
import { shared } from '../../styles/shared.ts';
import { app } from '../../text/app.ts';
import { keeping, library } from '../../text/library.ts';
import { saveAsFile } from '../files.ts';
import { emitChange } from '../fields/change.ts';
import { StoreController } from '../store-controller.ts';
import { mineStyles } from './mine.styles.ts';
import { pageStyles } from './page.styles.ts';
import './examples.ts';

/** Asks the page to open a programme of the list. */
export type OpenEntryEvent = CustomEvent<{ readonly id: string; readonly name: string }>;

/** What was done last in the list, and how to take it back. */
interface Done {
  readonly words: string;
  readonly back: string | null;
}

const nameOf = ({ programme, changed }: Entry): string => programme?.title ?? library.unreadableName(when(changed));

/** “today 12:04”, “24 Nov 2026”. */
function when(time: number): string {
  if (time === 0) return library.unknownTime;
  const date = new Date(time);
  const today = new Date().toDateString() === date.toDateString();
  return today
    ? library.today(date.toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' }))
    : date.toLocaleDateString('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });
}

/** “My programmes”: all that is kept on this device, what was removed, and what cannot be read. */
@customElement('oo-mine')
export class Mine extends LitElement {
  static override styles = [...shared, pageStyles, mineStyles];

  @property({ attribute: false }) keeper!: Keeper;
  @property({ attribute: false }) library!: Library;

  @state() private listed: List | null = null;
  /** Whether the browser promised to keep what is stored; null until it has said. */
  @state() private promised: boolean | null = null;
  @state() private done: Done | null = null;
  /** The programme that is about to be removed for good. */
  @state() private erasing: string | null = null;
  private version = -1;

  constructor() {
    super();
    new StoreController(this, () => this.keeper);
  }

  protected override willUpdate(_changed: PropertyValues): void {
    const { listVersion } = this.keeper.state;
    if (listVersion === this.version) return;
    this.version = listVersion;
    void this.library.promised().then((promised) => (this.promised = promised));
    void this.library.list().then((list) => {
      if (listVersion === this.version) this.listed = list;
    });
  }

  protected override render(): TemplateResult | typeof nothing {
    const { listed } = this;
    if (!listed) return nothing;
    if (!listed.ok)
      return html`<h1>${library.title}</h1>
        <p class="problems" role="alert">${library.notListed(keeping[listed.trouble].short)}</p>
        ${this.examples()}`;
    const here = listed.entries.filter(({ removed, programme }) => removed === null && programme !== null);
    const unreadable = listed.entries.filter(({ removed, programme }) => removed === null && programme === null);
    const removed = listed.entries.filter((entry) => entry.removed !== null);
    const plans = here.reduce((sum, { programme }) => sum + (programme?.plans.length ?? 0), 0);
    return html`
      <h1>${library.headline(here.length, plans)}</h1>
      <p class="lede">${here.length === 0 ? library.first : library.lede}</p>
      ${here.length === 0 || this.promised === null ? nothing : html`<p class="quiet promise">${this.promised ? library.promised : library.notPromised}</p>`}
      <p class="start"><a class="button ${here.length === 0 ? 'main' : ''}" href="#/start">${library.startOwn}</a></p>
      <div class=${this.done ? 'said' : ''}>
        <span role="status">${this.done?.words ?? ''}</span>
        ${this.done?.back == null ? nothing : html`<button @click=${this.takeBack(this.done.back)}>${app.undo}</button>`}
      </div>
      ${here.length === 0 ? nothing : this.section(library.list, '', here, (entry) => this.programme(entry))}
      ${unreadable.length === 0 ? nothing : this.section(library.unreadable, library.unreadableIntro, unreadable, (entry) => this.setAside(entry))}
      ${removed.length === 0 ? nothing : this.section(library.removed, library.removedIntro, removed, (entry) => this.putAway(entry))} ${this.examples()}
    `;
  }

  private examples(): TemplateResult {
    return html`<section class="part"><oo-examples></oo-examples></section>`;
  }

  private section(title: string, intro: string, entries: readonly Entry[], draw: (entry: Entry) => TemplateResult): TemplateResult {
    return html`<section class="part">
      <h2>${title}</h2>
      ${intro === '' ? nothing : html`<p class="quiet">${intro}</p>`}
      <ul class="list">
        ${repeat(entries, ({ id }) => id, draw)}
      </ul>
    </section>`;
  }

  private programme(entry: Entry): TemplateResult {
    const title = nameOf(entry);
    const current = entry.id === this.keeper.state.id;
    const facts = html`${library.plans(entry.programme?.plans.length ?? 0)} ·
    ${library.changed(when(entry.changed))}${entry.toMend ? html` · ${library.toMend}` : nothing}`;
    return html`<li class=${current ? 'current' : ''}>
      <div>
        ${
          current
            ? html`<label>${library.titleField}<input .value=${title} maxlength="120" @change=${this.rename} /></label>
                <p class="facts"><b>${library.openNow}</b> · ${facts}</p>`
            : html`<p class="name">${title}</p>
                <p class="facts">${facts}</p>`
        }
      </div>
      <div class="tools">
        ${current ? nothing : html`<button aria-label=${library.openOf(title)} @click=${() => this.open(entry)}>${library.open}</button>`}
        <button aria-label=${library.copyOf(title)} @click=${() => void this.copy(entry)}>${library.copy}</button>
        <button aria-label=${library.removeOf(title)} @click=${() => void this.putAwayNow(entry)}>${library.remove}</button>
      </div>
    </li>`;
  }

  private setAside(entry: Entry): TemplateResult {
    const name = nameOf(entry);
    return html`<li>
      <p class="name">${name}</p>
      <div class="tools">
        <button aria-label=${library.saveTextOf(name)} @click=${() => saveAsFile(library.textFile, entry.text)}>${library.saveText}</button>
        <button aria-label=${library.removeOf(name)} @click=${() => void this.putAwayNow(entry)}>${library.remove}</button>
      </div>
    </li>`;
  }

  private putAway(entry: Entry): TemplateResult {
    const name = nameOf(entry);
    const sure = this.erasing === entry.id;
    return html`<li>
      <div>
        <p class="name">${name}</p>
        <p class="facts">${library.removedOn(when(entry.removed ?? 0))}</p>
      </div>
      <div class="tools">
        ${
          sure
            ? html`<button @click=${() => void this.erase(entry)}>${library.eraseSure}</button>
                <button class="main" @click=${() => (this.erasing = null)}>${library.eraseKeep}</button>`
            : html`<button aria-label=${library.bringBackOf(name)} @click=${this.takeBack(entry.id)}>${library.bringBack}</button>
                ${entry.programme ? html`<button aria-label=${library.saveCopyOf(name)} @click=${() => this.save(entry)}>${app.save}</button>` : nothing}
                <button aria-label=${library.eraseOf(name)} @click=${() => (this.erasing = entry.id)}>${library.erase}</button>`
        }
      </div>
    </li>`;
  }

  private readonly rename = (event: Event): void => {
    if (!(event.target instanceof HTMLInputElement)) return;
    const title = event.target.value.trim();
    if (title === '') event.target.value = this.titleNow();
    else emitChange(this, { path: ['title'], value: title, label: library.renamed(this.titleNow(), title) });
  };

  private titleNow(): string {
    const { id } = this.keeper.state;
    const entry = this.listed?.ok === true ? this.listed.entries.find((one) => one.id === id) : undefined;
    return entry?.programme?.title ?? '';
  }

  private open(entry: Entry): void {
    const detail = { id: entry.id, name: nameOf(entry) };
    this.dispatchEvent(new CustomEvent('oo-open-entry', { detail, bubbles: true, composed: true }) satisfies OpenEntryEvent);
  }

  private save({ programme, text }: Entry): void {
    if (programme) saveAsFile(fileName(programme), text);
  }

  private async copy(entry: Entry): Promise<void> {
    this.tell(await this.library.copy(entry.id), library.copied(nameOf(entry)));
  }

  private async putAwayNow(entry: Entry): Promise<void> {
    this.tell(await this.library.remove(entry.id), library.removedNow(nameOf(entry)), entry.id);
    await this.updateComplete;
    this.renderRoot.querySelector<HTMLElement>('.said button')?.focus();
  }

  private readonly takeBack = (id: string) => async (): Promise<void> => {
    const entry = this.listed?.ok === true ? this.listed.entries.find((one) => one.id === id) : undefined;
    this.tell(await this.library.bringBack(id), library.broughtBack(entry ? nameOf(entry) : ''));
  };

  private async erase(entry: Entry): Promise<void> {
    this.erasing = null;
    this.tell(await this.library.erase(entry.id), library.erased(nameOf(entry)));
  }

  private tell(ok: boolean, words: string, back: string | null = null): void {
    this.done = ok ? { words, back } : { words: library.notDone, back: null };
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'oo-mine': Mine;
  }
  interface HTMLElementEventMap {
    'oo-open-entry': OpenEntryEvent;
  }
}
