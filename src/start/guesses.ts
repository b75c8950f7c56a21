import type { Estimate, Source } from '../model/estimate.ts';
import type { OwnCount } from './answers.ts';

/** Beside every number that nobody gave and no source has. */
export const guessed = (note: string): Source => ({ kind: 'guess', note });
export const range = (low: number, likely: number, high: number, note: string): Estimate => ({ low, likely, high, source: guessed(note) });
export const single = (value: number, note: string): Estimate => ({ value, source: guessed(note) });

/** A breeder's own count in place of a figure of the catalogue; the spring's luck is left to the model. */
export const counted = ({ hits, of, springs }: OwnCount, note = ''): Estimate => ({ hits, of, lots: springs, source: { kind: 'counted', note } });
export const orCounted = (figure: Estimate, own: OwnCount | undefined): Estimate => (own ? counted(own) : figure);
