import type { Diary, DiaryGeneration, DiaryOrigin, DiaryYear } from '../results/diary.ts';
import { listed, percent, whole } from './charts.ts';

export const diaryText = {
  title: 'One future, told as a diary',
  intro: 'The futures behind the pictures are made year by year. Here is one of them, as you would have written it down.',
  plan: 'Plan',
  which: 'Which future',
  good: 'a good one',
  middling: 'a middling one',
  bad: 'a bad one',
  waiting: 'Looking it up…',
  known: (things: readonly string[]) => `In this future, though nobody knew: ${listed(things)}.`,
  number: (run: number, of: number) => `Future ${whole(run + 1)} of ${whole(of)}.`,
} as const;

const n = (count: number, one: string, many: string) => `${whole(count)} ${count === 1 ? one : many}`;

/** Counts of a year, in the order of the work; those that no year has are left out of the table. */
const DIARY_COUNTS = ['flowers', 'fruits', 'seedlings', 'grafted', 'fruiting', 'judged', 'kept', 'picksLost', 'standing'] as const;
type DiaryCount = (typeof DIARY_COUNTS)[number];

export const diaryTable = {
  year: 'Year',
  generation: 'Generation',
  happened: 'What happened',
  counts: {
    flowers: 'Flowers pollinated',
    fruits: 'Fruits',
    seedlings: 'Seedlings come up',
    grafted: 'Grafted',
    fruiting: 'First flowering',
    judged: 'Crops judged',
    kept: 'Kept',
    picksLost: 'Kept trees lost',
    standing: 'Standing',
  } satisfies Record<DiaryCount, string>,
  count: whole,
  told: (mark: string, name: string, which: string) => `${mark} ${name}, ${which}.`,
};

export interface DiaryRow {
  readonly year: number;
  /** Name of the generation; empty where nothing was done in any. */
  readonly generation: string;
  readonly counts: readonly number[];
  /** What belongs to the whole year stands in its first row. */
  readonly happened: string;
}

/** The diary as a table: which counts it has, and a row per generation at work in a year. */
export function diaryRows({ years }: Diary, names: readonly string[]): { readonly counts: readonly DiaryCount[]; readonly rows: readonly DiaryRow[] } {
  const counts = DIARY_COUNTS.filter((count) => years.some(({ generations }) => generations.some((generation) => generation[count] > 0)));
  const rows = years.flatMap((year): DiaryRow[] => {
    const happened = yearWords(year);
    if (year.generations.length === 0) return [{ year: year.year, generation: '', counts: [], happened: happened.join(' ') }];
    return year.generations.map((generation, index) => ({
      year: year.year,
      generation: names[generation.generation] ?? '',
      counts: counts.map((count) => generation[count]),
      happened: [...(index === 0 ? happened : []), ...(generation.wentOn && generation.kept === 0 ? ['Time to go on.'] : [])].join(' '),
    }));
  });
  return { counts, rows };
}

/** What happened to the whole orchard, and whether a tree is proven. */
function yearWords(year: DiaryYear): string[] {
  return [...before(year), ...proven(year)];
}
const before = ({ lost, frost }: DiaryYear): string[] => [...lost.map((name) => `${name} was lost over the winter.`), ...(frost ? ['Frost in bloom.'] : [])];
const proven = ({ proven: trees }: DiaryYear): string[] => (trees === 0 ? [] : [trees === 1 ? 'A tree is proven.' : `${whole(trees)} trees are proven.`]);

/** What was so in this future without anyone knowing it. */
export function hiddenFacts({ rules, facts }: Diary): string[] {
  return [...rules.map(({ trait, rule }) => `${trait}: ${rule}`), ...facts.map(({ fact, holds }) => (holds ? fact : `not so that ${fact}`))];
}

/** The entries of one year, one sentence each. */
export function entries(year: DiaryYear, names: readonly string[]): string[] {
  const lines = before(year);
  for (const generation of year.generations) {
    const line = generationLine(generation);
    if (line !== '') lines.push(`${names[generation.generation] ?? ''}: ${line}`);
  }
  return [...lines, ...proven(year)];
}

/** “about 22 % quince left, 31 cM of it around the gene”. */
export function originWords({ kind, share, around }: DiaryOrigin): string {
  if (share === 0) return `no ${kind} left`;
  const amount = percent(share);
  const left = `${/^\d/.test(amount) ? 'about ' : ''}${amount} ${kind} left`;
  return around === null || around === 0 ? left : `${left}, ${whole(Math.round(around))} cM of it around the gene`;
}

function generationLine({ flowers, fruits, seedlings, grafted, fruiting, judged, kept, picksLost, wentOn, standing, origin }: DiaryGeneration): string {
  const parts: string[] = [];
  if (flowers > 0) parts.push(`${n(flowers, 'flower', 'flowers')} pollinated, ${fruits === 0 ? 'no fruit' : n(fruits, 'fruit', 'fruits')}`);
  else if (fruits > 0) parts.push(`${n(fruits, 'fruit', 'fruits')} gathered`);
  if (seedlings > 0) parts.push(`${n(seedlings, 'seedling', 'seedlings')} came up`);
  if (grafted > 0) parts.push(`${whole(grafted)} grafted`);
  if (fruiting > 0) parts.push(`${n(fruiting, 'tree', 'trees')} flowered for the first time`);
  if (judged > 0) parts.push(`${n(judged, 'crop', 'crops')} judged`);
  if (kept > 0) parts.push(`${whole(kept)} kept${origin ? `, ${originWords(origin)}` : ''}`);
  if (picksLost > 0) parts.push(`${n(picksLost, 'kept tree', 'kept trees')} lost`);
  if (wentOn && kept === 0) parts.push('time to go on');
  if (parts.length === 0) return '';
  return `${parts.join('; ')}. ${standing === 0 ? (seedlings + fruiting + judged + grafted > 0 ? 'None standing.' : '') : `${whole(standing)} standing.`}`.trim();
}
