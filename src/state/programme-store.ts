import type { Programme } from '../model/programme.ts';
import type { Problem } from '../model/problem.ts';
import { parseProgramme } from '../model/read.ts';

/** One state of the document, and the edit that led to it in words. */
export interface Step {
  readonly programme: Programme;
  readonly label: string;
  /** Edits of one field in one go carry the same key and are one step. */
  readonly field: string;
}

/** What the screen shows of the document. */
export interface ProgrammeState {
  /** As edited last; may have problems. */
  readonly programme: Programme;
  readonly problems: readonly Problem[];
  /** The last state that can run. */
  readonly runnable: Programme;
  readonly undo: readonly Step[];
  readonly redo: readonly Step[];
}

const MOST_STEPS = 200;

/**
 * The document and its history. Documents are plain data and never changed in place: undo is a list of documents. Subscribers
 * are told after every change.
 */
export class ProgrammeStore {
  private readonly listeners = new Set<(state: ProgrammeState) => void>();
  private current: ProgrammeState;

  constructor(programme: Programme, problems: readonly Problem[] = [], fallback: Programme = programme) {
    this.current = { programme, problems, runnable: problems.some(({ stops }) => stops) ? fallback : programme, undo: [], redo: [] };
  }

  get state(): ProgrammeState {
    return this.current;
  }

  subscribe(listener: (state: ProgrammeState) => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /**
   * Takes an edited document. Returns the problems that keep it from being taken at all (a value outside its bounds); an empty
   * list means taken. A document that merely contradicts itself is taken, with problems, and the last runnable one stays.
   * @param field key of the field; repeated edits of the same field become one undo step
   */
  edit(next: unknown, label: string, field = ''): readonly Problem[] {
    const reading = parseProgramme(next);
    const programme = reading.ok ? reading.programme : reading.draft;
    if (!programme) return reading.ok ? [] : reading.problems;
    const { undo, programme: before } = this.current;
    const last = undo.at(-1);
    const sameField = field !== '' && last?.field === field && this.current.redo.length === 0;
    const steps = sameField ? [...undo.slice(0, -1), { ...last, label }] : [...undo, { programme: before, label, field }];
    this.put(programme, reading, steps.slice(-MOST_STEPS), []);
    return [];
  }

  /** Ends the running edit of a field: the next edit of it is a step of its own. */
  settle(): void {
    const last = this.current.undo.at(-1);
    if (last && last.field !== '') this.current = { ...this.current, undo: [...this.current.undo.slice(0, -1), { ...last, field: '' }] };
  }

  undo(): void {
    const { undo, redo, programme } = this.current;
    const step = undo.at(-1);
    if (step) this.put(step.programme, parseProgramme(step.programme), undo.slice(0, -1), [{ programme, label: step.label, field: '' }, ...redo]);
  }

  redo(): void {
    const { undo, redo, programme } = this.current;
    const step = redo[0];
    if (step) this.put(step.programme, parseProgramme(step.programme), [...undo, { programme, label: step.label, field: '' }], redo.slice(1));
  }

  private put(programme: Programme, reading: ReturnType<typeof parseProgramme>, undo: readonly Step[], redo: readonly Step[]): void {
    this.current = {
      programme,
      problems: reading.ok ? reading.notes : reading.problems,
      // The same object, not the parsed twin: whoever compares the two must see that nothing waits.
      runnable: reading.ok ? programme : this.current.runnable,
      undo,
      redo,
    };
    for (const listener of this.listeners) listener(this.current);
  }
}
