import type { FaredCount, FaredYear, FaredStage, Verdict } from '../results/fared.ts';
import type { Reached } from '../results/forecast.ts';
import type { PlanOutlook } from '../results/outlook.ts';
import { inTenWords, listed, percent, whole, yearRange } from './charts.ts';
import type { Piece } from './headline.ts';

/** Words of the forecast from what stands today, and of how earlier forecasts fared. */

const NB = '\u00a0';
const named = ({ mark, name }: Pick<PlanOutlook, 'mark' | 'name'>) => `${mark} (${name})`;
const plural = (n: number, one: string, many: string) => `${whole(n)} ${n === 1 ? one : many}`;

export const today = {
  title: 'From what stands today',
  intro: 'Seedlings, trees in fruit, picks and seed in the ground are taken from your log; the years still to come are played through as often as the rest.',
  everyPage: (from: number | null) => (from === null ? 'Let every page count from today' : `Every page counts from spring ${String(from)}`),
  switch: (year: number) => `Forecast from what stands before spring ${String(year)}`,
  switchNote: 'Every page then counts from there: what is likely, what would pay, what you tell others. Without it, all pages count from your first spring.',
  from: 'First spring to forecast',
  fromNote: 'What is noted of that spring and later is not used yet.',
  on: (year: number) => `Forecast from what stands before spring ${String(year)}`,
  off: 'Forecast from the first spring again',
  waiting: 'Playing the years to come through from what stands.',
  stale: 'The log or the programme has changed; these figures are from before and are being counted again.',
  failed: (why: string) => `The forecast from today could not be made: ${why}`,
  stopped: 'Nothing can be forecast before the problems above are solved.',
  futures: (n: number) => `${whole(n)} futures of each plan from today, and as many from the first spring.`,
  rates: 'Rates, years and explanations are those that the programme states. What your counts teach is brought in further down, one figure at a time.',
  picture: (name: string) => `Chance by year from what stands: ${name}`,
  now: 'from today',
  first: 'first forecast',
  was: (chance: string) => `was ${chance}`,
  chances: 'Chance of a proven tree by your last year, from today and when you began',
  key: 'Full mark: from what stands today. Ring: the first forecast. The stripe through each is what these futures cannot tell finer.',
  chanceHeads: ['Plan', 'From what stands today', 'First forecast'],
  byYear: 'Chance by year, from today and as first forecast',
  byYearIntro: 'The full line is played through from what stands; the dashed one is the first forecast. The upright line is today.',
  slider: 'Year',
  keys: '← → moves the year',
  none: 'No year is read.',
  at: (year: number, now: number, first: number) => `By the end of ${String(year)}: ${percent(now)} from what stands, ${percent(first)} when you began.`,
  tableHeads: ['Year', 'From what stands today', 'First forecast'],
  notPlacedTitle: 'What could not be brought in',
  notPlacedIntro: 'It stays in the log as you entered it.',
  later: (n: number, year: number) => `${plural(n, 'entry speaks', 'entries speak')} of ${String(year)} or later and ${n === 1 ? 'is' : 'are'} not used yet.`,
} as const;

/** Why something was not brought in, by its reason; n trees, or seeds. */
const notPlaced = {
  noGeneration: (n: number) => `${whole(n)} of a cross that this plan does not make`,
  noSeedParent: (n: number, about: string) =>
    `${whole(n)} whose seed parent ${about === '' ? 'is not known' : `“${about}” is not found among trees that have borne`}`,
  noPollen: (n: number, about: string) =>
    `${whole(n)} whose pollen ${about === '' ? 'is not known' : `parent “${about}” is not found among trees that have borne`}`,
  noCross: (n: number, about: string) => `${whole(n)} of ${about}, for which the programme has no figures`,
  tagTwice: (_n: number, about: string) => `“${about}” is written on two trees; the first is taken as the parent`,
  nothingCounted: () => 'nothing was counted yet',
  neverCameUp: (n: number) => `${whole(n)} seeds of which nothing is noted since they were due: taken as lost`,
  noValues: (_n: number, about: string) => `${about} was judged, but what its goal needs measured was not noted: it is judged anew`,
  copiesNotMade: (n: number, about: string) => `${plural(n, 'copy', 'copies')} of ${about}: this plan makes none, so they are not followed`,
  graftsNotMade: (n: number) => `${plural(n, 'grafted tree', 'grafted trees')}: this plan grafts none, so they count as sound trees on their own roots`,
} as const;

