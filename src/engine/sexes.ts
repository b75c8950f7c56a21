import type { Sex } from './compiled.ts';
import { indexOf, meets } from './judge.ts';
import type { Orchard } from './orchard.ts';
import { STATUS } from './stand.ts';

/** Sex of a tree: as the document says, none for anonymous neighbours, a seedling's own from its first flowers. */
export function sexOf({ compiled, stand }: Orchard, handle: number): Sex {
  if (handle < compiled.trees.length) return compiled.trees[handle]!.sex;
  return handle < stand.firstIndividual ? 0 : (stand.sex[handle - stand.firstIndividual]! as Sex);
}

export const bearsFruit = (orchard: Orchard, handle: number): boolean => sexOf(orchard, handle) !== 1;
export const givesPollen = (orchard: Orchard, handle: number): boolean => sexOf(orchard, handle) !== 2;

/** A male seedling flowers: it is kept as a father while its generation has room for one, in the order in which they flower. Nobody judges it. */
export function keepOrDiscardMale(orchard: Orchard, i: number): void {
  const { stand } = orchard;
  const g = stand.generation[i]!;
  const { males } = orchard.state(g);
  const living = males.filter((male) => stand.alive[male] === 1).length;
  if (living >= orchard.generation(g).keep.males) {
    stand.status[i] = STATUS.discarded;
    return;
  }
  stand.status[i] = STATUS.father;
  // Picks and fathers of a generation are keyed apart.
  stand.ordinal[i] = FATHERS + males.length;
  males.push(i);
}
const FATHERS = 1_000_000;

/**
 * Handles of the fathers of a generation's seedlings that still stand, best first: by the mean index of their judged seedlings, or
 * where nothing has a weight by the share of these that meet the keep conditions. Open pollen has no known father.
 */
export function bestSires(orchard: Orchard, g: number, best: number): number[] {
  const { stand, cohorts } = orchard;
  const { keep, judge } = orchard.generation(g);
  const weighted = keep.weights.some((weight) => weight !== 0);
  const daughters = new Map<number, { sum: number; count: number }>();
  for (let i = 0; i < stand.count; i += 1) {
    if (stand.generation[i] !== g || stand.judged[i] === 0 || stand.judged[i]! < judge) continue;
    const father = cohorts.father[stand.cohort[i]!]!;
    if (father < 0) continue;
    const sire = daughters.get(father) ?? { sum: 0, count: 0 };
    sire.sum += weighted ? indexOf(orchard, i, keep.weights) : +meets(orchard, i, keep.conditions);
    sire.count += 1;
    daughters.set(father, sire);
  }
  return [...daughters]
    .filter(([father]) => stands(orchard, father))
    .sort(([a, x], [b, y]) => y.sum / y.count - x.sum / x.count || a - b)
    .slice(0, best)
    .map(([father]) => father);
}

function stands(orchard: Orchard, handle: number): boolean {
  const { compiled, stand, weather, year } = orchard;
  return handle < compiled.trees.length ? weather.treeLost[handle]! > year : orchard.lives(handle - stand.firstIndividual);
}
