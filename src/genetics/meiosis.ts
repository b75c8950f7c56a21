import type { Stream } from '../random/stream.ts';

/** What a locus of the walk along the chromosomes decides: gene bits 0 … 31, the S allele, then the markers of origin. */
export const S_LOCUS = 32;
export const FIRST_MARKER = 33;

/** Double reduction of one linkage group: with chance `share` two copies of it in a gamete are the same copy of the parent. */
export interface DoubleReduction {
  readonly share: number;
  /** What belongs to the group: bits of the gene word and of the marker words, and whether the S allele does. */
  readonly genes: number;
  readonly markers: number;
  readonly s: boolean;
}

/** How genomes are laid out and passed on. Word 0 of a homologue holds the genes, then measured traits, the S allele, the origin of markers. */
export interface GenomeLayout {
  /** Words a homologue. */
  readonly words: number;
  /** Most homologues that any tree has: a tree takes most·words words. */
  readonly most: number;
  /** First word of measured traits is 1; so many there are. */
  readonly measured: number;
  /** Word of the S allele, −1 for none. */
  readonly sWord: number;
  /** First word of the origin of markers, and how many. */
  readonly originFrom: number;
  readonly originWords: number;
  /** Loci in the order of the walk, and the chance of recombination with the one before; ½ where a chromosome starts or a gene is free. */
  readonly loci: Uint8Array;
  readonly recombination: Float64Array;
  /** Whether genes segregate freely of each other, so that one random word does for all. */
  readonly free: boolean;
  readonly doubleReduction: readonly DoubleReduction[];
  /** Genes that the seed parent, or the pollen parent, does not pass on. */
  readonly notBySeed: number;
  readonly notByPollen: number;
}

/** Loci that travel together: a stretch of the walk, and what of the words it decides. */
interface Chromosome {
  readonly from: number;
  readonly to: number;
  readonly genes: number;
  readonly markers: number;
  readonly s: boolean;
}

/**
 * Meiosis with any number of homologues. They pair at random, on each chromosome anew; each pair gives one recombined homologue (Haldane 1919,
 * no interference); of an odd number one is left over and goes whole into the gametes that take one more. With double reduction α, two of the
 * gamete's copies of a linkage group are the same copy of the parent.
 *
 * The 32 loci of a measured trait share the pairing of an even number of homologues: what a gamete carries of it does not depend on who pairs
 * with whom in the mean, so that mean and variance are those of loci that pair each for itself.
 * **Source:** docs/model.md, Genome; random chromosome segregation: Muller 1914, Am. Nat. 48:508–512; α: Mather 1936, J. Genet. 32:287–314
 * (both from memory).
 */
export class Meiosis {
  private readonly order: Uint8Array;
  private readonly chromosomes: readonly Chromosome[];
  private geneMask = 0;
  private sMask = 0;
  private markerMask = 0;

  constructor(private readonly layout: GenomeLayout) {
    this.order = new Uint8Array(layout.most);
    this.chromosomes = chromosomesOf(layout);
  }

  /**
   * Writes one gamete of the tree at word offset `from`, with `sets` homologues, to `to`: `take` homologues, ⌊sets/2⌋ or ⌈sets/2⌉.
   * @param bySeed whether it is an egg: some genes are not passed on by one of the two
   */
  gamete(genome: Int32Array, from: number, sets: number, take: number, to: number, bySeed: boolean, stream: Stream): void {
    const stays = bySeed ? ~this.layout.notBySeed : ~this.layout.notByPollen;
    if (sets === 2) this.ofTwo(genome, from, to, stays, stream);
    else {
      this.ofMany(genome, from, sets, take, to, stays, stream);
      if (take > 1) this.reduce(genome, to, take, stream);
    }
  }

  /** With two homologues there is one way to pair. */
  private ofTwo(genome: Int32Array, a: number, out: number, stays: number, stream: Stream): void {
    const { words, measured, sWord, originFrom, originWords } = this.layout;
    const b = a + words;
    this.cross(stream);
    genome[out] = pick(genome[a]!, genome[b]!, this.geneMask) & stays;
    for (let w = 1; w <= measured; w += 1) genome[out + w] = pick(genome[a + w]!, genome[b + w]!, stream.bits());
    if (sWord >= 0) genome[out + sWord] = pick(genome[a + sWord]!, genome[b + sWord]!, this.sMask);
    for (let w = originFrom; w < originFrom + originWords; w += 1) genome[out + w] = pick(genome[a + w]!, genome[b + w]!, this.markerMask);
  }

