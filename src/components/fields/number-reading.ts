import type { EstimateForm } from '../../model/estimate.ts';
import type { FieldMeta, Scale } from '../../model/fields.ts';
import { printNumber, readNumber, stepOf, stepped } from '../../model/numbers.ts';
import { readTyped, settleTyped, valuesIn, type TypedProblem, type Understood } from '../../model/typed-estimate.ts';
import { problems } from '../../text/fields.ts';
import { typedInShort, typedText } from '../../text/typed.ts';
import { Draft, type Choice, type Reading } from './draft.ts';

/** What a number box takes. */
export interface NumberRules {
  readonly scale: Scale;
  readonly min: number;
  readonly max: number;
  readonly whole: boolean;
  /** An empty box stands for “not given” unless a number is needed. */
  readonly needed: boolean;
  readonly unit: string;
}

export const unitOf = (meta: FieldMeta | undefined): string => (meta?.scale === 'share' ? '%' : (meta?.unit ?? ''));

export function rulesOf(meta: FieldMeta | undefined, whole = false, needed = true): NumberRules {
  return { scale: meta?.scale ?? 'number', min: meta?.min ?? -Infinity, max: meta?.max ?? Infinity, whole, needed, unit: unitOf(meta) };
}

export const numberDraft = (scale: Scale): Draft<number | undefined> => new Draft((value) => (value === undefined ? '' : printNumber(value, scale)));

type Read = Reading<number | undefined>;
const bad = (problem: string): Read => ({ ok: false, problem });
/** Not a number gone wrong, but something else that does not fit. */
const other = (problem: string): Read => ({ ok: false, problem, other: true });

/** In which form of an estimate a reading is kept. */
const FORM: Readonly<Record<Understood['kind'], EstimateForm>> = {
  number: 'known',
  range: 'ranged',
  about: 'ranged',
  atLeast: 'ranged',
  atMost: 'ranged',
  count: 'counted',
  either: 'alternatives',
};

/** Words that may stand behind a number of this box: its unit, and the first word of a longer one (“months after that”). */
function ownWords({ unit, scale }: NumberRules): readonly string[] {
  if (unit === '%') return [];
  const first = unit.split(' ')[0] ?? '';
  return [unit, first.length > 2 ? first : '', scale === 'years' ? 'years' : '', scale === 'months' ? 'months' : ''].filter(Boolean);
}

/** What is said where a reading is not of a form that fits. */
function unfit(text: string, understood: Understood, rules: NumberRules, takes: readonly EstimateForm[]): string {
  const { kind, estimate } = understood;
  if (takes.includes('counted') && !takes.includes('ranged')) return typedText.onlyCount(text);
  if (kind === 'count' && takes.length > 1) return typedText.countNeedsShare(text);
  const print = (value: number): string => printNumber(value, rules.scale);
  switch (kind) {
    case 'about':
      return typedText.onlyOne.about(print(estimate.likely));
    case 'atLeast':
      return typedText.onlyOne.atLeast(print(estimate.low));
    case 'atMost':
      return typedText.onlyOne.atMost(print(estimate.high));
    case 'number':
      return problems.notANumber(text);
    default:
      return typedText.onlyOne[kind](text);
  }
}

function outside(understood: Understood, { min, max, scale, unit, whole }: NumberRules): string {
  const values = valuesIn(understood);
  if (values.some((value) => value < min || value > max)) return problems.between(printNumber(min, scale), printNumber(max, scale), unit, scale === 'year');
  return whole && !values.every(Number.isInteger) ? problems.whole : '';
}

/** True for a text that says nothing but its number: “8,5”, “08”, “8 %”. */
function isPlain(text: string, value: number, scale: Scale): boolean {
  const simple = text.replace(/%$/, '').trim().replace(',', '.').replace(/^[−–]/, '-');
  return simple !== '' && readNumber(text, scale).ok && Number(simple) === Number(printNumber(value, scale));
}

function sayNumber(text: string, value: number, rate: boolean, { scale, unit }: NumberRules): string {
  if (!rate) return isPlain(text, value, scale) ? '' : typedText.number(value, scale, unit);
  const [hits = '', of = ''] = text.match(/\d[\d.,]*/g) ?? [];
  return typedText.rate(value, unit, hits, of);
}

function problemOf(reason: TypedProblem, text: string, needed: boolean): Read {
  switch (reason) {
    case 'empty':
      return needed ? bad(problems.needed) : { ok: true, value: undefined };
    case 'unfinished':
      return { ok: false, problem: problems.notANumber(text), unfinished: true };
    case 'percent':
      return other(typedText.percent);
    case 'downwards':
      return other(typedText.downwards(text));
    case 'more than all':
      return other(typedText.moreThanAll(text));
    case 'not a number':
      return bad(problems.notANumber(text));
  }
}

/**
 * Reads a text by the rules of its box; a problem comes in words, a text of two readings with both of them.
 * @param takes forms that fit here: without more than one number a range or a count is refused in words
 */
export function readBox(typed: string, rules: NumberRules, takes: readonly EstimateForm[] = ['known']): Read {
  const text = typed.trim();
  const raw = readTyped(text, rules.scale, ownWords(rules));
  const reading = settleTyped(raw, rules);
  if (!reading.ok) {
    if (reading.reason !== 'ambiguous') return problemOf(reading.reason, text, rules.needed);
    const [first] = reading.readings;
    if (!takes.includes(FORM[first.kind])) return other(unfit(text, first, rules, takes));
    return { ok: false, problem: typedText.twoWays(text), choices: reading.readings.map((each) => choiceOf(each, rules)) };
  }
  const { understood } = reading;
  if (!takes.includes(FORM[understood.kind])) return other(unfit(text, understood, rules, takes));
  const problem = outside(understood, rules);
  if (problem !== '') return understood.kind === 'number' ? bad(problem) : other(problem);
  if (understood.kind !== 'number') return { ok: false, problem: '', whole: understood };
  // A text of two readings of which the bounds left one: said, because it was not plain to see.
  const said = raw.ok ? sayNumber(text, understood.estimate, understood.rate, rules) : typedText.number(understood.estimate, rules.scale, rules.unit);
  return { ok: true, value: understood.estimate, said };
}

function choiceOf(understood: Understood, { scale, unit }: NumberRules): Choice<number | undefined> {
  const words = typedInShort(understood, scale, unit);
  return understood.kind === 'number' ? { words, value: understood.estimate } : { words, whole: understood };
}

/** The value so many steps on; from nothing, the steps start at nought or the bound next to it. */
export function steppedBy(value: number | undefined, steps: number, rules: NumberRules): number {
  const from = value ?? Math.max(rules.min, Math.min(rules.max, 0));
  return stepped(from, steps, stepOf(rules.scale, rules.whole, from), rules);
}

/** The value that an arrow key leads to, or undefined if the key is no arrow up or down. */
export function arrowed(event: KeyboardEvent, value: number | undefined, rules: NumberRules): number | undefined {
  const direction = event.key === 'ArrowUp' ? 1 : event.key === 'ArrowDown' ? -1 : 0;
  if (direction === 0 || event.altKey || event.ctrlKey || event.metaKey) return undefined;
  return steppedBy(value, direction * (event.shiftKey ? 10 : 1), rules);
}
