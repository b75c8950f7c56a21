import type { Counted, Ranged } from './estimate.ts';
import type { Scale } from './fields.ts';
import { readNumber, type Allowed } from './numbers.ts';

export type Three = Omit<Ranged, 'source'>;

/** What a typed text says of an estimate. Values are in the document's units (shares 0–1). */
export type Understood =
  /** `rate`: written “7 in 10”, a share and no count. */
  | { readonly kind: 'number'; readonly estimate: number; readonly rate: boolean }
  /** `middle`: only the two ends were typed. */
  | { readonly kind: 'range'; readonly estimate: Three; readonly middle: boolean }
  | { readonly kind: 'about' | 'atLeast' | 'atMost'; readonly estimate: Three }
  | { readonly kind: 'count'; readonly estimate: Omit<Counted, 'source'> }
  | { readonly kind: 'either'; readonly estimate: { readonly oneOf: readonly { readonly value: number; readonly weight: number }[] } };

/** `unfinished`: nothing yet, but a beginning of something that could be understood. */
export type TypedProblem = 'empty' | 'not a number' | 'unfinished' | 'percent' | 'downwards' | 'more than all';
export type TypedReading =
  | { readonly ok: true; readonly understood: Understood }
  | { readonly ok: false; readonly reason: TypedProblem }
  | { readonly ok: false; readonly reason: 'ambiguous'; readonly readings: readonly [Understood, Understood] };

/** “About”, “at least” and “at most” reach a fifth of the number further, and again a fifth. Own choice: wide enough to be argued with. */
export const ABOUT = 0.2;
/** Letters that are looked at: twelve alternatives of thirty digits and their “or”. */
const LONGEST = 500;

const GROUP = "'’ \\u00a0\\u2007\\u2009\\u202f";
/** A sign, digits with whatever stands between them, a percent sign. A dash behind a number is therefore never its neighbour's minus unless two stand there. */
const NUMBER = `[-+−–]?\\s*[\\d.,½¼¾](?:[\\d.,½¼¾${GROUP}]*[\\d.,½¼¾])?\\s*%?`;
const TO = '\\s*(?:[-‐‑‒–—−…]|\\bto\\b)\\s*';
const LEADS = {
  about: ['about', 'around', 'roughly', 'approximately', 'approx.', 'approx', 'circa', 'ca.', 'ca', 'c.', 'some', '~', '≈'],
  atLeast: ['at least', 'no less than', 'not less than', 'more than', 'over', 'above', 'from', 'min.', 'min', '>=', '>', '≥'],
  atMost: ['at most', 'no more than', 'not more than', 'less than', 'fewer than', 'under', 'below', 'up to', 'max.', 'max', '<=', '<', '≤'],
} as const;
const BETWEEN = ['between', 'from', 'either'];
const JOINTS = ['-', '–', '—', '/', 'to', 'of', 'out of', 'in', 'times in', 'or', 'or more', 'or less', 'and', '+', '%'];

const escaped = (word: string): string => word.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
const oneOf = (words: readonly string[]): string => words.map(escaped).join('|');

/** A number a reading can begin or end with, under the decimal (0) or the thousands (1) reading of marks that can be both. */
type Part = readonly [number, number];

function partOf(text: string, scale: Scale): Part | undefined {
  const reading = readNumber(text, scale);
  if (reading.ok) return [reading.value, reading.value];
  return reading.reason === 'ambiguous' ? reading.readings : undefined;
}

const not = (reason: TypedProblem): TypedReading => ({ ok: false, reason });
type Built = Understood | TypedProblem;

/** Reads all numbers of a text the same way, once as decimals and once as thousands; what makes no sense in one is meant in the other. */
function build(texts: readonly string[], scale: Scale, make: (numbers: readonly number[]) => Built): TypedReading {
  const parts = texts.map((text) => partOf(text, scale));
  if (!parts.every((part) => part !== undefined)) return not('not a number');
  const [decimal, thousands] = [make(parts.map(([value]) => value)), make(parts.map(([, value]) => value))];
  const open = parts.some(([a, b]) => a !== b);
  if (typeof decimal !== 'string' && typeof thousands !== 'string' && open) return { ok: false, reason: 'ambiguous', readings: [decimal, thousands] };
  const [best] = [decimal, thousands].filter((each) => typeof each !== 'string');
  return best ? { ok: true, understood: best } : not(typeof decimal === 'string' ? decimal : 'not a number');
}

