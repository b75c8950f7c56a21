/**
 * Words of the pictures. Plain functions of numbers and names: chances are shares 0–1, years are calendar years.
 * A chance is "7 in 10" in a sentence and "73 %" in a table; ranges carry an en dash; a run is "a future".
 */

const NB = '\u00a0';
const english = new Intl.NumberFormat('en', { maximumFractionDigits: 0 });

/** A whole number with thousands separated: 1,200. */
export const whole = (n: number): string => english.format(n);

/** A share as percent, rounded so that only nothing is 0 % and only all is 100 %. */
export function percent(share: number): string {
  if (share > 0 && share < 0.005) return `under${NB}1${NB}%`;
  if (share < 1 && share > 0.995) return `over${NB}99${NB}%`;
  return `${String(Math.round(share * 100))}${NB}%`;
}

/** The number of a percent alone, for ranges and narrow labels. */
export const percentNumber = (share: number): string => String(Math.round(share * 100));

/** "51–93", in percent, without the sign; tenths where whole percents would look like one number. */
export function percentRange(low: number, high: number): string {
  const [from, to] = [percentNumber(low), percentNumber(high)];
  return from === to && high > low ? `${tenth(low)}–${tenth(high)}` : `${from}–${to}`;
}
const tenth = (share: number): string => String(Math.round(share * 1000) / 10);

/** Half the width of an interval in points of percent, to the nearest half: "± 1½". */
export function plusMinus(low: number, high: number): string {
  const halves = Math.round((high - low) * 100);
  if (halves < 1) return `±${NB}under${NB}½`;
  const points = Math.floor(halves / 2);
  return `±${NB}${points === 0 ? '' : String(points)}${halves % 2 === 1 ? '½' : ''}`;
}

export interface InTen {
  readonly numeral: string;
  /** "in 10", or "in 100" where tenths would be too coarse to be true. */
  readonly words: string;
}

/** A chance as a hand can count it: 7 in 10; below 1 and above 9 in 10, of a hundred. */
export function inTen(share: number): InTen {
  const tenths = Math.round(share * 10);
  if (share <= 0 || share >= 1 || (tenths >= 1 && tenths <= 9)) return { numeral: String(tenths), words: 'in 10' };
  if (share < 0.005) return { numeral: 'under 1', words: 'in 100' };
  if (share > 0.995) return { numeral: 'over 99', words: 'in 100' };
  return { numeral: String(Math.round(share * 100)), words: 'in 100' };
}

/** "7 in 10" as running text. */
export const inTenWords = (share: number): string => `${inTen(share).numeral}${NB}${inTen(share).words.replace(' ', NB)}`;

/** "2044–2050"; one year when both are the same; "after 2057" where the end lies beyond the last year. */
export function yearRange(from: number | null, to: number | null, last: number): string {
  if (from === null) return `after ${String(last)}`;
  if (to === null) return `${String(from)}–after ${String(last)}`;
  return from === to ? String(from) : `${String(from)}–${String(to)}`;
}

const COUNTED = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];

/** Numbers up to ten in words. */
export const counted = (n: number): string => COUNTED[n] ?? whole(n);

/** Keeps the sign of a cross with the parent before it, so that no line begins with it. */
export const tied = (name: string): string => name.replaceAll(' × ', `${NB}× `);

