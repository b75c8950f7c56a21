/** Markers of origin a homologue: one bit each of its marker words. */
export const MARKERS = 32;

/** A marker of origin, in the order of chromosomes and places. */
export interface Marker {
  readonly chromosome: number;
  /** Place on its chromosome, cM. */
  readonly position: number;
  /** Length that it stands for, cM: to half-way to its neighbours. All together: the whole genome. */
  readonly length: number;
}

/**
 * Spreads the markers over the chromosomes: half of them on those that carry named genes, where drag is looked at, one of them right at each
 * gene as far as they go; the others evenly over the rest.
 * @param lengths of the chromosomes, cM, each above 0
 * @param genes places of named genes (cM) by chromosome; chromosomes that carry none are left out
 * @returns 32 markers
 *
 * **Source:** own choice, docs/model.md, Origin.
 */
export function placeMarkers(lengths: readonly number[], genes: ReadonlyMap<number, readonly number[]>): Marker[] {
  const all = lengths.map((_, chromosome) => chromosome);
  const carrying = all.filter((chromosome) => genes.has(chromosome));
  const others = all.filter((chromosome) => !genes.has(chromosome));
  const forCarrying = carrying.length === 0 ? 0 : others.length === 0 ? MARKERS : MARKERS / 2;
  const markers = [...spread(carrying, forCarrying, lengths, genes), ...spread(others, MARKERS - forCarrying, lengths, genes)];
  return markers.sort((a, b) => a.chromosome - b.chromosome || a.position - b.position);
}

function spread(chromosomes: readonly number[], count: number, lengths: readonly number[], genes: ReadonlyMap<number, readonly number[]>): Marker[] {
  const whole = chromosomes.reduce((sum, chromosome) => sum + lengths[chromosome]!, 0);
  const marked = chromosomes.slice(0, count);
  const reached = marked.reduce((sum, chromosome) => sum + lengths[chromosome]!, 0);
  return marked.flatMap((chromosome, i) => {
    const length = lengths[chromosome]!;
    const n = Math.floor(count / marked.length) + +(i < count % marked.length);
    const places = Array.from({ length: n }, (_, k) => ((k + 0.5) * length) / n);
    const taken = new Set<number>();
    for (const gene of [...new Set(genes.get(chromosome))].slice(0, n)) {
      const nearest = places.reduce(
        (best, place, k) => (!taken.has(k) && (best < 0 || Math.abs(place - gene) < Math.abs(places[best]! - gene)) ? k : best),
        -1,
      );
      places[nearest] = gene;
      taken.add(nearest);
    }
    places.sort((a, b) => a - b);
    const edges = [0, ...places.slice(1).map((place, k) => (place + places[k]!) / 2), length];
    // Chromosomes without a marker are spoken for by those that have one.
    return places.map((position, k) => ({ chromosome, position, length: ((edges[k + 1]! - edges[k]!) * whole) / reached }));
  });
}
