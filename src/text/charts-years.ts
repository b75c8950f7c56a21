/** Words of the pictures that ask about single years: busiest years, and the last spring to begin. Amounts are in hours, places or bloom days. */
import { inTenWords, percentNumber, whole } from './charts.ts';

const NB = '\u00a0';

/** What a year may ask for. Flowers pollinated by hand are told in bloom days. */
export const LOADS = ['hours', 'flowers', 'places'] as const;
export type Load = (typeof LOADS)[number];

/** Futures of a hundred; only none is 0. */
const hundredth = (share: number): string => (share > 0 && share < 0.005 ? 'under 1' : percentNumber(share));
const of100 = (share: number): string => `${hundredth(share)} of${NB}100`;
/** Below ten, bloom days with a tenth; all else whole. */
const rounded = (load: Load, n: number): number => (load === 'flowers' && n < 10 ? Math.round(n * 10) / 10 : Math.round(n));
const UNITS: Readonly<Record<Load, { one: string; many: string; least: number }>> = {
  hours: { one: 'hour', many: 'hours', least: 1 },
  flowers: { one: 'bloom day', many: 'bloom days', least: 0.1 },
  places: { one: 'place', many: 'places', least: 1 },
};

/** A number alone: "93", "0.8", "under 1"; nothing is 0 that is not. */
export function loadNumber(load: Load, n: number): string {
  const number = rounded(load, n);
  if (n > 0 && number === 0) return `under ${String(UNITS[load].least)}`;
  return Number.isInteger(number) ? whole(number) : String(number);
}

/** "93 hours", "0.8 bloom days", "1 place". */
export function loadAmount(load: Load, n: number): string {
  const number = loadNumber(load, n);
  return `${number}${NB}${number === '1' || number.startsWith('under 1') ? UNITS[load].one : UNITS[load].many}`;
}

export const busyText = {
  title: 'Busiest years',
  name: 'Busiest years of each plan',
  choose: 'Show',
  load: (load: Load) => UNITS[load].many,
  intro:
    'What each year asks for. The line is the middle of all futures; 9 in 10 futures stay within the pale band. A future that has ended asks for nothing. The busiest year is not the same in every future, so it asks for somewhat more than the top of the line.',
  bars: (hard: boolean, full: string) =>
    `Small bars under a strip: futures ${hard ? 'that use the last of your limit' : 'over your limit'}; the hairline over them is ${full}.`,
  hands: (days: number) => `A bloom day is one of your ${loadNumber('flowers', days)} days of pollinating by hand.`,
  limit: (load: Load, limit: number) => `limit ${loadNumber(load, limit)}`,
  far: (load: Load, limit: number) => `Your limit of ${loadAmount(load, limit)} lies far above.`,
  ofHundred: (share: number) => `${percentNumber(share)} in${NB}100`,
  tick: loadNumber,
  /** Lines beside a strip: the middle, the 90 % value, and how often the limit is reached. */
  most: (load: Load, peak: { year: number; n: number } | null) =>
    peak ? `most in ${String(peak.year)}: ${loadAmount(load, peak.n)}` : `half need no ${UNITS[load].many}`,
  at: (load: Load, year: number, n: number) => `in ${String(year)}: ${loadAmount(load, n)}`,
  oneInTen: (load: Load, n: number, year: number | null) =>
    n === 0 ? `9 in${NB}10 need none` : `1 in${NB}10 above ${loadNumber(load, n)}${year === null ? '' : `, in${NB}${String(year)}`}`,
  over: (load: Load, limit: number | null, share: number, year: number | null) => {
    if (limit === null) return 'no limit stated';
    const when = year === null ? '' : `, in${NB}${String(year)}`;
    if (load === 'hours') return share > 0 ? `over ${loadNumber(load, limit)} in ${of100(share)}${when}` : `never over ${loadNumber(load, limit)}`;
    if (load === 'places') return share > 0 ? `all taken in ${of100(share)}${when}` : 'never all taken';
    return share > 0 ? `last day used in ${of100(share)}${when}` : 'last day never used';
  },
  /** The finding. `figure` tells whether half of the futures need so much, or only one in ten more. */
  summary: (
    load: Load,
    limit: number | null,
    peak: { mark: string; year: number; n: number; figure: 'p50' | 'p90' } | null,
    worst: { mark: string; year: number; share: number } | null,
  ) => {
    if (!peak) return load === 'flowers' ? 'No plan pollinates by hand.' : `No plan asks for any ${UNITS[load].many}.`;
    const n = loadAmount(load, peak.n);
    const need = peak.figure === 'p50' ? `about ${n}` : `in 1 of${NB}10 futures over ${n}`;
    const against = limit === null ? '' : `, ${peak.n > limit ? 'above' : 'within'} your ${loadNumber(load, limit)}`;
    const same = worst?.mark === peak.mark && worst.year === peak.year;
    const often = worst ? `${busyText.over(load, limit, worst.share, null)} futures` : '';
    if (worst && same) return `${peak.mark} is busiest in ${String(peak.year)}: ${need}${against}; ${often}.`;
    return `${peak.mark} is busiest in ${String(peak.year)}: ${need}${against}.${worst ? ` ${worst.mark} in ${String(worst.year)}: ${often}.` : ''}`;
  },
  slider: 'Year to read',
  none: 'no year chosen',
  sliderValue: (plans: readonly { name: string; lines: readonly string[] }[]) => plans.map(({ name, lines }) => `${name}: ${lines.join(', ')}`).join('; '),
  missing: 'This picture needs every single future: it comes when all futures are counted.',
  year: 'Year',
  /** `over` is null where no future of any plan is ever over the limit. */
  cell: (load: Load, p50: number, p90: number, over: number | null) =>
    `${loadNumber(load, p50)} (${loadNumber(load, p90)})${over === null ? '' : `; ${hundredth(over)}`}`,
  caption: (load: Load, hard: boolean, over: boolean) =>
    `${UNITS[load].many.replace(/^./, (letter) => letter.toUpperCase())}: half of the futures at or below, in brackets 9 in 10${over ? `; then, of 100 futures, those ${hard ? 'that use the last of your limit' : 'over your limit'}` : ''}.`,
};

