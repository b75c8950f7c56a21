import { printEstimate } from '../model/estimate-forms.ts';
import type { Scale } from '../model/fields.ts';
import { printNumber } from '../model/numbers.ts';
import type { Understood } from '../model/typed-estimate.ts';

/** What is said about text that was typed: how it was read, the two ways it could be, and what does not fit. */

const NB = '\u00a0';
const unitAfter = (unit: string): string => (unit === '' ? '' : `${NB}${unit}`);
/** A range that does not break over two lines: word joiners stand around the dash. */
const joined = (text: string): string => text.replaceAll('–', '\u2060–\u2060');

/** “6.4–8–9.6 years”, “18 of 240”. */
export function typedInShort({ kind, estimate }: Understood, scale: Scale, unit: string): string {
  return `${joined(printEstimate(typeof estimate === 'number' || !('oneOf' in estimate) ? estimate : { oneOf: [...estimate.oneOf] }, scale))}${kind === 'count' ? '' : unitAfter(unit)}`;
}

/** What was done beyond the reading itself. */
const WHY: Readonly<Record<Understood['kind'], string>> = {
  number: '',
  range: '',
  about: 'a fifth to either side, marked as a guess',
  atLeast: 'nothing was said of the upper end, so likely and high are a guess',
  atMost: 'nothing was said of the lower end, so low and likely are a guess',
  count: 'a count',
  either: 'alternatives, all with the same weight',
};

/** What was taken, said of a text that stays in the box’s place no longer. A count repeats no figures: what it became is said. */
const takenAs = (text: string, understood: Understood, scale: Scale, unit: string): string =>
  understood.kind === 'count' ? `“${text}” is taken as a count of your own.` : `“${text}” is read as ${readAs(understood, scale, unit)}.`;

/** “Read as 6–8–10 years: likely is the middle.” */
function readAs(understood: Understood, scale: Scale, unit: string): string {
  const why = understood.kind === 'range' && understood.middle ? 'likely is the middle of the two' : WHY[understood.kind];
  return `${typedInShort(understood, scale, unit)}${why === '' ? '' : `: ${why}`}`;
}

export const typedText = {
  /** Under the box, after the reading was taken. */
  taken: takenAs,
  /** Under the box while the text is still being typed. */
  waits: (understood: Understood, scale: Scale, unit: string) => `Will be read as ${readAs(understood, scale, unit)}. Enter takes it, or leaving the box.`,
  number: (value: number, scale: Scale, unit: string) => `Read as ${printNumber(value, scale)}${unitAfter(unit)}.`,
  rate: (value: number, unit: string, hits: string, of: string) =>
    `Read as ${printNumber(value, 'share')}${unitAfter(unit)}, a share. If you counted, type “${hits} of ${of}”.`,
  change: 'Change it in the boxes, or',
  putBack: (before: string) => `put back ${before}`,
  twoWays: (text: string) => `“${text}” can be read in two ways. Which is meant?`,
  choose: (text: string) => `What “${text}” means`,
  percent: 'No percentage fits here: type the number itself.',
  downwards: (text: string) => `“${text}” runs downwards. Type the lowest number first.`,
  moreThanAll: (text: string) => `“${text}” counts more than there were. First those that did, then all of them.`,
  onlyOne: {
    range: (text: string) => `“${text}” is a range, but one number fits here.`,
    about: (value: string) => `One number fits here, without “about”: ${value}.`,
    atLeast: (value: string) => `One number fits here, without “at least”: ${value}.`,
    atMost: (value: string) => `One number fits here, without “at most”: ${value}.`,
    count: (text: string) => `“${text}” is a count, but one number fits here.`,
    either: (text: string) => `“${text}” gives a choice, but one number fits here.`,
  },
  countNeedsShare: (text: string) => `“${text}” is a count, which only a share can be. Type one number, or a range such as 6–10.`,
  onlyCount: (text: string) => `“${text}” does not fit a count. Type one number, or a count such as 18 of 240; for a range choose “a range” first.`,
} as const;