const leftOut = {
  inNoPlan: (name: string, n: number) => `${name}: ${whole(n)} in no plan. Say in the batch which generation it belongs to, if it belongs to one.`,
  inPlan: (mark: string, name: string, why: string) => `Plan ${mark}, ${name}: ${why}.`,
  otherPlans: (mark: string, n: number) => `Plan ${mark} leaves out ${plural(n, 'batch that another plan takes', 'batches that other plans take')}.`,
} as const;

/** What one plan leaves out, or takes only in part; as it stands in the log. */
export interface LeftOutOfPlan {
  readonly mark: string;
  readonly notPlaced: readonly {
    readonly batch: string;
    readonly name: string;
    readonly why: keyof typeof notPlaced;
    readonly about: string;
    readonly n: number;
  }[];
}

/**
 * What could not be brought in, a line each: batches that belong to no plan, what each plan leaves out or takes only in part, and entries
 * that speak of later years.
 * @param later how many entries speak of that year or later
 */
export function leftOutLines(plans: readonly LeftOutOfPlan[], later: number, year: number): string[] {
  type One = LeftOutOfPlan['notPlaced'][number];
  const nowhere = (one: One) =>
    one.why === 'noGeneration' && plans.every(({ notPlaced: list }) => list.some(({ batch, why }) => batch === one.batch && why === 'noGeneration'));
  return [
    ...(plans[0]?.notPlaced.filter(nowhere) ?? []).map(({ name, n }) => leftOut.inNoPlan(name, n)),
    ...plans.flatMap(({ mark, notPlaced: list }) => {
      const others = list.filter((one) => one.why === 'noGeneration' && !nowhere(one));
      return [
        ...list.filter(({ why }) => why !== 'noGeneration').map(({ name, why, n, about }) => leftOut.inPlan(mark, name, notPlaced[why](n, about))),
        ...(others.length === 0 ? [] : [leftOut.otherPlans(mark, others.length)]),
      ];
    }),
    ...(later > 0 ? [today.later(later, year)] : []),
  ];
}

const TIMES = (share: number): string =>
  share === 0 ? 'in no future' : share === 1 ? 'in every future' : inTenWords(share).replace(`${NB}in`, `${NB}times in`);

/** “From what stands today, B (…) has a proven tree 9 times in 10 by 2057; when you began, it was 8 in 10.” */
export function planSentence(now: PlanOutlook, first: PlanOutlook | undefined, lastYear: number, year: number): Piece[] {
  const before = now.chanceByYear.findLast((point) => point.year < year);
  if (before?.value === 1) {
    const when = now.yearProven.p50;
    return [
      { text: `${named(now)}: `, strong: true },
      { text: `a tree met your goal${when === null ? '' : ` in ${String(when)}`} already, by what is noted of it.${began(first)}` },
    ];
  }
  return [
    { text: `${named(now)}: `, strong: true },
    { text: `${TIMES(now.chance.value)} a proven tree by ${String(lastYear)} from what stands today.${began(first)}${apart(now, first)}` },
  ];
}

const began = (first: PlanOutlook | undefined): string => (first ? ` When you began, it was ${inTenWords(first.chance.value)}.` : '');

/** Two chances whose intervals overlap are not told apart. */
function apart({ chance: now }: PlanOutlook, first: PlanOutlook | undefined): string {
  if (!first || now.low > first.chance.high || now.high < first.chance.low) return '';
  return ' These futures show no clear difference between the two.';
}

/** What the headless runner says. */
export const headless = {
  empty: 'The season log is empty: nothing stands that could be forecast from. Leave out --today.',
  from: (year: number) => `Forecast from what stands before spring ${String(year)}, by the season log.`,
} as const;

const REACHED: Readonly<Record<Reached, string>> = {
  firstPollination: 'first pollination',
  firstSeedling: 'first seedling',
  firstFruit: 'first fruit',
  firstPick: 'first pick',
};
const COUNTS: Readonly<Record<FaredStage, string>> = {
  flowers: 'flowers pollinated',
  fruits: 'ripe fruits',
  seeds: 'sound seeds',
  seedlings: 'seedlings',
  fruiting: 'trees in fruit',
  kept: 'trees kept',
};

