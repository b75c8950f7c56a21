import type { Interval, Spread } from '../results/outlook.ts';
import { counted, inTen, percent, percentRange, whole } from './charts.ts';
import { pay } from './pay.ts';

/** Words for the figures that every question has. Minus signs and en dashes as they are set, units kept on the line. */

const NB = '\u00a0';
const MINUS = '−';
const HALVES = ['', '½'] as const;

const signed = (points: number): string => (points > 0 ? `+${String(points)}` : points < 0 ? `${MINUS}${String(-points)}` : '0');
/** Whole points, or tenths or hundredths where whole ones would read as nothing: an end of a range that is not 0 never reads as 0. */
function pointsOf(share: number): number {
  const size = Math.abs(share);
  if (size >= 0.01) return Math.round(100 * share);
  return size >= 0.0005 ? Math.round(1000 * share) / 10 : Math.round(10000 * share) / 100;
}

/** A difference of two chances, in points of a hundred: "+25 in 100", "no clear difference". */
export const differenceInWords = ({ value }: Interval, clear: boolean): string => (clear ? `${signed(pointsOf(value))} in${NB}100` : pay.noDifference);

/** "+24 to +27", of a hundred. */
export const differenceRange = ({ low, high }: Interval): string => `${signed(pointsOf(low))} to ${signed(pointsOf(high))}`;

/** A difference of means: "+24 (23–25)". */
export function amountDifference({ value, low, high }: Interval): string {
  const round = (n: number) => (Math.abs(value) < 10 ? Math.round(10 * n) / 10 : Math.round(n));
  return `${signed(round(value))} (${signed(round(low))} to ${signed(round(high))})`;
}

/** "58 %, 57–60" as two lines of a cell. */
export const chanceLines = ({ value, low, high }: Interval): readonly [string, string] => [percent(value), percentRange(low, high)];

/** The middle value, whole as in the table of all plans, and where 8 in 10 futures lie. */
export const spreadLines = ({ p50, p10, p90 }: Spread): readonly [string, string] => [
  whole(Math.round(p50)),
  `${whole(Math.round(p10))}–${whole(Math.round(p90))}`,
];

/** "about seven": of ten trees called proven, so many truly are; null where none was proven. */
export const trulyOfTen = (trulyGood: Interval | null): string | null => (trulyGood === null ? null : counted(Math.round(trulyGood.value * 10)));

/** Two chances side by side in a sentence: tenths, or percent where tenths would read the same. */
export function besideEachOther(a: number, b: number): readonly [string, string] {
  const [x, y] = [inTen(a), inTen(b)];
  if (x.numeral === y.numeral && x.words === y.words && a !== b) return [percent(a), percent(b)];
  const say = (one: ReturnType<typeof inTen>) => `${one.numeral}${NB}${one.words.replace(' ', NB)}`;
  return [say(x), say(y)];
}

/** To the nearest half, as it is said: "2½". */
export function halves(n: number): string {
  const twice = Math.round(2 * n);
  const full = Math.floor(twice / 2);
  return `${full === 0 && twice % 2 === 1 ? '' : String(full)}${HALVES[twice % 2] ?? ''}`;
}

/** A span of months as it is said: "2½ months", "5 months", "1½ years". */
export function monthsInWords(months: number): string {
  if (months < 11.5) {
    const said = months < 3.75 ? halves(months) : String(Math.round(months));
    return `${said}${NB}${said === '1' || said === '½' ? 'month' : 'months'}`;
  }
  const years = months / 12;
  const said = years < 4.75 ? halves(years) : String(Math.round(years));
  return `${said}${NB}${said === '1' ? 'year' : 'years'}`;
}

/** "3–6 years": the unit once where both have the same. */
export function monthsBetween(from: number, to: number): string {
  const [a, b] = [monthsInWords(from), monthsInWords(to)];
  if (a === b) return a;
  const [number, unit] = a.split(NB);
  return unit !== undefined && b.endsWith(unit) ? `${number ?? ''}–${b}` : `${a}–${b}`;
}

/** A share as a count of ten: "5 of 10"; below one and above nine, of a hundred. */
export function ofTen(share: number): string {
  const tenths = Math.round(share * 10);
  if (share > 0 && share < 1 && (tenths === 0 || tenths === 10)) return `${String(Math.round(share * 100))}${NB}of${NB}100`;
  return `${String(tenths)}${NB}of${NB}10`;
}

/** A count with one decimal where it is small: "0.6", "12". A minus sign as it is set. */
export const decimals = (n: number): string => String(Math.abs(n) < 9.5 ? Math.round(10 * n) / 10 : Math.round(n)).replace('-', MINUS);

/** A share as a count of ten to the nearest half: "6½ of 10". */
export const halvesOfTen = (share: number): string => `${halves(10 * share)}${NB}of${NB}10`;
