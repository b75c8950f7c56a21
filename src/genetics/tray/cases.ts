import { qualifies, type Needs } from '../family.ts';
import type { Gametes } from './gametes.ts';
import type { Parent } from './parent.ts';
import type { Passage } from './passage.ts';

/** What the two parents may be, with the shares of their seedlings that follow from it. */
export interface Case {
  /** Chance that the parents are so. */
  readonly weight: number;
  /** Share of the seedlings that qualify under the rule. */
  readonly right: number;
  /** Share without any copy that counts. */
  readonly none: number;
}

/** Pairs of parental states, and pairs of gametes times states: more would stall the page. */
const MOST_PAIRS = 600_000;
const MOST_WORK = 150_000_000;

/** fits[g · classes of pollen + h]: whether the seedling of gametes g and h qualifies. */
function fitting(ids: readonly string[], eggs: Gametes, pollen: Gametes, needs: Needs): Uint8Array {
  const fits = new Uint8Array(eggs.copies.length * pollen.copies.length);
  const copies: Record<string, number> = {};
  let at = 0;
  for (const egg of eggs.copies)
    for (const grain of pollen.copies) {
      ids.forEach((id, i) => (copies[id] = egg[i]! + grain[i]!));
      fits[at] = +qualifies(copies, needs);
      at += 1;
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

/**
 * Enumerates what two trees may be and what their seedlings then are, by every pair of gametes.
 * @param father null: the mother's own pollen, so both gametes come from one and the same genotype
 * @param passage over all genes that the rule names
 * @returns weights sum to 1; shares are exact for free genes with two sets, else to rounding
 * @throws RangeError for more than 600 000 pairs of states, or more than 150 million pairs of gametes
 *
 * **Source:** Mendel (1866); Haldane (1919) for linked genes, (1930) for more sets.
 */
export function casesOf({ ids, ways }: Passage, mother: Parent, father: Parent | null, needs: Needs): Case[] {
  const pairs = mother.states.length * (father?.states.length ?? 1);
  if (pairs > MOST_PAIRS) throw new RangeError(`More than ${String(MOST_PAIRS)} pairs of genotypes.`);
  const work = ways.reduce((sum, { eggs, pollen }) => sum + eggs.copies.length * pollen.copies.length, 0) * mother.states.length;
  if (work > MOST_WORK) throw new RangeError(`More than ${String(MOST_WORK)} pairs of gametes.`);
  const made = ways.map(({ share, eggs, pollen }) => ({ share, eggs, pollen, fits: fitting(ids, eggs, pollen, needs) }));
  const grainsOf = (homologues: readonly number[]) => made.map(({ pollen }) => pollen.of(homologues));
  const fathers = father?.states.map(({ homologues, chance }) => ({ chance, grains: grainsOf(homologues) }));
  const tally = new Tally();
  for (const { homologues, chance } of mother.states) {
    const mothers = made.map(({ eggs, pollen, fits }) => {
      const shares = eggs.of(homologues);
      const grains = pollen.copies.length;
      const rightWith = new Float64Array(grains);
      for (let g = 0; g < shares.length; g += 1) if (shares[g]! > 0) for (let h = 0; h < grains; h += 1) rightWith[h]! += shares[g]! * fits[g * grains + h]!;
      return { rightWith, none: shares[0]! };
    });
    for (const other of fathers ?? [{ chance: 1, grains: grainsOf(homologues) }]) {
      let right = 0;
      let none = 0;
      made.forEach(({ share }, way) => {
        const { rightWith, none: noEgg } = mothers[way]!;
        const grains = other.grains[way]!;
        let sum = 0;
        for (let h = 0; h < grains.length; h += 1) sum += rightWith[h]! * grains[h]!;
        right += share * sum;
        none += share * noEgg * grains[0]!;
      });
      tally.add(chance * other.chance, within(right), within(none));
    }
  }
  return tally.list();
}
