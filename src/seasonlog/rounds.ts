import type { Generation, Plan } from '../model/programme.ts';

/** One round of a generation, at its place in the plan: the order in which the engine compiles them. */
export interface Round {
  readonly generation: Generation;
  /** Place of the round it begins after, −1 for none. */
  readonly after: number;
  /** Place of the round whose picks are meant by the id of a generation. */
  readonly picksOf: (id: string) => number;
}

/** Rounds of a plan in order: each later round of a repeated generation takes its picks from the round before (docs/model.md §10). */
export function roundsOf(plan: Plan): Round[] {
  const rounds: Round[] = [];
  const last = new Map<string, number>();
  for (const generation of plan.generations) {
    for (let round = 1; round <= generation.repeat; round += 1) {
      const previous = rounds.length - 1;
      const known = new Map(last);
      rounds.push({
        generation,
        after: round > 1 || generation.after === undefined ? previous : (known.get(generation.after) ?? -1),
        picksOf: (id) => (round > 1 ? previous : (known.get(id) ?? -1)),
      });
    }
    last.set(generation.id, rounds.length - 1);
  }
  return rounds;
}
