import type { Source } from '../model/estimate.ts';
import type { Figure } from './types.ts';

export type Confidence = NonNullable<Source['confidence']>;

/** One number; low, likely and high; or a count as it was printed. */
export type Given = number | readonly [low: number, likely: number, high: number] | Count;
export interface Count {
  readonly hits: number;
  readonly of: number;
  /** Spring × pair lots the count was made in; fewer lots, less trust. */
  readonly lots?: number;
  readonly unit?: { readonly name: string; readonly flowers: number };
}

const isRange = (given: Given): given is readonly [number, number, number] => Array.isArray(given);

function figure(given: Given, source: Source): Figure {
  if (typeof given === 'number') return { value: given, source };
  if (isRange(given)) return { low: given[0], likely: given[1], high: given[2], source };
  const { hits, of, lots = 1, unit } = given;
  return { hits, of, lots, ...(unit ? { unit } : {}), source };
}

const from =
  (kind: Source['kind']) =>
  (given: Given, confidence: Confidence, note: string): Figure =>
    figure(given, { kind, confidence, note });

/** Read in print: the note names author and year, what was counted, and what was done to the number. */
export const published = from('published');
/** What growers commonly report; no count behind it. */
export const practice = from('practice');
/** A figure of the literature that was not looked up again: check it before quoting. */
export const remembered = from('remembered');
/** Nobody counted it as far as known. */
export const guess = (given: Given, note: string): Figure => figure(given, { kind: 'guess', confidence: 'low', note });
