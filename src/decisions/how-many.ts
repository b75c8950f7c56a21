import type { Generation, Plan, Programme } from '../model/programme.ts';
import type { Columns } from '../results/columns.ts';
import type { Futures } from './futures.ts';
import { chainBetween, chainOf, narrowestOf, type ChainOf, type ChainStep, type Narrowest } from './how-many-chain.ts';
import { pointOf, readOff, readOffs, tellingYears, type HeldBack, type Point, type PointOf, type ReadOff } from './how-many-curve.ts';
import { exactAnswer, type ExactAnswer } from './how-many-exact.ts';
import { handsIn, levers, leverSites, offeredBy, seedlingsExpected, triedAt, type LeverId, type LeverSite, type Tried } from './how-many-levers.ts';
import { Z95 } from '../statistics/interval.ts';
import { normalQuantile } from '../statistics/normal.ts';
import { differenceOf } from './outcome.ts';
import { noAnswer, type Answer, type AskOptions, type NoAnswer, type Question } from './question.ts';
import { runInSteps } from './steps.ts';
import { onlyPlan } from './variants.ts';

/** Futures after which a first picture is drawn, and a sharper one. */
const FIRST_STEP = 100;
const SECOND_STEP = 1000;
/** Chances that are read off. */
export const READ_AT = [0.5, 0.8, 0.95] as const;
const WANTED = 0.8;
/** Chance that any of several differences is called clear by accident. */
const ALL_WRONG = 0.05;
/** Less than this nobody would dig for. */
const LITTLE = 0.02;

export interface HowManyOptions extends AskOptions {
  /** The number asked about; flowers if left out, or seedlings where nothing is pollinated by hand. */
  readonly lever?: LeverId;
  /** Its generation; if left out the one that is to be expected to raise fewest seedlings. */
  readonly generation?: string;
  /** Chance wanted of what is planned backwards, 0 … 1; 0.8 if left out. */
  readonly chance?: number;
}

/** From the trees wanted back to the number it takes. */
export interface Backwards {
  readonly wanted: number;
  /** Proven trees wanted. */
  readonly trees: number;
  /** By the last judging year. */
  readonly needed: ReadOff;
  /** Number that the chain is of: the needed one; where none is enough, the one past which more buys little. */
  readonly at: number;
  readonly chain: readonly ChainStep[];
  readonly narrowest: Narrowest | null;
}

export interface HowManyAnswer extends Answer {
  readonly question: 'howmany';
  /** Every number of the plan that can be asked about. */
  readonly sites: readonly LeverSite[];
  readonly lever: LeverId;
  readonly generation: string | null;
  readonly name: string;
  readonly present: number;
  /** What ends the list of numbers tried: what hands can do in bloom, and what the named seed parents offer; null where nothing does. */
  readonly limits: { readonly hands: number | null; readonly offered: number | null; readonly hours: number | null };
  /** Reckoned before any future is run; null where rates and one trait alone do not answer it. */
  readonly exact: ExactAnswer | null;
  /** Three calendar years, rising, the last judging year last; empty until the quick look has come. */
  readonly years: readonly number[];
  /** By the number tried, rising. */
  readonly points: readonly Point[];
  /** The curves that were read rise throughout; false where more can cost, or clearly does. */
  readonly rises: boolean;
  readonly readOffs: readonly ReadOff[];
  /** Number tried with the highest chance; and the fewest that is not clearly worse, or by less than 2 in 100. */
  readonly best: number;
  readonly enough: number;
  /** What holds back at that number; null where more than any number tried may still help. */
  readonly heldBack: HeldBack | null;
  readonly backwards: Backwards | null;
}

/**
 * How many flowers, seedlings, picks, seasons, fruits or backups? `clear` says whether another number is clearly better than the present,
 * and by 2 in 100 or more.
 * Curves and read-offs: docs/model.md “How many”.
 */
export const howMany: Question<HowManyAnswer, HowManyOptions> = {
  id: 'howmany',
  async ask(whole, options, futures, report) {
    const { plan: id } = options;
    const programme = onlyPlan(whole, id);
    const [plan] = programme.plans;
    if (!plan) return noAnswer('howmany', id, 'noPlan');
    const sites = leverSites(programme, plan);
    const site = siteOf(programme, plan, sites, options);
    if (!site) return noAnswer('howmany', id, 'noGeneration');
    return asked(programme, plan, sites, site, options, futures, report);
  },
};

