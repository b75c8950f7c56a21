import { child, type Linkage } from '../../../../src/genetics/genome.ts';
import type { Stream } from '../../../../src/random/stream.ts';

/** Thirty-two free genes: one tree is 32 experiments that share nothing but their pedigree. */
export const FREE: Linkage = { count: 32, linked: false, recombination: new Float64Array(32).fill(0.5) };
export const ALL = -1;

/** Genes in a row with stated recombination between neighbours. */
export const linked = (...recombination: readonly number[]): Linkage => ({
  count: recombination.length + 1,
  linked: true,
  recombination: Float64Array.from([0.5, ...recombination]),
});

/** Trees with one word of genes on each homologue, by number; children are made by the engine's own meiosis. */
export class Trees {
  private readonly genome: Int32Array;

  constructor(
    most: number,
    private readonly stream: Stream,
    private readonly linkage: Linkage = FREE,
  ) {
    this.genome = new Int32Array(2 * most);
  }

  plant(tree: number, a: number, b: number): void {
    this.genome[2 * tree] = a;
    this.genome[2 * tree + 1] = b;
  }

  /** A tree of a randomly mated population in which both alleles of every gene are equally frequent. */
  plantRandom(tree: number): void {
    this.plant(tree, this.stream.bits(), this.stream.bits());
  }

  cross(mother: number, father: number, to: number): void {
    child(this.genome, 2 * mother, 2 * father, 2 * to, 1, this.stream, this.linkage);
  }

  copy(from: number, to: number): void {
    this.plant(to, this.a(from), this.b(from));
  }

  /** Genes of the homologue from the mother. */
  a(tree: number): number {
    return this.genome[2 * tree] ?? 0;
  }

  /** Genes of the homologue from the father. */
  b(tree: number): number {
    return this.genome[2 * tree + 1] ?? 0;
  }
}
