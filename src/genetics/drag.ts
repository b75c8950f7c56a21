import { exp } from '../random/elementary.ts';
import { binomialRow } from './recovery.ts';

/**
 * Returns the expected length (cM) of the unbroken donor piece around a gene that was picked in each of t back-crosses.
 * @param t whole, at least 1
 * @param left, right cM from the gene to the ends of its chromosome
 *
 * **Source:** Hanson, W. D. (1959) Genetics 44:833–837; Stam & Zeven (1981) Euphytica 30:227–238: (1 − e^(−tL))/t Morgan on each side.
 */
export function unbrokenPiece(t: number, left: number, right: number): number {
  return [left, right].reduce((sum, side) => sum + (100 * (1 - exp((-t * side) / 100))) / t, 0);
}

/**
 * Returns the expected length (cM) of all donor pieces on the chromosome of a gene that was picked in each of t back-crosses: longer than
 * the unbroken piece, since a piece beyond two crossovers is the donor's again.
 * @param t whole, at least 0
 * @param left, right cM from the gene to the ends of its chromosome
 *
 * **Source:** own derivation: at x Morgan from the gene the donor is left with chance (1 − r)^t = ((1 + e^(−2x))/2)^t, integrated.
 */
export function donorLength(t: number, left: number, right: number): number {
  let sum = 0;
  for (const side of [left / 100, right / 100]) for (const [n, ways] of binomialRow(t)) sum += ways * (n === 0 ? side : (1 - exp(-2 * n * side)) / (2 * n));
  return (100 * sum) / 2 ** t;
}

/** Recombination at a distance. **Source:** Haldane, J. B. S. (1919) J. Genet. 8:299–309. */
export const recombinationAt = (cM: number): number => 0.5 * (1 - exp((-2 * cM) / 100));

/**
 * Returns the chance that a gene is lost while a marker beside it is picked in each of t rounds.
 * @param r recombination between them
 *
 * **Source:** Melchinger, A. E. (1990) Plant Breed. 104:1–19: 1 − (1 − r)^t.
 */
export const lostBesideMarker = (r: number, t: number): number => 1 - (1 - r) ** t;

/**
 * Returns the chance that a gene is lost between two markers that are both picked, in one round.
 * @param left, right recombination between the gene and each marker
 *
 * **Source:** Tanksley (1983); Melchinger (1990) Plant Breed. 104:1–19: no interference.
 */
export const lostBetweenMarkers = (left: number, right: number): number => (left * right) / ((1 - left) * (1 - right) + left * right);
