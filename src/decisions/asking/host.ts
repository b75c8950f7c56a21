import type { Columns } from '../../results/columns.ts';
import { GivenUp } from '../../workers/runner.ts';
import type { Futures } from '../futures.ts';
import { questionOf } from '../questions.ts';
import { columnsOf, errorData, type ErrorData, type FromAsker, type ToAsker, type Want } from './protocol.ts';

interface Waiting {
  readonly done: (columns: readonly Columns[]) => void;
  readonly failed: (error: Error) => void;
}

/**
 * Thinks about questions on a thread of its own, so that no sum holds up the page.
 * @param post says something to whoever asks
 * @param threads that futures are run on, elsewhere
 */
export function askingHost(post: (message: FromAsker) => void, threads: number): (message: ToAsker) => void {
  const waiting = new Map<number, Waiting>();
  let lastCall = 0;
  const wanted = (id: number, want: Want): Promise<readonly Columns[]> =>
    new Promise((done, failed) => {
      const call = (lastCall += 1);
      waiting.set(call, { done, failed });
      post({ type: 'want', id, call, want });
    });
  const take = (call: number): Waiting | undefined => {
    const entry = waiting.get(call);
    waiting.delete(call);
    return entry;
  };
  return (message) => {
    if (message.type === 'futures') take(message.call)?.done(message.columns.map(columnsOf));
    else if (message.type === 'noFutures') take(message.call)?.failed(errorOf(message.error));
    else {
      const { id, question, programme, options } = message;
      const futures: Futures = { threads, run: (variant, plans, from, runs) => wanted(id, { programme: variant, plans, from, runs }) };
      answerOf(question)
        .ask(programme, options, futures, (answer) => post({ type: 'report', id, answer }))
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

/** An error as it was on the other thread; one that was given up is told apart by its class. */
export function errorOf({ name, message, stack }: ErrorData): Error {
  return name === 'GivenUp' ? new GivenUp(message) : Object.assign(new Error(message), { name, stack });
}
