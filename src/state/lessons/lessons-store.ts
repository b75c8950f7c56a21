import type { Programme } from '../../model/programme.ts';
import { GivenUp } from '../../workers/runner.ts';
import type { Learner } from './learner.ts';
import { lessonKey } from './lesson-key.ts';
import type { Lessons } from './lessons.ts';

export interface LessonsState {
  /** The latest lessons; newer ones may be on the way. */
  readonly lessons: Lessons | null;
  /** The document they were learned from. */
  readonly of: Programme | null;
  /** They belong to an earlier state of the document. */
  readonly stale: boolean;
  readonly learning: boolean;
  readonly failure: string | null;
}

/** Whoever types in the log is not done yet: learning waits so long after an edit, ms. */
const PAUSE = 500;

/**
 * What the season log teaches, learned anew after a pause whenever the document changes while somebody looks. Lessons of an earlier state
 * stay, marked as such, until new ones come.
 */
export class LessonsStore {
  private readonly listeners = new Set<(state: LessonsState) => void>();
  private current: LessonsState = { lessons: null, of: null, stale: false, learning: false, failure: null };
  private lookers = 0;
  /** What the lessons that are there were learned from. */
  private learned: string | null = null;
  private work: { readonly key: string; readonly end: AbortController } | null = null;

  constructor(
    private programme: Programme,
    private readonly learner: Pick<Learner, 'learn'>,
    private readonly pause: (ms: number) => Promise<void>,
  ) {}

  get state(): LessonsState {
    return this.current;
  }

  subscribe(listener: (state: LessonsState) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** Somebody looks at the lessons from now on. Returns the end of it. */
  look(): () => void {
    this.lookers += 1;
    if (this.lookers === 1) this.follow(0);
    let looks = true;
    return () => {
      if (!looks) return;
      looks = false;
      this.lookers -= 1;
      if (this.lookers === 0) this.stop();
    };
  }

  update(programme: Programme): void {
    if (programme === this.programme) return;
    this.programme = programme;
    if (this.lookers > 0) this.follow(PAUSE);
  }

  /** Tries again what failed. */
  retry(): void {
    this.put({ failure: null });
    this.follow(0);
  }

  private stop(): void {
    this.work?.end.abort();
    this.work = null;
    this.put({ learning: false });
  }

  private follow(pause: number): void {
    const { programme } = this;
    const key = lessonKey(programme);
    if (key === this.learned) {
      // As it was, by undo or by an edit that the lessons do not hang on.
      this.stop();
      this.put({ of: programme, stale: false, failure: null });
      return;
    }
    if (this.work?.key === key) return;
    this.work?.end.abort();
    const work = { key, end: new AbortController() };
    this.work = work;
    this.put({ learning: true, stale: this.current.lessons !== null, failure: null });
    void this.learn(programme, work, pause);
  }

  private async learn(programme: Programme, work: NonNullable<LessonsStore['work']>, pause: number): Promise<void> {
    try {
      if (pause > 0) await this.pause(pause);
      if (work.end.signal.aborted) return;
      const lessons = await this.learner.learn(programme, work.end.signal);
      if (this.work !== work) return;
      this.learned = work.key;
      this.work = null;
      this.put({ lessons, of: programme, stale: false, learning: false });
    } catch (error) {
      if (this.work !== work || error instanceof GivenUp) return;
      this.work = null;
      this.put({ learning: false, failure: error instanceof Error ? error.message : String(error) });
    }
  }

  private put(change: Partial<LessonsState>): void {
    this.current = { ...this.current, ...change };
    for (const listener of this.listeners) listener(this.current);
  }
}
