import { checkProgramme } from '../model/check.ts';
import { meanOf } from '../model/mean.ts';
import type { Cross, Father, Generation, Parent, Plan, Programme } from '../model/programme.ts';
import { pairsReached, type ReachedPair } from '../model/reach.ts';
import { withGeneration } from './variants.ts';

/** How the flowers of a generation get their pollen. */
export type How = 'hand' | 'swapped' | 'bothWays' | 'open' | 'self';

type Parents = readonly Father[];

/** A parent as it is called: a named tree, or the picks of a generation. */
export interface ParentName {
  readonly name: string;
  readonly picks: boolean;
}

export interface PollenWay {
  readonly how: How;
  readonly mothers: readonly ParentName[];
  /** Empty where the pollen is open or their own. */
  readonly fathers: readonly ParentName[];
  /** Whose pollen is in the air, where it is open. */
  readonly air: string | null;
  /** Flowers a spring that are pollinated by hand; null where none are. */
  readonly flowers: number | null;
  /** The flowers are not the breeder's: reckoned so that the seedlings wanted come up at the middle of the guesses. */
  readonly flowersReckoned: boolean;
  /** The same cross entry serves both ways round, so that nothing says that set or seeds differ. */
  readonly sameFigures: boolean;
  readonly programme: Programme;
}

/** A way that cannot be run, and what would have to be entered. */
export interface MissingWay {
  readonly how: How;
  readonly mothers: readonly ParentName[];
  readonly fathers: readonly ParentName[];
  /** Names of the kinds of the first pair without a cross entry, seed parent first; null where something else is in the way. */
  readonly entry: { readonly seed: string; readonly pollen: string } | null;
  /** No pollen in the air is described. */
  readonly noPool: boolean;
  /** What else is in the way, in the words of the check. */
  readonly problem: string | null;
}

export interface PollenSite {
  readonly generation: Generation;
  readonly position: number;
  /** The first is the plan as it stands. */
  readonly ways: readonly PollenWay[];
  readonly missing: readonly MissingWay[];
}

/** For every generation of a plan, how else its flowers could get their pollen. @param programme with the plan alone in it */
export function pollenSites(programme: Programme, whole: Programme, plan: Plan): readonly PollenSite[] {
  return plan.generations.map((generation, position) => {
    const ways: PollenWay[] = [wayOf(programme, howOf(generation), generation, false)];
    const missing: MissingWay[] = [];
    for (const { how, changed, reckoned } of others(whole, generation)) {
      const way = wayOf(
        withGeneration(programme, plan.id, generation.id, () => changed),
        how,
        changed,
        reckoned,
      );
      const why = whyNot(programme, way, plan);
      if (why) missing.push(why);
      else ways.push(way);
    }
    return { generation, position, ways, missing };
  });
}

const howOf = ({ pollen, reciprocal }: Generation): How => (pollen === 'open' ? 'open' : pollen === 'self' ? 'self' : reciprocal ? 'bothWays' : 'hand');

interface Other {
  readonly how: How;
  readonly changed: Generation;
  readonly reckoned: boolean;
}

function others(programme: Programme, generation: Generation): readonly Other[] {
  const { pollen } = generation;
  if (pollen === 'open') return byHand(programme, generation);
  const open: Other = { how: 'open', changed: opened(programme, generation), reckoned: false };
  if (pollen === 'self') return [open];
  // Picks crossed with each other are mothers and fathers already.
  const alike = sameParents(generation.seedParents, pollen);
  // Fathers chosen by their daughters cannot be mothers.
  const mothers = pollen.flatMap((parent): Parent[] => ('sires' in parent ? [] : [parent]));
  const swapped: Other[] =
    alike || mothers.length < pollen.length ? [] : [{ how: 'swapped', changed: swappedRound(programme, generation, mothers), reckoned: false }];
  const hand: Other[] = generation.reciprocal && !alike ? [{ how: 'hand', changed: { ...generation, reciprocal: false }, reckoned: false }] : [];
  return [...hand, ...swapped, open];
}

/** The same seed parents without bags and brushes. An entry named for the cross by hand is not taken along: another open generation's is, or the kinds' own. */
function opened(programme: Programme, { cross: _named, reciprocal: _both, ...generation }: Generation): Generation {
  const cross = programme.plans.flatMap(({ generations }) => generations).find((other) => other.pollen === 'open' && sharesMother(other, generation))?.cross;
  const pool = generation.pool ?? programme.defaultPool ?? programme.pools[0]?.id;
  return {
    ...generation,
    pollen: 'open',
    reciprocal: false,
    selfs: false,
    cover: 1,
    flowers: 0,
    ...(pool === undefined ? {} : { pool }),
    ...(cross === undefined ? {} : { cross }),
  };
}

/** Mothers become fathers. A named entry stays where it is one for a kind with itself; for two kinds it would be the wrong way round. */
function swappedRound({ crosses }: Programme, { cross, ...generation }: Generation, mothers: Parent[]): Generation {
  const named = crosses.find(({ id }) => id === cross);
  const keeps = named?.seed === named?.pollen;
  return { ...generation, reciprocal: false, seedParents: mothers, pollen: generation.seedParents, ...(keeps && cross !== undefined ? { cross } : {}) };
}