  private ofMany(genome: Int32Array, from: number, sets: number, take: number, to: number, stays: number, stream: Stream): void {
    const { words, measured, sWord, originFrom, originWords } = this.layout;
    for (let p = 0; p < take; p += 1) genome.fill(0, to + p * words, to + (p + 1) * words);
    for (const { from: first, to: last, genes, markers, s } of this.chromosomes) {
      this.pairUp(sets, stream);
      for (let p = 0; p < take; p += 1) {
        const a = from + this.paired(2 * p, sets) * words;
        const b = from + this.paired(2 * p + 1, sets) * words;
        const out = to + p * words;
        this.walk(first, last, stream);
        genome[out] = genome[out]! | (pick(genome[a]!, genome[b]!, this.geneMask) & genes & stays);
        if (s) genome[out + sWord] = pick(genome[a + sWord]!, genome[b + sWord]!, this.sMask);
        for (let w = originFrom; w < originFrom + originWords; w += 1)
          genome[out + w] = genome[out + w]! | (pick(genome[a + w]!, genome[b + w]!, this.markerMask) & markers);
      }
    }
    // Of an odd number, the one that is left over counts double in the mean: each locus then pairs for itself.
    const odd = sets % 2 === 1;
    for (let w = 1; w <= measured; w += 1)
      for (let locus = odd ? 0 : 31; locus < 32; locus += 1) {
        this.pairUp(sets, stream);
        const bits = odd ? 1 << locus : -1;
        for (let p = 0; p < take; p += 1) {
          const a = genome[from + this.paired(2 * p, sets) * words + w]!;
          const b = genome[from + this.paired(2 * p + 1, sets) * words + w]!;
          const out = to + p * words + w;
          genome[out] = genome[out]! | (pick(a, b, stream.bits()) & bits);
        }
      }
  }

  /** Puts the homologues in a random order: the first pairs with the second, the third with the fourth. */
  private pairUp(sets: number, stream: Stream): void {
    const { order } = this;
    for (let h = 0; h < sets; h += 1) order[h] = h;
    for (let h = sets - 1; h > 0; h -= 1) {
      const other = Math.floor(stream.uniform() * (h + 1));
      const held = order[h]!;
      order[h] = order[other]!;
      order[other] = held;
    }
  }

  /** The homologue at a place of the order; one that is left over pairs with itself. */
  private paired(place: number, sets: number): number {
    return this.order[Math.min(place, sets - 1)]!;
  }

  /** Draws which of two homologues each locus is taken from. */
  private cross(stream: Stream): void {
    const { layout } = this;
    if (!layout.free) {
      this.walk(0, layout.loci.length, stream);
      return;
    }
    this.geneMask = stream.bits();
    if (layout.sWord >= 0) this.sMask = -(stream.bits() & 1);
  }

  /** The same of a stretch of the walk. */
  private walk(from: number, to: number, stream: Stream): void {
    const { loci, recombination } = this.layout;
    let genes = 0;
    let markers = 0;
    let side = 0;
    for (let i = from; i < to; i += 1) {
      if (stream.uniform() < recombination[i]!) side ^= 1;
      const locus = loci[i]!;
      if (locus < S_LOCUS) genes |= side << locus;
      else if (locus === S_LOCUS) this.sMask = -side;
      else markers |= side << (locus - FIRST_MARKER);
    }
    this.geneMask = genes;
    this.markerMask = markers;
  }

  /** Double reduction: a copy of a group takes the place of another of the same gamete. */
  private reduce(genome: Int32Array, to: number, take: number, stream: Stream): void {
    const { words, sWord, originFrom, originWords, doubleReduction } = this.layout;
    for (const { share, genes, markers, s } of doubleReduction) {
      if (stream.uniform() >= share) continue;
      const one = Math.floor(stream.uniform() * take);
      const other = (one + 1 + Math.floor(stream.uniform() * (take - 1))) % take;
      const a = to + one * words;
      const b = to + other * words;
      genome[b] = pick(genome[a]!, genome[b]!, genes);
      if (s) genome[b + sWord] = genome[a + sWord]!;
      for (let w = originFrom; w < originFrom + originWords; w += 1) genome[b + w] = pick(genome[a + w]!, genome[b + w]!, markers);
    }
  }

  /** Empties the homologues from `from` to the most that any tree has. */
  clear(genome: Int32Array, at: number, from: number): void {
    const { words, most } = this.layout;
    genome.fill(0, at + from * words, at + most * words);
  }
}

/** Bits of a where the mask is 1, of b where it is 0. */
function pick(a: number, b: number, mask: number): number {
  return b ^ ((a ^ b) & mask);
}

/** Stretches of the walk: one begins wherever recombination with the locus before is free. */
function chromosomesOf({ loci, recombination }: GenomeLayout): Chromosome[] {
  const starts = [...recombination.keys()].filter((i) => i === 0 || recombination[i] === 0.5);
  return starts.map((from, c) => {
    const to = starts[c + 1] ?? loci.length;
    const of = [...loci.subarray(from, to)];
    const bits = (first: number, last: number) => of.reduce((mask, locus) => (locus >= first && locus < last ? mask | (1 << (locus - first)) : mask), 0);
    return { from, to, genes: bits(0, S_LOCUS), markers: bits(FIRST_MARKER, FIRST_MARKER + 32), s: of.includes(S_LOCUS) };
  });
}
