import { bitCount, copiesOf, placeCopies } from '../genetics/genome.ts';
import type { Stream } from '../random/stream.ts';
import type { CompiledMeasured } from './compiled.ts';

/**
 * A measured trait in one future: value in a season = mean + G + C + E + S + Y. From the phenotypic SD, single-season
 * heritability h² and repeatability t: V_G = h²·V_P; V_C + V_E = (t − h²)·V_P; V_S + V_Y = (1 − t)·V_P.
 * **Source:** Falconer & Mackay 1996, Introduction to Quantitative Genetics, ch. 8 (from memory); docs/model.md.
 */
export class Scale {
  effect = 0;
  inbreeding = 0;
  /** SDs of the lasting effect that travels, the one that stays, the season noise of the tree, and the common year effect. */
  travels = 0;
  site = 0;
  season = 0;
  year = 0;

  constructor(readonly trait: CompiledMeasured) {}

  set(values: Float64Array): void {
    const { trait } = this;
    const sd = values[trait.sdAt]!;
    const variance = sd * sd;
    const heritability = values[trait.heritabilityAt]!;
    const repeatability = Math.max(heritability, values[trait.repeatabilityAt]!);
    const lasting = (repeatability - heritability) * variance;
    const passing = (1 - repeatability) * variance;
    const travels = values[trait.travelsAt]!;
    const yearShare = values[trait.yearShareAt]!;
    // a = √(4·V_G/(2·32)): a reference population at allele frequency ½ then has variance V_G.
    this.effect = Math.sqrt((heritability * variance) / 16);
    this.inbreeding = values[trait.inbreedingAt]!;
    this.travels = Math.sqrt(lasting * travels);
    this.site = Math.sqrt(lasting * (1 - travels));
    this.season = Math.sqrt(passing * (1 - yearShare));
    this.year = Math.sqrt(passing * yearShare);
  }

  /** mean + G of a genome: a, b are the trait's two words, geneA and geneB the gene words. */
  genetic(a: number, b: number, geneA: number, geneB: number): number {
    let value = this.trait.mean + this.effect * (bitCount(a) + bitCount(b) - 32) + this.geneEffects(geneA, geneB);
    if (this.inbreeding > 0) value -= this.inbreeding * Math.max(0, 1 - bitCount(a ^ b) / 16);
    return value;
  }

  private geneEffects(geneA: number, geneB: number): number {
    let sum = 0;
    for (const { gene, half, dominance } of this.trait.genes) {
      const copies = copiesOf(geneA, geneB, gene);
      sum += copies === 1 ? dominance : copies === 2 ? half : -half;
    }
    return sum;
  }

  /**
   * Gives the tree whose trait words stand at a and b a stated genetic value (NaN: a random tree of the reference population),
   * to the nearest copy; out of reach means the end of the scale.
   */
  place(genome: Int32Array, a: number, b: number, value: number, geneA: number, geneB: number, stream: Stream): void {
    if (value !== value) {
      genome[a] = stream.bits();
      genome[b] = stream.bits();
      return;
    }
    if (this.inbreeding > 0) this.placeWithInbreeding(genome, a, b, value - this.geneEffects(geneA, geneB), stream);
    else {
      const copies = this.effect > 0 ? Math.round((value - this.trait.mean - this.geneEffects(geneA, geneB)) / this.effect) + 32 : 32;
      placeCopies(genome, a, b, Math.min(64, Math.max(0, copies)), stream);
    }
  }

  /** Copies are added in random order; the count whose value is nearest is taken. */
  private placeWithInbreeding(genome: Int32Array, a: number, b: number, value: number, stream: Stream): void {
    const order = Uint8Array.from({ length: 64 }, (_, i) => i);
    let wordA = 0;
    let wordB = 0;
    let best = Infinity;
    for (let n = 0; ; n += 1) {
      const reached = this.trait.mean + this.effect * (n - 32) - this.inbreeding * Math.max(0, 1 - bitCount(wordA ^ wordB) / 16);
      const miss = Math.abs(reached - value);
      if (miss < best) {
        best = miss;
        genome[a] = wordA;
        genome[b] = wordB;
      }
      if (n === 64) return;
      const pick = n + Math.floor(stream.uniform() * (64 - n));
      const place = order[pick]!;
      order[pick] = order[n]!;
      if (place < 32) wordA |= 1 << place;
      else wordB |= 1 << (place - 32);
    }
  }
}
