import type { LearningThread } from './learner.ts';
import type { FromLearner } from './protocol.ts';

/** A thread of the browser that learns from the log. */
export function browserLearning(): LearningThread {
  const worker = new Worker(new URL('./lessons-host.ts', import.meta.url), { type: 'module' });
  return {
    post: (message) => worker.postMessage(message),
    listen(heard, broken) {
      worker.onmessage = ({ data }: MessageEvent<FromLearner>) => heard(data);
      worker.onerror = (event) => {
        event.preventDefault();
        broken(new Error(event.message));
      };
    },
    end: () => worker.terminate(),
  };
}
