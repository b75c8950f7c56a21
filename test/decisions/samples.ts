import { readFileSync } from 'node:fs';
import { inlineFutures } from '../../src/decisions/inline.ts';
import type { Answer, AskOptions, NoAnswer, Question } from '../../src/decisions/question.ts';
import type { Programme } from '../../src/model/programme.ts';
import { cross, document, generation, kind, plans, read, stock, tree, type Document } from '../engine/programmes.ts';

export const redPear: Programme = read(JSON.parse(readFileSync(new URL('../../sims/examples/red-pear.json', import.meta.url), 'utf8')));

/** Facts of check PC7: half dead five months after month 2, grafted at 3 months, half take, stock loss 2 %, first fruit in season 6. */
export const PC7 = { halfLife: 5, onset: 2, month: 3, take: 0.5, stockLoss: 0.02, years: 6 };

/**
 * One weak seedling of two trees that carry nothing but the wanted allele: proven if it comes to fruit. So the chance of the programme is
 * that of one weak seedling, and closed forms apply.
 */
export const oneWeak = (
  rootChance: number,
  changes: Partial<Document> = {},
  rescue: object | null = { who: 'weak', month: PC7.month, stock: 'stock' },
): Programme =>
  read(
    document({
      lastYear: 2010,
      kinds: [kind({ firstFruit: { years: PC7.years } })],
      trees: ['a', 'b'].map((id) => tree(id, { genes: { r: { copies: 2 } } })),
      crosses: [cross({ weakness: { share: 1, onset: PC7.onset, course: { halfLife: PC7.halfLife }, rootBorne: { chance: rootChance } } })],
      stocks: [stock({ takeTender: PC7.take, takeRipe: PC7.take, yearlyLoss: PC7.stockLoss })],
      plans: plans([generation('g', 1, rescue === null ? {} : { rescue: rescue as never })]),
      ...changes,
    }),
  );

/** The last answer, and every report on the way. */
export async function told<A extends Answer, O extends AskOptions>(
  question: Question<A, O>,
  programme: Programme,
  options: O,
): Promise<{ readonly answer: A; readonly reports: readonly A[] }> {
  const reports: A[] = [];
  const answer: A | NoAnswer = await question.ask(programme, options, inlineFutures(), (partial) => reports.push(partial));
  if (answer.cannotSay !== null) throw new Error(`There is no answer: ${answer.cannotSay}.`);
  return { answer, reports };
}
