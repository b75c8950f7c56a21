import { exp } from '../../random/elementary.ts';

/** A gene among others that are looked at together, in order along the chromosomes. */
export interface PlacedGene {
  readonly id: string;
  /** Chance of recombination with the gene before it in the list; ½ where it segregates freely of it. */
  readonly recombination: number;
  /** Linked to none of the others: which homologue carries the allele does not matter. */
  readonly alone: boolean;
}

/** Where a gene lies, as far as it is stated. */
interface Placeable {
  readonly id: string;
  readonly group?: string | undefined;
  readonly position?: number | undefined;
}

const LINKED_BELOW = 0.5;

/**
 * Puts genes in order of linkage group and position (cM) and gives the recombination between neighbours, r = ½(1 − e^(−2d)); without
 * interference genes between two of the list change nothing.
 * @param ids genes to look at, each once; one without a group or a position segregates freely
 *
 * **Source:** Haldane, J. B. S. (1919) J. Genet. 8:299–309.
 */
export function placeGenes(programme: { readonly genes: readonly Placeable[] }, ids: readonly string[]): PlacedGene[] {
  const places = ids.map((id) => {
    const gene = programme.genes.find((entry) => entry.id === id);
    return { id, group: gene?.position === undefined ? undefined : gene.group, position: gene?.position ?? 0 };
  });
  places.sort((a, b) => (a.group ?? '').localeCompare(b.group ?? '', 'en') || a.position - b.position);
  const recombination = places.map(({ group, position }, i) => {
    const before = places[i - 1];
    return group === undefined || before?.group !== group ? LINKED_BELOW : LINKED_BELOW * (1 - exp((-2 * (position - before.position)) / 100));
  });
  const joined = (i: number) => (recombination[i] ?? LINKED_BELOW) < LINKED_BELOW;
  return places.map(({ id }, i) => ({ id, recombination: recombination[i] ?? LINKED_BELOW, alone: !joined(i) && !joined(i + 1) }));
}

/** Alleles on a tree's two homologues: bit g is the counted allele of gene g of a list. */
export interface Homologues {
  readonly a: number;
  readonly b: number;
}

/**
 * Returns the share of gametes with each set of counted alleles, by bit mask over the genes (2^genes entries that sum to 1).
 * @param genes at most 20, as `placeGenes` gives them
 *
 * **Source:** Haldane (1919), no interference: a walk along the genes that changes homologue with chance r.
 */
export function gameteShares({ a, b }: Homologues, genes: readonly PlacedGene[]): Float64Array {
  const masks = 1 << genes.length;
  let onA = new Float64Array(masks);
  let onB = new Float64Array(masks);
  onA[0] = LINKED_BELOW;
  onB[0] = LINKED_BELOW;
  genes.forEach(({ recombination: r }, g) => {
    const nextA = new Float64Array(masks);
    const nextB = new Float64Array(masks);
    const bitA = a & (1 << g);
    const bitB = b & (1 << g);
    for (let mask = 0; mask < 1 << g; mask += 1) {
      nextA[mask | bitA]! += onA[mask]! * (1 - r) + onB[mask]! * r;
      nextB[mask | bitB]! += onB[mask]! * (1 - r) + onA[mask]! * r;
    }
    onA = nextA;
    onB = nextB;
  });
  return onA.map((share, mask) => share + onB[mask]!);
}
