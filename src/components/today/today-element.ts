import type { PropertyValues } from 'lit';
import type { Programme } from '../../model/programme.ts';
import { firstUnnoted } from '../../seasonlog/as-of.ts';
import { standsToday } from '../../seasonlog/today.ts';
import type { Today } from '../../seasonlog/today-types.ts';
import type { RunsStore } from '../../state/runs-store.ts';
import type { TodayState } from '../../state/today-store.ts';
import { StoreController } from '../store-controller.ts';
import { StoreElement } from '../store-element.ts';

/** The first spring to forecast that the log proposes, within the years of the programme. */
export function proposed({ startYear, lastYear, log }: Programme): number {
  return Math.min(lastYear, Math.max(startYear, firstUnnoted(log.batches) ?? startYear));
}

let stands: { readonly programme: Programme; readonly today: Today } | null = null;
/** What stands, reckoned once for a document and a spring. */
function standing(programme: Programme, year: number): Today {
  if (stands?.programme !== programme || stands.today.year !== year) stands = { programme, today: standsToday(programme, year) };
  return stands.today;
}

/** Parts of a page that show the forecast from today: they ask for it while they are on the page. */
export abstract class TodayElement extends StoreElement {
  private static shown = 0;

  constructor() {
    super();
    // The store comes by context, after this.
    new StoreController<TodayState>(this, () => (this.runs as RunsStore | undefined)?.today);
  }

  override connectedCallback(): void {
    super.connectedCallback();
    TodayElement.shown += 1;
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    TodayElement.shown -= 1;
    if (TodayElement.shown === 0) this.runs.today.leave();
  }

  /** First spring to forecast: the document's, else the one the store was last asked for by hand, else what the log proposes. */
  protected get year(): number {
    const { runnable } = this.programmes.state;
    const { startYear, lastYear, log } = runnable;
    return log.forecastFrom ?? Math.min(lastYear, Math.max(startYear, this.runs.today.chosen ?? proposed(runnable)));
  }

  protected standing(): Today {
    return standing(this.programmes.state.runnable, this.year);
  }

  /** The figures at hand belong to another document or another spring. */
  protected get overtaken(): boolean {
    const { programme, runnable } = this.programmes.state;
    const { stale, year } = this.runs.today.state;
    return stale || runnable !== programme || (year !== null && year !== this.year);
  }

  protected override updated(_changed: PropertyValues): void {
    const { runnable } = this.programmes.state;
    if (runnable.log.batches.length > 0) void this.runs.today.ask(runnable, this.year);
  }
}
