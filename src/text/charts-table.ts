/** Words of the table that sets the plans side by side, and of its last column. Marks are the plans' letters. */
import { counted, listed, percent, percentRange, whole } from './charts.ts';

const NB = '\u00a0';

export const tableText = {
  title: 'Side by side',
  intro: (futures: number, stacked: boolean) =>
    `Where ${whole(futures)} futures cannot tell plans apart, the ${stacked ? 'last line' : 'last column'} names them and says “no clear difference”.`,
  name: 'The plans side by side',
  inWords: 'In words',
  measure: 'What is compared',
  summary: (title: string, words: string) => `${title}: ${words}.`,
  of: (share: number) => `${String(Math.round(share * 10))}${NB}of${NB}10`,
  hours: (n: number) => `${whole(n)}${NB}h`,
  range: (low: number, high: number) => `${whole(low)}–${whole(high)}`,
  plusYears: (years: number) => (years === 1 ? `±${NB}1${NB}year` : `±${NB}${String(years)}${NB}years`),
  toTheYear: 'to the year',
  between: (low: string, high: string) => `${low} to ${high}`,
  centimorgans: (n: number) => `${whole(n)}${NB}cM`,
  notReached: (year: number) => `not by${NB}${String(year)}`,
  whole,
  percent,
  percentRange: (low: number, high: number) => percentRange(low, high),
  percentRangeSign: (low: number, high: number) => `${percentRange(low, high)}${NB}%`,
};

/** Titles and second lines of the rows. */
export const rowText = {
  chance: (year: number) => `Chance of a tree by ${String(year)}`,
  chanceNote: '± from the number of futures',
  chanceBy: (year: number) => `Chance by ${String(year)}`,
  meeting: (mark: string) => `the first year in which ${mark} is ahead`,
  halfWay: 'when the likeliest plan is half way',
  half: 'Half of all futures there by',
  works: 'Year, when it works',
  worksNote: 'half of successes; 8 in 10 between',
  seedlings: 'Seedlings raised',
  middleNote: 'half of futures; 8 in 10 between',
  fruiting: 'Trees brought to fruit and judged',
  treeYears: 'Land, in tree-years',
  treeYearsNote: 'one place taken for one year',
  grafts: 'Grafts made',
  hours: 'Hours, busiest year',
  limit: (hours: number) => `your limit is ${whole(hours)}`,
  over: (hours: number | null) => (hours === null ? 'Futures over your hours' : `Futures over ${whole(hours)} hours`),
  overNote: 'in one year or more',
  places: 'Most places in use',
  have: (places: number) => `you have ${whole(places)}`,
  trulyGood: 'Truly good, of ten called proven',
  trulyGoodNote: 'the rest had luck on the days of judging',
  origin: (kind: string) => `Left of ${kind} in the last picks`,
  around: (gene: string) => `Length that came with ${gene}`,
  originNote: 'half of futures with a pick; 8 in 10 between',
  rule: (rule: string) => `If “${rule}”`,
  ruleNote: (trait: string) => `${trait}: chance by your last judging year`,
};

/** Verdicts. */
export const verdictText = {
  best: (mark: string) => `${mark} clearly best`,
  first: (mark: string) => `${mark} clearly first`,
  firstBy: (mark: string, years: number) => `${mark} first, by ${counted(years)} ${years === 1 ? 'year' : 'years'}`,
  only: (mark: string) => `only ${mark}`,
  none: 'no plan gets there',
  even: (marks: readonly string[], all: boolean) => (all ? 'no clear difference' : `${listed(marks)} stand out, with no clear difference between them`),
  most: (mark: string) => `${mark} most`,
  fewest: (mark: string) => `${mark} fewest`,
  least: (mark: string) => `${mark} least`,
  close: (words: string, mark: string) => `${words}, ${mark} close behind`,
  because: (words: string) => `${words}: because they die`,
  noGrafts: (marks: readonly string[]) => `${listed(marks)} without any`,
  help: (marks: readonly string[]) => `${listed(marks)} ${marks.length === 1 ? 'needs' : 'need'} help some springs`,
  within: 'all stay within it',
  fills: (marks: readonly string[], share: number) =>
    `${listed(marks)} ${marks.length === 1 ? 'fills' : 'fill'} them in ${share >= 0.5 ? 'half of the futures' : '1 future of 10'}`,
  room: 'there is room for all',
  alone: '',
};
