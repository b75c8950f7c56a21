/** What can be wrong with a text before anybody asks what it says. */
export type FaultKind = 'empty' | 'foreign' | 'cutShort' | 'broken' | 'goesOn' | 'twice' | 'forbidden' | 'tooDeep' | 'tooLong' | 'tooMuch';

export interface Fault {
  readonly kind: FaultKind;
  /** Line, from 1. */
  readonly line: number;
  /** The last name that was read before it, for whoever looks for the place. */
  readonly after: string | null;
  /** The key that is at fault. */
  readonly key?: string;
}

/** Far above what the schema allows anywhere, far below what makes a browser stand still. */
export const MOST_DEEP = 50;
export const MOST_IN_ONE = 2000;
const MOST_VALUES = 200_000;

/** “__proto__” means something to JavaScript that no file should be able to say. */
const FORBIDDEN = '__proto__';
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /true|false|null/y;
const SPACE = /[ \t\n\r]*/y;
/** What a number or one of the three words looks like when the text ends within it. */
const HALF_A_WORD = /^(?:-?\d*\.?\d*(?:[eE][+-]?\d*)?|t|tr|tru|f|fa|fal|fals|n|nu|nul)$/;
const NAMES = new Set(['name', 'title']);

interface Container {
  readonly isList: boolean;
  readonly keys: Set<string>;
  /** Of the entry that is being read. */
  key: string;
  entries: number;
}

/** Carries a fault out of the reading; it never leaves this file. */
class Stop extends Error {
  constructor(
    readonly kind: FaultKind,
    readonly offset: number,
    readonly key?: string,
  ) {
    super(kind);
  }
}

/** Reads JSON (RFC 8259) as a grammar and keeps nothing but where it is. Without recursion: a text can be nested deeper than the stack is. */
class Scan {
  private at = 0;
  private values = 0;
  private readonly open: Container[] = [];
  after: string | null = null;

  constructor(private readonly text: string) {}

  run(): void {
    this.skip(SPACE);
    if (this.at === this.text.length) throw new Stop('empty', 0);
    if (!'{['.includes(this.text.charAt(this.at))) throw new Stop('foreign', this.at);
    this.value();
    while (this.open.length > 0) this.next();
    this.skip(SPACE);
    if (this.at < this.text.length) throw new Stop('goesOn', this.at);
  }

  /** From within a container: the next entry of it, or its end. */
  private next(): void {
    const inner = this.open.at(-1);
    if (!inner) return;
    this.skip(SPACE);
    if (this.text.charAt(this.at) === (inner.isList ? ']' : '}')) {
      this.at += 1;
      this.open.pop();
      return;
    }
    if (inner.entries > 0) {
      this.take(',');
      this.skip(SPACE);
    }
    inner.entries += 1;
    if (inner.entries > MOST_IN_ONE) throw new Stop('tooLong', this.at);
    if (!inner.isList) this.keyOf(inner);
    this.value();
  }

  private keyOf(inner: Container): void {
    const start = this.at;
    inner.key = this.string();
    if (inner.key === FORBIDDEN) throw new Stop('forbidden', start, inner.key);
    if (inner.keys.has(inner.key)) throw new Stop('twice', start, inner.key);
    inner.keys.add(inner.key);
    this.skip(SPACE);
    this.take(':');
    this.skip(SPACE);
  }

  private value(): void {
    this.values += 1;
    if (this.values > MOST_VALUES) throw new Stop('tooMuch', this.at);
    const first = this.text.charAt(this.at);
    if (first === '{' || first === '[') {
      if (this.open.length === MOST_DEEP) throw new Stop('tooDeep', this.at);
      this.at += 1;
      this.open.push({ isList: first === '[', keys: new Set(), key: '', entries: 0 });
    } else if (first === '"') {
      const said = this.string();
      if (NAMES.has(this.open.at(-1)?.key ?? '') && said.trim() !== '') this.after = said;
    } else if (!this.skip(NUMBER) && !this.skip(WORD)) throw this.unread();
  }

  /** Reads a text in quotes and returns it with its escapes undone. */
  private string(): string {
    const start = this.at;
    this.take('"');
    let escaped = false;
    for (;;) {
      const letter = this.text.charCodeAt(this.at);
      if (Number.isNaN(letter)) throw new Stop('cutShort', this.at);
      if (letter < 0x20) throw new Stop('broken', this.at);
      this.at += 1;
      if (letter === 0x22) break;
      if (letter === 0x5c) {
        escaped = true;
        this.escape();
      }
    }
    const quoted = this.text.slice(start, this.at);
    return escaped ? String(JSON.parse(quoted)) : quoted.slice(1, -1);
  }

  private escape(): void {
    const rest = this.text.slice(this.at, this.at + 5);
    const known = /^(?:["\\/bfnrt]|u[\dA-Fa-f]{4})/.exec(rest)?.[0];
    if (known === undefined) throw new Stop(/^(?:u[\dA-Fa-f]*)?$/.test(rest) && rest.length < 5 ? 'cutShort' : 'broken', this.at);
    this.at += known.length;
  }

  private take(letter: string): void {
    if (this.text.charAt(this.at) !== letter) throw this.unread();
    this.at += 1;
  }

  /** Steps over what the pattern fits; false if that is nothing. */
  private skip(pattern: RegExp): boolean {
    pattern.lastIndex = this.at;
    const length = pattern.exec(this.text)?.[0].length ?? 0;
    this.at += length;
    return length > 0;
  }

  private unread(): Stop {
    const rest = this.text.slice(this.at, this.at + 400);
    return new Stop(HALF_A_WORD.test(rest) ? 'cutShort' : 'broken', this.at);
  }
}

const lineOf = (text: string, offset: number): number => text.slice(0, offset).split('\n').length;

/**
 * Looks a text over before it is read: is it whole JSON, with no entry twice, and of a size that a programme can have?
 * Where `JSON.parse` would throw, this says where and after what; it also finds what `JSON.parse` would pass over in silence.
 * @returns nothing if the text can be read
 */
export function faultOf(text: string): Fault | null {
  const scan = new Scan(text);
  try {
    scan.run();
    return null;
  } catch (stop) {
    if (!(stop instanceof Stop)) throw stop;
    return { kind: stop.kind, line: lineOf(text, stop.offset), after: scan.after, ...(stop.key === undefined ? {} : { key: stop.key }) };
  }
}
