import { lengthAround, originShares } from '../genetics/origin.ts';
import type { Orchard } from './orchard.ts';

/**
 * Adds up where the genomes of individuals came from: into `out`, the mean share of each founding kind and last the mean length (cM) around
 * the selected gene; NaN where there are none.
 * @param out one entry more than founding kinds, overwritten
 */
export function readOrigin({ compiled, stand }: Orchard, individuals: readonly number[], out: Float64Array): void {
  const { origin } = compiled;
  if (!origin) return;
  out.fill(individuals.length === 0 ? NaN : 0);
  const shares = new Float64Array(origin.kinds.length);
  for (const i of individuals) {
    const at = stand.offset(stand.handleOf(i));
    const { sets } = compiled.kinds[stand.kind[i]!]!;
    shares.fill(0);
    originShares(stand.genome, at, sets, origin.words, origin.markers, shares);
    shares.forEach((share, k) => (out[k]! += share / individuals.length));
    if (origin.gene >= 0)
      out[shares.length]! += lengthAround(stand.genome, at, sets, origin.words, origin.markers, origin.gene, origin.marker, shares) / individuals.length;
  }
}
