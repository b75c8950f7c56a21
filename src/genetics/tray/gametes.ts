import { gameteDosages } from '../polysomic.ts';
import { linkedGametes } from '../polysomic-linkage.ts';
import { gameteShares, type PlacedGene } from './linkage.ts';

/** Genes in their order that travel together: from `first`, `count` of them. */
interface Group {
  readonly first: number;
  readonly count: number;
  readonly doubleReduction: number;
}

function groupsOf(genes: readonly PlacedGene[], doubleReduction: readonly number[]): Group[] {
  const groups: { first: number; count: number; doubleReduction: number }[] = [];
  genes.forEach(({ recombination }, g) => {
    const last = groups.at(-1);
    if (last && recombination < 0.5) last.count += 1;
    else groups.push({ first: g, count: 1, doubleReduction: doubleReduction[g] ?? 0 });
  });
  return groups;
}

/** What a gamete of a tree is made of. */
export interface GameteOptions {
  /** In order of linkage; homologues carry bit g for the counted allele of gene g. */
  readonly genes: readonly PlacedGene[];
  /** Chance of double reduction of each gene’s group. */
  readonly doubleReduction: readonly number[];
  readonly sets: number;
  /** Homologues a gamete gets. */
  readonly take: number;
  /** Genes that this side does not pass on, as bits. */
  readonly withheld: number;
  /** Place of the gene whose bit marks what the style rejects; −1 where nothing is. */
  readonly rejected: number;
  /** Whether gametes with such a copy fail; else they do as well as others. */
  readonly isPollen: boolean;
}

/**
 * Gametes of one side of a cross by their copies: class Σ copies of gene g · (take + 1)^g over all genes but the one that marks rejection.
 * Pollen that is rejected is left out, so that what is linked to it follows.
 */
export class Gametes {
  /** Copies of each gene by class, and the number of classes. */
  readonly copies: readonly (readonly number[])[];
  private readonly groups: readonly Group[];

  constructor(private readonly options: GameteOptions) {
    const { genes, doubleReduction, take, rejected } = options;
    this.groups = groupsOf(genes, doubleReduction);
    const counted = genes.length - +(rejected >= 0);
    const base = take + 1;
    this.copies = Array.from({ length: base ** counted }, (_, index) => Array.from({ length: counted }, (__, g) => Math.floor(index / base ** g) % base));
  }

  /**
   * Returns the share of gametes of each class, of those that work. Genes of different groups are independent of each other.
   * @throws RangeError where no gamete works
   *
   * **Source:** docs/model.md §3; one gene: Haldane (1930) J. Genet. 22:359–372, by `gameteDosages`; linked genes: `linkedGametes`.
   */
  of(homologues: readonly number[]): Float64Array {
    const { sets, genes, withheld, rejected } = this.options;
    const passed = withheld === 0 ? homologues : homologues.map((alleles) => alleles & ~withheld);
    // With two sets and nothing rejected, classes are the gametes as sets of alleles.
    if (sets === 2 && rejected < 0) return gameteShares({ a: passed[0] ?? 0, b: passed[1] ?? 0 }, genes);
    const base = this.options.take + 1;
    let shares = new Float64Array([1]);
    let place = 1;
    for (const group of this.groups) {
      const counted = group.count - +this.holdsRejection(group);
      const own = this.groupShares(group, passed, base, counted);
      const next = new Float64Array(shares.length * own.length);
      own.forEach((q, j) => {
        if (q > 0) shares.forEach((p, i) => (next[i + j * place] = p * q));
      });
      shares = next;
      place *= base ** counted;
    }
    return shares;
  }

  private holdsRejection({ first, count }: Group): boolean {
    const { rejected } = this.options;
    return rejected >= first && rejected < first + count;
  }

  /** Shares of the classes over one group alone. */
  private groupShares(group: Group, homologues: readonly number[], base: number, counted: number): Float64Array {
    const { genes, rejected, isPollen, sets, take } = this.options;
    const { first, count, doubleReduction } = group;
    const alleles = homologues.map((one) => (one >> first) & ((1 << count) - 1));
    const marker = this.holdsRejection(group) ? rejected - first : -1;
    if (count === 1 && marker < 0 && sets % 2 === 0)
      return Float64Array.from(
        gameteDosages(
          sets,
          alleles.reduce((sum, one) => sum + one, 0),
          doubleReduction,
        ),
      );
    const shares = new Float64Array(base ** counted);
    let works = 0;
    for (const { copies, share } of linkedGametes(alleles, genes.slice(first, first + count), doubleReduction, take)) {
      if (isPollen && marker >= 0 && copies[marker]! > 0) continue;
      works += share;
      let index = 0;
      let place = 1;
      copies.forEach((n, g) => {
        if (g === marker) return;
        index += n * place;
        place *= base;
      });
      shares[index]! += share;
    }
    if (!(works > 0)) throw new RangeError('No pollen works.');
    return marker >= 0 && isPollen ? shares.map((share) => share / works) : shares;
  }
}
