import { readProgramme, type Reading } from '../model/read.ts';
import type { DeviceTrouble } from '../storage/trouble.ts';
import { library } from '../text/library.ts';
import type { Keeper } from './keeper.ts';
import { documentOf, entriesOf, retitled, type Entry } from './keeping.ts';

export type List = { readonly ok: true; readonly entries: readonly Entry[] } | { readonly ok: false; readonly trouble: DeviceTrouble };

/** The programmes of this device as a list, and what can be done with one that need not be open. */
export class Library {
  /**
   * @param example what is shown when nothing of the person's own is left
   * @param promised whether the device promised to keep what is stored when it runs out of room
   */
  constructor(
    private readonly keeper: Keeper,
    private readonly example: Reading,
    readonly promised: () => Promise<boolean> = () => Promise.resolve(false),
  ) {}

  async list(): Promise<List> {
    await this.keeper.flush();
    const list = await this.keeper.device.list();
    return list.ok ? { ok: true, entries: entriesOf(list.value) } : list;
  }

  /** A copy of the document under a title of its own, without the steps of the first. */
  async copy(id: string): Promise<boolean> {
    const { device, tools } = this.keeper;
    await this.keeper.flush();
    const loaded = await device.load(id);
    const programme = loaded.ok && loaded.value ? documentOf(readProgramme(loaded.value.text)) : null;
    if (!programme) return false;
    const newId = tools.newId();
    const text = JSON.stringify(retitled(programme, library.copySuffix));
    return this.done(newId, await device.save(newId, { base: 0, writer: '', changed: tools.now(), text, history: '' }));
  }

  /** Puts a programme away; the open one makes room for the next. It stays on the device. False if that could not be done. */
  async remove(id: string): Promise<boolean> {
    const { device, tools } = this.keeper;
    const isOpen = this.keeper.state.id === id;
    if (isOpen && !(await this.keeper.flush())) return false;
    if (!this.done(id, await device.setRemoved(id, tools.now()))) return false;
    if (isOpen) await this.openNext(id);
    return true;
  }

  private async openNext(but: string): Promise<void> {
    const list = await this.list();
    const next = list.ok ? list.entries.find(({ id, removed, programme }) => id !== but && removed === null && programme !== null) : undefined;
    if (next && (await this.keeper.openEntry(next.id, true)) === 'opened') return;
    this.keeper.showOnly(this.example);
  }

  async bringBack(id: string): Promise<boolean> {
    return this.done(id, await this.keeper.device.setRemoved(id, null));
  }

  /** Takes it off the device. There is no way back. */
  async erase(id: string): Promise<boolean> {
    return this.done(id, await this.keeper.device.erase(id));
  }

  private done(id: string, { ok }: { readonly ok: boolean }): boolean {
    if (ok) this.keeper.tools.announce(id);
    this.keeper.listChanged();
    return ok;
  }
}
