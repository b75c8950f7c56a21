import type { Programme } from '../model/programme.ts';
import type { CompiledPlan, CompiledWhatIf } from './compiled.ts';

/**
 * What happens for sure, and when, beside what a programme says: plain data, so that it can be sent to another thread. Nothing stated: the
 * programme's own futures, byte for byte. Luck is drawn as ever and then overruled, so everything that is not stated here stays as it is.
 * Years are calendar years; ids are the programme's.
 */
export interface WhatIf {
  /**
   * Everything in these gardens is gone in the winter before this spring, seed in the ground too; the plan begins again on other ground with
   * whatever lives elsewhere (see begin-again.ts). Not in the first spring: nothing stands yet.
   */
  readonly land?: { readonly year: number; readonly gardens: readonly string[] };
  /** Whether a frost falls in bloom this spring. */
  readonly frost?: { readonly year: number; readonly falls: boolean };
  /** Hands in bloom, and the flowers that each generation pollinates a spring, are this many times what is stated; first and last spring included. */
  readonly hands?: { readonly from: number; readonly until: number; readonly times: number };
  /** The leaf tests of these generations are not to be had before this year. */
  readonly tests?: { readonly from: number; readonly generations: readonly string[] };
  /** Nothing is pollinated or gathered before this spring. */
  readonly begins?: number;
  /** In this spring a generation does not pollinate these two trees (`pollen` null: does not gather under this one). Others take none of its flowers. */
  readonly leaves?: { readonly year: number; readonly generation: string; readonly seed: string; readonly pollen: string | null };
  /** In this year a generation makes no rescue graft. */
  readonly graftless?: { readonly year: number; readonly generation: string };
}

/** The programme as it stands. */
export const NOTHING: WhatIf = {};

/**
 * Resolves years and ids to positions. Of a generation that repeats, the first round is meant; of leaf tests, every round.
 * @throws RangeError for an id that the programme does not have
 */
export function compileWhatIf(whatIf: WhatIf, programme: Programme, plans: readonly CompiledPlan[]): CompiledWhatIf {
  const { startYear, lastYear, gardens, trees } = programme;
  const { land, frost, hands, leaves, graftless } = whatIf;
  const index = (year: number) => year - startYear;
  const gardenLostIn = new Int32Array(gardens.length).fill(-1);
  for (const id of land?.gardens ?? []) gardenLostIn[place(gardens, id)] = index(land?.year ?? -1);
  const handsTimes = Float64Array.from({ length: lastYear - startYear + 1 }, (_, year) =>
    hands && year >= index(hands.from) && year <= index(hands.until) ? hands.times : 1,
  );
  return {
    landLostIn: land ? index(land.year) : -1,
    gardenLostIn,
    frostIn: frost ? index(frost.year) : -1,
    frostFalls: frost?.falls === true ? 1 : 0,
    handsTimes,
    begins: whatIf.begins === undefined ? 0 : index(whatIf.begins),
    leaves: leaves
      ? {
          year: index(leaves.year),
          generations: firstRounds(plans, leaves.generation),
          mother: place(trees, leaves.seed),
          father: leaves.pollen === null ? -1 : place(trees, leaves.pollen),
        }
      : null,
    graftless: graftless ? { year: index(graftless.year), generations: firstRounds(plans, graftless.generation) } : null,
  };
}

/** Puts off the leaf tests that are not to be had yet. */
export function withTestsFrom(plans: readonly CompiledPlan[], { tests }: WhatIf, startYear: number): readonly CompiledPlan[] {
  if (!tests) return plans;
  for (const id of tests.generations) firstRounds(plans, id);
  const testFrom = tests.from - startYear;
  return plans.map((plan) => ({
    ...plan,
    generations: plan.generations.map((generation) => (tests.generations.includes(generation.id) ? { ...generation, testFrom } : generation)),
  }));
}

function place(list: readonly { readonly id: string }[], id: string): number {
  const at = list.findIndex((entry) => entry.id === id);
  if (at < 0) throw new RangeError(`There is no “${id}”.`);
  return at;
}

/** Position of a generation's first round in each plan, −1 where it has none. */
function firstRounds(plans: readonly CompiledPlan[], id: string): ReadonlyMap<string, number> {
  const found = new Map(plans.map((plan) => [plan.id, plan.generations.findIndex((generation) => generation.id === id)]));
  if (![...found.values()].some((at) => at >= 0)) throw new RangeError(`There is no “${id}”.`);
  return found;
}
