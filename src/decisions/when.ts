import { FactReader } from '../engine/fact-reader.ts';
import { power } from '../random/elementary.ts';
import type { Spread } from '../results/outlook.ts';
import { aliveAt, bestGraftMonth, GRAFT_FROM, GRAFT_UNTIL, takeAt } from '../statistics/graft.ts';
import { spread } from '../statistics/order.ts';
import type { Programme } from '../model/programme.ts';
import type { Columns } from '../results/columns.ts';
import { differenceOf, outcomeOf, type Difference, type Outcome } from './outcome.ts';
import { noAnswer, type Answer, type AskOptions, type Question } from './question.ts';
import { mainSite, rescueSites, toldFrom, whyNoSite, withChoice, type RescueSite } from './rescue-sites.ts';
import { FACTS_READ } from './standing.ts';
import { runInSteps, stepsTo } from './steps.ts';
import { onlyPlan, withRescueMonth } from './variants.ts';

/** Ages that the plan is run at, months; its own and the best by reckoning come between. */
const AGES = [0.5, 1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 18, 21, 24] as const;
const CURVE_STEP = 0.25;
/** Take is not known to fall before one month, so by reckoning alone ever younger would save ever more; nobody grafts by that. */
const SAVES_FROM = 1;

export interface WhenOptions extends AskOptions {
  /** The first generation that the plan rescues, or could, if left out. */
  readonly generation?: string;
}

/** Of ten weak seedlings, by age at grafting. Shares at the middle of what the guesses allow, with their range. */
export interface SavedAt {
  readonly month: number;
  readonly alive: Spread;
  readonly take: Spread;
  /** Of ten. */
  readonly saved: Spread;
}

export interface ChanceAt {
  readonly month: number;
  readonly outcome: Outcome;
  /** This age minus the one with the highest chance; null for that itself. */
  readonly minusBest: Difference | null;
}

export interface WhenAnswer extends Answer {
  readonly question: 'when';
  readonly generation: string;
  readonly name: string;
  readonly stock: string;
  readonly who: 'weak' | 'every';
  readonly scions: number;
  /** Age of the plan as it stands; null when it grafts nothing there. */
  readonly stands: number | null;
  /** Weak ones can be told from this age, months. */
  readonly toldFrom: number;
  readonly curve: readonly SavedAt[];
  /** Month from the first on that saves most: of the mean over the guesses, and in each of the futures whose facts were read. */
  readonly savesMost: { readonly month: number; readonly ofTen: number; readonly overGuesses: Spread };
  /** The whole plan by age at grafting, rising. */
  readonly chances: readonly ChanceAt[];
  /** Age with the highest chance, and the stretch of ages round it that are not clearly worse. */
  readonly best: number;
  readonly level: { readonly from: number; readonly to: number };
}

/** At which age should weak seedlings be grafted? `clear` says whether the best age is clearly better than the plan's own. */
export const when: Question<WhenAnswer, WhenOptions> = {
  id: 'when',
  async ask(programme, { plan: id, generation, runs = programme.runs }, futures, report) {
    const plan = programme.plans.find((entry) => entry.id === id);
    if (!plan) return noAnswer('when', id, 'noPlan');
    const sites = rescueSites(programme, plan);
    const site = sites.find((one) => one.generation.id === generation) ?? mainSite(sites);
    if (!site) return noAnswer('when', id, whyNoSite(programme, plan));
    const alone = onlyPlan(programme, id);
    const reckoned = reckon(new FactReader(alone), site);
    const months = agesOf(site, reckoned.savesMost.month);
    const variants = months.map((month) => ({ programme: at(alone, site, month), plan: 0 }));
    const answerOf = (columns: readonly Columns[], done: boolean): WhenAnswer => {
      const chances = chancesOf(months, columns, programme.startYear);
      return {
        question: 'when',
        plan: id,
        done,
        futures: columns[0]?.runs ?? 0,
        cannotSay: null,
        generation: site.generation.id,
        name: site.generation.name,
        stock: site.rescue.stock,
        who: whoOf(site),
        scions: site.rescue.scions,
        stands: site.stands === 'none' ? null : site.rescue.month,
        toldFrom: toldFrom(site.entries),
        ...reckoned,
        ...bestOf(chances, site),
        chances,
      };
    };
    const columns = await runInSteps(futures, variants, stepsTo(runs), (part, last) => report(answerOf(part, last)));
    return answerOf(columns, true);
  },
};

const whoOf = ({ stands, rescue }: RescueSite): 'weak' | 'every' => ((stands === 'none' ? rescue.who : stands) === 'every' ? 'every' : 'weak');

