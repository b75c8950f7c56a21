import type { LearningThread } from './learner.ts';
import { learnAll } from './lessons.ts';
import type { FromLearner, ToLearner } from './protocol.ts';

/** Answers one message, on whatever thread it is called. */
export function answerLearner({ id, programme }: ToLearner): FromLearner {
  try {
    return { type: 'learned', id, lessons: learnAll(programme) };
  } catch (error) {
    return { type: 'failed', id, message: error instanceof Error ? error.message : String(error) };
  }
}

/** Learns on the calling thread, every message copied as between threads: for tests. */
export function inlineLearning(): LearningThread {
  let heard: (message: FromLearner) => void = () => undefined;
  return {
    post: (message) => queueMicrotask(() => heard(structuredClone(answerLearner(structuredClone(message))))),
    listen(hear) {
      heard = hear;
    },
    end() {
      heard = () => undefined;
    },
  };
}
