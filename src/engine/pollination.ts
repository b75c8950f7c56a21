import { binomialInverse, springRate } from '../random/draws.ts';
import { mix2 } from '../random/mix.ts';
import { seedsPerFruitTable } from '../statistics/truncated-poisson.ts';
import type { CompiledGeneration } from './compiled.ts';
import { compatibility } from './incompatibility.ts';
import { LUCK, pairKey, STAGE, stageKey } from './keys.ts';
import { COUNT, type Batch, type Orchard } from './orchard.ts';
import { entryFor, entryOf, pairsOf, takesOwnPollen, type Pair } from './pairs.ts';
import { Pools } from './pools.ts';
import { givesPollen } from './sexes.ts';
import { ROOTS } from './stand.ts';

/** The pollen parent in the key of an open pollination. */
const OPEN = 0x0fe1;
/** Pollinates in the current spring: every generation that has begun, still wants seedlings and has springs left. */
export class Pollination {
  private readonly pools: Pools;
  /** Flowers left this spring on trees that some generation has used. */
  private readonly offerLeft = new Map<number, number>();
  private readonly tables = new Map<number, Float64Array>();

  constructor(private readonly orchard: Orchard) {
    this.pools = new Pools(orchard);
  }

  /** Fathers of open and stray pollen, drawn per seed. */
  get fathers(): Pools {
    return this.pools;
  }

  spring(): void {
    const { orchard } = this;
    if (orchard.year < orchard.compiled.whatIf.begins) return;
    let wanting = false;
    for (let g = 0; g < orchard.plan.generations.length; g += 1) wanting ||= wantsMore(orchard, g);
    if (!wanting) return;
    this.offerLeft.clear();
    const crossing: { g: number; pairs: Pair[] }[] = [];
    for (let g = 0; g < orchard.plan.generations.length; g += 1) {
      const generation = orchard.generation(g);
      if (!wantsMore(orchard, g)) continue;
      const pairs = pairsOf(orchard, g);
      if (generation.pollination === 1) {
        const mothers = pairs.flatMap((pair) => (this.leavesOut(g, pair) ? [] : pair.mother));
        if (mothers.length > 0 && this.gatherOpen(g, mothers)) begun(orchard, g);
      } else if (pairs.length > 0) {
        this.shareFlowers(generation, pairs);
        for (const pair of pairs) if (this.leavesOut(g, pair)) pair.flowers = 0;
        crossing.push({ g, pairs });
      }
    }
    this.cutToHands(crossing);
    for (const { g, pairs } of crossing) {
      if (!pairs.some((pair) => pair.flowers > 0)) continue;
      begun(orchard, g);
      for (const pair of pairs) if (pair.flowers > 0) this.cross(g, pair);
    }
  }

  /** Whether a what-if leaves this pair out this spring; in an open or selfed generation the mother says which. */
  private leavesOut(g: number, { mother, father }: Pair): boolean {
    const { compiled, plan, year } = this.orchard;
    const { leaves } = compiled.whatIf;
    if (leaves?.year !== year || leaves.generations.get(plan.id) !== g || leaves.mother !== mother) return false;
    return leaves.father < 0 || leaves.father === father;
  }

  /** Flowers, at most what all seed parents offer, are shared evenly over the pairs, capped by what each seed parent has left, and not passed on. */
  private shareFlowers(generation: CompiledGeneration, pairs: Pair[]): void {
    const mothers = new Set(pairs.map((pair) => pair.mother));
    let offered = 0;
    for (const mother of mothers) offered += this.offer(mother);
    const { compiled, year } = this.orchard;
    const flowers = Math.min(Math.floor(generation.flowers * compiled.whatIf.handsTimes[year]!), offered);
    const even = Math.floor(flowers / pairs.length);
    const extra = flowers % pairs.length;
    pairs.forEach((pair, i) => {
      pair.flowers = even + (i < extra ? 1 : 0);
    });
    for (const mother of mothers) {
      const own = pairs.filter((pair) => pair.mother === mother);
      let left = this.offer(mother);
      own.forEach((pair, i) => {
        pair.flowers = Math.min(pair.flowers, Math.floor(left / (own.length - i)));
        left -= pair.flowers;
      });
      this.offerLeft.set(mother, left);
    }
  }

