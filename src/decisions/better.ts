import type { Columns } from '../results/columns.ts';
import { startsOf, type Start } from './better/candidate.ts';
import type { ChoiceKind } from './better/choices.ts';
import { CONFIDENCE, finalists, judged, SAME, type BetterPlan, type Finalist } from './better/final.ts';
import { OVER_AT_MOST, type Look } from './better/look.ts';
import { search, STEPS, type Searched } from './better/search.ts';
import type { Futures } from './futures.ts';
import { noAnswer, type Answer, type AskOptions, type Question } from './question.ts';
import { extended, runOne, stepsTo } from './steps.ts';

/** Plans looked at, the user's own included. */
const LOOKS = 200;

export interface BetterOptions extends AskOptions {
  /** How many plans are looked at. */
  readonly looks?: number;
  /** Only these are chosen anew. */
  readonly kinds?: readonly ChoiceKind[];
}

/** A plan that was looked at closely, by its means over the futures of the search. */
export interface SeenPlan {
  /** Letter of the plan it is or came from. */
  readonly mark: string;
  readonly own: boolean;
  readonly years: number;
  readonly trees: number;
}

export interface BetterAnswer extends Answer {
  readonly question: 'better';
  /** Still looking, or comparing the best on fresh futures. */
  readonly stage: 'looking' | 'comparing';
  readonly looked: number;
  readonly looks: number;
  /** Futures run in all so far. */
  readonly futuresRun: number;
  /** Number of the first future of the final comparison: none of them, and none that the page shows, had a part in choosing. */
  readonly freshFrom: number;
  readonly lastYear: number;
  /** Confidence of all that is said about the final plans together; found plans no further apart than `same` are one. */
  readonly confidence: number;
  readonly same: { readonly years: number; readonly trees: number };
  /** A plan is within the limits when no more than this share of its futures goes over the hours or the money. */
  readonly overAtMost: number;
  readonly seen: readonly SeenPlan[];
  /** The user's own, in their order, then found ones by falling trees; those found that are clearly beaten or over the limits are left out. */
  readonly plans: readonly BetterPlan[];
  /** How many found plans did not hold on fresh futures. */
  readonly fellBack: number;
  /** Id of the plan with the soonest mean year, and how many years it is behind the soonest at most. Null while looking. */
  readonly soonest: { readonly id: string; readonly within: number } | null;
}

/**
 * Which plans within the limits does nothing beat on years and trees at once? Asked of the programme; the plan named has no part in it.
 * `clear` says whether a found plan clearly beats one of the user's that no other of the user's does, or is clearly sooner than all of them.
 */
export const better: Question<BetterAnswer, BetterOptions> = {
  id: 'better',
  async ask(programme, { plan, runs = programme.runs, looks = LOOKS, kinds }, futures, report) {
    const starts = startsOf(programme, kinds);
    if (starts.every(({ choices }) => choices.length === 0)) return noAnswer('better', plan, 'nothingToAsk');
    const freshFrom = Math.max(programme.runs, runs, STEPS[STEPS.length - 1] ?? 0);
    const answerOf = (searched: Searched, plans: readonly BetterPlan[], run: number, done: boolean): BetterAnswer => ({
      question: 'better',
      plan,
      done,
      futures: plans.length > 0 ? run : (STEPS[STEPS.length - 1] ?? 0),
      clear: clearlyBetter(plans),
      cannotSay: null,
      stage: plans.length === 0 ? 'looking' : 'comparing',
      looked: searched.looked,
      looks,
      futuresRun: searched.futures + run * plans.length,
      freshFrom,
      lastYear: programme.lastYear,
      confidence: CONFIDENCE,
      same: SAME,
      overAtMost: OVER_AT_MOST,
      seen: searched.deep.flatMap((look) => seenOf(look, starts)),
      plans: shown(plans),
      fellBack: plans.length - shown(plans).length,
      soonest: soonestOf(plans),
    });
    const searched = await search(programme, starts, looks, futures, (soFar) => report(answerOf(soFar, [], 0, false)));
    const all = finalists(programme, starts, searched.deep);
    let answer = answerOf(searched, [], 0, false);
    await fresh(futures, all, freshFrom, Math.max(2, runs), (columns, run, done) => {
      answer = answerOf(searched, judged(programme, all, columns), run, done);
      report(answer);
    });
    return answer;
  },
};

/** All finalists over the same futures from `from` on: a quick look, a sharper one, all. */
async function fresh(
  futures: Futures,
  all: readonly Finalist[],
  from: number,
  runs: number,
  report: (columns: readonly Columns[], run: number, done: boolean) => void,
): Promise<void> {
  let columns: readonly Columns[] = [];
  let run = 0;
  for (const upTo of stepsTo(runs)) {
    const [before, done] = [columns, run];
    columns = await Promise.all(
      all.map(async ({ candidate: { programme } }, f) => extended(before[f], await runOne(futures, { programme, plan: 0 }, from + done, upTo - done))),
    );
    run = upTo;
    report(columns, run, run === runs);
  }
}

function seenOf({ candidate, points }: Look, starts: readonly Start[]): readonly SeenPlan[] {
  const point = points.at(-1);
  const mark = starts[candidate.start]?.plan.mark;
  return point && mark ? [{ mark, own: candidate.changes === 0, ...point }] : [];
}

function shown(plans: readonly BetterPlan[]): readonly BetterPlan[] {
  const found = plans.filter(({ own, standing }) => !own && (standing === 'front' || standing === 'noClearDifference'));
  return [...plans.filter(({ own }) => own), ...found.sort((a, b) => b.trees.value - a.trees.value)];
}

function soonestOf(plans: readonly BetterPlan[]): BetterAnswer['soonest'] {
  const [first, ...rest] = plans.filter(({ behindSoonest }) => behindSoonest !== null);
  if (!first) return null;
  const best = rest.reduce((soonest, plan) => (plan.years.value < soonest.years.value ? plan : soonest), first);
  return { id: best.id, within: best.behindSoonest?.high ?? 0 };
}

function clearlyBetter(plans: readonly BetterPlan[]): boolean {
  const own = plans.filter(({ own: mine, standing }) => mine && standing !== 'overLimits');
  const foundBeats = own.some(({ beatenBy }) => plans.some(({ id, own: mine }) => !mine && id === beatenBy));
  return foundBeats || (plans.length > 0 && own.every(({ mayBeSoonest }) => !mayBeSoonest));
}