/** Fathers for an open generation: as another plan crosses the same tree, else the first other tree of the pollen in the air, else of its kind. */
function byHand(programme: Programme, { cross: _named, ...generation }: Generation): readonly Other[] {
  const known = programme.plans.flatMap(({ generations }) => generations).find((other) => Array.isArray(other.pollen) && sharesMother(other, generation));
  if (known) {
    const { pollen, flowers, cover, cross } = known;
    return [{ how: 'hand', changed: { ...generation, pollen, flowers, cover, ...(cross === undefined ? {} : { cross }) }, reckoned: false }];
  }
  const mothers = generation.seedParents.flatMap((parent) => ('tree' in parent ? [parent.tree] : []));
  const mother = programme.trees.find(({ id }) => id === mothers[0]);
  if (!mother) return [];
  const pool = programme.pools.find(({ id }) => id === (generation.pool ?? programme.defaultPool));
  const inAir = pool?.trees.filter(({ weight }) => weight > 0).map(({ tree }) => tree) ?? [];
  const father = [...inAir, ...programme.trees.filter(({ kind }) => kind === mother.kind).map(({ id }) => id)].find((id) => !mothers.includes(id));
  const entry = programme.crosses.find(({ seed, pollen }) => seed === mother.kind && pollen === programme.trees.find(({ id }) => id === father)?.kind);
  if (father === undefined) return [];
  const changed: Generation = { ...generation, pollen: [{ tree: father }], flowers: entry ? flowersFor(programme, entry, generation) : 1 };
  return [{ how: 'hand', changed, reckoned: true }];
}

const sameParents = (a: Parents, b: Parents): boolean => {
  const keys = (parents: Parents) => parents.map((parent) => JSON.stringify(parent)).sort();
  return keys(a).join('|') === keys(b).join('|');
};

const sharesMother = (a: Pick<Generation, 'seedParents'>, b: Pick<Generation, 'seedParents'>): boolean =>
  a.seedParents.some((parent) => 'tree' in parent && b.seedParents.some((other) => 'tree' in other && other.tree === parent.tree));

/** Flowers a spring that bring the seedlings wanted at the middle of the guesses, no more than hands can pollinate. */
function flowersFor({ kinds, limits }: Programme, cross: Cross, { seedlings, springs }: Generation): number {
  const kindOf = (id: string) => kinds.find((kind) => kind.id === id);
  const [seed, pollen] = [kindOf(cross.seed), kindOf(cross.pollen)];
  const fruits = Math.min(1, meanOf(cross.set) * (seed ? meanOf(seed.fertilityAsSeedParent) : 1) * (pollen ? meanOf(pollen.fertilityAsPollenParent) : 1));
  const seeds = (1 - meanOf(cross.emptyFruit)) * meanOf(cross.seedsPerFruit ?? seed?.seedsPerFruit ?? 1);
  const each = fruits * seeds * meanOf(cross.germination);
  const hands = Math.max(1, Math.floor(limits.bloomDays * limits.hoursADay * limits.flowersAnHour));
  return Math.min(hands, each > 0 ? Math.max(1, Math.ceil(seedlings / springs / each)) : hands);
}

function wayOf(programme: Programme, how: How, generation: Generation, flowersReckoned: boolean): PollenWay {
  const fathers = Array.isArray(generation.pollen) ? generation.pollen : [];
  const pool = how === 'open' ? programme.pools.find(({ id }) => id === (generation.pool ?? programme.defaultPool)) : undefined;
  const plan = programme.plans[0];
  const pairs = plan ? pairsReached(programme, plan).filter((pair) => !pair.stray && plan.generations[pair.generation]?.id === generation.id) : [];
  return {
    how,
    mothers: namesOf(programme, generation.seedParents),
    fathers: namesOf(programme, fathers),
    air: pool?.name ?? null,
    flowers: fathers.length > 0 || how === 'self' ? generation.flowers : null,
    flowersReckoned,
    sameFigures: how === 'swapped' && pairs.every(({ entry }) => entry !== undefined && entry.seed === entry.pollen),
    programme,
  };
}

function namesOf({ trees, plans }: Programme, parents: Parents): readonly ParentName[] {
  return parents.map((parent) => {
    if ('tree' in parent) return { name: trees.find(({ id }) => id === parent.tree)?.name ?? parent.tree, picks: false };
    const of = 'sires' in parent ? parent.sires : parent.picksOf;
    return { name: plans.flatMap(({ generations }) => generations).find(({ id }) => id === of)?.name ?? of, picks: true };
  });
}

/** What stops a way that does not stop the plan as it stands; null where nothing does. */
function whyNot(original: Programme, { programme, how, mothers, fathers }: PollenWay, { generations }: Plan): MissingWay | null {
  const why = { how, mothers, fathers, entry: null, noPool: false, problem: null };
  if (how === 'open' && programme.pools.length === 0) return { ...why, noPool: true };
  const before = new Set(original.plans.flatMap((plan) => pairsReached(original, plan)).map(keyOf));
  const without = programme.plans.flatMap((plan) => pairsReached(programme, plan)).find((pair) => !pair.entry && !before.has(keyOf(pair)));
  const name = (id: string) => programme.kinds.find((kind) => kind.id === id)?.name ?? id;
  if (without) return { ...why, entry: { seed: name(without.seed), pollen: name(without.pollen) } };
  const [stops] = checkProgramme(programme).filter((problem) => problem.stops);
  if (!stops) return null;
  const at = stops.path[0] === 'plans' && typeof stops.path[3] === 'number' ? `${generations[stops.path[3]]?.name ?? ''} ` : '';
  return { ...why, problem: `${at}${stops.message}` };
}

const keyOf = ({ seed, pollen, entry }: ReachedPair): string => `${seed} ${pollen} ${entry?.id ?? ''}`;
