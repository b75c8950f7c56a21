import { markKind } from '../genetics/origin.ts';
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
    this.scales = compiled.measured.map((trait, t) => new Scale(trait, compiled.words, 1 + t));
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

  /** A uniform of a purpose of its own, from where this future's facts come. */
  uniform(key: number): number {
    return this.source.key(key).uniform();
  }

  /** Draws founding trees again, one of several times; attempt 0 is what `drawFrom` drew. */
  redraw(handles: readonly number[], attempt: number): void {
    for (const handle of handles) this.drawTree(handle, attempt);
  }

  private drawTree(handle: number, attempt = 0): void {
    const { compiled, stand, source, values } = this;
    const tree = compiled.trees[handle]!;
    const { words } = compiled;
    const { sets } = compiled.kinds[tree.kind]!;
    const a = stand.offset(handle);
    const founder = mix2(FACT.founder, tree.key);
    this.founders.draw(tree, stand.genome, a, stand.able, stand.ableAt(handle), source.key(attempt === 0 ? founder : mix2(founder, attempt)));
    this.scales.forEach((scale, t) => {
      const stream = source.key(mix2(tree.key, scale.trait.key));
      const at = tree.valueAt[t]!;
      const value = at >= 0 ? values[at]! : NaN;
      if (sets === 2) scale.place(stand.genome, a + 1 + t, a + words + 1 + t, value, stand.genome[a]!, stand.genome[a + words]!, stream);
      else scale.placeIn(stand.genome, a, sets, value, stream);
    });
    if (compiled.incompatibility) for (let h = 0; h < sets; h += 1) stand.genome[a + h * words + compiled.incompatibility.word] = tree.s[h] ?? 0;
    markFounder(compiled, stand.genome, a, tree.kind);
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
    const { sets } = compiled.kinds[background.kind]!;
    const a = stand.offset(handle);
    const stream = this.source.key(mix2(mix2(FACT.neighbour, background.key), i));
    for (let h = 0; h < sets; h += 1) stand.genome[a + h * words] = 0;
    background.frequencyAt.forEach((at, gene) => {
      const frequency = at >= 0 ? values[at]! : 0;
      for (let h = 0; h < sets; h += 1) if (stream.uniform() < frequency) stand.genome[a + h * words]! |= 1 << gene;
    });
    this.scales.forEach((scale, t) => {
      const at = background.valueAt[t]!;
      const mean = at >= 0 ? values[at]! : NaN;
      const spread = background.spread[t]!;
      if (mean === mean && spread < 0) {
        this.placeAtFrequency(scale, mean, a + 1 + t, sets, stream);
        return;
      }
      const value = mean === mean ? mean + spread * normalFrom(stream.uniform()) : NaN;
      if (sets === 2) scale.place(stand.genome, a + 1 + t, a + words + 1 + t, value, stand.genome[a]!, stand.genome[a + words]!, stream);
      else scale.placeIn(stand.genome, a, sets, value, stream);
    });
    // S alleles of neighbours stay 0: not known, and so never rejected.
    markFounder(compiled, stand.genome, a, background.kind);
  }

  /** No spread given: copies are random at the frequency that gives the mean; out of reach is the end. */
  private placeAtFrequency(scale: Scale, mean: number, first: number, sets: number, stream: Stream): void {
    const { stand, compiled } = this;
    const effect = scale.effects[sets]!;
    const frequency = effect > 0 ? 0.5 + (mean - scale.trait.mean) / (32 * sets * effect) : 0.5;
    for (let h = 0; h < sets; h += 1) {
      let word = 0;
      for (let bit = 0; bit < 32; bit += 1) if (stream.uniform() < frequency) word |= 1 << bit;
      stand.genome[first + h * compiled.words] = word;
    }
  }

  /** Lasting effect that travels with every copy of a founding tree, in SDs. */
  travels(tree: number, trait: number): number {
    const { trees, measured } = this.compiled;
    return normalFrom(this.source.key(mix2(FACT.copy, mix2(trees[tree]!.key, measured[trait]!.key))).uniform());
  }

  /** Family effect on the years to first fruit: lognormal, median 1, one per ordered pair of trees (open: per seed parent). */
  family(key: number, spread: number): number {
    return spread > 0 ? lognormalFrom(this.source.key(mix2(FACT.family, key)).uniform(), spread) : 1;
  }
}

/** A founding tree is of its own kind from end to end. */
function markFounder({ origin, kinds }: Compiled, genome: Int32Array, at: number, kind: number): void {
  if (!origin) return;
  for (let h = 0; h < kinds[kind]!.sets; h += 1) markKind(genome, at + h * origin.words.words, origin.words, origin.kinds.indexOf(kind));
}

function chooseRule(rules: readonly { readonly weight: number }[], u: number): number {
  let left = u * rules.reduce((sum, rule) => sum + rule.weight, 0);
  for (let i = 0; i < rules.length - 1; i += 1) {
    left -= rules[i]!.weight;
    if (left < 0) return i;
  }
  return rules.length - 1;
}
