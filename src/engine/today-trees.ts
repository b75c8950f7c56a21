import { normalFrom } from '../random/draws.ts';
import { exp, log, wholePower } from '../random/elementary.ts';
import { Breeding } from './breeding.ts';
import { UNITS_PER_PLACE } from './compiled.ts';
import { trueValue } from './judge.ts';
import type { Orchard } from './orchard.ts';
import type { Pools } from './pools.ts';
import type { CompiledBearing } from './today.ts';
import { oneOf, type Line } from './today-lines.ts';

/** Genomes drawn for a tree of which something was seen; one of them is taken, by how well each fits. */
const CANDIDATES = 32;

/** What was seen of a tree: seasons looked and shown by shown trait, mean and number of seasons by measured trait. */
export type Seen = Pick<CompiledBearing, 'looks' | 'shows' | 'means'> & { readonly seasons: number };

/**
 * Individuals whose genomes are drawn for what was seen of them: candidates from their parents' gametes, one taken with a chance in
 * proportion to the likelihood of what was seen; then whether it is able, and its lasting effects, given that genome. Exact for traits that
 * show or not as the number of candidates grows; within one future the seasons of different trees are taken as independent.
 * **Source:** sampling and resampling by importance: Rubin, D. B. (1987) J. Amer. Statist. Assoc. 82:543–546 (from memory); normal
 * regression: Falconer & Mackay (1996) ch. 8; docs/model.md “From today”.
 */
export class StandingTrees {
  private genomes = new Int32Array(0);
  private readonly weights = new Float64Array(CANDIDATES);
  private readonly lines = new Int32Array(CANDIDATES);
  private readonly breeding: Breeding;

  constructor(
    private readonly orchard: Orchard,
    private readonly pools: Pools,
  ) {
    this.breeding = new Breeding(orchard.compiled, orchard.stand);
  }

  /**
   * Writes the genome of individual i, whether it is able, and its lasting effects. The luck stream stands at its key.
   * @returns place of the line it comes from
   */
  draw(i: number, lines: readonly Line[], generation: number, seen: Seen): number {
    const { stand, compiled } = this.orchard;
    const handle = stand.handleOf(i);
    const informed = seen.seasons > 0;
    const candidates = informed ? CANDIDATES : 1;
    const words = stand.offset(1);
    const at = stand.offset(handle);
    if (this.genomes.length < CANDIDATES * words) this.genomes = new Int32Array(CANDIDATES * words);
    let most = -Infinity;
    for (let c = 0; c < candidates; c += 1) {
      this.lines[c] = this.breed(i, lines);
      this.genomes.set(stand.genome.subarray(at, at + words), c * words);
      const weight = informed ? this.fit(i, handle, generation, seen) : 0;
      this.weights[c] = weight;
      most = Math.max(most, weight);
    }
    const chosen = candidates === 1 ? 0 : this.choose(candidates, most);
    stand.genome.set(this.genomes.subarray(chosen * words, (chosen + 1) * words), at);
    stand.kind[i] = compiled.crosses[lines[this.lines[chosen]!]!.cross]!.gives;
    this.settle(i, handle, generation, seen);
    return this.lines[chosen]!;
  }

  private breed(i: number, lines: readonly Line[]): number {
    const { stand, compiled, luck, year } = this.orchard;
    const l = lines.length > 1 ? oneOf(lines, luck.uniform()) : 0;
    const { cross, mother, father, pool, poolKind } = lines[l]!;
    const named = father >= 0 ? father : this.pools.father(pool, poolKind, mother, year, luck);
    const kind = compiled.crosses[cross]!.gives;
    stand.kind[i] = kind;
    this.breeding.child(mother, named, stand.handleOf(i), kind, luck);
    return l;
  }

  private choose(candidates: number, most: number): number {
    let total = 0;
    for (let c = 0; c < candidates; c += 1) {
      this.weights[c] = exp(Math.max(-700, this.weights[c]! - most));
      total += this.weights[c]!;
    }
    let left = this.orchard.luck.uniform() * total;
    for (let c = 0; c < candidates - 1; c += 1) {
      left -= this.weights[c]!;
      if (left < 0) return c;
    }
    return candidates - 1;
  }

