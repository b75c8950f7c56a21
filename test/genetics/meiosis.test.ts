import { describe, it } from 'vitest';
import { Meiosis, type GenomeLayout } from '../../src/genetics/meiosis.ts';
import { rootOf, Stream } from '../../src/random/stream.ts';
import { expectMean, expectShare, expectVariance } from '../engine/agreement.ts';

/** Two genes on chromosomes of their own and one measured trait. */
const layout = (most: number): GenomeLayout => ({
  words: 2,
  most,
  measured: 1,
  sWord: -1,
  originFrom: 2,
  originWords: 0,
  loci: Uint8Array.of(0, 1),
  recombination: Float64Array.of(0.5, 0.5),
  free: true,
  doubleReduction: [],
  notBySeed: 0,
  notByPollen: 0,
});

/** Words of n gametes of a tree given by its homologues' words: genes, then the trait. */
function gametes(homologues: readonly (readonly [number, number])[], take: number, n: number): Int32Array[] {
  const sets = homologues.length;
  const genome = new Int32Array(4 * sets);
  homologues.forEach(([genes, trait], h) => genome.set([genes, trait], 2 * h));
  const meiosis = new Meiosis(layout(sets));
  const stream = new Stream(rootOf('pairing')).future(1, 0).key(1);
  return Array.from({ length: n }, () => {
    meiosis.gamete(genome, 0, sets, take, 2 * sets, true, stream);
    return genome.slice(2 * sets, 2 * sets + 2 * take);
  });
}

const copies = (gamete: Int32Array, gene: number) => gamete.reduce((sum, word, w) => sum + (w % 2 === 0 ? (word >>> gene) & 1 : 0), 0);
const N = 60_000;

describe('chromosomes pair each for itself', () => {
  // Where the copies stand to begin with must not matter: Mendel (1866), independent assortment.
  it.each([
    ['the same homologues', [3, 3, 0, 0]],
    ['other ones', [1, 1, 2, 2]],
    ['one of them', [3, 1, 2, 0]],
  ])('two duplex genes on %s are both in 25 of 36 gametes of a tree with four sets', (_, genes) => {
    const all = gametes(
      genes.map((word) => [word, 0] as const),
      2,
      N,
    );
    expectShare(all.filter((gamete) => copies(gamete, 0) > 0 && copies(gamete, 1) > 0).length, N, 25 / 36, 'both');
  });

  it('a triploid leaves another homologue over on each: of three, both genes stay in 1 of 9 small gametes', () => {
    const all = gametes(
      [
        [3, 0],
        [0, 0],
        [0, 0],
      ],
      1,
      N,
    );
    expectShare(all.filter((gamete) => gamete[0] === 3).length, N, 1 / 9, 'both');
  });
});

describe('a measured trait of a gamete', () => {
  // Sampling k of n copies at each of 32 loci without replacement: mean 32·k·p, variance 32·k·p(1 − p)(n − k)/(n − 1).
  it.each([
    [3, 1],
    [3, 2],
    [4, 2],
    [6, 3],
  ])('of %i sets that gives %i is that of 32 loci, each for itself (hypergeometric)', (sets, take) => {
    const favourable = (gamete: Int32Array) => {
      let n = 0;
      for (let w = 1; w < gamete.length; w += 2) for (let bit = 0; bit < 32; bit += 1) n += (gamete[w]! >>> bit) & 1;
      return n;
    };
    // One homologue has all of its copies, the others none: as linked as it can be to begin with.
    const values = gametes(
      Array.from({ length: sets }, (_, h) => [0, h === 0 ? -1 : 0] as const),
      take,
      N / 3,
    ).map(favourable);
    const p = 1 / sets;
    expectMean(values, 32 * take * p, 'mean');
    expectVariance(values, (32 * take * p * (1 - p) * (sets - take)) / (sets - 1), 'variance');
  });
});
