import type { Programme } from '../../model/programme.ts';
import { GivenUp, type Runner } from '../../workers/runner.ts';
import { poolFutures } from '../pool.ts';
import type { Answer, AskOptions, NoAnswer } from '../question.ts';
import { dataOf, errorData, errorOf, type FromAsker, type ToAsker } from './protocol.ts';

/** A thread that thinks about questions. */
export interface AskingThread {
  post(message: ToAsker, transfer: ArrayBufferLike[]): void;
  listen(heard: (message: FromAsker) => void, broken: (error: Error) => void): void;
  end(): void;
}

interface Asked {
  readonly report: (partial: Answer) => void;
  readonly done: (answer: Answer | NoAnswer) => void;
  readonly failed: (error: Error) => void;
  readonly ended: AbortSignal;
}

/** Asks questions on a thread of their own, whose futures are run on the page's threads. The thread is made when first needed. */
export class Asking {
  private thread: AskingThread | null = null;
  private readonly asked = new Map<number, Asked>();
  private lastId = 0;

  constructor(
    private readonly makeThread: (threads: number) => AskingThread,
    private readonly runner: Runner,
  ) {}

  /**
   * @param report given every sharper answer on the way
   * @param ended aborted by whoever no longer wants the answer
   * @throws GivenUp as soon as it is no longer wanted
   */
  ask(question: string, programme: Programme, options: AskOptions, report: (partial: Answer) => void, ended: AbortSignal): Promise<Answer | NoAnswer> {
    const id = (this.lastId += 1);
    const { asked } = this;
    return new Promise<Answer | NoAnswer>((done, failed) => {
      if (ended.aborted) throw new GivenUp('The question is no longer asked.');
      asked.set(id, { report, done, failed, ended });
      ended.addEventListener('abort', () => failed(new GivenUp('The question is no longer asked.')), { once: true });
      this.running().post({ type: 'ask', id, question, programme, options }, []);
    }).finally(() => asked.delete(id));
  }

  private running(): AskingThread {
    if (this.thread) return this.thread;
    const thread = this.makeThread(this.runner.threads);
    this.thread = thread;
    thread.listen(
      (message) => this.hear(thread, message),
      (error) => {
        // A thread that breaks is replaced at the next question; those it was thinking about have no answer.
        thread.end();
        this.thread = null;
        for (const { failed } of this.asked.values()) failed(error);
      },
    );
    return thread;
  }

  private hear(thread: AskingThread, message: FromAsker): void {
    const asked = this.asked.get(message.id);
    // What nobody waits for any more is not run: the question ends at its next step.
    const futures = () => poolFutures(this.runner, asked?.ended ?? AbortSignal.abort());
    const noFutures = (call: number) => (error: unknown) => thread.post({ type: 'noFutures', call, error: errorData(error) }, []);
    if (message.type === 'want') {
      const { call, want } = message;
      futures()
        .run(want.programme, want.plans, want.from, want.runs, want.whatIf)
        .then((columns) => {
          const data = columns.map(dataOf);
          thread.post(
            { type: 'futures', call, columns: data },
            data.flatMap(({ ints, amounts, byYear }) => [ints.buffer, amounts.buffer, byYear.buffer]),
          );
        }, noFutures(call));
    } else if (message.type === 'wantMixed') {
      const { call, want } = message;
      futures()
        .mixed(want.programme, want.plans, want.mix)
        .then((yearProven) => thread.post({ type: 'mixed', call, yearProven }, [yearProven.buffer]), noFutures(call));
    } else if (message.type === 'report') asked?.report(message.answer);
    else if (message.type === 'answered') asked?.done(message.answer);
    else asked?.failed(errorOf(message.error));
  }
}