  /** Flowers a tree can still offer this spring: generations that use the same tree share them, the earlier first. */
  private offer(handle: number): number {
    return this.offerLeft.get(handle) ?? this.wholeOffer(handle);
  }

  /** A founding tree's own number; a young pick's share of its kind's, which grows to full bloom. */
  private wholeOffer(handle: number): number {
    const { compiled, stand, facts, year } = this.orchard;
    if (handle < compiled.trees.length) return Math.floor(facts.values[compiled.trees[handle]!.flowersAt]!);
    const individual = handle - stand.firstIndividual;
    const kind = compiled.kinds[stand.kind[individual]!]!;
    const seasons = year - stand.bears[individual]!;
    return Math.floor(facts.values[kind.flowersAt]! * Math.min(1, (seasons + 1) / kind.yearsToFullBloom));
  }

  /** Hands in bloom are shared by all generations that cross this spring; over the budget all are cut in proportion. */
  private cutToHands(crossing: readonly { readonly pairs: readonly Pair[] }[]): void {
    const pairs = crossing.flatMap((entry) => entry.pairs);
    const wanted = pairs.reduce((sum, pair) => sum + pair.flowers, 0);
    const { compiled, year } = this.orchard;
    const handFlowers = Math.floor(compiled.handFlowers * compiled.whatIf.handsTimes[year]!);
    if (wanted <= handFlowers) return;
    for (const pair of pairs) pair.flowers = Math.floor((pair.flowers * handFlowers) / wanted);
  }

  /** Fertility of a seed parent: its kind's, raised or lowered by the stock it was grafted on. A stock feeds fruit; it does not mend pollen. */
  private fertility(handle: number, at: number): number {
    const { compiled, stand, facts, plan } = this.orchard;
    const own = facts.values[at]!;
    if (handle < stand.firstIndividual) return own;
    const individual = handle - stand.firstIndividual;
    if (stand.roots[individual]! < ROOTS.grafted) return own;
    const { rescue } = plan.generations[stand.generation[individual]!]!;
    return rescue ? own * facts.values[compiled.stocks[rescue.stock]!.fertilityAt]! : own;
  }

  /** Set of one flower this spring before frost: the spring's rate around the long-run rate, times fertility, at most 1. */
  private setRate(cross: number, mother: number, father: number): number {
    const { compiled, facts, luck, year } = this.orchard;
    const key = pairKey(this.orchard.parentKey(mother), father < 0 ? OPEN : this.orchard.parentKey(father));
    const rate = springRate(luck.key(mix2(mix2(LUCK.set, key), year)), facts.values[compiled.crosses[cross]!.setAt]!, compiled.luckSet);
    const seed = this.fertility(mother, compiled.kinds[this.orchard.kindOf(mother)]!.fertilitySeedAt);
    const pollen = father < 0 ? 1 : facts.values[compiled.kinds[this.orchard.kindOf(father)]!.fertilityPollenAt]!;
    return Math.min(1, rate * seed * pollen);
  }

