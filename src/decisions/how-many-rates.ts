import { compile } from '../engine/compile.ts';
import type { Compiled } from '../engine/compiled.ts';
import { FactReader, type KindFacts, type StockFacts, type WeakFacts } from '../engine/fact-reader.ts';
import { Facts } from '../engine/facts.ts';
import { DOMAIN } from '../engine/keys.ts';
import { weakAlive } from '../engine/rescue.ts';
import { Stand } from '../engine/stand.ts';
import type { Cross, Generation, Programme, ShownTrait, Tree } from '../model/programme.ts';
import { power } from '../random/elementary.ts';
import { rootOf, Stream } from '../random/stream.ts';
import { bearsGrafted, bearsOnOwnRoots } from './to-fruit.ts';

/** What one flower of a pair, and one seedling of it, comes to in a future: the rates that do not change from spring to spring. */
export interface Rates {
  /** Chance that a flower gives a fruit with seed. */
  readonly fruit: number;
  /** Chances of 1, 2 … seeds in such a fruit are of this mean, up to `seedsAtMost`. */
  readonly seeds: number;
  readonly seedsAtMost: number;
  readonly germination: number;
  /** Chance that a seedling lives to have its judged crops in time. */
  readonly lasts: number;
  /** Of trees with the right genes, those that can show the trait; and the chances a season that these, or others, are seen to. */
  readonly canShow: number;
  readonly seasons: number;
  readonly falseShow: number;
}

export interface RatesOf {
  readonly mother: Tree;
  readonly father: Tree;
  readonly entry: Cross;
  readonly generation: Generation;
  /** Crops in which a tree is judged; 0: it is taken at its first flowers. */
  readonly crops: number;
  /** The trait it is judged for; null: any tree will do. */
  readonly trait: ShownTrait | null;
}

/** Equally likely parts of the years to first fruit that are looked at. */
const PARTS = 40;

/** Reads the rates of one future after another: the very facts that a run draws. */
export class RateReader {
  private readonly compiled: Compiled;
  private readonly facts: Facts;
  private readonly reader: FactReader;

  constructor(
    private readonly programme: Programme,
    private readonly of: RatesOf,
  ) {
    this.compiled = compile(programme);
    this.facts = new Facts(this.compiled, new Stream(rootOf(programme.shuffleWord)), new Stand(this.compiled));
    this.reader = new FactReader(programme);
  }

  /** Whether every future has the same facts: nothing that counts here is a guess. */
  get certain(): boolean {
    return this.compiled.estimates.drawnCount === 0 && this.compiled.facts.length === 0;
  }

  at(run: number): Rates {
    this.facts.draw(DOMAIN.facts, run);
    this.reader.goTo(run);
    const { compiled, of, programme } = this;
    const cross = compiled.crosses[programme.crosses.indexOf(of.entry)];
    const mother = this.kindOf(of.mother.kind);
    const father = this.kindOf(of.father.kind);
    const shown = of.trait ? compiled.shown[programme.traits.filter(({ type }) => type === 'shown').indexOf(of.trait)] : undefined;
    if (!cross || !mother || !father) throw new RangeError('The pair has no entry.');
    const set = Math.min(1, this.value(cross.setAt) * this.value(mother.fertilitySeedAt) * this.value(father.fertilityPollenAt));
    const route = cross.routes.find(({ id }) => id === of.generation.route);
    return {
      fruit: set * (1 - this.value(cross.emptyAt)),
      seeds: Math.min(this.value(cross.seedsAt), cross.seedsAtMost === 1 ? 1 : cross.seedsAtMost - 1e-3),
      seedsAtMost: cross.seedsAtMost,
      germination: this.value(route?.germinationAt ?? cross.germinationAt),
      lasts: this.lasts(),
      canShow: shown ? this.value(shown.canShowAt) : 1,
      seasons: shown ? this.value(shown.seasonsAt) : 1,
      falseShow: shown ? this.value(shown.falseShowAt) : 1,
    };
  }

  private value(slot: number): number {
    return this.facts.values[slot] ?? 0;
  }

  private kindOf(id: string) {
    return this.compiled.kinds[this.programme.kinds.findIndex((kind) => kind.id === id)];
  }

  /** Weak and sound seedlings, grafted or not, through the winters up to the last of their crops; those that never fruit taken off. */
  private lasts(): number {
    const { of, reader, programme } = this;
    const kindAt = this.kindOf(of.entry.gives);
    const kind = reader.kind(of.entry.gives);
    const never = kindAt ? this.value(kindAt.neverFruitsAt) : 0;
    const weak = of.entry.weakness ? reader.weak(of.entry.id) : null;
    const { rescue } = of.generation;
    const stock = rescue && rescue.who !== 'none' ? reader.stock(rescue.stock) : null;
    const germinates = Math.max(programme.startYear, of.mother.bearsFrom ?? 0, of.father.bearsFrom ?? 0) + 1 + of.entry.dormancy;
    const time = { seasons: programme.lastYear - germinates, more: Math.max(1, of.crops) - 1 };
    const chance = (one: WeakFacts | null) => {
      const grafted = rescue && stock && (rescue.who === 'every' || one !== null);
      return grafted ? this.graftedLasts(rescue, stock, one, kind, time) : ownLasts(0, one, kind, time);
    };
    const share = weak?.share ?? 0;
    return (1 - never) * ((1 - share) * chance(null) + (share > 0 ? share * chance(weak) : 0));
  }

  private graftedLasts(rescue: NonNullable<Generation['rescue']>, stock: StockFacts, weak: WeakFacts | null, kind: KindFacts, time: Time): number {
    const at = rescue.month / 12;
    const winters = Math.floor(at);
    const standing = winters === 0 ? 1 : (1 - kind.firstYearLoss) * power(1 - kind.yearlyLoss, winters - 1);
    const alive = standing * (weak ? weakAlive(0, rescue.month, weak.onset, weak.halfLife) : 1);
    const took = overParts((u) => {
      const years = kind.yearsToFruit(u);
      const last = Math.ceil(years <= at ? years : at + (years - at) * stock.precocity) + time.more;
      if (last > time.seasons) return 0;
      // Years to first fruit that the stock would turn into the season of the last crop.
      const upTo = { ...kind, yearsToFruit: () => (stock.precocity > 0 ? at + (last - at) / stock.precocity : last) };
      return bearsGrafted({ ...rescue, keepOwnRoots: false }, weak, upTo, stock);
    });
    const [takes] = rescue.keepOwnRoots ? [bearsGrafted({ ...rescue, keepOwnRoots: false }, null, { ...kind, yearsToFruit: () => 0 }, stock)] : [1];
    return alive * (took + (1 - takes) * ownLasts(rescue.month, weak, kind, time));
  }
}

interface Time {
  /** Seasons from germination to the last judging year. */
  readonly seasons: number;
  /** Crops after the first that are to be judged. */
  readonly more: number;
}

function ownLasts(month: number, weak: WeakFacts | null, kind: KindFacts, { seasons, more }: Time): number {
  return overParts((u) => {
    const last = Math.ceil(kind.yearsToFruit(u)) + more;
    return last > seasons ? 0 : bearsOnOwnRoots(month, weak, { ...kind, yearsToFruit: () => last });
  });
}

function overParts(chance: (u: number) => number): number {
  let sum = 0;
  for (let part = 0; part < PARTS; part += 1) sum += chance((part + 0.5) / PARTS);
  return sum / PARTS;
}
