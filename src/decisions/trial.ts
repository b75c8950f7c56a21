import { FactReader } from '../engine/fact-reader.ts';
import type { Programme } from '../model/programme.ts';
import type { Columns } from '../results/columns.ts';
import type { Interval } from '../results/outlook.ts';
import { perfectWorth, trialWorth } from '../statistics/preposterior.ts';
import { sitesOf, waysOf, type GraftWay, type WaysAsked } from './graft-ways.ts';
import { differenceOf } from './outcome.ts';
import { MOST_FUTURES, noAnswer, type Answer, type AskOptions, type Question } from './question.ts';
import { mainSite, rescueSites, whyNoSite, type RescueSite, type Who } from './rescue-sites.ts';
import { runInSteps, stepsTo } from './steps.ts';
import { batchOf, trialArms, trialCost, type TrialArms, type TrialBatch, type TrialCost } from './trial-arms.ts';
import { futuresOf, weigh, type Decided, type TellingResult } from './trial-worth.ts';
import { onlyPlan } from './variants.ts';

const SUMMERS = [1, 2] as const;
const FROM = 2;
const UNTIL = 20;
/** Share of the futures that raise both generations in which the later one must still be open when the trial is counted. */
const IN_TIME = 0.95;

export interface TrialOptions extends AskOptions {
  /** Generation whose seedlings are tried: the first that the plan rescues, or could, if left out. */
  readonly generation?: string;
}

/** A trial with n grafted and n left. Gains are of the chance of a proven tree by the last judging year. */
export interface TrialPoint {
  readonly n: number;
  /** Expected best chance after the result minus the best chance now, as if trying took no time. */
  readonly worth: Interval;
  /** False: worth less than can be measured with the futures made. */
  readonly measurable: boolean;
  /** Of the trees proven after the trial, the share that truly is what was seen. */
  readonly trulyGood: Interval | null;
  /** Result that would change what is done; null where none would, or none that can be told from luck. */
  readonly changes: TellingResult | null;
  /** The same gain when the whole plan waits for the result, so with the years lost. */
  readonly ifWaiting: Interval;
  /** What the result gains for the later generation, tried beside the plan; null where there is none. */
  readonly beside: Interval | null;
  readonly cost: TrialCost;
}

/** Trials counted after so many summers. */
export interface TrialWatch {
  readonly summers: number;
  /** Seasons by which the plan begins later when it waits. */
  readonly seasons: number;
  /** Chance of the best way begun so much later minus begun now, without any trial. */
  readonly waiting: Interval;
  /** Worth of knowing exactly how many live, grafted and left alone: no trial can be worth more. */
  readonly perfect: Interval;
  /** Mean share alive at the count, grafted and left, over what the guesses allow. */
  readonly alive: { readonly grafted: number; readonly left: number };
  readonly points: readonly TrialPoint[];
}

export interface TrialAnswer extends Answer {
  readonly question: 'trial';
  /** Generation whose seedlings are tried, its cross, and how they are grafted. */
  readonly generation: string;
  readonly name: string;
  readonly cross: string;
  readonly batch: TrialBatch;
  readonly stock: string;
  readonly month: number;
  readonly scions: number;
  /** What can be done, with its outcome now; none first. */
  readonly decisions: readonly GraftWay[];
  /** The best of them now. */
  readonly best: Who;
  /** Name of the later generation that a trial beside the plan still serves; null where there is none. */
  readonly later: { readonly generation: string; readonly name: string; readonly best: Who } | null;
  /** Counted after one summer, and after two. */
  readonly watched: readonly TrialWatch[];
}

/**
 * What is it worth to graft n of the first seedlings, leave n, and wait what comes of it? `clear` says whether the largest trial, watched
 * longest, is worth anything that can be measured.
 */
