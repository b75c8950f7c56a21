import { gameteShares, type PlacedGene } from './tray/linkage.ts';

/** Copies of each gene in a gamete, gene 0 first, and the share of gametes that are so. */
export interface LinkedGamete {
  readonly copies: readonly number[];
  readonly share: number;
}

/** Every way to put homologues into pairs. */
function pairings(of: readonly number[]): (readonly (readonly [number, number])[])[] {
  const [first, ...rest] = of;
  if (first === undefined) return [[]];
  return rest.flatMap((partner, i) => pairings(rest.filter((_, j) => j !== i)).map((others): (readonly [number, number])[] => [[first, partner], ...others]));
}

/**
 * Returns the gametes of a tree of several sets over linked genes, by the copies of each gene: homologues pair at random, each pair gives
 * one recombined homologue; with chance α one of these is there twice in place of another. Of an odd number one is left over, and goes
 * whole into gametes that take one more.
 * @param homologues alleles on each homologue, bit g the counted allele of gene g; 2 to 6 of them
 * @param genes at most 6, as `placeGenes` gives them
 * @param alpha double reduction of the group, as in `gameteDosages`
 * @param take homologues a gamete gets: half of them, rounded either way
 *
 * **Source:** Wu and others (1992) Theor. Appl. Genet. 83:294–300 for random pairs; Haldane (1919) within a pair; docs/model.md §3.
 */
export function linkedGametes(
  homologues: readonly number[],
  genes: readonly PlacedGene[],
  alpha = 0,
  take = Math.floor(homologues.length / 2),
): LinkedGamete[] {
  const { length } = homologues;
  if (length < 2 || length > 6) throw new RangeError('Gametes of linked genes are reckoned for two to six homologues.');
  if (take !== Math.floor(length / 2) && take !== Math.ceil(length / 2)) throw new RangeError('A gamete gets half of the homologues.');
  if (genes.length > 6) throw new RangeError('At most six linked genes can be looked at together.');
  const found = new Map<string, { copies: number[]; share: number }>();
  const add = (masks: readonly number[], share: number): void => {
    const copies = genes.map((_, g) => masks.reduce((n, mask) => n + ((mask >> g) & 1), 0));
    const key = copies.join();
    const entry = found.get(key);
    if (entry) entry.share += share;
    else found.set(key, { copies, share });
  };
  const doubled = take > 1 && length > 2 ? alpha : 0;
  const every =
    length % 2 === 0
      ? pairings(homologues).map((pairs) => ({ pairs, whole: [] as readonly number[] }))
      : homologues.flatMap((left, i) => pairings(homologues.filter((_, j) => j !== i)).map((pairs) => ({ pairs, whole: take > pairs.length ? [left] : [] })));
  for (const { pairs, whole } of every) {
    let gametes: { masks: readonly number[]; share: number }[] = [{ masks: whole, share: 1 / every.length }];
    for (const [a, b] of pairs) {
      const shares = gameteShares({ a, b }, genes);
      gametes = gametes.flatMap(({ masks, share }) =>
        [...shares].flatMap((chance, mask) => (chance > 0 ? [{ masks: [...masks, mask], share: share * chance }] : [])),
      );
    }
    for (const { masks, share } of gametes) {
      add(masks, share * (1 - doubled));
      if (doubled === 0) continue;
      const ways = take * (take - 1);
      masks.forEach((twice, i) => {
        masks.forEach((_, j) => {
          if (i !== j) add([...masks.filter((__, k) => k !== j), twice], (share * doubled) / ways);
        });
      });
    }
  }
  return [...found.values()];
}
