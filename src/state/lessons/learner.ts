import type { Programme } from '../../model/programme.ts';
import { GivenUp } from '../../workers/runner.ts';
import type { Lessons } from './lessons.ts';
import type { FromLearner, ToLearner } from './protocol.ts';

/** A thread that learns from the log. */
export interface LearningThread {
  post(message: ToLearner): void;
  listen(heard: (message: FromLearner) => void, broken: (error: Error) => void): void;
  end(): void;
}

/** Learns one programme at a time on a thread of its own, made when first needed. A thread whose work nobody wants any more is ended, not waited for. */
export class Learner {
  private thread: LearningThread | null = null;
  private lastId = 0;

  constructor(private readonly makeThread: () => LearningThread) {}

  /**
   * @param ended aborted by whoever no longer wants to know
   * @throws GivenUp as soon as it is no longer wanted
   */
  learn(programme: Programme, ended: AbortSignal): Promise<Lessons> {
    const id = (this.lastId += 1);
    const thread = (this.thread ??= this.makeThread());
    return new Promise<Lessons>((done, failed) => {
      const drop = (error: Error) => {
        thread.end();
        if (this.thread === thread) this.thread = null;
        failed(error);
      };
      const onEnd = () => drop(new GivenUp('Nobody wants to know any more.'));
      if (ended.aborted) {
        onEnd();
        return;
      }
      ended.addEventListener('abort', onEnd, { once: true });
      thread.listen((message) => {
        if (message.id !== id) return;
        ended.removeEventListener('abort', onEnd);
        if (message.type === 'learned') done(message.lessons);
        else failed(new Error(message.message));
      }, drop);
      thread.post({ type: 'learn', id, programme });
    });
  }
}
