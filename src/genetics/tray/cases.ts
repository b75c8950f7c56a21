import { qualifies, type Copies, type Needs } from '../family.ts';
import { gameteShares, type Homologues, type PlacedGene } from './linkage.ts';
import type { Parent } from './parent.ts';

/** What the two parents may be, with the shares of their seedlings that follow from it. */
export interface Case {
  /** Chance that the parents are so. */
  readonly weight: number;
  /** Share of the seedlings that qualify under the rule. */
  readonly right: number;
  /** Share without any copy that counts. */
  readonly none: number;
}

/** Pairs of parental states: more would stall the page. */
const MOST_PAIRS = 600_000;

/** fits[g · gametes + h]: whether the seedling of gametes g and h qualifies. */
function fitting(genes: readonly PlacedGene[], needs: Needs): Uint8Array {
  const gametes = 1 << genes.length;
  const fits = new Uint8Array(gametes * gametes);
  for (let g = 0; g < gametes; g += 1)
    for (let h = 0; h < gametes; h += 1) {
      const copies: Copies = Object.fromEntries(genes.map(({ id }, i) => [id, ((g >> i) & 1) + ((h >> i) & 1)]));
      fits[g * gametes + h] = +qualifies(copies, needs);
    }
  return fits;
}

/** Adds up cases with the same shares. */
class Tally {
  private readonly found = new Map<number, Map<number, { weight: number }>>();

  add(weight: number, right: number, none: number): void {
    let row = this.found.get(right);
    if (!row) this.found.set(right, (row = new Map<number, { weight: number }>()));
    const entry = row.get(none);
    if (entry) entry.weight += weight;
    else row.set(none, { weight });
  }

  list(): Case[] {
    return [...this.found].flatMap(([right, row]) => [...row].map(([none, { weight }]) => ({ weight, right, none })));
  }
}

/** Ends of a sum of shares that rounding may have pushed past them. */
const within = (share: number) => Math.min(1, Math.max(0, share));

/** Takes states together that differ in the names of the homologues only: their gametes are the same. */
function unnamed(states: Parent['states']): Parent['states'] {
  const found = new Map<number, Homologues & { chance: number }>();
  for (const { a, b, chance } of states) {
    const key = Math.min(a, b) * 2 ** 20 + Math.max(a, b);
    const entry = found.get(key);
    if (entry) entry.chance += chance;
    else found.set(key, { a, b, chance });
  }
  return [...found.values()];
}

/**
 * Enumerates what two trees may be and what their seedlings then are, by every pair of gametes.
 * @param father null: the mother's own pollen, so both gametes come from one and the same genotype
 * @param genes all that the rule names
 * @returns weights sum to 1; shares are exact for free genes, else to rounding
 * @throws RangeError for more than 600 000 pairs of states
 *
 * **Source:** Mendel (1866); Haldane (1919) for linked genes.
 */
export function casesOf(mother: Parent, father: Parent | null, genes: readonly PlacedGene[], needs: Needs): Case[] {
  const mothers = unnamed(mother.states);
  const named = father && unnamed(father.states);
  const pairs = mothers.length * (named?.length ?? 1);
  if (pairs > MOST_PAIRS) throw new RangeError(`More than ${String(MOST_PAIRS)} pairs of genotypes.`);
  const fits = fitting(genes, needs);
  const gametes = 1 << genes.length;
  const sharesOf = (state: Homologues) => gameteShares(state, genes);
  const fathers = named?.map((state) => ({ chance: state.chance, shares: sharesOf(state) }));
  const tally = new Tally();
  for (const state of mothers) {
    const shares = sharesOf(state);
    const rightWith = new Float64Array(gametes);
    for (let g = 0; g < gametes; g += 1) if (shares[g]! > 0) for (let h = 0; h < gametes; h += 1) rightWith[h]! += shares[g]! * fits[g * gametes + h]!;
    for (const other of fathers ?? [{ chance: 1, shares }]) {
      let right = 0;
      for (let h = 0; h < gametes; h += 1) right += rightWith[h]! * other.shares[h]!;
      tally.add(state.chance * other.chance, within(right), within(shares[0]! * other.shares[0]!));
    }
  }
  return tally.list();
}
