import type { Job, JobKind } from '../results/season.ts';
import { listed } from './charts.ts';

/** Words of the card for one season, and of the calendar file. */

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December'];

export const MONTH_NAMES: readonly string[] = MONTHS;

export const monthName = (month: number): string => MONTHS[month - 1] ?? String(month);

/** “Season 2031”, or “Season 2031/32” where bloom falls into the second half of the calendar year. */
export function seasonName(year: number, bloomMonth: number): string {
  return bloomMonth > 6 ? `Season ${String(year)}/${String((year + 1) % 100).padStart(2, '0')}` : `Season ${String(year)}`;
}

const many = (n: number, one: string, more: string): string => `${n.toLocaleString('en')} ${n === 1 ? one : more}`;

const words: Readonly<Record<JobKind, (job: Job) => string>> = {
  cutScions: ({ generation }) => `Cut scion wood of the picks of ${generation}; label it, keep it cold and damp`,
  backup: ({ generation, amount, stock }) =>
    `Graft ${many(amount ?? 1, 'backup copy', 'backup copies')} of each pick of ${generation}${stock === null ? '' : ` onto ${stock}`}; knife away from the hand`,
  sow: ({ generation }) => `Sow the seed of ${generation}; count what comes up`,
  bags: ({ crosses }) => `Get bags, tags and pollen ready for ${listed(crosses)}`,
  pollinate: ({ crosses, amount }) => `Pollinate ${many(amount ?? 0, 'flower', 'flowers')}${crosses.length > 1 ? ' each' : ''}: ${listed(crosses)}`,
  countSet: () => 'Take the bags off; count the fruits that set',
  rescue: ({ generation, amount, stock }) =>
    `Graft the weak seedlings of ${generation}${stock === null ? '' : ` onto ${stock}`}, ${many(amount ?? 1, 'scion', 'scions')} each; glove on the holding hand`,
  judge: ({ generation, amount }) => `Taste and judge ${generation}${amount === null ? '' : `: cut ${many(amount, 'fruit', 'fruits')} of each tree`}`,
  gather: ({ crosses }) => `Gather the fruit of ${listed(crosses)}; count fruits and sound seeds`,
  gatherOpen: ({ crosses }) => `Gather seed of ${listed(crosses)}; count fruits and sound seeds`,
  layDown: () => 'Lay the seed down cold; keep kernels away from children and livestock',
};

/** A job as a line on the card. */
export const jobWords = (job: Job): string => words[job.kind](job);

const tenths = (share: number): number => Math.min(9, Math.max(1, Math.round(share * 10)));

export const cardText = {
  title: (season: string): string => `${season}: what to do`,
  jobs: 'What to do, by month',
  nothing: 'This plan has nothing to do in this season in any of the futures looked at.',
  share: (share: number): string => `in about ${String(tenths(share))} of 10 futures`,
  often: (share: number): string => String(tenths(share)),
  oftenHead: 'in so many of 10 futures',
  left: (n: number): string => `and ${many(n, 'job', 'jobs')} more that come up in fewer futures`,
  crosses: 'Crosses: tags, flowers and fruits',
  tagsHow: 'A box is ten flowers. Tags: year, cross, seedling; in pencil, two for each pot. Note the place in the row too: tags get lost.',
  blanks: ['flowers', 'fruits', 'sound seeds'],
  blanksOpen: ['fruits', 'sound seeds'],
  judge: (fruits: number | null): string => (fruits === null ? 'What was seen' : `What was seen: ${many(fruits, 'fruit', 'fruits')} cut of each tree`),
  judgeColumns: ['Tag', 'Fruits cut', 'Shows it', 'Taste'],
  notes: 'Notes',
  care: 'Kernels and leaves of many fruits release cyanide: do not eat them, and keep them away from livestock. Knives cut: glove on the holding hand. Sprays and compounds by their labels only. Moving wood, pollen or seed may need a permit: ask the plant-health authority first.',
  foot: (date: string): string => `Made on ${date} with Orchard Odds. A planning aid, not a promise.`,
  // On the page.
  heading: 'A card for the pocket, and dates for a calendar',
  intro: 'One small page with the jobs of one season: to print, to write on with a pencil, to take along.',
  plan: 'Plan',
  season: 'Season',
  climate: (bloomMonth: number, ripeAfter: number): string =>
    `The months follow from the bloom, which begins in ${monthName(bloomMonth)} in this programme, with fruit ripe ${many(ripeAfter, 'month', 'months')} later. Other places and the other half of the earth have other months: `,
  change: 'change them under “Goal, years, limits and weather”',
  paper: 'Paper',
  print: 'Print the card',
  save: 'Save the card as a file',
  calendar: 'Save dates for a calendar',
  preview: 'The card as it prints',
  saved: (name: string): string => `${name} was handed to the browser.`,
  waiting: 'The card comes as soon as the first futures are there.',
} as const;
