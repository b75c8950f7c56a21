import { poolFutures } from '../decisions/pool.ts';
import { frameOf } from '../engine/frame.ts';
import { ENGINE } from '../engine/version.ts';
import type { Programme } from '../model/programme.ts';
import { Columns } from '../results/columns.ts';
import type { Outlook } from '../results/outlook.ts';
import { forecastFrom } from '../seasonlog/as-of.ts';
import { compareAll, planOutlook } from '../statistics/outlook.ts';
import { GivenUp, type Runner } from '../workers/runner.ts';
import { planKeys } from './plan-keys.ts';

/** Enough to word a chance in tenths; the first picture comes from fewer. */
const FUTURES = 2000;
const FIRST_LOOK = 300;

export interface TodayState {
  /** First spring forecast of `now`. */
  readonly year: number | null;
  readonly now: Outlook | null;
  /** Forecast from the first spring of the programme, with its figures as they are now. */
  readonly first: Outlook | null;
  readonly done: number;
  readonly wanted: number;
  /** The figures belong to an earlier state of the document. */
  readonly stale: boolean;
  readonly failure: string | null;
}

/**
 * Two forecasts of one document, side by side: from what stands, and the first one. They run behind whatever the page itself still needs,
 * on the same futures; a later question drops an earlier one.
 */
export class TodayStore {
  private readonly listeners = new Set<(state: TodayState) => void>();
  private ended: AbortController | null = null;
  private key = '';
  /** Asked last: the same question need not even be compared. */
  private asked: { readonly programme: Programme; readonly year: number } | null = null;
  /** Spring chosen on the page while the document names none. */
  chosen: number | null = null;
  private current: TodayState = { year: null, now: null, first: null, done: 0, wanted: 0, stale: false, failure: null };

  constructor(private readonly runner: Runner) {}

  get state(): TodayState {
    return this.current;
  }

  subscribe(listener: (state: TodayState) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Asks for both forecasts of a document that can run. Nothing happens where it has them already. */
  async ask(programme: Programme, year: number): Promise<void> {
    if (this.asked?.programme === programme && this.asked.year === year) return;
    this.asked = { programme, year };
    const now = forecastFrom(programme, year);
    const first = forecastFrom(programme, null);
    const key = [
      ...planKeys(now).values(),
      ...planKeys(first).values(),
      String(year),
      JSON.stringify(programme.plans.map(({ name, mark }) => [name, mark])),
    ].join('\n');
    if (key === this.key) return;
    this.key = key;
    this.ended?.abort();
    const ended = new AbortController();
    this.ended = ended;
    const wanted = Math.min(programme.runs, FUTURES);
    this.publish({ wanted, done: 0, stale: this.current.now !== null, failure: null });
    const futures = poolFutures(this.runner, ended.signal);
    const plans = programme.plans.map((_, p) => p);
    const both = (columns: readonly (readonly Columns[])[], runs: number) =>
      this.publish({ year, now: outlook(now, columns[0] ?? [], runs), first: outlook(first, columns[1] ?? [], runs), done: runs, stale: false });
    try {
      const run = (from: number, runs: number) => Promise.all([now, first].map((one) => futures.run(one, plans, from, runs)));
      const look = Math.min(FIRST_LOOK, wanted);
      const begin = await run(0, look);
      if (this.ended !== ended) return;
      both(begin, look);
      if (look === wanted) return;
      const rest = await run(look, wanted - look);
      if (this.ended !== ended) return;
      both(
        begin.map((columns, i) => columns.map((part, p) => joined(part, rest[i]?.[p], look, wanted))),
        wanted,
      );
    } catch (error) {
      if (error instanceof GivenUp || this.ended !== ended) return;
      // The same document is not tried again by itself: it would fail the same way.
      this.key = '';
      this.publish({ failure: error instanceof Error ? error.message : String(error) });
    }
  }

  /** Chooses the spring to forecast from, for as long as the page is open. */
  choose(year: number): void {
    this.chosen = year;
    this.publish({});
  }

  /** Nobody looks any more: what waits is dropped, what has come stays. */
  leave(): void {
    if (this.current.done === this.current.wanted) return;
    this.ended?.abort();
    this.ended = null;
    this.key = '';
    this.asked = null;
  }

  private publish(change: Partial<TodayState>): void {
    this.current = { ...this.current, ...change };
    for (const listener of this.listeners) listener(this.current);
  }
}

function joined(begin: Columns, rest: Columns | undefined, at: number, runs: number): Columns {
  if (!rest) throw new RangeError('A thread left out a plan.');
  const whole = new Columns(begin.shape, runs);
  whole.place(begin, 0);
  whole.place(rest, at);
  return whole;
}

function outlook(programme: Programme, columns: readonly Columns[], runs: number): Outlook {
  const frame = frameOf(programme);
  return {
    engine: ENGINE,
    word: programme.shuffleWord,
    runs,
    programme: '',
    startYear: programme.startYear,
    lastYear: programme.lastYear,
    plans: columns.map((part, p) => planOutlook(frame, p, part, null)),
    comparisons: compareAll(frame, columns),
  };
}
