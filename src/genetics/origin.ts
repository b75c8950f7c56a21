import { MARKERS, type Marker } from './markers.ts';

/**
 * Where a genome came from. Bit m of marker word w of a homologue is bit w of the number of the founding kind from which the piece around
 * marker m came.
 */
export interface OriginWords {
  /** Words a homologue, the first marker word of it, and how many there are. */
  readonly words: number;
  readonly from: number;
  readonly count: number;
}

/** Number of the founding kind at a marker of the homologue at word offset `at`. */
export function kindAt(genome: Int32Array, at: number, { from, count }: OriginWords, marker: number): number {
  let kind = 0;
  for (let w = 0; w < count; w += 1) kind |= ((genome[at + from + w]! >>> marker) & 1) << w;
  return kind;
}

/** Marks a whole homologue as coming from one kind. */
export function markKind(genome: Int32Array, at: number, { from, count }: OriginWords, kind: number): void {
  for (let w = 0; w < count; w += 1) genome[at + from + w] = -((kind >>> w) & 1);
}

/** Adds to `shares` (one entry a founding kind, filled with 0 before) the share of the tree's genome that came from each; they sum to 1. */
export function originShares(genome: Int32Array, at: number, sets: number, layout: OriginWords, markers: readonly Marker[], shares: Float64Array): void {
  let whole = 0;
  for (let m = 0; m < MARKERS; m += 1) {
    const { length } = markers[m]!;
    whole += length * sets;
    for (let h = 0; h < sets; h += 1) shares[kindAt(genome, at + h * layout.words, layout, m)]! += length;
  }
  for (let k = 0; k < shares.length; k += 1) shares[k]! /= whole;
}

/** Length (cM) of the unbroken piece of one kind around a marker of one homologue. */
export function pieceAround(genome: Int32Array, at: number, layout: OriginWords, markers: readonly Marker[], marker: number): number {
  const { chromosome, length } = markers[marker]!;
  const kind = kindAt(genome, at, layout, marker);
  let sum = length;
  for (const step of [-1, 1])
    for (let m = marker + step; m >= 0 && m < MARKERS && markers[m]!.chromosome === chromosome && kindAt(genome, at, layout, m) === kind; m += step)
      sum += markers[m]!.length;
  return sum;
}

/** Two kinds with the same share, but for rounding. */
const SAME = 1e-9;

/**
 * Length (cM) of what came with a gene: the longest unbroken piece, of the kind that the gene came from, around the copies of the gene that a
 * tree carries. 0 where it carries none, or where most of the tree is of that kind anyway.
 * @param gene bit of the gene word (word 0)
 * @param marker that stands at the gene
 * @param shares of the founding kinds in this tree
 */
export function lengthAround(
  genome: Int32Array,
  at: number,
  sets: number,
  layout: OriginWords,
  markers: readonly Marker[],
  gene: number,
  marker: number,
  shares: Float64Array,
): number {
  let longest = 0;
  for (let h = 0; h < sets; h += 1) {
    const here = at + h * layout.words;
    if (((genome[here]! >>> gene) & 1) === 0) continue;
    const kind = kindAt(genome, here, layout, marker);
    if (shares.every((share, other) => other === kind || share < shares[kind]! - SAME)) continue;
    longest = Math.max(longest, pieceAround(genome, here, layout, markers, marker));
  }
  return longest;
}
