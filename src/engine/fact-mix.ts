import { mix2, textKey } from '../random/mix.ts';
import type { Stream } from '../random/stream.ts';
import type { Programme } from '../model/programme.ts';
import type { Compiled } from './compiled.ts';
import { DOMAIN, FACT, type Keyed } from './keys.ts';

/**
 * Futures whose facts come from several sets. Set n holds the facts of future n of the headline pass; row by row each group of facts is
 * taken from a set of its own, so that facts can be held or changed one by one.
 */
export interface FactMix {
  /** Facts that go together, by their places (see `drawnFacts`). Whatever no group names is one more group, the last. */
  readonly groups: readonly (readonly string[])[];
  /** sets[row · (groups + 1) + g]: the set that group g of this row is taken from. */
  readonly sets: Int32Array;
  /** Number of each row's luck. Rows of the same number live through the same luck. */
  readonly lucks: Int32Array;
}

/** One thing that is drawn once a future, and the purposes of the facts stream that draw it. */
export interface DrawnFact {
  /** Its place in the document, by ids: `crosses/wide/set`; `traits/red/rules`, `facts/roots`, `trees/bell`, `pools/near/background` for the rest. */
  readonly place: string;
  readonly keys: readonly number[];
}

/**
 * Lists what a programme leaves to be drawn once a future: estimates that are not one number, rules with alternatives, yes/no facts,
 * hidden genes of founding trees and of anonymous neighbours. The first fruit of families is drawn too, but has no place of its own.
 */
export function drawnFacts(programme: Programme, compiled: Compiled): readonly DrawnFact[] {
  const open = (at: number) => compiled.estimates.isDrawn(at) || (compiled.estimates.values[at]! > 0 && compiled.estimates.values[at]! < 1);
  const shared = programme.facts.length;
  const own = programme.crosses.filter(({ weakness }) => weakness !== undefined && 'chance' in weakness.rootBorne);
  const factPlace = (f: number) => (f < shared ? `facts/${programme.facts[f]!.id}` : `crosses/${own[f - shared]!.id}/rootBorne`);
  return [
    ...compiled.estimates.drawnPlaces.map((place) => ({ place, keys: [textKey(place)] })),
    ...compiled.shown.flatMap(({ id, key, rules }) => (rules.length > 1 ? [{ place: `traits/${id}/rules`, keys: [mix2(FACT.rule, key)] }] : [])),
    ...compiled.facts.flatMap(({ key, chanceAt }, f) => (open(chanceAt) ? [{ place: factPlace(f), keys: [key] }] : [])),
    ...compiled.trees.map(({ key }, t) => ({
      place: `trees/${programme.trees[t]!.id}`,
      keys: [mix2(FACT.founder, key), ...compiled.measured.map((trait) => mix2(key, trait.key))],
    })),
    ...compiled.pools.flatMap(({ background }, p) =>
      background
        ? [
            {
              place: `pools/${programme.pools[p]!.id}/background`,
              keys: Array.from({ length: background.trees }, (_, i) => mix2(mix2(FACT.neighbour, background.key), i)),
            },
          ]
        : [],
    ),
  ];
}

/** Gives each purpose the stream of the set that its group is taken from. */
export class MixedFacts implements Keyed {
  private readonly groupOf: ReadonlyMap<number, number>;
  private readonly width: number;
  private row = 0;

  constructor(
    facts: readonly DrawnFact[],
    private readonly mix: FactMix,
    private readonly stream: Stream,
  ) {
    const keysOf = new Map(facts.map(({ place, keys }) => [place, keys]));
    this.groupOf = new Map(mix.groups.flatMap((places, g) => places.flatMap((place) => (keysOf.get(place) ?? []).map((key) => [key, g] as const))));
    this.width = mix.groups.length + 1;
  }

  /** Goes to a row; false when it has the sets of the row it comes from, so that nothing need be drawn anew. */
  goTo(row: number): boolean {
    const { sets } = this.mix;
    const from = this.row * this.width;
    const to = row * this.width;
    this.row = row;
    for (let g = 0; g < this.width; g += 1) if (sets[from + g] !== sets[to + g]) return true;
    return false;
  }

  key(k: number): Stream {
    const group = this.groupOf.get(k) ?? this.width - 1;
    return this.stream.future(DOMAIN.facts, this.mix.sets[this.row * this.width + group]!).key(k);
  }
}