const yearVerdicts: Readonly<Record<Verdict, string>> = {
  inside: 'inside',
  before: 'earlier',
  after: 'later',
  overdue: 'overdue',
  open: 'still to come',
};
const countVerdicts: Readonly<Record<Verdict, string>> = { inside: 'inside', before: 'fewer', after: 'more', overdue: '', open: 'still counting' };

const generationName = ({ name, round }: { readonly name: string; readonly round: number }) => (round > 1 ? `${name}, round ${String(round)}` : name);

export const faredText = {
  title: 'How earlier forecasts fared',
  intro: 'What a forecast said of each stage, and what came. The bar holds 8 of 10 futures, its line the middle one; the dot is the year in your log.',
  ground:
    'Of honest bars about 8 in 10 hold what came. A bar that misses says which figure to look at again. The first forecast is counted again with the figures as they are now: what you changed since is in it.',
  which: 'Forecast',
  first: (year: number) => `the first (${String(year)}), counted again`,
  sealed: (day: string) => `sealed ${day}`,
  open: 'Open a sealed forecast',
  plan: 'Plan',
  refused: (name: string) => `“${name}” cannot be used.`,
  old: 'This forecast was sealed with its chances alone: it does not say what each stage was to come to.',
  gone: 'The sealed forecast holds no plan that stands here under the same letter.',
  other: 'It was sealed from another state of the programme.',
  fromLater: (year: number) => `It was itself forecast from what stood before spring ${String(year)}.`,
  picture: (plan: string) => `Years forecast and years that came: ${plan}`,
  keys: '↑ ↓ go from row to row',
  noRow: 'No row is read.',
  nothing: 'The forecast says nothing that your log could answer yet.',
  years: 'When',
  counts: 'How many',
  countsNote: 'Forecast: in all. Log: so far.',
  heads: ['Generation', 'Stage', '8 of 10 futures', 'Middle', 'Your log', 'How it came'],
  notYet: 'not yet',
  never: (last: number) => `after ${String(last)}`,
  range: (p10: number | null, p90: number | null, last: number) => yearRange(p10, p90, last),
  countRange: (p10: number, p90: number) => (p10 === p90 ? whole(Math.round(p10)) : `${whole(Math.round(p10))} to ${whole(Math.round(p90))}`),
  count: (n: number) => whole(Math.round(n)),
  reached: (what: Reached) => REACHED[what],
  counted: (what: FaredStage) => COUNTS[what],
  yearVerdict: (verdict: Verdict) => yearVerdicts[verdict],
  countVerdict: (verdict: Verdict) => countVerdicts[verdict],
  generation: generationName,
} as const;

/** “Of 9 things that can be told, 7 came inside the range; outside: first fruit of Cross in 2033, forecast 2034–2038.” */
export function faredSentence(years: readonly FaredYear[], counts: readonly FaredCount[], last: number): readonly string[] {
  const told = [...years, ...counts].filter(({ verdict }) => verdict !== 'open');
  if (told.length === 0) return [faredText.nothing];
  const inside = told.filter(({ verdict }) => verdict === 'inside').length;
  const missedYears = years.filter(({ verdict }) => verdict !== 'open' && verdict !== 'inside').map((row) => yearWords(row, last));
  const missedCounts = counts.filter(({ verdict }) => verdict !== 'open' && verdict !== 'inside').map(countWords);
  const head = `Of ${plural(told.length, 'thing', 'things')} that can be told, ${whole(inside)} came inside the range of 8 in 10 futures.`;
  return [head, ...missedYears, ...missedCounts];
}

export function yearWords(row: FaredYear, last: number): string {
  const forecast = `forecast ${yearRange(row.p10, row.p90, last)}`;
  const what = `${generationName(row)}: ${REACHED[row.what]}`;
  if (row.came === null) return `${what} not yet, ${forecast}${row.verdict === 'overdue' ? ': overdue' : ''}.`;
  return `${what} in ${String(row.came)}, ${forecast}: ${yearVerdicts[row.verdict]}.`;
}

const countWords = (row: FaredCount): string =>
  `${generationName(row)}: ${whole(row.came)} ${COUNTS[row.what]}${row.verdict === 'after' ? ' so far' : ''}, forecast ${faredText.countRange(row.p10, row.p90)} in all: ${countVerdicts[row.verdict]}.`;

/** What a fared picture says in one sentence, for those who listen. */
export const faredSummary = (rows: readonly FaredYear[], last: number): string => listed(rows.map((row) => yearWords(row, last).replace(/\.$/, '')));
