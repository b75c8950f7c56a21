import { meanOf } from '../mean.ts';
import type { Path, Problem } from '../problem.ts';
import type { Generation, Programme } from '../programme.ts';

/** Every ordered pair of kinds that a plan can reach, strays and pools included, needs a cross entry. */
export function checkCrosses(programme: Programme): Problem[] {
  const problems: Problem[] = [];
  const missing = new Set<string>();
  const kindName = (id: string) => programme.kinds.find((kind) => kind.id === id)?.name ?? id;
  programme.plans.forEach((plan, p) => {
    /** Kinds of the picks of each generation so far. */
    const picks = new Map<string, ReadonlySet<string>>();
    plan.generations.forEach((generation, g) => {
      const path = ['plans', p, 'generations', g];
      const given = new Set<string>();
      for (let round = 1; round <= Math.min(generation.repeat, 4); round += 1) {
        const own = round > 1 ? given : null;
        for (const [seed, pollen] of pairsOf(programme, generation, picks, own)) {
          const named = generation.cross === undefined ? undefined : programme.crosses.find(({ id }) => id === generation.cross);
          const entry = named ?? entryFor(programme, seed, pollen);
          if (entry) given.add(entry.gives);
          else add(seed, pollen, path, 'crosses');
          const stray = (entry ? highest(entry.straySet) : 0) * generation.cover > 0 && generation.pollen !== 'open';
          if (stray)
            for (const kind of strayKinds(programme, generation, seed)) {
              const strayEntry = entryFor(programme, seed, kind);
              if (strayEntry) given.add(strayEntry.gives);
              else add(seed, kind, path, 'can get stray pollen of');
            }
        }
      }
      picks.set(generation.id, given);
    });
    function add(seed: string, pollen: string, path: Path, verb: string) {
      const key = `${seed} ${pollen}`;
      if (missing.has(key)) return;
      missing.add(key);
      problems.push({
        path,
        message: `${verb === 'crosses' ? 'crosses' : verb} ${verb === 'crosses' ? `${kindName(seed)} × ${kindName(pollen)}` : `${kindName(pollen)} on ${kindName(seed)}`}, and there is no cross entry for that pair`,
        fix: `Add the cross entry ${kindName(seed)} × ${kindName(pollen)}, seed parent first.`,
        stops: true,
      });
    }
  });
  return problems;
}

const highest = (estimate: Programme['crosses'][number]['straySet']) => (typeof estimate === 'object' && 'high' in estimate ? estimate.high : meanOf(estimate));
const entryFor = (programme: Programme, seed: string, pollen: string) => programme.crosses.find((cross) => cross.seed === seed && cross.pollen === pollen);

function kindsOf(programme: Programme, parents: Generation['seedParents'], picks: ReadonlyMap<string, ReadonlySet<string>>, own: ReadonlySet<string> | null): Set<string> {
  const kinds = new Set<string>();
  for (const parent of parents) {
    if ('tree' in parent) {
      const tree = programme.trees.find(({ id }) => id === parent.tree);
      if (tree) kinds.add(tree.kind);
    } else for (const kind of own ?? picks.get(parent.picksOf) ?? []) kinds.add(kind);
  }
  return kinds;
}

function pairsOf(programme: Programme, generation: Generation, picks: ReadonlyMap<string, ReadonlySet<string>>, own: ReadonlySet<string> | null): [string, string][] {
  const seeds = [...kindsOf(programme, generation.seedParents, picks, own)];
  if (generation.pollen === 'self') return seeds.map((kind) => [kind, kind]);
  if (generation.pollen === 'open') return seeds.flatMap((seed) => poolKinds(programme, generation).map((pollen): [string, string] => [seed, pollen]));
  const pollens = [...kindsOf(programme, generation.pollen, picks, own)];
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
  return kind?.selfCompatible === true ? [seed] : poolKinds(programme, generation);
}
