import type { Asking } from '../decisions/asking/asking.ts';
import { looksAtAllPlans } from '../decisions/of-all-plans.ts';
import type { Answer, AskOptions, NoAnswer } from '../decisions/question.ts';
import type { Programme } from '../model/programme.ts';
import { GivenUp } from '../workers/runner.ts';
import { planKeys } from './plan-keys.ts';

/** How far a question is. */
export interface Asked {
  /** The latest answer; sharper ones may be on the way. */
  readonly answer: Answer | NoAnswer | null;
  /** The document that the answer is about. */
  readonly of: Programme | null;
  /** The answer belongs to an earlier state of the document, or to another way of asking. */
  readonly stale: boolean;
  /** Being thought about, or waiting for its turn. */
  readonly asking: boolean;
  readonly failure: string | null;
}

export const NEVER_ASKED: Asked = { answer: null, of: null, stale: false, asking: false, failure: null };

interface Entry {
  options: AskOptions;
  /** Asked anew by itself when the document changes. */
  again: boolean;
  /** What the answer depends on: of the answer that is there, and of the one that is wanted. */
  answered: string | null;
  /** The answer that is there is as sharp as it gets. */
  whole: boolean;
  wanted: string;
  answer: Answer | NoAnswer | null;
  of: Programme | null;
  failure: string | null;
}

const isThere = ({ whole, answered, wanted }: Entry): boolean => whole && answered === wanted;

/**
 * Questions asked of the document, one after another on a thread of their own, in the order in which they were first asked. Answers to an
 * earlier state of the document stay, marked as such, until better ones come.
 */
export class AnswersStore {
  private readonly listeners = new Set<(state: ReadonlyMap<string, Asked>) => void>();
  private readonly entries = new Map<string, Entry>();
  private queue: string[] = [];
  private current: { readonly id: string; readonly key: string; readonly end: AbortController } | null = null;
  private keys: ReadonlyMap<string, string>;
  private shown: ReadonlyMap<string, Asked> = new Map();

  constructor(
    private programme: Programme,
    private readonly asking: Pick<Asking, 'ask'>,
  ) {
    this.keys = planKeys(programme);
  }

  get state(): ReadonlyMap<string, Asked> {
    return this.shown;
  }

  subscribe(listener: (state: ReadonlyMap<string, Asked>) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /**
   * Asks a question, unless its answer is there or on its way.
   * @param id of a question
   * @param again ask anew by itself whenever the document changes
   */
  ask(id: string, options: AskOptions, again: boolean): void {
    const wanted = this.keyOf(id, options);
    const before = this.entries.get(id);
    if (before?.wanted === wanted && (isThere(before) || this.isDue(id, wanted) || before.failure !== null)) return;
    this.entries.set(id, { answered: null, whole: false, answer: null, of: null, ...before, options, again, wanted, failure: null });
    this.put(id);
    this.tell();
  }

  /** Says how a question that was asked would be asked now: an answer to other wording is overtaken, and asked anew only when somebody wants it. */
  reword(id: string, options: AskOptions): void {
    const entry = this.entries.get(id);
    const wanted = this.keyOf(id, options);
    if (!entry || entry.wanted === wanted) return;
    this.drop(id);
    Object.assign(entry, { options, wanted, failure: null });
    this.next();
    this.tell();
  }

  /** Tries again what failed. */
  retry(id: string): void {
    const entry = this.entries.get(id);
    if (!entry) return;
    entry.failure = null;
    this.put(id);
    this.tell();
  }

  /** Stops asking; an answer that is there stays. */
  leave(id: string): void {
    const entry = this.entries.get(id);
    if (!entry) return;
    entry.again = false;
    this.drop(id);
    this.next();
    this.tell();
  }

  /** Takes a changed document: answers that depended on what has changed are asked anew, or marked as overtaken. */
  update(programme: Programme): void {
    if (programme === this.programme) return;
    this.programme = programme;
    this.keys = planKeys(programme);
    for (const [id, entry] of this.entries) {
      const wanted = this.keyOf(id, entry.options);
      if (wanted === entry.wanted) continue;
      const underWay = this.current?.id === id || this.queue.includes(id);
      this.drop(id);
      entry.wanted = wanted;
      entry.failure = null;
      // Back to what was answered already, as by undo: nothing to ask.
      if (!isThere(entry) && (entry.again || underWay)) this.queue.push(id);
    }
    this.next();
    this.tell();
  }

  private keyOf(id: string, options: AskOptions): string {
    const about = looksAtAllPlans(id) ? [...this.keys.values()].join(' ') : (this.keys.get(options.plan) ?? '');
    return `${JSON.stringify(options)} ${about}`;
  }

  private isDue(id: string, key: string): boolean {
    return this.current?.id === id ? this.current.key === key : this.queue.includes(id);
  }

  /** Puts a question at the end of the queue; what is thought about for its former wording is ended. */
  private put(id: string): void {
    this.drop(id);
    this.queue.push(id);
    this.next();
  }

  private drop(id: string): void {
    this.queue = this.queue.filter((other) => other !== id);
    if (this.current?.id !== id) return;
    this.current.end.abort();
    this.current = null;
  }

  private next(): void {
    if (this.current) return;
    const id = this.queue.shift();
    const entry = id === undefined ? undefined : this.entries.get(id);
    if (id === undefined || !entry) return;
    const end = new AbortController();
    const key = entry.wanted;
    const of = this.programme;
    this.current = { id, key, end };
    const take = (answer: Answer | NoAnswer, whole: boolean) => {
      if (end.signal.aborted) return;
      Object.assign(entry, { answer, answered: key, whole, of });
      this.tell();
    };
    this.asking
      .ask(id, of, entry.options, (answer) => take(answer, false), end.signal)
      .then(
        (answer) => take(answer, true),
        (error: unknown) => {
          if (!end.signal.aborted && !(error instanceof GivenUp)) entry.failure = error instanceof Error ? error.message : String(error);
        },
      )
      .finally(() => {
        if (this.current?.end !== end) return;
        this.current = null;
        this.next();
        this.tell();
      });
  }

  private tell(): void {
    this.shown = new Map(
      [...this.entries].map(([id, { answer, of, answered, wanted, failure }]) => [
        id,
        { answer, of, stale: answer !== null && answered !== wanted, asking: this.current?.id === id || this.queue.includes(id), failure },
      ]),
    );
    for (const listener of this.listeners) listener(this.shown);
  }
}
