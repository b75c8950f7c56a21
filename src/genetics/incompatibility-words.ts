/** S alleles by number: the number of the allele that each is like, and which sides of it work. Number 0, not known, works on neither. */
export interface RejectionTable {
  readonly like: Int32Array;
  readonly pollenWorks: Uint8Array;
  readonly styleWorks: Uint8Array;
}

/**
 * Tells whether a pollen allele is rejected in a style: both sides work, and they are alike. A grain is rejected if any allele that
 * it carries is.
 * @param genome words of all trees
 * @param style position of the S word of the seed parent’s first homologue
 * @param sets homologues of the seed parent
 * @param words from one homologue to the next
 * @param allele number in the pollen
 *
 * **Source:** East & Mangelsdorf (1925) PNAS 11:166–171; see model/incompatibility/pollen.ts.
 */
export function rejects(table: RejectionTable, genome: Int32Array, style: number, sets: number, words: number, allele: number): boolean {
  const { like, pollenWorks, styleWorks } = table;
  if (pollenWorks[allele] !== 1) return false;
  for (let set = 0; set < sets; set += 1) {
    const own = genome[style + set * words]!;
    if (styleWorks[own] === 1 && like[own] === like[allele]) return true;
  }
  return false;
}