async function asked(
  programme: Programme,
  plan: Plan,
  sites: readonly LeverSite[],
  site: LeverSite,
  { runs = programme.runs, chance: wanted = WANTED }: HowManyOptions,
  futures: Futures,
  report: (partial: HowManyAnswer) => void,
): Promise<HowManyAnswer | NoAnswer> {
  const generation = plan.generations[site.position];
  const tried = triedAt(programme, plan, site);
  if (!generation) return noAnswer('howmany', plan.id, 'noGeneration');
  const exact = exactAnswer(programme, plan, generation, wanted, { lever: site.lever, values: tried.map(({ value }) => value) });
  const { limits } = programme;
  let answer: HowManyAnswer = {
    question: 'howmany',
    plan: plan.id,
    done: false,
    futures: 0,
    clear: false,
    cannotSay: null,
    sites,
    lever: site.lever,
    generation: site.generation,
    name: site.name,
    present: site.present,
    limits: { ...limitsOf(programme, generation, site.lever), hours: limits.hoursPerYear ?? null },
    exact,
    years: [],
    points: [],
    rises: levers[site.lever].rises,
    readOffs: [],
    best: site.present,
    enough: site.present,
    heldBack: null,
    backwards: null,
  };
  report(answer);
  const figures = { programme, plan, generation, site, tried, wanted };
  const variants = tried.map((one) => ({ programme: one.programme, plan: 0 }));
  const steps = [FIRST_STEP, SECOND_STEP].filter((step) => step < runs).concat(runs);
  await runInSteps(futures, variants, steps, (columns, done) => {
    answer = { ...answer, done, ...figuresOf(figures, columns) };
    report(answer);
  });
  return answer;
}

/** Where nothing was chosen: flowers of the generation that is to be expected to raise fewest seedlings. */
function siteOf(programme: Programme, plan: Plan, sites: readonly LeverSite[], { lever, generation }: HowManyOptions): LeverSite | undefined {
  const isOf = (site: LeverSite) => generation === undefined || site.generation === null || site.generation === generation;
  const kept = sites.filter((site) => (lever === undefined || site.lever === lever) && isOf(site));
  const shown = lever ?? (kept.some((site) => site.lever === 'flowers') ? 'flowers' : 'seedlings');
  const expected = ({ position }: LeverSite) => seedlingsExpected(programme, plan, position);
  const [first, ...others] = kept.filter((site) => site.lever === shown);
  return first && others.reduce((least, site) => (expected(site) < expected(least) ? site : least), first);
}

function limitsOf(programme: Programme, generation: Generation, lever: LeverId): { hands: number | null; offered: number | null } {
  if (lever !== 'flowers') return { hands: null, offered: null };
  const offered = offeredBy(programme, generation);
  return { hands: handsIn(programme), offered: Number.isFinite(offered) ? Math.round(offered) : null };
}

interface Figures {
  readonly programme: Programme;
  readonly plan: Plan;
  readonly generation: Generation;
  readonly site: LeverSite;
  readonly tried: readonly Tried[];
  readonly wanted: number;
}

type Found = Pick<HowManyAnswer, 'futures' | 'clear' | 'years' | 'points' | 'rises' | 'readOffs' | 'best' | 'enough' | 'heldBack' | 'backwards'>;

