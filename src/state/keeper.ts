import { parseProgramme, readProgramme, type Reading } from '../model/read.ts';
import type { Device } from '../storage/device.ts';
import type { Journal } from '../storage/journal.ts';
import type { StoredProgramme } from '../storage/records.ts';
import { library, opening, type KeepingTrouble } from '../text/library.ts';
import { NO_HISTORY, packHistory, unpackHistory, type History } from './history.ts';
import { documentOf, entriesOf, retitled, type Keeping } from './keeping.ts';
import type { ProgrammeStore } from './programme-store.ts';
import { recover, type RecoveryTools } from './recovery.ts';

/** What the keeper is given by the page it works in. */
export interface KeeperTools extends RecoveryTools {
  /** ms since 1970 UTC */
  readonly now: () => number;
  readonly pause: (ms: number) => Promise<void>;
  /** Tells the other open pages that a programme was saved or put away. */
  readonly announce: (id: string) => void;
  /** Notes which programme this page is to show when it is loaded again. */
  readonly remember: (id: string) => void;
}

/** Between two saves while somebody types, ms. The first edit is saved at once. */
const PAUSE_MS = 250;

export type Opened = 'opened' | 'again' | 'looked' | 'held' | 'refused';

/**
 * Keeps the document on the screen on the device: saves every edit, follows what another page saves, and never overwrites what it has
 * not seen. Trouble is a state with a way out, never an exception.
 */
export class Keeper {
  private readonly listeners = new Set<(state: Keeping) => void>();
  private current: Keeping = { id: null, status: 'shown', savedAt: null, trouble: null, listVersion: 0 };
  /** Revision that the document on the screen grew from. */
  private base = 0;
  private dirty = false;
  private pumping: Promise<void> | null = null;
  private showing = false;
  /** Something that happened by itself and must be said. */
  private said = '';

  constructor(
    private readonly programmes: ProgrammeStore,
    readonly device: Device,
    private readonly journal: Journal,
    readonly tools: KeeperTools,
  ) {
    programmes.subscribe(() => {
      if (!this.showing) this.edited();
    });
    device.onLost(() => void this.check());
  }

  get state(): Keeping {
    return this.current;
  }

  /** The last thing that happened by itself, in words. */
  get notice(): string {
    return this.said;
  }

