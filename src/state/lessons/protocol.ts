import type { Programme } from '../../model/programme.ts';
import { learnAll, type Lessons } from './lessons.ts';

/** What the learning thread is told. */
export interface ToLearner {
  readonly type: 'learn';
  readonly id: number;
  readonly programme: Programme;
}

/** What it says, under the number of what it was told. */
export type FromLearner =
  { readonly type: 'learned'; readonly id: number; readonly lessons: Lessons } | { readonly type: 'failed'; readonly id: number; readonly message: string };

/** Answers one message, on whatever thread it is called. */
export function answerLearner({ id, programme }: ToLearner): FromLearner {
  try {
    return { type: 'learned', id, lessons: learnAll(programme) };
  } catch (error) {
    return { type: 'failed', id, message: error instanceof Error ? error.message : String(error) };
  }
}
