import { gameteDosages } from './polysomic.ts';

/**
 * Returns by what factor one selfing multiplies heterozygosity: the chance that two of a tree's copies at one gene, picked at random,
 * are not copies of one and the same.
 * @param sets even, 2 to 12: ½, 5/6 and 9/10 for two, four and six without double reduction
 * @param alpha double reduction
 *
 * **Source:** Haldane, J. B. S. (1930) J. Genet. 22:359–372; with double reduction own derivation: two copies come from one gamete with
 * chance (k − 1)/(2k − 1), and are then the same with α/C(k, 2); from two gametes, and then from the same parental copy with 1/(2k).
 */
export function heterozygosityKept(sets: number, alpha = 0): number {
  const half = sets / 2;
  const pairs = (half * (half - 1)) / 2;
  const within = half > 1 ? ((half - 1) / (sets - 1)) * (1 - alpha / pairs) : 0;
  return within + (half / (sets - 1)) * (1 - 1 / sets);
}

/** Copies of each allele of one gene, most first: [2, 2] is AAaa. Names of alleles do not matter. */
type Alleles = readonly number[];

const keyOf = (alleles: Alleles): string =>
  alleles
    .filter((n) => n > 0)
    .sort((a, b) => b - a)
    .join();

/** Every gamete of a tree as copies by allele, with its share. Allele by allele: each is drawn from what is left. */
function gametes(alleles: Alleles, alpha: number): { readonly taken: readonly number[]; readonly share: number }[] {
  const half = alleles.reduce((sum, n) => sum + n, 0) / 2;
  const labels = alleles.flatMap((n, allele) => new Array<number>(n).fill(allele));
  const found = new Map<string, { taken: number[]; share: number }>();
  const add = (picked: readonly number[], share: number): void => {
    const taken = alleles.map((_, allele) => picked.filter((place) => labels[place] === allele).length);
    const key = taken.join();
    const entry = found.get(key);
    if (entry) entry.share += share;
    else found.set(key, { taken, share });
  };
  const subsets = (size: number, from: number): number[][] =>
    size === 0 ? [[]] : labels.flatMap((_, place) => (place < from ? [] : subsets(size - 1, place + 1).map((rest) => [place, ...rest])));
  const apart = subsets(half, 0);
  for (const picked of apart) add(picked, (1 - alpha) / apart.length);
  if (alpha > 0) {
    const fewer = subsets(half - 1, 0);
    for (const picked of fewer) for (const twice of picked) add([...picked, twice], alpha / fewer.length / picked.length);
  }
  return [...found.values()];
}

/** What selfing makes of every state that can be reached from one. */
function steps(start: Alleles, alpha: number): Map<string, readonly (readonly [string, number])[]> {
  const all = new Map<string, readonly (readonly [string, number])[]>();
  const open: Alleles[] = [start];
  for (let alleles = open.pop(); alleles; alleles = open.pop()) {
    const key = keyOf(alleles);
    if (all.has(key)) continue;
    const next = new Map<string, number>();
    const mine = gametes(alleles, alpha);
    for (const mother of mine)
      for (const father of mine) {
        const seedling = mother.taken.map((n, allele) => n + (father.taken[allele] ?? 0));
        const to = keyOf(seedling);
        next.set(to, (next.get(to) ?? 0) + mother.share * father.share);
        if (!all.has(to)) open.push(seedling.filter((n) => n > 0));
      }
    all.set(key, [...next]);
  }
  return all;
}

/**
 * Returns the share of plants that carry one and the same allele on all copies after 0, 1, 2 … selfings of each line, exactly.
 * @param alleles copies of each allele that the first plant carries: [2, 2] for AAaa, [1, 1, 1, 1] for four different ones; 2, 4 or 6 in all
 * @param selfings whole, at least 0
 * @param alpha double reduction; 0 with two sets
 * @throws RangeError for other numbers of copies
 *
 * **Source:** chain over what a plant carries, gametes as in Haldane (1930); own enumeration.
 */
export function fixedAfter(alleles: readonly number[], selfings: number, alpha = 0): number[] {
  const sets = alleles.reduce((sum, n) => sum + n, 0);
  // Says what is wrong with sets and α, if anything.
  gameteDosages(sets, 0, alpha);
  if (sets > 6) throw new RangeError('Lines are followed for up to six sets.');
  const next = steps(alleles, sets === 2 ? 0 : alpha);
  let shares = new Map([[keyOf(alleles), 1]]);
  const fixed = [shares.get(String(sets)) ?? 0];
  for (let t = 0; t < selfings; t += 1) {
    const then = new Map<string, number>();
    for (const [from, share] of shares) for (const [to, chance] of next.get(from) ?? []) then.set(to, (then.get(to) ?? 0) + share * chance);
    shares = then;
    fixed.push(shares.get(String(sets)) ?? 0);
  }
  return fixed;
}