function at(programme: Programme, site: RescueSite, month: number): Programme {
  return withRescueMonth(withChoice(programme, site, whoOf(site)), site.plan, [site.generation.id], month);
}

/** Weak ones cannot be told before they look weak, so younger ages are left out for them. */
function agesOf(site: RescueSite, best: number): readonly number[] {
  const from = whoOf(site) === 'weak' ? toldFrom(site.entries) : 0;
  const halves = Math.round(2 * best) / 2;
  const ages = [...AGES, site.rescue.month, halves, Math.ceil(2 * from) / 2];
  return [...new Set(ages)].filter((month) => month >= from && month >= GRAFT_FROM && month <= GRAFT_UNTIL).sort((a, b) => a - b);
}

/** Alive × take in the futures whose facts are read: with one scion by the closed form, with more by looking along the curve. */
function reckon(reader: FactReader, { entries: [entry], rescue }: RescueSite): Pick<WhenAnswer, 'curve' | 'savesMost'> {
  const months = Array.from({ length: (GRAFT_UNTIL - GRAFT_FROM) / CURVE_STEP + 1 }, (_, i) => GRAFT_FROM + i * CURVE_STEP);
  const facts = Array.from({ length: FACTS_READ }, (_, run) => {
    reader.goTo(run);
    return { ...reader.weak(entry.id), ...reader.stock(rescue.stock) };
  });
  const curve = months.map((month): SavedAt => {
    const alive = facts.map(({ onset, halfLife }) => (halfLife <= 0 ? Number(month <= onset) : aliveAt(month, onset, halfLife)));
    const take = facts.map(({ takeTender, takeRipe, ripeMonths }) => 1 - power(1 - takeAt(month, takeTender, takeRipe, ripeMonths), rescue.scions));
    return { month, alive: spread(alive), take: spread(take), saved: spread(alive.map((share, i) => 10 * share * (take[i] ?? 0))) };
  });
  const told = Math.max(SAVES_FROM, ...facts.map(({ onset }) => onset));
  const most = (saved: (point: number) => number) => months.reduce((best, _, i) => (saved(i) > saved(best) ? i : best), 0);
  const of = (i: number) => curve[i]?.saved.mean ?? 0;
  const after = (i: number) => (Math.ceil(told / CURVE_STEP) * CURVE_STEP <= (months[i] ?? 0) || i === months.length - 1 ? of(i) : -1);
  const peak = most(after);
  const each = facts.map(({ halfLife, ...fact }) => {
    const bounded = Math.min(1e6, Math.max(1e-3, halfLife));
    if (rescue.scions === 1) return bestGraftMonth({ ...fact, halfLife: bounded }, SAVES_FROM).month;
    const saved = (i: number) => {
      const month = months[i] ?? 0;
      if (month < Math.max(SAVES_FROM, fact.onset)) return -1;
      const take = takeAt(month, fact.takeTender, fact.takeRipe, fact.ripeMonths);
      return aliveAt(month, fact.onset, bounded) * (1 - power(1 - take, rescue.scions));
    };
    return months[most(saved)] ?? GRAFT_FROM;
  });
  return { curve, savesMost: { month: months[peak] ?? GRAFT_FROM, ofTen: of(peak), overGuesses: spread(each) } };
}

function chancesOf(months: readonly number[], columns: readonly Columns[], startYear: number): readonly ChanceAt[] {
  const outcomes = columns.map((one) => outcomeOf(one, startYear));
  const best = outcomes.reduce((top, outcome, i) => (outcome.chance.value > (outcomes[top]?.chance.value ?? 0) ? i : top), 0);
  const [bestColumns] = columns.slice(best);
  return outcomes.map((outcome, i) => {
    const [mine] = columns.slice(i);
    return { month: months[i] ?? 0, outcome, minusBest: i === best || !mine || !bestColumns ? null : differenceOf(mine, bestColumns) };
  });
}

/** Ages next to the best, without a gap, that are not clearly worse than it. */
function bestOf(chances: readonly ChanceAt[], site: RescueSite): Pick<WhenAnswer, 'best' | 'level' | 'clear'> {
  const best = chances.findIndex(({ minusBest }) => minusBest === null);
  const worse = (i: number) => chances[i]?.minusBest?.clear !== false && i !== best;
  let from = best;
  let to = best;
  while (from > 0 && !worse(from - 1)) from -= 1;
  while (to < chances.length - 1 && !worse(to + 1)) to += 1;
  const month = (i: number) => chances[i]?.month ?? 0;
  const own = chances.find((chance) => chance.month === site.rescue.month);
  return { best: month(best), level: { from: month(from), to: month(to) }, clear: own?.minusBest?.clear === true };
}
