import type { Comparison, Interval, PlanOutlook, Spread } from '../../results/outlook.ts';
import { Z95 } from '../../statistics/interval.ts';
import { verdictText } from '../../text/charts-table.ts';
import type { MedianYear } from './median-year.ts';

/** What a row says in words. Even: the futures made cannot tell the best apart, so nothing is ranked. */
export interface Verdict {
  readonly kind: 'clear' | 'even' | 'plain';
  readonly text: string;
}

const plain = (text: string): Verdict => ({ kind: 'plain', text });
const clear = (text: string): Verdict => ({ kind: 'clear', text });

/**
 * Returns the best and all that cannot be told from it.
 * @param order plans from best to worst
 * @param ahead tells whether the first is clearly better than the second
 */
export function front<T>(order: readonly T[], ahead: (a: T, b: T) => boolean): T[] {
  const best = order[0];
  return best === undefined ? [] : [best, ...order.slice(1).filter((other) => !ahead(best, other))];
}

function worded(order: readonly { readonly mark: string }[], leaders: readonly { readonly mark: string }[], words: (mark: string) => string): Verdict {
  const best = leaders[0];
  if (!best || order.length < 2) return plain(verdictText.alone);
  if (leaders.length === 1) return clear(words(best.mark));
  return {
    kind: 'even',
    text: verdictText.even(leaders.map(({ mark }) => mark).sort(), leaders.length === order.length),
  };
}

/**
 * Difference of two shares from their own intervals, as if their futures were others: the square-and-add rule. Plans share their futures,
 * which makes the true interval narrower, so this one rather says "no clear difference" too often than too seldom.
 *
 * **Source:** Newcombe, R. G. (1998) Stat. Med. 17:873–890, method 10 (from memory).
 */
export function shareDifference(a: Interval, b: Interval): Interval {
  const value = a.value - b.value;
  return {
    value,
    low: value - Math.hypot(a.value - a.low, b.high - b.value),
    high: value + Math.hypot(a.high - a.value, b.value - b.low),
  };
}

/** Which chance by the last year is best: by the paired comparison where there is one, since it sees the smallest true differences. */
export function chanceVerdict(plans: readonly PlanOutlook[], comparisons: readonly Comparison[]): Verdict {
  const order = [...plans].sort((a, b) => b.chance.value - a.chance.value);
  const ahead = (a: PlanOutlook, b: PlanOutlook) => {
    const straight = comparisons.find((pair) => pair.a === a.id && pair.b === b.id);
    const reverse = comparisons.find((pair) => pair.a === b.id && pair.b === a.id);
    if (straight) return straight.chanceDifference.low > 0;
    if (reverse) return reverse.chanceDifference.high < 0;
    return shareDifference(a.chance, b.chance).low > 0;
  };
  return worded(order, front(order, ahead), verdictText.best);
}

/** Which share is best, for shares that are not compared future by future. Plans without one are left out. */
export function shareVerdict(shares: readonly { readonly mark: string; readonly share: Interval | null }[]): Verdict {
  const order = shares.flatMap(({ mark, share }) => (share ? [{ mark, share }] : [])).sort((a, b) => b.share.value - a.share.value);
  return worded(
    order,
    front(order, (a, b) => shareDifference(a.share, b.share).low > 0),
    verdictText.best,
  );
}

/** Which comes first, from years with their intervals. */
export function yearVerdict(years: readonly { readonly mark: string; readonly median: MedianYear }[], sayBy: boolean): Verdict {
  const reached = years.filter(({ median }) => median.year !== null).sort((a, b) => (a.median.year ?? 0) - (b.median.year ?? 0));
  const first = reached[0];
  if (!first) return plain(verdictText.none);
  // A plan that is not there by the last year may still be in time within its error: then it cannot be called later.
  const order = [...reached, ...years.filter(({ median }) => median.year === null)];
  const leaders = front(order, (a, b) => a.median.to !== null && (b.median.from === null || a.median.to < b.median.from));
  const second = reached[1];
  if (leaders.length > 1 || years.length < 2) return worded(order, leaders, verdictText.first);
  if (!second) return clear(verdictText.only(first.mark));
  return clear(sayBy ? verdictText.firstBy(first.mark, (second.median.year ?? 0) - (first.median.year ?? 0)) : verdictText.first(first.mark));
}

/** 80 % of a normal distribution lies within this many standard deviations. */
const WIDTH_80 = 2.5631;
/** Standard error of a median is √(π/2)·σ/√n for a normal spread; doubled, because counts here are often far from normal. */
const MEDIAN_FACTOR = 2 * Math.sqrt(Math.PI / 2);

/** Rough standard error of the middle value of a spread over n futures. */
export const medianError = ({ p10, p90 }: Spread, n: number): number => (MEDIAN_FACTOR * (p90 - p10)) / WIDTH_80 / Math.sqrt(n);

export interface Amount {
  readonly mark: string;
  readonly amount: Spread;
  readonly runs: number;
}

/** Differences smaller than this share of the larger amount are no use to anyone, however many futures can tell them. */
const CLOSE = 0.08;

/** Who has the most or the least of something, by middle values. */
export function amountVerdict(amounts: readonly Amount[], want: 'most' | 'least', words: (mark: string) => string): Verdict {
  const sign = want === 'most' ? -1 : 1;
  const order = [...amounts].sort((a, b) => sign * (a.amount.p50 - b.amount.p50));
  const ahead = (a: Amount, b: Amount) => sign * (b.amount.p50 - a.amount.p50) > Z95 * Math.hypot(medianError(a.amount, a.runs), medianError(b.amount, b.runs));
  const verdict = worded(order, front(order, ahead), words);
  const [best, second] = order;
  if (verdict.kind !== 'clear' || !best || !second) return verdict;
  const near = Math.abs(second.amount.p50 - best.amount.p50) <= CLOSE * Math.max(second.amount.p50, best.amount.p50);
  return near ? clear(verdictText.close(verdict.text, second.mark)) : verdict;
}

/** Share of futures over the limit from which a plan is said to need help. */
const NEEDS_HELP = 0.05;

/** Whose hours go over the limit often enough to matter. */
export function overVerdict(plans: readonly Pick<PlanOutlook, 'mark' | 'overHours'>[]): Verdict {
  const over = plans.filter(({ overHours }) => overHours !== null && overHours.low > NEEDS_HELP).map(({ mark }) => mark);
  return plain(over.length === 0 ? verdictText.within : verdictText.help(over));
}

/** Who fills the places there are. */
export function placesVerdict(plans: readonly Pick<PlanOutlook, 'mark' | 'mostPlaces'>[], places: number): Verdict {
  const half = plans.filter(({ mostPlaces }) => mostPlaces.p50 >= places).map(({ mark }) => mark);
  if (half.length > 0) return plain(verdictText.fills(half, 0.5));
  const tenth = plans.filter(({ mostPlaces }) => mostPlaces.p90 >= places).map(({ mark }) => mark);
  return plain(tenth.length > 0 ? verdictText.fills(tenth, 0.1) : verdictText.room);
}
