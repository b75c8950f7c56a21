import { qualifies } from '../genetics/genome.ts';
import { binomialInverse, normalFrom } from '../random/draws.ts';
import { mix2 } from '../random/mix.ts';
import { Breeding } from './breeding.ts';
import { CLASSES, FATE } from './cohorts.ts';
import { UNITS_PER_PLACE } from './compiled.ts';
import { STAGE, stageKey } from './keys.ts';
import { isTrulyGood } from './judge.ts';
import { copyMother } from './mother-copy.ts';
import { COUNT, type Orchard } from './orchard.ts';
import type { Pools } from './pools.ts';
import { lose } from './rescue.ts';
import { keepOrDiscardMale } from './sexes.ts';
import { ROOTS, STATUS } from './stand.ts';

/** Draws of one seedling that passed its test; where hardly any would, the last is taken. */
const MOST_TRIES = 50;

/** Seedlings that become individuals with a genome: those that come into bearing, and those that are tested before it. */
export class Newcomers {
  /** Whether any generation of this future tested seedlings before they fruited. */
  private anyYoung = false;
  private readonly breeding: Breeding;

  constructor(
    private readonly orchard: Orchard,
    private readonly fathers: Pools,
  ) {
    this.breeding = new Breeding(orchard.compiled, orchard.stand);
  }

  /** Before a new future. */
  reset(): void {
    this.anyYoung = false;
  }

  /** Spring: seedlings of the right age flower for the first time. */
  comeIntoBearing(): void {
    const { cohorts } = this.orchard;
    for (let c = 0; c < cohorts.count; c += 1) if (cohorts.left[c]! > 0) this.bearCohort(c);
    this.bearYoung();
  }

  private bearCohort(c: number): void {
    const { cohorts, luck, year } = this.orchard;
    const age = year - cohorts.born[c]!;
    if (age < 1) return;
    const g = cohorts.generation[c]!;
    const at = c * CLASSES;
    const own = cohorts.notYet(c, age);
    const before = cohorts.notYetOwn[c]!;
    cohorts.notYetOwn[c] = own;
    const { counts } = cohorts;
    // Nobody can be bearing yet: nothing to draw.
    const classes = cohorts.classes[c]!;
    const grafted = classes === CLASSES && counts[at + 8]! + counts[at + 9]! + counts[at + 12]! + counts[at + 13]! > 0;
    let notYetGrafted = 1;
    if (grafted) {
      notYetGrafted = this.notYetGrafted(c, g, age);
      if (own === before && notYetGrafted === cohorts.notYetGrafted[c]) return;
    } else if (own === before) return;
    luck.key(mix2(stageKey(g, STAGE.bearing, year), cohorts.ordinal[c]!));
    const hazardOwn = before > 0 ? 1 - own / before : 1;
    const hazardGrafted = grafted ? (cohorts.notYetGrafted[c]! > 0 ? 1 - notYetGrafted / cohorts.notYetGrafted[c]! : 1) : 0;
    cohorts.notYetGrafted[c] = notYetGrafted;
    let total = 0;
    for (let k = 0; k < classes; k += 1) {
      if ((k & 2) !== 0) continue;
      const n = counts[at + k]!;
      const hazard = k < 8 ? hazardOwn : hazardGrafted;
      const bearing = n > 0 && hazard > 0 ? binomialInverse(luck.uniform(), n, hazard) : 0;
      this.bearingNow[k] = bearing;
      total += bearing;
    }
    if (total === 0) return;
    cohorts.left[c]! -= total;
    luck.key(mix2(stageKey(g, STAGE.genomes, year), cohorts.ordinal[c]!));
    for (let k = 0; k < classes; k += 1) {
      if ((k & 2) !== 0) continue;
      counts[at + k]! -= this.bearingNow[k]!;
      for (let n = this.bearingNow[k]!; n > 0; n -= 1) this.bear(this.create(c, k));
    }
  }
  private readonly bearingNow = new Int32Array(CLASSES);

