import { binomialInverse, springRate } from '../random/draws.ts';
import { mix2 } from '../random/mix.ts';
import { CLASSES } from './cohorts.ts';
import { openCohort } from './germination.ts';
import { isTrulyGood, lookAtGoal } from './judge.ts';
import { keepFinishers, showedAll } from './keep.ts';
import { LUCK } from './keys.ts';
import type { Newcomers } from './newcomers.ts';
import { COUNT, type Orchard } from './orchard.ts';
import type { Pollination } from './pollination.ts';
import { lose } from './rescue.ts';
import { ROOTS, STATUS } from './stand.ts';
import type { CompiledBearing, CompiledPlanToday, CompiledToday } from './today.ts';
import { linesOf, splitOver, weighed, type Line } from './today-lines.ts';
import { lineage, putSeedlings } from './today-seedlings.ts';
import { StandingTrees } from './today-trees.ts';

/**
 * Fills an orchard with what stands today: logged trees with what was seen of them, seedlings, seed in the ground; years gone by are gone
 * through for what was judged, kept and proven. Work and room of those years are not counted. Docs/model.md “From today”.
 */
export class TodayFill {
  private readonly trees: StandingTrees;

  constructor(
    private readonly orchard: Orchard,
    private readonly newcomers: Newcomers,
    private readonly pollination: Pollination,
  ) {
    this.trees = new StandingTrees(orchard, pollination.fathers);
  }

  fill(today: CompiledToday, planAt: number): void {
    const { orchard } = this;
    const plan = today.plans[planAt]!;
    orchard.year = Math.max(0, today.year - 1);
    this.begin(plan);
    const individuals = new Int32Array(plan.trees.length).fill(-1);
    const handles = new Int32Array(plan.trees.length).fill(-1);
    const lines: (readonly Line[] | undefined)[] = [];
    const linesFor = (family: number) => (lines[family] ??= linesOf(orchard, this.pollination.fathers, plan.families[family]!, handles));
    plan.trees.forEach((tree, t) => {
      if (!tree.needed) return;
      const ways = linesFor(tree.family);
      if (ways.length === 0) return;
      individuals[t] = this.put(plan, tree, ways, today.year);
      handles[t] = orchard.stand.handleOf(individuals[t]);
    });
    this.replay(plan, individuals, today.year);
    for (const group of plan.seedlings)
      for (const c of putSeedlings(orchard, group, plan.families[group.family]!, linesFor(group.family), today.year)) this.tested(c, today.year);
    for (const seed of plan.inGround) this.sow(plan, seed, linesFor(seed.family));
    orchard.hours.fill(0);
    orchard.money.fill(0);
    orchard.tally.tests = 0;
    orchard.year = Math.max(0, today.year - 1);
  }

  /** Counts and dates of what was done. */
  private begin(plan: CompiledPlanToday): void {
    const { orchard } = this;
    plan.generations.forEach((said, g) => {
      const state = orchard.state(g);
      state.springs = said.springs;
      state.firstPollination = said.firstPollination;
      state.raised = said.raised;
      state.firstSeedling = said.firstSeedling;
      state.goneOn = said.goneOn;
      if (said.firstPollination >= 0) state.lastWork = Math.max(said.firstPollination, said.firstSeedling);
      for (const stage of ['flowers', 'fruits', 'seeds', 'seedlings'] as const) orchard.count(g, COUNT[stage], said[stage]);
      orchard.count(g, COUNT.aliveAtGraft, said.grafted);
      orchard.tally.flowers += said.flowers;
      orchard.tally.fruits += said.fruits;
      orchard.tally.seedlings += said.seedlings;
    });
    for (const { family, bore } of plan.trees) {
      const { generation } = plan.families[family]!;
      const state = orchard.state(generation);
      state.bore += 1;
      orchard.tally.fruiting += 1;
      orchard.count(generation, COUNT.fruiting, 1);
      const year = Math.max(0, bore);
      if (state.firstFruit < 0 || year < state.firstFruit) state.firstFruit = year;
      state.lastWork = Math.max(state.lastWork, year);
    }
  }