function figuresOf(figures: Figures, columns: readonly Columns[]): Found {
  const { programme, plan, site, tried } = figures;
  const present = columns[tried.findIndex(({ asItStands }) => asItStands)];
  if (!present) throw new RangeError('The plan as it stands was not run.');
  const years = tellingYears(present, programme.startYear);
  const of: PointOf = {
    startYear: programme.startYear,
    hoursLimit: programme.limits.hoursPerYear ?? null,
    names: plan.generations.flatMap(({ name, repeat }) => Array.from({ length: repeat }, () => name)),
    column: site.column,
  };
  const points = tried.flatMap((one, i) => {
    const mine = columns[i];
    return mine ? [pointOf(of, years, mine, { ...one, seedlings: limitsIn(figures, one).seedlings }, present)] : [];
  });
  const rises = levers[site.lever].rises && !fallsClearly(columns);
  const { best, enough, near } = levelOf(points, columns);
  const last = points.at(-1);
  const atEnough = points.find(({ value }) => value === enough);
  return {
    futures: present.runs,
    clear: !near,
    years,
    points,
    rises,
    readOffs: readOffs(points, years, READ_AT, rises),
    best,
    enough,
    heldBack: enough < (last?.value ?? enough) ? (atEnough?.heldBack ?? null) : null,
    backwards: backwardsOf(figures, points, years, rises, enough, columns),
  };
}

/** Some number is so clearly worse than the one tried before it that it is no accident among so many: by twice its interval. */
function fallsClearly(columns: readonly Columns[]): boolean {
  return columns.some((mine, i) => {
    const fewer = columns[i - 1];
    const { value, high } = fewer ? differenceOf(mine, fewer).chance : { value: 0, high: 0 };
    return value + 2 * (high - value) < 0;
  });
}

/**
 * The number with the highest chance (of equal ones the fewest), the fewest that is within reach of it, and whether the present one is.
 * The highest of several is picked for being high: its differences must be clear at 95 % for all of them together.
 *
 * **Source:** Dunn, O. J. (1961) J. Am. Stat. Assoc. 56:52–64 (Bonferroni; from memory).
 */
function levelOf(points: readonly Point[], columns: readonly Columns[]): { best: number; enough: number; near: boolean } {
  const best = points.reduce((most, { outcome }, i) => (outcome.chance.value > (points[most]?.outcome.chance.value ?? -1) ? i : most), 0);
  const top = columns[best];
  const wider = normalQuantile(1 - ALL_WRONG / (2 * Math.max(1, points.length - 1))) / Z95;
  const isNear = (i: number) => {
    const mine = columns[i];
    if (i === best || !top || !mine) return true;
    const { value, low } = differenceOf(top, mine).chance;
    return value < LITTLE || value - wider * (value - low) <= 0;
  };
  return {
    best: points[best]?.value ?? 0,
    enough: points.find((_, i) => isNear(i))?.value ?? 0,
    near: points.every(({ asItStands }, i) => !asItStands || isNear(i)),
  };
}

/** Seedlings and picks that a variant wants of the generation. */
function limitsIn({ site, generation }: Figures, { programme }: Tried): { seedlings: number; picks: number } {
  const { seedlings, keep } = programme.plans[0]?.generations[site.position] ?? generation;
  return { seedlings, picks: keep.howMany };
}

function backwardsOf(
  figures: Figures,
  points: readonly Point[],
  years: readonly number[],
  rises: boolean,
  enough: number,
  columns: readonly Columns[],
): Backwards | null {
  const { programme, plan, generation, site, tried, wanted } = figures;
  const year = years.at(-1);
  if (year === undefined || points.length === 0) return null;
  const needed: ReadOff = { year, chance: wanted, ...readOff(points, years.length - 1, wanted, rises) };
  const at = needed.at ?? enough;
  const of = chainShape(programme, plan, generation, site);
  const chains = tried.flatMap((one, i) => {
    const mine = columns[i];
    return mine ? [chainOf(of, limitsIn(figures, one), mine)] : [];
  });
  const chain = chainBetween(
    points.map(({ value }) => value),
    chains,
    at,
  );
  return { wanted, trees: programme.goal.trees, needed, at, chain, narrowest: narrowestOf(chain) };
}

function chainShape({ goal }: Programme, { generations }: Plan, generation: Generation, { column }: LeverSite): ChainOf {
  const shown = (conditions: typeof goal.conditions) => conditions.some((condition) => condition.type === 'shown' && (condition.atLeast ?? 0) > 0);
  return {
    column,
    pollinates: generation.pollen !== 'open',
    graftsAll: generation.rescue?.who === 'every',
    mustShow: generation.judge > 0 && shown(goal.conditions) && (generation === generations.at(-1) || shown(generation.keep.conditions)),
  };
}
