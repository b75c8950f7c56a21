import type { Programme } from '../model/programme.ts';
import { rootOf, Stream } from '../random/stream.ts';
import type { Diary } from '../results/diary.ts';
import { Columns, type Shape } from '../results/columns.ts';
import { CLASSES } from './cohorts.ts';
import { compile } from './compile.ts';
import { UNITS_PER_PLACE, type Compiled } from './compiled.ts';
import { drawnFacts, MixedFacts, type FactMix } from './fact-mix.ts';
import { Facts } from './facts.ts';
import { Diarist } from './diary.ts';
import { germinate } from './germination.ts';
import { judgeCrops } from './judge.ts';
import { goOn, keepFinishers } from './keep.ts';
import { DOMAIN } from './keys.ts';
import { Newcomers } from './newcomers.ts';
import { Orchard } from './orchard.ts';
import { record } from './outcome.ts';
import { Pollination } from './pollination.ts';
import { grow } from './rescue.ts';
import { Stand } from './stand.ts';
import { compileToday } from './today.ts';
import { TodayFill } from './today-fill.ts';
import { FoundersToday } from './today-founders.ts';
import { Weather } from './weather.ts';
import { NOTHING, type WhatIf } from './what-if.ts';
import { winter } from './winter.ts';

/**
 * Runs futures of a checked programme. One Simulator holds all memory that its futures need; it belongs to one thread.
 * Same programme, shuffle word and run numbers: the same bytes, in any order and on any number of threads.
 * A what-if states what happens for sure beside it; nothing stated changes nothing.
 */
export class Simulator {
  readonly compiled: Compiled;
  private readonly orchard: Orchard;
  private readonly pollination: Pollination;
  private readonly newcomers: Newcomers;
  private readonly luck: Stream;
  private readonly facts: Facts;
  private readonly weather: Weather;
  /** Where the log is forecast from what stands; null: from the first spring. */
  private readonly standing: { readonly fill: TodayFill; readonly founders: FoundersToday } | null;

  constructor(
    private readonly programme: Programme,
    whatIf: WhatIf = NOTHING,
  ) {
    const compiled = compile(programme, whatIf, compileToday);
    const root = rootOf(programme.shuffleWord);
    const stand = new Stand(compiled);
    this.compiled = compiled;
    this.luck = new Stream(root);
    this.facts = new Facts(compiled, new Stream(root), stand);
    this.weather = new Weather(compiled);
    this.orchard = new Orchard(compiled, this.facts, this.weather, this.luck, stand);
    this.pollination = new Pollination(this.orchard);
    this.newcomers = new Newcomers(this.orchard, this.pollination.fathers);
    this.standing = compiled.today && {
      fill: new TodayFill(this.orchard, this.newcomers, this.pollination),
      founders: new FoundersToday(compiled, this.facts, stand, new Stream(root)),
    };
  }

  shapeOf(plan: number): Shape {
    const { compiled } = this;
    return {
      generations: compiled.plans[plan]!.generations.length,
      rules: compiled.shown.length,
      facts: compiled.facts.length,
      measured: compiled.measured.length,
      years: compiled.years,
      ...(compiled.origin ? { origins: compiled.origin.kinds.length } : {}),
    };
  }

  /**
   * Runs futures from … from + runs − 1 of the plans (positions). Returns columns in the order of `plans`.
   * The headline pass: facts and luck are drawn anew in each future.
   */
  runs(plans: readonly number[], from: number, runs: number): Columns[] {
    const out = plans.map((plan) => new Columns(this.shapeOf(plan), runs));
    for (let row = 0; row < runs; row += 1) {
      this.drawFacts(DOMAIN.facts, from + row);
      this.luck.future(DOMAIN.luck, from + row);
      this.weather.draw(this.facts, this.luck);
      plans.forEach((plan, p) => this.record(plan, out[p]!, row));
    }
    return out;
  }

  /**
   * The second pass: sets of facts `from` … `from + sets − 1`, each with `futures` futures of their own luck. Returns, for each
   * plan and set, in how many of its futures a tree was proven by each year: provenBy[(plan · sets + set) · years + year].
   */
  factSets(plans: readonly number[], from: number, sets: number, futures: number): Int32Array {
    const { years } = this.compiled;
    const provenBy = new Int32Array(plans.length * sets * years);
    for (let set = 0; set < sets; set += 1) {
      this.drawFacts(DOMAIN.factSets, from + set);
      for (let f = 0; f < futures; f += 1) {
        this.luck.future(DOMAIN.factSetLuck, (from + set) * futures + f);
        this.weather.draw(this.facts, this.luck);
        plans.forEach((plan, p) => {
          this.run(plan);
          const { yearProven } = this.orchard.tally;
          if (yearProven >= 0) for (let y = yearProven; y < years; y += 1) provenBy[(p * sets + set) * years + y]! += 1;
        });
      }
    }
    return provenBy;
  }

