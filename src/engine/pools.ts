import { binomialInverse } from '../random/draws.ts';
import type { Stream } from '../random/stream.ts';
import { compatibility } from './incompatibility.ts';
import type { Orchard } from './orchard.ts';
import { entryOf } from './pairs.ts';
import { givesPollen } from './sexes.ts';

/**
 * Whose pollen is in the air this spring. Dead named trees have left, picks never join; trees of which no pollen works on the seed parent
 * are left out, as she is herself unless she sets fruit with her own.
 */
export class Pools {
  /** All pollen of other trees works on every seed parent: nothing need be looked up per seed. */
  private readonly plain: boolean;

  constructor(private readonly orchard: Orchard) {
    this.plain = orchard.compiled.incompatibility === null && orchard.compiled.kinds.every(({ odd }) => !odd);
  }

  private namedWeight(pool: number, entry: number, mother: number, year: number): number {
    const { orchard } = this;
    const { compiled, weather } = orchard;
    const { tree, weight } = compiled.pools[pool]!.trees[entry]!;
    const there = weather.treeLost[tree]! > year && compiled.trees[tree]!.bearsFrom <= year;
    if (!there || !givesPollen(orchard, tree)) return 0;
    if (this.plain && tree !== mother) return weight;
    return compatibility(orchard, mother, tree, entryOf(compiled, orchard.kindOf(mother), orchard.kindOf(tree))) > 0 ? weight : 0;
  }

  /** Share of the pollen by kind of father; empty if nothing is in the air. */
  shares(pool: number, mother: number): { kind: number; share: number }[] {
    const { compiled, year } = this.orchard;
    const { trees, background } = compiled.pools[pool]!;
    const weights = new Map<number, number>();
    const add = (kind: number, weight: number) => {
      if (weight > 0) weights.set(kind, (weights.get(kind) ?? 0) + weight);
    };
    trees.forEach(({ tree }, entry) => add(compiled.trees[tree]!.kind, this.namedWeight(pool, entry, mother, year)));
    if (background) add(background.kind, background.weight);
    const total = [...weights.values()].reduce((sum, weight) => sum + weight, 0);
    return [...weights].map(([kind, weight]) => ({ kind, share: weight / total }));
  }

  /** Splits so many fruits over the kinds of their fathers. */
  split(pool: number, mother: number, fruits: number): { kind: number; fruits: number }[] {
    let left = fruits;
    let shareLeft = 1;
    const shares = this.shares(pool, mother);
    return shares.map(({ kind, share }, i) => {
      const n = i === shares.length - 1 ? left : binomialInverse(this.orchard.luck.uniform(), left, Math.min(1, share / shareLeft));
      left -= n;
      shareLeft -= share;
      return { kind, fruits: n };
    });
  }

  /** Draws the father of one seed among fathers of a kind, as the pool stood in the year of pollination. */
  father(pool: number, poolKind: number, mother: number, year: number, stream: Stream): number {
    const { compiled, facts } = this.orchard;
    const { trees, background } = compiled.pools[pool]!;
    const weightOf = (entry: number) => (compiled.trees[trees[entry]!.tree]!.kind === poolKind ? this.namedWeight(pool, entry, mother, year) : 0);
    const anonymous = background?.kind === poolKind ? background.weight : 0;
    let total = anonymous;
    for (let entry = 0; entry < trees.length; entry += 1) total += weightOf(entry);
    let left = stream.uniform() * total;
    if (background && left < anonymous) return facts.neighbour(background, Math.min(background.trees - 1, Math.floor((left / anonymous) * background.trees)));
    left -= anonymous;
    let last = mother;
    for (let entry = 0; entry < trees.length; entry += 1) {
      const weight = weightOf(entry);
      if (weight === 0) continue;
      last = trees[entry]!.tree;
      left -= weight;
      if (left < 0) break;
    }
    return last;
  }
}
