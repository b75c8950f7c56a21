import type { Stream } from '../random/stream.ts';
import { STAGES } from '../results/outlook.ts';
import { CLASSES, Cohorts } from './cohorts.ts';
import { UNITS_PER_PLACE, type Compiled, type CompiledGeneration, type CompiledPlan, type Work } from './compiled.ts';
import type { Facts } from './facts.ts';
import { mix2 } from '../random/mix.ts';
import { Stand, STATUS } from './stand.ts';
import type { Weather } from './weather.ts';

export const STAGE_COUNT = STAGES.length;
/** Positions in a generation's stage counts, in the order of STAGES. */
export const COUNT = { flowers: 0, fruits: 1, seeds: 2, seedlings: 3, aliveAtGraft: 4, fruiting: 5, showing: 6, kept: 7 } as const;

/** How one generation stands in the current future. Years are indices, −1 for “not yet”. */
export class GenerationState {
  goneOn = false;
  /** Some tree has met the keep rule, whether it was picked or waits for the choice. */
  passed = false;
  springs = 0;
  raised = 0;
  refused = 0;
  bore = 0;
  cohorts = 0;
  /** Seeds in the ground × nothing: just how many. */
  inGround = 0;
  firstPollination = -1;
  firstSeedling = -1;
  firstFruit = -1;
  firstPick = -1;
  lastWork = -1;
  /** Individuals ever picked, in order. */
  readonly picks: number[] = [];
  /** Males kept as fathers, in order. */
  readonly males: number[] = [];

  reset(): void {
    this.goneOn = this.passed = false;
    this.springs = this.raised = this.refused = this.bore = this.cohorts = this.inGround = 0;
    this.firstPollination = this.firstSeedling = this.firstFruit = this.firstPick = this.lastWork = -1;
    this.picks.length = this.males.length = 0;
  }
}

/** Seeds of one batch waiting in the ground. */
export interface Batch {
  readonly generation: number;
  readonly cross: number;
  readonly mother: number;
  readonly father: number;
  readonly pool: number;
  readonly poolKind: number;
  readonly pollinated: number;
  readonly due: number;
  readonly seeds: number;
}

/** Totals of one future of one plan. */
export class Tally {
  flowers = 0;
  fruits = 0;
  seedlings = 0;
  planted = 0;
  fruiting = 0;
  judgings = 0;
  grafts = 0;
  weakSaved = 0;
  tests = 0;
  noRoom = 0;
  placeUnitYears = 0;
  mostUnits = 0;
  proven = 0;
  trulyGood = 0;
  yearProven = -1;
  yearStood = -1;

  reset(): void {
    this.flowers = this.fruits = this.seedlings = this.planted = this.fruiting = this.judgings = this.grafts = this.weakSaved = this.tests = this.noRoom = 0;
    this.placeUnitYears = this.mostUnits = this.proven = this.trulyGood = 0;
    this.yearProven = this.yearStood = -1;
  }
}

/**
 * Everything that stands in one future of one plan. The steps of the year (winter, spring, season) are functions over it.
 * One Orchard is reused for all futures of a worker.
 */
export class Orchard {
  readonly stand: Stand;
  readonly cohorts = new Cohorts();
  readonly batches: Batch[] = [];
  readonly tally = new Tally();
  readonly states: GenerationState[] = [];
  readonly stages: Int32Array;
  readonly hours: Float64Array;
  readonly money: Float64Array;
  /** Places in use and flowers pollinated by hand, by year. */
  readonly places: Float64Array;
  readonly handFlowers: Float64Array;
  /** Sum of seen minus true value over proven trees, by measured trait. */
  readonly shortfall: Float64Array;
  plan: CompiledPlan;
  year = 0;
  /** Set as soon as as many trees as wanted are proven. */
  done = false;

  constructor(
    readonly compiled: Compiled,
    readonly facts: Facts,
    readonly weather: Weather,
    readonly luck: Stream,
    stand: Stand,
  ) {
    this.stand = stand;
    this.plan = compiled.plans[0]!;
    const most = Math.max(...compiled.plans.map((plan) => plan.generations.length));
    this.states = Array.from({ length: most }, () => new GenerationState());
    this.stages = new Int32Array(most * STAGE_COUNT);
    this.hours = new Float64Array(compiled.years);
    this.money = new Float64Array(compiled.years);
    this.places = new Float64Array(compiled.years);
    this.handFlowers = new Float64Array(compiled.years);
    this.shortfall = new Float64Array(compiled.measured.length);
  }

