import { meanOf } from './mean.ts';
import type { Cross, Father, Generation, Plan, Programme } from './programme.ts';

/** An ordered pair of kinds that a generation of a plan can come to, wanted or by stray pollen, and its cross entry if there is one. */
export interface ReachedPair {
  readonly generation: number;
  readonly seed: string;
  readonly pollen: string;
  readonly stray: boolean;
  readonly entry: Cross | undefined;
}

/** Every pair that a plan can come to, in the order of its generations. Kinds of picks follow from the entries before. */
export function pairsReached(programme: Programme, plan: Plan): ReachedPair[] {
  const reached: ReachedPair[] = [];
  const picks = new Map<string, ReadonlySet<string>>();
  const fathers = new Map<string, ReadonlySet<string>>();
  plan.generations.forEach((generation, g) => {
    const given = new Set<string>();
    const sires = new Set<string>();
    const add = (seed: string, pollen: string, stray: boolean, entry: Cross | undefined) => {
      if (entry) given.add(entry.gives);
      // Copies of the seed parent are of its own kind.
      if (entry && highest(entry.motherClones) > 0) given.add(seed);
      sires.add(pollen);
      if (!reached.some((pair) => pair.generation === g && pair.seed === seed && pair.pollen === pollen && pair.stray === stray))
        reached.push({ generation: g, seed, pollen, stray, entry });
    };
    // In later rounds the picks are of the generation itself; a few rounds reach every kind that any number does.
    for (let round = 1; round <= Math.min(generation.repeat, 4); round += 1) {
      const own = round > 1 ? new Set(given) : null;
      for (const [seed, pollen] of pairsOf(programme, generation, { picks, fathers, own })) {
        const entry = programme.crosses.find(({ id }) => id === generation.cross) ?? entryFor(programme, seed, pollen);
        add(seed, pollen, false, entry);
        if (entry && generation.pollen !== 'open' && generation.cover > 0 && highest(entry.straySet) > 0)
          for (const kind of strayKinds(programme, generation, seed)) add(seed, kind, true, entryFor(programme, seed, kind));
      }
    }
    picks.set(generation.id, given);
    fathers.set(generation.id, sires);
  });
  return reached;
}

const highest = (estimate: Cross['straySet']) => (typeof estimate === 'object' && 'high' in estimate ? estimate.high : meanOf(estimate));
const entryFor = (programme: Programme, seed: string, pollen: string) => programme.crosses.find((cross) => cross.seed === seed && cross.pollen === pollen);

/** Kinds of what earlier generations gave, and of what fathered it; `own`: what the generation itself gave in earlier rounds. */
interface Before {
  readonly picks: ReadonlyMap<string, ReadonlySet<string>>;
  readonly fathers: ReadonlyMap<string, ReadonlySet<string>>;
  readonly own: ReadonlySet<string> | null;
}

function kindsOf(programme: Programme, parents: readonly Father[], { picks, fathers, own }: Before): string[] {
  const kinds = parents.flatMap((parent) => {
    if ('tree' in parent) return programme.trees.filter(({ id }) => id === parent.tree).map(({ kind }) => kind);
    return [...('sires' in parent ? (fathers.get(parent.sires) ?? []) : (own ?? picks.get(parent.picksOf) ?? []))];
  });
  return [...new Set(kinds)];
}

function pairsOf(programme: Programme, generation: Generation, before: Before): [string, string][] {
  const seeds = kindsOf(programme, generation.seedParents, before);
  if (generation.pollen === 'self') return seeds.map((kind) => [kind, kind]);
  const pollens = generation.pollen === 'open' ? poolKinds(programme, generation) : kindsOf(programme, generation.pollen, before);
  const pairs = seeds.flatMap((seed) => pollens.map((pollen): [string, string] => [seed, pollen]));
  return generation.reciprocal ? [...pairs, ...pairs.map(([seed, pollen]): [string, string] => [pollen, seed])] : pairs;
}

function poolKinds(programme: Programme, generation: Generation): string[] {
  const pool = programme.pools.find(({ id }) => id === (generation.pool ?? programme.defaultPool));
  const named = pool?.trees.filter(({ weight }) => weight > 0).flatMap(({ tree }) => programme.trees.find(({ id }) => id === tree)?.kind ?? []) ?? [];
  return [...new Set([...named, ...(pool?.background && pool.background.weight > 0 ? [pool.background.kind] : [])])];
}

function strayKinds(programme: Programme, generation: Generation, seed: string): string[] {
  const kind = programme.kinds.find(({ id }) => id === seed);
  if (kind?.selfCompatible === true) return [seed];
  const pool = poolKinds(programme, generation);
  // Some trees of a kind that rejects its own pollen may take it: those with an S allele that lost a function.
  const mayTakeOwn =
    kind?.pollenRejection === 'gametophytic' && programme.incompatibility?.alleles.some(({ pollenWorks, styleWorks }) => !pollenWorks || !styleWorks);
  return mayTakeOwn === true ? [...new Set([seed, ...pool])] : pool;
}
