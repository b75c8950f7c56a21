import type { FieldMeta, Scale } from '../../model/fields.ts';
import { printNumber, readNumber, settle, stepOf, stepped } from '../../model/numbers.ts';
import { problems } from '../../text/fields.ts';
import { Draft, type Reading } from './draft.ts';

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

/** Reads a text by the rules of its box; a problem comes in words. */
export function readBox(text: string, rules: NumberRules): Reading<number | undefined> {
  const { scale, min, max, whole, needed, unit } = rules;
  const bad = (problem: string): Reading<never> => ({ ok: false, problem });
  const reading = settle(readNumber(text, scale), rules);
  if (!reading.ok) {
    if (reading.reason === 'empty') return needed ? bad(problems.needed) : { ok: true, value: undefined };
    if (reading.reason === 'not a number') return bad(problems.notANumber(text.trim()));
    const [first, second] = reading.readings.map((each) => printNumber(each, scale));
    return bad(problems.twoReadings(text.trim(), first ?? '', second ?? ''));
  }
  const { value } = reading;
  if (value < min || value > max) return bad(problems.between(printNumber(min, scale), printNumber(max, scale), unit, scale === 'year'));
  if (whole && !Number.isInteger(value)) return bad(problems.whole);
  return { ok: true, value };
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