  private cross(g: number, { mother, father, flowers }: Pair): void {
    const { orchard } = this;
    const { compiled, facts, luck, year } = orchard;
    const cross = entryFor(orchard, g, mother, orchard.kindOf(father));
    const spared = 1 - orchard.frostTaken(orchard.kindOf(mother));
    const set = this.setRate(cross, mother, father) * compatibility(orchard, mother, father, cross);
    luck.key(mix2(stageKey(g, STAGE.fruits, year), pairKey(orchard.parentKey(mother), orchard.parentKey(father))));
    const fruits = binomialInverse(luck.uniform(), flowers, set * spared);
    // Stray pollen sets a share of the flowers that the wanted pollen left unset and the frost spared.
    const unset = set * spared < 1 ? (spared * (1 - set)) / (1 - set * spared) : 0;
    const stray = binomialInverse(luck.uniform(), flowers - fruits, facts.values[compiled.crosses[cross]!.strayAt]! * orchard.generation(g).cover * unset);
    orchard.tally.flowers += flowers;
    orchard.handFlowers[year]! += flowers;
    orchard.count(g, COUNT.flowers, flowers);
    orchard.work('perFlower', flowers);
    this.countFruits(g, fruits + stray);
    this.sow(g, cross, mother, father, -1, -1, this.seedsIn(cross, mother, fruits));
    if (stray === 0) return;
    if (takesOwnPollen(orchard, mother) && givesPollen(orchard, mother))
      this.sow(g, entryOf(orchard.compiled, orchard.kindOf(mother), orchard.kindOf(mother)), mother, mother, -1, -1, 0, stray);
    else {
      const { pool } = orchard.generation(g);
      if (pool < 0) return;
      for (const { kind: poolKind, fruits: n } of this.pools.split(pool, mother, stray))
        this.sow(g, entryOf(orchard.compiled, orchard.kindOf(mother), poolKind), mother, -1, pool, poolKind, 0, n);
    }
  }

  private countFruits(g: number, fruits: number): void {
    this.orchard.tally.fruits += fruits;
    this.orchard.count(g, COUNT.fruits, fruits);
    this.orchard.work('perFruit', fruits);
  }

  /** Chances of 1 … most seeds in a fruit that has any; solved once per stated mean. */
  private seedTable(cross: number): Float64Array {
    const { compiled, facts } = this.orchard;
    const { seedsAt, seedsAtMost } = compiled.crosses[cross]!;
    const mean = facts.values[seedsAt]!;
    const key = mean * 1000 + seedsAtMost;
    let table = this.tables.get(key);
    if (!table) {
      if (this.tables.size > 2000) this.tables.clear();
      table = seedsPerFruitTable(Math.min(mean, seedsAtMost === 1 ? 1 : seedsAtMost - 1e-3), seedsAtMost);
      this.tables.set(key, table);
    }
    return table;
  }

  /** Share of fruit without sound seed: the entry's, and the seed parent's own where showing the trait costs seed. */
  private emptyShare(cross: number, mother: number): number {
    const { compiled, facts, stand } = this.orchard;
    let full = 1 - facts.values[compiled.crosses[cross]!.emptyAt]!;
    for (let t = 0; t < compiled.shown.length; t += 1) {
      const loss = facts.values[compiled.shown[t]!.emptyIfShownAt]!;
      if (loss > 0 && stand.able[stand.ableAt(mother) + t] === 1) full *= 1 - loss;
    }
    return 1 - full;
  }

  /** Seeds in so many fruits: fruits by number of seeds, one binomial a number. */
  seedsIn(cross: number, mother: number, fruits: number): number {
    if (fruits === 0) return 0;
    const { luck } = this.orchard;
    let left = binomialInverse(luck.uniform(), fruits, 1 - this.emptyShare(cross, mother));
    const table = this.seedTable(cross);
    let seeds = 0;
    let chanceLeft = 1;
    for (let n = 1; n <= table.length && left > 0; n += 1) {
      const p = table[n - 1]!;
      const with_ = n === table.length ? left : binomialInverse(luck.uniform(), left, Math.min(1, p / chanceLeft));
      seeds += n * with_;
      left -= with_;
      chanceLeft -= p;
    }
    return seeds;
  }

  /** Puts seed in the ground; strays come as fruits still to be opened. */
  private sow(g: number, cross: number, mother: number, father: number, pool: number, poolKind: number, seeds: number, fruits = 0): void {
    if (cross < 0) return;
    const { orchard } = this;
    const total = seeds + this.seedsIn(cross, mother, fruits);
    orchard.count(g, COUNT.seeds, total);
    if (total === 0) return;
    const entry = orchard.compiled.crosses[cross]!;
    const batch: Batch = {
      generation: g,
      cross,
      mother,
      father,
      pool,
      poolKind,
      pollinated: orchard.year,
      due: orchard.year + 1 + entry.dormancy,
      seeds: total,
    };
    orchard.batches.push(batch);
    orchard.state(g).inGround += total;
    const route = entry.routes.find((r) => r.id === orchard.generation(g).route);
    if (route) {
      orchard.hours[orchard.year]! += total * route.hoursPerSeed;
      orchard.money[orchard.year]! += total * route.moneyPerSeed;
    }
  }

