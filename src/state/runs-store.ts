import { frameOf } from '../engine/frame.ts';
import { ENGINE } from '../engine/version.ts';
import type { Programme } from '../model/programme.ts';
import type { Columns } from '../results/columns.ts';
import type { Diary } from '../results/diary.ts';
import type { Frame } from '../results/frame.ts';
import type { Comparison, PlanOutlook } from '../results/outlook.ts';
import { compareAll, planOutlook, type FactSets } from '../statistics/outlook.ts';
import { analyse } from '../workers/analysis.ts';
import { GivenUp, type Runner } from '../workers/runner.ts';
import { planKeys } from './plan-keys.ts';
import { TodayStore } from './today-store.ts';

/** Results of one plan, as far as they have come. */
interface PlanRuns {
  readonly key: string;
  readonly columns: Columns;
  readonly factSets: FactSets | null;
  readonly outlook: PlanOutlook;
}

export interface RunsState {
  /** In the order of the programme's plans; a plan without any result yet is left out. */
  readonly plans: readonly PlanOutlook[];
  readonly columns: readonly Columns[];
  readonly comparisons: readonly Comparison[];
  /** Ids of plans whose results belong to an earlier state of the document. */
  readonly stale: ReadonlySet<string>;
  /** Fewest futures of any plan so far, and how many are wanted. */
  readonly done: number;
  readonly wanted: number;
  /** Futures, then the second pass over the guesses, then rest. */
  readonly phase: 'futures' | 'guesses' | 'rest';
  readonly failure: string | null;
}

/** Lets the page breathe between two pieces of work. */
const breathe = (ms = 0) => new Promise<void>((resolve) => setTimeout(resolve, ms));
/** Between two pictures of one analysis, ms: sharper is not worth a page that is always redrawing. */
const PICTURE_PAUSE = 300;

/**
 * Keeps the results in step with the document: only plans that changed are run again, the latest document wins, and results
 * stream in. Holds its own lifetime: results of an earlier state stay, marked as such, until better ones come.
 */
export class RunsStore {
  private readonly listeners = new Set<(state: RunsState) => void>();
  private readonly kept = new Map<string, PlanRuns>();
  /** Version of the engine that the figures come from. */
  readonly engine = ENGINE;
  private turn = 0;
  private programme: Programme | null = null;
  private frame: Frame | null = null;
  private keys = new Map<string, string>();
  private current: RunsState = { plans: [], columns: [], comparisons: [], stale: new Set(), done: 0, wanted: 0, phase: 'rest', failure: null };

  /** The forecast from what stands beside the first one, on the same threads. */
  readonly today: TodayStore;

  constructor(private readonly runner: Runner) {
    this.today = new TodayStore(runner);
  }

  get state(): RunsState {
    return this.current;
  }

  subscribe(listener: (state: RunsState) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** One future of a plan, told year by year; null while the plan’s results belong to an earlier state. */
  async diary(plan: string, run: number): Promise<Diary | null> {
    const at = this.frame?.plans.findIndex(({ id }) => id === plan) ?? -1;
    if (at < 0 || this.current.stale.has(plan)) return null;
    try {
      return await this.runner.diary(at, run);
    } catch (error) {
      if (error instanceof GivenUp) return null;
      throw error;
    }
  }

  /** Runs what is needed for this document. */
  async update(programme: Programme): Promise<void> {
    if (programme === this.programme) return;
    this.turn += 1;
    const { turn } = this;
    this.programme = programme;
    this.frame = frameOf(programme);
    this.keys = planKeys(programme);
    for (const id of this.kept.keys()) if (!this.keys.has(id)) this.kept.delete(id);
    this.rename();
    const due = programme.plans.flatMap((plan, p) => {
      const kept = this.kept.get(plan.id);
      return kept?.key === this.keys.get(plan.id) && kept?.factSets !== null && kept !== undefined ? [] : [p];
    });
    this.publish(due.length > 0 ? 'futures' : 'rest', null);
    if (due.length === 0) return;
    try {
      await this.run(programme, due, turn);
    } catch (error) {
      if (!(error instanceof GivenUp) && turn === this.turn) this.publish('rest', error instanceof Error ? error.message : String(error));
    }
  }

  private async run(programme: Programme, due: readonly number[], turn: number): Promise<void> {
    let phase: RunsState['phase'] = 'futures';
    let busy = false;
    let waiting: (() => readonly Columns[]) | null = null;
    const sharpen = async (columns: () => readonly Columns[]) => {
      waiting = columns;
      if (busy) return;
      busy = true;
      while (waiting !== null && turn === this.turn) {
        const next: () => readonly Columns[] = waiting;
        waiting = null;
        await this.take(due, next(), null, turn);
        if (turn === this.turn) this.publish(phase, null);
        await breathe(PICTURE_PAUSE);
      }
      busy = false;
    };
    const result = await analyse(this.runner, programme, due, { runs: programme.runs }, ({ runs, columns }) => {
      if (turn !== this.turn) return;
      if (runs === programme.runs) {
        phase = 'guesses';
        this.publish(phase, null);
      }
      void sharpen(columns);
    });
    waiting = null;
    if (turn !== this.turn) return;
    await this.take(due, result.columns, result.factSets, turn);
    if (turn === this.turn) this.publish('rest', null);
  }

  /** Summarises plan by plan, with a breath between, so that no task gets long. */
  private async take(due: readonly number[], columns: readonly Columns[], factSets: readonly (FactSets | null)[] | null, turn: number): Promise<void> {
    for (const [i, p] of due.entries()) {
      const { frame } = this;
      const id = frame?.plans[p]?.id;
      const column = columns[i];
      if (turn !== this.turn || !frame || id === undefined || !column) return;
      const sets = factSets?.[i] ?? null;
      this.kept.set(id, { key: this.keys.get(id) ?? '', columns: column, factSets: sets, outlook: planOutlook(frame, p, column, sets) });
      await breathe();
    }
  }

  /** Names may have changed without anything to run. */
  private rename(): void {
    this.frame?.plans.forEach((plan) => {
      const kept = this.kept.get(plan.id);
      if (!kept) return;
      const generations = kept.outlook.generations.map((generation, g) => ({ ...generation, name: plan.generations[g]?.name ?? generation.name }));
      this.kept.set(plan.id, { ...kept, outlook: { ...kept.outlook, name: plan.name, mark: plan.mark, generations } });
    });
  }

  private publish(phase: RunsState['phase'], failure: string | null): void {
    const { frame, keys } = this;
    if (!frame) return;
    const ready = frame.plans.flatMap((plan) => {
      const kept = this.kept.get(plan.id);
      return kept ? [{ id: plan.id, kept }] : [];
    });
    const stale = new Set(ready.filter(({ id, kept }) => kept.key !== keys.get(id)).map(({ id }) => id));
    const comparable = ready.length === frame.plans.length && stale.size === 0;
    const fresh = frame.plans
      .map(({ id }) => this.kept.get(id))
      .map((kept, p) => (kept?.key === keys.get(frame.plans[p]?.id ?? '') ? (kept?.columns.runs ?? 0) : 0));
    this.current = {
      plans: ready.map(({ kept }) => kept.outlook),
      columns: ready.map(({ kept }) => kept.columns),
      comparisons: comparable
        ? compareAll(
            frame,
            ready.map(({ kept }) => kept.columns),
          )
        : this.current.comparisons,
      stale,
      done: Math.min(...fresh),
      wanted: this.programme?.runs ?? 0,
      phase,
      failure,
    };
    for (const listener of this.listeners) listener(this.current);
  }
}
