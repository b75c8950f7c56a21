/**
 * What is uncertain about a cell; the words stand with the other words of the screen.
 * Levels: `open` – nothing is taken until somebody chooses; `kept` – goes into the note as it stands; `read` – taken, and said how.
 */
export type FlagCode =
  | 'twoNumbers'
  | 'twoDates'
  | 'range'
  | 'about'
  | 'atLeast'
  | 'atMost'
  | 'outOf'
  | 'notNumber'
  | 'notWhole'
  | 'outside'
  | 'thousands'
  | 'decimal'
  | 'nothing'
  | 'spaces'
  | 'apostrophe'
  | 'tooLong'
  | 'seasonName'
  | 'shortYear'
  | 'notDate'
  | 'noSuchDay'
  | 'dayLeft'
  | 'rowsYear'
  | 'timeLeft'
  | 'sumRow'
  | 'notYear'
  | 'notKnown'
  | 'yesNo'
  | 'noSeason'
  | 'notHere'
  | 'differs'
  | 'yearAssumed'
  | 'noTag';
export type Level = 'open' | 'kept' | 'read';

export interface Flag {
  readonly code: FlagCode;
  readonly level: Level;
  /** The cell as it stood in the file. */
  readonly raw: string;
  /** What it was taken for, or the things it could be. */
  readonly readings: readonly string[];
}

/** A cell that was read: a value if one was taken, a flag if anything is uncertain. Without a value, a flag that is not `nothing` means: into the note. */
export interface Cell<T> {
  readonly value?: T;
  readonly flag?: Flag;
}

export const flagOf = (level: Level, code: FlagCode, raw: string, ...readings: readonly string[]): Flag => ({ level, code, raw, readings });
export const open = (code: FlagCode, raw: string, ...readings: readonly string[]): Cell<never> => ({ flag: flagOf('open', code, raw, ...readings) });
export const kept = (code: FlagCode, raw: string, ...readings: readonly string[]): Cell<never> => ({ flag: flagOf('kept', code, raw, ...readings) });
export const taken = <T>(value: T, code: FlagCode, raw: string, ...readings: readonly string[]): Cell<T> => ({
  value,
  flag: flagOf('read', code, raw, ...readings),
});

const SPACE = /[\s\u00a0\u2007\u202f\ufeff\u200b]/;

/** Without spaces of any sort at its ends. Letter by letter: a pattern would look at long runs of spaces again and again. */
export function trimmed(raw: string): string {
  let [from, to] = [0, raw.length];
  while (from < to && SPACE.test(raw.charAt(from))) from += 1;
  while (to > from && SPACE.test(raw.charAt(to - 1))) to -= 1;
  return raw.slice(from, to);
}

/** A spreadsheet’s apostrophe before text that it would otherwise run: our own export writes it, and so do people. */
const DEFUSED = /^'+[=+\-@\t\r]/;

/** Takes one apostrophe off text that was defused; “''=x” is the text “'=x”. Its counterpart is `guarded` in ../../export.ts. */
export const unguarded = (raw: string): string => (DEFUSED.test(raw) ? raw.slice(1) : raw);
export const isDefused = (raw: string): boolean => DEFUSED.test(raw);

/** Nothing, as people write it. */
const NOTHING = /^(-+|–|—|\.|n\/?a|n\.a\.|nd|null|none|nil|not counted|\?)$/i;
export const saysNothing = (text: string): boolean => NOTHING.test(text);

/** Plain text of at most so many letters; what is longer is cut, and stands whole in the note. */
export function textCell(raw: string, most: number): Cell<string> {
  const text = trimmed(unguarded(raw));
  if (text === '') return {};
  if (text.length > most) return taken(trimmed(text.slice(0, most)), 'tooLong', raw, String(most));
  if (isDefused(raw)) return taken(text, 'apostrophe', raw, text);
  if (text !== raw) return taken(text, 'spaces', raw, text);
  return { value: text };
}