  /**
   * Open pollination: fruit is gathered, evenly under its mothers, while the seeds in hand × germination fall short of what is
   * wanted, at most what has set. Returns whether anything was there to gather from.
   */
  private gatherOpen(g: number, mothers: readonly number[]): boolean {
    const { orchard } = this;
    const { luck, year } = orchard;
    const { pool } = orchard.generation(g);
    let open = false;
    mothers.forEach((mother, m) => {
      const kinds = pool < 0 ? [] : this.pools.shares(pool, mother);
      if (kinds.length === 0) return;
      open = true;
      const spared = 1 - orchard.frostTaken(orchard.kindOf(mother));
      const entries = kinds.map(({ kind, share }) => {
        const cross = entryFor(orchard, g, mother, kind);
        return {
          kind,
          cross,
          rate: share * (cross < 0 ? 0 : this.setRate(cross, mother, -1)) * spared,
          germination: cross < 0 ? 0 : orchard.facts.values[germinationSlot(orchard, g, cross)]!,
          fruits: 0,
          left: 0,
          seeds: 0,
        };
      });
      luck.key(mix2(stageKey(g, STAGE.gathering, year), orchard.parentKey(mother)));
      let flowers = this.offer(mother);
      let rateLeft = 1;
      for (const entry of entries) {
        entry.left = binomialInverse(luck.uniform(), flowers, rateLeft > 0 ? entry.rate / rateLeft : 0);
        flowers -= entry.left;
        rateLeft -= entry.rate;
      }
      let need = (orchard.generation(g).seedlings - orchard.state(g).raised - this.expectedFromGround(g)) / (mothers.length - m);
      let available = entries.reduce((sum, entry) => sum + entry.left, 0);
      let gathered = 0;
      while (need > 0 && available > 0) {
        let pick = luck.uniform() * available;
        const entry = entries.find((candidate) => (pick -= candidate.left) < 0) ?? entries[entries.length - 1]!;
        entry.left -= 1;
        available -= 1;
        gathered += 1;
        const seeds = luck.uniform() < this.emptyShare(entry.cross, mother) ? 0 : drawFrom(this.seedTable(entry.cross), luck.uniform());
        entry.seeds += seeds;
        need -= seeds * entry.germination;
      }
      this.countFruits(g, gathered);
      for (const entry of entries) this.sow(g, entry.cross, mother, -1, pool, entry.kind, entry.seeds);
    });
    return open;
  }

  private expectedFromGround(g: number): number {
    const { orchard } = this;
    let sum = 0;
    for (const batch of orchard.batches) if (batch.generation === g) sum += batch.seeds * orchard.facts.values[germinationSlot(orchard, g, batch.cross)]!;
    return sum;
  }
}

/** Slot of the germination of a cross entry by the generation's route. */
export function germinationSlot(orchard: Orchard, g: number, cross: number): number {
  const entry = orchard.compiled.crosses[cross]!;
  return entry.routes.find((route) => route.id === orchard.generation(g).route)?.germinationAt ?? entry.germinationAt;
}

/** Whether a generation may pollinate this spring: begun, springs left, and not yet as many seedlings as wanted. */
export function wantsMore(orchard: Orchard, g: number): boolean {
  const generation = orchard.generation(g);
  const state = orchard.state(g);
  const started = generation.after < 0 || orchard.state(generation.after).goneOn;
  return started && state.springs < generation.springs && state.raised < generation.seedlings;
}

/** A spring counts once something was pollinated or gathered. */
function begun(orchard: Orchard, g: number): void {
  const state = orchard.state(g);
  state.springs += 1;
  if (state.firstPollination < 0) state.firstPollination = orchard.year;
  state.lastWork = orchard.year;
}

function drawFrom(table: Float64Array, u: number): number {
  let left = u;
  for (let n = 1; n < table.length; n += 1) {
    left -= table[n - 1]!;
    if (left < 0) return n;
  }
  return table.length;
}