/** Twelve digits: the middle of 0.06 and 0.1 is 0.08 and nothing beside it. */
const clean = (value: number): number => Number(value.toPrecision(12)) + 0;
/** Ends are written with the digits a hand would write. */
const tidy = (value: number): number => Number(value.toPrecision(3));

/** How far “about” reaches: a fifth of the number; of a share no further than half the way to all. Nought has no fifth: 5 % or one. */
function reach(value: number, isShare: boolean): number {
  const room = isShare ? Math.min(ABOUT * value, (1 - value) / 2) : ABOUT * Math.abs(value);
  return room > 0 ? room : isShare ? 0.05 : 1;
}

function vague(kind: 'about' | 'atLeast' | 'atMost', value: number, scale: Scale): Understood {
  const isShare = scale === 'share';
  const step = reach(value, isShare);
  const inside = (end: number): number => (isShare ? Math.min(1, Math.max(0, end)) : end);
  const below = (steps: number): number => Math.min(value, inside(tidy(value - steps * step)));
  const above = (steps: number): number => Math.max(value, inside(tidy(value + steps * step)));
  if (kind === 'about') return { kind, estimate: { low: below(1), likely: value, high: above(1) } };
  return kind === 'atLeast'
    ? { kind, estimate: { low: value, likely: above(1), high: above(2) } }
    : { kind, estimate: { low: below(2), likely: below(1), high: value } };
}

function range([low = 0, second = 0, third]: readonly number[]): Built {
  const [likely, high] = third === undefined ? [clean((low + second) / 2), second] : [second, third];
  return low <= likely && likely <= high ? { kind: 'range', estimate: { low, likely, high }, middle: third === undefined } : 'downwards';
}

const whole = (...numbers: readonly number[]): boolean => numbers.every(Number.isInteger);

/** Trees and flowers are counted whole: where a mark can be read in two ways, a part of a flower is not meant. */
function countOf(texts: readonly [string, string], scale: Scale, make: (hits: number, of: number) => Built): TypedReading {
  if (texts.join('').includes('%')) return not('not a number');
  const open = texts.some((text) => !readNumber(text, 'count').ok);
  return build(texts, scale === 'share' ? 'count' : scale, ([hits = 0, of = 0]) => {
    if (hits < 0 || of < 0 || (open && !whole(hits, of))) return 'not a number';
    return hits > of || of === 0 ? 'more than all' : make(hits, of);
  });
}

/** Patterns of one field, whose own words (its unit) may stand behind a number and mean nothing. */
function patternsFor(words: readonly string[]): Readonly<Record<'number' | 'range' | 'count' | 'clusters' | 'rate' | 'either' | 'open', RegExp>> {
  const own = [...new Set(words.flatMap((word) => [word, word.replace(/s$/, '')]))].filter((word) => word !== '').sort((a, b) => b.length - a.length);
  const unit = own.length === 0 ? '' : `(?:\\s*(?:${oneOf(own)}))?`;
  const n = `(${NUMBER})${unit}`;
  return {
    number: new RegExp(`^${n}$`, 'i'),
    range: new RegExp(`^(?:(?:between|from)\\s+)?${n}(?:${TO}|\\s+and\\s+)${n}(?:${TO}${n})?$`, 'i'),
    count: new RegExp(`^${n}\\s*(?:\\bout\\s+of\\b|\\bof\\b|/)\\s*${n}$`, 'i'),
    clusters: new RegExp(`^(${NUMBER})\\s+of\\s+(${NUMBER})\\s+(\\p{L}+)s\\s+of\\s+(\\d{1,4})$`, 'iu'),
    rate: new RegExp(`^${n}\\s*(?:times\\s+)?\\bin\\b\\s*${n}$`, 'i'),
    either: new RegExp(`^(?:either\\s+)?${n}(?:\\s+or\\s+${n})+$`, 'i'),
    open: new RegExp(`^${n}\\s*(\\+|or\\s+more|or\\s+less|or\\s+fewer)$`, 'i'),
  };
}

