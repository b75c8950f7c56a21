import type { Stream } from '../random/stream.ts';

/**
 * Diploid genomes in one flat Int32Array: tree h owns words h·2W … h·2W + 2W − 1, homologue a first. Word 0 holds the genes
 * (bit g: the counted allele of gene g), word 1 + t the 32 unlinked loci of measured trait t.
 */

export interface Linkage {
  readonly count: number;
  readonly linked: boolean;
  readonly recombination: Float64Array;
}

/** Number of set bits of a 32-bit word. **Source:** the usual parallel bit count (from memory). */
export function bitCount(x: number): number {
  x -= (x >>> 1) & 0x55555555;
  x = (x & 0x33333333) + ((x >>> 2) & 0x33333333);
  return Math.imul((x + (x >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}

/** Copies (0–2) of gene `gene` in the two gene words. */
export function copiesOf(a: number, b: number, gene: number): number {
  return ((a >>> gene) & 1) + ((b >>> gene) & 1);
}

/** Which homologue each gene is taken from: free genes by a raw random word, linked ones by a walk along the group (Haldane, no interference). */
function geneMask(stream: Stream, linkage: Linkage): number {
  if (!linkage.linked) return stream.bits();
  let mask = 0;
  let side = 0;
  for (let gene = 0; gene < linkage.count; gene += 1) {
    if (stream.uniform() < linkage.recombination[gene]!) side ^= 1;
    mask |= side << gene;
  }
  // A fair first side: where a group starts, recombination is ½.
  return mask;
}

/** Writes one gamete of the tree at `from` (word offset) to `to`. Draws one word for each of W words (more where genes are linked). */
function gamete(genome: Int32Array, from: number, to: number, words: number, stream: Stream, linkage: Linkage): void {
  for (let w = 0; w < words; w += 1) {
    const mask = w === 0 ? geneMask(stream, linkage) : stream.bits();
    const a = genome[from + w]!;
    const b = genome[from + words + w]!;
    genome[to + w] = b ^ ((a ^ b) & mask);
  }
}

/** Writes the genome of a child: homologue a from the mother, b from the father. Offsets in words. */
export function child(genome: Int32Array, mother: number, father: number, to: number, words: number, stream: Stream, linkage: Linkage): void {
  gamete(genome, mother, to, words, stream, linkage);
  gamete(genome, father, to + words, words, stream, linkage);
}

/** 0: every gene has its copies, 1: any gene has, 2: the genes together have `total`. */
export interface GenotypeRule {
  readonly mode: 0 | 1 | 2;
  readonly genes: readonly number[];
  readonly copies: readonly number[];
  readonly total: number;
}

/** Whether the gene words a, b qualify under a rule. */
export function qualifies(rule: GenotypeRule, a: number, b: number): boolean {
  const { genes, copies } = rule;
  if (rule.mode === 2) {
    let sum = 0;
    for (let i = 0; i < genes.length; i += 1) sum += copiesOf(a, b, genes[i]!);
    return sum >= rule.total;
  }
  const all = rule.mode === 0;
  for (let i = 0; i < genes.length; i += 1) if (copiesOf(a, b, genes[i]!) >= copies[i]! !== all) return !all;
  return all;
}

/** Spreads n favourable copies at random over the 64 places of a measured trait's two words (selection sampling). Draws 64 uniforms at most. */
export function placeCopies(genome: Int32Array, a: number, b: number, n: number, stream: Stream): void {
  let wordA = 0;
  let wordB = 0;
  let left = n;
  for (let place = 0; place < 64 && left > 0; place += 1) {
    if (stream.uniform() * (64 - place) < left) {
      left -= 1;
      if (place < 32) wordA |= 1 << place;
      else wordB |= 1 << (place - 32);
    }
  }
  genome[a] = wordA;
  genome[b] = wordB;
}
