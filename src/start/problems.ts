import type { Path } from '../model/problem.ts';
import { COUNTS, type Answers, type Draft } from './answers.ts';

/** Why a question cannot be left yet. The words for it stand in the texts. */
export type Trouble =
  | 'nameMissing'
  | 'kindMissing'
  | 'traitMissing'
  | 'sameName'
  | 'moreThanLooked'
  | 'tooSoon'
  | 'tooLate'
  | 'halfCounted'
  | 'moreThanAll'
  | 'moreThanJudged'
  | 'kindGone';
export interface Found {
  /** Where in the draft. */
  readonly path: Path;
  readonly trouble: Trouble;
}

/** The questions, in the order they are asked. */
export const QUESTIONS = ['tree', 'cross', 'means', 'known', 'goal'] as const;
export type Question = (typeof QUESTIONS)[number];

const FEWEST_YEARS = 3;
const MOST_YEARS = 150;
const at = (trouble: Trouble, ...path: Path): Found => ({ path, trouble });
const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

function aboutTree({ tree }: Answers, isKind: (id: string) => boolean): Found[] {
  return [
    ...(tree.name === '' ? [at('nameMissing', 'tree', 'name')] : []),
    ...(tree.kind === '' ? [at('kindMissing', 'tree', 'kind')] : isKind(tree.kind) ? [] : [at('kindGone', 'tree', 'kind')]),
    ...(tree.trait === '' ? [at('traitMissing', 'tree', 'trait')] : []),
    ...(tree.showed > tree.seasons ? [at('moreThanLooked', 'tree', 'showed')] : []),
  ];
}

function aboutCross({ tree, way }: Answers, draft: Draft, isKind: (id: string) => boolean): Found[] {
  const names: string[] = [tree.name];
  return draft.partners.flatMap(({ name = '', kind = tree.kind }, place): Found[] => {
    // Open seed needs no partner, and a second one may stay unnamed until it is taken out again.
    if (name === '') return way.how === 'open' ? [] : [at('nameMissing', 'partners', place, 'name')];
    const taken = names.some((each) => same(each, name));
    names.push(name);
    return [...(taken ? [at('sameName', 'partners', place, 'name')] : []), ...(isKind(kind) ? [] : [at('kindGone', 'partners', place, 'kind')])];
  });
}

function aboutMeans({ means: { firstSpring, lastYear } }: Answers): Found[] {
  if (lastYear < firstSpring + FEWEST_YEARS) return [at('tooSoon', 'means', 'lastYear')];
  return lastYear > firstSpring + MOST_YEARS ? [at('tooLate', 'means', 'lastYear')] : [];
}

function aboutCounts({ counts }: Draft): Found[] {
  return COUNTS.flatMap((name): Found[] => {
    const { hits, of } = counts[name];
    if ((hits === undefined) !== (of === undefined)) return [at('halfCounted', 'counts', name, hits === undefined ? 'hits' : 'of')];
    return hits !== undefined && of !== undefined && hits > of ? [at('moreThanAll', 'counts', name, 'hits')] : [];
  });
}

const aboutGoal = ({ goal }: Answers): Found[] => (goal.shows > goal.crops ? [at('moreThanJudged', 'goal', 'shows')] : []);

/**
 * What keeps a question from being answered, in the order of its fields.
 * @param isKind tells whether the catalogue has a kind
 */
export function troubles(question: Question, draft: Draft, answers: Answers, isKind: (id: string) => boolean): Found[] {
  switch (question) {
    case 'tree':
      return aboutTree(answers, isKind);
    case 'cross':
      return aboutCross(answers, draft, isKind);
    case 'means':
      return aboutMeans(answers);
    case 'known':
      return aboutCounts(draft);
    case 'goal':
      return aboutGoal(answers);
  }
}

/** The first question that cannot be left yet; undefined if all can. */
export const firstTroubled = (draft: Draft, answers: Answers, isKind: (id: string) => boolean): Question | undefined =>
  QUESTIONS.find((question) => troubles(question, draft, answers, isKind).length > 0);
