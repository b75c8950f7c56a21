import { power } from '../random/elementary.ts';
import { lognormalFrom, normalFrom } from '../random/draws.ts';
import { mix2 } from '../random/mix.ts';
import type { Stream } from '../random/stream.ts';
import { halfLifeFromSurvivors, weakLeft } from '../statistics/graft.ts';
import type { Compiled, CompiledBackground } from './compiled.ts';
import { Founders } from './founders.ts';
import { FACT, type Keyed } from './keys.ts';
import { Scale } from './scales.ts';
import type { Stand } from './stand.ts';

/**
 * Everything drawn once per future that the breeder could in principle find out: estimates, rules, yes/no facts, founding
 * genotypes, neighbours, family effects. Shared by all plans of the future.
 */
export class Facts {
  readonly values: Float64Array;
  readonly ruleOf: Int32Array;
  readonly holds: Uint8Array;
  readonly scales: readonly Scale[];
  /** Per cross entry: months in which half of the weak die; 0: at the onset, Infinity: never. */
  readonly halfLife: Float64Array;
  private readonly founders: Founders;
  private readonly drawnFor: Int32Array;
  private future = 0;
  private source: Keyed;

  constructor(
    private readonly compiled: Compiled,
    readonly stream: Stream,
    private readonly stand: Stand,
  ) {
    this.source = stream;
    this.values = compiled.estimates.values;
    this.ruleOf = new Int32Array(compiled.shown.length);
    this.holds = new Uint8Array(compiled.facts.length);
    this.scales = compiled.measured.map((trait) => new Scale(trait));
    this.halfLife = new Float64Array(compiled.crosses.length);
    this.founders = new Founders(compiled, this.values, this.ruleOf);
    this.drawnFor = new Int32Array(stand.firstIndividual).fill(-1);
  }

  /** Draws the facts of future `run` of a domain (see keys.ts). Anonymous neighbours are drawn when first needed. */
  draw(domain: number, run: number): void {
    this.drawFrom(this.stream.future(domain, run));
  }

  /** Draws them from wherever their purposes are keyed: one future, or several (see fact-mix.ts). */
  drawFrom(source: Keyed): void {
    const { compiled, values } = this;
    this.future += 1;
    this.source = source;
    compiled.estimates.draw(source);
    compiled.shown.forEach((trait, t) => {
      this.ruleOf[t] = chooseRule(trait.rules, trait.rules.length > 1 ? source.key(mix2(FACT.rule, trait.key)).uniform() : 0);
    });
    compiled.facts.forEach((fact, f) => {
      this.holds[f] = +(source.key(fact.key).uniform() < values[fact.chanceAt]!);
    });
    for (const scale of this.scales) scale.set(values);
    compiled.crosses.forEach((cross, c) => {
      this.halfLife[c] = cross.halfLifeAt >= 0 ? values[cross.halfLifeAt]! : cross.aliveAt >= 0 ? this.halfLifeFromCount(c) : Infinity;
    });
    compiled.trees.forEach((_, tree) => this.drawTree(tree));
  }

  /** Solves alive = S(a)·((1 − w) + w·2^(−(12a − onset)/H)) for H; impossible drawn values mean death at the onset, or never. */
  private halfLifeFromCount(crossAt: number): number {
    const { values, compiled } = this;
    const cross = compiled.crosses[crossAt]!;
    const kind = compiled.kinds[cross.gives]!;
    const ordinary = (1 - values[kind.firstYearLossAt]!) * power(1 - values[kind.yearlyLossAt]!, Math.max(0, cross.aliveYears - 1));
    const weakShare = values[cross.weakShareAt]!;
    if (weakShare <= 0) return Infinity;
    const count = { weakShare, alive: values[cross.aliveAt]!, atYears: cross.aliveYears, ordinarySurvival: ordinary, onset: values[cross.onsetAt]! };
    return halfLifeFromSurvivors(count) ?? (weakLeft(count) > 0 ? Infinity : 0);
  }

  private drawTree(handle: number): void {
    const { compiled, stand, source, values } = this;
    const tree = compiled.trees[handle]!;
    const { words } = compiled;
    const a = stand.offset(handle);
    this.founders.draw(tree, stand.genome, a, a + words, stand.able, stand.ableAt(handle), source.key(mix2(FACT.founder, tree.key)));
    this.scales.forEach((scale, t) => {
      const stream = source.key(mix2(tree.key, scale.trait.key));
      const at = tree.valueAt[t]!;
      scale.place(stand.genome, a + 1 + t, a + words + 1 + t, at >= 0 ? values[at]! : NaN, stand.genome[a]!, stand.genome[a + words]!, stream);
    });
  }

  /** Handle of anonymous neighbour i of a background, drawn once per future. */
  neighbour(background: CompiledBackground, i: number): number {
    const handle = background.firstHandle + i;
    if (this.drawnFor[handle] !== this.future) {
      this.drawnFor[handle] = this.future;
      this.drawNeighbour(background, i, handle);
    }
    return handle;
  }

  private drawNeighbour(background: CompiledBackground, i: number, handle: number): void {
    const { compiled, stand, values } = this;
    const { words } = compiled;
    const a = stand.offset(handle);
    const stream = this.source.key(mix2(mix2(FACT.neighbour, background.key), i));
    let wordA = 0;
    let wordB = 0;
    background.frequencyAt.forEach((at, gene) => {
      const frequency = at >= 0 ? values[at]! : 0;
      if (stream.uniform() < frequency) wordA |= 1 << gene;
      if (stream.uniform() < frequency) wordB |= 1 << gene;
    });
    stand.genome[a] = wordA;
    stand.genome[a + words] = wordB;
    this.scales.forEach((scale, t) => {
      const at = background.valueAt[t]!;
      const mean = at >= 0 ? values[at]! : NaN;
      const spread = background.spread[t]!;
      if (mean === mean && spread < 0) this.placeAtFrequency(scale, mean, a + 1 + t, a + words + 1 + t, stream);
      else scale.place(stand.genome, a + 1 + t, a + words + 1 + t, mean === mean ? mean + spread * normalFrom(stream.uniform()) : NaN, wordA, wordB, stream);
    });
  }

  /** No spread given: copies are random at the frequency that gives the mean; out of reach is the end. */
  private placeAtFrequency(scale: Scale, mean: number, a: number, b: number, stream: Stream): void {
    const { stand } = this;
    const frequency = scale.effect > 0 ? 0.5 + (mean - scale.trait.mean) / (64 * scale.effect) : 0.5;
    for (const at of [a, b]) {
      let word = 0;
      for (let bit = 0; bit < 32; bit += 1) if (stream.uniform() < frequency) word |= 1 << bit;
      stand.genome[at] = word;
    }
  }

  /** Family effect on the years to first fruit: lognormal, median 1, one per ordered pair of trees (open: per seed parent). */
  family(key: number, spread: number): number {
    return spread > 0 ? lognormalFrom(this.source.key(mix2(FACT.family, key)).uniform(), spread) : 1;
  }
}

function chooseRule(rules: readonly { readonly weight: number }[], u: number): number {
  let left = u * rules.reduce((sum, rule) => sum + rule.weight, 0);
  for (let i = 0; i < rules.length - 1; i += 1) {
    left -= rules[i]!.weight;
    if (left < 0) return i;
  }
  return rules.length - 1;
}
