import { FactReader } from '../engine/fact-reader.ts';
import type { Programme } from '../model/programme.ts';
import type { Columns } from '../results/columns.ts';
import type { Futures } from './futures.ts';
import { MapRun, monthsAxis, sharesOf, type GraftMap } from './graft-map.ts';
import { clearAt, sitesOf, waysOf, type GraftSite } from './graft-ways.ts';
import { noAnswer, type Answer, type AskOptions, type NoAnswer, type Question } from './question.ts';
import { mainSite, rescueSites, whyNoSite, type RescueSite } from './rescue-sites.ts';
import { rootChanceOf, rootsLine, rootsVariants, type RootsLine } from './roots-line.ts';
import { FACTS_READ, standing, type Standing } from './standing.ts';
import { extended, runInSteps, runOne, type Variant } from './steps.ts';
import { stockOrder, type StockUse } from './stock-order.ts';
import { onlyPlan } from './variants.ts';

const FIRST_STEP = 100;
const SECOND_STEP = 1000;

export interface GraftOptions extends AskOptions {
  /** Generation that map, line and stocks are about: the first that the plan rescues, or could, if left out. */
  readonly generation?: string;
  /** Leave the map out: it is most of the work. */
  readonly withoutMap?: boolean;
}

export interface GraftAnswer extends Answer {
  readonly question: 'graft';
  /** In the order of the plan's generations. */
  readonly sites: readonly GraftSite[];
  /** Generation that the rest is about. */
  readonly generation: string;
  /** Where this programme stands on the map, with its guesses. */
  readonly standing: Standing;
  /** Null until the quick look has come. */
  readonly map: GraftMap | null;
  /** Share of what the guesses allow that lies where each choice wins on the map. */
  readonly guesses: { readonly graft: number; readonly own: number; readonly neither: number } | null;
  /** The chance that weakness sits in the roots as the programme states it. */
  readonly rootChance: number;
  /** Null until it has been run. */
  readonly roots: RootsLine | null;
  /** Who should get the stocks first when there are only so many. */
  readonly stocks: readonly StockUse[];
}

/** Graft weak seedlings, every seedling, or leave them on their own roots? Above which take, below which months; and whom first? */
export const graft: Question<GraftAnswer, GraftOptions> = {
  id: 'graft',
  async ask(programme, options, futures, report) {
    const { plan: id } = options;
    const plan = programme.plans.find((entry) => entry.id === id);
    if (!plan) return noAnswer('graft', id, 'noPlan');
    const sites = rescueSites(programme, plan);
    const main = sites.find(({ generation }) => generation.id === options.generation) ?? mainSite(sites);
    if (!main) return noAnswer('graft', id, whyNoSite(programme, plan));
    return asked(onlyPlan(programme, id), sites, main, options, futures, report);
  },
};

async function asked(
  programme: Programme,
  sites: readonly RescueSite[],
  main: RescueSite,
  { plan, runs = programme.runs, withoutMap = false }: GraftOptions,
  futures: Futures,
  report: (partial: GraftAnswer) => void,
): Promise<GraftAnswer | NoAnswer> {
  const ways = waysOf(programme, sites);
  const reader = new FactReader(programme);
  const axis = monthsAxis(halfLives(reader, main));
  const stands = standing(reader, main.entries[0].id, main.rescue.stock, main.rescue.month, axis);
  let columns = await runInSteps(futures, ways.variants, [Math.min(FIRST_STEP, runs)], () => undefined);
  let answer: GraftAnswer = {
    question: 'graft',
    plan,
    done: false,
    ...figures(columns),
    cannotSay: null,
    generation: main.generation.id,
    standing: stands,
    map: null,
    guesses: null,
    rootChance: rootChanceOf(programme, main.entries[0]),
    roots: null,
    stocks: [],
  };
  const tell = (more: Partial<GraftAnswer>) => {
    answer = { ...answer, ...more };
    report(answer);
  };
  function figures(run: readonly Columns[]): Pick<GraftAnswer, 'sites' | 'clear' | 'futures'> {
    const found = sitesOf(ways, run, programme.startYear);
    return { sites: found, clear: clearAt(found), futures: run[0]?.runs ?? 0 };
  }
  const mapped = (map: GraftMap) => ({ map, guesses: sharesOf(map, stands.draws) });
  tell({});
  const map = withoutMap ? null : new MapRun(programme, main, axis, futures);
  if (map) tell(mapped(await map.look()));
  for (const step of [SECOND_STEP, runs].filter((upTo) => upTo <= runs)) {
    columns = await further(futures, ways.variants, columns, step);
    tell({ ...figures(columns), ...(answer.stocks.length === 0 ? { stocks: stocksOf(reader, sites, columns) } : {}) });
    if (step === SECOND_STEP || runs < SECOND_STEP)
      tell({ roots: rootsLine(await runInSteps(futures, rootsVariants(programme, main), [step], () => undefined)) });
  }
  if (map) tell(mapped(await map.refine((partial) => tell(mapped(partial)))));
  tell({ done: true });
  return answer;
}

const stocksOf = (reader: FactReader, sites: readonly RescueSite[], columns: readonly Columns[]) => (columns[0] ? stockOrder(reader, sites, columns[0]) : []);

function halfLives(reader: FactReader, { entries: [entry] }: RescueSite): number[] {
  return Array.from({ length: FACTS_READ }, (_, run) => {
    reader.goTo(run);
    return reader.weak(entry.id).halfLife;
  });
}

/** Runs every variant on, up to so many futures. */
function further(futures: Futures, variants: readonly Variant[], columns: readonly Columns[], upTo: number): Promise<readonly Columns[]> {
  return Promise.all(
    variants.map(async (variant, v) => {
      const before = columns[v];
      const from = before?.runs ?? 0;
      return before && from >= upTo ? before : extended(before, await runOne(futures, variant, from, upTo - from));
    }),
  );
}