/** "A", "A and B", "A, B and C". */
export function listed(items: readonly string[]): string {
  const last = items.at(-1) ?? '';
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} and ${last}`;
}

const plural = (n: number, one: string, many: string): string => (n === 1 ? one : many);

export const common = {
  stale: 'from before your last change',
  asTable: 'as a table',
  saveTable: 'Save the table (CSV)',
  nothing: 'Nothing to show yet.',
  planHead: 'Plan',
  noValue: '–',
};

export const calendarText = {
  horizon: 'your last judging year',
};

export const laneText = {
  title: (plans: number) => `${plans === 1 ? 'One way' : `${counted(plans).replace(/^./, (letter) => letter.toUpperCase())} ways`} to a proven tree`,
  intro:
    'Each bough is one generation. It is as thick as the share of futures still going, soft where the year is uncertain; the ring is the pick that starts the next bough. Each count is the middle of its own futures, so they need not add up.',
  introPhone:
    'Each bough is one generation: dots are seed and nursery, pale the years before fruit, solid the judging. It is as thick as the share of futures still going; the ring is the pick that starts the next bough, the dot the year of a proven tree when it works. Each count is the middle of its own futures, so they need not add up.',
  list: 'Plans, drawn along the calendar',
  summary: (plans: readonly { name: string; chance: number }[], last: number) =>
    `Chance of a proven tree by ${String(last)}: ${listed(plans.map(({ name, chance }) => `${name} ${inTenWords(chance)}`))}.`,
  round: (name: string, round: number, rounds: number) => (rounds > 1 ? `${name}, round ${String(round)}` : name),
  flowers: (n: number) => `${whole(n)} ${plural(n, 'flower', 'flowers')}`,
  gathered: 'windfall fruit',
  seedlings: (n: number) => `${whole(n)} ${plural(n, 'seedling', 'seedlings')}`,
  alive: (n: number) => `${whole(n)} to graft`,
  fruiting: (n: number) => `${whole(n)} fruiting`,
  kept: (n: number, low: number, high: number) => {
    if (n === 0 && high > 0) return high === 1 ? '0 or 1 kept' : `${whole(low)} to ${whole(high)} kept`;
    return `${whole(n)} kept`;
  },
  reached: (share: number) => `reached in ${share > 0 && share < 0.005 ? 'under 1' : percentNumber(share)} of 100 futures`,
  never: 'reached in no future',
  arrow: ' › ',
  from: (low: number, high: number, futures: number) => `${plusMinus(low, high)} from ${whole(futures)} futures`,
  guesses: (low: number, high: number) => `your guesses allow ${percentRange(low, high)}${NB}%`,
  guessesShort: (low: number, high: number) => `guesses allow ${percentRange(low, high)}`,
  guessesComing: 'your guesses: still counting',
  trulyGood: (share: number) => `${inTenWords(share)} truly good`,
  trulyGoodHelp: 'Of the trees you would call proven, so many truly are as good as they looked.',
  noneProven: 'no proven tree in any future',
  /** Beside the year of a proven tree where it belongs to no single row. */
  provenAny: 'proven, from any bough',
  rowState: (place: number, of: number, plan: string) => `generation ${String(place)} of ${String(of)} in plan ${plan}`,
  pickBy: (year: number) => `first pick about ${String(year)}`,
  provenBy: (year: number, range: string) => `when it works, a proven tree about ${String(year)} (8 in 10: ${range})`,
  /** Read aloud before a plan's letter. */
  plan: 'Plan ',
  tableHeads: [
    'Plan',
    'Generation',
    'Reached, of 100 futures',
    'Pollinated',
    'First fruit',
    'First pick',
    'Last judged',
    'Flowers',
    'Seedlings',
    'Fruiting',
    'Kept',
  ],
  tableNote: 'Half of the futures by the year shown, in brackets 8 in 10; counts are middle values. All among the futures that reach the generation.',
};

export const keyText = {
  name: 'How to read a bough',
  nursery: 'seed and nursery',
  waiting: 'years before first fruit',
  judging: 'judging',
  pick: 'the pick',
  proven: 'year of a proven tree, when it works',
  bar: 'half by the dot, 8 in 10 within the bar',
  chance: 'chance, from 0 to 10 in 10',
  guesses: 'pale: what your guesses allow',
};

export const chanceText = {
  titleCross: (early: string, late: string, year: number) => `${early} and ${late} change places in ${String(year)}`,
  title: 'The chance, year by year',
  intro: (half: string, futures: number, band: boolean) =>
    `Share of futures with a proven tree by the end of each year. ${band ? 'Shaded: the middle half of what your guesses allow; the figures beside the boughs hold 8 in 10 of it. ' : ''}The error from ${whole(futures)} futures, ${half} in 100, is about as thin as the line.`,
  starts: (year: number) => `The picture starts at ${String(year)}: before that no plan has a tree.`,
  name: 'Chance of a proven tree by year',
  summary: (plans: readonly { mark: string; chance: number }[], last: number) =>
    `By the end of ${String(last)}: ${listed(plans.map(({ mark, chance }) => `${mark} ${inTenWords(chance)}`))}.`,
  noneBefore: (year: number, futures: number) => `No plan proves a tree before ${String(year)} in any of ${whole(futures)} futures.`,
  never: 'No plan has a proven tree in any future.',
  level: (year: number) => `level in ${String(year)}`,
  ofFutures: (words: string) => `${words} futures`,
  tenths: (n: number) => (n === 0 ? '0' : `${String(n)} in 10`),
  hundredths: (n: number) => (n === 0 ? '0' : `${String(n)} in 100`),
  endOf: (year: number) => `By the end of ${String(year)}`,
  /** How to read another year: beside the lines, and under a narrow picture. */
  keys: (narrow: boolean) => (narrow ? 'Tap the picture to read another year.' : 'Point, or press ← →, to read another year.'),
  value: (share: number, low: number, high: number) => `${percent(share)}, ${percentRange(low, high)}`,
  slider: 'Year to read',
  none: 'no year chosen',
  sliderValue: (year: number, plans: readonly { name: string; chance: number }[]) =>
    `By the end of ${String(year)}: ${plans.map(({ name, chance }) => `${name} ${percent(chance)}`).join(', ')}`,
  year: 'Year',
};
