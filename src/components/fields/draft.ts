/** What a text in a box stands for, or why it stands for nothing. */
export type Reading<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: string };

/**
 * The text in one box while somebody types. The document may lag behind or come back unchanged; the text is only ever replaced when a
 * value comes from outside that the text does not already say, so typing “8,” or “08” is never tidied away under the caret.
 */
export class Draft<T> {
  text = '';
  /** Why the text stands for nothing; empty if it does. */
  problem = '';
  private standing: T | undefined;
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

  /** Takes a value from outside. */
  show(value: T): void {
    if (this.shown && Object.is(value, this.incoming)) return;
    this.incoming = value;
    const echo = this.sent.lastIndexOf(value);
    this.sent.splice(0, echo < 0 ? Infinity : echo + 1);
    if (echo >= 0 || (this.shown && Object.is(value, this.standing))) return;
    this.put(value);
  }

  /** Takes what was typed; returns true if it is a good value other than the last one, which is then to be sent out. */
  type(text: string, reading: Reading<T>): boolean {
    this.text = text;
    this.problem = reading.ok ? '' : reading.problem;
    if (!reading.ok || (this.shown && Object.is(reading.value, this.standing))) return false;
    this.standing = reading.value;
    this.shown = true;
    this.sent.push(reading.value);
    return true;
  }

  /** Takes a value from a step, a slider or a choice, and writes it into the box; true if it is to be sent out. */
  pick(value: T): boolean {
    return this.type(this.print(value), { ok: true, value });
  }

  /** Writes the last good value the usual way, once the typing is over. Bad text stays. */
  tidy(): void {
    if (this.problem === '' && this.standing !== undefined) this.text = this.print(this.standing);
  }

  private put(value: T): void {
    this.standing = value;
    this.shown = true;
    this.text = this.print(value);
    this.problem = '';
  }
}
