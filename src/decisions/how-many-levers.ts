import { checkProgramme } from '../model/check.ts';
import { meanOf } from '../model/mean.ts';
import type { Generation, Plan, Programme, ShownTrait } from '../model/programme.ts';
import { pairsReached } from '../model/reach.ts';
import { countsAround, wholeAround } from './how-many-grid.ts';
import { withGeneration } from './variants.ts';

export const LEVERS = ['flowers', 'seedlings', 'crosses', 'picks', 'seasons', 'fruitsCut', 'backups'] as const;
export type LeverId = (typeof LEVERS)[number];

/** A number that a breeder chooses. Each is one entry of `levers`. */
interface Lever {
  /** Of one generation, or of the whole plan. */
  readonly of: 'generation' | 'plan';
  /** The number as the plan stands; null where there is nothing to choose. */
  readonly present: (programme: Programme, generation: Generation) => number | null;
  /** Numbers to try, rising; the present one is added. */
  readonly grid: (present: number, programme: Programme, generation: Generation) => readonly number[];
  /** A pure edit that keeps what luck is keyed by (docs/decisions/0005). */
  readonly set: (programme: Programme, plan: string, generation: string, value: number) => Programme;
  /** With more of it a chance can only rise, as long as there is room and time for all: the curve is made to rise. */
  readonly rises: boolean;
}

type Change = (generation: Generation, value: number, programme: Programme) => Generation;
const changing =
  (change: Change): Lever['set'] =>
  (programme, plan, generation, value) =>
    withGeneration(programme, plan, generation, (entry) => change(entry, value, programme));

const MOST_FLOWERS = 1e6;
const MOST_SEEDLINGS = 1e5;
const MOST_TREES = 100;
const MOST_SEASONS = 20;
const MOST_CUT = 100;
const MOST_BACKUPS = 10;

/** Hands in bloom: more flowers than that nobody pollinates. */
export const handsIn = ({ limits }: Programme): number => Math.floor(limits.bloomDays * limits.hoursADay * limits.flowersAnHour);

/** Flowers that the named seed parents of a generation offer a spring, at the middle of the guesses; Infinity where picks are among them. */
export function offeredBy({ trees }: Programme, { seedParents, pollen, reciprocal }: Generation): number {
  const mothers = [...seedParents, ...(reciprocal && Array.isArray(pollen) ? pollen : [])];
  const named = new Set(mothers.flatMap((parent) => ('tree' in parent ? parent.tree : [])));
  return mothers.every((parent) => 'tree' in parent) ? [...named].reduce((sum, id) => sum + offerOf(trees, id), 0) : Infinity;
}

function offerOf(trees: Programme['trees'], id: string): number {
  const tree = trees.find((entry) => entry.id === id);
  return tree ? meanOf(tree.flowers) : 0;
}

/** Seedlings that a generation is to be expected to raise over its springs, at the middle of the guesses: at most those wanted. */
export function seedlingsExpected(programme: Programme, plan: Plan, position: number): number {
  const generation = plan.generations[position];
  const pairs = pairsReached(programme, plan).filter((pair) => pair.generation === position && !pair.stray);
  if (!generation || pairs.length === 0) return 0;
  const fertility = (kind: string, as: 'fertilityAsSeedParent' | 'fertilityAsPollenParent') => meanOf(programme.kinds.find(({ id }) => id === kind)?.[as] ?? 1);
  const aFlower = pairs.map(({ seed, pollen, entry }) => {
    if (!entry) return 0;
    const set = Math.min(1, meanOf(entry.set) * fertility(seed, 'fertilityAsSeedParent') * fertility(pollen, 'fertilityAsPollenParent'));
    const route = entry.routes.find(({ id }) => id === generation.route);
    const seeds = meanOf(entry.seedsPerFruit ?? programme.kinds.find(({ id }) => id === seed)?.seedsPerFruit ?? 1);
    return set * (1 - meanOf(entry.emptyFruit)) * seeds * meanOf(route?.germination ?? entry.germination);
  });
  const flowers = Math.min(generation.flowers, handsIn(programme), offeredBy(programme, generation)) * generation.springs;
  return Math.min(generation.seedlings, (flowers * aFlower.reduce((sum, each) => sum + each, 0)) / pairs.length);
}

/** Side of the crosses on which several named trees stand: seed parents first. */
function manySide({ seedParents, pollen }: Generation): 'seedParents' | 'pollen' | null {
  if (seedParents.length > 1 && seedParents.every((parent) => 'tree' in parent)) return 'seedParents';
  return Array.isArray(pollen) && pollen.length > 1 && pollen.every((parent) => 'tree' in parent) ? 'pollen' : null;
}

function withParents(generation: Generation, value: number): Generation {
  const side = manySide(generation);
  if (side === 'seedParents') return { ...generation, seedParents: generation.seedParents.slice(0, value) };
  return side === 'pollen' && Array.isArray(generation.pollen) ? { ...generation, pollen: generation.pollen.slice(0, value) } : generation;
}

function graded({ traits, goal, plans }: Programme): readonly ShownTrait[] {
  const looked = new Set(
    [...goal.conditions, ...plans.flatMap(({ generations }) => generations.flatMap(({ keep }) => keep.conditions))].flatMap((condition) =>
      condition.type === 'shown' ? condition.trait : [],
    ),
  );
  return traits.filter((trait): trait is ShownTrait => trait.type === 'shown' && trait.grade !== undefined && looked.has(trait.id));
}