const MOST_ALTERNATIVES = 12;

/** Reads what is no bare number: tried from the most to the least particular. */
function compound(text: string, scale: Scale, words: readonly string[]): TypedReading {
  const patterns = patternsFor(words);
  const [, only] = patterns.number.exec(text) ?? [];
  if (only !== undefined) return build([only], scale, ([value = 0]) => ({ kind: 'number', estimate: value, rate: false }));
  const [, hits, of, name, flowers] = patterns.clusters.exec(text) ?? [];
  if (hits !== undefined && of !== undefined && name !== undefined)
    return countOf([hits, of], scale, (a, b) => ({ kind: 'count', estimate: { hits: a, of: b, lots: 1, unit: { name, flowers: Number(flowers) } } }));
  const [, some, all] = patterns.count.exec(text) ?? [];
  if (some !== undefined && all !== undefined) return countOf([some, all], scale, (a, b) => ({ kind: 'count', estimate: { hits: a, of: b, lots: 1 } }));
  const [, good, tries] = patterns.rate.exec(text) ?? [];
  if (good !== undefined && tries !== undefined)
    return countOf([good, tries], scale, (a, b) =>
      scale === 'share' ? { kind: 'number', estimate: clean(a / b), rate: true } : { kind: 'count', estimate: { hits: a, of: b, lots: 1 } },
    );
  const [, from, to, last] = patterns.range.exec(text) ?? [];
  // “6 and 10” alone is no range: only “between” makes it one.
  if (from !== undefined && to !== undefined && (!/\band\b/i.test(text) || /^between\b/i.test(text)))
    return build(last === undefined ? [from, to] : [from, to, last], scale, range);
  const [, end, tail = ''] = patterns.open.exec(text) ?? [];
  if (end !== undefined) return build([end], scale, ([value = 0]) => vague(/less|fewer/i.test(tail) ? 'atMost' : 'atLeast', value, scale));
  if (patterns.either.test(text)) {
    const parts = text.replace(/^either\s+/i, '').split(/\s+or\s+/i);
    const bare = parts.map((part) => patterns.number.exec(part)?.[1] ?? part);
    if (parts.length <= MOST_ALTERNATIVES)
      return build(bare, scale, (numbers) => ({ kind: 'either', estimate: { oneOf: numbers.map((value) => ({ value, weight: 1 })) } }));
  }
  return led(text, scale, words);
}

/** “about …”, “at least …”, “at most …”. A range or a count behind “about” is vague enough by itself. */
function led(text: string, scale: Scale, words: readonly string[]): TypedReading {
  for (const kind of ['about', 'atLeast', 'atMost'] as const) {
    const lead = LEADS[kind].find((each) => text.toLowerCase().startsWith(each) && !/^\p{L}\p{L}/u.test(each.slice(-1) + text.slice(each.length)));
    if (lead === undefined) continue;
    const rest = text.slice(lead.length).trim();
    const inner = rest === '' ? not('not a number') : compound(rest, scale, words);
    const vaguely = (understood: Understood): Understood | undefined => {
      if (understood.kind === 'number') return vague(kind, understood.estimate, scale);
      return kind === 'about' && understood.kind !== 'either' ? understood : undefined;
    };
    if (inner.ok) {
      const understood = vaguely(inner.understood);
      return understood ? { ok: true, understood } : not('not a number');
    }
    if (inner.reason !== 'ambiguous') return inner;
    const [decimal, thousands] = inner.readings.map(vaguely);
    return decimal && thousands ? { ok: false, reason: 'ambiguous', readings: [decimal, thousands] } : not('not a number');
  }
  return not('not a number');
}

