import { strayShareOfFruit } from '../genetics/population.ts';
import { binomialInverse } from '../random/draws.ts';
import type { CompiledFamily, CompiledStanding, Weak } from './today.ts';
import type { Orchard } from './orchard.ts';
import type { Pools } from './pools.ts';

/** Where seedlings of a logged batch may come from: the wanted pollen, or stray pollen that nobody could tell from it. */
export interface Line {
  readonly cross: number;
  readonly mother: number;
  /** Handle, −1: drawn per seed from `pool` among fathers of `poolKind`. */
  readonly father: number;
  readonly pool: number;
  readonly poolKind: number;
  /** Unnormalised. */
  readonly share: number;
}

/**
 * Lines of a logged family in the current future. Stray pollen has its share of the fruit (docs/model.md §6); what grew, and how well, does
 * not weigh again.
 * @param handles of logged trees by place
 */
export function linesOf(orchard: Orchard, pools: Pools, family: CompiledFamily, handles: Int32Array): Line[] {
  const { compiled, facts } = orchard;
  const { values } = facts;
  const generation = orchard.generation(family.generation);
  const mother = handleOf(family.mother, handles);
  const { pool } = generation;
  const seedKind = orchard.kindOf(mother);
  const entry = (pollenKind: number) => compiled.crossOf[seedKind * compiled.kinds.length + pollenKind]!;
  const fromAir = (whole: number): Line[] => {
    if (pool < 0) return [];
    const lines = pools.shares(pool, mother).flatMap(({ kind, share }): Line[] => {
      const cross = entry(kind);
      return cross < 0 ? [] : [{ cross, mother, father: -1, pool, poolKind: kind, share: share * values[compiled.crosses[cross]!.setAt]! }];
    });
    const sum = lines.reduce((total, { share }) => total + share, 0);
    return sum > 0 ? lines.map((line) => ({ ...line, share: (line.share / sum) * whole })) : [];
  };
  if (!family.father && !family.mixed) return fromAir(1);
  const fathers = family.father ? [handleOf(family.father, handles)] : generation.pollenParents.flatMap(({ tree }) => (tree >= 0 ? [tree] : []));
  const kinds = compiled.kinds[seedKind]!;
  const cross = compiled.crosses[family.cross]!;
  const fertility = values[kinds.fertilitySeedAt]! * values[compiled.kinds[orchard.kindOf(fathers[0] ?? mother)]!.fertilityPollenAt]!;
  const set = Math.min(1, values[cross.setAt]! * fertility);
  const chance = values[cross.strayAt]! * generation.cover;
  const stray = chance > 0 ? strayShareOfFruit(set, chance) : 0;
  const wanted = fathers.map((father): Line => ({ cross: family.cross, mother, father, pool: -1, poolKind: -1, share: (1 - stray) / fathers.length }));
  if (!(stray > 0)) return wanted;
  const own = entry(seedKind);
  const selfed: Line[] = own < 0 ? [] : [{ cross: own, mother, father: mother, pool: -1, poolKind: -1, share: stray }];
  return [...wanted, ...(kinds.selfCompatible ? selfed : fromAir(stray))];
}

const handleOf = ({ tree, logged }: CompiledStanding, handles: Int32Array): number => (tree >= 0 ? tree : handles[logged]!);

/** The lines weighed by how often their seedlings are weak: who is known to be weak, or sound, tells something of the father. */
export function weighed(orchard: Orchard, lines: readonly Line[], weak: Weak): readonly Line[] {
  if (weak === 2 || lines.length < 2) return lines;
  const { compiled, facts } = orchard;
  const out = lines.map((line) => {
    const at = compiled.crosses[line.cross]!.weakShareAt;
    const share = at < 0 ? 0 : facts.values[at]!;
    return { ...line, share: line.share * (weak === 1 ? share : 1 - share) };
  });
  return out.some(({ share }) => share > 0) ? out : lines;
}

/** Splits n over the lines by their shares: one uniform each but the last. */
export function splitOver(lines: readonly Line[], n: number, uniform: () => number): number[] {
  let left = n;
  let shareLeft = lines.reduce((sum, { share }) => sum + share, 0);
  return lines.map(({ share }, l) => {
    const taken = l === lines.length - 1 ? left : binomialInverse(uniform(), left, shareLeft > 0 ? Math.min(1, share / shareLeft) : 0);
    left -= taken;
    shareLeft -= share;
    return taken;
  });
}

/** Place of one line, by its share. */
export function oneOf(lines: readonly Line[], u: number): number {
  let left = u * lines.reduce((sum, { share }) => sum + share, 0);
  for (let l = 0; l < lines.length - 1; l += 1) {
    left -= lines[l]!.share;
    if (left < 0) return l;
  }
  return lines.length - 1;
}