  /** Futures of mixed facts, each with the luck of its number. Returns the year proven of each plan and row, at [plan · rows + row]; −1: never. */
  mixed(plans: readonly number[], mix: FactMix): Int32Array {
    const rows = mix.lucks.length;
    const out = new Int32Array(plans.length * rows);
    const source = new MixedFacts(drawnFacts(this.programme, this.compiled), mix, this.facts.stream);
    for (let row = 0; row < rows; row += 1) {
      if (source.goTo(row) || row === 0) {
        this.facts.drawFrom(source);
        this.standing?.founders.condition();
      }
      this.luck.future(DOMAIN.mixedLuck, mix.lucks[row]!);
      this.weather.draw(this.facts, this.luck);
      plans.forEach((plan, p) => {
        this.run(plan);
        out[p * rows + row] = this.orchard.tally.yearProven;
      });
    }
    return out;
  }

  /** Tells future `run` of a plan (position) year by year: the same future that `runs` counts under that number. */
  diary(plan: number, run: number): Diary {
    this.drawFacts(DOMAIN.facts, run);
    this.luck.future(DOMAIN.luck, run);
    this.weather.draw(this.facts, this.luck);
    this.orchard.reset(this.compiled.plans[plan]!);
    const diarist = new Diarist(this.orchard, this.programme);
    this.run(
      plan,
      () => diarist.note(),
      () => diarist.begin(),
    );
    return diarist.finish(run);
  }

  /** Facts of a future; where trees stand, what they showed is known of their founding parents. */
  private drawFacts(domain: number, run: number): void {
    this.facts.draw(domain, run);
    this.standing?.founders.condition();
  }

  private record(plan: number, columns: Columns, row: number): void {
    this.run(plan);
    record(this.orchard, columns, row);
  }

  /** One future of one plan, on the facts and weather drawn before. Order within a year: winter, spring, season. */
  private run(planAt: number, yearEnd: () => void = () => undefined, begun: () => void = () => undefined): void {
    const { orchard, newcomers, standing } = this;
    const { today } = this.compiled;
    const plan = this.compiled.plans[planAt]!;
    orchard.reset(plan);
    newcomers.reset();
    if (standing && today) {
      standing.fill.fill(today, planAt);
      begun();
      if (orchard.done) return;
    }
    for (let year = today?.year ?? 0; year < this.compiled.years; year += 1) {
      orchard.year = year;
      if (year > 0) winter(orchard, newcomers);
      this.spring();
      judgeCrops(orchard);
      for (let g = 0; g < plan.generations.length; g += 1) if (orchard.generation(g).judge > 0) keepFinishers(orchard, g);
      grow(orchard);
      this.noteWork();
      yearEnd();
      if (orchard.done) return;
    }
    orchard.year = this.compiled.years - 1;
  }

  private spring(): void {
    const { orchard, pollination, newcomers } = this;
    const units = orchard.batches.length > 0 ? germinate(orchard, orchard.unitsInUse()) : orchard.unitsInUse();
    orchard.tally.placeUnitYears += units;
    orchard.places[orchard.year] = units / UNITS_PER_PLACE;
    orchard.tally.mostUnits = Math.max(orchard.tally.mostUnits, units);
    orchard.work('perPlaceYear', units / UNITS_PER_PLACE);
    newcomers.comeIntoBearing();
    for (let g = 0; g < orchard.plan.generations.length; g += 1) if (orchard.generation(g).judge === 0) keepFinishers(orchard, g);
    goOn(orchard);
    pollination.spring();
  }

  /** A generation is at work while seed lies in the ground or seedlings stand that can still fruit. */
  private noteWork(): void {
    const { orchard } = this;
    const { cohorts, year } = orchard;
    for (let g = 0; g < orchard.plan.generations.length; g += 1) if (orchard.state(g).inGround > 0) orchard.state(g).lastWork = year;
    for (let c = 0; c < cohorts.count; c += 1) {
      if (cohorts.left[c] === 0) continue;
      const state = orchard.state(cohorts.generation[c]!);
      if (state.lastWork === year) continue;
      for (let k = 0; k < CLASSES; k += 1) if ((k & 2) === 0 && cohorts.counts[c * CLASSES + k]! > 0) state.lastWork = year;
    }
  }
}
