import { whole } from './charts.ts';

/** Words of all that leaves the page as a file: pictures, tables, futures, results. */

export const saving = {
  picture: 'Save as a picture:',
  table: 'Save as a table:',
  pictureAs: (how: string): string => `Save the picture as ${how}`,
  tableAs: 'Save the table as CSV',
  making: 'The picture is being made.',
  saved: (name: string): string => `${name} was handed to the browser.`,
  failed: 'The picture could not be made in this browser. Print the page instead, or save the table.',
  stale: 'The picture is saved when it belongs to your last change.',
} as const;

/** The line under a saved picture. */
export const sourceLine = (title: string, word: string, engine: string, futures: number, date: string): string =>
  `${title === '' ? '' : `${title}. `}Orchard Odds, engine ${engine}, shuffle word “${word}”, ${futures > 0 ? `${whole(futures)} futures a plan, ` : ''}${date}. A planning aid, not a promise.`;

export const figures = {
  title: 'The figures themselves',
  lede: 'For a spreadsheet or a program of your own. The JSON files hold the programme and say what they come from, so that the same figures can be made again.',
  runs: 'Every future (CSV)',
  runsAbout: (rows: number): string => `${whole(rows)} lines, one for each future of each plan: years, trees, hours and what failed.`,
  results: 'The results (JSON)',
  resultsAbout: 'Chances, years and comparisons, with the programme they come from, the engine, the shuffle word and the date.',
  answers: 'Answers of “Would it pay to…?” (JSON)',
  answersAbout: (count: number): string =>
    count === 1 ? 'The one answer that is there, with the way it was asked.' : `The ${whole(count)} answers that are there, with the way each was asked.`,
  noAnswers: 'No question of “Would it pay to…?” has its answer yet. Open that page and let it count.',
  waiting: 'They are saved when all futures are counted.',
  making: 'The file is being made.',
  saved: (name: string): string => `${name} was handed to the browser.`,
  failed: 'The file could not be made in this browser.',
} as const;
