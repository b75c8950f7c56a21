import { copiesAt, favourable, heterozygosity, placeFavourable } from '../genetics/copies.ts';
import { bitCount, copiesOf, placeCopies } from '../genetics/genome.ts';
import { MOST_SETS } from '../model/limits.ts';
import type { Stream } from '../random/stream.ts';
import type { CompiledMeasured } from './compiled.ts';

/**
 * A measured trait in one future: value in a season = mean + G + C + E + S + Y. From the phenotypic SD, single-season
 * heritability h² and repeatability t: V_G = h²·V_P; V_C + V_E = (t − h²)·V_P; V_S + V_Y = (1 − t)·V_P.
 * **Source:** Falconer & Mackay 1996, Introduction to Quantitative Genetics, ch. 8 (from memory); docs/model.md.
 */
export class Scale {
  /** Effect of a copy with two sets, and by number of sets: a reference population has the same variance with any. */
  effect = 0;
  readonly effects = new Float64Array(MOST_SETS + 1);
  inbreeding = 0;
  /** SDs of the lasting effect that travels, the one that stays, the season noise of the tree, and the common year effect. */
  travels = 0;
  site = 0;
  season = 0;
  year = 0;

  /**
   * @param words of a homologue
   * @param word of it that holds the trait's loci
   */
  constructor(
    readonly trait: CompiledMeasured,
    private readonly words: number,
    private readonly word: number,
  ) {}

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
    for (let sets = 2; sets < this.effects.length; sets += 1) this.effects[sets] = Math.sqrt((heritability * variance) / (8 * sets));
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

  /** The same of a tree of any number of sets, whose genome begins at word offset `at`. */
  geneticOf(genome: Int32Array, at: number, sets: number): number {
    const { words, word } = this;
    let value = this.trait.mean + this.effects[sets]! * (favourable(genome, at, words, sets, word) - 16 * sets) + this.genesOf(genome, at, sets);
    if (this.inbreeding > 0) value -= this.inbreeding * Math.max(0, 1 - 2 * heterozygosity(genome, at, words, sets, word));
    return value;
  }

  /** k of n copies: even steps from −half to half, and dominance by the share of pairs of copies that differ, 1 at the middle. */
  private genesOf(genome: Int32Array, at: number, sets: number): number {
    let sum = 0;
    for (const { gene, half, dominance } of this.trait.genes) {
      const copies = copiesAt(genome, at, this.words, sets, gene);
      sum += half * ((2 * copies) / sets - 1) + (dominance * 4 * copies * (sets - copies)) / (sets * sets);
    }
    return sum;
  }

  /** As `place`, for a tree of any number of sets. */
  placeIn(genome: Int32Array, at: number, sets: number, value: number, stream: Stream): void {
    const { words, word } = this;
    if (value !== value) for (let h = 0; h < sets; h += 1) genome[at + h * words + word] = stream.bits();
    else if (this.inbreeding > 0) this.placeNearest(genome, at, sets, value, stream);
    else {
      const effect = this.effects[sets]!;
      const copies = effect > 0 ? Math.round((value - this.trait.mean - this.genesOf(genome, at, sets)) / effect) + 16 * sets : 16 * sets;
      placeFavourable(genome, at, words, sets, word, Math.min(32 * sets, Math.max(0, copies)), stream);
    }
  }

  /** Copies are added in random order; the count whose value is nearest is taken. */
  private placeNearest(genome: Int32Array, at: number, sets: number, value: number, stream: Stream): void {
    const { words, word } = this;
    const places = 32 * sets;
    const order = Uint8Array.from({ length: places }, (_, i) => i);
    const set = (n: number) => {
      genome[at + (order[n]! >> 5) * words + word]! |= 1 << (order[n]! & 31);
    };
    const empty = () => {
      for (let h = 0; h < sets; h += 1) genome[at + h * words + word] = 0;
    };
    empty();
    let nearest = 0;
    let best = Infinity;
    for (let n = 0; n <= places; n += 1) {
      const miss = Math.abs(this.geneticOf(genome, at, sets) - value);
      if (miss < best) [best, nearest] = [miss, n];
      if (n === places) break;
      const pick = n + Math.floor(stream.uniform() * (places - n));
      [order[n], order[pick]] = [order[pick]!, order[n]!];
      set(n);
    }
    empty();
    for (let n = 0; n < nearest; n += 1) set(n);
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
