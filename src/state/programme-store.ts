import type { Programme } from '../model/programme.ts';
import type { Problem } from '../model/problem.ts';
import { parseProgramme, type Reading } from '../model/read.ts';
import { NO_HISTORY, type History, type Step } from './history.ts';

/** What the screen shows of the document. */
export interface ProgrammeState extends History {
  /** As edited last; may have problems. */
  readonly programme: Programme;
  readonly problems: readonly Problem[];
  /** The last state that can run. */
  readonly runnable: Programme;
}

const MOST_STEPS = 200;

/** Any reading that holds a document, if only a draft. */
const documentOf = (reading: Reading): Programme | undefined => (reading.ok ? reading.programme : reading.draft);

/** The latest state behind us that can run. */
function lastRunnable({ undo }: History): Programme | undefined {
  for (const { document } of undo.toReversed()) {
    const reading = parseProgramme(document);
    if (reading.ok) return reading.programme;
  }
  return undefined;
}

/**
 * The document and its history. Documents are plain data and never changed in place: undo is a list of documents. Subscribers
 * are told after every change.
 */
export class ProgrammeStore {
  private readonly listeners = new Set<(state: ProgrammeState) => void>();
  private current: ProgrammeState;

  constructor(programme: Programme) {
    this.current = { programme, problems: [], runnable: programme, ...NO_HISTORY };
  }

  get state(): ProgrammeState {
    return this.current;
  }

  subscribe(listener: (state: ProgrammeState) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /**
   * Shows another document with a history of its own. Nothing of the former one is left: whoever calls has kept it.
   * @returns false if it holds no document at all
   */
  show(reading: Reading, history: History = NO_HISTORY): boolean {
    const programme = documentOf(reading);
    if (!programme) return false;
    if (!reading.ok) this.current = { ...this.current, runnable: lastRunnable(history) ?? this.current.runnable };
    this.put(programme, reading, history.undo, history.redo);
    return true;
  }

  /**
   * Takes an edited document. Returns the problems that keep it from being taken at all (a value outside its bounds); an empty
   * list means taken. A document that merely contradicts itself is taken, with problems, and the last runnable one stays.
   * @param field key of the field; repeated edits of the same field become one undo step
   * @param named the label as undo says it, given the document that the step begins from
   */
  edit(next: unknown, label: string, field = '', named: (before: unknown) => string = () => label): readonly Problem[] {
    const reading = parseProgramme(next);
    const programme = documentOf(reading);
    if (!programme) return reading.ok ? [] : reading.problems;
    const { undo, programme: before } = this.current;
    const last = undo.at(-1);
    const sameField = field !== '' && last?.field === field && this.current.redo.length === 0;
    const start = sameField ? last.document : before;
    const steps = [...(sameField ? undo.slice(0, -1) : undo), { document: start, label, named: named(start), field }];
    this.put(programme, reading, steps.slice(-MOST_STEPS), []);
    return [];
  }

  /** Ends the running edit of a field: the next edit of it is a step of its own. */
  settle(): void {
    const last = this.current.undo.at(-1);
    if (last && last.field !== '') this.current = { ...this.current, undo: [...this.current.undo.slice(0, -1), { ...last, field: '' }] };
  }

  undo(): void {
    const { undo, redo } = this.current;
    const step = undo.at(-1);
    if (step) this.goTo(step, (here) => ({ undo: undo.slice(0, -1), redo: [here, ...redo] }), { undo: [], redo });
  }

  redo(): void {
    const { undo, redo } = this.current;
    const step = redo[0];
    if (step) this.goTo(step, (here) => ({ undo: [...undo, here], redo: redo.slice(1) }), { undo, redo: [] });
  }

  /** @param cut the history without this step, for one out of storage that this version cannot read: nothing behind it can be reached either */
  private goTo({ document, label, named }: Step, history: (here: Step) => History, cut: History): void {
    const reading = parseProgramme(document);
    const programme = documentOf(reading);
    if (programme) {
      const { undo, redo } = history({ document: this.current.programme, label, named, field: '' });
      this.put(programme, reading, undo, redo);
      return;
    }
    this.current = { ...this.current, ...cut };
    this.tell();
  }

  private put(programme: Programme, reading: Reading, undo: readonly Step[], redo: readonly Step[]): void {
    this.current = {
      programme,
      problems: reading.ok ? reading.notes : reading.problems,
      // The same object, not the parsed twin: whoever compares the two must see that nothing waits.
      runnable: reading.ok ? programme : this.current.runnable,
      undo,
      redo,
    };
    this.tell();
  }

  private tell(): void {
    for (const listener of this.listeners) listener(this.current);
  }
}