export const springText = {
  title: 'The last spring to begin',
  name: 'Chance by the spring in which a plan begins',
  intro: (last: number) =>
    `Chance of a proven tree by ${String(last)}, if the plan begins in that spring instead of this one. The letter sits where half of this spring’s chance is left, the ring where the last future ends well.`,
  note: 'Read from the same futures: to begin three years later leaves three years fewer. This takes the trees to stand then as they do now, and the weather’s luck to be the same.',
  /** The finding, of one plan. */
  summary: (mark: string, half: number, share: number, any: number, first: number) => {
    const none = `after ${String(any)} not at all`;
    if (any === first) return `Begin ${mark} this spring or not at all: it ends well in ${inTenWords(share)}.`;
    return `Begin ${mark} ${half === first ? 'this spring' : `by ${String(half)}`} and it still ends well in ${inTenWords(share)}; ${none}.`;
  },
  waits: (mark: string, half: number) => `${mark} can wait longest: begun by ${String(half)} it keeps half of its chance.`,
  never: 'No plan ends well in any future, begun this spring or later.',
  ends: (half: number, any: number) => `half of its chance is left by ${String(half)}, none after ${String(any)}`,
  endsNever: 'no chance this spring or later',
  skip: (share: number) =>
    `skipping this spring costs ${share < 0.005 ? (share > 0 ? 'under 1' : 'nothing') : percentNumber(share)}${share > 0 ? ` in${NB}100` : ''}`,
  from: (year: number) => `Begun in ${String(year)}`,
  sliderValue: (year: number, plans: readonly { name: string; chance: string }[]) =>
    `Begun in ${String(year)}: ${plans.map(({ name, chance }) => `${name} ${chance}`).join(', ')}`,
  slider: 'Spring in which the plan begins',
  heads: (first: number) => [
    'Plan',
    `Begun in ${String(first)}`,
    `Begun in ${String(first + 1)}`,
    'Skipping this spring costs',
    'Half of it left by',
    'Any left by',
  ],
  spring: 'Begun in spring',
};
