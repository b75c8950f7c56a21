import example from '../../sims/examples/red-pear.json';
import { setAt } from '../../src/model/edits.ts';
import { parseProgramme } from '../../src/model/read.ts';
import { Keeper } from '../../src/state/keeper.ts';
import { Library } from '../../src/state/library.ts';
import { ProgrammeStore } from '../../src/state/programme-store.ts';
import { Database } from '../../src/storage/database.ts';
import { Device } from '../../src/storage/device.ts';
import { Journal } from '../../src/storage/journal.ts';
import type { MemoryShelf } from '../storage/stubs.ts';

/** A browser of several open pages over one device; the last programme shown is remembered for all of them. */
export class Browser {
  private pages = 0;
  private names = 0;
  private clock = 1_000_000;
  private readonly open = new Map<string, Keeper>();
  remembered: string | null = null;
  /** False: pages do not hear of each other, as when one was asleep. */
  hears = true;

  constructor(
    readonly factory: IDBFactory,
    readonly shelf: MemoryShelf,
  ) {}

  async page() {
    const shipped = parseProgramme(example);
    if (!shipped.ok) throw new Error('The example cannot be read.');
    const writer = `page${String((this.pages += 1))}`;
    const programmes = new ProgrammeStore(shipped.programme);
    const keeper = new Keeper(programmes, new Device(new Database(() => this.factory, 500)), new Journal(() => this.shelf, writer), {
      now: () => (this.clock += 1000),
      newId: () => `id${String((this.names += 1))}`,
      pause: () => Promise.resolve(),
      alive: (name) => Promise.resolve(this.open.has(name)),
      announce: (id) => {
        if (this.hears) for (const [name, other] of this.open) if (name !== writer) void other.heard(id);
      },
      remember: (id) => {
        this.remembered = id;
      },
    });
    const said = await keeper.begin(this.remembered);
    this.open.set(writer, keeper);
    const startYear = (year: number) => programmes.edit(setAt(programmes.state.programme, ['startYear'], year), `first spring ${String(year)}`);
    const die = () => this.open.delete(writer);
    return { programmes, keeper, library: new Library(keeper, shipped), said, startYear, die, year: () => programmes.state.programme.startYear };
  }
}
