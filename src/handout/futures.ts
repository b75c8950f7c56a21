import { FAILURES, type Failure, type PlanOutlook } from '../results/outlook.ts';
import { futuresText } from '../text/handout.ts';

export type FutureMark = 'proven' | 'waiting' | 'cross' | 'level' | 'upright' | 'square';

/** Signs of ends other than a proven tree and waiting, the most frequent first. */
const SIGNS = ['cross', 'level', 'upright', 'square'] as const;

/** Futures of a hundred that end alike. */
export interface FutureGroup {
  readonly mark: FutureMark;
  readonly count: number;
  readonly words: string;
}

/** Whole numbers that sum to `whole` and lie within one of their shares: largest remainders first, the earlier of equals. */
export function apportioned(shares: readonly number[], whole: number): number[] {
  const exact = shares.map((share) => share * whole);
  const counts = exact.map(Math.floor);
  const left = whole - counts.reduce((sum, count) => sum + count, 0);
  const order = exact.map((value, at) => ({ at, rest: value - Math.floor(value) })).sort((a, b) => b.rest - a.rest || a.at - b.at);
  for (const { at } of order.slice(0, Math.max(0, left))) counts[at] = (counts[at] ?? 0) + 1;
  return counts;
}

/** Reasons that get a line of their own; what is left is “something else”. */
const MOST_REASONS = 3;

function reasonWords(reason: Failure, last: number): string {
  return reason === 'stillWaiting' ? futuresText.reasons.stillWaiting(last) : futuresText.reasons[reason];
}

/** A hundred futures of a plan by how they end: proven first, then the most frequent ends. Counts sum to 100. */
export function hundredFutures({ chance, failures }: Pick<PlanOutlook, 'chance' | 'failures'>, lastYear: number): FutureGroup[] {
  const ends = [...FAILURES].sort((a, b) => failures[b] - failures[a]);
  const [proven = 0, ...counts] = apportioned([chance.value, ...ends.map((reason) => failures[reason])], 100);
  const named = ends.map((reason, i) => ({ reason, count: counts[i] ?? 0 })).filter(({ count }) => count > 0);
  const shown = named.length > MOST_REASONS + 1 ? named.slice(0, MOST_REASONS) : named;
  const rest = named.slice(shown.length).reduce((sum, { count }) => sum + count, 0);
  let others = 0;
  const groups = shown.map(({ reason, count }): FutureGroup => {
    const mark: FutureMark = reason === 'stillWaiting' ? 'waiting' : (SIGNS[others++] ?? 'square');
    return { mark, count, words: reasonWords(reason, lastYear) };
  });
  return [
    { mark: 'proven', count: proven, words: futuresText.proven },
    ...groups,
    ...(rest > 0 ? [{ mark: 'square' as const, count: rest, words: futuresText.other }] : []),
  ];
}
