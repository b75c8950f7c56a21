import type { Understood } from '../../model/typed-estimate.ts';

/** One of two things that a text could mean. */
export type Choice<T> = { readonly words: string } & ({ readonly value: T } | { readonly whole: Understood });

/** What a text in a box stands for, or why it stands for nothing. */
export type Reading<T> =
  /** `said`: how it was read, where that is not plain to see. */
  | { readonly ok: true; readonly value: T; readonly said?: string }
  | {
      readonly ok: false;
      readonly problem: string;
      /** A beginning of something: the problem is only said once the typing is over. */
      readonly unfinished?: boolean;
      /** It is not that a number went wrong: something else was meant from the first letter on. */
      readonly other?: boolean;
      /** The text means one of these, and none of them until it is chosen. */
      readonly choices?: readonly Choice<T>[];
      /** The text says more than one number: it is the whole estimate, once the typing is over. */
      readonly whole?: Understood;
    };

/**
 * The text in one box while somebody types. The document may lag behind or come back unchanged; the text is only ever replaced when a
 * value comes from outside that the text does not already say, so typing “8,” or “08” is never tidied away under the caret.
 */
export class Draft<T> {
  text = '';
  /** Why the text stands for nothing; empty if it does. */
  problem = '';
  choices: readonly Choice<T>[] = [];
  whole: Understood | undefined = undefined;
  /** How the text was read, where that is not plain to see. */
  said = '';
  /** Something else than a number is being typed: the box goes on standing for what it stood for before. */
  aside = false;
  /** A problem that is kept back until the typing is over. */
  private held = '';
  private standing: T | undefined;
  /** What stood before this go of typing: the beginning of “1,500” or of “6–10” was sent as a number that was never meant. */
  private started: T | undefined;
  /** What came from outside last: the same again is no news, and must not take away text that has not been sent. */
  private incoming: T | undefined;
  private shown = false;
  /** Values sent out that have not come back yet, oldest first: a late echo of an earlier keystroke must not undo a later one. */
  private readonly sent: T[] = [];

  constructor(private readonly print: (value: T) => string) {}

  /** The last good value: what the picture is drawn from. */
  get value(): T | undefined {
    return this.standing;
  }

  /** What stood before this go of typing. */
  get before(): T | undefined {
    return this.started;
  }

  /** True if the text stands for a value of this box. */
  get good(): boolean {
    return this.problem === '' && this.held === '' && this.whole === undefined;
  }

  /** Takes a value from outside. */
  show(value: T): void {
    if (this.shown && Object.is(value, this.incoming)) return;
    this.incoming = value;
    const echo = this.sent.lastIndexOf(value);
    this.sent.splice(0, echo < 0 ? Infinity : echo + 1);
    if (echo >= 0 || (this.shown && Object.is(value, this.standing))) return;
    this.put(value);
  }

  /** Takes what was typed; returns true if there is a value other than the last one, which is then to be sent out. */
  type(text: string, reading: Reading<T>): boolean {
    this.text = text;
    this.choices = reading.ok ? [] : (reading.choices ?? []);
    this.whole = reading.ok ? undefined : reading.whole;
    this.said = reading.ok ? (reading.said ?? '') : '';
    const waits = !reading.ok && reading.unfinished === true;
    this.held = waits ? reading.problem : '';
    this.problem = reading.ok || waits ? '' : reading.problem;
    this.aside = false;
    if (reading.ok) return this.stand(reading.value);
    this.aside = waits || this.choices.length > 0 || this.whole !== undefined || reading.other === true;
    return this.aside && this.shown && this.started !== undefined && this.stand(this.started);
  }

  /** Takes a value from a step, a slider or a choice, and writes it into the box; true if it is to be sent out. */
  pick(value: T): boolean {
    const news = this.type(this.print(value), { ok: true, value });
    this.started = value;
    return news;
  }

  /** Writes the last good value the usual way, once the typing is over. Bad text stays. */
  tidy(): void {
    if (this.held !== '') {
      this.problem = this.held;
      this.held = '';
    }
    if (!this.good || this.standing === undefined) return;
    this.text = this.print(this.standing);
    this.started = this.standing;
  }

  private stand(value: T): boolean {
    if (this.shown && Object.is(value, this.standing)) return false;
    this.standing = value;
    this.shown = true;
    this.sent.push(value);
    return true;
  }

  private put(value: T): void {
    this.standing = value;
    this.started = value;
    this.shown = true;
    this.text = this.print(value);
    this.problem = '';
    this.held = '';
    this.choices = [];
    this.whole = undefined;
    this.said = '';
    this.aside = false;
  }
}
