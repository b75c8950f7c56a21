import { freeMark, freshId, freshName } from '../../model/plans.ts';
import type { Plan, Programme } from '../../model/programme.ts';
import type { Columns } from '../../results/columns.ts';
import type { Interval } from '../../results/outlook.ts';
import { dominates, type Point } from '../../statistics/fronts.ts';
import { wilson } from '../../statistics/interval.ts';
import { againstBest, clearlyBeaten } from '../../statistics/selection.ts';
import { differenceOf, meanDifference, outcomeOf, type Difference, type Outcome } from '../outcome.ts';
import { AS_IT_STANDS, candidate, changesOf, type Candidate, type Start } from './candidate.ts';
import { allowed, overLimits, yearsOf, type Look } from './look.ts';
import { ranked, STEPS } from './search.ts';
import { named, noteOf, shortName, type Changed } from './words.ts';

/** Two found plans that differ by no more than this count as the same, and the simpler one is kept: a quarter of a year, one seedling. */
export const SAME = { years: 0.25, trees: 1 } as const;
/** Of everything that is said of the final plans together; half of what may go wrong is for the front, half for the soonest. */
export const CONFIDENCE = 0.95;
/** Found plans that are compared on fresh futures. */
const FINALISTS = 14;

/** A plan in the final comparison, and what it came from. */
export interface Finalist {
  readonly candidate: Candidate;
  readonly own: boolean;
  readonly id: string;
  readonly name: string;
  readonly changes: readonly Changed[];
  readonly document: Plan;
}

/**
 * How a plan stands: on the front; on it as far as can be told, though another has better means on both; clearly beaten on both by another;
 * or over the hours or money that there are, and so out of the comparison.
 */
export type Standing = 'front' | 'noClearDifference' | 'beaten' | 'overLimits';

export interface BetterPlan {
  readonly id: string;
  /** One of the user's own, as it stands. */
  readonly own: boolean;
  /** Letter and id of the user's plan that it is or came from. */
  readonly mark: Plan['mark'];
  readonly from: string;
  /** In words: “plan D, with 600 flowers”. */
  readonly name: string;
  readonly changes: readonly Changed[];
  /** The whole plan, ready to be added to the programme. */
  readonly document: Plan;
  readonly standing: Standing;
  /** Id of the plan that clearly beats it. */
  readonly beatenBy: string | null;
  /** Mean calendar year of the proven tree; a future without one counts as the year after the last judging year. */
  readonly years: Interval;
  /** Mean number of seedlings raised. */
  readonly trees: Interval;
  readonly outcome: Outcome;
  /** Share of the futures with a year over the hours or the money; null when there is no such limit. */
  readonly over: Interval | null;
  /** Years behind the soonest of the others, below 0 before it; null when it is over the limits. */
  readonly behindSoonest: { readonly low: number; readonly high: number } | null;
  readonly mayBeSoonest: boolean;
  /** Whether its chance of a proven tree is clearly lower than that of the user's plan with the highest. */
  readonly lowerChance: boolean;
  /** This minus the plan it came from; null for the user's own. */
  readonly minusFrom: (Difference & { readonly years: Interval }) | null;
}

/** The user's plans and the best of what was found, not two that are the same for all that matters. */
export function finalists(programme: Programme, starts: readonly Start[], deep: readonly Look[]): readonly Finalist[] {
  const last = STEPS.length - 1;
  const own = starts.flatMap(({ plan, choices }, s): Finalist[] => {
    const stands = candidate(
      programme,
      starts,
      s,
      choices.map(() => AS_IT_STANDS),
    );
    return stands ? [{ candidate: stands, own: true, id: plan.id, name: named(plan.mark, [], 1), changes: [], document: plan }] : [];
  });
  const taken = deep.filter(({ candidate: { changes } }) => changes === 0).filter(allowed);
  const found: Look[] = [];
  for (const look of ranked(deep.filter(allowed), last)) {
    if (found.length === FINALISTS) break;
    if ([...taken, ...found].some((other) => same(other.points[last], look.points[last]))) continue;
    const [simplest] = deep
      .filter((other) => allowed(other) && same(other.points[last], look.points[last]))
      .sort((a, b) => a.candidate.changes - b.candidate.changes);
    found.push(simplest ?? look);
  }
  return [...own, ...documented(programme, starts, found)];
}

