import type { Generation, Plan } from '../../model/programme.ts';
import type { Columns } from '../../results/columns.ts';

/** What a generation has to do in a calendar year, with the share of futures in which it has. */
export interface Work {
  readonly generation: Generation;
  /** 1 for the first or only round. */
  readonly round: number;
  /** Bloom: hand pollination, or seed gathered where nothing is pollinated by hand. It goes on until there are seedlings enough. */
  readonly pollinate: number;
  /** Seed of the year before comes up. */
  readonly sow: number;
  /** Weak seedlings, or all, are old enough for the rescue graft. */
  readonly graft: number;
  /** Trees bear, and some are not judged yet. */
  readonly judge: number;
  /** Picks were made the season before and get their backup copies. */
  readonly backup: number;
}

const NEVER = -1;
const MONTHS = 12;

/**
 * Shares of futures in which each generation of a plan has work in one year.
 * @param columns results of the plan
 * @param year index from the first spring
 * @returns one entry for each round of each generation, in the order of the columns
 */
export function workIn(plan: Plan, columns: Columns, year: number): readonly Work[] {
  const rounds = plan.generations.flatMap((generation) => Array.from({ length: generation.repeat }, (_, i) => ({ generation, round: i + 1 })));
  return rounds.map(({ generation, round }, g) => {
    const pollination = columns.generation(g, 'firstPollination');
    const seedling = columns.generation(g, 'firstSeedling');
    const fruit = columns.generation(g, 'firstFruit');
    const pick = columns.generation(g, 'firstPick');
    const last = columns.generation(g, 'lastWork');
    const proven = columns.run('yearProven');
    const share = (has: (run: number) => boolean): number => {
      let runs = 0;
      for (let run = 0; run < columns.runs; run += 1) {
        const end = proven[run] ?? NEVER;
        // After the tree is proven nothing more is done.
        if ((end === NEVER || end >= year) && has(run)) runs += 1;
      }
      return columns.runs === 0 ? 0 : runs / columns.runs;
    };
    const between = (from: number | undefined, to: number): boolean => from !== undefined && from !== NEVER && from <= year && year <= to;
    const graftAfter = generation.rescue && generation.rescue.who !== 'none' ? Math.floor(generation.rescue.month / MONTHS) : null;
    return {
      generation,
      round,
      pollinate: share((run) => between(pollination[run], (pollination[run] ?? 0) + generation.springs - 1)),
      sow: share((run) => between(seedling[run], (seedling[run] ?? 0) + generation.springs - 1)),
      graft:
        graftAfter === null
          ? 0
          : share((run) =>
              between(
                (seedling[run] ?? NEVER) === NEVER ? NEVER : (seedling[run] ?? 0) + graftAfter,
                (seedling[run] ?? 0) + graftAfter + generation.springs - 1,
              ),
            ),
      judge: generation.judge === 0 ? 0 : share((run) => between(fruit[run], last[run] ?? NEVER)),
      backup:
        generation.backup === undefined ? 0 : share((run) => between((pick[run] ?? NEVER) === NEVER ? NEVER : (pick[run] ?? 0) + 1, (last[run] ?? NEVER) + 1)),
    };
  });
}
