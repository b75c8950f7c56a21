import type { Outcome } from '../../src/decisions/outcome.ts';
import type { TrialAnswer, TrialPoint, TrialWatch } from '../../src/decisions/trial.ts';
import type { Interval } from '../../src/results/outlook.ts';

/** An invented answer of the question what a trial is worth: a gain that grows with the trial up to `most`, at an error of `half`. */
export function sampleTrial(most: number, half: number, changes: Partial<TrialAnswer> = {}): TrialAnswer {
  const interval = (value: number): Interval => ({ value, low: value - half, high: value + half });
  const spread = { mean: 20, p10: 5, p50: 18, p90: 40 };
  const outcome = (chance: number): Outcome => ({
    futures: 1000,
    chance: { value: chance, low: chance - 0.03, high: chance + 0.03 },
    trulyGood: { value: 0.72, low: 0.7, high: 0.74 },
    yearProven: { p10: 2035, p50: 2044, p90: null },
    seedlings: spread,
    fruiting: spread,
    grafts: spread,
    treeYears: spread,
    totalHours: spread,
    busiestHours: spread,
  });
  const point = (n: number, summers: number): TrialPoint => {
    const worth = interval((most * n * summers) / 40);
    const measurable = worth.low > 0;
    return {
      n,
      worth,
      measurable,
      trulyGood: null,
      changes: measurable ? { of: 'left', atLeast: true, count: Math.ceil(n / 2), then: 'none', happens: 0.3 } : null,
      ifWaiting: interval(worth.value - 0.05 * summers),
      beside: interval(worth.value / 2),
      cost: { trees: 2 * n, raised: 3 * n, grafts: n, flowers: 4 * n, hours: 2 * n },
    };
  };
  const watch = (summers: number): TrialWatch => ({
    summers,
    seasons: summers,
    waiting: interval(-0.05 * summers),
    perfect: interval(1.2 * most),
    alive: { grafted: 0.5, left: 0.6 },
    points: Array.from({ length: 19 }, (_, i) => point(i + 2, summers)),
  });
  return {
    question: 'trial',
    plan: 'd',
    done: true,
    futures: 1000,
    clear: most > half,
    cannotSay: null,
    generation: 'g',
    name: 'Wide cross',
    cross: 'wide',
    batch: 'weak',
    stock: 'stock',
    month: 4,
    scions: 1,
    decisions: [
      { who: 'none', outcome: outcome(0.5), minusOwnRoots: null, minusStands: null },
      { who: 'weak', outcome: outcome(0.6), minusOwnRoots: null, minusStands: null },
    ],
    best: 'weak',
    later: { generation: 'h', name: 'Back to the pear', best: 'weak' },
    watched: [watch(1), watch(2)],
    ...changes,
  };
}