  subscribe(listener: (state: Keeping) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  private put(change: Partial<Keeping>): void {
    this.current = { ...this.current, ...change };
    for (const listener of this.listeners) listener(this.current);
  }

  private show(reading: Reading, history: History, id: string | null, base: number): void {
    this.showing = true;
    this.programmes.show(reading, history);
    this.showing = false;
    this.base = base;
    this.dirty = false;
    this.journal.clear();
    if (id !== null) this.tools.remember(id);
    this.put({ id, status: id === null ? 'shown' : 'kept', savedAt: null, trouble: null });
  }

  /**
   * Finds what was kept and shows it; shows nothing new on a first visit.
   * @param wanted the programme that this page showed last, if known
   * @returns what must be said about it, in words
   */
  async begin(wanted: string | null): Promise<readonly string[]> {
    const { device, tools } = this;
    const taken = await device.takeOver(tools.newId, tools.now());
    const { saved, copies, waiting } = await recover(device, this.journal, tools);
    const said = [
      ...(taken.ok && taken.value.length > 0 ? [opening.takenOver] : []),
      ...(copies.length > 0 ? [opening.recoveredAside] : []),
      ...(saved.length > 0 ? [opening.recovered] : []),
    ];
    if (waiting) {
      const { entry, trouble } = waiting;
      const reading = readProgramme(entry.text);
      if (documentOf(reading)) {
        this.show(reading, unpackHistory(documentOf(reading), entry.history) ?? NO_HISTORY, entry.id, entry.base);
        this.edited();
        this.journal.clear(entry.writer);
        this.put({ status: 'unsaved', trouble });
        return [...said, opening.unsavedRecovered];
      }
    }
    const list = await device.list();
    if (!list.ok) {
      this.put({ trouble: list.trouble });
      return said;
    }
    const entries = entriesOf(list.value).filter(({ removed }) => removed === null);
    const entry = entries.find(({ id, programme }) => id === wanted && programme) ?? entries.find(({ programme }) => programme);
    const stored = list.value.find(({ id }) => id === entry?.id)?.stored;
    if (entry && stored) this.showStored(entry.id, stored);
    const [newest] = entries;
    return newest && !newest.programme && !entry ? [...said, opening.unreadable] : said;
  }

  private showStored(id: string, { text, history, revision }: StoredProgramme): boolean {
    const reading = readProgramme(text);
    const programme = documentOf(reading);
    if (programme) this.show(reading, unpackHistory(programme, history) ?? NO_HISTORY, id, revision);
    return programme !== null;
  }

  /** Shows a document that is not kept until something is changed in it. */
  showOnly(reading: Reading): void {
    this.show(reading, NO_HISTORY, null, 0);
  }

  private edited(): void {
    const { tools } = this;
    const id = this.current.id ?? tools.newId();
    if (this.current.id === null) {
      this.base = 0;
      tools.remember(id);
    }
    this.dirty = true;
    this.said = '';
    const { trouble } = this.current;
    this.journal.write({ id, base: this.base, ...this.request() });
    // A trouble that a choice must end stays; the others may be over by now.
    this.put({ id, status: waitsForChoice(trouble) ? 'unsaved' : 'saving' });
    void this.pump();
  }

  private request() {
    const { programme, undo, redo } = this.programmes.state;
    return { writer: this.journal.writer, changed: this.tools.now(), text: JSON.stringify(programme), history: packHistory(programme, { undo, redo }) };
  }

  private pump(): Promise<void> {
    this.pumping ??= this.saveAll().finally(() => (this.pumping = null));
    return this.pumping;
  }

  private async saveAll(): Promise<void> {
    while (this.dirty && !waitsForChoice(this.current.trouble)) {
      const { id } = this.current;
      if (id === null) return;
      this.dirty = false;
      const outcome = await this.device.save(id, { base: this.base, ...this.request() });
      const trouble = !outcome.ok ? outcome.trouble : 'refused' in outcome.value ? outcome.value.refused : null;
      if (outcome.ok && 'revision' in outcome.value) this.base = outcome.value.revision;
      if (trouble) {
        this.dirty = true;
        this.put({ status: 'unsaved', trouble });
        return;
      }
      this.tools.announce(id);
      const { listVersion } = this.current;
      if (!this.stillDirty()) this.journal.clear();
      this.put({ status: this.stillDirty() ? 'saving' : 'kept', trouble: null, savedAt: this.tools.now(), listVersion: listVersion + 1 });
      if (this.stillDirty()) await this.tools.pause(PAUSE_MS);
    }
  }

  /** Edits may come while a save is on its way. */
  private stillDirty(): boolean {
    return this.dirty;
  }

  /** Saves what is not saved yet. False if that cannot be done now. */
  async flush(): Promise<boolean> {
    if (this.dirty || this.pumping) await this.pump();
    return !this.dirty;
  }

  /** Tries again after trouble with the device. */
  async retry(): Promise<void> {
    if (this.dirty) await this.pump();
    else await this.check();
  }

  /** Another page has said that it saved or put away a programme. */
  async heard(id: string): Promise<void> {
    if (id === this.current.id) await this.check();
    this.listChanged();
  }

  listChanged(): void {
    this.put({ listVersion: this.current.listVersion + 1 });
  }

  /** Looks whether the device still has what this page knows, and follows what another page saved. Own unsaved edits stay. */
  async check(): Promise<void> {
    const { id } = this.current;
    if (id === null || (this.base === 0 && this.dirty)) return;
    const loaded = await this.device.load(id);
    if (!loaded.ok || id !== this.current.id || this.pumping) return;
    const stored = loaded.value;
    if (!stored) this.lose('gone');
    else if (stored.removed !== null) this.lose('removed');
    else if (stored.revision !== this.base && stored.writer !== this.journal.writer) {
      if (this.dirty) this.put({ status: 'unsaved', trouble: 'conflict' });
      else if (this.showStored(id, stored)) this.say(opening.followed);
      else this.lose('conflict');
    } else if (this.current.trouble) {
      this.put({ trouble: null, status: this.dirty ? 'saving' : 'kept' });
      await this.pump();
    }
  }

  private lose(trouble: KeepingTrouble): void {
    this.dirty = true;
    this.put({ status: 'unsaved', trouble });
  }

  say(words: string): void {
    this.said = words;
    this.put({});
  }

  /**
   * Opens a document as a programme of its own, or one that is there already to the letter.
   * @param how `keep`: it is kept from now on; `look`: only once something is changed in it
   * @param force also if what stands here cannot be saved
   */
  async open(document: unknown, how: 'keep' | 'look', force = false): Promise<Opened> {
    const reading = parseProgramme(document);
    const programme = documentOf(reading);
    if (!programme) return 'refused';
    if (!(await this.flush()) && !force) return 'held';
    const text = JSON.stringify(programme);
    const list = how === 'keep' ? await this.device.list() : null;
    const same = list?.ok === true ? list.value.find(({ stored }) => stored.text === text && stored.removed === null) : undefined;
    if (same && this.showStored(same.id, same.stored)) return 'again';
    this.showOnly(reading);
    if (how === 'keep') this.edited();
    return how === 'keep' ? 'opened' : 'looked';
  }

  /** Opens a programme of the list. */
  async openEntry(id: string, force = false): Promise<Opened> {
    if (id === this.current.id) return 'opened';
    if (!(await this.flush()) && !force) return 'held';
    const loaded = await this.device.load(id);
    return loaded.ok && loaded.value && this.showStored(id, loaded.value) ? 'opened' : 'refused';
  }

  /** In a conflict: the other page's document, with this page's as the step that undo brings back. */
  async takeTheirs(): Promise<void> {
    const { id } = this.current;
    const loaded = id === null ? null : await this.device.load(id);
    if (id === null || !loaded?.ok || !loaded.value) return this.check();
    const reading = readProgramme(loaded.value.text);
    if (!documentOf(reading)) return;
    const { programme, undo } = this.programmes.state;
    this.show(
      reading,
      { undo: [...undo, { document: programme, label: opening.theirs, named: opening.theirs, field: '' }], redo: [] },
      id,
      loaded.value.revision,
    );
    this.edited();
  }

  /** In a conflict: this page's document beside the other one. */
  keepMine(): void {
    const { programme, undo, redo } = this.programmes.state;
    this.show(parseProgramme(retitled(programme, library.mineSuffix)), { undo, redo }, null, 0);
    this.edited();
  }

  /** After the device has lost it, or it was put away elsewhere: what is on the screen goes back under its name. */
  async keepAgain(): Promise<void> {
    const { id, trouble } = this.current;
    if (id === null) return;
    if (trouble === 'removed') {
      const done = await this.device.setRemoved(id, null);
      if (!done.ok) {
        this.put({ trouble: done.trouble });
        return;
      }
      this.tools.announce(id);
      return this.check();
    }
    this.base = 0;
    this.dirty = true;
    this.put({ trouble: null, status: 'saving' });
    await this.pump();
  }
}

/** Troubles that only a person can end: saving again would overwrite or bring back something. */
function waitsForChoice(trouble: KeepingTrouble | null): boolean {
  return trouble === 'conflict' || trouble === 'gone' || trouble === 'removed';
}