function withBackups(generation: Generation, copies: number, { stocks }: Programme): Generation {
  const { backup, ...rest } = generation;
  if (copies === 0) return rest;
  const stock = backup?.stock ?? stocks[0]?.id;
  return stock === undefined ? generation : { ...rest, backup: { ...(backup ?? { stock }), copies } };
}

/** Every number that can be asked about. A new one is an entry here and one in the table of words. */
export const levers: Readonly<Record<LeverId, Lever>> = {
  flowers: {
    of: 'generation',
    present: (_, { pollen, flowers }) => (pollen === 'open' ? null : flowers),
    grid: (present, programme, generation) => {
      const most = Math.min(handsIn(programme), offeredBy(programme, generation), MOST_FLOWERS);
      return countsAround(present, 1, Math.max(present, most));
    },
    set: changing((generation, flowers) => ({ ...generation, flowers })),
    rises: true,
  },
  seedlings: {
    of: 'generation',
    present: (_, { seedlings }) => seedlings,
    grid: (present) => countsAround(present, 1, MOST_SEEDLINGS),
    set: changing((generation, seedlings) => ({ ...generation, seedlings })),
    rises: true,
  },
  crosses: {
    of: 'generation',
    present: (_, generation) => {
      const side = manySide(generation);
      return side === null ? null : generation[side].length;
    },
    grid: (present) => wholeAround(present, 1, present),
    set: changing(withParents),
    rises: false,
  },
  picks: {
    of: 'generation',
    present: (_, { keep }) => keep.howMany,
    grid: (present) => wholeAround(present, 1, MOST_TREES),
    set: changing((generation, howMany) => {
      const { count } = generation.goOn;
      const goOn = count === undefined ? generation.goOn : { ...generation.goOn, count: Math.min(count, howMany) };
      return { ...generation, goOn, keep: { ...generation.keep, howMany } };
    }),
    rises: false,
  },
  seasons: {
    of: 'generation',
    present: (_, { judge }) => judge,
    grid: (present) => wholeAround(present, 0, MOST_SEASONS),
    set: changing((generation, judge) => ({ ...generation, judge })),
    rises: false,
  },
  fruitsCut: {
    of: 'plan',
    present: (programme) => graded(programme)[0]?.grade?.fruitsCut ?? null,
    grid: (present) => wholeAround(present, 1, MOST_CUT),
    set: (programme, _plan, _generation, fruitsCut) => {
      const changed = new Set(graded(programme).map(({ id }) => id));
      return {
        ...programme,
        traits: programme.traits.map((trait) =>
          trait.type === 'shown' && trait.grade && changed.has(trait.id) ? { ...trait, grade: { ...trait.grade, fruitsCut } } : trait,
        ),
      };
    },
    rises: false,
  },
  backups: {
    of: 'generation',
    present: ({ stocks }, { backup }) => backup?.copies ?? (stocks.length > 0 ? 0 : null),
    grid: (present) => wholeAround(present, 0, MOST_BACKUPS),
    set: changing(withBackups),
    rises: false,
  },
};

/** A number of one generation, or of the plan, that can be asked about, with the numbers tried. */
export interface LeverSite {
  readonly lever: LeverId;
  /** Null for a number of the whole plan. */
  readonly generation: string | null;
  /** Of the generation; empty for the whole plan. */
  readonly name: string;
  /** Position in the plan. */
  readonly position: number;
  /** Its first round among the columns of a result. */
  readonly column: number;
  readonly present: number;
}

/** Every number of a plan that can be asked about, in the order of the levers and of the plan's generations. */
export function leverSites(programme: Programme, { generations }: Plan): readonly LeverSite[] {
  return LEVERS.flatMap((lever) => {
    const entry = levers[lever];
    const sites = generations.flatMap((generation, position): LeverSite[] => {
      const present = entry.present(programme, generation);
      const column = generations.slice(0, position).reduce((rounds, { repeat }) => rounds + repeat, 0);
      return present === null ? [] : [{ lever, generation: generation.id, name: generation.name, position, column, present }];
    });
    return entry.of === 'generation' ? sites : sites.slice(-1).map((site) => ({ ...site, generation: null, name: '' }));
  });
}

/** One number tried. */
export interface Tried {
  readonly value: number;
  readonly asItStands: boolean;
  readonly programme: Programme;
}

/**
 * Every number tried at a site, rising, the present one among them; numbers with which the programme could not run are left out.
 * @param programme with the one plan
 */
export function triedAt(programme: Programme, plan: Plan, { lever, position, present }: LeverSite): readonly Tried[] {
  const generation = plan.generations[position];
  if (!generation) return [];
  const { grid, set } = levers[lever];
  const values = [...new Set([...grid(present, programme, generation), present])].sort((a, b) => a - b);
  const stops = (entry: Programme) => checkProgramme(entry).filter((problem) => problem.stops).length;
  const before = stops(programme);
  return values.flatMap((value): Tried[] => {
    if (value === present) return [{ value, asItStands: true, programme }];
    const changed = set(programme, plan.id, generation.id, value);
    return stops(changed) > before ? [] : [{ value, asItStands: false, programme: changed }];
  });
}