  private put(plan: CompiledPlanToday, tree: CompiledBearing, lines: readonly Line[], today: number): number {
    const { orchard } = this;
    const { stand, compiled, facts, cohorts, luck } = orchard;
    const family = plan.families[tree.family]!;
    const { generation } = family;
    const i = stand.add();
    const ways = weighed(orchard, lines, tree.weak);
    stand.generation[i] = generation;
    luck.key(mix2(LUCK.today, tree.key));
    const line = ways[this.trees.draw(i, ways, generation, { ...tree, seasons: tree.seasons.length })]!;
    const c = openCohort(orchard, lineage(family, line), family.born);
    cohorts.left[c] = 0;
    const kind = cohorts.kind[c]!;
    const { rescue, backup } = orchard.generation(generation);
    const { weakShareAt, rootFact } = compiled.crosses[line.cross]!;
    // On a stock it came through, whatever its plan would have done.
    const weak = tree.weak === 1 && weakShareAt >= 0 && !(tree.grafted && rescue === null);
    const cured = rootFact >= 0 && facts.holds[rootFact] === 1;
    const grafted = tree.grafted && rescue !== null;
    stand.roots[i] = !grafted ? (weak ? ROOTS.weak : ROOTS.sound) : weak && !cured ? ROOTS.graftedWeak : ROOTS.grafted;
    stand.status[i] = STATUS.young;
    stand.neverFruits[i] = 0;
    // It has borne fruit.
    stand.sex[i] = compiled.kinds[kind]!.maleShareAt < 0 ? 0 : 2;
    stand.cohort[i] = c;
    stand.born[i] = family.born;
    stand.bears[i] = tree.bore;
    stand.tested[i] = 1;
    const planted = today - 1 - family.born >= compiled.kinds[kind]!.plantOutAge;
    stand.planted[i] = +planted;
    if (!planted) stand.unplanted += 1;
    stand.units[i] = this.trees.units(generation, kind, planted, grafted);
    stand.backups[i] = backup ? tree.copies : 0;
    return i;
  }

  /** The years gone by: trees lost, seasons judged, the goal looked at, trees kept as marked or by the rule. */
  private replay(plan: CompiledPlanToday, individuals: Int32Array, today: number): void {
    const { orchard } = this;
    const { stand, tally } = orchard;
    const first = plan.trees.reduce((least, { bore }) => Math.min(least, bore), today);
    for (let year = first; year < today; year += 1) {
      orchard.year = Math.max(0, year);
      plan.trees.forEach((tree, t) => {
        const i = individuals[t]!;
        if (i < 0) return;
        if (tree.gone === year && stand.alive[i] === 1) lose(orchard, i);
        if (tree.bore === year) {
          stand.status[i] = STATUS.judging;
          if (tally.yearStood < 0 && isTrulyGood(orchard, i)) tally.yearStood = orchard.year;
        }
        for (const season of tree.seasons) if (season.year === year) this.see(i, season);
        if (tree.picked && year === keptIn(tree, orchard.generation(stand.generation[i]!).judge)) this.keep(i);
      });
      for (let g = 0; g < orchard.plan.generations.length; g += 1) {
        if (plan.generations[g]!.marked && year < today - 1) this.passOver(g);
        else keepFinishers(orchard, g);
      }
      if (tally.yearProven >= 0) break;
    }
    for (const [t, tree] of plan.trees.entries())
      if (individuals[t]! >= 0 && tree.gone <= today && stand.alive[individuals[t]!] === 1) lose(orchard, individuals[t]!);
    stand.tidy();
  }

  /** One season of a tree, as it was noted. */
  private see(i: number, season: CompiledBearing['seasons'][number]): void {
    const { orchard } = this;
    const { stand, compiled, tally } = orchard;
    stand.judged[i]! += 1;
    tally.judgings += 1;
    orchard.state(stand.generation[i]!).lastWork = orchard.year;
    for (let t = 0; t < compiled.shown.length; t += 1) {
      if (season.shown[t]! <= 0) continue;
      const at = i * compiled.shown.length + t;
      stand.shownAny[at]! += 1;
      if (season.shown[t] === 2) stand.shownFull[at]! += 1;
      else stand.shownPart[at]! += 1;
    }
    for (let t = 0; t < compiled.measured.length; t += 1) stand.sum[i * compiled.measured.length + t]! += season.values[t]!;
    if (stand.judged[i] === compiled.goal.crops) lookAtGoal(orchard, i);
  }

