import type { CannotSay } from '../decisions/question.ts';
import type { QuestionId } from '../decisions/questions.ts';

/** Words that all questions of “Would it pay to…?” share. */
export const pay = {
  question: 'Would it pay to…?',
  askedOf: 'Asked of plan',
  asTheyStand: 'Take my guesses as they stand',
  plan: (mark: string, name: string) => `${mark} ${name}`,
  list: 'Questions of this page',
  /** The questions by short names, for the list that leads to them. */
  names: {
    graft: 'Graft or not',
    when: 'When to graft',
    trial: 'A trial first',
    howmany: 'How many',
    open: 'Open or crossed',
    unknowns: 'Which unknown matters',
    better: 'Better plans',
    copies: 'Copies of a tree',
    ifs: 'If something happens',
  } satisfies Readonly<Record<QuestionId, string>>,
  lede: 'Each answer lets the plan live through the same futures with one thing changed, so that only that one thing makes the difference.',
  unknown:
    'No published count of grafted against ungrafted weak hybrids was found. What follows about grafting rests on your own guesses until you try it on a few seedlings.',
  working: 'working out the first futures…',
  sharpening: 'sharper figures are on the way…',
  stale: 'This answers the programme as it was before the last change.',
  again: 'Ask again',
  stop: 'Stop',
  retry: 'Try again',
  failed: (message: string) => `The question stopped: ${message}.`,
  howSummary: (futures: number) => `How this was worked out, from ${futures.toLocaleString('en')} futures`,
  capped: (asked: number, most: number) =>
    `Your programme asks for ${asked.toLocaleString('en')} futures. Questions are answered with ${most.toLocaleString('en')} of each way: then a chance is known to 1 in 100.`,
  noDifference: 'no clear difference',
  trulyGood: (ofTen: string) => `of ten trees you would call proven, about ${ofTen} truly are`,
  cannotSay: {
    noPlan: 'There is no such plan.',
    nothingWeak: 'This plan raises no seedlings that are weak on their own roots, so there is nothing to rescue.',
    noStock: 'No rootstock is entered under “What have I got?”, so nothing can be grafted.',
    noTree: 'This plan uses no named tree that could be lost.',
    noGeneration: 'No generation of this plan is one that the question could be asked of.',
    nothingToAsk: 'The programme states nothing that this question could be about.',
  } satisfies Readonly<Record<CannotSay, string>>,
  /** What the page opens with where nothing can be grafted. */
  opening: (mark: string, why: CannotSay) =>
    why === 'nothingWeak'
      ? `Plan ${mark} raises nothing weak: there is nothing to rescue.`
      : why === 'noStock'
        ? `Plan ${mark} raises weak seedlings, and there is no rootstock to rescue them on.`
        : 'Would it pay to…?',
} as const;
