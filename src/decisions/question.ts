import type { Programme } from '../model/programme.ts';
import type { Futures } from './futures.ts';

/** What every question can be told; a question adds its own, each with a first value, so that it can be asked with these alone. */
export interface AskOptions {
  /** Id of the plan that is asked about. */
  readonly plan: string;
  /** Futures of each variant in the end; the programme's own number if left out. */
  readonly runs?: number;
}

/**
 * The page answers with no more futures of each way than this, so that a dozen ways at once fit into the memory of a small device. By then a
 * chance is known to 1 in 100 (95 % half width 1.96·√(¼/20 000) = 0.7 in 100).
 */
export const MOST_FUTURES = 20_000;

/** Why a question has no answer here. */
export type CannotSay =
  | 'noPlan'
  /** No generation of the plan raises seedlings that can be weak. */
  | 'nothingWeak'
  /** There is no stock to graft on. */
  | 'noStock'
  /** The plan uses no named tree that could be lost. */
  | 'noTree'
  /** The plan has no generation to which the question applies. */
  | 'noGeneration'
  /** The programme states nothing that the question could be about. */
  | 'nothingToAsk';

/**
 * Plain data: shares 0–1, calendar years, months and hours as they are called. Every share and difference carries its 95 % interval
 * (Monte Carlo error only), and every chance of a proven tree stands beside the share of proven trees that truly are what was seen.
 */
export interface Answer {
  /** Id of the question. */
  readonly question: string;
  readonly plan: string;
  /** False while sharper figures are on the way. */
  readonly done: boolean;
  /** Futures that each figure rests on, at least. */
  readonly futures: number;
  /** Whether what the answer advises differs from the alternatives by more than the futures made leave open; false: no clear difference. */
  readonly clear: boolean;
  readonly cannotSay: null;
}

export interface NoAnswer {
  readonly question: string;
  readonly plan: string;
  readonly done: true;
  readonly cannotSay: CannotSay;
}

/** One question that can be asked of a plan: a file of its own, and a line in `questions.ts`. */
export interface Question<A extends Answer = Answer, O extends AskOptions = AskOptions> {
  readonly id: string;
  /**
   * Answers a question about a plan of a checked programme, on the programme's own futures.
   * @param report given every sharper answer on the way, the last included
   * @throws GivenUp when it is no longer asked
   */
  ask(programme: Programme, options: O, futures: Futures, report: (partial: A) => void): Promise<A | NoAnswer>;
}

export function noAnswer(question: string, plan: string, cannotSay: CannotSay): NoAnswer {
  return { question, plan, done: true, cannotSay };
}