const same = (a: Point | undefined, b: Point | undefined): boolean =>
  a !== undefined && b !== undefined && Math.abs(a.years - b.years) <= SAME.years && Math.abs(a.trees - b.trees) <= SAME.trees;

function documented(programme: Programme, starts: readonly Start[], found: readonly Look[]): readonly Finalist[] {
  const mark = freeMark(programme);
  const out: Finalist[] = [];
  for (const { candidate: one } of found) {
    const from = starts[one.start]?.plan;
    if (!from) continue;
    const others = [...programme.plans, ...out.map(({ document }) => document)];
    const changes = changesOf(one, starts);
    const words = named(from.mark, changes, from.generations.length);
    const id = freshId(
      from.id,
      others.map((plan) => plan.id),
    );
    const name = freshName(shortName(from.mark, changes), { ...programme, plans: others });
    const document: Plan = { ...one.plan, id, mark: mark ?? from.mark, name, note: noteOf(from.mark, from.name, words) };
    out.push({ candidate: one, own: false, id, name: words, changes: changes.filter((change) => change.words.length > 0), document });
  }
  return out;
}

/** Mean with its 95 % interval. */
const meanOf = (values: ArrayLike<number>): Interval => meanDifference(values, new Float64Array(values.length));

/**
 * Judges the finalists on futures that had no part in choosing them.
 * @param columns one a finalist, all over the same futures, two at least
 */
export function judged(programme: Programme, all: readonly Finalist[], columns: readonly Columns[]): readonly BetterPlan[] {
  const runs = all.flatMap((finalist, f) => {
    const mine = columns[f];
    if (!mine) return [];
    return [{ finalist, columns: mine, years: yearsOf(programme, mine), trees: mine.run('seedlings'), over: overLimits(programme, mine) }];
  });
  const within = runs.filter(({ over, columns: { runs: futures } }) => allowed({ over, futures }));
  const half = 1 - (1 - CONFIDENCE) / 2;
  const years = within.map((run) => run.years);
  const beaten = clearlyBeaten(
    years,
    within.map((run) => run.trees),
    half,
  );
  const soonest = againstBest(years, half);
  const points = within.map((run): Point => ({ years: meanOf(run.years).value, trees: meanOf(run.trees).value }));
  const outcomes = runs.map((run) => outcomeOf(run.columns, programme.startYear));
  const chance = (r: number) => outcomes[r]?.chance.value ?? 0;
  const [likeliest] = runs
    .map((_, r) => r)
    .filter((r) => runs[r]?.finalist.own)
    .sort((a, b) => chance(b) - chance(a));
  const { hoursPerYear, moneyPerYear } = programme.limits;
  const unlimited = hoursPerYear === undefined && moneyPerYear === undefined;
  return runs.flatMap(({ finalist, ...run }, r): BetterPlan[] => {
    const outcome = outcomes[r];
    if (!outcome) return [];
    const { own, id, name, changes, document, candidate: one } = finalist;
    const from = programme.plans[one.start];
    const stands = runs.find((other) => other.finalist.own && other.finalist.candidate.start === one.start);
    const best = likeliest === undefined ? undefined : runs[likeliest];
    const w = within.findIndex((other) => other.finalist === finalist);
    const by = beaten[w] ?? -1;
    const mine = points[w];
    const bound = soonest[w];
    const standing: Standing = !mine ? 'overLimits' : by >= 0 ? 'beaten' : points.some((point) => dominates(point, mine)) ? 'noClearDifference' : 'front';
    return [
      {
        id,
        own,
        mark: from?.mark ?? document.mark,
        from: from?.id ?? id,
        name,
        changes,
        document,
        standing,
        beatenBy: within[by]?.finalist.id ?? null,
        years: meanOf(run.years),
        trees: meanOf(run.trees),
        outcome,
        over: unlimited ? null : wilson(run.over, run.columns.runs),
        behindSoonest: bound ? { low: bound.low, high: bound.high } : null,
        mayBeSoonest: bound?.mayBeBest === true,
        lowerChance: best !== undefined && differenceOf(run.columns, best.columns).chance.high < 0,
        minusFrom: own || !stands ? null : { ...differenceOf(run.columns, stands.columns), years: meanDifference(run.years, stands.years) },
      },
    ];
  });
}
