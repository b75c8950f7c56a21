import type { Columns } from '../../results/columns.ts';
import type { Futures } from '../futures.ts';
import { MOST_FUTURES } from '../question.ts';
import { questionOf } from '../questions.ts';
import { columnsOf, errorData, errorOf, type FromAsker, type ToAsker, type Want, type WantMixed } from './protocol.ts';

interface Waiting<T> {
  readonly done: (found: T) => void;
  readonly failed: (error: Error) => void;
}

/** Calls that have not been answered yet, by their number. */
class Calls<T> {
  private readonly waiting = new Map<number, Waiting<T>>();

  wait(call: number): Promise<T> {
    return new Promise((done, failed) => this.waiting.set(call, { done, failed }));
  }

  take(call: number): Waiting<T> | undefined {
    const entry = this.waiting.get(call);
    this.waiting.delete(call);
    return entry;
  }
}

/**
 * Thinks about questions on a thread of its own, so that no sum holds up the page.
 * @param post says something to whoever asks
 * @param threads that futures are run on, elsewhere
 */
export function askingHost(post: (message: FromAsker) => void, threads: number): (message: ToAsker) => void {
  const runs = new Calls<readonly Columns[]>();
  const mixes = new Calls<Int32Array>();
  let lastCall = 0;
  const wanted = (id: number, want: Want): Promise<readonly Columns[]> => {
    const call = (lastCall += 1);
    post({ type: 'want', id, call, want });
    return runs.wait(call);
  };
  const wantedMixed = (id: number, want: WantMixed): Promise<Int32Array> => {
    const call = (lastCall += 1);
    post({ type: 'wantMixed', id, call, want });
    return mixes.wait(call);
  };
  return (message) => {
    if (message.type === 'futures') runs.take(message.call)?.done(message.columns.map(columnsOf));
    else if (message.type === 'mixed') mixes.take(message.call)?.done(message.yearProven);
    else if (message.type === 'noFutures') (runs.take(message.call) ?? mixes.take(message.call))?.failed(errorOf(message.error));
    else {
      const { id, question, programme, options } = message;
      const futures: Futures = {
        threads,
        run: (variant, plans, from, count, whatIf) => wanted(id, { programme: variant, plans, from, runs: count, whatIf }),
        mixed: (variant, plans, mix) => wantedMixed(id, { programme: variant, plans, mix }),
      };
      answerOf(question)
        .ask(programme, { ...options, runs: Math.min(options.runs ?? programme.runs, MOST_FUTURES) }, futures, (answer) => post({ type: 'report', id, answer }))
        .then(
          (answer) => post({ type: 'answered', id, answer }),
          (error: unknown) => post({ type: 'failed', id, error: errorData(error) }),
        );
    }
  };
}

function answerOf(id: string) {
  const question = questionOf(id);
  if (!question) throw new RangeError(`There is no question “${id}”.`);
  return question;
}
