import type { Compiled, CompiledParent } from './compiled.ts';
import { compatibility, pollenWorks, WORKS } from './incompatibility.ts';
import type { Orchard } from './orchard.ts';
import { bearsFruit, bestSires, givesPollen } from './sexes.ts';

/** Every flower pair of a spring: mother, father (handles) and its flowers. */
export interface Pair {
  readonly mother: number;
  readonly father: number;
  flowers: number;
}

/** Handles of living, bearing parents. */
function parents(orchard: Orchard, list: readonly CompiledParent[]): number[] {
  const { compiled, stand, weather, year } = orchard;
  const handles: number[] = [];
  const flowering = (trees: readonly number[]) => {
    for (const i of trees) if (orchard.lives(i) && stand.bears[i]! <= year) handles.push(stand.handleOf(i));
  };
  for (const { tree, picksOf, siresOf, best } of list) {
    if (tree >= 0) {
      if (weather.treeLost[tree]! > year && compiled.trees[tree]!.bearsFrom <= year) handles.push(tree);
    } else if (siresOf >= 0) handles.push(...bestSires(orchard, siresOf, best));
    else {
      flowering(orchard.state(picksOf).picks);
      flowering(orchard.state(picksOf).males);
    }
  }
  return handles;
}

/** Ordered pairs that can be pollinated now: no selfs unless asked, none twice, none that is known to set nothing. Open: one entry a mother. */
export function pairsOf(orchard: Orchard, g: number): Pair[] {
  const generation = orchard.generation(g);
  const mothers = parents(orchard, generation.seedParents).filter((mother) => bearsFruit(orchard, mother));
  if (generation.pollination !== 0) {
    const own = mothers.map((mother) => ({ mother, father: mother, flowers: 0 }));
    return generation.pollination === 2 ? own.filter((pair) => givesPollen(orchard, pair.mother) && !knownBarren(orchard, g, pair)) : own;
  }
  const fathers = parents(orchard, generation.pollenParents);
  const pairs: Pair[] = [];
  const add = (mother: number, father: number) => {
    if (!bearsFruit(orchard, mother) || !givesPollen(orchard, father)) return;
    if (mother === father && !(generation.selfs && takesOwnPollen(orchard, mother))) return;
    const pair = { mother, father, flowers: 0 };
    if (!knownBarren(orchard, g, pair) && !pairs.some((other) => other.mother === mother && other.father === father)) pairs.push(pair);
  };
  for (const mother of mothers) for (const father of fathers) add(mother, father);
  if (generation.reciprocal) for (const mother of mothers) for (const father of fathers) add(father, mother);
  return pairs;
}

/** Whether a tree sets fruit with its own pollen. */
export const takesOwnPollen = (orchard: Orchard, handle: number): boolean => pollenWorks(orchard, handle, handle) !== WORKS.none;

/** Named trees that set nothing with each other are not crossed. Of seedlings nobody knows it beforehand: their flowers are pollinated in vain. */
function knownBarren(orchard: Orchard, g: number, { mother, father }: Pair): boolean {
  const named = orchard.compiled.trees.length;
  return mother < named && father < named && compatibility(orchard, mother, father, entryFor(orchard, g, mother, orchard.kindOf(father))) === 0;
}

/** Position of the cross entry for a mother and a pollen kind: the one that the generation names, else by the two kinds; −1 for none. */
export function entryFor(orchard: Orchard, g: number, mother: number, pollenKind: number): number {
  const named = orchard.generation(g).cross;
  return named >= 0 ? named : entryOf(orchard.compiled, orchard.kindOf(mother), pollenKind);
}

export const entryOf = ({ crossOf, kinds }: Compiled, seedKind: number, pollenKind: number): number => crossOf[seedKind * kinds.length + pollenKind]!;
