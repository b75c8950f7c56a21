import { better } from './better.ts';
import { copies } from './copies.ts';
import { graft } from './graft.ts';
import { howMany } from './how-many.ts';
import { ifs } from './ifs.ts';
import { open } from './open.ts';
import type { Answer, NoAnswer, Question } from './question.ts';
import { trial } from './trial.ts';
import { unknowns } from './unknowns.ts';
import { when } from './when.ts';

/** Every question that can be asked of a plan, by its id. A new one is a file and a line here; a table of words for each then fails to compile. */
export const questions = {
  graft,
  when,
  copies,
  trial,
  open,
  howmany: howMany,
  better,
  ifs,
  unknowns,
} satisfies Readonly<Record<string, Question>>;

export type QuestionId = keyof typeof questions;

export const QUESTION_IDS: readonly string[] = Object.keys(questions);

export function isQuestionId(id: string): id is QuestionId {
  return Object.hasOwn(questions, id);
}

/** The question of that id, for whoever knows the id only as text; undefined when there is none. */
export function questionOf(id: string): Question | undefined {
  return isQuestionId(id) ? questions[id] : undefined;
}

/** An answer to one question, as its file says. */
export type AnswerTo<Id extends QuestionId> = Exclude<Awaited<ReturnType<(typeof questions)[Id]['ask']>>, NoAnswer>;

/** Whether an answer is one to this question, rather than that it cannot say. */
export function isAnswerTo<Id extends QuestionId>(id: Id, answer: Answer | NoAnswer): answer is AnswerTo<Id> {
  return answer.question === id && answer.cannotSay === null;
}
