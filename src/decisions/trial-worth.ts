import type { Columns } from '../results/columns.ts';
import type { Interval } from '../results/outlook.ts';
import { wilson } from '../statistics/interval.ts';
import { trialSays, trialWorth, type TrialFutures, type TrialSays } from '../statistics/preposterior.ts';
import type { Who } from './rescue-sites.ts';

/** A result that would change what is done, said by one of its two counts. */
export interface TellingResult {
  /** Which count: seedlings left alone that are alive, or grafted ones. */
  readonly of: 'left' | 'grafted';
  readonly atLeast: boolean;
  readonly count: number;
  /** What is then done instead. */
  readonly then: Who;
  /** How often the trial comes out so, before it is made. */
  readonly happens: number;
}

/** What the decisions come to in futures 0 … n − 1. */
export interface Decided {
  readonly who: readonly Who[];
  readonly columns: readonly Columns[];
}

/** 1 where a plan has its proven tree, 0 elsewhere. */
export const provenOf = (columns: Columns): Uint8Array => Uint8Array.from(columns.run('yearProven'), (year) => (year >= 0 ? 1 : 0));

/**
 * The futures of a trial.
 * @param waiting the same decisions when the plan begins later for the sake of the trial
 */
export function futuresOf({ columns }: Decided, grafted: Float64Array, left: Float64Array, waiting: Decided | null = null): TrialFutures {
  const without = columns.map(provenOf);
  return { outcomes: waiting ? waiting.columns.map(provenOf) : without, arms: [grafted, left], without };
}

/** Worth of a trial with n and n, and what it says. */
export interface Weighed {
  readonly worth: Interval;
  readonly measurable: boolean;
  /** Of the trees proven once the trial has led, the share that truly is what was seen; null where none is proven. */
  readonly trulyGood: Interval | null;
  /** The result that changes most; null where no result would, or none that can be told from luck. */
  readonly changes: TellingResult | null;
}

export function weigh(decided: Decided, futures: TrialFutures, best: number, n: number): Weighed {
  const worth = trialWorth(futures, n);
  const measurable = worth.low > 0;
  const says = measurable ? trialSays(futures, n) : null;
  const asNow = decided.columns.map((columns, d) => new Float64Array(columns.runs).fill(d === best ? 1 : 0));
  return {
    worth,
    measurable,
    trulyGood: trulyGoodOf(decided.columns, says?.led ?? asNow),
    changes: says ? tellingResult(says, decided.who, best, n) : null,
  };
}

function trulyGoodOf(columns: readonly Columns[], led: readonly Float64Array[]): Interval | null {
  let proven = 0;
  let good = 0;
  columns.forEach((one, d) => {
    const trees = one.run('proven');
    const truly = one.run('trulyGood');
    led[d]?.forEach((chance, r) => {
      proven += chance * (trees[r] ?? 0);
      good += chance * (truly[r] ?? 0);
    });
  });
  return proven > 0 ? wilson(Math.min(good, proven), proven) : null;
}

/**
 * Finds the one count that changes most: of all “at least k” and “at most k” of either arm and all other decisions, the one whose gain over the
 * best decision now is greatest when nothing else is looked at.
 */
export function tellingResult({ results }: TrialSays, who: readonly Who[], best: number, n: number): TellingResult | null {
  let most = 0;
  let telling: TellingResult | null = null;
  for (const of of ['grafted', 'left'] as const) {
    const counts = marginal(results, of, n);
    who.forEach((then, d) => {
      if (d === best) return;
      for (let count = 0; count <= n; count += 1) {
        for (const atLeast of [true, false]) {
          const region = counts.filter((_, k) => (atLeast ? k >= count : k <= count));
          const gain = region.reduce((sum, { sums }) => sum + (sums[d] ?? 0) - (sums[best] ?? 0), 0);
          if (gain <= most + 1e-12) continue;
          most = gain;
          telling = {
            of,
            atLeast,
            count,
            then,
            happens: Math.min(
              1,
              region.reduce((sum, { chance }) => sum + chance, 0),
            ),
          };
        }
      }
    });
  }
  return telling;
}

function marginal(results: TrialSays['results'], of: TellingResult['of'], n: number): { readonly chance: number; readonly sums: readonly number[] }[] {
  return Array.from({ length: n + 1 }, (_, k) => {
    const alike = results.filter((__, t) => (of === 'grafted' ? Math.floor(t / (n + 1)) : t % (n + 1)) === k);
    const kinds = alike[0]?.sums.length ?? 0;
    return {
      chance: alike.reduce((sum, { chance }) => sum + chance, 0),
      sums: Array.from({ length: kinds }, (__, d) => alike.reduce((sum, { sums }) => sum + (sums[d] ?? 0), 0)),
    };
  });
}