  reset(plan: CompiledPlan): void {
    this.plan = plan;
    this.stand.clear();
    this.cohorts.clear();
    this.batches.length = 0;
    this.tally.reset();
    for (const state of this.states) state.reset();
    this.stages.fill(0);
    this.hours.fill(0);
    this.money.fill(0);
    this.places.fill(0);
    this.handFlowers.fill(0);
    this.shortfall.fill(0);
    this.year = 0;
    this.done = false;
  }

  generation(g: number): CompiledGeneration {
    return this.plan.generations[g]!;
  }

  state(g: number): GenerationState {
    return this.states[g]!;
  }

  count(g: number, stage: number, n: number): void {
    this.stages[g * STAGE_COUNT + stage]! += n;
  }

  /** Books n units of work in a year. */
  work(kind: keyof Work, n: number, year = this.year): void {
    if (n === 0) return;
    this.hours[year]! += n * this.compiled.hours[kind];
    this.money[year]! += n * this.compiled.money[kind];
  }

  /** Share of this spring's flowers and fruit of a kind that a frost takes. */
  frostTaken(kind: number): number {
    if (this.weather.frost[this.year] === 0) return 0;
    const { values } = this.facts;
    return values[this.compiled.frostTakesAt]! * values[this.compiled.kinds[kind]!.frostShareAt]!;
  }

  /** Whether a pick lives: its tree or any backup of it. */
  lives(individual: number): boolean {
    return this.stand.alive[individual] === 1 || this.stand.backups[individual]! > 0;
  }

  livingPicks(g: number): number {
    let n = 0;
    for (const pick of this.state(g).picks) if (this.lives(pick)) n += 1;
    return n;
  }

  /** Key of a parent for family effects and the luck of set: a founding tree by its id, a pick by its generation and turn. */
  parentKey(handle: number): number {
    const { stand, compiled } = this;
    if (handle < compiled.trees.length) return compiled.trees[handle]!.key;
    const individual = handle - stand.firstIndividual;
    return mix2(0x51ed270b + stand.generation[individual]!, stand.ordinal[individual]!);
  }

  kindOf(handle: number): number {
    return this.stand.kindOf(handle);
  }

  /** Whether individuals can die of weakness or be grafted: some generation crosses weakly or grafts after testing. */
  growsIndividuals(): boolean {
    const { cohorts } = this;
    for (let c = 0; c < cohorts.count; c += 1) if (cohorts.classes[c] === CLASSES) return true;
    return false;
  }

  /** Room in use now, in units. */
  unitsInUse(): number {
    const { cohorts, stand, compiled, plan } = this;
    let sum = 0;
    for (let c = 0; c < cohorts.count; c += 1) {
      if (cohorts.left[c] === 0) continue;
      const nursery = compiled.kinds[cohorts.kind[c]!]!.nurseryUnits;
      const grafted = this.graftUnits(cohorts.generation[c]!, cohorts.kind[c]!);
      const classes = cohorts.classes[c]!;
      for (let k = 0; k < classes; k += 1) {
        const n = cohorts.counts[c * CLASSES + k]!;
        if (n > 0) sum += n * ((k & 1) === 0 ? nursery : k < 8 ? UNITS_PER_PLACE : grafted);
      }
    }
    for (let n = 0; n < stand.livingCount; n += 1) {
      const i = stand.living[n]!;
      if (stand.alive[i] === 1) sum += stand.units[i]!;
      const backups = stand.backups[i]!;
      if (backups > 0) {
        const { backup } = plan.generations[stand.generation[i]!]!;
        if (backup) sum += backups * compiled.stocks[backup.stock]!.placeUnits;
      }
    }
    return sum;
  }

  /** Room of a grafted seedling of a generation: the stock's; one grafted after planting out keeps the place it has if that is smaller. */
  graftUnits(g: number, kind: number): number {
    const rescue = this.generation(g).rescue;
    if (!rescue) return UNITS_PER_PLACE;
    const units = this.compiled.stocks[rescue.stock]!.placeUnits;
    return rescue.month < 12 * this.compiled.kinds[kind]!.plantOutAge ? units : Math.min(units, UNITS_PER_PLACE);
  }

  /** Whether an individual is still to be judged this season: before its generation's crops, or a pick on its way to the goal's crops. */
  toJudge(i: number): boolean {
    const { stand } = this;
    const status = stand.status[i]!;
    const { judge } = this.generation(stand.generation[i]!);
    if (judge === 0) return false;
    const judged = stand.judged[i]!;
    if (status === STATUS.judging) return judged < judge;
    return status === STATUS.pick && judged < Math.max(judge, this.compiled.goal.crops);
  }
}
