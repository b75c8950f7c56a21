import type { Programme } from '../model/programme.ts';
import { GivenUp } from '../workers/runner.ts';
import type { Futures } from './futures.ts';
import type { Answer, AskOptions, NoAnswer, Question } from './question.ts';

/** Asks one question at a time: a newer one ends the one before, which then rejects with GivenUp and reports no more. */
export class Asker {
  private current: AbortController | null = null;

  /** @param futuresFor where futures of a question are run, until its signal says that it has ended */
  constructor(private readonly futuresFor: (ended: AbortSignal) => Futures) {}

  async ask<A extends Answer, O extends AskOptions>(
    question: Question<A, O>,
    programme: Programme,
    options: O,
    report: (partial: A) => void,
  ): Promise<A | NoAnswer> {
    this.end();
    const mine = new AbortController();
    this.current = mine;
    const answer = await question.ask(programme, options, this.futuresFor(mine.signal), (partial) => {
      if (!mine.signal.aborted) report(partial);
    });
    if (mine.signal.aborted) throw new GivenUp('A newer question came.');
    return answer;
  }

  /** Ends what is being asked, as when the programme has changed. */
  end(): void {
    this.current?.abort();
    this.current = null;
  }
}
