import type { Columns } from '../../results/columns.ts';
import type { Interval } from '../../results/outlook.ts';
import { differenceOf, meanDifference } from '../outcome.ts';
import type { JobKind, JobWay } from './jobs.ts';

/** What a job of this spring gains. */
export interface Job {
  readonly kind: JobKind;
  /** Ids; null where it is about none. */
  readonly generation: string | null;
  readonly seed: string | null;
  readonly pollen: string | null;
  readonly year: number;
  readonly inPlan: boolean;
  /** Chance of a proven tree with the job minus without it, on the same futures. */
  readonly gain: Interval;
  /** Whether it gains or costs anything beyond what the futures made leave open. */
  readonly clear: boolean;
  /** Hours that it takes in its own year. */
  readonly hours: Interval;
  /** Null where it takes no hours, as when none are stated. */
  readonly gainPerHour: Interval | null;
  /** One more than the jobs that are clearly worth more an hour; jobs without a clear difference share their rank. */
  readonly rank: number;
}

/** Less than half a minute is no hour's work. */
const NO_HOURS = 1 / 120;

/**
 * Weighs jobs by the chance that an hour of them gains, the best first.
 * @param stands the plan as it stands; `changed` belong to `ways`, in their order, over the same futures
 *
 * **Source:** gain an hour is a ratio of two means; its interval by the delta method, the two taken as independent (Cochran 1977, Sampling
 * Techniques, ch. 6, from memory). Ranks by paired differences of what an hour gains, future by future, with the two futures that Bonett & Price
 * (2012) add.
 */
export function worthOf(ways: readonly JobWay[], stands: Columns, changed: readonly Columns[], startYear: number): readonly Job[] {
  const weighed = ways.flatMap((way, w) => {
    const columns = changed[w];
    return columns ? [weigh(way, stands, columns, startYear)] : [];
  });
  const ranked = weighed.map((one) => ({ ...one.job, rank: 1 + weighed.filter((other) => clearlyBetter(other, one)).length }));
  const worth = ({ gainPerHour, gain }: Job) => gainPerHour?.value ?? (gain.value > 0 ? Infinity : -Infinity);
  return ranked.sort((a, b) => a.rank - b.rank || worth(b) - worth(a));
}

interface Weighed {
  readonly job: Omit<Job, 'rank'>;
  /** By future: what the job adds to a proven tree (−1, 0, 1), for each hour. */
  readonly perHour: Float64Array | null;
}

function weigh({ changed: _changed, hours: stated, ...way }: JobWay, stands: Columns, columns: Columns, startYear: number): Weighed {
  const [having, lacking] = way.inPlan ? [stands, columns] : [columns, stands];
  const { chance: gain, clear } = differenceOf(having, lacking);
  const year = way.year - startYear;
  const hours = stated === null ? meanDifference(having.year('hours', year), lacking.year('hours', year)) : { value: stated, low: stated, high: stated };
  const takesTime = hours.value > NO_HOURS;
  return {
    job: { ...way, gain, clear, hours, gainPerHour: takesTime ? perHour(gain, hours) : null },
    perHour: takesTime ? added(having, lacking).map((one) => one / hours.value) : null,
  };
}

/** Keeps the two sides of the gain's interval apart. */
function perHour(gain: Interval, hours: Interval): Interval {
  const value = gain.value / hours.value;
  const ofHours = (value * (hours.high - hours.low)) / 2 / hours.value;
  const side = (end: number) => Math.hypot((end - gain.value) / hours.value, ofHours);
  return { value, low: value - side(gain.low), high: value + side(gain.high) };
}

function added(having: Columns, lacking: Columns): Float64Array {
  const without = lacking.run('yearProven');
  return Float64Array.from(having.run('yearProven'), (year, i) => Number(year >= 0) - Number((without[i] ?? -1) >= 0));
}

/** One future is added in which only the one job gains, and one in which only the other does, as for paired shares: few futures are never too sure. */
function clearlyBetter(a: Weighed, b: Weighed): boolean {
  if (!a.perHour || !b.perHour) return false;
  const [ofA, ofB] = [1 / a.job.hours.value, 1 / b.job.hours.value];
  return meanDifference([...a.perHour, ofA, 0], [...b.perHour, 0, ofB]).low > 0;
}
