import { bitCount, type GenotypeRule } from './genome.ts';
import type { Stream } from '../random/stream.ts';

/*
 * Trees with any number of homologues in one flat Int32Array: homologue h of the tree at word offset `at` stands at at + h·words. Homologues
 * that a tree does not have are 0, so that copies can be counted over as many as any tree has.
 */

/** Copies of gene `gene`, 0 … sets. */
export function copiesAt(genome: Int32Array, at: number, words: number, sets: number, gene: number): number {
  let copies = 0;
  for (let h = 0, word = at; h < sets; h += 1, word += words) copies += (genome[word]! >>> gene) & 1;
  return copies;
}

/** Whether a tree qualifies under a rule. */
export function qualifiesAt(rule: GenotypeRule, genome: Int32Array, at: number, words: number, sets: number): boolean {
  const { genes, copies } = rule;
  if (rule.mode === 2) {
    let sum = 0;
    for (let i = 0; i < genes.length; i += 1) sum += copiesAt(genome, at, words, sets, genes[i]!);
    return sum >= rule.total;
  }
  const all = rule.mode === 0;
  for (let i = 0; i < genes.length; i += 1) if (copiesAt(genome, at, words, sets, genes[i]!) >= copies[i]! !== all) return !all;
  return all;
}

/** Whether a genotype given as copies by gene qualifies under a rule. */
export function qualifiesWith(rule: GenotypeRule, copies: ArrayLike<number>): boolean {
  const { genes } = rule;
  if (rule.mode === 2) {
    let sum = 0;
    for (let i = 0; i < genes.length; i += 1) sum += copies[genes[i]!]!;
    return sum >= rule.total;
  }
  const all = rule.mode === 0;
  for (let i = 0; i < genes.length; i += 1) if (copies[genes[i]!]! >= rule.copies[i]! !== all) return !all;
  return all;
}

/** Favourable copies of a measured trait whose word is `word`, 0 … 32·sets. */
export function favourable(genome: Int32Array, at: number, words: number, sets: number, word: number): number {
  let count = 0;
  for (let h = 0, w = at + word; h < sets; h += 1, w += words) count += bitCount(genome[w]!);
  return count;
}

/**
 * Chance that two copies of a locus, taken at random without putting back, differ, on average over a trait's 32 loci; ½ in a reference
 * population at frequency ½. With two sets: the share of loci with two different alleles.
 *
 * **Source:** gametic heterozygosity, Moody, Mueller & Soltis 1993, Genetics 134:649–657 (from memory).
 */
export function heterozygosity(genome: Int32Array, at: number, words: number, sets: number, word: number): number {
  let differing = 0;
  for (let h = 1; h < sets; h += 1) for (let i = 0; i < h; i += 1) differing += bitCount(genome[at + h * words + word]! ^ genome[at + i * words + word]!);
  return differing / (16 * sets * (sets - 1));
}

/** Puts n copies of a gene on homologues taken at random (selection sampling). Draws a uniform a homologue at most. */
export function placeGene(genome: Int32Array, at: number, words: number, sets: number, gene: number, n: number, stream: Stream): void {
  let left = n;
  for (let h = 0; h < sets && left > 0; h += 1)
    if (left === sets - h || stream.uniform() * (sets - h) < left) {
      left -= 1;
      genome[at + h * words]! |= 1 << gene;
    }
}

/** Spreads n favourable copies at random over the 32·sets places of a measured trait's words, which are overwritten. Draws a uniform a place at most. */
export function placeFavourable(genome: Int32Array, at: number, words: number, sets: number, word: number, n: number, stream: Stream): void {
  const places = 32 * sets;
  let left = n;
  for (let h = 0, place = 0; h < sets; h += 1) {
    let bits = 0;
    for (let bit = 0; bit < 32; bit += 1, place += 1)
      if (left > 0 && stream.uniform() * (places - place) < left) {
        left -= 1;
        bits |= 1 << bit;
      }
    genome[at + h * words + word] = bits;
  }
}