/** Whether more typing could make sense of a text: “betw”, “18 o”, “6 –”, “between 6 and”. */
function begun(text: string, scale: Scale, words: readonly string[]): boolean {
  const lower = text.toLowerCase();
  const leads = [...Object.values(LEADS).flat(), ...BETWEEN];
  if (leads.some((lead) => lead.startsWith(lower))) return true;
  const lead = leads.filter((each) => lower.startsWith(each)).sort((a, b) => b.length - a.length)[0] ?? '';
  const [, head = '', tail = ''] = /^(.*[\d%½¼¾])\s*(\D*)$/u.exec(text.slice(lead.length).trim()) ?? [];
  if (head === '') return false;
  const goesOn = [...JOINTS, ...words].some((joint) => joint.toLowerCase().startsWith(tail.trim().toLowerCase()));
  const ownWords = words.flatMap((word) => JOINTS.map((joint) => `${word} ${joint}`)).some((both) => both.toLowerCase().startsWith(tail.trim().toLowerCase()));
  const known = compound(head, scale, words);
  return (goesOn || ownWords) && (tail !== '' || BETWEEN.includes(lead)) && (known.ok || known.reason === 'ambiguous');
}

/**
 * Reads what people type for a number they half know:
 * - one number, as `readNumber` does, with or without its unit;
 * - a range: “6–10”, “6-10”, “6 to 10”, “between 6 and 10” (likely is the middle), “6–8–10”;
 * - a count: “18 of 240”, “18/240”, “18 out of 240”, “18 of 240 clusters of 5”; “7 in 10” is a share and no count;
 * - “about 8”, “~8”, “ca. 8”: a fifth to either side; “> 12”, “at least 12”, “12+” and “< 12”, “at most 12”: from there a fifth and two fifths;
 * - alternatives of equal weight: “20 or 50”.
 *
 * A hyphen before the first number is a minus, between two numbers it makes a range, and a second one behind that is a minus again.
 * Where comma or point can be read in two ways, both readings come back and none is preferred.
 * @param text what stands in the box, any length (more than 500 letters are not read)
 * @param scale how the number is shown; a share is typed in percent and returned as 0–1
 * @param words of the field, such as its unit, that may stand behind a number
 */
export function readTyped(text: string, scale: Scale = 'number', words: readonly string[] = []): TypedReading {
  const trimmed = text.replace(/[\u2060\u200b]/g, '').trim();
  if (trimmed === '') return not('empty');
  if (trimmed.length > LONGEST) return not('not a number');
  const reading = compound(trimmed, scale, words);
  if (reading.ok || reading.reason !== 'not a number') return reading;
  if (scale !== 'share' && trimmed.includes('%') && compound(trimmed, 'share', words).ok) return not('percent');
  return begun(trimmed, scale, words) ? not('unfinished') : reading;
}

/** The numbers of a reading that must lie within the bounds of its field; a count has none. */
export function valuesIn({ kind, estimate }: Understood): readonly number[] {
  if (kind === 'count') return [];
  if (kind === 'number') return [estimate];
  return kind === 'either' ? estimate.oneOf.map(({ value }) => value) : [estimate.low, estimate.likely, estimate.high];
}

/** The number that was typed of a vague reading: the ends that we chose may be brought within the bounds, that one never. */
function bounded(understood: Understood, { min, max }: Allowed): Understood {
  const { kind, estimate } = understood;
  if (kind !== 'about' && kind !== 'atLeast' && kind !== 'atMost') return understood;
  const typed = kind === 'about' ? estimate.likely : kind === 'atLeast' ? estimate.low : estimate.high;
  if (typed < min || typed > max) return understood;
  const inside = (value: number): number => Math.min(max, Math.max(min, value));
  return { kind, estimate: { low: inside(estimate.low), likely: inside(estimate.likely), high: inside(estimate.high) } };
}

/**
 * Brings a reading to its field: the ends that “about” and the like add stay within the bounds; and where a text has two readings of which
 * only one is allowed here, that is the one that was meant.
 */
export function settleTyped(reading: TypedReading, allowed: Allowed): TypedReading {
  const { min, max, whole: needsWhole = false } = allowed;
  if (reading.ok) return { ok: true, understood: bounded(reading.understood, allowed) };
  if (reading.reason !== 'ambiguous') return reading;
  const fits = (value: number): boolean => value >= min && value <= max && (!needsWhole || Number.isInteger(value));
  const [a, b] = reading.readings;
  const both = [bounded(a, allowed), bounded(b, allowed)] as const;
  const [first, second] = both.filter((each) => valuesIn(each).every(fits));
  return first && !second ? { ok: true, understood: first } : { ok: false, reason: 'ambiguous', readings: both };
}
