import type { FactMix } from '../../engine/fact-mix.ts';
import type { WhatIf } from '../../engine/what-if.ts';
import type { Programme } from '../../model/programme.ts';
import { Columns, type Shape } from '../../results/columns.ts';
import { GivenUp } from '../../workers/runner.ts';
import type { Answer, AskOptions, NoAnswer } from '../question.ts';

/** What the asking thread is told. An `ask` is answered by any number of reports and one `answered` or `failed`, under its number. */
export type ToAsker =
  | { readonly type: 'ask'; readonly id: number; readonly question: string; readonly programme: Programme; readonly options: AskOptions }
  /** The futures that it wanted under the number `call`, or why there are none. */
  | { readonly type: 'futures'; readonly call: number; readonly columns: readonly ColumnsData[] }
  | { readonly type: 'mixed'; readonly call: number; readonly yearProven: Int32Array }
  | { readonly type: 'noFutures'; readonly call: number; readonly error: ErrorData };

/** What the asking thread says. It runs no futures itself: it wants them from the page's threads. */
export type FromAsker =
  | { readonly type: 'want'; readonly id: number; readonly call: number; readonly want: Want }
  | { readonly type: 'wantMixed'; readonly id: number; readonly call: number; readonly want: WantMixed }
  | { readonly type: 'report'; readonly id: number; readonly answer: Answer }
  | { readonly type: 'answered'; readonly id: number; readonly answer: Answer | NoAnswer }
  | { readonly type: 'failed'; readonly id: number; readonly error: ErrorData };

/** Arguments of `Futures.run`. */
export interface Want {
  readonly programme: Programme;
  readonly plans: readonly number[];
  readonly from: number;
  readonly runs: number;
  readonly whatIf: WhatIf | undefined;
}

/** Arguments of `Futures.mixed`. */
export interface WantMixed {
  readonly programme: Programme;
  readonly plans: readonly number[];
  readonly mix: FactMix;
}

export interface ColumnsData {
  readonly shape: Shape;
  readonly runs: number;
  readonly ints: Int32Array;
  readonly amounts: Float64Array;
  readonly byYear: Float32Array;
}

export interface ErrorData {
  readonly name: string;
  readonly message: string;
  readonly stack: string;
}

export const dataOf = ({ shape, runs, ints, amounts, byYear }: Columns): ColumnsData => ({ shape, runs, ints, amounts, byYear });

export const columnsOf = ({ shape, runs, ...data }: ColumnsData): Columns => new Columns(shape, runs, data);

export function errorData(error: unknown): ErrorData {
  const { name, message, stack } = error instanceof Error ? error : new Error(String(error));
  return { name, message, stack: stack ?? '' };
}

/** An error as it was on the other thread; one that was given up is told apart by its class. */
export function errorOf({ name, message, stack }: ErrorData): Error {
  return name === 'GivenUp' ? new GivenUp(message) : Object.assign(new Error(message), { name, stack });
}