  /** Share not yet in bearing at an age, of trees grafted at month m: years still ahead at the graft are multiplied by the stock's precocity. */
  private notYetGrafted(c: number, g: number, age: number): number {
    const { cohorts, compiled, facts, orchard } = {
      cohorts: this.orchard.cohorts,
      compiled: this.orchard.compiled,
      facts: this.orchard.facts,
      orchard: this.orchard,
    };
    const rescue = orchard.generation(g).rescue;
    if (!rescue) return 1;
    const at = rescue.month / 12;
    return cohorts.notYet(c, age <= at ? age : at + (age - at) / facts.values[compiled.stocks[rescue.stock]!.precocityAt]!);
  }

  /** Individuals that were tested before they fruited. */
  private bearYoung(): void {
    const { stand, cohorts, luck, year } = this.orchard;
    for (let n = 0; n < stand.livingCount && this.anyYoung; n += 1) {
      const i = stand.living[n]!;
      if (stand.alive[i] === 0 || stand.status[i] !== STATUS.young || stand.neverFruits[i] === 1) continue;
      const c = stand.cohort[i]!;
      const age = year - cohorts.born[c]!;
      const g = stand.generation[i]!;
      const isGrafted = stand.roots[i]! >= ROOTS.grafted;
      const rescue = this.orchard.generation(g).rescue;
      const graftedBefore = isGrafted && rescue !== null && age - 1 >= rescue.month / 12;
      const before = graftedBefore ? this.notYetGrafted(c, g, age - 1) : cohorts.notYet(c, age - 1);
      const now = isGrafted ? this.notYetGrafted(c, g, age) : cohorts.notYet(c, age);
      if (now === before) continue;
      luck.key(mix2(stageKey(g, STAGE.bearing, year), 0x5000000 + i));
      if (luck.uniform() < 1 - now / before) this.bear(i);
    }
  }

  private bear(i: number): void {
    const { orchard } = this;
    const { stand, tally, year } = orchard;
    const g = stand.generation[i]!;
    const state = orchard.state(g);
    stand.status[i] = STATUS.judging;
    stand.bears[i] = year;
    if (stand.sex[i] === 1) {
      state.lastWork = year;
      keepOrDiscardMale(orchard, i);
      return;
    }
    state.bore += 1;
    if (state.firstFruit < 0) state.firstFruit = year;
    state.lastWork = year;
    tally.fruiting += 1;
    orchard.count(g, COUNT.fruiting, 1);
    if (tally.yearStood < 0 && isTrulyGood(orchard, i)) tally.yearStood = year;
  }