  /** Log likelihood of what was seen, given the genome that stands at the handle. */
  private fit(i: number, handle: number, generation: number, seen: Seen): number {
    const { compiled, facts } = this.orchard;
    let sum = 0;
    for (let t = 0; t < compiled.shown.length; t += 1) {
      if (seen.looks[t] === 0) continue;
      const able = this.qualifies(handle, t) ? facts.values[compiled.shown[t]!.canShowAt]! : 0;
      const chance = able * this.chanceSeen(t, seen, true) + (1 - able) * this.chanceSeen(t, seen, false);
      sum += chance > 1e-300 ? log(chance) : -690;
    }
    for (const t of this.orchard.generation(generation).judgedMeasured) {
      const scale = facts.scales[t]!;
      const miss = seen.means[t]! - this.genetic(i, t);
      // Where all of it is inherited, a genome fits as far as one allele more or less goes.
      const variance = Math.max(square(scale.travels) + square(scale.site) + passing(scale, seen.seasons), square(scale.effect));
      if (variance > 0) sum -= square(miss) / (2 * variance);
    }
    return sum;
  }

  /** Chance of what was seen of a trait, for a tree that is able to show it or is not; without the binomial coefficient. */
  private chanceSeen(t: number, { looks, shows }: Seen, able: boolean): number {
    const { compiled, facts } = this.orchard;
    const trait = compiled.shown[t]!;
    const rate = facts.values[able ? trait.seasonsAt : trait.falseShowAt]!;
    return wholePower(rate, shows[t]!) * wholePower(1 - rate, looks[t]! - shows[t]!);
  }

  private qualifies(handle: number, t: number): boolean {
    const { compiled, facts, stand } = this.orchard;
    return stand.qualifies(compiled.shown[t]!.rules[facts.ruleOf[t]!]!, handle);
  }

  /** mean + G of the genome at an individual's handle. */
  private genetic(i: number, t: number): number {
    const { stand, compiled } = this.orchard;
    stand.travels[i * compiled.measured.length + t] = 0;
    return trueValue(this.orchard, i, t);
  }

  /** Able or not, and lasting effects, given the genome and what was seen. */
  private settle(i: number, handle: number, generation: number, seen: Seen): void {
    const { compiled, facts, luck, stand } = this.orchard;
    for (let t = 0; t < compiled.shown.length; t += 1) {
      const u = luck.uniform();
      let chance = this.qualifies(handle, t) ? facts.values[compiled.shown[t]!.canShowAt]! : 0;
      if (seen.looks[t]! > 0 && chance > 0) {
        const right = chance * this.chanceSeen(t, seen, true);
        const wrong = (1 - chance) * this.chanceSeen(t, seen, false);
        if (right + wrong > 0) chance = right / (right + wrong);
      }
      stand.able[stand.ableAt(handle) + t] = +(u < chance);
    }
    const measured = compiled.measured.length;
    for (const t of this.orchard.generation(generation).judgedMeasured) {
      const scale = facts.scales[t]!;
      const [travels, site] = [square(scale.travels), square(scale.site)];
      const genetic = this.genetic(i, t);
      const [u, v] = [normalFrom(luck.uniform()), normalFrom(luck.uniform())];
      const both = travels + site;
      if (seen.seasons === 0 || both === 0) {
        stand.travels[i * measured + t] = scale.travels * u;
        stand.lasting[i * measured + t] = scale.travels * u + scale.site * v;
        continue;
      }
      // What is left after the genes is regressed on the lasting effects, and these on the part that travels.
      const noise = passing(scale, seen.seasons);
      const lasting = ((seen.means[t]! - genetic) * both) / (both + noise) + Math.sqrt((both * noise) / (both + noise)) * u;
      stand.lasting[i * measured + t] = lasting;
      stand.travels[i * measured + t] = (lasting * travels) / both + Math.sqrt((travels * site) / both) * v;
    }
  }

  /** Room of a tree that stands: its place, or its stock's. */
  units(generation: number, kind: number, planted: boolean, grafted: boolean): number {
    const { compiled } = this.orchard;
    return !planted ? compiled.kinds[kind]!.nurseryUnits : grafted ? this.orchard.graftUnits(generation, kind) : UNITS_PER_PLACE;
  }
}

const square = (x: number) => x * x;
/** Variance of the mean of so many seasons around the tree's lasting value; the year's share is taken as the tree's own. */
const passing = ({ season, year }: { readonly season: number; readonly year: number }, seasons: number) => (square(season) + square(year)) / seasons;