  /** The breeder kept it. */
  private keep(i: number): void {
    const { orchard } = this;
    const { stand } = orchard;
    const g = stand.generation[i]!;
    const state = orchard.state(g);
    if (stand.status[i] === STATUS.pick) return;
    if (showedAll(orchard, i)) orchard.count(g, COUNT.showing, 1);
    stand.status[i] = STATUS.pick;
    stand.ordinal[i] = state.picks.length;
    state.picks.push(i);
    state.passed = true;
    if (state.firstPick < 0) state.firstPick = orchard.year;
    orchard.count(g, COUNT.kept, 1);
  }

  /** Trees that had their crops and were not marked as kept. */
  private passOver(g: number): void {
    const { orchard } = this;
    const { stand } = orchard;
    for (let n = 0; n < stand.livingCount; n += 1) {
      const i = stand.living[n]!;
      if (stand.generation[i] !== g || stand.status[i] !== STATUS.judging || stand.alive[i] === 0 || stand.bears[i]! > orchard.year) continue;
      if (stand.judged[i]! < Math.max(1, orchard.generation(g).judge)) continue;
      if (showedAll(orchard, i)) orchard.count(g, COUNT.showing, 1);
      stand.status[i] = STATUS.discarded;
    }
  }

  /** Seedlings that were tested when they were planted out stand as individuals that passed. */
  private tested(c: number, today: number): void {
    const { orchard } = this;
    const { cohorts, compiled } = orchard;
    const { test, testFrom, look } = orchard.generation(cohorts.generation[c]!);
    const out = cohorts.born[c]! + compiled.kinds[cohorts.kind[c]!]!.plantOutAge;
    if (out >= today || !((test && out >= testFrom) || look)) return;
    for (let k = 1; k < CLASSES; k += 2) {
      const at = c * CLASSES + k;
      const n = cohorts.counts[at]!;
      cohorts.counts[at] = 0;
      cohorts.left[c]! -= n;
      if (n > 0) this.newcomers.standing(c, k, n);
    }
  }

  /** Seed that is not due yet; what was not counted is drawn: fruit at the pair's set, seed as in any spring. */
  private sow(plan: CompiledPlanToday, { family: f, key, stage, n }: CompiledPlanToday['inGround'][number], lines: readonly Line[]): void {
    const { orchard } = this;
    const { compiled, facts, luck } = orchard;
    const family = plan.families[f]!;
    luck.key(mix2(LUCK.today, key));
    let count = n;
    if (stage === 2) {
      const cross = compiled.crosses[family.cross]!;
      const mother = lines[0]?.mother ?? 0;
      const fertility = facts.values[compiled.kinds[orchard.kindOf(mother)]!.fertilitySeedAt]!;
      count = binomialInverse(luck.uniform(), n, Math.min(1, springRate(luck, facts.values[cross.setAt]!, compiled.luckSet) * fertility));
    }
    splitOver(lines, count, () => luck.uniform()).forEach((taken, l) => {
      const line = lines[l]!;
      const seeds = stage === 0 ? taken : this.pollination.seedsIn(line.cross, line.mother, taken);
      if (seeds === 0) return;
      orchard.batches.push({ ...lineage(family, line), due: family.born, seeds });
      orchard.state(family.generation).inGround += seeds;
    });
  }
}

/** Year in which a tree marked as kept was: that of its last judged crop, or of its first fruit where none was asked or noted. */
function keptIn({ bore, seasons }: CompiledBearing, judge: number): number {
  return judge === 0 ? bore : (seasons[judge - 1]?.year ?? seasons.at(-1)?.year ?? bore);
}