  /** An individual of cohort c and class k, with genome and lasting effects. The luck stream stands at its cohort's key. */
  private create(c: number, k: number): number {
    const { orchard } = this;
    const { stand, cohorts, compiled, facts, luck } = orchard;
    const i = stand.add();
    const g = cohorts.generation[c]!;
    const generation = orchard.generation(g);
    const kind = cohorts.kind[c]!;
    const planted = k & 1;
    stand.generation[i] = g;
    stand.status[i] = STATUS.young;
    stand.roots[i] = k >> 2;
    stand.neverFruits[i] = (k >> 1) & 1;
    stand.planted[i] = planted;
    if (planted === 0) stand.unplanted += 1;
    stand.kind[i] = kind;
    stand.cohort[i] = c;
    stand.born[i] = cohorts.born[c]!;
    stand.bears[i] = -1;
    stand.units[i] = planted === 0 ? compiled.kinds[kind]!.nurseryUnits : k < 8 ? UNITS_PER_PLACE : orchard.graftUnits(g, kind);
    const handle = stand.handleOf(i);
    const mother = cohorts.mother[c]!;
    if (cohorts.fate[c] === FATE.clone) {
      copyMother(orchard, i, mother);
      return i;
    }
    const named = cohorts.father[c]!;
    const father = named >= 0 ? named : this.fathers.father(cohorts.pool[c]!, cohorts.poolKind[c]!, mother, cohorts.pollinated[c]!, luck);
    this.breeding.child(mother, father, handle, kind, luck);
    const a = stand.genome[stand.offset(handle)]!;
    const b = stand.genome[stand.offset(handle) + compiled.words]!;
    const diploid = compiled.sets === 2;
    for (let t = 0; t < compiled.shown.length; t += 1) {
      const trait = compiled.shown[t]!;
      stand.able[stand.ableAt(handle) + t] = +(
        luck.uniform() < facts.values[trait.canShowAt]! &&
        (diploid ? qualifies(trait.rules[facts.ruleOf[t]!]!, a, b) : stand.qualifies(trait.rules[facts.ruleOf[t]!]!, handle))
      );
    }
    const measured = compiled.measured.length;
    for (const t of generation.judgedMeasured) {
      const scale = facts.scales[t]!;
      const travels = scale.travels * normalFrom(luck.uniform());
      stand.travels[i * measured + t] = travels;
      stand.lasting[i * measured + t] = travels + scale.site * normalFrom(luck.uniform());
    }
    const { maleShareAt } = compiled.kinds[kind]!;
    if (maleShareAt >= 0) stand.sex[i] = luck.uniform() < facts.values[maleShareAt]! ? 1 : 2;
    return i;
  }

  /** At planting out: every seedling of the cohort is tested or looked at; those that fail leave. */
  testSeedlings(c: number): void {
    const { orchard } = this;
    const { cohorts, luck, year } = orchard;
    const g = cohorts.generation[c]!;
    this.anyYoung = true;
    luck.key(mix2(stageKey(g, STAGE.genomes, year), cohorts.ordinal[c]! + 1000003));
    for (let k = 0; k < CLASSES; k += 2) {
      const n = cohorts.counts[c * CLASSES + k]!;
      cohorts.counts[c * CLASSES + k] = 0;
      cohorts.left[c]! -= n;
      for (let s = 0; s < n; s += 1) if (!this.passes(this.create(c, k), g)) lose(orchard, orchard.stand.count - 1);
    }
  }

  /** Seedlings of cohort c and class k that were tested before today and stand: individuals that pass, each drawn until one does. */
  standing(c: number, k: number, n: number): void {
    const { orchard } = this;
    const { cohorts, luck, stand, year } = orchard;
    const g = cohorts.generation[c]!;
    this.anyYoung = true;
    luck.key(mix2(stageKey(g, STAGE.genomes, year), cohorts.ordinal[c]! + 2000003));
    for (let s = 0; s < n; s += 1)
      for (let tries = 0; ; tries += 1) {
        const i = this.create(c, k);
        if (tries >= MOST_TRIES || this.passes(i, g)) break;
        lose(orchard, i);
      }
    stand.tidy();
  }

  private passes(i: number, g: number): boolean {
    const { orchard } = this;
    const { stand, luck, tally } = orchard;
    const { test, testFrom, look } = orchard.generation(g);
    const handle = stand.handleOf(i);
    const says = (truth: boolean, falsePositive: number, falseNegative: number) => luck.uniform() < (truth ? 1 - falseNegative : falsePositive);
    if (look) {
      orchard.work('perLook', 1);
      if (says(stand.able[stand.ableAt(handle) + look.trait] === 1, look.falsePositive, look.falseNegative) !== look.keepIfShown) return false;
    }
    if (!test || orchard.year < testFrom) return true;
    tally.tests += 1;
    orchard.work('perTest', 1);
    const carries = stand.copies(handle, test.gene) >= test.copies;
    stand.tested[i] = +says(carries, test.falsePositive, test.falseNegative);
    return stand.tested[i] === 1 || !test.cull;
  }
}