export const trial: Question<TrialAnswer, TrialOptions> = {
  id: 'trial',
  async ask(programme, { plan: id, generation, runs = programme.runs }, futures, report) {
    const plan = programme.plans.find((entry) => entry.id === id);
    if (!plan) return noAnswer('trial', id, 'noPlan');
    const sites = rescueSites(programme, plan);
    const site = sites.find((one) => one.generation.id === generation) ?? mainSite(sites);
    if (!site) return noAnswer('trial', id, whyNoSite(programme, plan));
    const later = sites.find(({ position }) => position > site.position);
    const alone = onlyPlan(programme, id);
    const ways = waysOf(alone, later ? [site, later] : [site]);
    // The same ways, begun later: every one anew, as all years have moved.
    const begun = SUMMERS.map((years) => waysOf(begunLater(alone, years), [site]));
    const reader = new FactReader(alone);
    const variants = [ways, ...begun].flatMap((asked) => asked.variants);
    const answerOf = (columns: readonly Columns[], done: boolean): TrialAnswer => {
      const [here, there] = sitesOf(ways, columns, programme.startYear);
      const [standing] = columns;
      if (!here || !standing) throw new RangeError('The generation that is tried was not run.');
      const deciding: Deciding = { decided: decidedAt(ways, 0, columns), best: here.best };
      const beside: Deciding | null = later && there && inTime(standing, site, later) ? { decided: decidedAt(ways, 1, columns), best: there.best } : null;
      let from = ways.variants.length;
      const watched = SUMMERS.map((summers, s): TrialWatch => {
        const asked = begun[s] ?? ways;
        const waiting = decidedAt(asked, 0, columns.slice(from));
        from += asked.variants.length;
        return watch({ programme: alone, site, arms: trialArms(reader, site, summers, standing.runs), summers }, deciding, waiting, beside);
      });
      return {
        question: 'trial',
        plan: id,
        done,
        futures: standing.runs,
        clear: watched.at(-1)?.points.at(-1)?.measurable === true,
        cannotSay: null,
        generation: here.generation,
        name: here.name,
        cross: site.entries[0].id,
        batch: batchOf(site),
        stock: here.stock,
        month: here.month,
        scions: here.scions,
        decisions: here.ways,
        best: here.best,
        later: there && beside ? { generation: there.generation, name: there.name, best: there.best } : null,
        watched,
      };
    };
    // Also off the page: every result is weighed in every future.
    const columns = await runInSteps(futures, variants, stepsTo(Math.min(runs, MOST_FUTURES)), (part, last) => {
      if (!last) report(answerOf(part, false));
    });
    const answer = answerOf(columns, true);
    report(answer);
    return answer;
  },
};

/** What can be done at a generation, what it comes to, and the best of it now. */
interface Deciding {
  readonly decided: Decided;
  readonly best: Who;
}

function decidedAt({ sites }: WaysAsked, s: number, columns: readonly Columns[]): Decided {
  const run = sites[s]?.ways.flatMap(({ who, at }) => (columns[at] ? [{ who, columns: columns[at] }] : [])) ?? [];
  return { who: run.map(({ who }) => who), columns: run.map((one) => one.columns) };
}

interface Watching {
  readonly programme: Programme;
  readonly site: RescueSite;
  readonly arms: TrialArms;
  readonly summers: number;
}

function watch({ programme, site, arms, summers }: Watching, here: Deciding, later: Decided, beside: Deciding | null): TrialWatch {
  const at = (decided: Decided, waiting: Decided | null = null) => futuresOf(decided, arms.grafted, arms.left, waiting);
  const [now, waiting, besides] = [at(here.decided), at(here.decided, later), beside ? at(beside.decided) : null];
  const best = Math.max(0, here.decided.who.indexOf(here.best));
  const standing = meanOver(arms.standing);
  const [mine, begun] = [here.decided.columns[best], later.columns[best]];
  return {
    summers,
    seasons: summers,
    waiting: mine && begun ? differenceOf(begun, mine).chance : { value: 0, low: 0, high: 0 },
    perfect: perfectWorth(now),
    alive: { grafted: meanOver(arms.grafted), left: meanOver(arms.left) },
    points: Array.from({ length: UNTIL - FROM + 1 }, (_, i): TrialPoint => {
      const n = FROM + i;
      return {
        n,
        ...weigh(here.decided, now, best, n),
        ifWaiting: trialWorth(waiting, n),
        beside: besides && trialWorth(besides, n),
        cost: trialCost(programme, site, standing, n, summers),
      };
    }),
  };
}

const meanOver = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);

/** The programme with no tree in bearing before so many years have passed: a plan that waits, while its trees grow old as ever. */
function begunLater(programme: Programme, years: number): Programme {
  const from = programme.startYear + years;
  return { ...programme, trees: programme.trees.map((tree) => ({ ...tree, bearsFrom: Math.max(tree.bearsFrom ?? from, from) })) };
}

/** Whether the later generation's seedlings come up only when the trial, made with the first ones of this, has been counted. */
function inTime(columns: Columns, { column }: RescueSite, later: RescueSite): boolean {
  const first = columns.generation(column, 'firstSeedling');
  const second = columns.generation(later.column, 'firstSeedling');
  let both = 0;
  let open = 0;
  const longest = Math.max(...SUMMERS);
  first.forEach((year, r) => {
    const next = second[r] ?? -1;
    if (year < 0 || next < 0) return;
    both += 1;
    if (next >= year + longest) open += 1;
  });
  return both > 0 && open / both >= IN_TIME;
}
