import type { Diary, DiaryGeneration, DiaryYear } from '../results/diary.ts';
import { listed, whole } from './charts.ts';

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

/** What was so in this future without anyone knowing it. */
export function hiddenFacts({ rules, facts }: Diary): string[] {
  return [...rules.map(({ trait, rule }) => `${trait}: ${rule}`), ...facts.map(({ fact, holds }) => (holds ? fact : `not so that ${fact}`))];
}

/** The entries of one year, one sentence each. */
export function entries(year: DiaryYear, names: readonly string[]): string[] {
  const lines = year.lost.map((name) => `${name} was lost over the winter.`);
  if (year.frost) lines.push('Frost in bloom.');
  for (const generation of year.generations) {
    const line = generationLine(generation);
    if (line !== '') lines.push(`${names[generation.generation] ?? ''}: ${line}`);
  }
  if (year.proven > 0) lines.push(year.proven === 1 ? 'A tree is proven.' : `${whole(year.proven)} trees are proven.`);
  return lines;
}

function generationLine({ flowers, fruits, seedlings, grafted, fruiting, judged, kept, picksLost, wentOn, standing }: DiaryGeneration): string {
  const parts: string[] = [];
  if (flowers > 0) parts.push(`${n(flowers, 'flower', 'flowers')} pollinated, ${fruits === 0 ? 'no fruit' : n(fruits, 'fruit', 'fruits')}`);
  else if (fruits > 0) parts.push(`${n(fruits, 'fruit', 'fruits')} gathered`);
  if (seedlings > 0) parts.push(`${n(seedlings, 'seedling', 'seedlings')} came up`);
  if (grafted > 0) parts.push(`${whole(grafted)} grafted`);
  if (fruiting > 0) parts.push(`${n(fruiting, 'tree', 'trees')} flowered for the first time`);
  if (judged > 0) parts.push(`${n(judged, 'crop', 'crops')} judged`);
  if (kept > 0) parts.push(`${whole(kept)} kept`);
  if (picksLost > 0) parts.push(`${n(picksLost, 'kept tree', 'kept trees')} lost`);
  if (wentOn && kept === 0) parts.push('time to go on');
  if (parts.length === 0) return '';
  return `${parts.join('; ')}. ${standing === 0 ? (seedlings + fruiting + judged + grafted > 0 ? 'None standing.' : '') : `${whole(standing)} standing.`}`.trim();
}
