import type { Columns } from '../results/columns.ts';

/** Numbers of three futures worth telling. */
export interface TellingFutures {
  readonly good: number;
  readonly middling: number;
  readonly bad: number;
}

/**
 * Chooses three futures of a plan: a good one (the tenth of the successes that is quickest ends here), the middle one of all, and a
 * bad one (the first that fails for the commonest reason; where none fails, the slowest).
 */
export function tellingFutures(columns: Columns): TellingFutures {
  const years = columns.run('yearProven');
  const failures = columns.run('failure');
  const rank = (run: number) => ((years[run] ?? -1) < 0 ? Infinity : (years[run] ?? 0));
  const order = Array.from(years, (_, run) => run).sort((a, b) => (rank(a) === rank(b) ? a - b : rank(a) - rank(b)));
  const successes = order.filter((run) => rank(run) < Infinity).length;
  const counts = new Map<number, number>();
  for (const code of failures) if (code >= 0) counts.set(code, (counts.get(code) ?? 0) + 1);
  const commonest = [...counts].sort(([, a], [, b]) => b - a)[0]?.[0];
  return {
    good: order[Math.floor(successes / 10)] ?? 0,
    middling: order[Math.floor(order.length / 2)] ?? 0,
    bad: commonest === undefined ? (order.at(-1) ?? 0) : failures.indexOf(commonest),
  };
}
