import type { Programme } from '../../model/programme.ts';
import type { Lessons } from './lessons.ts';

/** What the learning thread is told. */
export interface ToLearner {
  readonly type: 'learn';
  readonly id: number;
  readonly programme: Programme;
}

/** What it says, under the number of what it was told. */
export type FromLearner =
  { readonly type: 'learned'; readonly id: number; readonly lessons: Lessons } | { readonly type: 'failed'; readonly id: number; readonly message: string };
