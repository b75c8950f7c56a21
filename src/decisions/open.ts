import type { Columns } from '../results/columns.ts';
import { pollenSites, type MissingWay, type PollenSite, type PollenWay } from './open-ways.ts';
import { yearsForHours, type YearsForHours } from './open-rate.ts';
import { differenceOf, outcomeOf, type Difference, type Outcome } from './outcome.ts';
import { noAnswer, type Answer, type AskOptions, type Question } from './question.ts';
import { runInSteps, stepsTo, type Variant } from './steps.ts';
import { onlyPlan } from './variants.ts';

/** One way to get pollen onto the flowers of a generation, all else as the plan stands. */
export interface OpenWay extends Omit<PollenWay, 'programme'> {
  readonly asItStands: boolean;
  readonly outcome: Outcome;
  /** This way minus the plan as it stands; null for that itself. */
  readonly minusAsItStands: Difference | null;
  readonly yearsForHours: YearsForHours | null;
}

export interface OpenSite {
  /** Id, name and position of the generation. */
  readonly generation: string;
  readonly name: string;
  readonly position: number;
  /** The plan as it stands first. */
  readonly ways: readonly OpenWay[];
  /** Ways that are not known, with what is missing. */
  readonly missing: readonly MissingWay[];
  /** Whether some other way clearly differs in its chance, its years or its hours. */
  readonly clear: boolean;
}

export interface OpenOptions extends AskOptions {
  /** Only this generation; all of the plan if left out. */
  readonly generation?: string;
}

export interface OpenAnswer extends Answer {
  readonly question: 'open';
  /** In the order of the plan; the first is its first cross. */
  readonly sites: readonly OpenSite[];
}

/** Open or crossed by hand; and if crossed, which tree is the mother? `clear` says whether another way clearly differs at the first cross. */
export const open: Question<OpenAnswer, OpenOptions> = {
  id: 'open',
  async ask(programme, { plan: id, generation, runs = programme.runs }, futures, report) {
    const plan = programme.plans.find((entry) => entry.id === id);
    if (!plan) return noAnswer('open', id, 'noPlan');
    const alone = onlyPlan(programme, id);
    const all = pollenSites(alone, programme, plan).filter(({ ways, missing }) => ways.length + missing.length > 1);
    const only = all.filter((site) => site.generation.id === generation);
    const sites = only.length > 0 ? only : all;
    if (sites.length === 0) return noAnswer('open', id, 'noGeneration');
    const others = sites.flatMap(({ ways }) => ways.slice(1));
    const variants: Variant[] = [alone, ...others.map((way) => way.programme)].map((one) => ({ programme: one, plan: 0 }));
    const answerOf = (columns: readonly Columns[], done: boolean): OpenAnswer => {
      const [standing] = columns;
      if (!standing) throw new RangeError('The plan as it stands was not run.');
      const run = new Map(others.map((way, w) => [way, columns[w + 1]]));
      const found = sites.map((site) => siteOf(site, standing, (way) => run.get(way), programme.startYear));
      return { question: 'open', plan: id, done, futures: standing.runs, clear: found[0]?.clear === true, cannotSay: null, sites: found };
    };
    const columns = await runInSteps(futures, variants, stepsTo(runs), (part, last) => report(answerOf(part, last)));
    return answerOf(columns, true);
  },
};

function siteOf(
  { generation, position, ways, missing }: PollenSite,
  standing: Columns,
  columnsOf: (way: PollenWay) => Columns | undefined,
  startYear: number,
): OpenSite {
  const run = ways.map((one, w): OpenWay => {
    const { programme: _programme, ...way } = one;
    const own = columnsOf(one);
    return {
      ...way,
      asItStands: w === 0,
      outcome: outcomeOf(own ?? standing, startYear),
      minusAsItStands: own ? differenceOf(own, standing) : null,
      yearsForHours: own ? yearsForHours(own, standing) : null,
    };
  });
  const clear = run.some(({ minusAsItStands, yearsForHours: years }) => minusAsItStands?.clear === true || (years !== null && years.verdict !== 'unclear'));
  return { generation: generation.id, name: generation.name, position, ways: run, missing, clear };
}
